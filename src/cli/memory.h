/* cli/memory.h - memory of the system in large pages, for arenas. */
#ifndef CLI_MEMORY_H
#define CLI_MEMORY_H

#include "base/arena.h"

/* Pieces on the boundaries of large pages, which the system is asked to use: taking a
 * page of 4 KiB into use costs it nearly as much as one of 2 MiB. Where it has none, they
 * are plain memory. Any thread may call. */
extern const struct arena_store memory_store;

#endif
