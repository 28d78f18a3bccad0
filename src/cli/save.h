/* cli/save.h - files written whole or not at all. */
#ifndef CLI_SAVE_H
#define CLI_SAVE_H

#include "base/arena.h"
#include "base/str.h"

/* Writes bytes to dir/name (folders made as needed): to a temporary name beside it,
 * flushed to the disk, then renamed. False: errno says why and nothing is left. What
 * a killed run left under a temporary name of the same file is removed first. mode: of
 * the file, less the umask. */
bool save_file(struct arena *a, const char *dir, str name, str bytes, unsigned mode);

/* Writes all of bytes to an open descriptor. */
bool save_all(int fd, str bytes);

/* The list of what earlier prints wrote into dir, or were about to: one name a line. */
struct printed {
	str *v;
	size_t n, cap;
};
/* Whether something stands under that name that no print wrote. */
bool printed_foreign(struct arena *a, const char *dir, const struct printed *p, str name);
void printed_read(struct arena *a, const char *dir, struct printed *p);
bool printed_has(const struct printed *p, str name);
void printed_add(struct arena *a, struct printed *p, str name);
/* Removes the file, its entry, and its folder when that is left empty; nothing when
 * the list does not have it. False: errno says why the file is still there. */
bool printed_drop(struct arena *a, const char *dir, struct printed *p, str name);
bool printed_write(struct arena *a, const char *dir, const struct printed *p);

#endif
