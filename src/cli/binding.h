/* cli/binding.h - blocks to a model, on the threads of a run. */
#ifndef CLI_BINDING_H
#define CLI_BINDING_H

#include "cli/run.h"

/* Binds r->read as model_bind does: what is made, and which findings in which order, does
 * not depend on the threads. It stands in the arenas of r. r->faces are read beside it, so
 * that neither thread waits for them later. */
struct model *binding_run(struct run *r);

#endif
