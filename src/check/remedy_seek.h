/* check/remedy_seek.h - for the files check/remedy_*.c only: remedies in the making. */
#ifndef CHECK_REMEDY_SEEK_H
#define CHECK_REMEDY_SEEK_H

#include "check/remedy.h"

struct asked;
struct hosts;

struct seeker {
	struct arena *arena;
	const struct model *m;
	const struct findings *f;
	struct remedies *out;
	uint32_t finding;        /* the one that is looked at */
	uint32_t turn;           /* its ways so far */
	/* Made when they are first asked for. */
	const struct slot **slots; /* by assignment */
	struct asked *asked;     /* by skill */
	struct hosts *hosts;     /* that teach nothing */
};

/* The finding that is looked at. */
const struct finding *seek_finding(const struct seeker *s);
/* Adds a way to mend it, to be filled further; n edits are copied. */
struct remedy *seek_add(struct seeker *s, const struct edit *v, size_t n);
/* The line of a source at a place. */
str seek_line(const struct seeker *s, struct pos pos);
/* The byte of a line at which a column from 1 begins. */
size_t seek_byte(str line, uint32_t col);
/* Adds the way to write `right` for the first `wrong` at that place or behind; null when
 * that does not stand there, or one of them is empty. */
struct remedy *seek_replace(struct seeker *s, struct pos pos, str wrong, str right);
/* The digits of a line from there on, within the line; empty: there are none. */
str seek_digits(str line, size_t from);
/* Whether a place is in a source whose path begins so. */
bool seek_is_in(const struct seeker *s, struct pos pos, const char *path);

/* The skill of an id, MAP_NONE when skills.md lists none. */
uint32_t seek_skill(const struct seeker *s, str id);
/* The first line of program.md that gives an assignment; null: none. */
const struct slot *seek_slot(struct seeker *s, str id);
const struct slot *seek_slot_of(struct seeker *s, uint32_t who);
/* Whether students come to a line of program.md before another. */
bool seek_before(const struct model *m, const struct slot *a, const struct slot *b);
/* Whether a finding stands that hangs on what is taught. */
bool seek_is_teaching(const struct finding *d);

/* Who asks for a skill, by the findings that stand. */
struct asked {
	const struct slot *first; /* the first line of program.md; null: none */
	enum skill_level level;  /* as far as any asks */
	bool named;              /* a finding that is no circle is about it */
	bool open;               /* some ask, and no move of a line within its quarter
	                          * mends that, as after a slip in program.md */
};

/* By skill. */
const struct asked *seek_asked(struct seeker *s);
/* The assignment that the finding names; null: none, or one that is not there. */
const struct assignment *seek_assignment(const struct seeker *s);
/* The text of an assignment, from its heading to that of the next, and its last line. */
str seek_sheet(const struct seeker *s, const struct assignment *a);
uint32_t seek_last_line(const struct seeker *s, const struct assignment *a);
/* The line of a heading of that name in its sheet, outside fences; 0: it has none. */
uint32_t seek_section(const struct seeker *s, const struct assignment *a, str name);
/* What it says of a fact, as written; empty: it does not have that. */
str seek_said(const struct seeker *s, const struct assignment *a, str key);
/* What its weights total. */
uint32_t seek_total(const struct assignment *a);
/* "- smaw.2f assessed" of each skill that is marked, one a line. */
str seek_teaches(const struct seeker *s, const bool *skills);
/* Adds the way to let an assignment teach some more. */
struct remedy *seek_taught(struct seeker *s, uint32_t who, const bool *skills);

/* Each adds what it knows for the finding that is looked at, if anything. */
void seek_slips(struct seeker *s);      /* words that are likely meant otherwise */
void seek_facts(struct seeker *s);      /* facts that the sheet shows otherwise */
void seek_figures(struct seeker *s);    /* figures that are too small, weeks of lines */
void seek_moves(struct seeker *s);      /* a line of program.md elsewhere */
void seek_lines(struct seeker *s);      /* a line of program.md that is missing, or optional */
void seek_teaching(struct seeker *s);   /* a line of Teaches that is missing */
void seek_hosts(struct seeker *s);      /* Teaches as a whole, of work that has none */
void seek_other_skills(struct seeker *s); /* a skill in place of another */
void seek_lost(struct seeker *s);       /* a file of an assignment that is missing */
void seek_names(struct seeker *s);      /* headings, facts and ids by other names */
void seek_headings(struct seeker *s);   /* a heading that is missing */
void seek_owed(struct seeker *s);       /* facts and weights that are missing */
void seek_paths(struct seeker *s);      /* entry paths that begin elsewhere */

/* Which of two findings comes first, however the files are cut: <0, 0, >0. */
int seek_compare(struct seeker *s, const struct finding *a, const struct finding *b);

#endif
