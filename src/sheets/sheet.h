/* sheets/sheet.h - what every printed document of this room is made with.
 *
 * A sheet is one run of blocks on a flow: a front page, an assignment in a packet, a
 * grading sheet. All sizes in points. Types: those of the edition.
 *
 * Words on students' papers (packet, cards): write them in English where they are
 * printed, as sh_word(sh, "Steps") or, with values in them, as one whole pattern,
 * sh_format(sh, "%u of %u", ...); in tables of words as WORD("Week"), looked up by
 * word_str or sheet_heads; away from a sheet by base/language.h and the edition. Then
 * add a row to templates/words/es.csv; tests/words.sh names each that is missing. */
#ifndef SHEETS_SHEET_H
#define SHEETS_SHEET_H

#include "base/buf.h"
#include "order/order.h"
#include "page/flow.h"
#include "page/grid.h"
#include "sheets/edition.h"
#include "sheets/wording.h"

/* Who teaches each skill, for both kinds of list on paper: v[start[s]] up to
 * v[start[s + 1]] are assignments in order of their ids. */
struct teachers {
	uint32_t *start, *v;
};
struct teachers teachers_new(struct arena *a, const struct model *m);

struct sheet {
	struct setter s;
	struct arena *arena;     /* that of the setter */
	const struct model *m;   /* for students: without instructor fields */
	const struct order *o;
	const struct teachers *teachers;
	struct flow *flow;
	const struct edition *e;
	double width_pt;         /* of the body */
	struct weldment_made **weldments; /* figures for all sheets of a bundle, or null */
};

/* The text in the language of the sheet, and patterns in it. */
str sh_word(const struct sheet *sh, const char *english);
str sh_format(const struct sheet *sh, const char *english, ...)
    __attribute__((format(printf, 2, 3)));

/* Heading of level 1 or 2, space above, kept with what follows. */
void sheet_heading(struct sheet *sh, str text, int level);
void sheet_text(struct sheet *sh, str text);
/* The same with words in the other language among it, in their order. */
void sheet_text_other(struct sheet *sh, str text, const str *other, size_t n);
/* A line in bold that leads what follows it and is kept with it. */
void sheet_bold(struct sheet *sh, str text);
void sheet_prose(struct sheet *sh, const struct prose *p, unsigned style);
/* "SM-04 Tee fillet 2F" as the heading of a sheet; lead is what stands before the title. */
void sheet_title(struct sheet *sh, str lead, const struct assignment *x);
/* SPAN_OTHER for a part of x that stays English on a translated sheet, and for a text that
 * does; else 0. */
unsigned part_style(const struct assignment *x, enum said_part part);
unsigned text_style(const struct sheet *sh, str shown, str original);
unsigned fact_style(const struct sheet *sh, const struct assignment *x, str key);
/* type with more style. */
struct type styled(struct type type, unsigned style);
/* A heading over a part of x, with a mark when that stays English on a translated sheet. */
void sheet_part_heading(struct sheet *sh, const struct assignment *x, enum said_part part,
    const char *english, int level);
/* Nothing, or " (in English)" in the language of the sheet. */
str sheet_part_mark(const struct sheet *sh, const struct assignment *x, enum said_part part);
/* One bullet or check box a text. */
void sheet_bullets(struct sheet *sh, const str *v, size_t n);
void sheet_check(struct sheet *sh, str text);
void sheet_space(struct sheet *sh, double height_pt);
void sheet_add(struct sheet *sh, struct block *b, double before_pt, double after_pt);

/* A grid over the whole width with `heads` head rows. */
struct grid *sheet_grid(struct sheet *sh, const struct grid_column *columns, size_t n,
    double row_min_pt, str caption);
void sheet_grid_end(struct sheet *sh, struct grid *g);

/* A picture with a figure of draw/fig_*.h in it, whose labels are as large as the edition
 * asks for: draw gets an area and a canvas for that. */
struct block *sheet_figure(struct sheet *sh, draw_picture *draw, void *user, str alt,
    double height_pt, double width_pt);
/* Draws such a figure in an area whose corner is (0, 0). */
void sheet_figure_draw(const struct sheet *sh, draw_picture *draw, void *user,
    struct canvas *c, rect area);
/* A head row of words that are looked up. */
void sheet_heads(struct sheet *sh, struct grid *g, const str *v, size_t n);

/* "SM-04 Tee fillet 2F" of an assignment; "quarter 1, week 7" of its place. */
str assignment_name(struct arena *a, const struct assignment *x);
str place_text(struct arena *a, const struct edition *e, const struct order *o,
    uint32_t assignment);

/* The value of a plain fact (Gas, Preheat ...), or empty. */
str fact_text(const struct assignment *x, str key);
/* What is printed of it. */
str fact_shown(const struct assignment *x, str key);

/* The first assignment of the sequence that teaches a skill far enough (at->skill is not
 * NONE), NONE when nothing before `self` does. */
uint32_t first_teacher(const struct sheet *sh, const struct skill_at *at, uint32_t self);

/* The sheets; each adds blocks to sh->flow for one assignment. */
void sheet_student(struct sheet *sh, uint32_t assignment);
/* The table of settings of an assignment, when it has any. */
void sheet_settings(struct sheet *sh, const struct assignment *x);
/* Blanks for amperes and volts used, a row a current; nothing when there is none. */
void sheet_used(struct sheet *sh, const struct assignment *x);
void sheet_grading(struct sheet *sh, uint32_t assignment);
/* The booth card: one page. */
void sheet_card(struct sheet *sh, uint32_t assignment);
/* Settings to start with, in two columns, facts or only what the arc needs; null when
 * there are none. */
struct block *card_settings(struct sheet *sh, const struct assignment *x, bool facts,
    double width_pt);
/* The size of the id on a card, to be read from the other side of a booth (common
 * practice, no source). */
#define CARD_ID_PT 44.0

/* A second language on a paper that there is one of for everybody. */
struct beside {
	const struct language *language;
	const struct model *model; /* in that language */
};
struct chart_spec {
	str name;                /* "Quarter 1" */
	const uint32_t *v;
	const str *marks;        /* of each of v */
	size_t n;
	const struct beside *said; /* null: English alone */
};
/* The wall chart of assignments v, then a sign-off sheet for each safety card among
 * them. */
void sheet_chart(struct sheet *sh, const struct chart_spec *c);

/* Front matter and index of a packet that holds the assignments v, in order. */
struct packet_cover {
	str name;                /* "Quarter 1", "ORW 130", "SM-20" */
	uint32_t quarter;        /* 0: not a whole quarter */
	const uint32_t *v;
	size_t n;
};
/* The map of what leads to what, on one page; a list when it does not fit on one. */
void sheet_quarter_map(struct sheet *sh, const struct packet_cover *c);
void sheet_front(struct sheet *sh, const struct packet_cover *c);
void sheet_index(struct sheet *sh, const struct packet_cover *c);

#endif
