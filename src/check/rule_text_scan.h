/* check/rule_text_scan.h - running words as words, sizes and stops. */
#ifndef CHECK_RULE_TEXT_SCAN_H
#define CHECK_RULE_TEXT_SCAN_H

#include "base/buf.h"
#include "base/text.h"
#include "units/quantity.h"

enum token_sort {
	TOKEN_WORD, TOKEN_SIZE, TOKEN_COMMA, TOKEN_COLON, TOKEN_OTHER
};

struct token {
	enum token_sort sort;
	str s;
	struct quantity q;       /* of a size */
};

struct tokens {
	struct arena *arena;
	struct token *v; size_t n, cap;
};

/* The next clause that may hold a wording; the others are passed over. */
bool clause_next(str *rest, str *clause);
/* Reads s anew into t; what stands in square brackets is left out. metal: of sheet
 * gauges. */
void tokens_read(struct tokens *t, str s, enum sheet_metal metal);
/* Whether token i is one of the words; lists end with null, case plays no part. */
bool token_is(const struct tokens *t, size_t i, const char *const *words);
/* Whether any token is one of them; or one of the part around i, between commas. */
bool clause_has(const struct tokens *t, const char *const *words);
bool part_has(const struct tokens *t, size_t i, const char *const *words);
/* The runs of a paragraph as one text, in a when there are several. */
str para_text(struct arena *a, const struct span *spans, size_t n);

#endif
