#include "model/said.h"

#include "base/buf.h"

static bool is_within(str whole, str part, size_t *offset)
{
	uintptr_t w = (uintptr_t)whole.p, p = (uintptr_t)part.p;

	*offset = p - w;
	return whole.p && part.p && p >= w && p - w <= whole.n;
}

struct pos said_pos(struct said t)
{
	const struct block *b = t.in;
	struct pos pos;
	size_t offset;

	if (b->text.n && is_within(b->text, t.s, &offset))
		return block_pos(b, offset);
	pos = b->key.n ? block_key_pos(b) : b->pos;
	if (b->key.n && is_within(b->key, t.s, &offset))
		pos.col += (uint32_t)str_chars(str_sub(b->key, 0, offset));
	return pos;
}

static bool is_one_of(char c, const char *set)
{
	while (*set && *set != c)
		set++;
	return *set != 0;
}

bool said_next(struct said *rest, const char *seps, struct said *part)
{
	while (rest->s.n) {
		size_t n = 0;

		while (n < rest->s.n && !is_one_of(rest->s.p[n], seps))
			n++;
		*part = said_trim(said_sub(*rest, 0, n));
		*rest = said_sub(*rest, n + 1, rest->s.n);
		if (part->s.n)
			return true;
	}
	return false;
}

bool said_skip(struct said *t, str word)
{
	str s = str_trim_left(t->s);

	/* Nearly all end at the first letter, whatever its case. */
	if (!s.n || (s.p[0] ^ word.p[0]) & 0x1F || !str_starts_nocase(s, word))
		return false;
	if (s.n > word.n && !is_one_of(s.p[word.n], " \t\r\n"))
		return false;
	t->s = str_trim_left(str_sub(s, word.n, s.n));
	return true;
}

bool quantity_given(const struct quantity *q)
{
	return q->kind != QUANTITY_ANY;
}

double quantity_mm(const struct quantity *q)
{
	return quantity_given(q) ? (q->lo + q->hi) / 2 : 0;
}

/* A hundredth of a thousandth: far below any shop size, far above binary noise. */
static bool nearly(double a, double b)
{
	return a - b < 1e-5 && b - a < 1e-5;
}

bool quantity_same(const struct quantity *a, const struct quantity *b)
{
	return quantity_given(a) == quantity_given(b) && nearly(a->lo, b->lo) &&
	    nearly(a->hi, b->hi);
}

struct pipe_size pipe_size_of(struct arena *a, const struct quantity *q)
{
	struct pipe_size size = { 0 };
	const struct pipe_row *row = quantity_given(q) ? q->pipe : NULL;

	if (!row)
		return size;
	size.text = q->scheduled
	    ? str_format(a, "NPS %s schedule %s", row->nps, row->schedule)
	    : str_format(a, "NPS %s", row->nps);
	size.od_mm = row->od_in * 25.4;
	size.wall_mm = q->scheduled ? row->wall_in * 25.4 : 0;
	return size;
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static size_t count_while(str s, size_t from, bool (*is)(char))
{
	size_t n = from;

	while (n < s.n && is(s.p[n]))
		n++;
	return n - from;
}

/* The text itself when it is canonical already, which spares a copy of nearly all. */
static str with_case(struct arena *a, str s, size_t upper)
{
	char *copy = NULL;

	for (size_t i = 0; i < s.n; i++) {
		char c = s.p[i];
		bool wrong = i < upper ? c >= 'a' && c <= 'z' : c >= 'A' && c <= 'Z';

		if (!wrong)
			continue;
		copy = copy ? copy : arena_copy(a, s.p, s.n);
		copy[i] = (char)(c ^ 32);
	}
	return copy ? (str){ copy, s.n } : s;
}

str id_of_assignment(struct arena *a, str s, size_t *used)
{
	size_t letters = count_while(s, 0, is_letter);
	size_t digits, n;

	*used = 0;
	if (letters < 2 || letters > 6 || letters >= s.n || s.p[letters] != '-')
		return (str){ 0 };
	digits = count_while(s, letters + 1, is_digit);
	n = letters + 1 + digits;
	if (digits < 1 || digits > 4)
		return (str){ 0 };
	if (n < s.n && is_letter(s.p[n]))
		n++;
	if (n < s.n && (is_letter(s.p[n]) || is_digit(s.p[n])))
		return (str){ 0 };
	*used = n;
	return with_case(a, str_sub(s, 0, n), letters);
}

str id_of_course(struct arena *a, str s, size_t *used)
{
	size_t letters = count_while(s, 0, is_letter), at = letters, digits;
	str id;

	*used = 0;
	if (at < s.n && (s.p[at] == ' ' || s.p[at] == '-'))
		at++;
	digits = count_while(s, at, is_digit);
	if (!letters || !digits)
		return (str){ 0 };
	*used = at + digits;
	id = with_case(a, str_sub(s, 0, *used), letters);
	if (s.p[letters] == ' ')
		return id;
	return str_format(a, "%.*s %.*s", STR_ARG(str_sub(id, 0, letters)),
	    STR_ARG(str_sub(id, at, id.n)));
}

str id_of_skill(struct arena *a, str s)
{
	for (size_t i = 0; i < s.n; i++)
		if (!is_letter(s.p[i]) && !is_digit(s.p[i]) && s.p[i] != '.')
			return (str){ 0 };
	return with_case(a, s, 0);
}

bool title_after(struct said heading, size_t used, struct said *title)
{
	static const str seps[] = { { ":", 1 }, { "-", 1 }, { "\xE2\x80\x93", 3 },
		{ "\xE2\x80\x94", 3 } };

	*title = said_trim(said_sub(heading, used, heading.s.n));
	for (size_t i = 0; i < sizeof seps / sizeof *seps; i++) {
		if (!str_starts(title->s, seps[i]))
			continue;
		*title = said_trim(said_sub(*title, seps[i].n, title->s.n));
		return true;
	}
	return !title->s.n;
}
