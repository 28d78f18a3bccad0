/* Words that are likely meant otherwise. */
#include "check/remedy_seek.h"

#include "base/buf.h"

str seek_replaced(const struct seeker *s, struct pos pos, str wrong, str right)
{
	str line = seek_line(s, pos);
	size_t at = str_find(line, wrong, seek_byte(line, pos.col));

	if (!wrong.n || !right.n || at >= line.n)
		return (str){ 0 };
	return str_format(s->arena, "%.*s%.*s%.*s", STR_ARG(str_sub(line, 0, at)),
	    STR_ARG(right), STR_ARG(str_sub(line, at + wrong.n, line.n)));
}

void seek_slips(struct seeker *s)
{
	for (const struct slip *w = seek_finding(s)->slips; w; w = w->next) {
		struct edit e = { EDIT_REPLACE, w->pos.file, w->pos.line,
			seek_replaced(s, w->pos, w->wrong, w->right), 0 };
		struct remedy *r;

		if (!e.text.n)
			continue;
		r = seek_add(s, &e, 1);
		r->names_cause = true;
		r->strict = w->read;
		r->near = !w->guess;
		/* What is likeliest the finding says itself. */
		if (w->say.n)
			r->say = w->say;
		else if (w != seek_finding(s)->slips)
			r->say = str_format(s->arena, "write \"%.*s\" if that is what is meant",
			    STR_ARG(w->right));
	}
}
