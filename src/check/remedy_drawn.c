/* Welds, joint blocks and pieces that are perhaps not what is meant: what the other places
 * of the sheet say. */
#include "check/remedy_fact.h"

#include "check/rule_joint.h"
#include "model/words.h"

/* Ways tried of one finding in each direction. */
enum { WAYS_MOST = 4 };

/* Where the value of a bullet or of a row begins on its line. */
static struct pos value_at(const struct seeker *s, struct pos pos, str mark)
{
	str line = seek_line(s, pos);
	size_t at = str_find(line, mark, 0) + mark.n;

	if (at > line.n)
		return (struct pos){ 0 };
	pos.col = (uint32_t)str_chars(str_sub(line, 0, at)) + 1;
	return pos;
}

/* ---- welds ---- */

/* The weld whose own line pos stands on: "- **A:** tee, 2F"; facts make welds too. */
static const struct weld *weld_at(const struct seeker *s, const struct assignment *a,
    struct pos pos)
{
	size_t name = str_find(seek_line(s, pos), STR("**"), 0) + 2;
	size_t end = str_find(seek_line(s, pos), STR(":**"), 0);

	for (size_t i = 0; i < a->nwelds && end == name + 1; i++)
		if (a->welds[i].pos.line == pos.line)
			return &a->welds[i];
	return NULL;
}

/* The part of a line under "## Welds" that says a thing: the joint comes first, then the
 * position; "leg 1/8 in", "8 in long" and "A36 plate 3/8 in" tell themselves. */
static str weld_part(const struct seeker *s, const struct weld *w, str key)
{
	struct pos at = value_at(s, w->pos, STR(":** "));
	str part;

	if (words_same(key, STR("joint")) || words_same(key, STR("position")))
		return at.line ? seek_item(s, at, ',', words_same(key, STR("position")))
		    : (str){ 0 };
	for (size_t k = 2; at.line && (part = seek_item(s, at, ',', k)).n; k++)
		if ((words_same(key, STR("leg")) && str_starts_nocase(part, STR("leg "))) ||
		    (words_same(key, STR("length")) && str_ends(part, STR(" long"))) ||
		    (words_same(key, STR("thickness")) && w->material1.n &&
		    str_starts_nocase(part, w->material1)))
			return part;
	return (str){ 0 };
}

/* What such a part says once the words around it are left out. */
static str part_value(const struct weld *w, str key, str part)
{
	if (words_same(key, STR("leg")))
		return str_trim(str_sub(part, 4, part.n));
	if (words_same(key, STR("length")))
		return str_trim(str_sub(part, 0, part.n - 5));
	if (words_same(key, STR("thickness")))
		return str_trim(str_sub(part, w->material1.n, part.n));
	return part;
}

/* Whether another weld has that joint and position. */
static bool is_made(const struct assignment *a, const struct weld *w, enum joint joint,
    enum position position)
{
	for (size_t i = 0; i < a->nwelds; i++)
		if (&a->welds[i] != w && a->welds[i].joint == joint &&
		    a->welds[i].at.position == position)
			return true;
	return false;
}

void write_weld(struct seeker *s, const struct weld *w, str key, str to, str why)
{
	str part = weld_part(s, w, key), old = part.n ? part_value(w, key, part) : part;
	struct remedy *r = seek_write(s, w->pos, old, to);

	if (r)
		r->say = str_format(s->arena, "write %.*s at weld %c%.*s", STR_ARG(to),
		    w->letter ? w->letter : 'A', STR_ARG(why));
}

/* The joints or positions of the facts: one that makes a weld which is not there yet comes
 * first, and of several none is sure. */
static void write_listed(struct seeker *s, const struct assignment *a, const struct weld *w,
    const char *key, uint32_t n)
{
	bool of_joint = *key == 'J';
	struct pos fact = assignment_fact_pos(a, str_of(key));

	for (int made = 0; made < 2; made++)
		for (uint32_t i = 0; i < n && i < WAYS_MOST; i++)
			if (is_made(a, w, of_joint ? a->joints[i] : w->joint, of_joint
			    ? w->at.position : a->positions[i].position) == made)
				write_weld(s, w, str_of(key), seek_item(s, fact, ',', i),
				    str_format(s->arena, n > 1 ? ", or another that %s lists"
				    : ", as %s says", key));
}

/* ---- joint blocks ---- */

/* The row of a block by its key, from the line after pos; line 0: it has none such. */
static struct pos row_of(const struct seeker *s, struct pos pos, str key)
{
	str line;

	for (pos.line++; (line = seek_line(s, pos)).n && line.p[0] != '`'; pos.line++)
		if (words_same(str_trim(str_sub(line, 0, str_find_char(line, ':', 0))), key))
			return value_at(s, pos, STR(":"));
	return (struct pos){ 0 };
}

/* The key of the row on the line of pos. */
static str row_key(const struct seeker *s, struct pos pos)
{
	str line = seek_line(s, pos);
	size_t end = str_find_char(line, ':', 0);

	return end < line.n ? str_trim(str_sub(line, 0, end)) : (str){ 0 };
}

static void write_row(struct seeker *s, struct pos row, str to, str why)
{
	struct remedy *r = row.line ? seek_write(s, row, seek_item(s, row, '\n', 0), to)
	    : NULL;

	if (r)
		r->say = str_format(s->arena, "write %.*s at %.*s in the drawing, as %.*s",
		    STR_ARG(to), STR_ARG(row_key(s, row)), STR_ARG(why));
}

static bool is_drawn(const struct assignment *a, uint32_t joint)
{
	for (size_t i = 0; i < a->ndrawings; i++)
		if (a->drawings[i].kind == DRAWING_JOINT && a->drawings[i].joint.joint == joint)
			return true;
	return false;
}

/* A block that cannot be drawn, or tested, shows perhaps a joint that the pieces are for. */
void seek_block_joint(struct seeker *s, const struct assignment *a)
{
	for (size_t i = 0; i < a->ndrawings; i++) {
		struct pos row = row_of(s, a->drawings[i].pos, STR("joint"));

		if (a->drawings[i].kind != DRAWING_JOINT || !row.line)
			continue;
		for (size_t k = 0; k < a->npieces; k++) {
			str rest = a->pieces[k].name, word;
			enum joint joint = str_word(&rest, &word) ? joint_find(word)
			    : JOINT_COUNT;

			if (joint < JOINT_COUNT && !is_drawn(a, joint))
				write_row(s, row, joint_word(joint), STR("the pieces say"));
		}
	}
}

/* The finding stands at a row of a block, or at a weld, and first relates the other. */
void seek_welds(struct seeker *s, const struct assignment *a)
{
	const struct finding *d = seek_finding(s);
	const struct weld *w = weld_at(s, a, d->pos);
	const struct weld *other = d->nrelated ? weld_at(s, a, d->related[0].pos) : NULL;
	const struct joint_block *j = w ? weld_block(a, (size_t)(w - a->welds)) : NULL;

	if (other && !w) {
		str key = row_key(s, d->pos), part = weld_part(s, other, key);

		write_weld(s, other, key, seek_item(s, value_at(s, d->pos, STR(":")), '\n', 0),
		    STR(", as its drawing says"));
		if (part.n)
			write_row(s, value_at(s, d->pos, STR(":")), part_value(other, key, part),
			    STR("the weld says"));
		return;
	}
	if (w && words_find(&words_joint, weld_part(s, w, STR("joint"))) != NONE) {
		write_listed(s, a, w, "Joint", a->njoints);
		write_listed(s, a, w, "Position", a->npositions);
	}
	if (j && j->leg.kind == QUANTITY_LENGTH)
		write_weld(s, w, STR("leg"), seek_item(s, row_of(s, j->pos, STR("leg")), '\n', 0),
		    STR(", as its drawing says"));
}

/* Rows that Acceptance speaks of too. */
static const char *const twice[][2] = {
	{ "Leg size", "leg" }, { "Root opening", "gap" }, { "Land", "land" },
	{ "Overlap", "overlap" }, { "Groove angle", "angle" }, { "Bevel", "bevel" },
};

/* Acceptance says one size, and the block that is related another. */
void seek_said_twice(struct seeker *s, const struct assignment *a)
{
	const struct finding *d = seek_finding(s);
	struct pos at = value_at(s, d->pos, STR(":** "));
	str said = at.line ? seek_item(s, at, ',', 0) : (str){ 0 };

	for (size_t i = 0; d->nrelated && i < sizeof twice / sizeof *twice; i++) {
		struct pos row = row_of(s, d->related[0].pos, str_of(twice[i][1]));
		struct remedy *r;
		str drawn;

		if (!says(seek_line(s, d->pos), twice[i][0]) || !row.line)
			continue;
		drawn = seek_item(s, row, '\n', 0);
		write_row(s, row, said, STR("Acceptance says"));
		r = seek_write(s, d->pos, said, drawn);
		if (r)
			r->say = str_format(s->arena, "write %.*s at %s, as the drawing of "
			    "%.*s shows", STR_ARG(drawn), twice[i][0], STR_ARG(a->id));
	}
}

/* ---- pieces ---- */

static const struct piece *piece_at(const struct assignment *a, struct pos pos)
{
	for (size_t i = 0; i < a->npieces; i++)
		if (a->pieces[i].pos.line == pos.line)
			return &a->pieces[i];
	return NULL;
}

static void write_piece(struct seeker *s, const struct piece *p, str old, str to,
    const char *key)
{
	struct remedy *r;
	str line = seek_line(s, p->pos);
	size_t at = str_find(line, old, 0);

	r = at < line.n ? seek_write(s, p->pos, str_sub(line, at, at + old.n), to) : NULL;
	if (r)
		r->say = str_format(s->arena, "write %.*s at the piece %.*s, as %s says",
		    STR_ARG(to), STR_ARG(p->name), key);
}

/* A fraction or gauge without the unit that its piece has at the end of the line. */
static str without_unit(str q, str size)
{
	size_t at = str_find(q, STR(" in"), 0);

	return str_ends(size, STR(" in")) && at + 3 == q.n ? str_sub(q, 0, at) : q;
}

/* The piece that is told is perhaps cut as the facts say. */
void seek_piece(struct seeker *s, const struct assignment *a)
{
	const struct piece *p = piece_at(a, seek_finding(s)->pos);
	str first = p ? str_sub(p->size, 0, str_find(p->size, STR(" x "), 0)) : (str){ 0 };
	struct pos fact = assignment_fact_pos(a, STR("Thickness"));

	for (uint32_t i = 0; p && i < a->nmaterials && i < WAYS_MOST; i++)
		write_piece(s, p, p->material, a->materials[i].text, "Material");
	for (uint32_t i = 0; p && i < a->nthicknesses && i < WAYS_MOST; i++)
		write_piece(s, p, first, without_unit(seek_item(s, fact, ',', i), p->size),
		    "Thickness");
}

/* The first size of a piece that cannot be read. */
void seek_bad_piece(struct seeker *s, const struct assignment *a)
{
	struct pos pos = seek_finding(s)->pos, fact = assignment_fact_pos(a, STR("Thickness"));
	str size = seek_item(s, pos, '\n', 0);
	str first = str_sub(size, 0, str_find(size, STR(" x "), 0));

	for (uint32_t i = 0; piece_at(a, pos) && first.n < size.n && i < a->nthicknesses; i++) {
		str to = seek_item(s, fact, ',', i);
		struct remedy *r = seek_write(s, pos, first, to);

		if (r)
			r->say = str_format(s->arena, "write %.*s there, as Thickness says",
			    STR_ARG(to));
	}
}

/* Another pipe among the pieces. */
void seek_pipe(struct seeker *s, const struct assignment *a)
{
	for (size_t i = 0; i < a->npieces; i++)
		for (size_t k = 0; a->pieces[i].pipe.od_mm > 0 && k < a->npieces; k++) {
			const struct piece *p = &a->pieces[i];

			if (a->pieces[k].pipe.od_mm > 0 && k != i)
				write_piece(s, p, p->pipe.text, a->pieces[k].pipe.text,
				    "another piece");
		}
}

/* A coupon that is too short on the drawing is perhaps as long as its pieces. */
void seek_length(struct seeker *s, const struct assignment *a)
{
	str longest = { 0 };
	double most_mm = 0;

	for (size_t i = 0; i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		str rest = p->size, last = p->size, unit;
		size_t at;

		if (p->ndims < 2 || p->dims[p->ndims - 1].hi <= most_mm || says(p->name,
		    "backing") || says(p->name, "tab"))
			continue;
		while ((at = str_find(rest, STR(" x "), 0)) < rest.n)
			last = rest = str_sub(rest, at + 3, rest.n);
		unit = str_trim(last);
		longest = unit;
		most_mm = p->dims[p->ndims - 1].hi;
	}
	for (size_t i = 0; longest.n && i < a->ndrawings; i++)
		if (a->drawings[i].kind == DRAWING_JOINT)
			write_row(s, row_of(s, a->drawings[i].pos, STR("length")), longest,
			    STR("long as the pieces are"));
}

/* ---- backing ---- */

/* "steel strip 1/4 x 1 in" of a piece of 1/4 x 1 x 9 in; none is there: "none". */
static str backing_shown(const struct seeker *s, const struct assignment *a)
{
	for (size_t i = 0; i < a->npieces; i++) {
		const struct piece *p = &a->pieces[i];
		size_t one = str_find(p->size, STR(" x "), 0);
		size_t two = str_find(p->size, STR(" x "), one + 3), unit = p->size.n;

		if (!says(p->name, "backing"))
			continue;
		while (unit && p->size.p[unit - 1] != ' ')
			unit--;
		return two < p->size.n ? str_format(s->arena, "steel strip %.*s %.*s",
		    STR_ARG(str_sub(p->size, 0, two)),
		    STR_ARG(str_sub(p->size, unit, p->size.n))) : (str){ 0 };
	}
	return STR("none");
}

void seek_backing(struct seeker *s, const struct assignment *a)
{
	const struct plain_fact *f = assignment_fact(a, STR("Backing"));
	str to = backing_shown(s, a);
	struct remedy *r;

	if (!f || !to.n)
		return;
	r = seek_write(s, f->pos, seek_item(s, f->pos, '\n', 0), to);
	if (r)
		r->say = str_format(s->arena, "write %.*s at Backing of %.*s, as the pieces "
		    "show", STR_ARG(to), STR_ARG(a->id));
}

/* ---- sizes of the drawing ---- */

/* A member drawn in another size than its piece: what stands between its name and its
 * place is the size of the piece, or begins with the first size of that. */
void seek_member(struct seeker *s, const struct assignment *a)
{
	const struct finding *d = seek_finding(s);
	const struct piece *p = d->nrelated ? piece_at(a, d->related[0].pos) : NULL;
	str line = seek_line(s, d->pos), size, first;
	size_t from = str_find_char(line, ';', 0) + 1, to = str_find_char(line, ';', from);
	struct remedy *r;

	if (!p || to >= line.n)
		return;
	size = str_trim(str_sub(line, from, to));
	first = str_sub(size, 0, str_find_char(size, ' ', 0));
	r = str_find(size, STR(" along "), 0) < size.n ? seek_write(s, d->pos, first,
	    str_sub(p->size, 0, str_find_char(p->size, ' ', 0)))
	    : seek_write(s, d->pos, size, p->size);
	if (r)
		r->say = str_format(s->arena, "draw the %.*s as its piece is cut, %.*s",
		    STR_ARG(p->name), STR_ARG(p->size));
}
