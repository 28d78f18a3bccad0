#include "sheets/key.h"

#include "model/standard.h"
#include "reckon/bend.h"
#include "reckon/fillet.h"
#include "reckon/groove.h"
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

/* The process of the i-th weld, as the efficiency table words it. */
static str process_of(const struct key *k)
{
	enum process p = k->x->nprocesses ? k->x->processes[k->x->nprocesses - 1] : PROCESS_COUNT;

	if (p == PROCESS_GMAW_S)
		return STR("GMAW");
	return p < PROCESS_COUNT ? process_word(p) : (str){ 0 };
}

static void add_filler(struct key *k, const struct joint_block *j, double deposit_lb)
{
	const struct efficiency *e = efficiency_find(process_of(k), (str){ 0 }, 0);
	struct worked *w;

	if (!e)
		return;
	w = add(k, weld_name(k, j, "Filler to buy"));
	w->steps = str_format(k->arena, "weld metal / %.*s", STR_ARG(real(k->arena, e->percent, 0, "%")));
	w->result = real(k->arena, filler_bought_lb(deposit_lb, e->percent), 2, "lb an attempt");
	w->source = str_of(e->source);
	w->dagger = seen_of(e->verified) == SEEN_MEMORY;
}

static void add_weld_metal(struct key *k, const struct joint_block *j)
{
	double area = section_mm2(j), length = weld_length_mm(j), lb;
	struct worked *w;

	if (!(area > 0) || !(length > 0))
		return;
	lb = weight_lb(area * length, DENSITY_STEEL_WELD_LB_IN3);
	w = add(k, weld_name(k, j, "Weld metal"));
	w->steps = str_format(k->arena, "section %.*s x length %.*s x 0.283 lb/in3 (steel)",
	    STR_ARG(real(k->arena, area / 645.16, 3, "in2")), STR_ARG(inches(k->arena, length)));
	w->result = real(k->arena, lb, 2, "lb");
	w->source = STR("geometry; filler metal data book, consumption chapter");
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

static double specimen_mm(const struct assignment *x, const struct criterion *c)
{
	double t = 0;

	for (size_t i = 0; i < x->nwelds; i++)
		if (x->welds[i].t1_mm > t)
			t = x->welds[i].t1_mm;
	/* Side bends are strips of 3/8 in whatever the plate (ASME IX QW-462.2, D1.1). */
	return str_starts_nocase(c->name, STR("side")) ? 0.375 * 25.4 : t;
}

/* "plunger 1-1/2 in" among the parts of the line; 0 when it names none. */
static double named_plunger_mm(const struct criterion *c)
{
	str rest = c->text, part;

	while (str_next(&rest, ',', &part)) {
		struct quantity_fault fault;
		struct quantity q;

		part = str_trim(part);
		if (str_starts_nocase(part, STR("plunger ")) &&
		    !quantity_parse(str_trim(str_sub(part, 8, part.n)), QUANTITY_LENGTH, METAL_NONE, &q,
		        &fault))
			return q.lo;
	}
	return 0;
}

static bool is_bend(str name)
{
	enum standard_test test;

	return criterion_test(name, &test) && test == TEST_BEND;
}

static void add_bend(struct key *k, const struct criterion *c)
{
	double t = specimen_mm(k->x, c), plunger = named_plunger_mm(c);
	bool chosen = plunger > 0;
	struct worked *w;

	if (!(t > 0) || !is_bend(c->name))
		return;
	if (!chosen)
		plunger = bend_plunger_mm(t);
	w = add(k, str_format(k->arena, "%.*s: strain of the outer fiber", STR_ARG(c->name)));
	w->steps = str_format(k->arena, "specimen %.*s, plunger %.*s%s, die opening %.*s",
	    STR_ARG(inches(k->arena, t)), STR_ARG(inches(k->arena, plunger)),
	    chosen ? " as the sheet says" : " (4 t)", STR_ARG(inches(k->arena, bend_die_mm(plunger, t))));
	w->result = real(k->arena, bend_strain_percent(plunger, t), 1, "%");
	w->source = STR(BEND_SOURCE);
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
