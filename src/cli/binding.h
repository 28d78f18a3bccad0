/* cli/binding.h - blocks to a model, on two threads. */
#ifndef CLI_BINDING_H
#define CLI_BINDING_H

#include "cli/pool.h"
#include "model/model.h"

/* The same as model_bind: what is made, and which findings in which order, does not depend
 * on the threads. It stands in a and in the arenas of the threads. */
struct model *binding_run(struct arena *a, struct arena *const own[POOL_THREADS],
    const struct sources *sources, const struct record_file *files, size_t nfiles,
    struct findings *f);

#endif
