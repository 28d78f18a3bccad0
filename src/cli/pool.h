/* cli/pool.h - independent jobs on two threads. */
#ifndef CLI_POOL_H
#define CLI_POOL_H

#include <stddef.h>

enum { POOL_THREADS = 2 };

/* Calls work(user, thread, i) for each i below n, in any order, on this thread and one
 * more; thread, below POOL_THREADS, says on which. Jobs share only what none of them
 * changes, what belongs to their thread, or what a lock guards. Without a second thread
 * everything runs on this one. */
void pool_run(size_t n, void (*work)(void *user, unsigned thread, size_t i), void *user);

#endif
