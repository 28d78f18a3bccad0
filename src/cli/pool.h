/* cli/pool.h - independent jobs on two threads. */
#ifndef CLI_POOL_H
#define CLI_POOL_H

#include <stddef.h>

/* Calls work(user, i) for each i below n, in any order, on this thread and one more.
 * Jobs share only what none of them changes, or what a lock guards. Without a second
 * thread everything runs on this one. */
void pool_run(size_t n, void (*work)(void *user, size_t i), void *user);

#endif
