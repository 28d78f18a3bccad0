/* check/remedy_seek.h - for the files check/remedy_*.c only: remedies in the making. */
#ifndef CHECK_REMEDY_SEEK_H
#define CHECK_REMEDY_SEEK_H

#include "check/remedy.h"

struct seeker {
	struct arena *arena;
	const struct model *m;
	const struct findings *f;
	struct remedies *out;
	uint32_t finding;        /* the one that is looked at */
	uint32_t turn;           /* its ways so far */
};

/* The finding that is looked at. */
const struct finding *seek_finding(const struct seeker *s);
/* Adds a way to mend it, to be filled further; n edits are copied. */
struct remedy *seek_add(struct seeker *s, const struct edit *v, size_t n);
/* The line of a source at a place. */
str seek_line(const struct seeker *s, struct pos pos);
/* The byte of a line at which a column from 1 begins. */
size_t seek_byte(str line, uint32_t col);
/* The line with the first `wrong` at that place or behind changed; empty when it does not
 * stand there. */
str seek_replaced(const struct seeker *s, struct pos pos, str wrong, str right);

/* Whether a finding that stands asks for teaching, and no move of a line within its quarter
 * is as likely. */
bool seek_asks(const struct seeker *s, const struct finding *d);
/* The skill of an id, MAP_NONE when skills.md lists none. */
uint32_t seek_skill(const struct seeker *s, str id);
/* "- smaw.2f assessed" of each skill that is marked, one a line. */
str seek_teaches(const struct seeker *s, const bool *skills);
/* The first line of program.md that gives an assignment; null: none. */
const struct slot *seek_slot(const struct seeker *s, str id);

/* Each adds what it knows for the finding that is looked at, if anything. */
void seek_slips(struct seeker *s);      /* words that are likely meant otherwise */
void seek_facts(struct seeker *s);      /* facts that the sheet shows otherwise */
void seek_figures(struct seeker *s);    /* figures that are too small, weeks of lines */
void seek_moves(struct seeker *s);      /* a line of program.md elsewhere */
void seek_lines(struct seeker *s);      /* a line of program.md that is missing, or optional */
void seek_teaching(struct seeker *s);   /* a line of Teaches that is missing */
void seek_lost(struct seeker *s);       /* a file of an assignment that is missing */
void seek_names(struct seeker *s);      /* headings, facts and ids by other names */
void seek_headings(struct seeker *s);   /* a heading that is missing */
void seek_owed(struct seeker *s);       /* facts and weights that are missing */

#endif
