#include "units/reading.h"

bool reader_fail(struct reader *r, enum quantity_result result, size_t at,
    const char *reason)
{
	*r->fault = (struct quantity_fault){ result, at < r->s.n ? at : r->s.n, reason,
		{ 0 }, r->want };
	return false;
}

bool reader_fail_unit(struct reader *r, enum quantity_result result, size_t at,
    const char *reason, str wrong)
{
	reader_fail(r, result, at, reason);
	r->fault->likely = unit_likely(wrong, r->want);
	return false;
}

str reader_word(const struct reader *r, size_t at)
{
	size_t end = at;

	while (scan_is_letter(scan_glyph(r->s, end).c))
		end++;
	return str_sub(r->s, at, end);
}

static int peek(const struct reader *r)
{
	return scan_glyph(r->s, scan_skip_blanks(r->s, r->at)).c;
}

/* Words that join quantities are no units. */
static bool is_joint_word(str word)
{
	static const str words[] = {
		{ "x", 1 }, { "by", 2 }, { "to", 2 }, { "and", 3 }, { "or", 2 },
	};

	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (str_eq_nocase(word, words[i]))
			return true;
	return false;
}

/* A word after a number that is no unit: misspelt when near to one, otherwise left
 * to whatever follows the quantity. */
static bool judge_word(struct reader *r, size_t start, size_t end)
{
	str word = str_sub(r->s, start, end);
	bool last = scan_skip_blanks(r->s, end) == r->s.n;
	str near;

	if (!word.n || r->want == QUANTITY_COUNT || is_joint_word(reader_word(r, start)))
		return true;
	near = unit_likely(word, r->want);
	if (!last && str_distance(word, near, 1) > 1)
		return true;
	return reader_fail_unit(r, QUANTITY_UNKNOWN_UNIT, start, "this is no unit", word);
}

static bool read_unit(struct reader *r, struct amount *out)
{
	size_t start, end;
	const struct unit *u = unit_read(r->s, r->at, &start, &end);

	if (!u)
		return judge_word(r, start, end);
	if (r->want != QUANTITY_ANY && u->kind != r->want) {
		reader_fail(r, QUANTITY_UNKNOWN_UNIT, start,
		    "this unit measures something else");
		if (unit_usual(r->want))
			r->fault->likely = unit_usual(r->want)->name;
		return false;
	}
	out->unit = u;
	out->unit_at = start;
	r->at = end;
	return true;
}

static bool read_number(struct reader *r, struct number *n)
{
	const char *reason = NULL;

	if (scan_number(r->s, &r->at, n, &reason))
		return true;
	return reader_fail(r, QUANTITY_BAD, r->at, reason);
}

/* The inches after feet, 6'-4" or 6 ft 4 in, make one exact count of inches. Without
 * an inch mark what follows is no part of it and r stays where it was. */
static bool read_inches(struct reader *r, struct amount *feet)
{
	size_t back = r->at, start, end;
	const struct unit *u;
	struct number n;

	r->at = scan_skip_blanks(r->s, r->at);
	if (scan_glyph(r->s, r->at).c == '-')
		r->at = scan_skip_blanks(r->s, r->at + scan_glyph(r->s, r->at).n);
	if (!scan_number_starts(r->s, r->at)) {
		r->at = back;
		return true;
	}
	if (!read_number(r, &n))
		return false;
	u = unit_read(r->s, r->at, &start, &end);
	if (!u || !str_eq(str_of(u->print), STR("in"))) {
		r->at = back;
		return true;
	}
	if (n.num >= 12 * n.den)
		return reader_fail(r, QUANTITY_BAD, start,
		    "after feet, inches stay under 12");
	n.num += feet->n.num * 12 * n.den;
	feet->n = n;
	feet->unit = unit_find(STR("ft-in"));
	r->at = end;
	return true;
}

static bool read_amount(struct reader *r, struct amount *out)
{
	*out = (struct amount){ 0 };
	out->at = r->at = scan_skip_blanks(r->s, r->at);
	if (scan_glyph(r->s, r->at).c == '-') {
		out->negative = true;
		r->at += scan_glyph(r->s, r->at).n;
	}
	if (!read_number(r, &out->n) || !read_unit(r, out))
		return false;
	if (out->unit && out->unit->form == FORM_FEET && out->n.den == 1)
		return read_inches(r, out);
	return true;
}

/* Past "-" or "to" before a second number, or 0 when no range follows. */
static size_t range_joint(const struct reader *r, bool *hyphen)
{
	size_t at = scan_skip_blanks(r->s, r->at);
	struct glyph g = scan_glyph(r->s, at);

	*hyphen = g.c == '-';
	if (*hyphen)
		at += g.n;
	else if (str_eq_nocase(reader_word(r, at), STR("to")))
		at += 2;
	else
		return 0;
	at = scan_skip_blanks(r->s, at);
	if (!*hyphen && scan_glyph(r->s, at).c == '-')
		return at;
	return scan_number_starts(r->s, at) ? at : 0;
}

static bool read_range(struct reader *r, struct reading *out)
{
	bool hyphen;
	size_t joint = range_joint(r, &hyphen), dash = r->at;

	out->hi = out->lo;
	if (!joint)
		return true;
	r->at = joint;
	if (!read_amount(r, &out->hi))
		return false;
	if (hyphen && (out->lo.n.fraction || out->hi.n.fraction))
		return reader_fail(r, QUANTITY_BAD, dash,
		    "ranges of fractions use \"to\"");
	out->range = true;
	dash = scan_skip_blanks(r->s, r->at);
	if (range_joint(r, &hyphen))
		return reader_fail(r, QUANTITY_BAD, dash, "a range has two ends");
	return true;
}

/* One signed figure of a tolerance, at its sign. */
static bool read_signed(struct reader *r, struct reading *out)
{
	size_t at = r->at = scan_skip_blanks(r->s, r->at);
	struct glyph g = scan_glyph(r->s, at);
	struct amount *to = g.c == '-' ? &out->minus : &out->plus;

	if (to->unit || to->n.den)
		return reader_fail(r, QUANTITY_BAD, at,
		    "a tolerance has one plus and one minus");
	r->at += g.n;
	if (g.c == '+' && str_starts(str_sub(r->s, r->at, r->s.n), STR("/-"))) {
		out->plus_minus = true;
		r->at += 2;
	}
	out->plus_minus |= g.c == GLYPH_PLUS_MINUS;
	r->at = scan_skip_blanks(r->s, r->at);
	if (!scan_number_starts(r->s, r->at))
		return reader_fail(r, QUANTITY_BAD, at,
		    "a number is missing after the sign");
	return read_amount(r, to);
}

static bool read_tolerance(struct reader *r, struct reading *out)
{
	size_t at = scan_skip_blanks(r->s, r->at);
	int c;

	out->tolerance = true;
	if (!read_signed(r, out))
		return false;
	if (out->plus_minus) {
		out->minus = out->plus;
		return true;
	}
	if (peek(r) == ',')
		r->at = scan_skip_blanks(r->s, r->at) + 1;
	c = peek(r);
	if (c != '+' && c != '-')
		return reader_fail(r, QUANTITY_BAD, at, r->s.p[at] == '-'
		    ? "it is below zero, or a tolerance without its other side"
		    : "a tolerance needs its other side too");
	return read_signed(r, out);
}

/* "6", "1-1/2" as the pipe table spells a size. */
static str nps_text(const struct number *n, char text[24])
{
	uint64_t whole = n->num / n->den, part = n->num % n->den, figures = 0;
	char *p = text;
	char digits[20];

	for (uint64_t w = whole; w; w /= 10)
		digits[figures++] = (char)('0' + w % 10);
	while (figures)
		*p++ = digits[--figures];
	if (part && n->den < 10) {
		if (whole)
			*p++ = '-';
		*p++ = (char)('0' + part);
		*p++ = '/';
		*p++ = (char)('0' + n->den);
	}
	return (str){ text, (size_t)(p - text) };
}

/* The end of "40", "STD", "xs" at `at`. */
static size_t schedule_end(const struct reader *r, size_t at)
{
	size_t end = at;

	for (;;) {
		int c = scan_glyph(r->s, end).c;

		if (!scan_is_letter(c) && !scan_is_digit(c))
			return end;
		end++;
	}
}

/* "schedule 40", "sch. 80", or STD, XS, XXS alone, after a size. */
static bool read_schedule(struct reader *r, str nps, struct reading *out)
{
	size_t at = scan_skip_blanks(r->s, r->at), end;
	str word;

	if (scan_glyph(r->s, at).c == ',')
		at = scan_skip_blanks(r->s, at + 1);
	word = reader_word(r, at);
	if (str_starts_nocase(word, STR("sch"))) {
		at += word.n;
		at = scan_skip_blanks(r->s, scan_glyph(r->s, at).c == '.' ? at + 1 : at);
	} else if (!str_eq_nocase(word, STR("STD")) && !str_eq_nocase(word, STR("XS")) &&
	    !str_eq_nocase(word, STR("XXS"))) {
		return true;
	}
	end = schedule_end(r, at);
	if (end == at)
		return reader_fail(r, QUANTITY_BAD, at, "the schedule is missing");
	out->pipe = pipe_find(nps, str_sub(r->s, at, end));
	if (!out->pipe)
		return reader_fail(r, QUANTITY_BAD, at,
		    "the table has no such schedule for this size");
	out->scheduled = true;
	r->at = end;
	return true;
}

static bool read_pipe(struct reader *r, struct reading *out)
{
	size_t at;
	struct number n;
	char text[24];
	str nps;

	at = r->at = scan_skip_blanks(r->s, r->at + 3);
	if (r->want != QUANTITY_ANY && r->want != QUANTITY_PIPE &&
	    r->want != QUANTITY_LENGTH)
		return reader_fail(r, QUANTITY_BAD, out->at,
		    "a pipe size does not belong here");
	if (!read_number(r, &n))
		return false;
	nps = nps_text(&n, text);
	out->pipe = n.decimal ? NULL : pipe_find(nps, (str){ 0 });
	if (!out->pipe)
		return reader_fail(r, QUANTITY_BAD, at,
		    "the table has no such pipe size");
	if (!read_schedule(r, nps, out))
		return false;
	if (r->want == QUANTITY_LENGTH && !out->scheduled && !r->product)
		return reader_fail(r, QUANTITY_BAD, out->at,
		    "a wall thickness needs the schedule");
	return true;
}

static bool tolerance_starts(const struct reader *r)
{
	int c = peek(r);

	return c == '+' || c == GLYPH_PLUS_MINUS;
}

bool reader_read(struct reader *r, struct reading *out)
{
	*out = (struct reading){ 0 };
	out->at = r->at = scan_skip_blanks(r->s, r->at);
	if (r->at == r->s.n)
		return reader_fail(r, QUANTITY_BAD, r->at, "nothing is written here");
	if (str_eq_nocase(reader_word(r, r->at), STR("NPS"))) {
		if (!read_pipe(r, out))
			return false;
		out->end = r->at;
		return true;
	}
	out->no_value = tolerance_starts(r) ||
	    (peek(r) == '-' && r->want != QUANTITY_TEMPERATURE);
	if (!out->no_value && (!read_amount(r, &out->lo) || !read_range(r, out)))
		return false;
	if ((out->no_value || tolerance_starts(r)) && !read_tolerance(r, out))
		return false;
	out->end = r->at;
	return true;
}
