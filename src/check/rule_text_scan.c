/* Running words to tokens. */
#include "check/rule_text_scan.h"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool is_inside(str s, size_t i)
{
	char c = s.p[i];

	/* "ER70S-2" is one word, and "stop-watch"; "A36 - sawn" is not. */
	return is_letter(c) || is_digit(c) || c == '/' || c == '\'' || c == '+' ||
	    ((c == '-' || c == '.') && i + 1 < s.n && (is_letter(s.p[i + 1]) ||
	    is_digit(s.p[i + 1])));
}

static size_t word_end(str s, size_t i)
{
	while (i < s.n && is_inside(s, i))
		i++;
	return i;
}

static struct token *push(struct tokens *t, enum token_sort sort, str s)
{
	struct token *k = ARENA_PUSH(t->arena, t->v, t->n, t->cap);

	*k = (struct token){ .sort = sort, .s = s };
	return k;
}

/* "3F" is a position here, not a temperature. */
static bool is_position(str s, size_t i)
{
	return i + 1 < s.n && (s.p[i + 1] == 'F' || s.p[i + 1] == 'G') &&
	    (i + 2 == s.n || !is_inside(s, i + 2));
}

/* A quantity at i, or a word; the byte behind it. */
static size_t take_word(struct tokens *t, str s, size_t i, enum sheet_metal metal)
{
	struct quantity_fault fault;
	struct quantity q;
	size_t used, end;

	if (is_digit(s.p[i]) && !is_position(s, i) && quantity_prefix(str_sub(s, i, s.n),
	    QUANTITY_ANY, metal, &q, &used, &fault) == QUANTITY_OK && !q.no_value) {
		push(t, TOKEN_SIZE, str_sub(s, i, i + used))->q = q;
		return i + used;
	}
	end = word_end(s, i);
	push(t, TOKEN_WORD, str_sub(s, i, end));
	return end;
}

/* "[6.4 mm]" says nothing of its own here. */
static size_t pass_bracket(str s, size_t i)
{
	size_t end = str_find_char(s, ']', i);

	return end < s.n ? end + 1 : s.n;
}

static enum token_sort sort_of(str s, size_t i)
{
	switch (s.p[i]) {
	case ',': return TOKEN_COMMA;
	case ':': return TOKEN_COLON;
	default: return TOKEN_OTHER;
	}
}

void tokens_read(struct tokens *t, str s, enum sheet_metal metal)
{
	size_t i = 0;

	t->n = 0;
	while (i < s.n) {
		if (s.p[i] == ' ' || s.p[i] == '\t') {
			i++;
		} else if (s.p[i] == '[') {
			i = pass_bracket(s, i);
		} else if (is_letter(s.p[i]) || is_digit(s.p[i])) {
			i = take_word(t, s, i, metal);
		} else {
			push(t, sort_of(s, i), str_sub(s, i, i + 1));
			i++;
		}
	}
}

bool token_is(const struct tokens *t, size_t i, const char *const *words)
{
	if (i >= t->n || t->v[i].sort != TOKEN_WORD)
		return false;
	for (; *words; words++)
		/* Lists are long and words are many: most differ in their first letter. */
		if (!((t->v[i].s.p[0] ^ **words) & 0x1F) &&
		    str_eq_nocase(t->v[i].s, str_of(*words)))
			return true;
	return false;
}

bool clause_has(const struct tokens *t, const char *const *words)
{
	for (size_t i = 0; i < t->n; i++)
		if (token_is(t, i, words))
			return true;
	return false;
}

bool part_has(const struct tokens *t, size_t i, const char *const *words)
{
	size_t from = i;

	while (from > 0 && t->v[from - 1].sort != TOKEN_COMMA)
		from--;
	for (; from < t->n && t->v[from].sort != TOKEN_COMMA; from++)
		if (token_is(t, from, words))
			return true;
	return false;
}

/* How the words begin of which a clause with a wording has one, by first letter: the
 * rest of a sheet is passed over, since reading the numbers in it is what costs. */
static const char *const beginnings[26][4] = {
	['a' - 'a'] = { "ang" }, ['b' - 'a'] = { "bev" }, ['c' - 'a'] = { "core" },
	['e' - 'a'] = { "elec" }, ['f' - 'a'] = { "fac", "fil", "flux" },
	['g' - 'a'] = { "gap" }, ['i' - 'a'] = { "incl" }, ['l' - 'a'] = { "lan", "leg" },
	['o' - 'a'] = { "open", "oxy" }, ['p' - 'a'] = { "plat", "plas" },
	['s' - 'a'] = { "shee", "stic" }, ['t' - 'a'] = { "thic", "tung" },
	['w' - 'a'] = { "wall" },
};

static bool may_begin(str s, size_t i)
{
	const char *const *v = beginnings[(s.p[i] | 0x20) - 'a'];

	for (; *v; v++)
		if (i + 1 < s.n && (s.p[i + 1] | 0x20) == v[0][1] &&
		    str_starts_nocase(str_sub(s, i, s.n), str_of(*v)))
			return true;
	return false;
}

/* Whether the word at i begins something that a wording may have. */
static bool is_worth_word(str s, size_t i)
{
	char c = s.p[i], next = i + 1 < s.n ? s.p[i + 1] : ' ';

	/* "130 A" */
	if (c == 'A' && i > 1 && is_digit(s.p[i - 2]))
		return true;
	/* A class, a process, a position. */
	if (c >= 'A' && c <= 'Z' && (is_digit(next) || (next >= 'A' && next <= 'Z')))
		return true;
	if (is_digit(c))
		return next == 'F' || next == 'G';
	return may_begin(s, i);
}

static bool is_worth(str s)
{
	for (size_t i = 0; i < s.n; i++) {
		if (!is_letter(s.p[i]) && !is_digit(s.p[i]))
			continue;
		if (is_worth_word(s, i))
			return true;
		while (i + 1 < s.n && (is_letter(s.p[i + 1]) || is_digit(s.p[i + 1])))
			i++;
	}
	return false;
}

static bool ends_clause(str s, size_t i)
{
	switch (s.p[i]) {
	case ';': case '!': case '?': return true;
	case '.': return i + 1 == s.n || s.p[i + 1] == ' ';
	default: return false;
	}
}

/* Nearly all bytes are letters and blanks, which end none. */
static size_t clause_end(str s)
{
	size_t i = 0;

	while (i < s.n && (s.p[i] > '?' || s.p[i] == ' ' || !ends_clause(s, i)))
		i++;
	return i;
}

bool clause_next(str *rest, str *clause)
{
	while (rest->n) {
		size_t i = clause_end(*rest);

		*clause = str_sub(*rest, 0, i);
		*rest = str_sub(*rest, i + 1, rest->n);
		if (is_worth(*clause))
			return true;
	}
	return false;
}

str para_text(struct arena *a, const struct span *spans, size_t n)
{
	struct buf b = { .arena = a };

	if (n == 1)
		return spans[0].text;
	for (size_t i = 0; i < n; i++) {
		if (spans[i].style & SPAN_BREAK)
			buf_addc(&b, ' ');
		buf_add(&b, spans[i].text);
	}
	return buf_str(&b);
}
