#include "check/rules.h"

#include "check/rule_metal.h"
#include "check/rule_test.h"
#include "check/rule_text.h"
#include "check/rule_trade.h"
#include "check/tell.h"

#include <assert.h>

#define RULE_SHEET(function, which) void function(struct rule_context *x, uint32_t w);
#define RULE_RUN(function, when) void function(struct rule_context *x);
#include "check/rules.def"
#undef RULE_SHEET
#undef RULE_RUN

static const struct rule rules[] = {
#define RULE_SHEET(function, which)
#define RULE_RUN(function, when) { function, RULE_##when },
#include "check/rules.def"
#undef RULE_SHEET
#undef RULE_RUN
	{ NULL, RULE_ONCE },
};

static const struct sheet_rule sheet_rules[] = {
#define RULE_SHEET(function, which) { function, SHEETS_##which },
#define RULE_RUN(function, when)
#include "check/rules.def"
#undef RULE_SHEET
#undef RULE_RUN
};

/* One order that shows a fault. */
struct shown {
	uint32_t order;
	uint32_t next;           /* in rule_told.shown, NONE */
};

/* One fault, however many orders show it. */
struct told_fault {
	size_t finding;          /* index in the list */
	uint32_t first, last;    /* in rule_told.shown */
};

struct rule_told {
	struct view **views;
	uint32_t order;          /* index of the one under judgement */
	struct map *by_key;      /* a fault in words -> index in v */
	struct told_fault *v; size_t n, cap;
	struct shown *shown; size_t nshown, shown_cap;
	struct findings unseen;  /* where dropped findings are written */
};

static struct finding *drop(struct rule_told *t, enum finding_name name)
{
	t->unseen.n = 0;
	return finding_add(&t->unseen, name, (struct pos){ POS_NOWHERE, 0, 0 }, "dropped");
}

/* Notes that the order under judgement shows a fault; false when it did before. */
static bool note_shown(struct rule_told *t, struct told_fault *d)
{
	uint32_t at = (uint32_t)t->nshown;

	if (d->last != NONE && t->shown[d->last].order == t->order)
		return false;
	if (d->last == NONE)
		d->first = at;
	else
		t->shown[d->last].next = at;
	d->last = at;
	*ARENA_PUSH(t->unseen.arena, t->shown, t->nshown, t->shown_cap) =
	    (struct shown){ t->order, NONE };
	return true;
}

/* Notes a fault under a key; whether it is told for the first time. *again: this very
 * order showed it before. */
static bool note_key(struct rule_context *x, str key, bool *again)
{
	struct rule_told *t = x->told;
	uint32_t fresh = (uint32_t)t->n, at = map_add(t->by_key, key, fresh);

	if (at == fresh)
		*ARENA_PUSH(x->scratch, t->v, t->n, t->cap) =
		    (struct told_fault){ x->f->n, NONE, NONE };
	*again = !note_shown(t, &t->v[at]);
	return at == fresh;
}

/* A fault is known by its place, whatever its words say of another order. Where one
 * order shows two at one place, their words tell them apart. */
static bool is_new(struct rule_context *x, enum finding_name name, struct pos pos,
    uint32_t assignment, str message)
{
	bool again;
	str key = str_format(x->scratch, "%u %u %u %u %u", (unsigned)name, pos.file,
	    pos.line, pos.col, assignment);

	if (note_key(x, key, &again))
		return true;
	return again && note_key(x, str_format(x->scratch, "%.*s %.*s", STR_ARG(key),
	    STR_ARG(message)), &again);
}

/* What a waiver covers is told all the same, or the waiver would seem idle. */
static bool is_waived(const struct rule_context *x, enum finding_name name,
    uint32_t assignment)
{
	for (size_t i = 0; i < x->m->nwaivers; i++)
		if (x->m->waivers[i].name == name && str_eq(x->m->waivers[i].assignment,
		    x->m->assignments[assignment].id))
			return true;
	return false;
}

/* Whether what must come first may be in work whose process, joint, position or kind
 * could not be read, or that no file defines: that is an error already, and mending it tells. */
static bool may_be_unread(const struct rule_context *x, enum finding_name name,
    uint32_t assignment)
{
	return x->unread != NONE && assignment != NONE && finding_is_of_order(name) &&
	    name != FINDING_TEST_IN_EDGE_WEEK &&
	    x->unread <= x->view->units->of[assignment] &&
	    !is_waived(x, name, assignment);
}

struct finding *rule_report(struct rule_context *x, enum finding_name name,
    struct pos pos, uint32_t assignment, const char *format, ...)
{
	struct buf text = { .arena = x->scratch };
	struct finding *d;
	va_list ap;

	va_start(ap, format);
	buf_addv(&text, format, &ap);
	va_end(ap);
	if (x->off[name] || may_be_unread(x, name, assignment) ||
	    !is_new(x, name, pos, assignment, buf_str(&text)))
		return drop(x->told, name);
	d = finding_add(x->f, name, pos, "%.*s", STR_ARG(buf_str(&text)));
	d->scope = assignment == NONE ? SCOPE_PROGRAM : SCOPE_FILE;
	if (assignment != NONE)
		d->assignment = x->m->assignments[assignment].id;
	return d;
}

static void note_first(uint32_t *slot, uint32_t assignment)
{
	if (*slot == NONE)
		*slot = assignment;
}

/* Files one unit of which `holds` of its n branches do the thing, `who` the first. */
static void note_unit(struct first *f, const struct units *us, uint32_t u, uint32_t n,
    uint32_t holds, uint32_t who)
{
	if (holds == n)
		note_first(us->optional[u] ? &f->optional : &f->sure, who);
	else if (holds)
		note_first(&f->branch, who);
}

struct first rule_first(const struct rule_context *x,
    bool (*is)(const struct rule_context *, uint32_t, const void *), const void *with)
{
	const struct units *us = x->view->units;
	struct first f = { NONE, NONE, NONE };

	for (uint32_t u = 0; u < us->n && f.sure == NONE; u++) {
		uint32_t holds = 0, who = NONE;

		for (uint32_t i = us->at[u]; i < us->at[u + 1]; i++)
			if (is(x, x->o->walk[i], with)) {
				holds++;
				note_first(&who, x->o->walk[i]);
			}
		note_unit(&f, us, u, us->at[u + 1] - us->at[u], holds, who);
	}
	return f;
}

/* How many branches of the unit being read have a key. */
struct key_count {
	uint32_t stamp, holds, who;
};

static void count_keys(const struct rule_context *x, uint32_t u, struct key_count *count,
    uint32_t (*keys)(const struct rule_context *, uint32_t, uint32_t *, uint32_t))
{
	const struct units *us = x->view->units;
	uint32_t v[RULE_KEYS_MOST];

	for (uint32_t i = us->at[u]; i < us->at[u + 1]; i++) {
		uint32_t n = keys(x, x->o->walk[i], v, RULE_KEYS_MOST);

		assert(n <= RULE_KEYS_MOST);
		for (uint32_t k = 0; k < n; k++) {
			struct key_count *c = &count[v[k]];

			if (c->stamp != u + 1)
				*c = (struct key_count){ u + 1, 0, x->o->walk[i] };
			c->holds++;
		}
	}
}

/* A second reading of the same unit files each of its keys once. */
static void file_keys(const struct rule_context *x, uint32_t u, struct key_count *count,
    uint32_t (*keys)(const struct rule_context *, uint32_t, uint32_t *, uint32_t),
    struct first *f)
{
	const struct units *us = x->view->units;
	uint32_t v[RULE_KEYS_MOST];

	for (uint32_t i = us->at[u]; i < us->at[u + 1]; i++) {
		uint32_t n = keys(x, x->o->walk[i], v, RULE_KEYS_MOST);

		for (uint32_t k = 0; k < n; k++) {
			struct key_count *c = &count[v[k]];

			note_unit(&f[v[k]], us, u, us->at[u + 1] - us->at[u], c->holds,
			    c->who);
			c->holds = 0;
		}
	}
}

/* An assignment that is no choice, as most are, is read once. */
static void file_alone(const struct rule_context *x, uint32_t u,
    uint32_t (*keys)(const struct rule_context *, uint32_t, uint32_t *, uint32_t),
    struct first *f)
{
	const struct units *us = x->view->units;
	uint32_t v[RULE_KEYS_MOST], who = x->o->walk[us->at[u]];
	uint32_t n = keys(x, who, v, RULE_KEYS_MOST);

	assert(n <= RULE_KEYS_MOST);
	for (uint32_t k = 0; k < n; k++)
		note_unit(&f[v[k]], us, u, 1, 1, who);
}

struct first *rule_firsts(const struct rule_context *x, uint32_t nkeys,
    uint32_t (*keys)(const struct rule_context *, uint32_t, uint32_t *, uint32_t))
{
	struct first *f = arena_array(x->scratch, nkeys, sizeof *f);
	struct key_count *count = arena_array(x->scratch, nkeys, sizeof *count);

	for (uint32_t k = 0; k < nkeys; k++)
		f[k] = (struct first){ NONE, NONE, NONE };
	for (uint32_t u = 0; u < x->view->units->n; u++) {
		if (!unit_is_choice(x->view->units, u)) {
			file_alone(x, u, keys, f);
			continue;
		}
		count_keys(x, u, count, keys);
		file_keys(x, u, count, keys, f);
	}
	return f;
}

struct first rule_taught(struct rule_context *x, uint32_t skill, enum skill_level level)
{
	const struct firsts *f;

	view_detail(x->scratch, x->view);
	f = &x->view->firsts[cell_of(skill, level)];
	return (struct first){ f->assignment[STANDING_COUNTS][0],
		f->assignment[STANDING_OPTIONAL][0], f->assignment[STANDING_BRANCH][0] };
}

bool rule_brought(const struct rule_context *x, uint32_t skill, enum skill_level level)
{
	return x->view->brought[skill] >= level;
}

bool rule_is_placed(const struct rule_context *x, uint32_t assignment)
{
	return x->view->units->of[assignment] != NONE;
}

bool rule_earlier(const struct rule_context *x, uint32_t a, uint32_t b)
{
	const uint32_t *of = x->view->units->of;

	return a != NONE && b != NONE && of[a] != NONE && of[b] != NONE && of[a] < of[b];
}

enum met rule_met(const struct rule_context *x, struct first first, uint32_t asker)
{
	const struct units *us = x->view->units;

	if (rule_earlier(x, first.sure, asker))
		return MET;
	if (rule_earlier(x, first.optional, asker))
		return us->optional[us->of[asker]] ? MET : MET_OPTIONAL;
	if (rule_earlier(x, first.branch, asker))
		return MET_BRANCH;
	return first.sure == NONE && first.optional == NONE && first.branch == NONE
	    ? MET_NEVER : MET_LATER;
}

uint32_t rule_named(struct first first, enum met met)
{
	if (met == MET_OPTIONAL && first.optional != NONE)
		return first.optional;
	if (met == MET_BRANCH && first.branch != NONE)
		return first.branch;
	return first.sure != NONE ? first.sure
	    : first.optional != NONE ? first.optional : first.branch;
}

str rule_place(const struct rule_context *x, uint32_t assignment)
{
	struct buf b = { .arena = x->f->arena };

	tell_place(&b, x->o, assignment);
	return buf_str(&b);
}

/* By finding name: whether customs.md switches its custom off. */
static bool *customs_off(struct arena *a, const struct model *m)
{
	bool *off = arena_array(a, FINDING_COUNT, sizeof *off);

	for (size_t i = 0; i < m->ncustoms_off; i++)
		for (uint32_t k = 0; k < FINDING_COUNT; k++) {
			const struct finding_info *info = finding_info(k);

			off[k] |= info->class == CLASS_CUSTOM &&
			    str_eq(str_of(info->custom), m->customs_off[i].custom);
		}
	return off;
}

static void run_over(struct rule_context *x, const struct rule *table, struct view *v,
    bool first)
{
	uint32_t slot, lost;

	x->o = v->order;
	x->view = v;
	x->unread = NONE;
	for (size_t i = 0; i < v->order->nwalk && x->unread == NONE; i++)
		if (x->m->assignments[v->order->walk[i]].unread)
			x->unread = v->units->of[v->order->walk[i]];
	lost = units_behind_lost(v->units, &slot);
	x->unread = lost < x->unread ? lost : x->unread;
	work_lists_fill(x->scratch, &x->lists, x->work, v->order);
	for (const struct rule *r = table; r->run; r++)
		if (first || r->when == RULE_EACH)
			r->run(x);
}

/* Says which entry paths show a fault: all, when that of program.md does not. */
static void add_paths(struct findings *f, const struct rule_told *t,
    const struct told_fault *d)
{
	bool program = !t->views[t->shown[d->first].order]->order->entry;
	struct buf b = { .arena = f->arena };
	uint32_t named = 0, more = 0;
	struct finding *out;

	for (uint32_t i = d->first; i != NONE; i = t->shown[i].next) {
		const struct entry *e = t->views[t->shown[i].order]->order->entry;

		if (e && named < 8)
			buf_addf(&b, "%s\"%.*s\"", named++ ? ", " : "",
			    STR_ARG(e->text));
		else
			more += e != NULL;
	}
	if (more)
		buf_addf(&b, " and %u more", more);
	if (!named)
		return;
	out = &f->v[d->finding];
	if (!program)
		out->message = str_format(f->arena, "%.*s, for those who come by %.*s",
		    STR_ARG(out->message), STR_ARG(buf_str(&b)));
	else if (out->cause.n)
		out->cause = str_format(f->arena,
		    "%.*s; the same for those who come by %.*s", STR_ARG(out->cause),
		    STR_ARG(buf_str(&b)));
}

struct rule_base *rule_base_new(struct arena *a, const struct model *m)
{
	struct rule_base *b = arena_alloc(a, sizeof *b);

	*b = (struct rule_base){ m, works_new(a, m), customs_off(a, m), trade_reads_new(a) };
	return b;
}

static struct rule_context begin(struct arena *scratch, const struct rule_base *base,
    struct rule_told *told, struct findings *f)
{
	*told = (struct rule_told){ .by_key = map_new(scratch, false),
	    .unseen = { .arena = scratch } };
	return (struct rule_context){ .m = base->m, .f = f, .scratch = scratch, .told = told,
	    .work = base->work, .off = base->off, .reads = base->reads };
}

void rules_run_order(struct arena *scratch, const struct rule_base *base,
    struct view **views, size_t nviews, struct findings *f)
{
	struct rule_told told;
	struct rule_context x = begin(scratch, base, &told, f);

	told.views = views;
	x.moves = rule_moves_new(scratch, base->m, views, nviews, MOVES_NONE);
	for (size_t i = 0; i < nviews; i++) {
		told.order = (uint32_t)i;
		run_over(&x, rules, views[i], false);
	}
}

void rules_run_table(const struct rule *table, struct arena *scratch,
    const struct model *m, struct view **views, size_t nviews, enum check_moves how,
    struct findings *f)
{
	struct rule_told told;
	struct rule_context x = begin(scratch, rule_base_new(scratch, m), &told, f);

	told.views = views;
	x.moves = rule_moves_new(scratch, m, views, nviews, how);
	for (size_t i = 0; i < nviews; i++) {
		told.order = (uint32_t)i;
		run_over(&x, table, views[i], i == 0);
	}
	for (size_t i = 0; i < told.n; i++)
		add_paths(f, &told, &told.v[i]);
}

void rules_run(struct arena *scratch, const struct model *m, struct view **views,
    size_t nviews, enum check_moves how, struct findings *f)
{
	rules_run_table(rules, scratch, m, views, nviews, how, f);
}

bool assignment_is_bare(const struct assignment *a)
{
	return !a->nprocesses && !a->nmaterials && !a->npieces && !a->ndrawings &&
	    !a->ncriteria && !a->nfacts && a->kind != KIND_QUALIFICATION_TEST;
}

static enum sheet_which which_of(const struct assignment *a)
{
	return assignment_is_bare(a) ? SHEETS_ALL : a->nwelds ? SHEETS_WELDED : SHEETS_WORKED;
}

void rules_run_sheets(struct arena *scratch, const struct model *m, uint32_t from,
    uint32_t to, struct findings *f)
{
	struct rule_told told = { .by_key = map_new(scratch, false),
	    .unseen = { .arena = scratch } };
	struct settings settings;
	struct test_lines tests;
	struct rule_context x = { .m = m, .f = f, .scratch = scratch, .told = &told,
	    .off = customs_off(scratch, m), .unread = NONE, .settings = &settings,
	    .tests = &tests };

	for (uint32_t w = from; w < to; w++) {
		enum sheet_which which = which_of(&m->assignments[w]);

		settings = settings_of(scratch, &m->assignments[w]);
		tests = test_lines_of(scratch, &m->assignments[w]);
		for (size_t i = 0; i < sizeof sheet_rules / sizeof *sheet_rules; i++)
			if (sheet_rules[i].which <= which)
				sheet_rules[i].judge(&x, w);
	}
}
