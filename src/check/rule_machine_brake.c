/* The press brake against the bends of a plate drawing and of a braked part. */
#include "check/rule_machine.h"

#include "model/pattern_block.h"
#include "reckon/brake.h"

#include <math.h>

enum { OPENINGS_MOST = 16 };

static const char *const openings[] = { "V ", "V-", "Dies", "Die openings", NULL };
static const char *const force[] = { "Force", "Tonnage", NULL };
static const char *const bed[] = { "Bed", "Length", NULL };

/* All bends of one direction on one plate, or those of one braked part. */
struct fold {
	const struct quantity *thickness;
	struct pos pos;          /* of the first bend, or of the block */
	double length_mm;        /* of the bend line */
	double flange_mm;        /* the shortest leg beside any of them */
	double factor;           /* of the metal over mild steel */
	double opening_mm[OPENINGS_MOST]; /* owned, as listed */
	size_t nopenings;
	double lbf, bed_mm;      /* 0: not told */
};

static double distance(double a, double b)
{
	return a > b ? a - b : b - a;
}

/* Shortest distance from a bend to an edge or to its neighbor. */
static double shortest_leg_mm(const struct plate_block *p, enum plate_mark_kind kind,
    double size_mm)
{
	double least = size_mm;

	for (size_t i = 0; i < p->nmarks; i++) {
		double at = p->marks[i].v[0].lo;

		if (p->marks[i].kind != kind)
			continue;
		least = at < least ? at : least;
		least = size_mm - at < least ? size_mm - at : least;
		for (size_t k = 0; k < i; k++)
			if (p->marks[k].kind == kind && distance(p->marks[k].v[0].lo,
			    at) < least)
				least = distance(p->marks[k].v[0].lo, at);
	}
	return least;
}

static size_t read_openings(struct rule_context *x, const struct machine *m, double *v)
{
	struct quantity_fault fault;
	struct quantity_list list;
	size_t n = 0;

	if (quantity_list_parse(x->scratch, machine_says(m, openings), QUANTITY_LENGTH,
	    METAL_NONE, &list, &fault) != QUANTITY_OK)
		return 0;
	for (; n < list.n && n < OPENINGS_MOST; n++)
		v[n] = list.v[n].lo;
	return n;
}

static double tons(const struct fold *f, double opening_mm)
{
	return brake_tons_ft(f->thickness->hi, opening_mm) * f->factor *
	    f->length_mm / 304.8;
}

static bool force_serves(const struct fold *f, double opening_mm)
{
	return f->lbf <= 0 || tons(f, opening_mm) <= f->lbf / 2000 + 1e-9;
}

static bool flange_serves(const struct fold *f, double opening_mm)
{
	return !is_over(brake_flange_mm(opening_mm), f->flange_mm);
}

/* From 6 t to 12 t; where the shop owns none there, the next wider one. */
static bool is_usual(const struct fold *f, double opening_mm)
{
	double t = f->thickness->hi, next = 0;

	if (is_over(6 * t, opening_mm))
		return false;
	if (!is_over(opening_mm, 12 * t))
		return true;
	for (size_t i = 0; i < f->nopenings; i++)
		if (!is_over(6 * t, f->opening_mm[i]) &&
		    (next <= 0 || f->opening_mm[i] < next))
			next = f->opening_mm[i];
	return is_same_mm(opening_mm, next);
}

/* What keeps the usual openings from serving. */
struct fold_fault {
	bool any, forced, flanged; /* one usual, one strong enough, one short enough */
	double v_mm;             /* the one that comes nearest */
};

static bool judge_openings(const struct fold *f, struct fold_fault *fault)
{
	*fault = (struct fold_fault){ 0 };
	for (size_t i = 0; i < f->nopenings; i++) {
		double v = f->opening_mm[i];

		if (!is_usual(f, v))
			continue;
		if (force_serves(f, v) && flange_serves(f, v))
			return true;
		fault->any = true;
		fault->forced |= force_serves(f, v);
		fault->flanged |= flange_serves(f, v);
		if (v > fault->v_mm)
			fault->v_mm = v;
	}
	return false;
}

static double radius_per_v(const struct assignment *a)
{
	const struct metal *m = a->nmaterials ? metal_of(a->materials[0].text) : NULL;

	return m && m->radius_per_v > 0 ? m->radius_per_v : 0.16;
}

/* A wider opening that the shop owns and that does it, or 0. */
static double wider_mm(const struct fold *f)
{
	double best = 0;

	for (size_t i = 0; i < f->nopenings; i++) {
		double v = f->opening_mm[i];

		if (!is_over(6 * f->thickness->hi, v) && force_serves(f, v) &&
		    flange_serves(f, v) && (best <= 0 || v < best))
			best = v;
	}
	return best;
}

/* A greatest length, rounded down: "4.4 ft [1.3 m]", below two feet "8 in [203.2 mm]". */
static str say_most(const struct rule_context *x, double mm)
{
	if (mm < 609.6)
		return say_mm(x, floor(mm / 25.4 + 1e-6) * 25.4);
	return str_format(x->f->arena, "%.*s ft [%.*s m]",
	    STR_ARG(say_real(x, mm / 304.8 - 0.05, 1)),
	    STR_ARG(say_real(x, mm / 1000 - 0.05, 1)));
}

/* A part that is cut much shorter is another part, and below two inches nothing is left
 * to hold in the brake. */
static bool is_worth_bending(double most_mm, double length_mm)
{
	return most_mm >= 50.8 && most_mm >= length_mm / 4;
}

static void say_force(struct rule_context *x, uint32_t w, const struct machine *m,
    const struct fold *f, const struct fold_fault *fault)
{
	double wide = wider_mm(f), has = f->lbf / 2000;
	double most_mm = f->length_mm * has / tons(f, fault->v_mm);
	bool shorter = is_worth_bending(most_mm, f->length_mm);
	struct finding *d = rule_report(x, FINDING_BRAKE_TOO_SMALL, f->pos, w,
	    "a bend of %.*s in %.*s takes %.*s tons in the %.*s V, and the %.*s has %.*s",
	    STR_ARG(say_mm(x, f->length_mm)), STR_ARG(say_quantity(x,
	    f->thickness)), STR_ARG(say_real(x, tons(f, fault->v_mm), 1)),
	    STR_ARG(say_mm(x, fault->v_mm)), STR_ARG(m->name),
	    STR_ARG(say_real(x, has, 1)));

	finding_cause(x->f, d, "575 t2 / V tons a foot x %.*s for the metal (press-brake "
	    "tooling articles; air bend, V of 6 to 12 t); shop.md, Machine %.*s",
	    STR_ARG(say_real(x, f->factor, 2)), STR_ARG(m->name));
	if (wide > 0)
		finding_repair(x->f, d, "the %.*s V takes %.*s tons, with an inside "
		    "radius of about %.*s%s%.*s%s", STR_ARG(say_mm(x, wide)),
		    STR_ARG(say_real(x, tons(f, wide), 1)),
		    STR_ARG(say_mm(x, wide * radius_per_v(&x->m->assignments[w]))),
		    shorter ? "; or bend no more than " : "; or take thinner metal",
		    STR_ARG(shorter ? say_most(x, most_mm) : STR("")),
		    shorter ? " at a time" : "");
	else if (shorter)
		finding_repair(x->f, d, "bend no more than %.*s at a time, or take "
		    "thinner metal", STR_ARG(say_most(x, most_mm)));
	else
		finding_repair(x->f, d, "take thinner metal, or a brake of %.*s tons or "
		    "more: no length worth bending is left for this one",
		    STR_ARG(say_real(x, ceil(tons(f, fault->v_mm)), 0)));
	limit_note(x, d, m, machine_limit(m, force));
}

static void say_flange(struct rule_context *x, uint32_t w, const struct fold *f,
    double v_mm)
{
	double least = v_mm;
	struct finding *d;

	for (size_t i = 0; i < f->nopenings; i++)
		if (is_usual(f, f->opening_mm[i]) && force_serves(f, f->opening_mm[i]) &&
		    f->opening_mm[i] < least)
			least = f->opening_mm[i];
	d = rule_report(x, FINDING_FLANGE_TOO_SHORT, f->pos, w,
	    "a flange of %.*s is too short for the %.*s V, the smallest that serves %.*s",
	    STR_ARG(say_mm(x, f->flange_mm)), STR_ARG(say_mm(x, least)),
	    STR_ARG(say_quantity(x, f->thickness)));
	d->level = LEVEL_WARNING;
	finding_cause(x->f, d, "a flange is at least about 0.7 of the V, here %.*s (from "
	    "memory)", STR_ARG(say_mm(x, brake_flange_mm(least))));
	/* A way out is laid out with a rule. */
	finding_repair(x->f, d, "make it %.*s or longer, or bend it long and trim it",
	    STR_ARG(say_mm(x, ceil(brake_flange_mm(least) * 32 / 25.4 - 1e-6) * 25.4 / 32)));
}

static void say_bed(struct rule_context *x, uint32_t w, const struct machine *m,
    const struct fold *f)
{
	struct finding *d = rule_report(x, FINDING_BRAKE_TOO_SMALL, f->pos, w,
	    "a bend is %.*s long, and the bed of the %.*s is %.*s",
	    STR_ARG(say_mm(x, f->length_mm)), STR_ARG(m->name),
	    STR_ARG(say_mm(x, f->bed_mm)));

	finding_cause(x->f, d, "shop.md, Machine %.*s", STR_ARG(m->name));
	finding_repair(x->f, d, "make it of shorter pieces");
	limit_note(x, d, m, machine_limit(m, bed));
}

static void say_no_v(struct rule_context *x, uint32_t w, const struct machine *m,
    const struct fold *f)
{
	struct finding *d = rule_report(x, FINDING_BRAKE_TOO_SMALL, f->pos, w,
	    "no V of the %.*s is wide enough for %.*s, which wants "
	    "%.*s", STR_ARG(m->name),
	    STR_ARG(say_quantity(x, f->thickness)),
	    STR_ARG(say_mm(x, brake_opening_mm(f->thickness->hi))));

	finding_cause(x->f, d, "a V of 6 to 12 t (press-brake tooling articles); "
	    "shop.md, Machine %.*s", STR_ARG(m->name));
	finding_repair(x->f, d, "take thinner metal, or cut and weld the corner");
	limit_note(x, d, m, machine_limit(m, openings));
}

static void judge_fold(struct rule_context *x, uint32_t w, const struct machine *m,
    struct fold *f)
{
	struct fold_fault fault;

	f->bed_mm = machine_mm(m, bed, METAL_NONE);
	f->lbf = machine_lbf(m);
	f->nopenings = read_openings(x, m, f->opening_mm);
	if (f->bed_mm > 0 && is_over(f->length_mm, f->bed_mm))
		say_bed(x, w, m, f);
	else if (!f->nopenings || judge_openings(f, &fault))
		return;
	else if (!fault.any)
		say_no_v(x, w, m, f);
	else if (!fault.forced)
		say_force(x, w, m, f, &fault);
	else
		say_flange(x, w, f, fault.v_mm);
}

static const struct plate_mark *first_bend(const struct plate_block *p,
    enum plate_mark_kind kind)
{
	for (size_t i = 0; i < p->nmarks; i++)
		if (p->marks[i].kind == kind)
			return &p->marks[i];
	return NULL;
}

static void judge_plate(struct rule_context *x, uint32_t w, const struct machine *m,
    const struct plate_block *p, double factor)
{
	for (int way = 0; way < 2; way++) {
		enum plate_mark_kind kind = way ? MARK_BEND_Y : MARK_BEND_X;
		const struct plate_mark *first = first_bend(p, kind);
		struct fold f = { .thickness = &p->thickness, .factor = factor };

		if (!first || p->thickness.hi <= 0)
			continue;
		f.pos = first->pos;
		f.length_mm = way ? p->length.hi : p->width.hi;
		f.flange_mm = shortest_leg_mm(p, kind, way ? p->width.lo : p->length.lo);
		/* A line beside the plate is told with the drawing. */
		if (f.length_mm > 0 && f.flange_mm > 0)
			judge_fold(x, w, m, &f);
	}
}

/* Every flange of a braked part lies on a V, those between two bends too. */
static void judge_part(struct rule_context *x, uint32_t w, const struct machine *m,
    const struct pattern_block *p, double factor)
{
	struct fold f = { .thickness = &p->thickness, .pos = p->pos, .factor = factor,
		.length_mm = p->width.hi };

	if (p->shape != SHAPE_BRAKE || !p->nflanges || p->thickness.hi <= 0 ||
	    f.length_mm <= 0)
		return;
	f.flange_mm = p->flanges[0].lo;
	for (uint32_t i = 1; i < p->nflanges; i++)
		if (p->flanges[i].lo < f.flange_mm)
			f.flange_mm = p->flanges[i].lo;
	judge_fold(x, w, m, &f);
}

static void judge_brake(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct machine *m = a->ndrawings ? machine_of(x, w, "brake", false) : NULL;
	const struct metal *metal = a->nmaterials ? metal_of(a->materials[0].text) : NULL;
	double factor = metal ? brake_factor(metal) : 0;

	for (size_t i = 0; m && factor > 0 && i < a->ndrawings; i++)
		if (a->drawings[i].kind == DRAWING_PLATE)
			judge_plate(x, w, m, &a->drawings[i].plate, factor);
		else if (a->drawings[i].kind == DRAWING_PATTERN && a->drawings[i].pattern)
			judge_part(x, w, m, a->drawings[i].pattern, factor);
}

void rule_machine_brake(struct rule_context *x)
{
	static rule_judge *const judges[] = { judge_brake };

	limits_judge(x, judges, 1);
}
