/* check/rule_practice.h - practice before qualification tests: R5, R6, R12, C20; and how
 * fast a program goes: C17, C18, C19. */
#ifndef CHECK_RULE_PRACTICE_H
#define CHECK_RULE_PRACTICE_H

#include "check/rule_trade.h"

/* What a practice test and the test that it prepares share, of one weld. 0 in a field
 * that may be untold means untold, and untold agrees with everything. */
struct coupon {
	enum process process;    /* the first of arcs */
	uint32_t arcs;           /* of root and fill together; bit k is enum process k */
	enum joint joint;
	enum position position;  /* POSITION_COUNT: untold */
	enum progression progression;
	enum root root;          /* ROOT_UNTOLD: untold */
	uint32_t thickness;      /* class; 0: untold */
	uint32_t size;           /* class of outside diameter; 0: untold, plate */
	enum sheet_metal metal;  /* METAL_NONE: untold */
	uint32_t tests;          /* destructive ones, as shop_tests_of says */
};

/* The fields in which coupons may differ, the ones that say most first. */
enum coupon_field {
	FIELD_PROCESS, FIELD_JOINT, FIELD_ROOT, FIELD_POSITION, FIELD_PROGRESSION,
	FIELD_THICKNESS, FIELD_SIZE, FIELD_METAL, FIELD_TESTS, FIELD_COUNT
};

struct coupon coupon_of(const struct assignment *a, const struct weld *w);
/* Fields of `test` that `practice` does not cover, as bits: a test that is asked and not
 * practiced counts, one more in practice does not. */
uint32_t coupon_differs(const struct coupon *practice, const struct coupon *test);
/* "position (3G up there, 4G here), tests (no root bend there)". */
str coupon_say_differences(struct arena *a, const struct coupon *practice,
    const struct coupon *test, uint32_t fields);

/* Adds a key to a rule's list of n keys unless it stands there or the list is full;
 * returns the new n. v holds RULE_KEYS_MOST. */
uint32_t practice_add_key(uint32_t *v, uint32_t n, uint32_t key);

/* R6 and C20, then R12 for those that R6 leaves alone; R5; C17 to C19. */
void rule_practice(struct rule_context *x);
void rule_practice_level(struct rule_context *x);
void rule_practice_pace(struct rule_context *x);

/* R12. told: by assignment, those that lack a practice test. */
void practice_easier(struct rule_context *x, const bool *told);

#endif
