/* cli/pool.h - independent jobs on one thread or two. */
#ifndef CLI_POOL_H
#define CLI_POOL_H

#include <stddef.h>

enum { POOL_THREADS = 2 };

/* Calls work(user, thread, i) for each i below n on this thread and, when `threads` is
 * more than 1, on one more; thread, below POOL_THREADS, says on which. Jobs are begun in
 * turn and share only what none of them changes, what belongs to their thread, or what a
 * lock guards. Where the system has no second thread everything runs on this one. */
void pool_run(unsigned threads, size_t n,
    void (*work)(void *user, unsigned thread, size_t i), void *user);

#endif
