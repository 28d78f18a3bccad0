/* cli/run.h - one run: the folder read, bound, ordered and checked. */
#ifndef CLI_RUN_H
#define CLI_RUN_H

#include "cli/folder.h"
#include "cli/options.h"
#include "cli/pool.h"
#include "draw/face.h"

struct reading;

struct run {
	const struct arena_store *ground; /* where all these arenas stand */
	struct arena *arena;
	struct arena *own[POOL_THREADS], *scratch[POOL_THREADS]; /* for work on the threads;
	                          * the latter for run_inspect alone */
	unsigned threads;        /* on which run_inspect works */
	const struct faces *faces;
	struct folder folder;
	size_t nfiles;           /* of its sources: those behind are shipped with fitup */
	const struct reading *read; /* cli/reading.h */
	const bool *told;        /* by assignment: sheets/review.h */
	const struct findings *sheets; /* those of the findings that one sheet alone shows, as
	                          * they were found */
	struct findings *findings; /* sorted */
	struct model *model;
	const char *dir;
	const struct run *before; /* the same folder before some edits; null */
	const bool *edited;      /* by source; null without the former */
};

/* Reads and checks the program that o names. Returns an exit status: anything but
 * EXIT_CLEAN was told on stderr and leaves *r unusable but for run_end. */
int run_begin(struct run *r, const struct options *o);
void run_end(struct run *r);

/* What run_begin does with the files, also for a trial that has them already: with
 * r->folder, r->findings of listing them, and arenas, everything is read and checked, and
 * the findings are sorted. What r->before knows is not worked out again. */
void run_inspect(struct run *r, const struct options *o);

/* An arena for one piece of work, to be freed after it; out of memory ends the program
 * with EXIT_SYSTEM. */
struct arena *run_scratch(void);

#endif
