#include "sheets/key.h"

#include "model/standard.h"
#include "reckon/bend.h"
#include "reckon/fillet.h"
#include "reckon/groove.h"
#include "reckon/jig.h"
#include "reckon/qualify.h"
#include "reckon/weight.h"
#include "sheets/limits.h"
#include "sheets/sheet.h"
#include "units/format.h"

#include <math.h>

struct key {
	struct arena *arena;
	const struct assignment *x;
	struct workings *out;
};

static struct worked *add(struct key *k, str name)
{
	struct worked *w = ARENA_PUSH(k->arena, k->out->v, k->out->n, k->out->cap);

	w->name = name;
	return w;
}

static str real(struct arena *a, double x, int places, const char *unit)
{
	struct buf b = { .arena = a };

	buf_add_real(&b, x, places, true);
	buf_addf(&b, "%s%s", *unit ? " " : "", unit);
	return buf_str(&b);
}

static str inches(struct arena *a, double mm)
{
	return str_format(a, "%.*s [%.*s]", STR_ARG(real(a, mm / 25.4, 3, "in")),
	    STR_ARG(real(a, mm, 2, "mm")));
}

static double middle(const struct quantity *q)
{
	return given(q) ? (q->lo + q->hi) / 2 : 0;
}

static str weld_name(struct key *k, const struct joint_block *j, const char *what)
{
	char letter = j->weld == NONE ? 0 : k->x->welds[j->weld].letter;

	return letter ? str_format(k->arena, "%s, weld %c", what, letter) : str_of(what);
}

/* ---- weld metal ---- */

/* Length of one weld: round the pipe on the middle of the wall, else as drawn. */
static double weld_length_mm(const struct joint_block *j)
{
	if (j->joint == JOINT_PIPE_BUTT && j->pipe.od_mm > 0)
		return acos(-1) * (j->pipe.od_mm - j->pipe.wall_mm);
	return middle(&j->length);
}

static bool groove_of(const struct joint_block *j, struct groove *g)
{
	double t = middle(&j->t1) > 0 ? middle(&j->t1) : j->pipe.wall_mm;

	*g = (struct groove){ .thickness_mm = t, .gap_mm = middle(&j->gap),
		.land_mm = middle(&j->land) };
	switch (j->joint) {
	case JOINT_SQUARE_BUTT:
		g->shape = GROOVE_SQUARE;
		return g->gap_mm > 0;
	case JOINT_SINGLE_V:
	case JOINT_PIPE_BUTT:
		g->shape = GROOVE_V;
		g->angle_deg = given(&j->angle) ? middle(&j->angle) : 2 * middle(&j->bevel);
		return g->angle_deg > 0;
	case JOINT_SINGLE_BEVEL:
		g->shape = GROOVE_BEVEL;
		g->angle_deg = middle(&j->bevel);
		return g->angle_deg > 0;
	default:
		return false;
	}
}

/* Cross section in mm2, cap counted when its height is given; 0: not known. */
static double section_mm2(const struct joint_block *j)
{
	double leg = middle(&j->leg), cap = middle(&j->reinforcement);
	struct groove g;

	if (j->joint == JOINT_TEE || j->joint == JOINT_LAP)
		return leg > 0 ? fillet_mm2(leg, leg) * (j->both_sides ? 2 : 1) : 0;
	if (!groove_of(j, &g) || !(g.thickness_mm > 0) || groove_fault(&g))
		return 0;
	return groove_mm2(&g) + (cap > 0 ? cap_mm2(groove_width_mm(&g), cap) : 0);
}

/* The weld that a drawing shows, or null. */
static const struct weld *weld_of(const struct key *k, const struct joint_block *j)
{
	if (j->weld != NONE)
		return &k->x->welds[j->weld];
	return k->x->nwelds == 1 ? &k->x->welds[0] : NULL;
}

/* Of a weld that names none the last process listed: the one that fills the joint. */
static enum process process_of(const struct key *k, const struct joint_block *j)
{
	const struct weld *w = weld_of(k, j);

	if (w && w->process < PROCESS_COUNT)
		return w->process;
	return k->x->nprocesses ? k->x->processes[k->x->nprocesses - 1] : PROCESS_COUNT;
}

static str material_of(const struct key *k, const struct joint_block *j)
{
	const struct weld *w = j ? weld_of(k, j) : NULL;

	if (w && w->material1.n)
		return w->material1;
	return k->x->nmaterials ? k->x->materials[0].text : (str){ 0 };
}

/* What a drawn weld is made of; null where that is not known, as in brazing. */
static const struct weld_metal *metal_of(const struct key *k, const struct joint_block *j)
{
	static const enum metal_family families[METAL_COUNT] = {
		[METAL_NONE] = FAMILY_OTHER, [METAL_STEEL] = FAMILY_STEEL,
		[METAL_STAINLESS] = FAMILY_STAINLESS, [METAL_ALUMINUM] = FAMILY_ALUMINUM,
		[METAL_GALVANIZED] = FAMILY_STEEL,
	};
	enum process p = process_of(k, j);

	if (p == PROCESS_TB || p == PROCESS_TS)
		return NULL;
	return weld_metal_of(families[sheet_metal_of(material_of(k, j))]);
}

/* Two figures behind the point, three for what weighs less than a tenth. */
static str pounds(struct arena *a, double lb, const char *unit)
{
	return real(a, lb, lb < 0.1 ? 3 : 2, unit);
}

static void add_filler(struct key *k, const struct joint_block *j, double deposit_lb)
{
	enum process p = process_of(k, j);
	const struct efficiency *e = p < PROCESS_COUNT ?
	    efficiency_find(process_word(p), (str){ 0 }, 0) : NULL;
	struct worked *w;

	if (!e)
		return;
	w = add(k, weld_name(k, j, "Filler to buy"));
	w->steps = str_format(k->arena, "weld metal / %.*s", STR_ARG(real(k->arena, e->percent, 0, "%")));
	w->result = pounds(k->arena, filler_bought_lb(deposit_lb, e->percent),
	    "lb for one weld");
	w->source = str_of(e->source);
	w->dagger = seen_of(e->verified) == SEEN_MEMORY;
}

static void add_weld_metal(struct key *k, const struct joint_block *j)
{
	double area = section_mm2(j), length = weld_length_mm(j), lb;
	const struct weld_metal *metal = metal_of(k, j);
	bool capped = middle(&j->leg) <= 0 && middle(&j->reinforcement) > 0;
	struct worked *w;

	if (!metal || !(area > 0) || !(length > 0))
		return;
	lb = weight_lb(area * length, metal->density_lb_in3);
	w = add(k, weld_name(k, j, "Weld metal"));
	w->steps = str_format(k->arena, "section %.*s%s x length %.*s x %.*s (%s)",
	    STR_ARG(real(k->arena, area / 645.16, 4, "in2")), capped ? " with its cap" : "",
	    STR_ARG(inches(k->arena, length)),
	    STR_ARG(real(k->arena, metal->density_lb_in3, 3, "lb/in3")), metal->word);
	w->result = pounds(k->arena, lb, "lb");
	w->source = str_of(metal->source);
	w->dagger = metal->seen == SEEN_MEMORY;
	add_filler(k, j, lb);
}

static void add_throat(struct key *k, const struct joint_block *j)
{
	double leg = middle(&j->leg);
	struct worked *w;

	if (!(leg > 0) || (j->joint != JOINT_TEE && j->joint != JOINT_LAP))
		return;
	w = add(k, weld_name(k, j, "Least throat"));
	w->steps = str_format(k->arena, "0.7071 x leg %.*s", STR_ARG(quantity_text(k->arena, &j->leg)));
	w->result = inches(k->arena, fillet_throat_mm(leg));
	w->source = STR("geometry, flat face");
}

static void add_top_width(struct key *k, const struct joint_block *j)
{
	struct groove g;
	struct worked *w;

	if (!groove_of(j, &g) || g.shape == GROOVE_SQUARE || groove_fault(&g))
		return;
	w = add(k, weld_name(k, j, "Groove width at the face"));
	w->steps = str_format(k->arena, "root opening %.*s, thickness %.*s, land %.*s, %.*s",
	    STR_ARG(inches(k->arena, g.gap_mm)), STR_ARG(inches(k->arena, g.thickness_mm)),
	    STR_ARG(inches(k->arena, g.land_mm)), STR_ARG(real(k->arena, g.angle_deg, 1, "deg")));
	w->result = inches(k->arena, groove_width_mm(&g));
	w->source = STR("geometry");
}

/* ---- bends ---- */

/* Specimens of bends are 3/8 in thick at the most, side bends always (ASME IX QW-462.2,
 * D1.1 Figs 6.8 and 6.9 of 2020). */
static double specimen_mm(const struct assignment *x, const struct criterion *c)
{
	const double most = 0.375 * 25.4;
	double t = 0;

	for (size_t i = 0; i < x->nwelds; i++)
		t = fmax(t, x->welds[i].t1_mm);
	return str_starts_nocase(c->name, STR("side")) ? most : fmin(t, most);
}

/* "plunger 1-1/2 in" among the parts of the line; 0 when it names none. */
static double named_mm(const struct criterion *c, str word)
{
	str rest = c->text, part;

	while (str_next(&rest, ',', &part)) {
		struct quantity_fault fault;
		struct quantity q;

		part = str_trim(part);
		part = str_trim(str_sub(part, 0, str_find_char(part, ';', 0)));
		if (str_starts_nocase(part, word) &&
		    !quantity_parse(str_trim(str_sub(part, word.n, part.n)),
		        QUANTITY_LENGTH, METAL_NONE, &q, &fault))
			return q.lo;
	}
	return 0;
}

static bool is_bend(str name)
{
	enum standard_test test;

	return criterion_test(name, &test) && test == TEST_BEND;
}

/* The jig of the code that the line names, for steel and stainless; P-numbers of other
 * metals decide otherwise. */
static bool jig_of(const struct key *k, const struct criterion *c, double t_mm,
    struct jig *j)
{
	str material = material_of(k, NULL);
	const struct metal *m = metal_find(material);
	const char *code = qualify_code(c->code);

	return code && sheet_metal_of(material) != METAL_ALUMINUM &&
	    jig_find(str_of(code), STR("others"), m ? m->yield_ksi : 0, t_mm, j);
}

/* The plunger and die that the line names; what it leaves out by the jig of its code. */
static void add_bend(struct key *k, const struct criterion *c)
{
	double t = specimen_mm(k->x, c), die = named_mm(c, STR("die opening "));
	double plunger = named_mm(c, STR("plunger "));
	bool chosen = plunger > 0;
	struct jig j = { 0 };
	struct worked *w;

	if (!(t > 0) || !is_bend(c->name) || (!jig_of(k, c, t, &j) && !chosen))
		return;
	if (!chosen) {
		plunger = j.plunger_mm;
		die = die > 0 ? die : j.die_mm;
	}
	w = add(k, str_format(k->arena, "%.*s: strain of the outer fiber", STR_ARG(c->name)));
	w->steps = str_format(k->arena,
	    "100 t / (A + t): specimen t %.*s, plunger A %.*s %s",
	    STR_ARG(inches(k->arena, t)), STR_ARG(inches(k->arena, plunger)),
	    chosen ? "as the sheet says" : "by the code");
	if (die > 0)
		w->steps = str_format(k->arena, "%.*s, die opening %.*s", STR_ARG(w->steps),
		    STR_ARG(inches(k->arena, die)));
	w->result = real(k->arena, bend_strain_percent(plunger, t), 1, "%");
	w->source = chosen ? STR(BEND_SOURCE) : str_of(j.source);
	w->dagger = !chosen && j.seen == SEEN_MEMORY;
}

struct workings workings_of(struct arena *a, const struct assignment *x)
{
	struct workings out = { 0 };
	struct key k = { a, x, &out };

	for (size_t i = 0; i < x->ndrawings; i++) {
		const struct joint_block *j = &x->drawings[i].joint;

		if (x->drawings[i].kind != DRAWING_JOINT)
			continue;
		add_throat(&k, j);
		add_top_width(&k, j);
		add_weld_metal(&k, j);
	}
	for (size_t i = 0; i < x->ncriteria; i++)
		add_bend(&k, &x->criteria[i]);
	return out;
}
