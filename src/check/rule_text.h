/* check/rule_text.h - what the running words of a sheet say of a datum that its facts
 * or its drawing state too.
 *
 * Only fixed wordings count ("leg 5/16 in", "a 1/8 in opening", "set 130 A", "3F up",
 * "E7018"): free prose that merely mentions a number is left alone. */
#ifndef CHECK_RULE_TEXT_H
#define CHECK_RULE_TEXT_H

#include "check/rule_metal.h"

enum claim_kind {
	CLAIM_LEG, CLAIM_OPENING, CLAIM_LAND, CLAIM_BEVEL, CLAIM_INCLUDED,
	CLAIM_THICKNESS, CLAIM_ROD, CLAIM_AMPS,
	CLAIM_SIZES,             /* those above carry a quantity, those below a word */
	CLAIM_POSITION = CLAIM_SIZES, CLAIM_PROCESS, CLAIM_FILLER
};

enum claim_bound { BOUND_EXACT, BOUND_MOST, BOUND_LEAST };

/* Acceptance decides what the steps may say, so it comes before them. */
enum claim_place { CLAIM_IN_TITLE, CLAIM_IN_BRING, CLAIM_IN_ACCEPTANCE, CLAIM_IN_STEP };

struct claim {
	enum claim_kind kind;
	enum claim_bound bound;
	bool partial;            /* of one pass or layer, which is smaller than the weld */
	enum claim_place place;
	uint32_t number;         /* of the step */
	struct quantity q;
	str said;                /* the size as written */
	str word;                /* "3F", "SMAW"; of a rod its class, when it stands by */
	enum progression way;    /* after a position */
	struct pos pos;          /* where the passage begins */
	bool wrong;              /* the sheet states otherwise */
};

/* A length and the metric figure in brackets behind it that is not the same. */
struct unlike {
	str inch, metric;
	struct pos pos;
};

struct tokens; /* check/rule_text_scan.h */

struct claims {
	struct arena *arena;
	struct tokens *tokens;   /* of the passage being read */
	struct claim *v; size_t n, cap;
	struct unlike *unlike; size_t nunlike, unlike_cap;
};

/* Fills c with what the words of a sheet claim, in the order of enum claim_place. */
void claims_find(struct claims *c, const struct assignment *a);

/* The rule. */
void rule_text(struct rule_context *x, uint32_t w);

#endif
