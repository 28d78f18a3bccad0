/* Anonymous memory is beyond POSIX. */
#define _DEFAULT_SOURCE
#include "cli/memory.h"

#include <stdalign.h>
#include <stdatomic.h>
#include <stdint.h>
#include <sys/mman.h>

/* Only what of the ground is used takes memory. */
enum { SMALL_BLOCK = 512 << 10, LARGE_BLOCK = 1 << 20, LARGE_PAGE = 2 << 20, GROUND = 16 << 20 };

static char *map_pages(size_t bytes)
{
	char *p = mmap(NULL, bytes, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);

	return p == MAP_FAILED ? NULL : p;
}

static void *take_pages(void *user, size_t *bytes)
{
	(void)user;
	return map_pages(*bytes);
}

static void give_pages(void *user, void *p, size_t bytes)
{
	(void)user;
	munmap(p, bytes);
}

const struct arena_store memory_store = { take_pages, give_pages, NULL, SMALL_BLOCK };

/* The system chooses the place, so one page more is taken and what stands over on both
 * sides is given back. */
static void *take_large_pages(size_t *bytes)
{
	size_t spare = LARGE_PAGE, before, size;
	char *p;

	if (*bytes > SIZE_MAX - 2 * spare)
		return NULL;
	size = (*bytes + spare - 1) / spare * spare;
	p = map_pages(size + spare);
	if (!p)
		return NULL;
	before = (spare - (uintptr_t)p % spare) % spare;
	if (before)
		munmap(p, before);
	munmap(p + before + size, spare - before);
#ifdef MADV_HUGEPAGE
	madvise(p + before, size, MADV_HUGEPAGE);
#endif
	*bytes = size;
	return p + before;
}

/* Stands at the start of its own pages, which are small ones: a virtual machine may have
 * to fetch a large page anew when it was idle, for more than all of a small program takes. */
struct ground {
	struct arena_store store;
	size_t size;
	atomic_size_t used;
};

static void *take_ground(void *user, size_t *bytes)
{
	const size_t step = alignof(max_align_t);
	struct ground *g = user;
	size_t at;

	if (*bytes <= LARGE_PAGE) {
		*bytes = (*bytes + step - 1) / step * step;
		at = atomic_fetch_add(&g->used, *bytes);
		if (at < g->size && *bytes <= g->size - at)
			return (char *)g + at;
	}
	return *bytes < LARGE_BLOCK ? NULL : take_large_pages(bytes);
}

static void give_ground(void *user, void *p, size_t bytes)
{
	struct ground *g = user;
	size_t at = (uintptr_t)p - (uintptr_t)g;

	if (at >= g->size)
		give_pages(NULL, p, bytes);
}

const struct arena_store *ground_new(void)
{
	struct ground *g = (struct ground *)(void *)map_pages(GROUND);

	if (!g)
		return &memory_store;
	g->store = (struct arena_store){ take_ground, give_ground, g, 0 };
	g->size = GROUND;
	g->used = (sizeof *g + alignof(max_align_t) - 1) / alignof(max_align_t) *
	    alignof(max_align_t);
	return &g->store;
}

void ground_free(const struct arena_store *s)
{
	struct ground *g = s->user;

	if (g)
		give_pages(NULL, g, g->size);
}
