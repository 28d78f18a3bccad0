/* base/language.h - the words that sheets print in languages other than English.
 *
 * Every word that fitup itself puts on a student's sheet is written in English where it
 * is printed and looked up here on its way to the paper; English gives the text itself.
 * A text with values in it is looked up whole, as the pattern that it is, so that a
 * language may build its sentences its own way; the values keep their order.
 * The tables are made from templates/words; tests/words.sh holds them against the
 * sources. */
#ifndef BASE_LANGUAGE_H
#define BASE_LANGUAGE_H

#include "base/buf.h"

struct language; /* null: English */

/* By its code ("es"), null when there is none; and the i-th of all, null past the last. */
const struct language *language_find(str code);
const struct language *language_at(size_t i);
str language_code(const struct language *l); /* "es"; "" of English */
str language_tag(const struct language *l);  /* "en-US", "es-US" as documents are tagged */

str language_name(const struct language *l); /* in English: "Spanish" */
str language_own_name(const struct language *l); /* "Español" */

/* The i-th row of the table, in order of the English; false past the last. */
struct word_row { const char *english, *other; };
bool language_row(const struct language *l, size_t i, struct word_row *out);
/* Whether the table has it, be it that both are alike. */
bool language_has(const struct language *l, str english);

/* The text for `english`, or `english` itself when the table does not have it. `word` is
 * for literals, word_str for what is found in a table of words or in a source. */
str word(const struct language *l, const char *english);
str word_str(const struct language *l, str english);

/* Marks a literal that reaches word_str by way of a table. */
#define WORD(literal) STR(literal)

/* Patterns as in base/buf.h. */
str word_format(struct arena *a, const struct language *l, const char *english, ...)
    __attribute__((format(printf, 3, 4)));
void word_addf(struct buf *b, const struct language *l, const char *english, ...)
    __attribute__((format(printf, 3, 4)));
void word_addv(struct buf *b, const struct language *l, const char *english, va_list *ap);

#endif
