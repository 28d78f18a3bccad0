/* cli/judging.h - a bound model judged, on the threads of a run. */
#ifndef CLI_JUDGING_H
#define CLI_JUDGING_H

#include "cli/run.h"

/* Checks r->model and what its sheets would show; findings go to r->findings, and the
 * pixels of pictures are made on the way. */
void judging_run(struct run *r);

#endif
