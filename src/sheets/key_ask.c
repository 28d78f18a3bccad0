/* What the author asks to have reckoned: each call with its steps and figures. */
#include "sheets/key_set.h"

#include "base/buf.h"
#include "reckon/topic.h"
#include "sheets/signs.h"

static str joined(struct arena *a, const str *v, size_t n)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < n; i++)
		buf_addf(&b, "%s%.*s", i ? "; " : "", STR_ARG(v[i]));
	return buf_str(&b);
}

static void add_figure(struct buf *b, const struct figure *f, bool metric)
{
	buf_addf(b, "%s%s: ", b->n ? "\n" : "", f->name);
	figure_text(b, f, metric);
	if (f->seen == SEEN_MEMORY)
		buf_adds(b, DAGGER);
}

/* Weights that the lines have asked for, of all pieces where they are counted. */
struct load { double lb; unsigned lines, counted; bool dagger; };

static void add_load(struct load *sum, const struct answer *an)
{
	const struct figure *one = NULL, *all = NULL;

	for (size_t i = 0; i < an->nfigures; i++) {
		const struct figure *f = &an->figures[i];

		if (f->measure == MEASURE_WEIGHT && str_eq(str_of(f->name), STR(WEIGHT_OF_ONE)))
			one = f;
		if (f->measure == MEASURE_WEIGHT && str_eq(str_of(f->name), STR(WEIGHT_OF_ALL)))
			all = f;
	}
	if (!one)
		return;
	sum->lines++;
	sum->counted += all != NULL;
	sum->lb += all ? all->value : one->value;
	sum->dagger |= one->seen == SEEN_MEMORY;
}

/* Where pieces are counted their weights are meant to be summed. */
static void add_total(struct key *k, const struct load *sum)
{
	struct worked *w;

	if (sum->lines < 2 || !sum->counted)
		return;
	w = key_add(k, STR("all pieces asked for above"));
	w->asked = true;
	w->steps = str_format(k->arena, "sum of %u weights", sum->lines);
	w->result = str_format(k->arena, "Weight of all: %.*s%s",
	    STR_ARG(key_weight(k, sum->lb, 1)), sum->dagger ? DAGGER : "");
	w->source = STR("sum");
	w->dagger = sum->dagger;
}

static void add_ask(struct key *k, str call, struct load *sum)
{
	const struct topic *topic;
	struct answer *an = topic_call(k->arena, call, k->metric, &topic);
	struct worked *w = key_add(k, call);
	struct buf figures = { .arena = k->arena };

	w->asked = true;
	if (an->fault.n) {
		w->result = str_format(k->arena, "no answer: %.*s", STR_ARG(an->fault));
		return;
	}
	add_load(sum, an);
	for (size_t i = 0; i < an->nfigures; i++)
		add_figure(&figures, &an->figures[i], k->metric);
	w->steps = joined(k->arena, an->steps, an->nsteps);
	w->result = buf_str(&figures);
	w->source = joined(k->arena, an->sources, an->nsources);
	w->dagger = answer_has_dagger(an);
}

void key_ask_lines(struct key *k)
{
	struct load sum = { 0 };

	for (size_t i = 0; i < k->x->nasks; i++)
		add_ask(k, k->x->asks[i].words, &sum);
	add_total(k, &sum);
}
