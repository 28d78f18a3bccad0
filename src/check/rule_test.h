/* check/rule_test.h - the tests that Acceptance asks for, as read from its lines. */
#ifndef CHECK_RULE_TEST_H
#define CHECK_RULE_TEST_H

#include "check/rule_joint.h"
#include "model/test_line.h"

enum test_kind {
	TEST_NONE, TEST_FACE_BEND, TEST_ROOT_BEND, TEST_SIDE_BEND, TEST_FILLET_BREAK,
	TEST_NICK_BREAK, TEST_TENSILE, TEST_MACRO
};

/* "Root bend: 2 of A, 1 of B, D1.1-2020, plunger 1-1/2 in, die opening 2-3/8 in". */
struct test_line {
	enum test_kind kind;
	const struct criterion *c;
	struct test_counts n;    /* specimens */
	double plunger_mm, die_mm; /* 0: not told */
	double strain;           /* percent that the line itself gives; 0 */
};

struct test_lines {
	struct test_line *v;
	size_t n, cap;
};

/* Tests in order of Acceptance; lines of other names are left out. */
struct test_lines test_lines_of(struct arena *a, const struct assignment *as);

static inline bool test_is_bend(enum test_kind k)
{
	return k == TEST_FACE_BEND || k == TEST_ROOT_BEND || k == TEST_SIDE_BEND;
}

/* Whether a line speaks of weld i, and whether its joint can be tested so. */
bool test_covers(const struct test_line *t, const struct assignment *a, size_t i);
bool test_suits(enum test_kind k, enum joint j);
/* Specimens that a line takes from weld i: a count for all is shared out among the
 * welds that it suits. 0: none, or not told. */
uint32_t test_count(const struct test_line *t, const struct assignment *a, size_t i);
bool test_lines_bend(const struct test_lines *l);

/* What the words of a Range claim of thickness. */
struct thickness_claim {
	double least_mm, most_mm; /* 0: not told */
	bool no_limit;
};

struct thickness_claim claimed_thickness(str text);
/* The next length in running words at or after *at; it stands at *from and *at is left
 * past it. False: there is none. */
bool find_length(str text, size_t *at, size_t *from, struct quantity *q);
/* Judges what a Range claims for one process or filler by the weld metal that its
 * passes leave; whether it told a fault. */
bool range_of_deposits(struct rule_context *x, uint32_t assignment, const char *code,
    str text);

/* The rules: what a test needs; bends and their jig; records of qualification. */
void rule_test(struct rule_context *x, uint32_t w);
void rule_test_bend(struct rule_context *x, uint32_t w);
void rule_test_owned(struct rule_context *x);
void rule_test_record(struct rule_context *x, uint32_t w);
void rule_deposit(struct rule_context *x, uint32_t w);

#endif
