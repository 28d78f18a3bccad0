/* Bend tests on a key: plunger, die opening and strain of each line. */
#include "sheets/key_set.h"

#include "model/standard.h"
#include "reckon/bend.h"
#include "reckon/jig.h"
#include "sheets/sheet.h"

#include <math.h>

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

/* The jig of the code that the line names, by metal and filler. Some rows serve thinner
 * specimens only; then *t_mm is theirs. */
static bool jig_of(const struct key *k, const struct criterion *c, double *t_mm,
    struct jig *j)
{
	str material = key_material(k, NULL), filler = { 0 };
	const struct metal *m = metal_find(material);

	for (uint32_t i = 0; i < k->x->nfillers && !filler.n; i++)
		if (str_starts_nocase(k->x->fillers[i].class, STR("ER4")))
			filler = k->x->fillers[i].class;
	return jig_of_metal(jig_code(c->code), material, m ? m->yield_ksi : 0, filler, t_mm, j);
}

/* The plunger and die that the line names; what it leaves out by the jig of its code. */
static void add_bend(struct key *k, const struct criterion *c)
{
	double t = specimen_mm(k->x, c), die = named_mm(c, STR("die opening "));
	double plunger = named_mm(c, STR("plunger "));
	bool chosen = plunger > 0;
	struct jig j = { 0 };
	struct worked *w;

	if (!(t > 0) || !is_bend(c->name) || (!jig_of(k, c, &t, &j) && !chosen))
		return;
	if (!chosen) {
		plunger = j.plunger_mm;
		die = die > 0 ? die : j.die_mm;
	}
	w = key_add(k, str_format(k->arena, "%.*s: strain of the outer fiber", STR_ARG(c->name)));
	w->steps = str_format(k->arena,
	    "100 t / (A + t): specimen t %.*s, plunger A %.*s %s",
	    STR_ARG(key_length(k, t)), STR_ARG(key_length(k, plunger)),
	    chosen ? "as the sheet says" : "by the code");
	if (die > 0)
		w->steps = str_format(k->arena, "%.*s, die opening %.*s", STR_ARG(w->steps),
		    STR_ARG(key_length(k, die)));
	w->result = key_real(k->arena, bend_strain_percent(plunger, t), 1, "%");
	w->source = chosen ? STR(BEND_SOURCE) : str_of(j.source);
	w->dagger = !chosen && j.seen == SEEN_MEMORY;
}

void key_bend_lines(struct key *k)
{
	for (size_t i = 0; i < k->x->ncriteria; i++)
		add_bend(k, &k->x->criteria[i]);
}
