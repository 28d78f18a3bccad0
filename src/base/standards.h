/* base/standards.h - the acceptance sets that fitup ships, inside the program.
 *
 * standards.S embeds templates/standards byte for byte. They are read like a user's own
 * files, and only when an assignment names one. The bytes live as long as the program. */
#ifndef BASE_STANDARDS_H
#define BASE_STANDARDS_H

#include "base/source.h"

enum {
	STANDARDS_SHIPPED = 0
#define STANDARD(label, path) + 1
#include "base/standards.def"
#undef STANDARD
};

/* Path, first byte and end of each file. */
extern const char *const standard_edges[STANDARDS_SHIPPED][3];

/* The i-th file, 0 .. STANDARDS_SHIPPED - 1; its path names it in findings. */
static inline struct source standard_shipped(size_t i)
{
	const char *const *edge = standard_edges[i];

	return (struct source){ str_of(edge[0]), { edge[1],
	    (size_t)((uintptr_t)edge[2] - (uintptr_t)edge[1]) } };
}

#endif
