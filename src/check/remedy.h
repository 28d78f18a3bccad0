/* check/remedy.h - what would mend a finding, as edits that can be tried.
 *
 * One slip of a pen may show in several rules. Which findings belong to it is not argued
 * rule by rule but tried: the program is read again with the edit made, and what is then
 * no longer found is one finding with that whose remedy it was. Only what is told is
 * changed by it, never a file. */
#ifndef CHECK_REMEDY_H
#define CHECK_REMEDY_H

#include "base/edit.h"
#include "base/finding.h"
#include "model/model.h"

struct remedy {
	uint32_t finding;        /* by index: what it is meant to mend */
	uint32_t turn;           /* 0: the first way to mend that finding, ... */
	bool names_cause;        /* the finding says itself what is wrong; else the gravest
	                          * of those that it mends stands for all */
	bool strict;             /* what it mends hides nothing: anything new is against it */
	bool near;               /* it writes a word much like the one that stands there: where
	                          * that mends the finding, no other way is looked for */
	str say;                 /* the repair in words; empty: as the finding says it */
	const struct edit *edits;
	size_t nedits;
	struct remedy *same;     /* the next one with the same edits, of another finding; null */
	bool *mends;             /* by finding; null: not tried, or it does no good */
	size_t nmended;
};

struct remedies {
	struct remedy *v;
	size_t n, cap;
	struct remedy **tries;   /* by trial: the first of those with the same edits */
	size_t ntries;
	/* All findings, by index: the graver first, then by name and as students meet them,
	 * which does not depend on the files; null: as they stand. */
	const uint32_t *order;
};

/* The remedies of findings that stand, in the order of trying: the first ways of all,
 * graver findings first, then the second ways; and the trials that they are worth. Texts
 * live in arena a. None when there are too few findings for one to explain another, or too
 * many. */
struct remedies *remedies_find(struct arena *a, const struct model *m,
    const struct findings *f);

/* How many trials a program of this size is worth: they are for the slips of a day and must
 * not make a large program slow. */
size_t remedies_most(const struct model *m);

/* Notes what a remedy, and those with the same edits, mend: `after` is what was found once
 * its edits were made, `texts` are the files that they changed. A remedy that leaves its
 * own finding, or brings another one, mends nothing. */
void remedy_judge(struct arena *a, struct remedy *r, const struct findings *before,
    const struct findings *after, const struct edited *texts, size_t ntexts);
/* Whether one of those mends all that stands, so that no other need be tried. */
bool remedy_is_whole(const struct remedy *r, const struct findings *f);

/* Makes one finding of those that one remedy mends, the widest remedy first. The others
 * stand among its related, and it is as grave as the gravest. */
void remedies_settle(const struct remedies *rs, struct findings *f);

#endif
