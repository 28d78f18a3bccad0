/* check/figures.h - the figures of a running text: what must be alike in two languages.
 *
 * A figure is a word with a digit in it ("1/2", "22-1/2", "E7018", "SM-04", "1910.133"),
 * with the unit behind a number where one stands there ("1/2 in", "8 °C", "40 %"). Number
 * words ("two") are words. "In" between a whole number and a word may be no inch ("1 to 12
 * in order"): such a figure is also like the number alone. */
#ifndef CHECK_FIGURES_H
#define CHECK_FIGURES_H

#include "base/arena.h"
#include "base/text.h"

struct figure {
	str text;
	bool soft;               /* the unit may be the word "in" */
};

struct figures {
	struct figure *v;        /* sorted by bytes once they are compared */
	size_t n, cap;
};

void figures_add(struct arena *a, struct figures *f, str text);
void figures_add_para(struct arena *a, struct figures *f, const struct para *p);
void figures_add_prose(struct arena *a, struct figures *f, const struct prose *p);

/* What only one of the two has, each as often as it has it more; true when there is
 * nothing. Sorts both. */
bool figures_differ(struct arena *a, struct figures *x, struct figures *y,
    struct figures *only_x, struct figures *only_y);

/* "3/8 in, 40 %, ..." of the first few. */
str figures_list(struct arena *a, const struct figures *f);

#endif
