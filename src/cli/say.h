/* cli/say.h - what the commands tell on the terminal. */
#ifndef CLI_SAY_H
#define CLI_SAY_H

#include "cli/run.h"
#include "out/report.h"

/* Writes text to a descriptor; false (told on stderr) when that fails. */
bool say(int fd, str text);
/* The same for all findings of a run, with places as the user can open them from here. */
bool say_findings(int fd, const struct run *r);

#endif
