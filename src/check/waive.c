#include "check/waive.h"

#include "base/buf.h"

struct waivers {
	struct arena *arena;
	struct map *by_key;      /* all that a waiver names -> index in model->waivers */
};

bool waiver_may_cover(enum finding_name name)
{
	static const enum finding_name own[] = { FINDING_FIRM_RULE_OFF,
		FINDING_SAFETY_WAIVER, FINDING_LAPSED_WAIVER, FINDING_IDLE_WAIVER };

	for (size_t i = 0; i < sizeof own / sizeof *own; i++)
		if (own[i] == name)
			return false;
	return finding_info(name)->class != CLASS_SAFETY;
}

/* Ids hold no blanks, so that blanks keep the parts apart. */
static str key_of(struct arena *a, enum finding_name name, str assignment, str skill)
{
	return str_format(a, "%u %.*s %.*s", (unsigned)name, STR_ARG(assignment),
	    STR_ARG(skill));
}

/* A course, a quarter or a station is known by the place of its heading. */
static str place_key(struct arena *a, enum finding_name name, struct pos p)
{
	return str_format(a, "%u at %u %u %u", (unsigned)name, p.file, p.line, p.col);
}

struct waivers *waivers_new(struct arena *a, const struct model *m)
{
	struct waivers *w;

	if (!m->nwaivers)
		return NULL;
	w = arena_alloc(a, sizeof *w);
	w->arena = a;
	w->by_key = map_new(a, false);
	for (size_t i = 0; i < m->nwaivers; i++) {
		const struct waiver *k = &m->waivers[i];

		map_add(w->by_key, k->about.n ? place_key(a, k->name, k->place)
		    : key_of(a, k->name, k->assignment, k->skill), (uint32_t)i);
	}
	return w;
}

static uint32_t earlier(uint32_t a, uint32_t b)
{
	return a < b ? a : b; /* NONE is the largest number. */
}

uint32_t waivers_find(const struct waivers *w, enum finding_name name, struct pos pos,
    str assignment, str skill)
{
	uint32_t found;

	if (!w)
		return NONE;
	found = map_find(w->by_key, key_of(w->arena, name, assignment, STR("")));
	if (skill.n)
		found = earlier(found,
		    map_find(w->by_key, key_of(w->arena, name, assignment, skill)));
	if (!assignment.n)
		found = earlier(found,
		    map_find(w->by_key, place_key(w->arena, name, pos)));
	return found;
}

/* What became of one waiver. */
struct fate {
	bool used, over;
	struct waived *mark;     /* made for the first finding it covers */
};

static const struct waived *mark_of(struct findings *f, const struct waiver *w,
    struct fate *fate)
{
	if (!fate->mark) {
		fate->mark = arena_alloc(f->arena, sizeof *fate->mark);
		*fate->mark = (struct waived){ w->reason, w->role, w->until };
	}
	return fate->mark;
}

/* Errors stand on their own: they hold work back. */
static bool list_under(struct findings *f, size_t to, size_t from)
{
	if (f->v[from].level == LEVEL_ERROR)
		return false;
	finding_take(f, &f->v[to], &f->v[from]);
	return true;
}

/* What a waiver means to cover is explained by what is wrong with its end. */
static void explain_endless(struct findings *f, const struct waiver *w, size_t from)
{
	for (size_t i = 0; i < f->n; i++)
		if (!pos_cmp(f->v[i].pos, w->until_pos) &&
		    (f->v[i].name == FINDING_UNKNOWN_WORD ||
		    f->v[i].name == FINDING_MISSING_FACT)) {
			list_under(f, i, from);
			return;
		}
}

static void mark_findings(const struct waivers *ws, const struct model *m,
    struct fate *fates, struct findings *f)
{
	for (size_t i = 0; i < f->n; i++) {
		struct finding *d = &f->v[i];
		uint32_t k = waivers_find(ws, d->name, d->pos, d->assignment,
		    d->skill);

		if (k == NONE || !waiver_may_cover(d->name) ||
		    d->pos.file == m->waivers[k].pos.file)
			continue;
		fates[k].used = true;
		if (m->waivers[k].endless)
			explain_endless(f, &m->waivers[k], i);
		else if (!fates[k].over)
			d->waived = mark_of(f, &m->waivers[k], &fates[k]);
	}
	findings_sweep(f);
}

static void add_subject(struct buf *b, const struct waiver *w)
{
	buf_adds(b, finding_info(w->name)->name);
	if (w->assignment.n)
		buf_addf(b, " for %.*s", STR_ARG(w->assignment));
	if (w->about.n)
		buf_addf(b, " for %.*s", STR_ARG(w->about));
	if (w->skill.n)
		buf_addf(b, "%s %.*s", w->assignment.n ? "," : " for",
		    STR_ARG(w->skill));
}

static void tell_over(const struct waiver *w, const struct fate *fate, struct findings *f)
{
	struct buf b = { .arena = f->arena };
	struct finding *d;

	add_subject(&b, w);
	d = finding_add(f, FINDING_LAPSED_WAIVER, w->until_pos,
	    "the waiver of %.*s ended with %.*s", STR_ARG(buf_str(&b)), STR_ARG(w->until));
	/* It names no assignment: what it covered stands again and holds back by itself. */
	d->scope = SCOPE_ASSIGNMENTS;
	if (fate->used)
		finding_cause(f, d, "what it covered stands again");
	finding_repair(f, d, "%s", fate->used
	    ? "mend what it covered, or let the role named agree to a later end"
	    : "delete the line: nothing is left for it to cover");
}

/* Why a waiver covers nothing, as far as it can be told. */
static const char *idle_cause(const struct model *m, const struct waiver *w,
    const bool *stands)
{
	const struct finding_info *info = finding_info(w->name);

	if (!waiver_may_cover(w->name))
		return "what is wrong in customs.md itself cannot be waived";
	if (w->assignment.n && map_find(m->assignment_by_id, w->assignment) == MAP_NONE)
		return "no assignment has that id";
	if (w->skill.n && map_find(m->skill_by_id, w->skill) == MAP_NONE)
		return "skills.md does not list that skill";
	for (size_t i = 0; i < m->ncustoms_off; i++)
		if (info->custom[0] && str_eq(m->customs_off[i].custom,
		    str_of(info->custom)))
			return "the custom is switched off, so nothing is found";
	if (!w->assignment.n && !w->about.n && stands[w->name])
		return "findings of that name stand, but they concern assignments that "
		    "it does not name";
	return "nothing of that name is found there, or another waiver covers it";
}

/* A waiver of an id that none has, just told, and a single finding that it may mean. */
static void explain_astray(const struct model *m, const struct waiver *w,
    struct findings *f)
{
	size_t hit = 0, n = 0;
	str meant;

	if (!w->assignment.n || map_find(m->assignment_by_id, w->assignment) != MAP_NONE)
		return;
	for (size_t i = 0; i + 1 < f->n; i++)
		if (f->v[i].name == w->name && !f->v[i].waived) {
			hit = i;
			n++;
		}
	meant = n == 1 ? f->v[hit].assignment : (str){ 0 };
	if (!meant.n || !likely_word(w->assignment, &meant, 1).n)
		return;
	if (list_under(f, f->n - 1, hit))
		finding_repair(f, &f->v[f->n - 1], "write \"%.*s\" if that is what is "
		    "meant, or delete the line", STR_ARG(meant));
	findings_sweep(f);
}

/* What program.md gives to nobody meets no rule of order: a waiver of one may serve again
 * once the assignment has its line. */
static void explain_unlisted(const struct waiver *w, struct findings *f)
{
	for (size_t i = 0; w->assignment.n && finding_is_of_order(w->name) && i + 1 < f->n; i++)
		if (f->v[i].name == FINDING_NOT_LISTED && !f->v[i].waived &&
		    str_eq_nocase(f->v[i].assignment, w->assignment)) {
			list_under(f, i, f->n - 1);
			findings_sweep(f);
			return;
		}
}

static void tell_idle(const struct model *m, const struct waiver *w, const bool *stands,
    struct findings *f)
{
	struct buf b = { .arena = f->arena };
	struct finding *d;

	add_subject(&b, w);
	d = finding_add(f, FINDING_IDLE_WAIVER, w->pos, "the waiver of %.*s covers nothing",
	    STR_ARG(buf_str(&b)));
	d->scope = SCOPE_ASSIGNMENTS;
	finding_cause(f, d, "%s", idle_cause(m, w, stands));
	finding_repair(f, d, "delete the line, or name what it is meant to cover");
	explain_astray(m, w, f);
	explain_unlisted(w, f);
}

/* While needs are unmet the order is about to change, and with it what its rules find. */
static bool may_serve_again(const struct waiver *w, const bool *stands)
{
	return finding_is_of_order(w->name) &&
	    (stands[FINDING_UNTAUGHT_SKILL] || stands[FINDING_NEEDS_LOOP]);
}

void waive_apply(struct arena *scratch, const struct model *m, const struct when *date,
    struct findings *f)
{
	struct waivers *ws = waivers_new(scratch, m);
	struct fate *fates = arena_array(scratch, m->nwaivers, sizeof *fates);
	bool *stands = arena_array(scratch, FINDING_COUNT, sizeof *stands);

	if (!ws)
		return;
	for (size_t i = 0; i < m->nwaivers; i++) {
		struct when until;

		fates[i].over = date && when_parse(m->waivers[i].until, &until) &&
		    when_over(until, *date);
	}
	mark_findings(ws, m, fates, f);
	for (size_t i = 0; i < f->n; i++)
		stands[f->v[i].name] |= !f->v[i].waived;
	for (size_t i = 0; i < m->nwaivers; i++) {
		if (fates[i].over)
			tell_over(&m->waivers[i], &fates[i], f);
		else if (!fates[i].used && !m->waivers[i].endless && m->nassignments &&
		    m->nslots && m->nskills && !may_serve_again(&m->waivers[i], stands))
			tell_idle(m, &m->waivers[i], stands, f);
	}
}
