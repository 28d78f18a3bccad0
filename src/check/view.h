/* check/view.h - one order under judgement: who stands where, what students bring,
 * and who is the first to teach what. */
#ifndef CHECK_VIEW_H
#define CHECK_VIEW_H

#include "check/units.h"

/* The first two teachers of a cell that stand at different places, by standing.
 * Two are enough to name the first one other than the asker. */
struct firsts {
	uint32_t assignment[STANDINGS][2];
};

struct view {
	const struct graph *graph;
	const struct order *order;
	struct units *units;
	uint8_t *brought;        /* by skill: the level that students bring, or 0 */
	/* The rest is made by view_detail. */
	struct firsts *firsts;   /* by cell */
	uint32_t *choice_at;     /* by skill: into choices, one more than there are */
	uint32_t *choices;       /* "one of" units whose first branch teaches the skill */
};

struct view *view_new(struct arena *a, const struct graph *g, const struct order *o);

/* Works out who teaches what first. The walk does without; faults need it. */
void view_detail(struct arena *a, struct view *v);

/* Whether a need is to be judged and students do not bring what meets it. */
bool view_asks(const struct view *v, uint32_t need);

/* The first assignment with this standing that teaches the cell and does not stand
 * at the place of `unit`; NONE when there is none. */
uint32_t view_first(const struct view *v, uint32_t cell, enum standing s, uint32_t unit);

/* The first unit other than `unit` that meets a need in full: for an optional
 * asker, optional work counts too. NONE when there is none. */
uint32_t view_meeting(const struct view *v, uint32_t need, uint32_t unit, bool optional);

/* The first unit other than `unit` that teaches an alternative in whatever standing,
 * which is what keeps a need from being an error. NONE when there is none. */
uint32_t view_easing(const struct view *v, uint32_t need, uint32_t unit);

#endif
