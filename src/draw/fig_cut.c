/* Cut maps. A plate is shortened across the weld by break lines; along the weld, and
 * round a pipe, everything is to scale. What is thrown away is hatched on a plate, what is
 * kept is hatched on a pipe. */
#include "draw/fig_cut.h"

#include "base/buf.h"
#include "draw/fig_section.h"
#include "draw/geom.h"

#include <math.h>

#define HALF_PT 28.0             /* of the plate across the weld, on paper */
#define WELD_PT 6.0              /* half of the weld, on paper */
#define TICK_PT 5.0
#define SLACK_MM 1e-6
#define CIRCLE_STEPS 72
#define ARC_STEPS 8

static bool is_pipe(const struct fig_cut *k)
{
	return fig_given(k->od_mm);
}

static double round_mm(const struct fig_cut *k)
{
	return GEOM_PI * k->od_mm;
}

/* Whether strip b begins before a ends; the last of a pipe meets the first again. */
static bool strips_meet(const struct fig_cut *k)
{
	for (size_t i = 0; i + 1 < k->nstrips; i++)
		if (k->strips[i].to_mm > k->strips[i + 1].from_mm + SLACK_MM)
			return true;
	return is_pipe(k) && k->strips[k->nstrips - 1].to_mm - round_mm(k) >
	    k->strips[0].from_mm + SLACK_MM;
}

static str strips_fault(const struct fig_cut *k)
{
	if (k->nstrips == 0 || k->nstrips > FIG_CUT_STRIPS)
		return WORD("no strips, or more than 8");
	for (size_t i = 0; i < k->nstrips; i++)
		if (!(k->strips[i].to_mm > k->strips[i].from_mm))
			return WORD("a strip without a width");
	if (strips_meet(k))
		return WORD("the strips do not fit beside one another");
	if (!is_pipe(k) && (k->strips[0].from_mm < k->discard_mm - SLACK_MM ||
	    k->strips[k->nstrips - 1].to_mm > k->length_mm - k->discard_mm + SLACK_MM))
		return WORD("the strips do not fit between the ends that are cut off");
	return (str){ 0 };
}

str fig_cut_fault(const struct fig_cut *k)
{
	if (is_pipe(k) && (!fig_given(k->wall_mm) || k->wall_mm * 2 >= k->od_mm))
		return WORD("the wall is missing, or thicker than the pipe");
	if (!is_pipe(k) && !fig_given(k->length_mm))
		return WORD("the length is not given");
	return strips_fault(k);
}

/* ---- plate ---- */

static void add_piece(struct section *s, double from, double to, double half,
    double hatch_deg)
{
	struct section_member *m = section_plate(s, hatch_deg);

	section_corner(m, from, -half);
	section_corner(m, from, half);
	section_break(m);
	section_corner(m, to, half);
	section_corner(m, to, -half);
	section_break(m);
}

static void add_weld(struct section *s, double half_length, double half)
{
	struct section_member *m = section_plate(s, 90);

	section_corner(m, -half_length, -half);
	section_corner(m, half_length, -half);
	section_corner(m, half_length, half);
	section_corner(m, -half_length, half);
}

static void add_row(struct section *s, double from, double to, double y, str label)
{
	section_dim(s, (struct section_dim){ .kind = SECTION_LEVEL, .side = SECTION_TOP,
		.near = true, .a = { from, y }, .b = { to, y }, .label = label });
}

static void add_drop(struct section *s, double x, double y, str label)
{
	section_dim(s, (struct section_dim){ .kind = SECTION_DROP, .a = { x, y },
		.label = label });
}

static void add_strip(struct section *s, const struct fig_strip *t, double half,
    double high)
{
	double from = t->from_mm - half, to = t->to_mm - half;

	section_rule(s, (pt){ from, -high }, (pt){ from, high }, false);
	section_rule(s, (pt){ to, -high }, (pt){ to, high }, false);
	add_row(s, from, to, high, t->label_width);
	add_drop(s, (from + to) / 2, -high, t->label);
}

static void add_ends(struct section *s, const struct fig_cut *k, double half, double high)
{
	double hatch = k->label_ends.n ? NAN : 45;

	add_piece(s, -half, -half + k->discard_mm, high, hatch);
	add_piece(s, half - k->discard_mm, half, high, hatch);
	add_row(s, -half, -half + k->discard_mm, high, k->label_discard);
	add_row(s, half - k->discard_mm, half, high, k->label_discard);
	add_drop(s, half - k->discard_mm / 2, -high, k->label_ends);
}

static void build_plate(struct section *s, const struct fig_cut *k, double mm_pt)
{
	double half = k->length_mm / 2, high = HALF_PT * mm_pt, weld = WELD_PT * mm_pt;

	add_piece(s, -half + k->discard_mm, half - k->discard_mm, high, NAN);
	if (fig_given(k->discard_mm))
		add_ends(s, k, half, high);
	add_weld(s, half, weld);
	for (size_t i = 0; i < k->nstrips; i++)
		add_strip(s, &k->strips[i], half, high);
	if (k->restart) {
		double x = k->restart_mm;

		section_rule(s, (pt){ x, -weld * 1.7 }, (pt){ x, weld * 1.7 }, false);
		add_drop(s, x, -weld * 1.7, word(k->language, "stop and restart here"));
	}
	section_level(s, SECTION_TOP, (pt){ -half, high }, (pt){ half, high },
	    k->label_length);
}

/* ---- pipe ---- */

/* From 12 clockwise. */
static pt on_clock(const struct fig_cut *k, double r, double along_mm)
{
	return pt_polar(r, 90 - 360 * along_mm / round_mm(k));
}

static void add_circle(struct section *s, double r)
{
	struct section_member *m = section_plate(s, NAN);

	for (int i = 0; i < CIRCLE_STEPS; i++) {
		pt p = pt_polar(r, 360.0 * i / CIRCLE_STEPS);

		section_corner(m, p.x, p.y);
	}
}

static void add_sector(struct section *s, const struct fig_cut *k,
    const struct fig_strip *t)
{
	struct section_member *m = section_plate(s, 45);
	double r = k->od_mm / 2, wide = t->to_mm - t->from_mm;

	for (int i = 0; i <= ARC_STEPS; i++) {
		pt p = on_clock(k, r, t->from_mm + wide * i / ARC_STEPS);

		section_corner(m, p.x, p.y);
	}
	for (int i = ARC_STEPS; i >= 0; i--) {
		pt p = on_clock(k, r - k->wall_mm, t->from_mm + wide * i / ARC_STEPS);

		section_corner(m, p.x, p.y);
	}
}

/* A leader where the figure 3 or 9 would stand takes its place: the label says the hour. */
static void add_pointer(struct section *s, pt to, double clear, str label)
{
	pt want = { to.x, to.y * 1.25 };

	if (fabs(to.y) < clear) {
		s->no_3 |= to.x > 0;
		s->no_9 |= to.x < 0;
	}
	section_pointer(s, to.x < 0 ? SECTION_LEFT : SECTION_RIGHT, to, want, label);
}

static void build_pipe(struct section *s, const struct fig_cut *k, double mm_pt)
{
	double r = k->od_mm / 2, tick = TICK_PT * mm_pt;

	add_circle(s, r);
	add_circle(s, r - k->wall_mm);
	for (size_t i = 0; i < k->nstrips; i++) {
		const struct fig_strip *t = &k->strips[i];
		pt to = on_clock(k, r, (t->from_mm + t->to_mm) / 2);

		add_sector(s, k, t);
		add_pointer(s, to, 9 * mm_pt, t->label);
	}
	for (int i = 0; i < 4; i++) {
		pt u = pt_polar(1, 90 * i);

		section_rule(s, pt_mul(u, r), pt_mul(u, r + tick), false);
	}
	s->clock_mm = r + tick;
}

static void build(struct section *s, const void *data, struct section_frame f)
{
	const struct fig_cut *k = data;

	if (is_pipe(k))
		build_pipe(s, k, f.mm_pt);
	else
		build_plate(s, k, f.mm_pt);
}

bool fig_cut_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_cut *k)
{
	struct fig_fit fit = { .build = build, .data = k, .position = k->note,
		.language = k->language, .small = true };
	str why = fig_cut_fault(k);

	if (why.n == 0 && fig_fit_draw(c, f, area, &fit))
		return true;
	return fig_refuse(c, f, area, k->language, why.n > 0 ? why : FIG_NO_ROOM);
}

str fig_cut_words(struct arena *a, const struct fig_cut *k)
{
	const struct language *l = k->language;
	struct buf b = { .arena = a };

	buf_add(&b, is_pipe(k) ? word(l, "Cut map, seen from the end of the pipe")
	                       : word(l, "Cut map, seen from above"));
	if (k->label_length.n)
		word_addf(&b, l, ", %.*s long", STR_ARG(k->label_length));
	if (k->note.n)
		buf_addf(&b, ", %.*s", STR_ARG(k->note));
	if (fig_given(k->discard_mm) && k->label_discard.n)
		word_addf(&b, l, "; %.*s cut off at each end", STR_ARG(k->label_discard));
	if (k->nstrips)
		buf_add(&b, is_pipe(k) ? word(l, ". From 12 on:") : word(l, ". From the left:"));
	for (size_t i = 0; i < k->nstrips; i++)
		buf_addf(&b, "%s %.*s", i ? ";" : "", STR_ARG(k->strips[i].label));
	if (k->label_ends.n)
		buf_addf(&b, "; %.*s", STR_ARG(k->label_ends));
	if (k->restart)
		word_addf(&b, l, "; stop and restart: %.*s", STR_ARG(k->label_restart));
	buf_addc(&b, '.');
	return buf_str(&b);
}
