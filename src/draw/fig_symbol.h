/* draw/fig_symbol.h - the welding symbol: reference line, arrow, figures and tail.
 *
 * Parts and their places follow AWS A2.4 or, by option, ISO 2553 system A. Geometry from
 * memory, apart from the rule of sides (below the line: arrow side), which every textbook
 * has; proportions are drafting advice and no demand of either standard: confirm against
 * your edition. u is the height of a capital letter; figures are about 2u high.
 *
 * The caller writes each text as it stands beside a figure ("5/16", "1/8", "45°"); an
 * empty one is left out. Nothing is guessed: the symbol shows what is given and no more.
 * Texts are borrowed, drawn within boxes named "label" and 12 pt high. With too
 * little room or contradicting data only "no drawing: <why>" is written, and the drawing
 * function returns false. */
#ifndef DRAW_FIG_SYMBOL_H
#define DRAW_FIG_SYMBOL_H

#include "draw/fig.h"

enum fig_weld {
	FIG_WELD_NONE, FIG_WELD_FILLET, FIG_WELD_SQUARE, FIG_WELD_V, FIG_WELD_BEVEL,
	FIG_WELD_U, FIG_WELD_J, FIG_WELD_FLARE_V, FIG_WELD_FLARE_BEVEL,
	FIG_WELD_SURFACING,      /* arrow side only */
	FIG_WELD_BACK,           /* back or backing weld, opposite a groove */
	FIG_WELD_MELT_THROUGH,   /* opposite a groove; size: its height */
	FIG_WELD_STRIP,          /* backing bar, opposite a groove */
	FIG_WELD_PLUG,           /* plug or slot; root_opening: depth of filling */
	FIG_WELD_SPOT,
	FIG_WELD_COUNT
};

enum fig_contour { FIG_CONTOUR_NONE, FIG_FLUSH, FIG_CONVEX, FIG_CONCAVE };

/* One side of the reference line. */
struct fig_weld_side {
	enum fig_weld weld;
	str size;                /* left: leg, depth of preparation, height */
	str groove_size;         /* left, in brackets: size of the groove weld */
	str length, pitch;       /* right: "2-6"; ISO: length then pitch as written */
	str fillet_over;         /* size of a fillet beyond the groove; empty: none */
	str count;               /* "(5)" beyond a plug or spot */
	str root_opening;        /* inside a groove figure, nearest the line */
	str angle;               /* beyond a groove figure */
	enum fig_contour contour;
	str finish;              /* one letter beyond the contour; wants a contour */
};

#define FIG_SYMBOL_TAIL 3

struct fig_symbol {
	struct fig_weld_side arrow, other;
	bool staggered;          /* fillets on both sides, the other side set off */
	bool field, all_around;
	str tail[FIG_SYMBOL_TAIL]; /* lines, from the first on; none: no tail */
	bool iso;                /* ISO 2553 system A with its dashed line */
	bool uneven;             /* both sides differ in what only the tail tells */
	enum fig_shape joint;    /* members outlined at the arrowhead; FIG_NONE: none */
	str note;                /* under the symbol, "sizes in inches"; may be empty */
	const struct language *language; /* of labels and words; null: English */
};

/* Whether a prepared member is meant, so that the arrow breaks towards it. */
bool fig_weld_breaks_arrow(enum fig_weld w);
/* Whether members can be outlined for this shape. */
bool fig_symbol_outlines(enum fig_shape joint);

/* Why the data make no sense as a symbol, in English; empty when they do. */
str fig_symbol_fault(const struct fig_symbol *s);
bool fig_symbol_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_symbol *s);
/* What the symbol says, in a sentence, for readers who cannot see it. */
str fig_symbol_words(struct arena *a, const struct fig_symbol *s);

#endif
