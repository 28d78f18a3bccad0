/* Processes and fillers that are perhaps not the ones that are meant. */
#include "check/remedy_fact.h"

#include "check/rule_metal.h"
#include "model/words.h"

/* What is tried of one filler: the two that the program welds with most. */
enum { FILLERS_MOST = 2 };

/* From this diameter a bare filler is a rod, not a wire (common practice, no source). */
#define ROD_FROM_MM 1.5

/* Bare filler is for three processes: what feeds a wire tells one, else size, tungsten and
 * polarity tell the torch, and gas or transfer tell the arc. */
static enum process process_of_wire(const struct assignment *a, const struct setting *f)
{
	struct gas g = gas_read(fact_said(a, "Gas"));
	str transfer = fact_said(a, "Transfer");
	bool fed = assignment_fact(a, STR("Volts")) || assignment_fact(a, STR("Wire feed"));

	if (!fed && (f->dia_mm >= ROD_FROM_MM || is_stated(fact_said(a, "Tungsten")) ||
	    (f->polarity.n && !str_eq(f->polarity, STR("DC+")))))
		return PROCESS_GTAW;
	if (transfer.n ? says(transfer, "short") : !g.known || g.argon < 80)
		return PROCESS_GMAW_S;
	return PROCESS_GMAW;
}

/* The process that filler, gas and current are for; PROCESS_COUNT: they do not tell. */
static enum process process_shown(const struct assignment *a, const struct setting *f)
{
	if (f->rod.sort == ROD_COVERED)
		return PROCESS_SMAW;
	if (f->rod.sort == ROD_SOLID)
		return process_of_wire(a, f);
	if (f->rod.sort != ROD_CORED)
		return PROCESS_COUNT;
	return f->rod.shield == SHIELD_SELF || (f->rod.shield == SHIELD_UNTOLD &&
	    !is_stated(fact_said(a, "Gas"))) ? PROCESS_FCAW_S : PROCESS_FCAW_G;
}

static bool is_in_passes(const struct assignment *a, const struct settings *l,
    enum process p)
{
	for (size_t i = a->nfillers; i < l->n; i++)
		if (l->v[i].process == p)
			return true;
	return false;
}

/* A pass names a process: one that no pass names is perhaps meant for it. */
static void seek_process_of_passes(struct seeker *s, const struct assignment *a,
    const struct settings *l)
{
	for (size_t i = a->nfillers; i < l->n; i++) {
		enum process p = l->v[i].process;

		if (p >= PROCESS_COUNT || assignment_has_process(a, p))
			continue;
		for (uint32_t k = 0; k < a->nprocesses; k++)
			if (!is_in_passes(a, l, a->processes[k]))
				seek_fact(s, a, "Process", k, process_word(p),
				    STR("as the passes say"));
	}
}

void seek_process(struct seeker *s, const struct assignment *a)
{
	struct settings l = settings_of(s->arena, a);

	for (size_t i = 0; i < a->nfillers && i < l.n; i++) {
		size_t k = a->nprocesses == 1 ? 0 : i;
		enum process p = process_shown(a, &l.v[i]);

		if (p < PROCESS_COUNT && k < a->nprocesses && p != a->processes[k])
			seek_fact(s, a, "Process", k, process_word(p),
			    str_format(s->arena, "which %.*s is for",
			    STR_ARG(l.v[i].class)));
	}
	seek_process_of_passes(s, a, &l);
}

/* Words with how often sheets name them; the 17th word of a kind is no candidate. */
struct tally {
	str v[16];
	uint32_t count[16];
	size_t n;
};

static void count_word(struct tally *t, str word, uint32_t weight)
{
	size_t i = 0;

	while (i < t->n && !str_eq_nocase(t->v[i], word))
		i++;
	if (!word.n || i == 16)
		return;
	if (i == t->n)
		t->v[t->n++] = word;
	t->count[i] += weight;
}

/* Takes the one that is named most, the first of several. */
static str take_most(struct tally *t)
{
	size_t best = 0;

	for (size_t i = 1; i < t->n; i++)
		if (t->count[i] > t->count[best])
			best = i;
	if (!t->n || !t->count[best])
		return (str){ 0 };
	t->count[best] = 0;
	return t->v[best];
}

static enum sheet_metal metal_of(const struct assignment *a)
{
	return a->nmaterials ? a->materials[0].metal : METAL_NONE;
}

/* The diameter of filler i as it is written. */
static str diameter_written(const struct seeker *s, const struct filler *f)
{
	str item = seek_item(s, f->pos, ';', 0), part;

	return str_next(&item, ',', &part) && str_next(&item, ',', &part) ? str_trim(part)
	    : (str){ 0 };
}

/* Where no other sheet tells: usual classes of a school shop (AWS A5.1, A5.9, A5.10, A5.18,
 * A5.20, from memory; confirm against your edition). */
static str usual_class(const struct assignment *a, enum process p)
{
	enum sheet_metal metal = metal_of(a);

	if (metal == METAL_ALUMINUM)
		return p == PROCESS_SMAW ? (str){ 0 } : STR("ER5356");
	if (metal == METAL_STAINLESS)
		return p == PROCESS_SMAW ? STR("E308L-16") : STR("ER308L");
	return p == PROCESS_SMAW ? STR("E7018") : p == PROCESS_FCAW_G ? STR("E71T-1")
	    : p == PROCESS_FCAW_S ? STR("E71T-11") : STR("ER70S-6");
}

/* Whether two fillers are for the same passes: "root", or none is told. */
static bool same_place(const struct assignment *a, const struct assignment *b, size_t i,
    size_t k)
{
	return str_eq_nocase(a->fillers[k].where, b->fillers[i].where);
}

/* Counts what other sheets of the same process and metal weld with: classes, and the
 * diameters of this class. */
static void count_fillers(const struct seeker *s, const struct assignment *own,
    size_t own_i, const struct setting *f, struct tally *classes, struct tally *diameters)
{
	for (uint32_t w = 0; w < s->m->nassignments; w++) {
		const struct assignment *a = &s->m->assignments[w];
		struct settings l;

		if (a == own || !a->nfillers || metal_of(a) != metal_of(own))
			continue;
		l = settings_of(s->arena, a);
		for (size_t i = 0; i < a->nfillers && i < l.n; i++) {
			if (l.v[i].process == f->process)
				count_word(classes, l.v[i].class, same_place(own, a, i,
				    own_i) ? 10 : 1);
			if (str_eq_nocase(l.v[i].class, f->class))
				count_word(diameters, diameter_written(s, &a->fillers[i]), 1);
		}
	}
}

/* with: what other sheets weld with that write so; empty: none does. */
static void write_filler(struct seeker *s, const struct filler *f, str old, str new,
    str with)
{
	struct remedy *r = seek_write(s, f->pos, old, new);

	if (!r)
		return;
	r->say = str_format(s->arena, "write %.*s at Filler, %s%.*s%s", STR_ARG(new),
	    with.n ? "as other sheets with " : "or the like", STR_ARG(with),
	    with.n ? " do" : "");
}

/* The class first: a diameter is seldom the cause of several findings. */
void seek_filler(struct seeker *s, const struct assignment *a)
{
	struct settings l = settings_of(s->arena, a);

	for (size_t i = 0; i < a->nfillers && i < l.n; i++) {
		const struct filler *f = &a->fillers[i];
		struct tally classes = { .n = 0 }, diameters = { .n = 0 };
		str class = seek_item(s, f->pos, ';', 0);

		if (l.v[i].process >= PROCESS_COUNT)
			continue;
		count_fillers(s, a, i, &l.v[i], &classes, &diameters);
		class = str_trim(str_sub(class, 0, str_find_char(class, ',', 0)));
		if (!classes.n)
			write_filler(s, f, class, usual_class(a, l.v[i].process), (str){ 0 });
		for (size_t k = 0; k < FILLERS_MOST; k++)
			write_filler(s, f, class, take_most(&classes),
			    process_word(l.v[i].process));
		for (size_t k = 0; k < FILLERS_MOST; k++)
			write_filler(s, f, diameter_written(s, f), take_most(&diameters),
			    f->class);
	}
}

/* What most sheets are in. */
void seek_usual_material(struct seeker *s, const struct assignment *a)
{
	struct tally t = { .n = 0 };

	for (uint32_t w = 0; w < s->m->nassignments; w++)
		if (&s->m->assignments[w] != a && s->m->assignments[w].nmaterials)
			count_word(&t, s->m->assignments[w].materials[0].text, 1);
	if (a->nmaterials == 1)
		seek_fact(s, a, "Material", 0, take_most(&t), STR("as most sheets do"));
}

/* Title and gas tell the transfer. */
void seek_transfer(struct seeker *s, const struct assignment *a)
{
	struct gas g = gas_read(fact_said(a, "Gas"));
	bool spray = says(a->title, "spray");

	if (!fact_said(a, "Transfer").n)
		return;
	seek_fact(s, a, "Transfer", 0, spray || g.argon >= 80 ? STR("spray")
	    : STR("short circuit"), spray ? STR("as the title says")
	    : STR("which the gas is for"));
}

/* The filler of a pass is perhaps one that Filler names, or another pass. */
void seek_passes(struct seeker *s, const struct assignment *a)
{
	struct settings l = settings_of(s->arena, a);

	for (size_t i = a->nfillers; i < l.n; i++) {
		str line = seek_line(s, l.v[i].filler_pos);
		size_t at = str_find(line, l.v[i].class, 0);

		if (!l.v[i].class.n || at >= line.n)
			continue;
		for (size_t k = 0; k < l.n; k++) {
			struct remedy *r = str_eq_nocase(l.v[k].class, l.v[i].class) ? NULL
			    : seek_write(s, l.v[i].filler_pos, str_sub(line, at, at +
			    l.v[i].class.n), l.v[k].class);

			if (r)
				r->say = str_format(s->arena, "write %.*s in the pass, as %s",
				    STR_ARG(l.v[k].class), k < a->nfillers ? "Filler says"
				    : "the other passes say");
		}
	}
}
