/* Weights and titles that are perhaps not what is meant. */
#include "check/remedy_fact.h"

#include "base/buf.h"

/* Lines of Grading that are tried for one that is wrong. */
enum { LINES_MOST = 3 };

/* The figure behind the key of a bullet. */
static str digits_of(str line)
{
	return seek_digits(line, str_find(line, STR(":** "), 0) + 4);
}

/* Weights that were not understood are not among them. */
/* Writes a weight that makes them total 100, and what is told of that. */
static void write_weight(struct seeker *s, struct pos pos, int32_t weight, str say,
    bool named)
{
	struct remedy *r;

	if (weight < 1 || weight > 100)
		return;
	r = seek_write(s, pos, digits_of(seek_line(s, pos)), str_format(s->arena, "%u",
	    (unsigned)weight));
	if (!r)
		return;
	r->say = say;
	r->names_cause = named;
}

/* A zero more or less is likelier than another figure. */
static bool is_tenfold(uint32_t weight, int32_t wanted)
{
	return wanted == (int32_t)weight * 10 || wanted * 10 == (int32_t)weight ||
	    wanted / 10 == (int32_t)weight;
}

/* Of several that may be wrong none is named. */
void seek_weights(struct seeker *s, const struct assignment *a)
{
	int32_t off = 100 - (int32_t)seek_total(a);
	str say = str_format(s->arena, "make the weights total 100: %.*s",
	    STR_ARG(seek_finding(s)->repair));
	uint32_t n = 0;

	for (int tenfold = 1; tenfold >= 0; tenfold--)
		for (size_t i = 0; i < a->ngrades && n < LINES_MOST; i++) {
			const struct grade *g = &a->grades[i];

			if (is_tenfold(g->weight, (int32_t)g->weight + off) != tenfold)
				continue;
			write_weight(s, g->pos, (int32_t)g->weight + off, say, false);
			n++;
		}
}

/* The one weight that was not understood is what the others leave. */
void seek_weight(struct seeker *s, const struct assignment *a)
{
	struct pos pos = seek_finding(s)->pos;
	int32_t wanted = 100 - (int32_t)seek_total(a);
	uint32_t written = 0;
	bool near = false;

	for (size_t i = 0; i < a->ngrades; i++)
		near |= a->grades[i].pos.line + 1 == pos.line ||
		    pos.line + 1 == a->grades[i].pos.line;
	str_to_u32(digits_of(seek_line(s, pos)), &written);
	if (near)
		write_weight(s, pos, wanted, str_format(s->arena, is_tenfold(written, wanted)
		    ? "write %d there, so that the weights total 100" : "write %d there, or "
		    "correct the others too: the weights total 100", (int)wanted), true);
}

/* The title that a line of program.md has in its bracket: who changes a title on purpose
 * changes it there too, so that the two places tell which of them is a slip only by what
 * else is found. */
void seek_title(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	str line = seek_line(s, d->pos), said;
	size_t from = seek_byte(line, d->pos.col), to = line.n;

	while (to > from && line.p[to - 1] != ')')
		to--;
	said = to > from ? str_trim(str_sub(line, from, to - 1)) : (str){ 0 };
	for (size_t i = 0; said.n && i < s->m->nslots; i++) {
		const struct slot *k = &s->m->slots[i];
		const struct assignment *a = k->assignment == NONE || k->group ? NULL
		    : &s->m->assignments[k->assignment];
		str heading = a ? seek_line(s, a->pos) : (str){ 0 };
		size_t at = a ? str_find(heading, a->title, 0) : 0;
		struct remedy *r;

		if (!a || k->pos.line != d->pos.line || at >= heading.n)
			continue;
		r = seek_write(s, a->pos, str_sub(heading, at, at + a->title.n), said);
		if (!r)
			return;
		r->say = str_format(s->arena, "write \"%.*s\" as the title of %.*s, as "
		    "program.md has it", STR_ARG(said), STR_ARG(a->id));
		r->names_cause = false;
	}
}
