/* Whether a run of pages saves its last page, or gives it more to carry. */
#include "page/flow_set.h"

/* A last page with less than this share of its height is worth trying to save. */
#define SAVED_SHARE 0.3
/* Lines that a last page should hold at least, and the height of one for its type (common
 * practice, no source). */
#define LINES_LEAST 9
#define LINE_EM 1.35
/* How early the page before it may end for that, and in which steps. */
#define EARLY_SHARE 0.4
#define EARLY_STEPS 16

struct outcome {
	unsigned pages;
	double last_pt;          /* of the last page, filling not counted */
	bool fills;              /* it is filled up anyway, with lines to write on */
};

static struct outcome outcome_of(const struct flow *f, struct flow_fit fit)
{
	struct flow t = *f;
	struct outcome o = { 0 };
	struct walk w = { 0 };

	t.fit = fit;
	t.run_page = 0;
	for (size_t n = flow_page_slots(&t); n > 0; n = flow_page_slots(&t)) {
		t.head += n;
		t.run_page++;
	}
	o.pages = t.run_page + (flow_content_slots(&t) > 0);
	for (size_t i = t.head; i < t.nslots; i++) {
		if (!t.slots[i].b)
			continue;
		walk_over(&t, &w, &t.slots[i]);
		o.fills |= t.slots[i].b->fill;
	}
	o.last_pt = w.y_pt;
	return o;
}

/* Of leaves printed on both sides only every second page saves paper; a page to write on
 * is of more use than a blank one. */
static bool saves(const struct flow *f, const struct outcome *o)
{
	return f->spec.one_sided || o->pages % 2 == 1 || !o->fills;
}

/* The page before the last ends early: the last one then has some lines more, as many as it
 * should have or, if it cannot, the most there are. */
static struct flow_fit with_company(const struct flow *f, const struct outcome *plain,
    double least_pt)
{
	struct flow_fit best = { 0 };
	double most_pt = plain->last_pt;

	for (int i = 1; i <= EARLY_STEPS && most_pt < least_pt; i++) {
		struct flow_fit fit = { .early_page = plain->pages - 1,
			.early_pt = f->height_pt * EARLY_SHARE * i / EARLY_STEPS };
		struct outcome o = outcome_of(f, fit);

		if (o.pages != plain->pages || o.last_pt <= most_pt)
			continue;
		best = fit;
		most_pt = o.last_pt;
	}
	return best;
}

struct flow_fit flow_fit_find(const struct flow *f)
{
	static const struct flow_fit ways[] = { { .tighter = 0.4 }, { .cut = true },
		{ .tighter = 0.4, .cut = true }, { .tighter = 0.4, .cut = true, .bare = true } };
	struct flow_fit plain = { 0 };
	double least_pt = LINES_LEAST * LINE_EM * f->spec.blank_type.size_pt;
	struct outcome o;

	if (!f->spec.thrifty)
		return plain;
	o = outcome_of(f, plain);
	if (o.pages < 2 || o.last_pt > f->height_pt * SAVED_SHARE)
		return plain;
	for (size_t i = 0; i < sizeof ways / sizeof *ways && saves(f, &o); i++)
		if (outcome_of(f, ways[i]).pages < o.pages)
			return ways[i];
	return o.fills || o.last_pt >= least_pt ? plain : with_company(f, &o, least_pt);
}
