/* base/text.h - running text with emphasis, as CommonMark gives it.
 *
 * Prose is a list of paragraphs; a paragraph is a list of spans. Both live in
 * the arena of whoever read them and are read-only afterwards. */
#ifndef BASE_TEXT_H
#define BASE_TEXT_H

#include "base/source.h"

enum span_style { SPAN_BOLD = 1, SPAN_ITALIC = 2, SPAN_CODE = 4, SPAN_BREAK = 8 };

/* A run of one style. SPAN_BREAK: a line break is asked for before this run.
 * Soft breaks and runs of blanks arrive as one space. */
struct span {
	str text;
	unsigned style;          /* OR of span_style */
};

enum para_kind { PARA_TEXT, PARA_BULLET, PARA_STEP, PARA_SUBBULLET };

struct para {
	enum para_kind kind;
	uint32_t number;         /* of a PARA_STEP, from 1 */
	struct pos pos;          /* first character of the text */
	const struct span *spans;
	size_t nspans;
};

struct prose {
	const struct para *v;
	size_t n;
};

#endif
