#include "model/test_line.h"

#include "model/standard.h"

/* "2", "two"; 0 when the word is no small number. */
static uint32_t number_of(str word)
{
	static const char *const words[] = { "one", "two", "three", "four", "five", "six",
		"seven", "eight" };
	uint32_t n;

	if (str_to_u32(word, &n))
		return n < 100 ? n : 0;
	for (uint32_t i = 0; i < sizeof words / sizeof *words; i++)
		if (str_eq_nocase(word, str_of(words[i])))
			return i + 1;
	return 0;
}

static str bare(str word)
{
	while (word.n && (word.p[word.n - 1] == ',' || word.p[word.n - 1] == '.'))
		word.n--;
	return word;
}

static size_t least(size_t n, str text, str word)
{
	size_t at = word.n ? str_find(text, word, 0) : text.n;

	return at < n ? at : n;
}

/* Counts stand before the first semicolon and before set, plunger, die and strain. */
static str counted_part(const struct criterion *c)
{
	static const str ends[] = { { "D1.", 3 }, { "plunger", 7 }, { "die", 3 },
		{ "strain", 6 } };
	size_t n = str_find_char(c->text, ';', 0);

	for (size_t i = 0; i < sizeof ends / sizeof *ends; i++)
		n = least(n, c->text, ends[i]);
	n = least(n, c->text, c->code);
	if (c->standard)
		n = least(n, c->text, c->standard->name);
	return str_sub(c->text, 0, n);
}

/* Adds n, which stood before a weld or before its position, to that weld. */
static void count_letter(struct test_counts *t, uint32_t letter, uint32_t n)
{
	t->of[letter] += n;
	t->lettered = true;
}

struct test_counts test_counts_of(const struct criterion *c)
{
	struct test_counts t = { 0 };
	str rest = counted_part(c), word;
	uint32_t n = 0, last = TEST_LETTERS, lettered = 0, loose = 0;

	while (str_word(&rest, &word)) {
		uint32_t number = number_of(bare(word));
		char letter = bare(word).n == 1 ? bare(word).p[0] : 0;
		bool at = str_eq(word, STR("at"));

		/* "2, at 58 ksi or more": what follows is no count. */
		if (at && last == TEST_LETTERS)
			break;
		if (number) {
			loose += n;
			n = number;
			continue;
		}
		if (n && letter >= 'A' && letter <= 'Z')
			last = (uint32_t)(letter - 'A');
		else if (!n || !at)
			continue;
		count_letter(&t, last, n);
		lettered += n;
		n = 0;
	}
	t.total = lettered ? lettered : loose + n;
	return t;
}

/* "1:30" in degrees from 12; false: it is none. */
static bool read_clock(str *rest, double *out)
{
	size_t colon = str_find_char(*rest, ':', 0);
	uint32_t hour, minute;

	if (colon + 3 > rest->n || !str_to_u32(str_sub(*rest, 0, colon), &hour) ||
	    !str_to_u32(str_sub(*rest, colon + 1, colon + 3), &minute) || hour > 12 ||
	    minute > 59)
		return false;
	*out = (hour % 12) * 30.0 + minute * 0.5;
	*rest = str_trim_left(str_sub(*rest, colon + 3, rest->n));
	return true;
}

static bool read_length(str *rest, double *out)
{
	struct quantity_fault fault;
	struct quantity q;
	size_t used;

	if (quantity_prefix(*rest, QUANTITY_LENGTH, METAL_NONE, &q, &used,
	    &fault) != QUANTITY_OK)
		return false;
	*out = q.lo;
	*rest = str_trim_left(str_sub(*rest, used, rest->n));
	return true;
}

static bool read_place(str *rest, bool pipe, double *out)
{
	return pipe ? read_clock(rest, out) : read_length(rest, out);
}

static void read_places(str rest, bool pipe, size_t most, struct test_strips *t)
{
	if (most > STRIP_PLACES)
		most = STRIP_PLACES;
	while (t->nplaces < most && read_place(&rest, pipe, &t->place[t->nplaces])) {
		t->nplaces++;
		if (str_starts(rest, STR("and ")))
			rest = str_sub(rest, 4, rest.n);
		else if (str_starts(rest, STR(", ")))
			rest = str_sub(rest, 2, rest.n);
	}
}

struct test_strips test_strips_of(const struct criterion *c, bool pipe, size_t most)
{
	struct test_strips t = { 0 };
	str rest = str_sub(c->text, str_find(c->text, STR("strips "), 0), c->text.n);
	double mm;

	if (!rest.n)
		return t;
	rest = str_sub(rest, 7, rest.n);
	if (read_length(&rest, &mm)) {
		if (str_starts(rest, STR("wide")))
			t.width_mm = mm;
		rest = str_trim_left(str_sub(rest, str_find_char(rest, ' ', 0), rest.n));
	}
	if (str_starts(rest, STR("at ")))
		read_places(str_sub(rest, 3, rest.n), pipe, most, &t);
	return t;
}
