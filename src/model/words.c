#include "model/words.h"

#include "base/buf.h"

#include <assert.h>

#define W(text, value) { { text, sizeof text - 1 }, (uint32_t)(value) }
#define WORDS(name, what, rows) \
	const struct words name = { { what, sizeof what - 1 }, rows, \
	    sizeof rows / sizeof *rows }

static const struct word kinds[] = {
	W("safety", KIND_SAFETY), W("written", KIND_WRITTEN), W("drill", KIND_DRILL),
	W("coupon", KIND_COUPON), W("practice test", KIND_PRACTICE_TEST),
	W("practise test", KIND_PRACTICE_TEST),
	W("qualification test", KIND_QUALIFICATION_TEST), W("project", KIND_PROJECT),
};
WORDS(words_kind, "a kind of assignment", kinds);

/* Letter designations of AWS A3.0 (from memory), and what the shop calls them. */
static const struct word processes[] = {
	W("SMAW", PROCESS_SMAW), W("stick", PROCESS_SMAW), W("GMAW", PROCESS_GMAW),
	W("MIG", PROCESS_GMAW), W("GMAW-S", PROCESS_GMAW_S), W("FCAW-G", PROCESS_FCAW_G),
	W("FCAW-S", PROCESS_FCAW_S), W("GTAW", PROCESS_GTAW), W("TIG", PROCESS_GTAW),
	W("OFC", PROCESS_OFC), W("OFW", PROCESS_OFW), W("PAC", PROCESS_PAC),
	W("CAC-A", PROCESS_CAC_A), W("TB", PROCESS_TB), W("TS", PROCESS_TS),
};
WORDS(words_process, "a process", processes);

static const struct word joints[] = {
	W("tee", JOINT_TEE), W("T", JOINT_TEE), W("lap", JOINT_LAP),
	W("corner", JOINT_CORNER), W("closed corner", JOINT_CORNER),
	W("open corner", JOINT_OPEN_CORNER), W("edge", JOINT_EDGE),
	W("square butt", JOINT_SQUARE_BUTT), W("square groove", JOINT_SQUARE_BUTT),
	W("single-V", JOINT_SINGLE_V), W("single-V groove", JOINT_SINGLE_V),
	W("single-V butt", JOINT_SINGLE_V), W("V groove", JOINT_SINGLE_V),
	W("single bevel", JOINT_SINGLE_BEVEL), W("bevel groove", JOINT_SINGLE_BEVEL),
	W("single bevel groove", JOINT_SINGLE_BEVEL),
	W("flare-bevel", JOINT_FLARE_BEVEL), W("flare bevel groove", JOINT_FLARE_BEVEL),
	W("U-groove", JOINT_U_GROOVE), W("single-U", JOINT_U_GROOVE),
	W("pipe butt", JOINT_PIPE_BUTT), W("branch set-on", JOINT_BRANCH),
	W("set-on branch", JOINT_BRANCH), W("branch", JOINT_BRANCH),
	W("surfacing", JOINT_SURFACING), W("pad", JOINT_SURFACING),
	W("build-up", JOINT_SURFACING), W("hardfacing", JOINT_SURFACING),
	W("hard-facing", JOINT_SURFACING), W("cut edge", JOINT_CUT_EDGE),
	W("bevel cut", JOINT_BEVEL_CUT), W("beveled cut", JOINT_BEVEL_CUT),
	W("bevelled cut", JOINT_BEVEL_CUT), W("butt", JOINT_BUTT),
};
WORDS(words_joint, "a joint", joints);

static const struct word positions[] = {
	W("flat", POSITION_FLAT), W("1F", POSITION_1F), W("2F", POSITION_2F),
	W("3F", POSITION_3F), W("4F", POSITION_4F), W("5F", POSITION_5F),
	W("1G", POSITION_1G), W("2G", POSITION_2G), W("3G", POSITION_3G),
	W("4G", POSITION_4G), W("5G", POSITION_5G), W("6G", POSITION_6G),
	W("1G rolled", POSITION_1G_ROLLED), W("1G rotated", POSITION_1G_ROLLED),
	W("1F rolled", POSITION_1F_ROLLED), W("1F rotated", POSITION_1F_ROLLED),
};
WORDS(words_position, "a position", positions);

static const struct word progressions[] = {
	W("up", PROGRESS_UP), W("upward", PROGRESS_UP), W("upwards", PROGRESS_UP),
	W("uphill", PROGRESS_UP), W("vertical up", PROGRESS_UP),
	W("down", PROGRESS_DOWN), W("downward", PROGRESS_DOWN),
	W("downwards", PROGRESS_DOWN), W("downhill", PROGRESS_DOWN),
	W("vertical down", PROGRESS_DOWN),
};
WORDS(words_progression, "a direction of welding", progressions);

static const struct word levels[] = {
	W("introduced", SKILL_INTRODUCED), W("practiced", SKILL_PRACTICED),
	W("practised", SKILL_PRACTICED), W("assessed", SKILL_ASSESSED),
};
WORDS(words_level, "a level", levels);

/* A typeset minus (en dash) reads as a hyphen here, see words_same. */
static const struct word polarities[] = {
	W("DC+", 0), W("DCEP", 0), W("DC-", 1), W("DCEN", 1), W("AC", 2),
};
WORDS(words_polarity, "a kind of current", polarities);

static const struct word transfers[] = {
	W("short circuit", 0), W("short-circuiting", 0), W("globular", 1), W("spray", 2),
	W("pulsed spray", 3), W("pulse", 3),
};
WORDS(words_transfer, "a kind of metal transfer", transfers);

static const struct word backings[] = {
	W("none", 0), W("strip", 1), W("ring", 2), W("bar", 3), W("plate", 4), W("weld", 5),
	W("ceramic", 6), W("copper", 7), W("flux", 8), W("back-gouged", 9),
};
WORDS(words_backing, "a kind of backing", backings);

static const struct word place_rows[] = {
	W("booth", 0), W("open floor", 1), W("confined", 2), W("confined space", 2),
};
WORDS(words_place, "a kind of place", place_rows);

static const struct word testers[] = { W("student", 0), W("instructor", 1) };
WORDS(words_tester, "a person who tests", testers);

static const struct word stock_rows[] = {
	W("beveled by aide", 0), W("bevelled by aide", 0), W("beveled by student", 1),
	W("bevelled by student", 1),
};
WORDS(words_stock, "a way that the stock comes", stock_rows);

static const struct word preparations[] = {
	W("square", PREPARATION_SQUARE), W("V", PREPARATION_V), W("single V", PREPARATION_V),
	W("bevel", PREPARATION_BEVEL), W("single bevel", PREPARATION_BEVEL),
	W("U", PREPARATION_U), W("single U", PREPARATION_U), W("J", PREPARATION_J),
	W("single J", PREPARATION_J), W("double V", PREPARATION_DOUBLE_V),
	W("double bevel", PREPARATION_DOUBLE_BEVEL), W("double U", PREPARATION_DOUBLE_U),
	W("double J", PREPARATION_DOUBLE_J), W("flare V", PREPARATION_FLARE_V),
	W("flare bevel", PREPARATION_FLARE_BEVEL),
};
WORDS(words_preparation, "a preparation", preparations);

static const struct word standards_of_symbols[] = {
	W("AWS A2.4", SYMBOL_AWS), W("AWS", SYMBOL_AWS), W("ISO 2553", SYMBOL_ISO),
	W("ISO", SYMBOL_ISO), W("none", SYMBOL_LEFT_OUT),
};
WORDS(words_symbol, "a standard of symbols", standards_of_symbols);

static const struct word contours[] = {
	W("flush", CONTOUR_FLUSH), W("flat", CONTOUR_FLUSH), W("convex", CONTOUR_CONVEX),
	W("concave", CONTOUR_CONCAVE),
};
WORDS(words_contour, "a contour", contours);

/* Letters of AWS A2.4, from memory. */
static const struct word finishes[] = {
	W("chipping", 'C'), W("C", 'C'), W("grinding", 'G'), W("G", 'G'), W("hammering", 'H'),
	W("H", 'H'), W("machining", 'M'), W("M", 'M'), W("planishing", 'P'), W("P", 'P'),
	W("rolling", 'R'), W("R", 'R'), W("unspecified", 'U'), W("U", 'U'),
};
WORDS(words_finish, "a way of finishing", finishes);

static const struct word backs[] = {
	W("back weld", BACK_WELD), W("backing weld", BACKING_WELD),
	W("melt-through", BACK_MELT_THROUGH),
};
WORDS(words_back, "what the back of a groove gets", backs);

static const struct word answers[] = { W("no", 0), W("yes", 1) };
WORDS(words_answer, "yes or no", answers);

static const struct word side_rows[] = { W("one", 0), W("1", 0), W("both", 1), W("2",
    1) };
WORDS(words_sides, "a number of sides", side_rows);

/* Bytes of a separator at the start of s: blank, hyphen, or en dash of three bytes. */
static size_t separator(str s)
{
	if (!s.n)
		return 0;
	if (*s.p == ' ' || *s.p == '-' || *s.p == '\t')
		return 1;
	return *s.p == '\xE2' && str_starts(s, STR("\xE2\x80\x93")) ? 3 : 0;
}

/* The next byte that counts, folded: any run of separators comes out as one blank; 0
 * at the end. */
static char next_folded(str *s)
{
	bool gap = false;
	size_t n;
	char c;

	while ((n = separator(*s)) > 0) {
		s->p += n;
		s->n -= n;
		gap = true;
	}
	if (gap)
		return ' ';
	if (!s->n)
		return 0;
	c = *s->p++;
	s->n--;
	return c >= 'A' && c <= 'Z' ? (char)(c + 32) : c;
}

bool words_alike(str a, str b)
{
	char x, y;

	/* Nearly all that are the same are so to the letter. */
	if (str_eq(a, b) || str_eq_nocase(a, b))
		return true;
	do {
		x = next_folded(&a);
		y = next_folded(&b);
	} while (x == y && x);
	return x == y;
}

uint32_t words_find(const struct words *w, str s)
{
	for (size_t i = 0; i < w->n; i++)
		if (words_same(w->v[i].word, s))
			return w->v[i].value;
	return NONE;
}

str words_show(const struct words *w, uint32_t value)
{
	for (size_t i = 0; i < w->n; i++)
		if (w->v[i].value == value)
			return w->v[i].word;
	return (str){ 0 };
}

str words_likely(struct arena *a, const struct words *w, str wrong)
{
	str *list = arena_array(a, w->n, sizeof *list);

	for (size_t i = 0; i < w->n; i++)
		list[i] = w->v[i].word;
	return likely_word(wrong, list, w->n);
}

uint32_t words_guess(struct arena *a, const struct words *w, str wrong, str *likely)
{
	uint32_t value;
	size_t near;

	*likely = words_likely(a, w, wrong);
	if (!likely->n)
		return NONE;
	near = str_distance(wrong, *likely, wrong.n);
	value = words_find(w, *likely);
	for (size_t i = 0; i < w->n; i++)
		if (w->v[i].value != value && str_distance(wrong, w->v[i].word, near) <= near)
			return NONE;
	return value;
}

str words_list(struct arena *a, const struct words *w)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < w->n; i++) {
		if (words_show(w, w->v[i].value).p != w->v[i].word.p)
			continue;
		buf_adds(&b, b.n ? ", " : "");
		buf_add(&b, w->v[i].word);
	}
	return buf_str(&b);
}

static str shown(const struct words *w, uint32_t value, uint32_t count)
{
	return value < count ? words_show(w, value) : (str){ 0 };
}

str kind_word(enum kind k)
{
	return shown(&words_kind, k, KIND_COUNT);
}

str process_word(enum process p)
{
	return shown(&words_process, p, PROCESS_COUNT);
}

str joint_word(enum joint j)
{
	return shown(&words_joint, j, JOINT_COUNT);
}

str position_word(enum position p)
{
	return shown(&words_position, p, POSITION_COUNT);
}

str skill_level_word(enum skill_level l)
{
	return words_show(&words_level, l);
}

enum joint joint_find(str s)
{
	uint32_t value = words_find(&words_joint, s);

	if (value == NONE && str_ends(s, STR("joint")))
		value = words_find(&words_joint, str_trim(str_sub(s, 0, s.n - 5)));
	return value == NONE ? JOINT_COUNT : (enum joint)value;
}

bool process_is_cut(enum process p)
{
	return p == PROCESS_OFC || p == PROCESS_PAC || p == PROCESS_CAC_A;
}

bool joint_is_cut(enum joint j)
{
	return j == JOINT_CUT_EDGE || j == JOINT_BEVEL_CUT;
}

bool position_wants_progression(enum position p)
{
	return p == POSITION_3F || p == POSITION_3G || p == POSITION_5F ||
	    p == POSITION_5G || p == POSITION_6G;
}
