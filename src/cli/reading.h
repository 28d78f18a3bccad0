/* cli/reading.h - all files of a folder to blocks, on two threads. */
#ifndef CLI_READING_H
#define CLI_READING_H

#include "cli/folder.h"
#include "read/record.h"

/* Reads what is readable into blocks in arena a and in those of the threads; faults go to
 * f. Several results in a row may be parts of one file of assignments, each from a level-1
 * heading. What is read, and in which order, does not depend on the threads. */
struct record_file *reading_run(struct arena *a, struct arena *const own[POOL_THREADS],
    const struct folder *folder, size_t *n, struct findings *f);

#endif
