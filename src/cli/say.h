/* cli/say.h - what the commands tell on the terminal. */
#ifndef CLI_SAY_H
#define CLI_SAY_H

#include "cli/run.h"
#include "out/report.h"

/* Writes text to a descriptor; false (told on stderr) when that fails. */
bool say(int fd, str text);
/* All findings of a run, with places as the user can open them from here. */
void say_findings(struct buf *b, const struct run *r);

#endif
