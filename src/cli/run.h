/* cli/run.h - one run: the folder read, bound, ordered and checked. */
#ifndef CLI_RUN_H
#define CLI_RUN_H

#include "cli/folder.h"
#include "cli/options.h"
#include "cli/pool.h"
#include "draw/face.h"

struct run {
	const struct arena_store *ground; /* where all these arenas stand */
	struct arena *arena, *own[POOL_THREADS]; /* the latter for work on the threads */
	const struct faces *faces;
	struct folder folder;
	size_t nfiles;           /* of its sources: those behind are shipped with fitup */
	struct findings *findings; /* sorted */
	struct model *model;
	const char *dir;
};

/* Reads and checks the program that o names. Returns an exit status: anything but
 * EXIT_CLEAN was told on stderr and leaves *r unusable but for run_end. */
int run_begin(struct run *r, const struct options *o);
void run_end(struct run *r);

/* The steps of run_begin for those who have the files already, as a trial has: empty
 * arenas; then r->dir, r->folder and r->findings given, everything read and checked, and
 * the findings sorted. */
void run_arenas(struct run *r);
void run_inspect(struct run *r, const struct options *o);

/* An arena for one piece of work, to be freed after it; out of memory ends the program
 * with EXIT_SYSTEM. */
struct arena *run_scratch(void);

#endif
