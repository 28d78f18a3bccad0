/* Words of Filler and Gas that no trade list has and that are one slip from one that it
 * has. What is near none may be a word that fitup has not heard of. */
#include "check/rule_metal.h"

#include "model/words.h"

/* The usual classes of a school shop (AWS A5.1, A5.9, A5.10, A5.18, A5.20, from memory;
 * confirm against your edition): only what these may be meant for is told. */
static const char *const classes[] = {
	"E6010", "E6011", "E6012", "E6013", "E7014", "E7016", "E7018", "E7024", "E7028",
	"E8018", "E9018", "ER70S-2", "ER70S-3", "ER70S-6", "E71T-1", "E71T-8", "E71T-11",
	"ER308L", "ER309L", "ER316L", "ER4043", "ER5356", "E308L-16", "E309L-16", "E316L-16",
};
static const char *const gases[] = { "argon", "helium", "oxygen", "carbon", "dioxide" };

/* Coverings of steel electrodes by the last two figures of the class (AWS A5.1 and A5.5,
 * from memory; confirm against your edition). */
static const int coatings[] = { 10, 11, 12, 13, 14, 15, 16, 18, 19, 20, 22, 24, 27, 28, 45,
	48 };

static char small(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c + 32) : c;
}

/* Whether two neighbors have changed places and all else is alike. */
static bool is_swapped(str a, str b)
{
	size_t i = 0;

	if (a.n != b.n)
		return false;
	while (i < a.n && small(a.p[i]) == small(b.p[i]))
		i++;
	return i + 1 < a.n && small(a.p[i]) == small(b.p[i + 1]) &&
	    small(a.p[i + 1]) == small(b.p[i]) &&
	    str_eq_nocase(str_sub(a, i + 2, a.n), str_sub(b, i + 2, b.n));
}

/* The word of the list that is one slip away: letters that changed places before one
 * letter more, less or other, which must be near just one. Empty: none. */
static str one_slip(str wrong, const char *const *list, size_t n)
{
	str hit = { 0 };
	size_t near = 0;

	for (size_t i = 0; i < n; i++) {
		str word = str_of(list[i]);

		if (str_eq_nocase(wrong, word))
			return (str){ 0 };
		if (is_swapped(wrong, word))
			return word;
		if (str_distance(wrong, word, 1) == 1) {
			hit = word;
			near++;
		}
	}
	return near == 1 ? hit : (str){ 0 };
}

/* Whether a class says nothing, or a covering that no electrode has. */
static bool is_strange(const struct rod *r)
{
	if (r->sort != ROD_COVERED || r->metal != ROD_STEEL)
		return r->sort == ROD_UNKNOWN;
	for (size_t i = 0; i < sizeof coatings / sizeof *coatings; i++)
		if (coatings[i] == r->coating)
			return false;
	return true;
}

static void tell(struct rule_context *x, uint32_t w, struct pos pos, str wrong, str meant,
    const char *what)
{
	struct finding *d = rule_report(x, FINDING_UNKNOWN_WORD, pos, w,
	    "\"%.*s\" is not %s that fitup knows", STR_ARG(wrong), what);

	d->level = LEVEL_WARNING;
	finding_cause(x->f, d, "one letter or figure is between it and \"%.*s\"",
	    STR_ARG(meant));
	finding_offer(x->f, d, pos, wrong, meant);
}

static void judge_classes(struct rule_context *x, uint32_t w)
{
	struct settings l = settings_of(x->scratch, &x->m->assignments[w]);

	for (size_t i = 0; i < l.n; i++) {
		const struct setting *s = &l.v[i];
		size_t first = 0;
		str meant;

		while (first < i && !str_eq_nocase(l.v[first].class, s->class))
			first++;
		if (first < i || !s->class.n || !is_strange(&s->rod))
			continue;
		meant = one_slip(s->class, classes, sizeof classes / sizeof *classes);
		if (meant.n)
			tell(x, w, s->filler_pos, s->class, meant, "a class of filler");
	}
}

static bool is_letter(char c)
{
	return small(c) >= 'a' && small(c) <= 'z';
}

/* The next run of letters; false once none is left. */
static bool next_word(str *rest, str *word)
{
	size_t from = 0, to;

	while (from < rest->n && !is_letter(rest->p[from]))
		from++;
	for (to = from; to < rest->n && is_letter(rest->p[to]); to++)
		;
	*word = str_sub(*rest, from, to);
	*rest = str_sub(*rest, to, rest->n);
	return word->n > 0;
}

static void judge_gas_words(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];
	str rest = fact_said(a, "Gas"), word;

	if (!is_stated(rest) || gas_read(rest).known)
		return;
	while (next_word(&rest, &word)) {
		str meant = one_slip(word, gases, sizeof gases / sizeof *gases);

		if (meant.n && meant.n > 4)
			tell(x, w, assignment_fact_pos(a, STR("Gas")), word, meant, "a gas");
	}
}

/* The next figure of a word from *i on; 0: none is left. */
static char next_figure(str s, size_t *i)
{
	while (*i < s.n && !(s.p[*i] >= '0' && s.p[*i] <= '9'))
		++*i;
	return *i < s.n ? s.p[(*i)++] : 0;
}

static bool has_same_figures(str a, str b)
{
	size_t i = 0, k = 0;
	char x, y;

	do {
		x = next_figure(a, &i);
		y = next_figure(b, &k);
	} while (x == y && x);
	return x == y;
}

/* What may be a grade of its own, as A500 and A501 or 304 and 304L, or another number of
 * pieces is no slip. */
static bool is_slip(str a, str b)
{
	str x = a, y = b, grade, other;

	if (is_swapped(a, b))
		return true;
	if (str_distance(a, b, 1) != 1 || str_starts_nocase(b, a) || str_starts_nocase(a, b))
		return false;
	str_word(&x, &grade);
	str_word(&y, &other);
	return str_eq_nocase(grade, other) || (sheet_metal_of(a) == METAL_NONE &&
	    has_same_figures(grade, other));
}

static bool is_of_pieces(const struct assignment *a, str material)
{
	for (size_t i = 0; i < a->npieces; i++)
		if (words_same(a->pieces[i].material, material))
			return true;
	return false;
}

static bool is_of_facts(const struct assignment *a, str material)
{
	for (size_t i = 0; i < a->nmaterials; i++)
		if (words_same(a->materials[i].text, material))
			return true;
	return false;
}

static void tell_material(struct rule_context *x, uint32_t w, struct pos pos, str wrong,
    str meant, const char *other)
{
	struct finding *d = rule_report(x, FINDING_UNKNOWN_WORD, pos, w,
	    "\"%.*s\" stands here, and %s \"%.*s\"", STR_ARG(wrong), other, STR_ARG(meant));

	d->level = LEVEL_WARNING;
	finding_cause(x->f, d, "one letter or figure is between them");
	finding_offer(x->f, d, pos, wrong, meant);
}

/* The fact against what the pieces are made of; then a piece against the fact and the
 * others. */
static void judge_materials(struct rule_context *x, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w];

	for (size_t i = 0; i < a->nmaterials; i++)
		for (size_t k = 0; k < a->npieces; k++) {
			str fact = a->materials[i].text, piece = a->pieces[k].material;

			if (is_of_pieces(a, fact)) {
				if (!is_of_facts(a, piece) && is_slip(piece, fact))
					tell_material(x, w, a->pieces[k].pos, piece, fact,
					    "under Material");
			} else if (is_slip(fact, piece)) {
				tell_material(x, w, a->materials[i].pos, fact, piece,
				    "under Pieces");
				break;
			}
		}
}

void rule_metal_word(struct rule_context *x, uint32_t w)
{
	judge_classes(x, w);
	judge_materials(x, w);
	judge_gas_words(x, w);
}
