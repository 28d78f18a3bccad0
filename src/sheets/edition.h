/* sheets/edition.h - in which edition a document is printed: paper, size of type, language,
 * and which units come first.
 *
 * One struct is made for a print and passed, const, to everything that lays out. Normal
 * print has 12 pt for text; large print has 18 (job of the sheet) and all other type in
 * proportion. Places to write keep their size: they are for hands, not for eyes. */
#ifndef SHEETS_EDITION_H
#define SHEETS_EDITION_H

#include "base/language.h"
#include "page/para.h"
#include "sheets/choice.h"
#include "units/format.h"

struct edition {
	struct edition_choice choice;
	double zoom;             /* of type, and of what has room for type, against normal */
	double figure_zoom;      /* of figures, type and strokes alike */
	struct format format;    /* of quantities */
	struct type body, bold, number, h1, h2, cover;
};

struct edition edition_new(const struct edition_choice *choice);
/* Null for null, which is the usual edition, and for English. */
const struct language *edition_language(const struct edition *e);
/* How quantities print; null for null. */
const struct format *edition_format(const struct edition *e);
/* The word of a kind, a position, a row of a table, in the language of the edition. */
str edition_word(const struct edition *e, str english);
/* A type of that size in normal print. */
struct type edition_type(const struct edition *e, double size_pt, unsigned style,
    enum align align);

#endif
