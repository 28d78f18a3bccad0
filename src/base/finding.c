#include "base/finding.h"

#include "base/buf.h"

#include <assert.h>
#include <stdarg.h>
#include <string.h>

static const struct finding_info infos[] = {
#define FINDING(symbol, finding_level, finding_name, text)                        \
	[FINDING_##symbol] = { .name = finding_name, .level = LEVEL_##finding_level, \
	    .help = text, .class = CLASS_FIRM, .custom = "" },
#include "base/finding.def"
#undef FINDING
#define EXAMPLE(symbol, text, way)                                                \
	[FINDING_##symbol].example = text, [FINDING_##symbol].repair = way,
#include "base/example.def"
#undef EXAMPLE
#define RULE(symbol, level, class, name, custom, help, example)                   \
	[FINDING_##symbol] = { name, LEVEL_##level, help, CLASS_##class, custom,     \
	    example, "" },
#include "base/rule.def"
#undef RULE
};
_Static_assert(sizeof infos / sizeof *infos == FINDING_COUNT, "one row a finding");

/* Each row of finding.def owes a row of example.def: whoever adds the one without the
 * other is told here by the compiler, by name. */
enum {
#define EXAMPLE(symbol, text, way) EXAMPLE_OF_##symbol,
#include "base/example.def"
#undef EXAMPLE
#define FINDING(symbol, level, name, help) OWES_##symbol = EXAMPLE_OF_##symbol,
#include "base/finding.def"
#undef FINDING
};

const struct finding_info *finding_info(enum finding_name name)
{
	assert(name < FINDING_COUNT);
	return &infos[name];
}

bool finding_is_of_order(enum finding_name name)
{
	return name >= FINDING_WORK_BEFORE_SHOP_SAFETY &&
	    name <= FINDING_MACHINE_BEFORE_WRITTEN_TEST;
}

const char *level_word(enum finding_level level)
{
	static const char *const words[] = { "note", "warning", "error" };

	return words[level];
}

struct findings *findings_new(struct arena *a)
{
	struct findings *f = arena_alloc(a, sizeof *f);

	f->arena = a;
	return f;
}

struct finding *finding_addv(struct findings *f, enum finding_name name, struct pos pos,
    const char *format, va_list *ap)
{
	struct finding *d = ARENA_PUSH(f->arena, f->v, f->n, f->cap);
	struct buf b = { .arena = f->arena };

	buf_addv(&b, format, ap);
	d->name = name;
	d->level = finding_info(name)->level;
	d->pos = pos;
	d->message = buf_str(&b);
	return d;
}

struct finding *finding_add(struct findings *f, enum finding_name name, struct pos pos,
    const char *format, ...)
{
	struct finding *d;
	va_list ap;

	va_start(ap, format);
	d = finding_addv(f, name, pos, format, &ap);
	va_end(ap);
	return d;
}

void finding_cause(struct findings *f, struct finding *d, const char *format, ...)
{
	struct buf b = { .arena = f->arena };
	va_list ap;

	va_start(ap, format);
	buf_addv(&b, format, &ap);
	va_end(ap);
	d->cause = buf_str(&b);
}

void finding_repair(struct findings *f, struct finding *d, const char *format, ...)
{
	struct buf b = { .arena = f->arena };
	va_list ap;

	va_start(ap, format);
	buf_addv(&b, format, &ap);
	va_end(ap);
	d->repair = buf_str(&b);
}

struct slip *finding_slip(struct findings *f, struct finding *d, struct pos pos, str wrong,
    str right)
{
	struct slip *s = arena_alloc(f->arena, sizeof *s);
	struct slip **end = &d->slips;

	/* Rules work with words in memory that goes before trials begin. */
	*s = (struct slip){ .pos = pos, .wrong = str_copy(f->arena, wrong),
		.right = str_copy(f->arena, right) };
	while (*end)
		end = &(*end)->next;
	*end = s;
	return s;
}

static str may_be_meant(struct arena *a, str right)
{
	return str_format(a, "write \"%.*s\" if that is what is meant", STR_ARG(right));
}

void finding_offer(struct findings *f, struct finding *d, struct pos pos, str wrong,
    str right)
{
	d->repair = may_be_meant(f->arena, right);
	finding_slip(f, d, pos, wrong, right);
}

void finding_guess(struct findings *f, struct finding *d, struct pos pos, str wrong,
    str right)
{
	struct slip *s = finding_slip(f, d, pos, wrong, right);

	s->say = may_be_meant(f->arena, right);
	s->guess = true;
}

struct related *finding_relate(struct findings *f, struct finding *d, struct pos pos)
{
	struct related *r = ARENA_PUSH(f->arena, d->related, d->nrelated, d->related_cap);

	r->pos = pos;
	return r;
}

void finding_list(struct findings *f, struct finding *to, const struct finding *d)
{
	struct related *r = finding_relate(f, to, d->pos);

	r->assignment = d->assignment;
	r->skill = d->skill;
	r->label = d->message;
	r->listed = true;
	r->name = d->name;
	for (size_t i = 0; i < d->nrelated; i++)
		*finding_relate(f, to, d->related[i].pos) = d->related[i];
}

/* What an error holds back. One that names nothing holds everything. */
static enum finding_scope held_by(const struct finding *d)
{
	if (d->level != LEVEL_ERROR)
		return SCOPE_FILE;
	if (d->scope == SCOPE_FILE)
		return d->assignment.n ? SCOPE_ASSIGNMENTS : SCOPE_PROGRAM;
	return d->scope;
}

/* What both hold back, one now holds. */
static void widen(struct finding *to, const struct finding *d)
{
	enum finding_scope own = held_by(to), more = held_by(d);

	if (d->level != LEVEL_ERROR) {
		to->level = d->level > to->level ? d->level : to->level;
		return;
	}
	if (own == SCOPE_QUARTER && more == SCOPE_QUARTER && to->quarter != d->quarter)
		more = SCOPE_PROGRAM;
	if (more == SCOPE_QUARTER && own < more)
		to->quarter = d->quarter;
	to->scope = more > own ? more : own;
	to->level = LEVEL_ERROR;
}

void finding_take(struct findings *f, struct finding *to, struct finding *d)
{
	widen(to, d);
	finding_list(f, to, d);
	d->name = FINDING_COUNT;
}

void findings_sweep(struct findings *f)
{
	size_t kept = 0;

	for (size_t i = 0; i < f->n; i++)
		if (f->v[i].name != FINDING_COUNT)
			f->v[kept++] = f->v[i];
	f->n = kept;
}

void finding_copy(struct findings *f, const struct finding *d)
{
	struct finding *own = ARENA_PUSH(f->arena, f->v, f->n, f->cap);

	*own = *d;
	own->related_cap = d->nrelated;
}

void findings_join(struct findings *f, const struct findings *more)
{
	f->v = arena_grow(f->arena, f->v, f->n, f->n + more->n, &f->cap, sizeof *f->v);
	for (size_t i = 0; i < more->n; i++)
		finding_copy(f, &more->v[i]);
}

str likely_word(str wrong, const str *words, size_t n)
{
	size_t best = wrong.n / 3 + (wrong.n >= 3 ? 1 : 0);
	str hit = { 0 };

	for (size_t i = 0; i < n && best > 0; i++) {
		size_t d = str_distance(wrong, words[i], best - 1);

		if (d < best) {
			best = d;
			hit = words[i];
		}
	}
	return hit;
}

static int compare(const struct finding *a, const struct finding *b)
{
	int c = pos_cmp(a->pos, b->pos);

	if (!c)
		c = (a->name > b->name) - (a->name < b->name);
	return c ? c : str_cmp(a->message, b->message);
}

static int compare_depth(const struct finding *a, const struct finding *b)
{
	return (a->depth > b->depth) - (a->depth < b->depth);
}

typedef int order_of(const struct finding *a, const struct finding *b);

/* Bottom-up merge: stable, no recursion, and qsort's order of equals is not. */
static void merge_runs(const struct finding *from, struct finding *to, size_t n, size_t run,
    order_of *order)
{
	for (size_t start = 0; start < n; start += 2 * run) {
		size_t mid = start + run < n ? start + run : n;
		size_t end = mid + run < n ? mid + run : n;
		size_t i = start, j = mid;

		for (size_t k = start; k < end; k++)
			to[k] = i < mid && (j == end || order(&from[i], &from[j]) <= 0)
			    ? from[i++] : from[j++];
	}
}

static void merge_sort(struct arena *a, struct finding *v, size_t n, order_of *order)
{
	struct finding *spare = arena_array(a, n, sizeof *spare);
	struct finding *from = v, *to = spare;

	for (size_t run = 1; run < n; run *= 2) {
		struct finding *swap = from;

		merge_runs(from, to, n, run, order);
		from = to;
		to = swap;
	}
	if (from != v && n)
		memcpy(v, from, n * sizeof *v);
}

static void drop_repeats(struct findings *f)
{
	size_t kept = 0;

	for (size_t i = 0; i < f->n; i++)
		if (!kept || compare(&f->v[kept - 1], &f->v[i]))
			f->v[kept++] = f->v[i];
	f->n = kept;
}

/* Those with a depth change places among themselves; equal depths keep theirs. */
static void sort_depths(struct findings *f)
{
	struct finding *deep = NULL;
	size_t n = 0, cap = 0, k = 0;

	for (size_t i = 0; i < f->n; i++)
		if (f->v[i].depth)
			*ARENA_PUSH(f->arena, deep, n, cap) = f->v[i];
	if (n < 2)
		return;
	merge_sort(f->arena, deep, n, compare_depth);
	for (size_t i = 0; i < f->n; i++)
		if (f->v[i].depth)
			f->v[i] = deep[k++];
}

void findings_sort(struct findings *f)
{
	merge_sort(f->arena, f->v, f->n, compare);
	drop_repeats(f);
	sort_depths(f);
}

size_t findings_count(const struct findings *f, enum finding_level level)
{
	size_t n = 0;

	for (size_t i = 0; i < f->n; i++)
		n += f->v[i].level == level && !f->v[i].waived;
	return n;
}

size_t findings_count_waived(const struct findings *f)
{
	size_t n = 0;

	for (size_t i = 0; i < f->n; i++)
		n += f->v[i].waived != NULL;
	return n;
}
