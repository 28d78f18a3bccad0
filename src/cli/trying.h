/* cli/trying.h - the remedies of what was found, tried. */
#ifndef CLI_TRYING_H
#define CLI_TRYING_H

#include "cli/run.h"

/* Reads and checks the program again with each remedy made, in memory only, and makes one
 * finding of those that one remedy mends (check/remedy.h). `listing` is what was found
 * while the folder was read. */
void trying_run(struct run *r, const struct options *o, const struct findings *listing);

#endif
