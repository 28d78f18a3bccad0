/* sheets/drawn.h - drawings on their way onto the page.
 *
 * A drawing is recorded once, where its height is found, and played back where its block
 * comes to stand. Sizes in points. Everything lives in the arena of the sheet. */
#ifndef SHEETS_DRAWN_H
#define SHEETS_DRAWN_H

#include "draw/fig.h"
#include "draw/fig_cut.h"
#include "draw/fig_iso.h"
#include "draw/fig_position.h"
#include "draw/fig_symbol.h"
#include "draw/fig_view.h"
#include "draw/list.h"
#include "sheets/figure_key.h"
#include "sheets/sheet.h"

/* The data of its kind are set by the caller. */
struct drawn {
	enum { DRAWN_SECTION, DRAWN_PLAN, DRAWN_PLATE, DRAWN_VIEW, DRAWN_SYMBOL,
		DRAWN_POSITION, DRAWN_CUT, DRAWN_WELDMENT, DRAWN_ROOM } kind;
	const struct faces *faces;
	struct fig_joint joint;
	struct fig_plate plate;
	struct fig_view view;
	struct fig_symbol symbol;
	struct fig_position position;
	struct fig_cut cut;
	struct fig_iso iso;
	struct list *drawn;
	struct figure_key key;   /* of large print, where labels have no room */
	bool fits;               /* what was recorded last found room */
};

/* An empty one of that kind, with the faces of the sheet. */
struct drawn *drawn_new(struct sheet *sh, int kind);
/* Records it in that box; false: no room, and what is recorded only says so. */
bool drawn_record(const struct sheet *sh, struct drawn *p, double width, double height);
/* Records it at the least height from least to most at which it finds room, and returns
 * that. A crowded drawing of large print gets letters for its labels, and then type less
 * large; without room anywhere it comes out at the least height, saying so. */
double drawn_find_height(struct sheet *sh, struct drawn *p, double width, double least,
    double most);
/* The least and the greatest height of a drawing over the width of the sheet. */
double drawn_height(const struct sheet *sh, const struct drawn *p);
double drawn_most(const struct sheet *sh);
/* The block of what was recorded with that box. */
struct block *drawn_block(struct sheet *sh, struct drawn *p, str alt, double width_pt,
    double height_pt);
/* Adds a bold line that stays with what follows. */
void drawn_add_bold(struct sheet *sh, str text);
/* Adds the block of a drawing and, with it, the key of its letters. */
void drawn_add_block(struct sheet *sh, struct block *b, const struct drawn *p);
/* Adds head, drawing and key to the sheet; alt is its text for those who do not see it.
 * high: recorded with that height before. keep: on one page with what follows. */
void drawn_add_high(struct sheet *sh, struct drawn *p, str alt, str head, bool keep,
    double high);
void drawn_add_kept(struct sheet *sh, struct drawn *p, str alt, str head, bool keep);
void drawn_add(struct sheet *sh, struct drawn *p, str alt, str head);

#endif
