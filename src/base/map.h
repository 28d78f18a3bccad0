/* base/map.h - words to numbers.
 *
 * Keys are borrowed and must outlive the map. Iteration does not exist on
 * purpose: order of output never depends on hashing. */
#ifndef BASE_MAP_H
#define BASE_MAP_H

#include "base/arena.h"
#include "base/str.h"

#define MAP_NONE UINT32_MAX

struct map;

/* nocase: ASCII letters compare without case. */
struct map *map_new(struct arena *a, bool nocase);
/* Makes room for n keys in all, where their number is known beforehand. */
void map_reserve(struct map *m, size_t n);
/* The number stored for key, or MAP_NONE. */
uint32_t map_find(const struct map *m, str key);
/* Stores value unless key is there already; returns the value now stored. */
uint32_t map_add(struct map *m, str key, uint32_t value);

#endif
