/* Bend specimens: of which sort, how many, whether the coupon holds them, and over
 * which plunger they are bent. */
#include "check/rule_test.h"

#include "check/rule_machine.h"
#include "check/rule_metal.h"
#include "check/waive.h"
#include "reckon/bend.h"
#include "reckon/jig.h"
#include "reckon/pipe.h"
#include "reckon/qualify.h"
#include "reckon/strips.h"

#define EIGHTHS_3_MM (0.375 * 25.4)
#define CUSTOM "face and root to 3/8 in, side above (common practice, no source)"

static const struct qualify_range *range_of(const struct criterion *c,
    const struct weld *w)
{
	const char *code = qualify_code(c->code);
	str test = position_word(w->at.position);
	enum qualify_form form = joint_is_pipe(w) ? COUPON_PIPE : COUPON_PLATE;

	if (!code || !joint_is_butt(w->joint))
		return NULL;
	/* "1G rolled" is 1G in the tables. */
	return qualify_range_find(str_of(code), str_sub(test, 0, str_find_char(test, ' ',
	    0)), form, QUALIFY_GROOVE, w->run.od_mm, weld_thin_mm(w));
}

/* Rows of the pressure code that take face and root bends beside side bends. */
static bool serves_too(const struct qualify_range *r)
{
	return str_find(str_of(r->note), STR("serve too"), 0) < str_of(r->note).n;
}

/* Whether a sort of bend is wrong for a weld; *r is the row that says so, or null for
 * the custom. Side bends may also be used at 3/8 in. */
static bool is_wrong_sort(const struct test_line *t, const struct weld *w,
    const struct qualify_range **r)
{
	bool side = t->kind == TEST_SIDE_BEND, thin;
	double t_mm = weld_thin_mm(w);

	*r = range_of(t->c, w);
	thin = is_over(EIGHTHS_3_MM, t_mm);
	if (side)
		return thin;
	/* Without a code's row full-wall strips are bent in practice to 1/2 in. */
	if (!*r)
		return is_over(t_mm, 12.7);
	return !(*r)->face && !(*r)->root && !serves_too(*r);
}

static void say_sort(struct rule_context *x, uint32_t w, const struct test_line *t,
    const struct weld *weld, const struct qualify_range *r)
{
	bool side = t->kind == TEST_SIDE_BEND;
	struct finding *d = rule_report(x, FINDING_WRONG_SORT_OF_BEND, t->c->pos, w,
	    "%.*s is asked of %.*s in %.*s, where %s", STR_ARG(t->c->name),
	    STR_ARG(weld_say(x, weld)), STR_ARG(say_mm(x, weld_thin_mm(weld))),
	    side ? "face and root bends serve" : "side bends serve");

	if (!r || seen_of(r->verified) == SEEN_MEMORY)
		d->level = LEVEL_WARNING;
	finding_cause(x->f, d, "%s%s", r ? r->clause : CUSTOM,
	    r && seen_of(r->verified) == SEEN_MEMORY
	    ? ", from memory; confirm against your edition" : "");
	finding_repair(x->f, d, "%s", side ? "ask for a face and a root bend"
	    : "ask for side bends, strips 3/8 in [9.5 mm] thick");
}

static void judge_sort(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct test_lines l = *x->tests;

	for (size_t i = 0; i < l.n; i++)
		for (size_t k = 0; test_is_bend(l.v[i].kind) && k < a->nwelds; k++) {
			const struct weld *weld = &a->welds[k];
			const struct qualify_range *r;

			if (!test_covers(&l.v[i], a, k) || !joint_is_butt(weld->joint) ||
			    weld_thin_mm(weld) <= 0 ||
			    !is_wrong_sort(&l.v[i], weld, &r) ||
			    weld_is_disputed(a, weld))
				continue;
			/* Face and root bends of one weld have one cause. */
			say_sort(x, w, &l.v[i], weld, r);
			return;
		}
}

/* Specimens of each sort that the lines take from one weld. */
struct bends {
	uint32_t face, root, side;
	bool untold;             /* a line gives no count: the table fills it in */
	const struct criterion *c; /* the first line */
};

static struct bends bends_of(const struct test_lines *l, const struct assignment *a,
    size_t weld)
{
	struct bends b = { 0 };

	for (size_t i = 0; i < l->n; i++) {
		const struct test_line *t = &l->v[i];
		uint32_t n = test_count(t, a, weld);

		if (!test_is_bend(t->kind))
			continue;
		b.untold |= !t->n.total;
		b.c = b.c ? b.c : t->c;
		if (t->kind == TEST_FACE_BEND)
			b.face += n;
		else if (t->kind == TEST_ROOT_BEND)
			b.root += n;
		else
			b.side += n;
	}
	return b;
}

static bool is_enough(const struct bends *b, const struct qualify_range *r, double t_mm)
{
	uint32_t face = (uint32_t)r->face, root = (uint32_t)r->root,
	    side = (uint32_t)r->side;

	if (b->untold)
		return true;
	if (side)
		return b->side >= side || (serves_too(r) && b->face >= side / 2 &&
		    b->root >= side / 2);
	/* At 3/8 in side bends may stand for face and root. */
	return (b->face >= face && b->root >= root) ||
	    (!is_over(EIGHTHS_3_MM, t_mm) && b->side >= face + root);
}

static str say_owed(const struct rule_context *x, const struct qualify_range *r)
{
	if (r->side)
		return str_format(x->f->arena, "%d side bends", r->side);
	return str_format(x->f->arena, "%d face and %d root bend%s", r->face, r->root,
	    r->root > 1 ? "s" : "");
}

/* Bends of the wrong sort are told as such and not counted as missing. */
static bool has_wrong_sort(const struct test_lines *l, const struct assignment *a,
    size_t k)
{
	const struct qualify_range *r;

	for (size_t i = 0; i < l->n; i++)
		if (test_is_bend(l->v[i].kind) && test_covers(&l->v[i], a, k) &&
		    is_wrong_sort(&l->v[i], &a->welds[k], &r))
			return true;
	return false;
}

/* Practice and qualification tests mirror the code; a coupon may take fewer strips. */
static void judge_count(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct test_lines l = *x->tests;

	if ((a->kind != KIND_PRACTICE_TEST && a->kind != KIND_QUALIFICATION_TEST) ||
	    !test_lines_bend(&l))
		return;
	for (size_t k = 0; k < a->nwelds; k++) {
		struct bends b = bends_of(&l, a, k);
		const struct qualify_range *r = range_of(b.c, &a->welds[k]);
		struct finding *d;

		if (!r || is_enough(&b, r, weld_thin_mm(&a->welds[k])) ||
		    has_wrong_sort(&l, a, k))
			continue;
		d = rule_report(x, FINDING_TOO_FEW_BENDS, b.c->pos, w,
		    "%.*s has %u face, %u root and %u side bends, and the code asks for "
		    "%.*s",
		    STR_ARG(weld_say(x, &a->welds[k])), b.face, b.root, b.side,
		    STR_ARG(say_owed(x, r)));
		if (seen_of(r->verified) == SEEN_MEMORY)
			d->level = LEVEL_WARNING;
		finding_cause(x->f, d, "%s%s", r->clause, seen_of(r->verified) ==
		    SEEN_MEMORY ? ", from memory; confirm against your edition" : "");
		finding_repair(x->f, d, "take %.*s from each weld",
		    STR_ARG(say_owed(x, r)));
	}
}

static double strip_mm(enum test_kind k, double od_mm)
{
	return strip_width_mm(k == TEST_SIDE_BEND ? STRIP_SIDE : k == TEST_NICK_BREAK
	    ? STRIP_NICK : STRIP_FACE_ROOT, od_mm);
}

static double strips_mm(const struct test_lines *l, const struct assignment *a, size_t k,
    uint32_t *n)
{
	const struct weld *weld = &a->welds[k];
	double sum = 0;

	*n = 0;
	for (size_t i = 0; i < l->n; i++) {
		uint32_t count = test_count(&l->v[i], a, k);

		if (l->v[i].kind == TEST_MACRO || l->v[i].kind == TEST_FILLET_BREAK)
			continue;
		sum += count * strip_mm(l->v[i].kind, weld->run.od_mm);
		*n += count;
	}
	return sum;
}

/* All strips with 1/8 in cuts, and on plate 1 in discarded at each end. */
static void judge_strips(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct test_lines l = *x->tests;

	for (size_t k = 0; l.n && k < a->nwelds; k++) {
		const struct weld *weld = &a->welds[k];
		bool pipe = weld->run.od_mm > 0;
		double have = pipe ? pipe_round_mm(weld->run.od_mm)
		    : weld_length_mm(a, k), need, width;
		struct finding *d;
		uint32_t n;

		if (!joint_is_butt(weld->joint) || have <= 0)
			continue;
		width = strips_mm(&l, a, k, &n);
		if (!n)
			continue;
		need = pipe ? strips_round_mm(n, width / n, 3.175)
		    : strips_length_mm(n, width / n, 25.4, 3.175);
		if (!is_over(need, have))
			continue;
		d = rule_report(x, FINDING_STRIPS_DO_NOT_FIT, weld->pos, w,
		    "%u specimen%s of %.*s: %.*s needed, and the coupon has %.*s", n,
		    n > 1 ? "s" : "", STR_ARG(weld_say(x, weld)), STR_ARG(say_mm(x, need)),
		    STR_ARG(say_mm(x, have)));
		finding_cause(x->f, d, "%sstrips side by side with 1/8 in [3.2 mm] cuts; "
		    "widths by AWS D1.1 Fig. 6.8 (2020) and custom", pipe ? ""
		    : "1 in [25.4 mm] is discarded at each end, then ");
		finding_repair(x->f, d, "%s", pipe ? "weld a second joint, or take fewer "
		    "specimens" : "make the coupon longer, or take fewer specimens");
	}
}

/* The filler that decides: one of the 4xxx alloys wherever it is used. */
static str jig_filler(const struct assignment *a)
{
	for (uint32_t i = 0; i < a->nfillers; i++)
		if (str_starts_nocase(a->fillers[i].class, STR("ER4")))
			return a->fillers[i].class;
	return (str){ 0 };
}

/* The jig that a line's code asks for in weld k; false when it names none that is
 * judged. *t_mm is the specimen's thickness: the coupon's, 3/8 in at the most. */
static bool jig_of(const struct assignment *a, const struct test_line *t,
    const struct weld *w, double *t_mm, struct jig *j)
{
	const char *code = jig_code(t->c->code);
	const struct metal *m = metal_of(w->material1);

	*t_mm = weld_thin_mm(w);
	if (*t_mm > EIGHTHS_3_MM)
		*t_mm = EIGHTHS_3_MM;
	if (!jig_of_metal(code, w->material1, m ? m->yield_ksi : 0, jig_filler(a), t_mm, j))
		return false;
	/* The 1-1/2 in row was read on a page, its other columns are from memory. */
	if (str_eq(str_of(code), STR("AWS D1.1")) && is_same_mm(j->plunger_mm, 38.1))
		j->seen = SEEN_PAGE;
	return true;
}

/* Plungers are made in sixteenths: the nearest is within 1/32 in. */
static bool is_near(double mm, double wanted_mm)
{
	return !is_over(mm, wanted_mm + 25.4 / 32) && !is_over(wanted_mm - 25.4 / 32, mm);
}

/* The nearest plunger of the shop that bends as hard as asked or a little harder; 0. */
static double owned_near_mm(const struct model *m, double wanted_mm)
{
	double best = 0;

	for (size_t i = 0; i < m->nplungers; i++) {
		double p = m->plungers[i].lo;

		if (!is_over(p, wanted_mm + 25.4 / 32) && p > best)
			best = p;
	}
	return best;
}

static bool is_owned(const struct model *m, double mm)
{
	for (size_t i = 0; i < m->nplungers; i++)
		if (is_same_mm(m->plungers[i].lo, mm))
			return true;
	return false;
}

static str say_strain(const struct rule_context *x, double plunger_mm, double t_mm)
{
	return say_real(x, bend_strain_percent(plunger_mm, t_mm), 1);
}

static struct finding *say_plunger(struct rule_context *x, uint32_t w,
    const struct test_line *t, const struct jig *j, double t_mm)
{
	bool milder = t->plunger_mm > j->plunger_mm;
	double owned = owned_near_mm(x->m, j->plunger_mm);
	struct finding *d = rule_report(x, FINDING_WRONG_PLUNGER, t->c->pos, w,
	    "a plunger of %.*s strains a %.*s specimen %.*s %%, %s than the %.*s %% that "
	    "the code asks", STR_ARG(say_mm(x, t->plunger_mm)), STR_ARG(say_mm(x, t_mm)),
	    STR_ARG(say_strain(x, t->plunger_mm, t_mm)), milder ? "less" : "more",
	    STR_ARG(say_strain(x, j->plunger_mm, t_mm)));

	if (j->seen == SEEN_MEMORY)
		d->level = LEVEL_WARNING;
	finding_cause(x->f, d, "%s: %s, plunger %.*s%s", j->source, j->words,
	    STR_ARG(say_mm(x, j->plunger_mm)), j->seen == SEEN_MEMORY
	    ? "; from memory, confirm against your edition" : "");
	if (owned > 0 && is_near(owned, j->plunger_mm))
		finding_repair(x->f, d, "write plunger %.*s, which the shop owns",
		    STR_ARG(say_mm(x, owned)));
	else
		finding_repair(x->f, d, "the shop owns no plunger of %.*s: order one, or "
		    "use a wrap-around fixture of that diameter",
		    STR_ARG(say_mm(x, j->plunger_mm)));
	return d;
}

/* Too mild is always wrong; too hard where it is a fifth more than asked, or where the
 * code fixes the plunger whatever the thickness. */
static bool is_wrong_plunger(const struct test_line *t, const struct jig *j, double t_mm)
{
	double asked, given;

	if (is_near(t->plunger_mm, j->plunger_mm))
		return false;
	if (t->plunger_mm > j->plunger_mm || str_eq(t->c->code, STR("D1.1")))
		return true;
	asked = bend_strain_percent(j->plunger_mm, t_mm);
	given = bend_strain_percent(t->plunger_mm, t_mm);
	return given > 1.2 * asked;
}

/* Without a code's jig nothing is judged: the strain is said, unless the line does. */
static struct finding *say_note(struct rule_context *x, uint32_t w,
    const struct test_line *t, double t_mm)
{
	double strain = bend_strain_percent(t->plunger_mm, t_mm);
	bool told = t->strain > 0;
	struct finding *d;

	if (told && strain < t->strain + 0.5 && strain > t->strain - 0.5)
		return NULL;
	d = rule_report(x, FINDING_STRAIN_NOT_JUDGED, t->c->pos, w,
	    "a plunger of %.*s strains a %.*s specimen %.*s %%, %s",
	    STR_ARG(say_mm(x, t->plunger_mm)), STR_ARG(say_mm(x, t_mm)),
	    STR_ARG(say_real(x, strain, 1)), told ? "not what the line says"
	    : "and no code is named that says whether that is right");
	finding_cause(x->f, d, "100 t / (A + t), " BEND_SOURCE);
	finding_repair(x->f, d, "write \"strain %.*s %%\" on the line, or name the code "
	    "and edition", STR_ARG(say_real(x, strain, 1)));
	return d;
}

/* One line against one weld; null when it is in order. */
static struct finding *judge_line(struct rule_context *x, uint32_t w,
    const struct test_line *t, const struct weld *k)
{
	const struct assignment *a = &x->m->assignments[w];
	struct jig j;
	double t_mm;

	if (!jig_of(a, t, k, &t_mm, &j)) {
		/* Full-wall strips of line pipe go to 1/2 in. */
		double full = weld_thin_mm(k) > 12.7 ? EIGHTHS_3_MM : weld_thin_mm(k);

		return t->plunger_mm > 0 && full > 0 && !weld_is_disputed(a, k)
		    ? say_note(x, w, t, full) : NULL;
	}
	return t->plunger_mm > 0 && is_wrong_plunger(t, &j, t_mm) && !weld_is_disputed(a, k)
	    ? say_plunger(x, w, t, &j, t_mm) : NULL;
}

/* Face and root bends over one plunger have one cause: the first line speaks. */
static void judge_plunger(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct test_lines l = *x->tests;
	struct finding *told = NULL;
	double plunger_mm = 0;

	for (size_t i = 0; i < l.n; i++)
		for (size_t k = 0; test_is_bend(l.v[i].kind) && k < a->nwelds; k++) {
			const struct test_line *t = &l.v[i];
			struct finding *d;

			if (!joint_is_butt(a->welds[k].joint) || !test_covers(t, a, k))
				continue;
			if (told && is_same_mm(plunger_mm, t->plunger_mm)) {
				finding_relate(x->f, told, t->c->pos)->label = t->c->name;
				break;
			}
			d = judge_line(x, w, t, &a->welds[k]);
			if (d) {
				told = d;
				plunger_mm = t->plunger_mm;
				break;
			}
		}
}

static void judge_die(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	struct test_lines l = *x->tests;

	for (size_t i = 0; i < l.n; i++)
		for (size_t k = 0; l.v[i].die_mm > 0 && k < a->nwelds; k++) {
			const struct test_line *t = &l.v[i];
			struct finding *d;
			struct jig j;
			double t_mm;

			if (!joint_is_butt(a->welds[k].joint) || !test_covers(t, a, k) ||
			    !jig_of(a, t, &a->welds[k], &t_mm, &j) ||
			    is_wrong_plunger(t, &j, t_mm) ||
			    !is_over(t->die_mm, j.die_mm + 25.4 / 16))
				continue;
			d = rule_report(x, FINDING_DIE_TOO_WIDE, t->c->pos, w,
			    "a die opening of %.*s is wider than the %.*s that the code "
			    "gives for a %.*s specimen", STR_ARG(say_mm(x, t->die_mm)),
			    STR_ARG(say_mm(x, j.die_mm)), STR_ARG(say_mm(x, t_mm)));
			finding_cause(x->f, d, "%s", j.source);
			finding_repair(x->f, d, "write die opening %.*s",
			    STR_ARG(say_mm(x, j.die_mm)));
			return;
		}
}

/* One plunger that the shop lacks, however many bends want it. */
struct lack {
	double mm, owned_mm;     /* owned: one that serves as well, or 0 */
	size_t finding;          /* index in the list */
	uint32_t last;           /* the assignment listed last */
};

struct lacks {
	struct lack *v;
	size_t n, cap;
	struct waivers *waivers; /* what one accepts stands apart */
	bool met;                /* a bend has the plunger that it wants */
};

/* Shops own a handful; the bound keeps a hostile program linear. */
enum { LACKS_MOST = 64 };

/* The plunger that a line wants for a weld and that the shop lacks, or 0. */
static double lacking_mm(const struct rule_context *x, uint32_t w,
    const struct test_line *t, const struct weld *k, double *owned_mm, bool *met)
{
	double t_mm, near;
	struct jig j;

	if (!joint_is_butt(k->joint) || !jig_of(&x->m->assignments[w], t, k, &t_mm, &j))
		return 0;
	near = owned_near_mm(x->m, j.plunger_mm);
	*owned_mm = near > 0 && is_near(near, j.plunger_mm) ? near : 0;
	*met |= *owned_mm > 0 || (t->plunger_mm > 0 && is_owned(x->m, t->plunger_mm));
	if (t->plunger_mm <= 0)
		return near > 0 ? 0 : j.plunger_mm;
	return is_owned(x->m, t->plunger_mm) || is_wrong_plunger(t, &j, t_mm) ? 0
	    : t->plunger_mm;
}

static void tell_lack(struct rule_context *x, uint32_t w, const struct test_line *t,
    struct lack *l)
{
	struct finding *d = rule_report(x, FINDING_PLUNGER_NOT_OWNED, t->c->pos, w,
	    "%.*s wants a plunger of %.*s, and shop.md lists none", STR_ARG(t->c->name),
	    STR_ARG(say_mm(x, l->mm)));

	d->scope = SCOPE_ASSIGNMENTS;
	finding_cause(x->f, d, "shop.md, Plungers");
	if (l->owned_mm > 0)
		finding_repair(x->f, d, "write plunger %.*s, which the shop owns and "
		    "which serves as well", STR_ARG(say_mm(x, l->owned_mm)));
	else
		finding_repair(x->f, d, "order one, or send the bends out");
}

static void note_lack(struct rule_context *x, struct lacks *ls, uint32_t w,
    const struct test_line *t, struct lack l)
{
	struct related *r;
	size_t i = ls->n > LACKS_MOST ? ls->n - LACKS_MOST : 0;

	if (waivers_find(ls->waivers, FINDING_PLUNGER_NOT_OWNED, t->c->pos,
	    x->m->assignments[w].id, STR("")) != NONE) {
		tell_lack(x, w, t, &l);
		return;
	}
	while (i < ls->n && !(is_same_mm(ls->v[i].mm, l.mm) &&
	    is_same_mm(ls->v[i].owned_mm, l.owned_mm)))
		i++;
	if (i == ls->n) {
		l.finding = x->f->n;
		l.last = w;
		*ARENA_PUSH(x->scratch, ls->v, ls->n, ls->cap) = l;
		tell_lack(x, w, t, &ls->v[i]);
	} else if (ls->v[i].last != w) {
		ls->v[i].last = w;
		r = finding_relate(x->f, &x->f->v[ls->v[i].finding], t->c->pos);
		r->assignment = x->m->assignments[w].id;
		r->label = str_format(x->f->arena, "%.*s of %.*s wants it too",
		    STR_ARG(t->c->name), STR_ARG(r->assignment));
	}
}

static void judge_owned(struct rule_context *x, uint32_t w, struct lacks *ls)
{
	const struct assignment *a = &x->m->assignments[w];
	struct test_lines l = test_lines_of(x->scratch, a);

	for (size_t i = 0; i < l.n; i++)
		for (size_t k = 0; test_is_bend(l.v[i].kind) && k < a->nwelds; k++) {
			struct lack lack = { 0 };

			if (!test_covers(&l.v[i], a, k))
				continue;
			lack.mm = lacking_mm(x, w, &l.v[i], &a->welds[k], &lack.owned_mm,
			    &ls->met);
			if (lack.mm > 0)
				note_lack(x, ls, w, &l.v[i], lack);
		}
}

/* Where no bend has its plunger, the line of shop.md is more likely wrong than all of
 * them: told there once, the findings of each plunger as its list. */
static void fold_lacks(struct rule_context *x, const struct lacks *ls)
{
	struct finding *d;
	size_t first = x->f->n;

	if (ls->met || ls->n < 2 || ls->n > LACKS_MOST)
		return;
	d = rule_report(x, FINDING_PLUNGER_NOT_OWNED, x->m->plungers_pos, NONE,
	    "none of the bends has a plunger among these, and they want %zu others", ls->n);
	if (x->f->n == first)
		return;
	d->scope = SCOPE_ASSIGNMENTS;
	finding_repair(x->f, d, "correct the diameters or their unit; else order these, or send "
	    "the bends out");
	for (size_t i = 0; i < ls->n; i++)
		finding_take(x->f, d, &x->f->v[ls->v[i].finding]);
	findings_sweep(x->f);
}

/* In the order of program.md, so that the first bend that wants a plunger is named; then
 * what stands in no course. */
void rule_test_owned(struct rule_context *x)
{
	struct lacks ls = { .waivers = waivers_new(x->scratch, x->m) };

	if (!x->m->nplungers)
		return;
	for (size_t i = 0; i < x->o->nwalk; i++)
		judge_owned(x, x->o->walk[i], &ls);
	for (uint32_t w = 0; w < x->m->nassignments; w++)
		if (!rule_is_placed(x, w))
			judge_owned(x, w, &ls);
	fold_lacks(x, &ls);
}

void rule_test_bend(struct rule_context *x, uint32_t w)
{
	judge_sort(x, w);
	judge_count(x, w);
	judge_strips(x, w);
	judge_plunger(x, w);
	judge_die(x, w);
}
