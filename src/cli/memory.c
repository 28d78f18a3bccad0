/* Anonymous memory is beyond POSIX. */
#define _DEFAULT_SOURCE
#include "cli/memory.h"

#include <stdint.h>
#include <sys/mman.h>

/* The system chooses the place, so one piece more is taken and what stands over on both
 * sides is given back. */
static void *take(size_t bytes)
{
	size_t spare = ARENA_PIECE, before;
	char *p = mmap(NULL, bytes + spare, PROT_READ | PROT_WRITE,
	    MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);

	if (p == MAP_FAILED)
		return NULL;
	before = (ARENA_PIECE - (uintptr_t)p % ARENA_PIECE) % ARENA_PIECE;
	if (before)
		munmap(p, before);
	munmap(p + before + bytes, spare - before);
#ifdef MADV_HUGEPAGE
	madvise(p + before, bytes, MADV_HUGEPAGE);
#endif
	return p + before;
}

static void give(void *p, size_t bytes)
{
	munmap(p, bytes);
}

const struct arena_store memory_store = { take, give };
