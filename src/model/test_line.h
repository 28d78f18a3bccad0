/* model/test_line.h - how many specimens an acceptance line asks for, and how their
 * strips are cut: "Root bend: 2 of A, 1 of B, D1.1-2020; strips 3/4 in wide at 1:30". */
#ifndef MODEL_TEST_LINE_H
#define MODEL_TEST_LINE_H

#include "model/model.h"

enum { TEST_LETTERS = 26, STRIP_PLACES = 24 };

struct test_counts {
	uint32_t total;          /* 0: not told */
	uint32_t of[TEST_LETTERS]; /* of weld 'A' + i */
	bool lettered;           /* some weld is named */
};

/* "2", "two", "2 of A, 1 of B", "3, one of A and two of B", "2 of C at 2G, 2 at 5G":
 * what stands before the set, the plunger and the first semicolon. A count is below 100. */
struct test_counts test_counts_of(const struct criterion *c);

struct test_strips {
	double width_mm;         /* 0: not told */
	double place[STRIP_PLACES]; /* middles: mm from the left, or degrees from 12 */
	size_t nplaces;
};

/* "strips 1 in wide at 1:00 and 7:00", either half may be missing. pipe: places are
 * clock places, else lengths. At most `most` places are read. */
struct test_strips test_strips_of(const struct criterion *c, bool pipe, size_t most);

#endif
