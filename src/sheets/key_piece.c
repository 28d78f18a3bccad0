/* Weights of the pieces as bought, and their sum for one attempt. */
#include "sheets/key_set.h"

#include "base/buf.h"
#include "sheets/piece_weight.h"

static void add_piece(struct key *k, const struct piece *p, const struct piece_weight *one)
{
	struct worked *w = key_add(k, str_format(k->arena, "Weight: %.*s", STR_ARG(p->name)));

	w->steps = one->steps;
	w->result = str_format(k->arena, "%.*s%s", STR_ARG(key_weight(k, one->lb, 2)),
	    p->count > 1 ? " each" : "");
	w->source = str_of(one->source);
	w->dagger = one->dagger;
}

/* The sum of those that can be weighed; nothing for a single piece, which has its line. */
static void add_sum(struct key *k, double lb, unsigned pieces, size_t left_out)
{
	struct worked *w = key_add(k, STR("Weight: all pieces"));

	w->steps = str_format(k->arena, "%u pieces for one attempt%s", pieces,
	    left_out ? "; those whose sizes do not tell are left out" : "");
	w->result = key_weight(k, lb, 1);
	w->source = STR("sum");
}

void key_piece_lines(struct key *k)
{
	unsigned pieces = 0;
	size_t left_out = 0;
	double sum = 0;

	for (size_t i = 0; i < k->x->npieces; i++) {
		const struct piece *p = &k->x->pieces[i];
		struct piece_weight one;

		if (!piece_weigh(k->arena, k->x, p, k->metric, &one)) {
			left_out++;
			continue;
		}
		add_piece(k, p, &one);
		sum += one.lb * p->count;
		pieces += p->count;
	}
	if (pieces > 1)
		add_sum(k, sum, pieces, left_out);
}
