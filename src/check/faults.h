/* check/faults.h - the unmet needs of all orders, sorted into findings.
 *
 * One need that fails in several orders is one fault. Faults with the same cause
 * (check/cause.h), nature and set of orders are one finding, those without one when
 * skill and teacher agree; a merged finding speaks of its first fault and lists the
 * others. */
#ifndef CHECK_FAULTS_H
#define CHECK_FAULTS_H

#include "check/walk.h"

/* A set of orders, as the set without its last order plus that order. Set 0 is
 * empty. */
struct path_set {
	uint32_t without;        /* index of the smaller set */
	uint32_t view;           /* the last order in it */
	uint32_t grown, grown_by; /* the set grown by order grown_by, once made */
};

struct cause; /* check/cause.h */

/* The faults of one finding, linked through next. */
struct merged {
	uint32_t first, last;    /* indices of faults */
	uint32_t n;
	uint32_t waiver;         /* what covers them, in model->waivers; NONE */
};

struct verdict {
	struct view **views;
	size_t nviews;
	struct faults faults;
	uint32_t *next;          /* by fault: the next of the same finding, NONE */
	uint32_t *in;            /* by fault: its finding in merged, NONE */
	const struct cause *causes; /* by fault; filled by verdict_merge, as is: */
	const struct waivers *waivers; /* null: none */
	struct path_set *sets; size_t nsets, sets_cap;
	struct merged *merged; size_t nmerged, merged_cap;
};

/* Walks every view and judges each unmet need where it shows first. */
struct verdict *verdict_new(struct arena *a, struct view **views, size_t nviews);

/* The finding that faults of a nature become. */
enum finding_name nature_finding(enum nature n);

/* Merges the faults into findings by their causes. Needs marked in `told` (by need; may
 * be null) and those that a misspelt word explains are left out. Faults that different
 * waivers cover, or none, stay apart, so that a waiver covers what it names and no more. */
void verdict_merge(struct arena *a, struct verdict *d, const bool *told,
    const struct cause *causes);

/* Marks the skills whose findings say already that nobody teaches them (never), and
 * those that nobody assesses although somebody asks for that (low). By skill. */
void verdict_mark_skills(const struct verdict *d, bool *never, bool *low);

#endif
