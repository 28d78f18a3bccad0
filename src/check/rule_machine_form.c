/* Punch, drill, plate roll and tensile frame against what the sheet asks of them. */
#include "check/rule_machine.h"

#include "model/pattern_block.h"
#include "model/test_line.h"
#include "reckon/machine.h"
#include "reckon/tensile.h"

#define PRACTICE "common practice, no source"

static const char *const force[] = { "Force", "Tonnage", NULL };
static const char *const punch_keys[] = { "Punch", "Largest hole", NULL };
static const char *const drill_keys[] = { "Mild steel", "Steel", "Drill", NULL };
static const char *const grips[] = { "Grips", NULL };

static double punch_ksi(const struct metal *m)
{
	/* Figures run from 50 to 60 ksi in mild steel; the lower end is judged, so that
	 * only what surely stalls the machine is reported. */
	return m->punch_ksi * 50 / 60;
}

/* A word of the steps that speaks of the punch and not of the center punch. */
static bool speaks_of_punching(const struct assignment *a)
{
	for (size_t i = 0; i < a->nsteps; i++)
		for (size_t k = 0; k < a->steps[i].para.nspans; k++) {
			str t = a->steps[i].para.spans[k].text;

			for (size_t at = str_find(t, STR("unch"), 0); at < t.n;
			    at = str_find(t, STR("unch"), at + 1))
				if (at && (at < 8 || (!str_eq_nocase(str_sub(t, at - 8,
				    at - 2), STR("center")))))
					return true;
		}
	return false;
}

/* The machine that punches the holes, null when they may be made otherwise: a drill or
 * a cutting table beside the punch leaves it open unless the steps say so. */
static const struct machine *punch_of(const struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct machine *m = machine_of(x, w, "ironworker", false);

	if (!m)
		m = machine_of(x, w, "punch", false);
	if (!m)
		return NULL;
	if (!machine_of(x, w, "drill", false) && !machine_of(x, w, "plasma", false))
		return m;
	return speaks_of_punching(a) ? m : NULL;
}

static void say_thin_hole(struct rule_context *x, uint32_t w, struct pos pos, double d_mm,
    double t_mm)
{
	struct finding *d = rule_report(x, FINDING_HOLE_TOO_SMALL_TO_PUNCH, pos, w,
	    "a hole of %.*s is to be punched in %.*s, thicker than the hole is wide",
	    STR_ARG(say_mm(x, d_mm)), STR_ARG(say_mm(x, t_mm)));
	bool drill = false;

	for (size_t i = 0; i < x->m->nmachines; i++)
		drill |= says(x->m->machines[i].name, "drill");
	finding_cause(x->f, d, "a punch thinner than the plate breaks (" PRACTICE ")");
	finding_repair(x->f, d, "%smake the hole %.*s or wider",
	    drill ? "drill it on the drill press, or " : "", STR_ARG(say_mm(x, t_mm)));
}

/* The words of what a drawn blank is made of. */
static str plate_material(const struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	return a->nmaterials ? a->materials[0].text : (str){ 0 };
}

static void say_force(struct rule_context *x, uint32_t w, struct pos pos,
    const struct machine *m, double d_mm, double t_mm, double ksi)
{
	double tons = punch_round_tons(d_mm, t_mm, ksi), most = machine_lbf(m) / 2000;
	double most_mm = punch_most_mm(most, t_mm, ksi);
	struct finding *d = rule_report(x, FINDING_PUNCH_TOO_SMALL, pos, w,
	    "a hole of %.*s in %.*s takes %.*s tons, and the %.*s has %.*s",
	    STR_ARG(say_mm(x, d_mm)), STR_ARG(say_mm(x, t_mm)),
	    STR_ARG(say_real(x, tons, 1)), STR_ARG(m->name),
	    STR_ARG(say_real(x, most, 1)));

	d->level = LEVEL_WARNING;
	finding_cause(x->f, d, "3.1416 x diameter x thickness x %.*s ksi / 2; the "
	    "strength is from memory, the machine's chart decides",
	    STR_ARG(say_real(x, ksi, 0)));
	finding_repair(x->f, d, "punch no more than about %.*s in this plate, or %.*s",
	    STR_ARG(say_mm(x, most_mm)), STR_ARG(hole_way_out(x,
	    plate_material(x, w), d_mm, t_mm, "ironworker")));
	limit_note(x, d, m, machine_limit(m, force));
}

static void say_wide_hole(struct rule_context *x, uint32_t w, struct pos pos,
    const struct machine *m, double d_mm, double t_mm, double most_mm, bool drill)
{
	struct finding *d = rule_report(x, drill ? FINDING_DRILL_TOO_SMALL
	    : FINDING_PUNCH_TOO_SMALL, pos, w,
	    "a hole of %.*s is wider than the %.*s takes, %.*s",
	    STR_ARG(say_mm(x, d_mm)), STR_ARG(m->name), STR_ARG(say_mm(x, most_mm)));

	finding_cause(x->f, d, "shop.md, Machine %.*s", STR_ARG(m->name));
	finding_repair(x->f, d, "%.*s, or make it smaller", STR_ARG(hole_way_out(x,
	    plate_material(x, w), d_mm, t_mm, drill ? "drill" : "ironworker")));
	limit_note(x, d, m, machine_limit(m, drill ? drill_keys : punch_keys));
}

static void judge_hole(struct rule_context *x, uint32_t w, const struct plate_block *p,
    const struct plate_mark *hole, const struct machine *m)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct metal *metal = a->nmaterials ? metal_of(a->materials[0].text) : NULL;
	double d_mm = hole->v[2].lo, t_mm = p->thickness.hi;
	double most = machine_mm(m, punch_keys, METAL_NONE), lbf = machine_lbf(m);

	if (is_over(t_mm, d_mm))
		say_thin_hole(x, w, hole->pos, d_mm, t_mm);
	else if (most > 0 && is_over(d_mm, most))
		say_wide_hole(x, w, hole->pos, m, d_mm, t_mm, most, false);
	else if (metal && metal->punch_ksi > 0 && lbf > 0 &&
	    punch_round_tons(d_mm, t_mm, punch_ksi(metal)) > lbf / 2000 + 1e-9)
		say_force(x, w, hole->pos, m, d_mm, t_mm, punch_ksi(metal));
}

/* Holes of one size are one cause: the first speaks for them. */
static bool is_first_of_size(const struct plate_block *p, size_t i)
{
	for (size_t k = 0; k < i; k++)
		if (p->marks[k].kind == MARK_HOLE &&
		    is_same_mm(p->marks[k].v[2].lo, p->marks[i].v[2].lo))
			return false;
	return true;
}

static void judge_holes(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct machine *punch = NULL, *drill = NULL;
	double most;

	if (!a->ndrawings)
		return;
	punch = punch_of(x, w);
	drill = machine_of(x, w, "drill", false);
	most = drill ? machine_mm(drill, drill_keys, METAL_NONE) : 0;
	for (size_t i = 0; i < a->ndrawings; i++) {
		const struct plate_block *p = &a->drawings[i].plate;

		if (a->drawings[i].kind != DRAWING_PLATE)
			continue;
		for (size_t k = 0; k < p->nmarks; k++) {
			const struct plate_mark *h = &p->marks[k];

			if (h->kind != MARK_HOLE || !is_first_of_size(p, k))
				continue;
			if (punch)
				judge_hole(x, w, p, h, punch);
			else if (drill && !machine_of(x, w, "ironworker", false) &&
			    !machine_of(x, w, "plasma", false) && most > 0 &&
			    is_over(h->v[2].lo, most))
				say_wide_hole(x, w, h->pos, drill, h->v[2].lo,
				    p->thickness.hi, most, true);
		}
	}
}

/* A piece that surely goes through the roll: made so, or named for what it becomes. */
static bool is_rolled(const struct piece *p)
{
	static const char *const names[] = { "shell", "cylinder", "drum", "hoop", NULL };
	static const char *const made[] = { "roll", NULL };

	return says_any(p->made, made) || says_any(p->name, names);
}

/* The diameter that an Acceptance line gives: "inside diameter 36 in". */
static double wanted_diameter_mm(const struct assignment *a, struct pos *pos)
{
	for (size_t i = 0; i < a->ncriteria; i++) {
		str t = a->criteria[i].text;
		size_t at = str_find(t, STR("diameter "), 0), used;
		struct quantity_fault fault;
		struct quantity q;

		if (at >= t.n || quantity_prefix(str_sub(t, at + 9, t.n), QUANTITY_LENGTH,
		    METAL_NONE, &q, &used, &fault) != QUANTITY_OK || q.no_value)
			continue;
		*pos = a->criteria[i].pos;
		return q.lo;
	}
	return 0;
}

/* That of the cylinder that is drawn, or 0. */
static double drawn_diameter_mm(const struct assignment *a, struct pos *pos)
{
	for (size_t i = 0; i < a->ndrawings; i++) {
		const struct pattern_block *p = a->drawings[i].kind == DRAWING_PATTERN
		    ? a->drawings[i].pattern : NULL;

		if (!p || p->shape != SHAPE_CYLINDER || p->diameter.lo <= 0)
			continue;
		*pos = p->pos;
		return p->diameter.lo;
	}
	return 0;
}

static void say_roll(struct rule_context *x, uint32_t w, struct pos pos,
    const struct machine *m, const struct plain_fact *limit, str what, str asked, str most,
    bool estimate)
{
	struct finding *d = rule_report(x, FINDING_ROLL_TOO_SMALL, pos, w,
	    "%.*s is %.*s, and the %.*s takes %.*s", STR_ARG(what), STR_ARG(asked),
	    STR_ARG(m->name), STR_ARG(most));

	if (estimate) {
		d->level = LEVEL_WARNING;
		finding_cause(x->f, d, "shop.md gives no figure for this metal; reckoned "
		    "from the one for mild steel by strength and width (an estimate; the "
		    "maker's plate decides)");
	} else {
		finding_cause(x->f, d, "shop.md, Machine %.*s", STR_ARG(m->name));
	}
	finding_repair(x->f, d, "change the size%s", machine_of(x, w, "brake", true)
	    ? ", or bend it in steps on the brake" : "");
	limit_note(x, d, m, limit);
}

static void judge_roll(struct rule_context *x, uint32_t w)
{
	static const char *const width_keys[] = { "Width", "Bed", NULL };
	static const char *const least_keys[] = { "Least diameter", "Minimum diameter",
		NULL };
	const struct assignment *a = &x->m->assignments[w];
	const struct machine *m = a->npieces ? machine_of(x, w, "roll", false) : NULL;

	for (size_t i = 0; m && i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		double most, width = machine_mm(m, width_keys, METAL_NONE), d_mm;
		struct pos pos = p->pos;
		bool estimate;
		struct flat f;

		if (!is_rolled(p) || !piece_is_flat(p, &f))
			continue;
		most = machine_roll_mm(m, p->material, f.short_mm, &estimate);
		d_mm = wanted_diameter_mm(a, &pos);
		d_mm = d_mm > 0 ? d_mm : drawn_diameter_mm(a, &pos);
		/* A piece that is wider than the roll would count as too thick as well. */
		if (width > 0 && is_over(f.short_mm, width))
			say_roll(x, w, p->pos, m, machine_limit(m, width_keys), p->name,
			    str_format(x->f->arena, "%.*s wide", STR_ARG(say_mm(x, f.short_mm))),
			    say_mm(x, width), false);
		else if (most > 0 && is_over(f.t_mm, most))
			say_roll(x, w, p->pos, m, machine_thickness_limit(m,
			    p->material), p->name, str_format(x->f->arena,
			    "%.*s thick", STR_ARG(say_mm(x, f.t_mm))),
			    say_mm(x, most), estimate);
		else if (d_mm > 0 && is_over(machine_mm(m, least_keys, METAL_NONE), d_mm))
			say_roll(x, w, pos, m, machine_limit(m, least_keys),
			    STR("the diameter"), say_mm(x, d_mm),
			    str_format(x->f->arena, "%.*s at least",
			    STR_ARG(say_mm(x, machine_mm(m, least_keys, METAL_NONE)))), false);
		else
			continue;
		return;
	}
}

/* Thickness and words of what is pulled: the first butt weld, else the drawing. */
static double pulled_mm(const struct assignment *a, str *material)
{
	for (size_t i = 0; i < a->nwelds; i++)
		if (joint_is_butt(a->welds[i].joint)) {
			*material = a->welds[i].material1;
			return weld_thin_mm(&a->welds[i]);
		}
	*material = a->nmaterials ? a->materials[0].text : (str){ 0 };
	return a->nthicknesses ? a->thicknesses[0].lo : 0;
}

/* A section as wide as the line says its strips are, else a reduced one of 3/4 in, at the
 * most that the metal may stand. Both are customs and figures from memory, so that this
 * only warns. */
static void judge_frame(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct machine *m = NULL;
	double t_mm, width_mm, lbf, small = 0, large = 0;
	const struct metal *metal;
	struct test_strips strips;
	struct finding *d;
	str material;
	size_t i = 0;

	while (i < a->ncriteria && !str_starts_nocase(a->criteria[i].name,
	    STR("Tensile")))
		i++;
	if (i == a->ncriteria || !(m = machine_of(x, w, "tensile", true)))
		return;
	t_mm = pulled_mm(a, &material);
	metal = metal_of(material);
	/* 80 ksi is the most that A36 may have; others in the same proportion. */
	strips = test_strips_of(&a->criteria[i], false, 0);
	width_mm = strips.width_mm > 0 ? strips.width_mm : 0.75 * 25.4;
	lbf = metal ? tensile_load_lbf(metal->uts_ksi * 1000 * 80 / 58, width_mm, t_mm) : 0;
	machine_box(m, grips, &small, &large);
	if (small > 0 && is_over(t_mm, small))
		d = rule_report(x, FINDING_FRAME_TOO_SMALL, a->criteria[i].pos, w,
		    "the specimen is %.*s thick, and the grips of the %.*s take %.*s",
		    STR_ARG(say_mm(x, t_mm)), STR_ARG(m->name),
		    STR_ARG(say_mm(x, small)));
	else if (machine_lbf(m) > 0 && lbf > machine_lbf(m) + 0.5)
		d = rule_report(x, FINDING_FRAME_TOO_SMALL, a->criteria[i].pos, w,
		    "a %.*s section of %.*s may pull %.*s lbf, and the %.*s has %.*s",
		    STR_ARG(say_mm(x, width_mm)), STR_ARG(say_mm(x, t_mm)),
		    STR_ARG(say_real(x, lbf, 0)),
		    STR_ARG(m->name), STR_ARG(say_real(x, machine_lbf(m), 0)));
	else
		return;
	finding_cause(x->f, d, "shop.md, Machine %.*s; strength of the metal from memory",
	    STR_ARG(m->name));
	finding_repair(x->f, d, "turn or mill the specimen smaller, or test a thinner "
	    "coupon");
	limit_note(x, d, m, machine_limit(m, small > 0 && is_over(t_mm, small) ? grips
	    : force));
}

void rule_machine_form(struct rule_context *x)
{
	static rule_judge *const judges[] = { judge_holes, judge_roll, judge_frame };

	limits_judge(x, judges, sizeof judges / sizeof *judges);
}
