#include "sheets/edition.h"

#define LARGE_ZOOM 1.5
/* The least type of a figure is that of text. */
#define LARGE_FIGURE_ZOOM LARGE_ZOOM

struct type edition_type(const struct edition *e, double size_pt, unsigned style,
    enum align align)
{
	return (struct type){ .size_pt = size_pt * e->zoom, .style = style, .align = align };
}

const struct language *edition_language(const struct edition *e)
{
	return e ? e->choice.language : NULL;
}

const struct format *edition_format(const struct edition *e)
{
	return e ? &e->format : NULL;
}

str edition_word(const struct edition *e, str english)
{
	return word_str(edition_language(e), english);
}

str edition_tag(struct arena *a, const struct edition_choice *choice)
{
	str code = language_code(choice->language);

	return str_format(a, "%s%.*s%s%s", code.n ? "." : "", STR_ARG(code),
	    choice->large ? ".large" : "", choice->metric ? ".metric" : "");
}

struct edition edition_new(const struct edition_choice *choice)
{
	struct edition e = { .choice = *choice, .zoom = choice->large ? LARGE_ZOOM : 1,
		.figure_zoom = choice->large ? LARGE_FIGURE_ZOOM : 1,
		.format = { .metric_first = choice->metric } };

	e.body = edition_type(&e, 12, 0, ALIGN_LEFT);
	e.bold = edition_type(&e, 12, SPAN_BOLD, ALIGN_LEFT);
	e.number = edition_type(&e, 14, SPAN_BOLD, ALIGN_LEFT);
	e.h1 = edition_type(&e, 20, SPAN_BOLD, ALIGN_LEFT);
	e.h2 = edition_type(&e, 14, SPAN_BOLD, ALIGN_LEFT);
	e.cover = edition_type(&e, 30, SPAN_BOLD, ALIGN_LEFT);
	return e;
}
