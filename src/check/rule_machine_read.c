/* Limits of machines as shop.md words them. */
#include "check/rule_machine.h"

#include "model/words.h"
#include "reckon/machine.h"

const struct plain_fact *machine_limit(const struct machine *m, const char *const *keys)
{
	for (; *keys; keys++)
		for (size_t i = 0; i < m->nlimits; i++)
			if (str_starts_nocase(m->limits[i].key, str_of(*keys)))
				return &m->limits[i];
	return NULL;
}

str machine_says(const struct machine *m, const char *const *keys)
{
	const struct plain_fact *f = machine_limit(m, keys);

	return f ? str_trim(f->text) : (str){ 0 };
}

double machine_mm(const struct machine *m, const char *const *keys,
    enum sheet_metal metal)
{
	struct quantity_fault fault;
	struct quantity q;
	size_t used;

	return quantity_prefix(machine_says(m, keys), QUANTITY_LENGTH, metal, &q, &used,
	    &fault) == QUANTITY_OK ? q.hi : 0;
}

bool machine_box(const struct machine *m, const char *const *keys, double *small_mm,
    double *large_mm)
{
	str text = machine_says(m, keys), first, second = text;
	size_t x = str_find(text, STR(" x "), 0);
	struct quantity_fault fault;
	struct quantity a, b;
	size_t used;

	if (x >= text.n)
		return false;
	first = str_sub(text, 0, x);
	second = str_trim(str_sub(text, x + 3, text.n));
	if (quantity_prefix(second, QUANTITY_LENGTH, METAL_NONE, &b, &used,
	    &fault) != QUANTITY_OK)
		return false;
	if (quantity_parse(first, QUANTITY_LENGTH, METAL_NONE, &a, &fault) !=
	    QUANTITY_OK) {
		char both[64];
		size_t n = first.n < 40 ? first.n : 40;

		/* "3/4 x 8 in": the unit at the end serves both. */
		for (size_t i = 0; i < n; i++)
			both[i] = first.p[i];
		both[n++] = ' ';
		for (const char *u = b.unit ? b.unit : "in"; *u && n < sizeof both; u++)
			both[n++] = *u;
		if (quantity_parse((str){ both, n }, QUANTITY_LENGTH, METAL_NONE, &a,
		    &fault) != QUANTITY_OK)
			return false;
	}
	*small_mm = a.hi < b.hi ? a.hi : b.hi;
	*large_mm = a.hi < b.hi ? b.hi : a.hi;
	return true;
}

double machine_lbf(const struct machine *m)
{
	static const char *const keys[] = { "Force", "Tonnage", NULL };
	static const struct { const char *word; double lbf; } units[] = {
		{ "ton", 2000 }, { "kip", 1000 }, { "lb", 1 }, { "kn", 224.809 },
	};
	str text = machine_says(m, keys);
	double v = 0, place = 0;
	size_t i = 0;

	for (; i < text.n && ((text.p[i] >= '0' && text.p[i] <= '9') ||
	    text.p[i] == ',' || text.p[i] == '.'); i++) {
		if (text.p[i] == '.')
			place = 1;
		else if (text.p[i] != ',' && place > 0)
			v += (text.p[i] - '0') * (place /= 10);
		else if (text.p[i] != ',')
			v = v * 10 + (text.p[i] - '0');
	}
	text = str_trim(str_sub(text, i, text.n));
	for (i = 0; i < sizeof units / sizeof *units; i++)
		if (str_starts_nocase(text, str_of(units[i].word)))
			return v * units[i].lbf;
	return 0;
}

const struct metal *metal_of(str material)
{
	static const char *const common[METAL_COUNT] = {
		[METAL_STEEL] = "mild steel", [METAL_GALVANIZED] = "mild steel",
		[METAL_STAINLESS] = "304", [METAL_ALUMINUM] = "aluminum",
	};
	const struct metal *m = metal_find(material);
	enum sheet_metal sort = sheet_metal_of(material);

	return m || !common[sort] ? m : metal_find(str_of(common[sort]));
}

static const char *const mild_keys[] = { "Mild steel", "Carbon steel", "Steel", NULL };
static const char *const stainless[] = { "Stainless", NULL };
static const char *const aluminum[] = { "Aluminum", "Aluminium", NULL };

static double mild_mm(const struct machine *m)
{
	return machine_mm(m, mild_keys, METAL_STEEL);
}

/* The machine's own figure for a metal that is no carbon steel; 0 when it has none. */
static double own_mm(const struct machine *m, enum sheet_metal sort)
{
	if (sort == METAL_STAINLESS)
		return machine_mm(m, stainless, sort);
	return sort == METAL_ALUMINUM ? machine_mm(m, aluminum, sort) : 0;
}

const struct plain_fact *machine_thickness_limit(const struct machine *m, str material)
{
	enum sheet_metal sort = sheet_metal_of(material);

	if (own_mm(m, sort) > 0)
		return machine_limit(m, sort == METAL_STAINLESS ? stainless : aluminum);
	return machine_limit(m, mild_keys);
}

double machine_thickness_mm(const struct machine *m, str material, bool *estimate)
{
	enum sheet_metal sort = sheet_metal_of(material);
	const struct metal *metal = metal_of(material);
	double own = own_mm(m, sort), mild = mild_mm(m);

	*estimate = false;
	if (own > 0 || !metal)
		return own;
	*estimate = shear_factor(metal) < 1 || shear_factor(metal) > 1;
	return shear_most_mm(mild, metal);
}

double machine_roll_mm(const struct machine *m, str material, double width_mm,
    bool *estimate)
{
	static const char *const width_keys[] = { "Width", "Bed", NULL };
	const struct metal *metal = metal_of(material);
	double own = own_mm(m, sheet_metal_of(material)), mild = mild_mm(m);
	double bed = machine_mm(m, width_keys, METAL_NONE), most;

	*estimate = false;
	if (own > 0 || !metal)
		return own;
	if (!(metal->uts_ksi > 0))
		return 0;
	/* Without both widths the piece counts as wide as the bed. */
	most = bed > 0 && width_mm > 0 ? roll_most_mm(mild, bed, width_mm, metal->uts_ksi)
	                               : roll_most_mm(mild, 1, 1, metal->uts_ksi);
	*estimate = most < mild;
	return most;
}

const struct machine *machine_of(const struct rule_context *x, uint32_t assignment,
    const char *word, bool anywhere)
{
	const struct work *k = &x->work[assignment];

	for (uint32_t i = 0; i < k->nmachines; i++)
		if (says(x->m->machines[k->machines[i]].name, word))
			return &x->m->machines[k->machines[i]];
	for (size_t i = 0; anywhere && i < x->m->nmachines; i++)
		if (says(x->m->machines[i].name, word))
			return &x->m->machines[i];
	return NULL;
}

bool piece_is_flat(const struct piece *p, struct flat *out)
{
	static const char *const flats[] = { "plate", "sheet", "flat", "strip", NULL };
	double a, b;

	if (p->ndims != 3 || p->pipe.od_mm > 0 || !says_any(p->material, flats))
		return false;
	a = p->dims[1].hi;
	b = p->dims[2].hi;
	*out = (struct flat){ p->dims[0].hi, a < b ? a : b, a < b ? b : a };
	return true;
}

bool table_takes(const struct machine *m, const struct flat *f, bool pierce)
{
	static const char *const box[] = { "Table", "Bed", NULL };
	static const char *const edge[] = { "Edge start", NULL };
	static const char *const hole[] = { "Pierce", NULL };
	double small, large, most = machine_mm(m, pierce ? hole : edge, METAL_NONE);

	if (machine_box(m, box, &small, &large) && (is_over(f->short_mm, small) ||
	    is_over(f->long_mm, large)))
		return false;
	return most <= 0 || !is_over(f->t_mm, most);
}

bool saw_takes(const struct machine *m, const struct piece *p)
{
	static const char *const round[] = { "Round", NULL };
	static const char *const box[] = { "Rectangle", NULL };
	double small, large, a, b, most = machine_mm(m, round, METAL_NONE);
	struct flat f;

	if (p->pipe.od_mm > 0)
		return most <= 0 || !is_over(p->pipe.od_mm, most);
	if (!machine_box(m, box, &small, &large) || p->ndims < 3)
		return true;
	a = p->dims[0].hi;
	b = p->dims[1].hi;
	/* A flat is cut across its narrower side. */
	if (piece_is_flat(p, &f)) {
		a = f.t_mm;
		b = f.short_mm;
	}
	return !is_over(a < b ? a : b, small) && !is_over(a < b ? b : a, large);
}

/* What one machine would do with a flat piece, or empty when it cannot. */
static str way_of(const struct rule_context *x, const struct machine *m,
    const struct piece *p, const struct flat *f)
{
	static const char *const bar[] = { "Flat bar", NULL };
	static const char *const steel_keys[] = { "Carbon steel", "Mild steel", NULL };
	bool steel = sheet_metal_of(p->material) == METAL_STEEL;
	double small, large, most;

	if (steel && says(p->material, "bar") && machine_box(m, bar, &small, &large) &&
	    !is_over(f->t_mm, small) && !is_over(f->short_mm, large))
		return str_format(x->f->arena, "cut it on the %.*s, flat-bar station",
		    STR_ARG(m->name));
	if (says(m->name, "plasma") && table_takes(m, f, false))
		return str_format(x->f->arena, "cut it on the %.*s and write \"plasma cut\"",
		    STR_ARG(m->name));
	most = machine_mm(m, steel_keys, METAL_STEEL);
	if (steel && says(m->name, "track") && !says(p->material, "sheet") && (most <= 0 || !is_over(f->t_mm, most)))
		return str_format(x->f->arena, "cut it with the %.*s and write \"torch cut\"",
		    STR_ARG(m->name));
	/* A blade cuts across, not a sheet to length and width. */
	if (says(m->name, "saw") && !says(p->material, "sheet") && saw_takes(m, p))
		return str_format(x->f->arena, "cut it on the %.*s and write \"sawn\"",
		    STR_ARG(m->name));
	return (str){ 0 };
}

str machine_way_out(const struct rule_context *x, const struct piece *p,
    const char *not_word)
{
	struct flat f;

	if (!piece_is_flat(p, &f))
		return STR("take another machine or a smaller section");
	for (size_t i = 0; i < x->m->nmachines; i++) {
		const struct machine *m = &x->m->machines[i];
		str way = says(m->name, not_word) ? (str){ 0 } : way_of(x, m, p, &f);

		if (way.n)
			return way;
	}
	return STR("take thinner or smaller stock; no machine of shop.md takes this");
}

str hole_way_out(const struct rule_context *x, str material, double d_mm, double t_mm,
    const char *not_word)
{
	static const char *const drill[] = { "Mild steel", "Steel", "Drill", NULL };
	static const char *const pierce[] = { "Pierce", NULL };

	for (size_t i = 0; i < x->m->nmachines; i++) {
		const struct machine *m = &x->m->machines[i];
		double most = machine_mm(m, drill, METAL_NONE);

		if (says(m->name, not_word))
			continue;
		if (says(m->name, "drill") && (most <= 0 || !is_over(d_mm, most)))
			return str_format(x->f->arena, "drill it on the %.*s",
			    STR_ARG(m->name));
		most = machine_mm(m, pierce, METAL_NONE);
		if (says(m->name, "plasma") && (most <= 0 || !is_over(t_mm, most)))
			return str_format(x->f->arena, "cut it on the %.*s",
			    STR_ARG(m->name));
	}
	return sheet_metal_of(material) == METAL_STEEL ? STR("cut it with the torch")
	    : STR("have it cut outside; no machine of shop.md takes it");
}
