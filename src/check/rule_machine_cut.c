/* Shear, saw and cutting table against the pieces. */
#include "check/rule_machine.h"

#include "model/words.h"

/* "brace (1/4 in [6.4 mm] 304 plate)" */
static str piece_say(const struct rule_context *x, const struct piece *p)
{
	return str_format(x->f->arena, "%.*s (%.*s %.*s)", STR_ARG(p->name),
	    STR_ARG(p->size), STR_ARG(p->material));
}

/* A sheet is crosscut along its longer side unless its shorter one is a width that
 * mills roll: then one cut across it is enough. */
static double shear_cut_mm(const struct piece *p, const struct flat *f)
{
	static const double widths_in[] = { 36, 48, 60, 72, 96 };

	if (says(p->material, "bar"))
		return f->short_mm;
	for (size_t i = 0; i < sizeof widths_in / sizeof *widths_in; i++)
		if (is_same_mm(f->short_mm, widths_in[i] * 25.4))
			return f->short_mm;
	return f->long_mm;
}

static const char *const bar[] = { "Flat bar", NULL };
static const char *const bed[] = { "Bed", "Length", "Width", NULL };

static bool ironworker_takes(const struct machine *m, const struct piece *p,
    const struct flat *f)
{
	double small, large;

	return sheet_metal_of(p->material) == METAL_STEEL && says(p->material, "bar") &&
	    machine_box(m, bar, &small, &large) && !is_over(f->t_mm, small) &&
	    !is_over(f->short_mm, large);
}

static bool shear_bed_takes(const struct machine *m, const struct piece *p,
    const struct flat *f)
{
	double most = machine_mm(m, bed, METAL_NONE);

	return most <= 0 || !is_over(shear_cut_mm(p, f), most);
}

static struct finding *say_shear(struct rule_context *x, uint32_t w,
    const struct piece *p, const struct machine *m, const struct flat *f)
{
	const struct machine *iron = machine_of(x, w, "ironworker", true);
	bool estimate, short_bed;
	double most = machine_thickness_mm(m, p->material, &estimate);
	struct finding *d;

	short_bed = most <= 0 || !is_over(f->t_mm, most);
	if (short_bed)
		d = rule_report(x, FINDING_SHEAR_TOO_SMALL, p->pos, w,
		    "%.*s needs a cut of %.*s, longer than the %.*s",
		    STR_ARG(piece_say(x, p)), STR_ARG(say_mm(x, shear_cut_mm(p, f))),
		    STR_ARG(m->name));
	else
		d = rule_report(x, FINDING_SHEAR_TOO_SMALL, p->pos, w,
		    "%.*s is %.*s thick, and the %.*s takes %s%.*s of %s",
		    STR_ARG(piece_say(x, p)), STR_ARG(say_mm(x, f->t_mm)),
		    STR_ARG(m->name), estimate ? "about " : "", STR_ARG(say_mm(x, most)),
		    sheet_metal_word(sheet_metal_of(p->material)));
	if (estimate && !short_bed) {
		d->level = LEVEL_WARNING;
		finding_cause(x->f, d, "shop.md gives no figure for this metal; reckoned "
		    "from the one for mild steel (from memory; the maker's plate "
		    "decides)");
	} else {
		finding_cause(x->f, d, "shop.md, Machine %.*s", STR_ARG(m->name));
	}
	finding_repair(x->f, d, "%.*s", STR_ARG(machine_way_out(x, p, "shear")));
	/* Bars belong on the ironworker, which takes them thicker than a shear. */
	if (iron && says(p->material, "bar") && machine_limit(iron, bar))
		limit_note(x, d, iron, machine_limit(iron, bar));
	else
		limit_note(x, d, m, short_bed ? machine_limit(m, bed)
		    : machine_thickness_limit(m, p->material));
	return d;
}

/* Whether a shear takes a piece; what another machine takes is not judged here. */
static bool shear_takes(const struct rule_context *x, uint32_t w, const struct piece *p,
    const struct machine *shear, const struct flat *f)
{
	const struct machine *iron = machine_of(x, w, "ironworker", true);
	bool estimate;
	double most = machine_thickness_mm(shear, p->material, &estimate);

	if (iron && ironworker_takes(iron, p, f))
		return true;
	return (most <= 0 || !is_over(f->t_mm, most)) && shear_bed_takes(shear, p, f);
}

/* Pieces alike in metal and thickness have one cause: the first speaks for them. */
static void judge_shear(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct machine *m = a->npieces ? machine_of(x, w, "shear", true) : NULL;
	const struct piece *told = NULL;
	struct finding *d = NULL;

	for (size_t i = 0; m && i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		struct flat f;

		if (!says(p->made, "shear") || !piece_is_flat(p, &f) ||
		    shear_takes(x, w, p, m, &f) || piece_is_disputed(a, p))
			continue;
		if (told && str_eq(told->material, p->material) &&
		    is_same_mm(told->dims[0].hi, f.t_mm)) {
			finding_relate(x->f, d, p->pos)->label = p->name;
			continue;
		}
		d = say_shear(x, w, p, m, &f);
		told = p;
	}
}

static void judge_saw(struct rule_context *x, uint32_t w)
{
	static const char *const limits[] = { "Round", "Rectangle", NULL };
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		const struct machine *m;
		struct finding *d;

		if (!says(p->made, "saw"))
			continue;
		m = machine_of(x, w, "saw", true);
		if (!m || saw_takes(m, p) || piece_is_disputed(a, p))
			continue;
		d = rule_report(x, FINDING_SAW_TOO_SMALL, p->pos, w,
		    "%.*s does not go into the %.*s (%.*s %s)", STR_ARG(piece_say(x, p)),
		    STR_ARG(m->name), STR_ARG(p->pipe.od_mm > 0 ? machine_says(m, limits)
		    : machine_says(m, limits + 1)), p->pipe.od_mm > 0 ? "round"
		    : "rectangle");
		finding_cause(x->f, d, "shop.md, Machine %.*s", STR_ARG(m->name));
		finding_repair(x->f, d, "%.*s", STR_ARG(machine_way_out(x, p, "saw")));
		limit_note(x, d, m, machine_limit(m, limits + !(p->pipe.od_mm > 0)));
	}
}

static bool has_holes(const struct assignment *a)
{
	for (size_t i = 0; i < a->ndrawings; i++)
		for (size_t k = 0; a->drawings[i].kind == DRAWING_PLATE &&
		    k < a->drawings[i].plate.nmarks; k++)
			if (a->drawings[i].plate.marks[k].kind == MARK_HOLE ||
			    a->drawings[i].plate.marks[k].kind == MARK_SLOT)
				return true;
	return false;
}

/* Whether the holes of the drawing belong to a piece: it has the plate's thickness. */
static bool is_drawn(const struct assignment *a, const struct flat *f)
{
	for (size_t i = 0; i < a->ndrawings; i++)
		if (a->drawings[i].kind == DRAWING_PLATE &&
		    is_same_mm(a->drawings[i].plate.thickness.hi, f->t_mm))
			return true;
	return false;
}

static void say_table(struct rule_context *x, uint32_t w, const struct piece *p,
    const struct machine *m, const struct flat *f, bool pierce)
{
	static const char *const box[] = { "Table", "Bed", NULL };
	static const char *const edge[] = { "Edge start", NULL };
	static const char *const hole[] = { "Pierce", NULL };
	double most = machine_mm(m, pierce ? hole : edge, METAL_NONE);
	bool thick = most > 0 && is_over(f->t_mm, most);
	struct finding *d;

	if (thick)
		d = rule_report(x, FINDING_TABLE_TOO_SMALL, p->pos, w,
		    "%.*s is %.*s thick, and the %.*s %s %.*s", STR_ARG(piece_say(x, p)),
		    STR_ARG(say_mm(x, f->t_mm)), STR_ARG(m->name),
		    pierce ? "pierces" : "cuts", STR_ARG(say_mm(x, most)));
	else
		d = rule_report(x, FINDING_TABLE_TOO_SMALL, p->pos, w,
		    "%.*s does not lie on the %.*s", STR_ARG(piece_say(x, p)),
		    STR_ARG(m->name));
	finding_cause(x->f, d, "shop.md, Machine %.*s", STR_ARG(m->name));
	if (pierce)
		finding_repair(x->f, d, "punch or drill the holes, or start each from a "
		    "drilled one");
	else
		finding_repair(x->f, d, "%.*s; or make it of smaller pieces",
		    STR_ARG(machine_way_out(x, p, "plasma")));
	limit_note(x, d, m, machine_limit(m, !thick ? box : pierce ? hole : edge));
}

/* A piece "plasma cut" where the assignment lists the table; without it the hand torch
 * may be meant, and nothing is known of that. */
static void judge_table(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	const struct machine *m = a->npieces ? machine_of(x, w, "plasma", false) : NULL;
	bool punched = machine_of(x, w, "ironworker", false) ||
	    machine_of(x, w, "punch", false) || machine_of(x, w, "drill", false);

	for (size_t i = 0; m && i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		struct flat f;

		if (!says(p->made, "plasma") || !piece_is_flat(p, &f))
			continue;
		if (piece_is_disputed(a, p))
			continue;
		if (!table_takes(m, &f, false))
			say_table(x, w, p, m, &f, false);
		else if (!punched && has_holes(a) && is_drawn(a, &f) &&
		    !table_takes(m, &f, true))
			say_table(x, w, p, m, &f, true);
	}
}

/* The track torch's own limit for carbon steel. */
static void judge_torch(struct rule_context *x, uint32_t w)
{
	static const char *const keys[] = { "Carbon steel", "Mild steel", NULL };
	const struct assignment *a = &x->m->assignments[w];
	const struct machine *m = a->npieces ? machine_of(x, w, "track", false) : NULL;
	double most = m ? machine_mm(m, keys, METAL_STEEL) : 0;

	for (size_t i = 0; most > 0 && i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		struct finding *d;
		struct flat f;

		if (!says(p->made, "torch") || !piece_is_flat(p, &f) ||
		    !is_over(f.t_mm, most) || piece_is_disputed(a, p))
			continue;
		d = rule_report(x, FINDING_TABLE_TOO_SMALL, p->pos, w,
		    "%.*s is %.*s thick, and the %.*s cuts %.*s",
		    STR_ARG(piece_say(x, p)), STR_ARG(say_mm(x, f.t_mm)),
		    STR_ARG(m->name), STR_ARG(say_mm(x, most)));
		finding_cause(x->f, d, "shop.md, Machine %.*s", STR_ARG(m->name));
		finding_repair(x->f, d, "%.*s", STR_ARG(machine_way_out(x, p, "track")));
		limit_note(x, d, m, machine_limit(m, keys));
	}
}

void rule_machine_cut(struct rule_context *x)
{
	static rule_judge *const judges[] = {
		judge_shear, judge_saw, judge_table, judge_torch,
	};

	limits_judge(x, judges, sizeof judges / sizeof *judges);
}
