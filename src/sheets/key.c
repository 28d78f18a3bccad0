#include "sheets/key_set.h"

#include "model/setting.h"
#include "model/words.h"
#include "reckon/fillet.h"
#include "reckon/pipe.h"
#include "sheets/sheet.h"
#include "units/format.h"

struct worked *key_add(struct key *k, str name)
{
	struct worked *w = ARENA_PUSH(k->arena, k->out->v, k->out->n, k->out->cap);

	w->name = name;
	w->drawing = k->drawing;
	return w;
}

str key_real(struct arena *a, double x, int places, const char *unit)
{
	struct buf b = { .arena = a };

	buf_add_real(&b, x, places, true);
	buf_addf(&b, "%s%s", *unit ? " " : "", unit);
	return buf_str(&b);
}

str key_both(const struct key *k, str us, str metric)
{
	return str_format(k->arena, "%.*s [%.*s]", STR_ARG(k->metric ? metric : us),
	    STR_ARG(k->metric ? us : metric));
}

str key_length(const struct key *k, double mm)
{
	return key_both(k, key_real(k->arena, mm / 25.4, 3, "in"),
	    key_real(k->arena, mm, 2, "mm"));
}

/* Four places of a square inch; five under a hundredth, as of a small bead. */
static str square_inches(const struct key *k, double mm2)
{
	return key_real(k->arena, mm2 / 645.16, mm2 < 6.4516 ? 5 : 4, "in2");
}

str key_area(const struct key *k, double mm2)
{
	return key_both(k, square_inches(k, mm2), key_real(k->arena, mm2, 1, "mm2"));
}

str key_weight(const struct key *k, double lb, int places)
{
	struct buf b = { .arena = k->arena };

	format_weight(&b, edition_format(k->e), lb, places);
	return buf_str(&b);
}

/* 1 lb/in3 is 27679.905 kg/m3 (NIST SP 811, from pound and inch). */
str key_density(const struct key *k, double lb_in3)
{
	return k->metric ? key_real(k->arena, lb_in3 * 27679.905, 0, "kg/m3")
	                 : key_real(k->arena, lb_in3, 3, "lb/in3");
}

double key_middle(const struct quantity *q)
{
	return given(q) ? (q->lo + q->hi) / 2 : 0;
}

str key_weld_name(struct key *k, const struct joint_block *j, const char *what)
{
	char letter = j->weld == NONE ? 0 : k->x->welds[j->weld].letter;

	return letter ? str_format(k->arena, "%s, weld %c", what, letter) : str_of(what);
}

/* ---- weld metal ---- */

/* Cubic millimeters in a cubic meter. */
#define PER_CUBE " / 10^9"

/* Length of one weld: round the pipe on the middle of the wall, else as drawn. */
double key_length_mm(const struct joint_block *j)
{
	if (j->joint == JOINT_PIPE_BUTT && j->pipe.od_mm > 0)
		return pipe_mean_round_mm(j->pipe.od_mm, j->pipe.wall_mm);
	return key_middle(&j->length);
}

/* The edges that the block prepares, or those that its joint means by itself; none for
 * joints whose section is no groove between square members. */
static enum preparation edges_of(const struct joint_block *j)
{
	static const enum preparation own[JOINT_COUNT] = {
		[JOINT_SQUARE_BUTT] = PREPARATION_SQUARE, [JOINT_SINGLE_V] = PREPARATION_V,
		[JOINT_PIPE_BUTT] = PREPARATION_V, [JOINT_SINGLE_BEVEL] = PREPARATION_BEVEL,
	};
	static const bool takes[JOINT_COUNT] = { [JOINT_BUTT] = true, [JOINT_TEE] = true,
		[JOINT_CORNER] = true, [JOINT_PIPE_BUTT] = true };

	if (j->joint >= JOINT_COUNT)
		return PREPARATION_NONE;
	if (j->preparation != PREPARATION_NONE && takes[j->joint])
		return (enum preparation)j->preparation;
	return own[j->joint];
}

static bool has_radius(const struct groove *g)
{
	return g->shape == GROOVE_U || g->shape == GROOVE_J;
}

/* Depths, angle and radius; of a bevel or J the one member's angle may stand under either
 * word. What a single preparation does not cut is land. */
static void fill_groove(const struct joint_block *j, struct groove *g)
{
	double front = key_middle(&j->depth), back = key_middle(&j->depth_back);
	bool two = g->shape == GROOVE_V || g->shape == GROOVE_U;

	g->angle_deg = given(&j->angle) ? key_middle(&j->angle)
	                                : key_middle(&j->bevel) * (two ? 2 : 1);
	if (has_radius(g))
		g->radius_mm = key_middle(&j->radius);
	if (g->both) {
		g->back_deg = key_middle(given(&j->angle_back) ? &j->angle_back : &j->bevel_back);
		if (!given(&j->angle_back) && g->shape != GROOVE_BEVEL && g->shape != GROOVE_J)
			g->back_deg *= 2;
		g->back_radius_mm = key_middle(&j->radius_back);
	}
	if (!g->both && front > 0 && !given(&j->land))
		g->land_mm = g->thickness_mm - front;
	if (g->both && front > 0 && back > 0)
		g->land_mm = g->thickness_mm - front - back;
	if (g->both)
		g->front_mm = front > 0 || !(back > 0) ? front
		                                       : g->thickness_mm - g->land_mm - back;
}

bool key_groove(const struct joint_block *j, struct groove *g)
{
	static const struct { enum groove_shape shape; bool known, both; }
	    rows[PREPARATION_COUNT] = {
		[PREPARATION_SQUARE] = { GROOVE_SQUARE, true, false },
		[PREPARATION_V] = { GROOVE_V, true, false },
		[PREPARATION_BEVEL] = { GROOVE_BEVEL, true, false },
		[PREPARATION_U] = { GROOVE_U, true, false },
		[PREPARATION_J] = { GROOVE_J, true, false },
		[PREPARATION_DOUBLE_V] = { GROOVE_V, true, true },
		[PREPARATION_DOUBLE_BEVEL] = { GROOVE_BEVEL, true, true },
		[PREPARATION_DOUBLE_U] = { GROOVE_U, true, true },
		[PREPARATION_DOUBLE_J] = { GROOVE_J, true, true },
	};
	double t = key_middle(&j->t1) > 0 ? key_middle(&j->t1) : j->pipe.wall_mm;
	enum preparation edges = edges_of(j);

	*g = (struct groove){ .shape = rows[edges].shape, .both = rows[edges].both,
		.thickness_mm = t, .gap_mm = key_middle(&j->gap),
		.land_mm = key_middle(&j->land) };
	if (!rows[edges].known)
		return false;
	if (g->shape == GROOVE_SQUARE) {
		g->land_mm = 0;
		return g->gap_mm > 0;
	}
	fill_groove(j, g);
	return g->angle_deg > 0 && g->land_mm >= 0 && has_radius(g) == (g->radius_mm > 0) &&
	    !groove_fault(g);
}

static double caps_mm2(const struct joint_block *j, const struct groove *g)
{
	double height = key_middle(&j->reinforcement), mm2;

	if (!(height > 0))
		return 0;
	mm2 = cap_mm2(groove_width_mm(g), height);
	return g->both || j->both_sides ? mm2 + cap_mm2(groove_back_width_mm(g), height) : mm2;
}

static double second_leg(const struct joint_block *j)
{
	return key_middle(given(&j->leg2) ? &j->leg2 : &j->leg);
}

/* Cross section in mm2, cap counted when its height is given; 0: not known, as of a
 * fillet over a groove, which share metal. */
double key_section_mm2(const struct joint_block *j)
{
	double leg = key_middle(&j->leg), leg2 = second_leg(j);
	struct groove g;

	if (j->preparation == PREPARATION_NONE &&
	    (j->joint == JOINT_TEE || j->joint == JOINT_LAP))
		return leg > 0 ? fillet_mm2(leg, leg2) * (j->both_sides ? 2 : 1) : 0;
	if (leg > 0 || !key_groove(j, &g) || !(g.thickness_mm > 0))
		return 0;
	return groove_mm2(&g) + caps_mm2(j, &g);
}

/* The weld that a drawing shows, or null. */
const struct weld *key_weld(const struct key *k, const struct joint_block *j)
{
	if (j->weld != NONE)
		return &k->x->welds[j->weld];
	return k->x->nwelds == 1 ? &k->x->welds[0] : NULL;
}

/* Of a weld that names none the last process listed: the one that fills the joint. */
enum process key_process(const struct key *k, const struct joint_block *j)
{
	const struct weld *w = key_weld(k, j);

	if (w && w->process < PROCESS_COUNT)
		return w->process;
	return k->x->nprocesses ? k->x->processes[k->x->nprocesses - 1] : PROCESS_COUNT;
}

str key_material(const struct key *k, const struct joint_block *j)
{
	const struct weld *w = j ? key_weld(k, j) : NULL;

	if (w && w->material1.n)
		return w->material1;
	return k->x->nmaterials ? k->x->materials[0].text : (str){ 0 };
}

/* What a drawn weld is made of; null where that is not known, as in brazing. */
const struct weld_metal *key_metal(const struct key *k, const struct joint_block *j)
{
	static const enum metal_family families[METAL_COUNT] = {
		[METAL_NONE] = FAMILY_OTHER, [METAL_STEEL] = FAMILY_STEEL,
		[METAL_STAINLESS] = FAMILY_STAINLESS, [METAL_ALUMINUM] = FAMILY_ALUMINUM,
		[METAL_GALVANIZED] = FAMILY_STEEL,
	};
	enum process p = key_process(k, j);

	if (p == PROCESS_TB || p == PROCESS_TS)
		return NULL;
	return weld_metal_of(families[sheet_metal_of(key_material(k, j))]);
}

/* The mixture in the words of the table of efficiencies; empty: the least of its rows. */
static str gas_words(const struct assignment *x)
{
	static const struct { str said, table; } mixes[] = {
		{ STR("75/25 argon/CO2"), STR("75Ar-25CO2") },
		{ STR("98/2 argon/O2"), STR("98Ar-2O2") }, { STR("CO2"), STR("CO2") },
	};
	str gas = fact_text(x, STR("Gas"));

	for (size_t i = 0; i < sizeof mixes / sizeof *mixes; i++)
		if (str_starts_nocase(gas, mixes[i].said))
			return mixes[i].table;
	return (str){ 0 };
}

const struct efficiency *key_efficiency(const struct key *k, const struct joint_block *j)
{
	enum process p = key_process(k, j);

	return p < PROCESS_COUNT ? efficiency_find(process_word(p), gas_words(k->x), 0) : NULL;
}

/* A twentieth over for starts and offcuts (common practice, no source). */
static void add_filler(struct key *k, const struct joint_block *j, double deposit_lb)
{
	const struct efficiency *e = key_efficiency(k, j);
	struct worked *w;
	double lb;

	if (!e)
		return;
	lb = filler_bought_lb(deposit_lb, e->percent);
	w = key_add(k, key_weld_name(k, j, "Filler to buy"));
	w->steps = str_format(k->arena, "weld metal / %.*s = %.*s; with 5 %% over x 1.05",
	    STR_ARG(key_real(k->arena, e->percent, 0, "%")), STR_ARG(key_weight(k, lb, 2)));
	w->result = str_format(k->arena, "%.*s for one weld",
	    STR_ARG(key_weight(k, lb * 1.05, 2)));
	w->source = str_of(e->source);
	w->dagger = seen_of(e->verified) == SEEN_MEMORY;
}

static void add_weld_metal(struct key *k, const struct joint_block *j)
{
	double area = key_section_mm2(j), length = key_length_mm(j), lb;
	const struct weld_metal *metal = key_metal(k, j);
	bool capped = key_middle(&j->leg) <= 0 && key_middle(&j->reinforcement) > 0;
	struct worked *w;

	if (!metal || !(area > 0) || !(length > 0))
		return;
	lb = weight_lb(area * length, metal->density_lb_in3);
	w = key_add(k, key_weld_name(k, j, "Weld metal"));
	w->steps = str_format(k->arena, "section %.*s%s x length %.*s x %.*s (%s)%s",
	    STR_ARG(k->metric ? key_real(k->arena, area, 2, "mm2") : square_inches(k, area)),
	    capped ? " with its cap" : "", STR_ARG(key_length(k, length)),
	    STR_ARG(key_density(k, metal->density_lb_in3)), metal->word,
	    k->metric ? PER_CUBE : "");
	w->result = key_weight(k, lb, 2);
	w->source = str_of(metal->source);
	w->dagger = metal->seen == SEEN_MEMORY;
	add_filler(k, j, lb);
}

/* ---- fillets ---- */

/* Not one over prepared edges: groove and fillet make up its throat together. */
static bool is_fillet(const struct joint_block *j)
{
	if (j->preparation != PREPARATION_NONE)
		return false;
	return j->joint == JOINT_TEE || j->joint == JOINT_LAP || j->joint == JOINT_CORNER;
}

/* A leg is asked for and gauged by fractions. */
static str leg_text(const struct key *k, double mm)
{
	struct buf b = { .arena = k->arena };

	format_answer_as(&b, edition_format(k->e), mm);
	return buf_str(&b);
}

static void add_throat(struct key *k, const struct joint_block *j)
{
	double leg = key_middle(&j->leg);
	struct worked *w;

	if (!(leg > 0) || !is_fillet(j) || j->joint == JOINT_CORNER)
		return;
	w = key_add(k, key_weld_name(k, j, "Least throat"));
	w->steps = given(&j->leg2)
	    ? str_format(k->arena, "a x b / square root of (a x a + b x b), legs %.*s and %.*s",
	        STR_ARG(leg_text(k, leg)), STR_ARG(leg_text(k, second_leg(j))))
	    : str_format(k->arena, "0.7071 x leg %.*s", STR_ARG(leg_text(k, leg)));
	w->result = key_length(k, given(&j->leg2)
	    ? fillet_throat_unequal_mm(leg, second_leg(j), 90) : fillet_throat_mm(leg));
	w->source = STR("geometry, flat face");
	w->at_drawing = true;
}

static bool is_cyclic(const struct assignment *x)
{
	for (size_t i = 0; i < x->ncriteria; i++)
		if (str_eq_nocase(x->criteria[i].loading, STR("cyclic")))
			return true;
	return false;
}

/* The code's least leg for carbon steel: by the thinner part with low-hydrogen filler. */
static void add_least_leg(struct key *k, const struct joint_block *j, double thin_mm,
    double thick_mm)
{
	bool low = setting_hydrogen(k->x) == HYDROGEN_LOW;
	struct fillet_limit f = fillet_least_leg(thin_mm, thick_mm, low, is_cyclic(k->x));
	struct worked *w;

	/* D1.1 begins at 1/8 in; thinner sheet has a code of its own. */
	if (sheet_metal_of(key_material(k, j)) != METAL_STEEL || !(f.mm > 0) ||
	    thin_mm < 25.4 / 8 - 1e-6)
		return;
	w = key_add(k, key_weld_name(k, j, "Least leg of the code"));
	w->steps = str_format(k->arena, "%s part %.*s, %s filler", low ? "thinner" : "thicker",
	    STR_ARG(key_length(k, low ? thin_mm : thick_mm)),
	    low ? "low-hydrogen" : "other");
	w->result = leg_text(k, f.mm);
	w->source = str_of(f.source);
	w->dagger = f.seen == SEEN_MEMORY;
	w->at_drawing = true;
}

/* Along a lap by the edge that is welded; elsewhere one side of the thinner part. */
static void add_largest_leg(struct key *k, const struct joint_block *j, double edge_mm,
    double thin_mm)
{
	struct fillet_limit f = { thin_mm, "common practice, no source", SEEN_PAGE };
	struct worked *w = key_add(k, key_weld_name(k, j, "Largest leg"));

	if (j->joint == JOINT_LAP)
		f = fillet_largest_lap_leg(edge_mm);
	w->steps = j->joint == JOINT_LAP
	    ? str_format(k->arena, k->metric
	        ? "edge %.*s: all of it under 6.4 mm [1/4 in], else 1.6 mm [1/16 in] less"
	        : "edge %.*s: all of it under 1/4 in, else 1/16 in less",
	        STR_ARG(key_length(k, edge_mm)))
	    : STR("not over the thinner part on a coupon welded from one side");
	w->result = leg_text(k, f.mm);
	w->source = str_of(f.source);
	w->dagger = f.seen == SEEN_MEMORY;
	w->at_drawing = true;
}

static void add_legs(struct key *k, const struct joint_block *j)
{
	double t1 = key_middle(&j->t1), t2 = key_middle(&j->t2), thin, thick;

	t2 = t2 > 0 ? t2 : t1;
	thin = t1 < t2 ? t1 : t2;
	thick = t1 < t2 ? t2 : t1;
	if (!is_fillet(j) || !(thin > 0) || !(key_middle(&j->leg) > 0))
		return;
	add_least_leg(k, j, thin, thick);
	add_largest_leg(k, j, t1, thin);
}

/* ---- grooves ---- */

static void add_groove(struct key *k, const struct joint_block *j)
{
	struct groove g;
	struct worked *w;
	str sizes;

	if (!key_groove(j, &g) || !(g.thickness_mm > 0))
		return;
	sizes = str_format(k->arena, "root opening %.*s, thickness %.*s",
	    STR_ARG(key_length(k, g.gap_mm)), STR_ARG(key_length(k, g.thickness_mm)));
	if (g.shape != GROOVE_SQUARE) {
		sizes = str_format(k->arena, "%.*s, land %.*s, %.*s", STR_ARG(sizes),
		    STR_ARG(key_length(k, g.land_mm)),
		    STR_ARG(key_real(k->arena, g.angle_deg, 1, "deg")));
		if (has_radius(&g))
			sizes = str_format(k->arena, "%.*s, radius %.*s", STR_ARG(sizes),
			    STR_ARG(key_length(k, g.radius_mm)));
		w = key_add(k, key_weld_name(k, j, "Groove width at the face"));
		w->steps = sizes;
		w->result = key_length(k, groove_width_mm(&g));
		w->source = STR("geometry");
		w->at_drawing = true;
	}
	w = key_add(k, key_weld_name(k, j, "Groove area without cap"));
	w->steps = g.shape == GROOVE_SQUARE ? sizes : STR("from the same sizes");
	w->result = key_area(k, groove_mm2(&g));
	w->source = STR("geometry");
	w->at_drawing = true;
}

void key_joint_lines(struct key *k, const struct joint_block *j)
{
	add_throat(k, j);
	add_legs(k, j);
	add_groove(k, j);
	add_weld_metal(k, j);
}

struct workings workings_of(struct arena *a, const struct assignment *x,
    const struct edition *e)
{
	struct workings out = { 0 };
	struct key k = { .arena = a, .x = x, .e = e, .metric = e && e->choice.metric,
		.out = &out, .drawing = NONE };

	for (size_t i = 0; i < x->ndrawings; i++) {
		const struct joint_block *j = &x->drawings[i].joint;

		if (x->drawings[i].kind != DRAWING_JOINT || joint_is_cut(j->joint))
			continue;
		k.drawing = (uint32_t)i;
		key_joint_lines(&k, j);
		key_time_lines(&k, j);
	}
	k.drawing = NONE;
	key_bend_lines(&k);
	key_piece_lines(&k);
	key_ask_lines(&k);
	return out;
}
