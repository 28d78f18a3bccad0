/* What the author asks to have reckoned: each call with its steps and figures. */
#include "sheets/key_set.h"

#include "base/buf.h"
#include "reckon/topic.h"

static str joined(struct arena *a, const str *v, size_t n)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < n; i++)
		buf_addf(&b, "%s%.*s", i ? "; " : "", STR_ARG(v[i]));
	return buf_str(&b);
}

static void add_figure(struct buf *b, const struct figure *f)
{
	buf_addf(b, "%s%s: ", b->n ? "\n" : "", f->name);
	figure_text(b, f);
}

static void add_ask(struct key *k, str call)
{
	const struct topic *topic;
	struct answer *an = topic_call(k->arena, call, &topic);
	struct worked *w = key_add(k, call);
	struct buf figures = { .arena = k->arena };

	w->asked = true;
	if (an->fault.n) {
		w->result = str_format(k->arena, "no answer: %.*s", STR_ARG(an->fault));
		return;
	}
	for (size_t i = 0; i < an->nfigures; i++)
		add_figure(&figures, &an->figures[i]);
	w->steps = joined(k->arena, an->steps, an->nsteps);
	w->result = buf_str(&figures);
	w->source = joined(k->arena, an->sources, an->nsources);
	w->dagger = answer_has_dagger(an);
}

void key_ask_lines(struct key *k)
{
	for (size_t i = 0; i < k->x->nasks; i++)
		add_ask(k, k->x->asks[i].words);
}
