#include "units/trade.h"

static const struct pipe_row pipes[] = {
#include "units/pipe.inc"
};

static const size_t npipes = sizeof pipes / sizeof *pipes;

static const struct gauge_row {
	unsigned gauge;
	double steel_in, stainless_in, aluminum_in, galvanized_in;
	const char *verified;
} gauges[] = {
#include "units/gauge.inc"
};

/* The first word found decides: "galvanized steel" is galvanized, "stainless steel"
 * stainless. Alloy numbers stand at the start of a word. */
#define WORD(w) { w, sizeof w - 1 }
static const struct { str word; enum sheet_metal metal; } metal_words[] = {
	{ WORD("galv"), METAL_GALVANIZED }, { WORD("A653"), METAL_GALVANIZED },
	{ WORD("stainless"), METAL_STAINLESS },
	{ WORD("aluminum"), METAL_ALUMINUM },
	{ WORD("aluminium"), METAL_ALUMINUM },
	{ WORD("301"), METAL_STAINLESS }, { WORD("304"), METAL_STAINLESS },
	{ WORD("308"), METAL_STAINLESS }, { WORD("309"), METAL_STAINLESS },
	{ WORD("310"), METAL_STAINLESS }, { WORD("316"), METAL_STAINLESS },
	{ WORD("321"), METAL_STAINLESS }, { WORD("347"), METAL_STAINLESS },
	{ WORD("410"), METAL_STAINLESS }, { WORD("430"), METAL_STAINLESS },
	{ WORD("TP3"), METAL_STAINLESS }, { WORD("A240"), METAL_STAINLESS },
	{ WORD("A269"), METAL_STAINLESS }, { WORD("A312"), METAL_STAINLESS },
	{ WORD("A554"), METAL_STAINLESS },
	{ WORD("1100"), METAL_ALUMINUM }, { WORD("3003"), METAL_ALUMINUM },
	{ WORD("5052"), METAL_ALUMINUM }, { WORD("5083"), METAL_ALUMINUM },
	{ WORD("5086"), METAL_ALUMINUM }, { WORD("6061"), METAL_ALUMINUM },
	{ WORD("6063"), METAL_ALUMINUM }, { WORD("2024"), METAL_ALUMINUM },
	{ WORD("5005"), METAL_ALUMINUM }, { WORD("5454"), METAL_ALUMINUM },
	{ WORD("5456"), METAL_ALUMINUM },
	{ WORD("steel"), METAL_STEEL }, { WORD("A36"), METAL_STEEL }, { WORD("A1008"), METAL_STEEL },
	{ WORD("A1011"), METAL_STEEL }, { WORD("A572"), METAL_STEEL }, { WORD("A500"), METAL_STEEL },
	{ WORD("A53"), METAL_STEEL }, { WORD("A106"), METAL_STEEL }, { WORD("1018"), METAL_STEEL },
	{ WORD("1010"), METAL_STEEL }, { WORD("1020"), METAL_STEEL }, { WORD("CRS"), METAL_STEEL },
	{ WORD("HRS"), METAL_STEEL }, { WORD("HRPO"), METAL_STEEL },
	{ WORD("A513"), METAL_STEEL }, { WORD("A514"), METAL_STEEL }, { WORD("A516"), METAL_STEEL },
	{ WORD("A588"), METAL_STEEL }, { WORD("A992"), METAL_STEEL }, { WORD("A529"), METAL_STEEL },
};
#undef WORD

static const char *const metal_names[METAL_COUNT] = {
	[METAL_NONE] = "",
	[METAL_STEEL] = "steel",
	[METAL_STAINLESS] = "stainless",
	[METAL_ALUMINUM] = "aluminum",
	[METAL_GALVANIZED] = "galvanized",
};

/* The first row before `end` that a word begins with, or end. Most differ in their first
 * letter. */
static size_t metal_row(str word, size_t end)
{
	for (size_t i = 0; i < end; i++)
		if (!((metal_words[i].word.p[0] ^ word.p[0]) & 0x1F) &&
		    str_starts_nocase(word, metal_words[i].word))
			return i;
	return end;
}

enum sheet_metal sheet_metal_of(str words)
{
	const size_t none = sizeof metal_words / sizeof *metal_words;
	size_t row = none;
	str word;

	while (str_word(&words, &word))
		row = metal_row(word, row);
	return row < none ? metal_words[row].metal : METAL_NONE;
}

const char *sheet_metal_word(enum sheet_metal metal)
{
	return metal_names[metal];
}

static double column(const struct gauge_row *g, enum sheet_metal metal)
{
	switch (metal) {
	case METAL_STEEL:
		return g->steel_in;
	case METAL_STAINLESS:
		return g->stainless_in;
	case METAL_ALUMINUM:
		return g->aluminum_in;
	case METAL_GALVANIZED:
		return g->galvanized_in;
	default:
		return 0;
	}
}

double gauge_thickness_in(enum sheet_metal metal, unsigned gauge)
{
	for (size_t i = 0; i < sizeof gauges / sizeof *gauges; i++)
		if (gauges[i].gauge == gauge)
			return column(&gauges[i], metal);
	return 0;
}

const struct pipe_row *pipe_find(str nps, str schedule)
{
	for (size_t i = 0; i < npipes; i++) {
		const struct pipe_row *p = &pipes[i];

		if (!str_eq(str_of(p->nps), nps))
			continue;
		if (!schedule.n || str_eq_nocase(str_of(p->schedule), schedule) ||
		    str_eq_nocase(str_of(p->ident), schedule))
			return p;
	}
	return NULL;
}

const struct pipe_row *pipe_rows(size_t *n)
{
	*n = npipes;
	return pipes;
}
