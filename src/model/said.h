/* model/said.h - slices of a block's words that know their place, and the readers
 * and complaints that every part of this room shares.
 *
 * A reader that fails has reported the fault at its place and returns false; its
 * output is then zeroed. */
#ifndef MODEL_SAID_H
#define MODEL_SAID_H

#include "base/language.h"
#include "model/words.h"

#include "read/record.h"

struct said {
	const struct block *in;
	str s;                   /* a slice of in->text or in->key */
};

struct unknown_id {
	size_t finding, slot;    /* indexes in the findings and in the model's slots */
	str title;               /* of the bracket; may be empty */
};

/* What is being read, so that complaints name what they hold back. Each thread has its
 * own; of the model it changes only the assignment or the file that it reads. */
struct binder {
	struct arena *arena;
	struct model *model;
	struct findings *f;
	struct assignment *a;    /* null outside an assignment */
	const struct block **facts; /* of that assignment, by row of its fact table */
	uint64_t nearly;         /* rows that a misspelt key means, so that they are not
	                          * told as missing too */
	const struct assignment *gauge_of; /* whose gauges without a metal stand in finding */
	size_t gauge;            /* `gauge` of f */
	struct standard *standard; /* the set of limits being read */
	uint32_t quarter;        /* of program.md, 0 outside */
	const struct language *language; /* of a translation being read; null: the original */
	bool aside;              /* in a file that no packet prints, such as shop.md */
	size_t told;             /* findings that stand before the first of f */
	/* What the assignments of this part use; summed up when all are read. */
	uint32_t *picture_uses;  /* by picture of the model */
	bool *sets_wanted;       /* by shipped set of the model */
	/* Stations and machines that shop.md does not have, see shop_word.h. */
	struct strange_word *strange; size_t nstrange, strange_cap;
	const struct record_file *program; /* until its weeks are doubted; else null */
	const struct block *weeks_in; /* the fact that says how many a quarter has */
	/* Ids in program.md that no file defines: what is meant is known once all lines
	 * are read. */
	struct unknown_id *unknown; size_t nunknown, unknown_cap;
};

/* The whole text of a block, and the slice t[from, to). */
static inline struct said said_all(const struct block *in)
{
	return (struct said){ in, in->text };
}

static inline struct said said_sub(struct said t, size_t from, size_t to)
{
	return (struct said){ t.in, str_sub(t.s, from, to) };
}

static inline struct said said_trim(struct said t)
{
	return (struct said){ t.in, str_trim(t.s) };
}

struct pos said_pos(struct said t);
/* The next trimmed part before any of the bytes of seps; empty parts are passed
 * over. False once nothing is left. */
bool said_next(struct said *rest, const char *seps, struct said *part);
/* The next run of non-blank bytes. */
static inline bool said_word(struct said *rest, struct said *word)
{
	word->in = rest->in;
	return str_word(&rest->s, &word->s);
}

/* Takes a leading word (without case, a blank or the end after it) off *t. */
bool said_skip(struct said *t, str word);

struct finding *complain(struct binder *b, enum finding_name name, struct pos pos,
    const char *format, ...) __attribute__((format(printf, 4, 5)));
/* Whether a likely word is worked out for d, just added: for the first findings only. */
bool is_worth_a_guess(const struct binder *b, const struct finding *d);
/* UNKNOWN_WORD with the likely word, or the whole list, as repair. Returns the value for
 * which it is taken, so that one slip does not make others; NONE: it is left out. */
uint32_t complain_word(struct binder *b, struct said t, const struct words *w);
/* Repair: the likely one of n words, when one is near; that word, or empty. The wrong one
 * stands at the place of d. Others as near are noted for trial. */
str offer_likely(struct binder *b, struct finding *d, str wrong, const str *v, size_t n);
/* Notes for trial those of n words, a few at the most, that are not noted and at most so
 * many letters away. */
enum { ANY_DISTANCE = 1000 };
void offer_guesses(struct binder *b, struct finding *d, str wrong, const str *v, size_t n,
    size_t most);
/* The same once it is known what is missing: for the key or heading at pos, told in a
 * finding from `from` on, unless a likely one was offered. */
void offer_missing(struct binder *b, size_t from, struct pos pos, str wrong, const str *v,
    size_t n);
/* NOT_UNDERSTOOD for a block that has no meaning where it stands. */
void complain_block(struct binder *b, const struct block *v, const char *wanted);
/* DUPLICATE_ID for a heading whose name another has, which counts. */
void complain_same_name(struct binder *b, const struct block *h, struct pos first);
void complain_fault(struct binder *b, struct said t, const struct quantity_fault *fault);

/* False when the word is left out; a misspelt one is taken for the likely one. */
bool read_word(struct binder *b, struct said t, const struct words *w, uint32_t *value);
/* A whole number from lo to hi. */
bool read_count(struct binder *b, struct said t, uint32_t lo, uint32_t hi, uint32_t *out);
/* A number that may carry a fraction, at least 0 and below 100,000. */
bool read_number(struct binder *b, struct said t, double *out);
bool read_quantity(struct binder *b, struct said t, enum quantity_kind kind,
    enum sheet_metal metal, struct quantity *out);
/* Whether q can be the size of a thing; a length of nothing is BAD_QUANTITY and q is
 * cleared. */
bool keep_size(struct binder *b, struct said t, struct quantity *q);
/* "5/16 in" or "1/4 x 3/8 in": a leg on the first member, then on the second. second is
 * cleared when both are alike. */
bool read_legs(struct binder *b, struct said t, enum sheet_metal metal, struct quantity *first,
    struct quantity *second);
bool read_pipe(struct binder *b, struct said t, struct pipe_size *out);
/* "16" or "16 h". */
bool read_hours(struct binder *b, struct said t, double *out);
/* "smaw.2f assessed" with what follows left in *t. */
bool read_skill_at(struct binder *b, struct said *t, struct skill_at *out);

/* Whether q was given at all; and its one value, 0 when not given. */
bool quantity_given(const struct quantity *q);
double quantity_mm(const struct quantity *q);
/* The pipe size that q names, zeroed when it names none. */
struct pipe_size pipe_size_of(struct arena *a, const struct quantity *q);
bool quantity_same(const struct quantity *a, const struct quantity *b);

/* The id at the start of s in canonical letters, and the bytes it takes; empty when
 * s does not begin with one. */
str id_of_assignment(struct arena *a, str s, size_t *used);
str id_of_course(struct arena *a, str s, size_t *used);
str id_of_skill(struct arena *a, str s);
/* What stands after the colon or dash that ends an id in a heading; false when
 * something else follows the id. */
bool title_after(struct said heading, size_t used, struct said *title);

#endif
