/* cli/memory.h - memory of the system in large pages, for arenas. */
#ifndef CLI_MEMORY_H
#define CLI_MEMORY_H

#include "base/arena.h"

/* Large blocks on the boundaries of large pages, which the system is asked to use: taking
 * a page of 4 KiB into use costs it nearly as much as one of 2 MiB. Where it has none, they
 * are plain memory. Any thread may call. */
extern const struct arena_store memory_store;

/* The same for arenas that live together, small blocks too: these stand side by side in
 * one stretch of large pages until that is full. What is given back of it is used again
 * only after ground_free, which its arenas do not outlive. Never null. */
const struct arena_store *ground_new(void);
void ground_free(const struct arena_store *s);

#endif
