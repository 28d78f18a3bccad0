/* cli/memory.h - memory of the system for arenas. */
#ifndef CLI_MEMORY_H
#define CLI_MEMORY_H

#include "base/arena.h"

/* Blocks that are no small ones straight from the system, which has them back as soon as
 * their arena goes; the C library would keep most of them. Any thread may call. */
extern const struct arena_store memory_store;

/* A store for arenas that live together: their blocks stand side by side in one stretch of
 * memory, so that hardly a page is taken into use for nothing. Large blocks have pages of
 * their own, large ones where the system has them: taking a page of 4 KiB into use costs
 * it nearly as much as one of 2 MiB. Small blocks given back are used again only after
 * ground_free, which its arenas do not outlive. Any thread may take and give. Never null. */
const struct arena_store *ground_new(void);
void ground_free(const struct arena_store *s);

#endif
