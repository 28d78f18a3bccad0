/* A line of Instructor only that asks the key for a figure must have an answer. */
#include "check/rule_metal.h"

#include "reckon/topic.h"

/* Every assignment: one with remarks alone may ask too. */
void rule_asked(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->nasks; i++) {
		const struct topic *topic;
		struct answer *an = topic_call(x->scratch, a->asks[i].words, false, &topic);
		struct finding *d;

		if (!an->fault.n)
			continue;
		d = rule_report(x, FINDING_ASKED_WITHOUT_ANSWER, a->asks[i].pos, w,
		    "the key cannot reckon this: %.*s", STR_ARG(an->fault));
		finding_cause(x->f, d, "the words behind Reckon are a call of `fitup reckon`");
		finding_repair(x->f, d, "write it as on the terminal, such as \"%s\"",
		    topic ? topic->example : "throat leg 5/16 in");
	}
}
