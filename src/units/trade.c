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
static const struct { const char *word; enum sheet_metal metal; } metal_words[] = {
	{ "galv", METAL_GALVANIZED },
	{ "stainless", METAL_STAINLESS },
	{ "aluminum", METAL_ALUMINUM },
	{ "aluminium", METAL_ALUMINUM },
	{ "301", METAL_STAINLESS }, { "304", METAL_STAINLESS },
	{ "308", METAL_STAINLESS }, { "309", METAL_STAINLESS },
	{ "310", METAL_STAINLESS }, { "316", METAL_STAINLESS },
	{ "321", METAL_STAINLESS }, { "347", METAL_STAINLESS },
	{ "410", METAL_STAINLESS }, { "430", METAL_STAINLESS },
	{ "1100", METAL_ALUMINUM }, { "3003", METAL_ALUMINUM },
	{ "5052", METAL_ALUMINUM }, { "5083", METAL_ALUMINUM },
	{ "5086", METAL_ALUMINUM }, { "6061", METAL_ALUMINUM },
	{ "6063", METAL_ALUMINUM },
	{ "steel", METAL_STEEL }, { "A36", METAL_STEEL }, { "A1008", METAL_STEEL },
	{ "A1011", METAL_STEEL }, { "A572", METAL_STEEL }, { "A500", METAL_STEEL },
	{ "A53", METAL_STEEL }, { "A106", METAL_STEEL }, { "1018", METAL_STEEL },
	{ "1010", METAL_STEEL }, { "1020", METAL_STEEL }, { "CRS", METAL_STEEL },
	{ "HRS", METAL_STEEL }, { "HRPO", METAL_STEEL },
};

static const char *const metal_names[METAL_COUNT] = {
	[METAL_NONE] = "",
	[METAL_STEEL] = "steel",
	[METAL_STAINLESS] = "stainless",
	[METAL_ALUMINUM] = "aluminum",
	[METAL_GALVANIZED] = "galvanized",
};

static bool word_starts(str words, str start)
{
	str word;

	while (str_word(&words, &word))
		if (str_starts_nocase(word, start))
			return true;
	return false;
}

enum sheet_metal sheet_metal_of(str words)
{
	for (size_t i = 0; i < sizeof metal_words / sizeof *metal_words; i++)
		if (word_starts(words, str_of(metal_words[i].word)))
			return metal_words[i].metal;
	return METAL_NONE;
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
