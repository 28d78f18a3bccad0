/* cli/reading.h - all files of a folder to blocks, on two threads. */
#ifndef CLI_READING_H
#define CLI_READING_H

#include "cli/folder.h"
#include "read/record.h"

/* All that was read, in the order of the files. Several results in a row may be parts of
 * one file of assignments, each from a level-1 heading. */
struct reading {
	const struct record_file *v;
	size_t n;
	const struct findings *f;
};

/* Reads what is readable into blocks in arena a and in those of the threads. What is read,
 * and in which order, does not depend on the threads. */
const struct reading *reading_run(struct arena *a, struct arena *const own[POOL_THREADS],
    const struct folder *folder);
/* The same when some files have another text than `before`, by index: only those are read,
 * on this thread, and the rest is that of before. */
const struct reading *reading_again(struct arena *a, const struct folder *folder,
    const struct reading *before, const bool *edited);

#endif
