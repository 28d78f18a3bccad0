#include "cli/want.h"

#include "base/buf.h"
#include "model/translation.h"

#include <stdio.h>

/* "orw130", "ORW-130" and "ORW 130" are one course: letters and digits count. */
static str squeezed(struct arena *a, str s)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < s.n; i++) {
		char c = s.p[i];

		if (c >= 'A' && c <= 'Z')
			c = (char)(c + 32);
		if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'))
			buf_addc(&b, c);
	}
	return buf_str(&b);
}

/* "ORW 130" and "SM-20" as a folder: "orw-130", "sm-20". */
static str folder_name(struct arena *a, str id)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < id.n; i++) {
		char c = id.p[i];

		buf_addc(&b, c >= 'A' && c <= 'Z' ? (char)(c + 32) : c == ' ' ? '-' : c);
	}
	return buf_str(&b);
}

static struct want *add_want(struct arena *a, struct wants *out, str folder, str name)
{
	struct want *w = ARENA_PUSH(a, out->v, out->n, out->cap);

	w->folder = folder;
	w->name = name;
	for (int part = 0; part < BUNDLE_PARTS; part++)
		w->parts[part] = true;
	return w;
}

/* Assignments of a quarter (or of one course of it), in their order. */
static void take_placed(struct arena *a, struct want *w, const struct order *o,
    uint32_t quarter, uint32_t course)
{
	size_t cap = 0;

	for (size_t i = 0; i < o->nwalk; i++) {
		const struct place *p = &o->places[o->walk[i]];
		bool mine = course == NONE ? p->quarter == quarter
					   : o->model->slots[p->slot].course == course;

		if (!mine)
			continue;
		w->assignments = arena_grow(
		    a, w->assignments, w->n, w->n + 1, &cap, sizeof *w->assignments);
		w->assignments[w->n++] = o->walk[i];
	}
}

static void want_quarter(
    struct arena *a, struct wants *out, const struct order *o, uint32_t q)
{
	struct want *w = add_want(
	    a, out, str_format(a, "q%u", q), str_format(a, "Quarter %u", q));

	w->quarter = q;
	take_placed(a, w, o, q, NONE);
}

static bool find_quarter(const struct run *r, str word, uint32_t *q)
{
	return (word.n > 1 && word.p[0] == 'q') &&
	    str_to_u32(str_sub(word, 1, word.n), q) && *q && *q <= r->model->nquarters;
}

static bool find_course(const struct run *r, str word, uint32_t *course)
{
	for (size_t i = 0; i < r->model->ncourses; i++)
		if (str_eq(squeezed(r->arena, r->model->courses[i].id), word)) {
			*course = (uint32_t)i;
			return true;
		}
	return false;
}

static bool find_assignment(const struct run *r, str word, uint32_t *x)
{
	for (size_t i = 0; i < r->model->nassignments; i++)
		if (str_eq(squeezed(r->arena, r->model->assignments[i].id), word)) {
			*x = (uint32_t)i;
			return true;
		}
	return false;
}

/* One thing named by `word`, squeezed. False: nothing has that name. */
static bool want_named(
    const struct run *r, const struct order *o, str word, struct wants *out)
{
	struct want *w;
	uint32_t i;

	if (find_quarter(r, word, &i)) {
		want_quarter(r->arena, out, o, i);
		return true;
	}
	if (find_course(r, word, &i)) {
		w = add_want(r->arena, out,
		    folder_name(r->arena, r->model->courses[i].id),
		    r->model->courses[i].id);
		take_placed(r->arena, w, o, 0, i);
		return true;
	}
	if (!find_assignment(r, word, &i))
		return false;
	w = add_want(r->arena, out, folder_name(r->arena, r->model->assignments[i].id),
	    r->model->assignments[i].id);
	w->assignments = arena_alloc(r->arena, sizeof *w->assignments);
	w->assignments[0] = i;
	w->n = 1;
	w->parts[BUNDLE_CHART] = false; /* One column is no chart. */
	return true;
}

/* Takes one word, or two that belong together ("ORW 130"); 0: names nothing. */
static int take_words(const struct run *r, const struct options *o,
    const struct order *order, int at, struct wants *out)
{
	str one = squeezed(r->arena, str_of(o->words[at])), two;

	if (at + 1 < o->nwords) {
		two = str_format(r->arena, "%s%s", o->words[at], o->words[at + 1]);
		if (want_named(r, order, squeezed(r->arena, two), out))
			return 2;
	}
	return want_named(r, order, one, out);
}

/* The words of documents, squeezed. A part goes with each quarter, course or assignment
 * named; a book is one for the whole program. */
static const struct {
	str word;
	int part, book;
} documents[] = {
	{ STR("packets"), BUNDLE_PACKET, -1 },
	{ STR("grading"), BUNDLE_GRADING, -1 },
	{ STR("cards"), BUNDLE_CARDS, -1 },
	{ STR("chart"), BUNDLE_CHART, -1 },
	{ STR("keys"), -1, BOOK_KEYS },
	{ STR("templates"), -1, BOOK_TEMPLATES },
	{ STR("labels"), -1, BOOK_LABELS },
	{ STR("printlist"), -1, BOOK_PRINT_LIST },
};

/* Takes the word of a document; false: it is none. */
static bool take_document(str word, struct wants *out, bool *parts)
{
	for (size_t i = 0; i < sizeof documents / sizeof *documents; i++) {
		if (!str_eq(word, documents[i].word))
			continue;
		if (documents[i].part >= 0)
			parts[documents[i].part] = true;
		else
			out->books[documents[i].book] = true;
		return true;
	}
	return false;
}

/* Parts that are named alone are printed, of what is named or of every quarter. */
static void keep_parts(struct wants *out, const bool *parts, bool any)
{
	for (size_t i = 0; i < out->n && any; i++)
		for (int part = 0; part < BUNDLE_PARTS; part++)
			out->v[i].parts[part] = parts[part];
}

bool want_read(const struct run *r, const struct options *o, const struct order *order,
    struct wants *out)
{
	bool parts[BUNDLE_PARTS] = { false }, any = false;

	for (int book = 0; book < BOOK_COUNT; book++)
		out->books[book] = !o->nwords;
	for (int i = 0, used; i < o->nwords; i += used) {
		used = 1;
		if (take_document(squeezed(r->arena, str_of(o->words[i])), out, parts))
			continue;
		used = take_words(r, o, order, i, out);
		if (used)
			continue;
		fprintf(stderr,
		    "fitup: nothing to print is called %s (Q1, a course, an assignment, "
		    "packets, grading, cards, chart, keys, templates, labels, "
		    "print-list)\n",
		    o->words[i]);
		return false;
	}
	out->books[BOOK_SAID_LABELS] = out->books[BOOK_LABELS] && speech_language(r->model);
	for (int part = 0; part < BUNDLE_PARTS; part++)
		any |= parts[part];
	if (!out->n && (any || !o->nwords))
		for (uint32_t q = 1; q <= r->model->nquarters; q++)
			want_quarter(r->arena, out, order, q);
	keep_parts(out, parts, any);
	return true;
}
