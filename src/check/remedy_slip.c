/* Words that are likely meant otherwise. */
#include "check/remedy_seek.h"

#include "base/buf.h"

void seek_slips(struct seeker *s)
{
	for (const struct slip *w = seek_finding(s)->slips; w; w = w->next) {
		struct remedy *r = seek_replace(s, w->pos, w->wrong, w->right);

		if (!r)
			continue;
		r->strict = w->read;
		r->near = !w->guess && !w->read;
		/* What is likeliest the finding says itself. */
		if (w->say.n)
			r->say = w->say;
		else if (w != seek_finding(s)->slips)
			r->say = str_format(s->arena, "write \"%.*s\" if that is what is meant",
			    STR_ARG(w->right));
	}
}
