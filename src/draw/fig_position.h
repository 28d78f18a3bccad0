/* draw/fig_position.h - how a coupon stands in space: plates or pipe, the weld, its axis,
 * the way of travel, the rod on the side that is welded, and the floor.
 *
 * Test positions and their ISO 6947 letters as in the table of positions (AWS A3.0 and
 * D1.1, ASME IX against ISO 6947: pairs seen on pages, pipe fillets from memory). A
 * sketch, not to scale; it reads at 40 x 40 mm, texts stand at its right. The rules of
 * draw/fig.h hold for labels, areas and refusals. */
#ifndef DRAW_FIG_POSITION_H
#define DRAW_FIG_POSITION_H

#include "draw/fig.h"

enum fig_place {
	FIG_FLAT, FIG_1F, FIG_2F, FIG_3F, FIG_4F, FIG_5F, FIG_1G, FIG_2G, FIG_3G, FIG_4G,
	FIG_5G, FIG_6G, FIG_1G_ROLLED, FIG_1F_ROLLED, FIG_PLACE_COUNT
};

enum fig_travel { FIG_TRAVEL_NONE, FIG_TRAVEL_UP, FIG_TRAVEL_DOWN };

enum fig_members {
	FIG_MEMBERS_BUTT, FIG_MEMBERS_TEE, FIG_MEMBERS_LAP,
	FIG_MEMBERS_CORNER,      /* weld inside */
	FIG_MEMBERS_ROOF,        /* open corner, weld outside */
	FIG_MEMBERS_PAD,
	FIG_MEMBERS_TEE_GROOVE,  /* the web prepared */
	FIG_MEMBERS_CORNER_GROOVE, /* open outside, flush with one member */
	FIG_MEMBERS_EDGE, FIG_MEMBERS_EDGE_GROOVE,
	FIG_MEMBERS_FLARE,       /* a round or bent member on a flat one that goes on */
	FIG_MEMBERS_FLARE_CORNER, /* on one that ends at the face */
	FIG_MEMBERS_FLARE_V,     /* two round or bent members */
	FIG_MEMBERS_PIPE, FIG_MEMBERS_PIPE_ON_PLATE,
	FIG_MEMBERS_COUNT
};

struct fig_position {
	enum fig_place place;
	enum fig_travel travel;
	enum fig_members members;
	str label;               /* "3G up" */
	const struct language *language; /* of labels and words; null: English */
};

/* Whether such members are welded in such a position; 5G and 6G are of pipe alone. */
bool fig_position_can_draw(const struct fig_position *p);
/* "PF", "H-L045"; empty when it depends on a travel that is not given. */
str fig_position_iso(const struct fig_position *p);
/* "weld axis vertical, upward" */
str fig_position_plain(const struct fig_position *p);

bool fig_position_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_position *p);
str fig_position_words(struct arena *a, const struct fig_position *p);

#endif
