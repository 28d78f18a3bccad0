/* Cut maps: drawn to the scale that they tell, strips where reckon/strips.h puts them, and
 * those of the demo's own sheets. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "cli/run.h"
#include "draw/dim.h"
#include "draw/fig_cut.h"
#include "figure_probe.h"
#include "reckon/strips.h"
#include "sheets/cut_map.h"
#include "sheets/weld_position.h"
#include "sheets/weld_symbol.h"

#define IN 25.4
#define S(text) { "" text, sizeof(text) - 1 }

static int begin(void **state)
{
	static struct run run;
	const struct options o = { .folder = "curriculum" };

	*state = &run;
	return run_begin(&run, &o) ? -1 : 0;
}

static int end(void **state)
{
	run_end(*state);
	return 0;
}

static const rect wide = { 60, 70, 468, 230 };

static struct figure_probe *draw(struct run *r, const struct fig_cut *k, bool *ok)
{
	struct figure_probe *p = figure_probe_new(r->arena, r->faces);

	*ok = fig_cut_draw(&p->canvas, r->faces, wide, k);
	canvas_page_end(&p->canvas);
	return p;
}

static void near(double got, double want, double within)
{
	if (!(fabs(got - want) <= within))
		fail_msg("%.5f, not %.5f", got, want);
}

static struct fig_strip plate_strip(size_t i, size_t n, double width_mm)
{
	struct strip s = strip_on_plate(i, n, 8 * IN, width_mm, IN);

	return (struct fig_strip){ s.from_mm, s.to_mm, i ? (str)S("root bend")
	                                                 : (str)S("face bend"),
		S("1-1/2 in [38.1 mm]") };
}

/* Upright strokes of 1.25 pt: the cuts, in the order of the strips. */
static size_t cuts(const struct figure_probe *p, double *x)
{
	size_t n = 0;

	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *k = &p->path[i];

		if (k->n == 2 && k->ink.stroke_pt == 1.25 &&
		    k->s[0].p[0].x == k->s[1].p[0].x &&
		    fabs(k->s[0].p[0].y - k->s[1].p[0].y) > 30)
			x[n++] = k->s[0].p[0].x;
	}
	return n;
}

/* Extent of an outline from left to right. */
static void span(const struct figure_path *k, double *lo, double *hi)
{
	*lo = INFINITY;
	*hi = -INFINITY;
	for (size_t i = 0; i < k->n; i++) {
		if (k->s[i].op == SEG_CLOSE)
			continue;
		*lo = fmin(*lo, k->s[i].p[0].x);
		*hi = fmax(*hi, k->s[i].p[0].x);
	}
}

static void plate_to_scale(void **state)
{
	struct fig_strip v[2] = { plate_strip(0, 2, 1.5 * IN), plate_strip(1, 2, 1.5 * IN) };
	struct fig_cut k = { .length_mm = 8 * IN, .discard_mm = IN, .strips = v, .nstrips = 2,
		.label_length = S("8 in [203.2 mm]"), .label_discard = S("1 in [25.4 mm]"),
		.restart = true, .note = S("3G up") };
	double x[8], scale, left = INFINITY, right = -INFINITY, lo, hi;
	struct figure_probe *p;
	bool ok;

	p = draw(*state, &k, &ok);
	assert_true(ok);
	figure_keeps_promises(p, wide);
	scale = figure_told_scale(p) * PT_MM;
	for (size_t i = 0; i < p->npaths; i++)
		if (p->path[i].ink.stroke_pt == DIM_OUTLINE_PT && !p->path[i].ink.fill) {
			span(&p->path[i], &lo, &hi);
			left = fmin(left, lo);
			right = fmax(right, hi);
		}
	near((right - left) / scale, 8 * IN, 0.01);
	assert_int_equal(cuts(p, x), 4);
	for (size_t i = 0; i < 2; i++) {
		struct strip s = strip_on_plate(i, 2, 8 * IN, 1.5 * IN, IN);

		near((x[2 * i] - left) / scale, s.from_mm, 0.01);
		near((x[2 * i + 1] - left) / scale, s.to_mm, 0.01);
	}
	assert_true(figure_has_text(p, "face bend\n"));
	assert_true(figure_has_text(p, "stop and restart here\n"));
}

/* Middle of a hatched sector as degrees clockwise from the top of the pipe. */
static double sector_deg(const struct figure_path *k, pt center)
{
	pt a = k->s[0].p[0], b = k->s[8].p[0];
	double x = (a.x + b.x) / 2 - center.x, y = (a.y + b.y) / 2 - center.y;
	double deg = atan2(x, -y) * 180 / 3.14159265358979;

	return deg < 0 ? deg + 360 : deg;
}

static void pipe_by_the_clock(void **state)
{
	struct fig_strip v[6];
	struct fig_cut k = { .od_mm = 8.625 * IN, .wall_mm = 0.322 * IN, .strips = v,
		.nstrips = 6 };
	double scale, lo, hi;
	struct figure_probe *p;
	size_t found = 0;
	pt center;
	bool ok;

	for (size_t i = 0; i < 6; i++) {
		struct strip s = strip_on_pipe(i, 6, k.od_mm, IN, 30);

		v[i] = (struct fig_strip){ s.from_mm, s.to_mm, S("tensile 1 at 3:00, 6.77 in "
		    "[172 mm]"), { 0 } };
	}
	p = draw(*state, &k, &ok);
	assert_true(ok);
	figure_keeps_promises(p, wide);
	scale = figure_told_scale(p) * PT_MM;
	span(&p->path[0], &lo, &hi);
	near((hi - lo) / scale, 8.625 * IN, 0.1);
	center = (pt){ (lo + hi) / 2, p->path[0].s[0].p[0].y };
	for (size_t i = 0; i < p->npaths; i++) {
		const struct figure_path *s = &p->path[i];

		/* Nine points on each face of the wall, and the closing. */
		if (s->n != 19 || s->ink.stroke_pt != DIM_OUTLINE_PT)
			continue;
		near(sector_deg(s, center), strip_on_pipe(found, 6, k.od_mm, IN, 30).center_deg,
		    0.2);
		near(hypot(s->s[0].p[0].x - s->s[8].p[0].x, s->s[0].p[0].y - s->s[8].p[0].y) /
		    scale, IN, 0.1);
		found++;
	}
	assert_int_equal(found, 6);
	/* Two strips stand at 3 and 9, and their labels say so. */
	assert_true(figure_has_text(p, "12\n") && figure_has_text(p, "\n6\n"));
	assert_false(figure_has_text(p, "\n3\n") || figure_has_text(p, "\n9\n"));
	/* With six labels of two lines the pipe is no smaller than an eighth. */
	assert_true(figure_told_scale(p) >= 0.125 - 1e-9);
	k.nstrips = 1;
	p = draw(*state, &k, &ok);
	for (const char *const *h = (const char *const[]){ "12\n", "3\n", "6\n", "9\n", NULL };
	     *h; h++)
		assert_true(figure_has_text(p, *h));
}

static void what_does_not_fit_is_refused(void **state)
{
	struct fig_strip v[2] = { plate_strip(0, 2, 1.5 * IN), plate_strip(1, 2, 1.5 * IN) };
	struct fig_cut k = { .length_mm = 8 * IN, .discard_mm = IN, .strips = v,
		.nstrips = 2 };
	struct figure_probe *p;
	bool ok;

	assert_int_equal(fig_cut_fault(&k).n, 0);
	/* At the limit: strips may touch each other and the ends. */
	v[0].from_mm = IN;
	v[0].to_mm = v[1].from_mm;
	assert_int_equal(fig_cut_fault(&k).n, 0);
	v[0].from_mm = IN - 0.1;
	p = draw(*state, &k, &ok);
	assert_false(ok);
	assert_true(figure_has_text(p, "no drawing:"));
	v[0].from_mm = IN;
	v[0].to_mm = v[1].from_mm + 0.1;
	assert_true(fig_cut_fault(&k).n > 0);
	k.od_mm = 2.375 * IN;
	k.wall_mm = 0.2 * IN;
	v[0] = (struct fig_strip){ 0, 50, S("a"), { 0 } };
	v[1] = (struct fig_strip){ 150, 150 + 50, S("b"), { 0 } }; /* round: 189.5 mm */
	assert_true(fig_cut_fault(&k).n > 0);
	v[1].to_mm = 189;
	assert_int_equal(fig_cut_fault(&k).n, 0);
}

/* ---- from the demo ---- */

static const struct assignment *find(const struct run *r, const char *id)
{
	for (size_t i = 0; i < r->model->nassignments; i++)
		if (str_eq(r->model->assignments[i].id, str_of(id)))
			return &r->model->assignments[i];
	fail_msg("no %s", id);
	return NULL;
}

static const struct joint_block *joint_of(const struct assignment *x, size_t which)
{
	for (size_t i = 0; i < x->ndrawings; i++)
		if (x->drawings[i].kind == DRAWING_JOINT && which-- == 0)
			return &x->drawings[i].joint;
	fail_msg("no drawing");
	return NULL;
}

static bool map_of(struct run *r, const char *id, size_t drawing, uint32_t weld,
    struct fig_cut *out)
{
	const struct assignment *x = find(r, id);

	return cut_map(r->arena, NULL, x, joint_of(x, drawing), weld, out);
}

static void says(str label, const char *word)
{
	if (str_find(label, str_of(word), 0) == label.n)
		fail_msg("\"%.*s\" does not say \"%s\"", STR_ARG(label), word);
}

static void demo_plate(void **state)
{
	struct fig_cut k;

	assert_true(map_of(*state, "GP-03", 0, 0, &k));
	assert_int_equal(k.nstrips, 2);
	for (size_t i = 0; i < 2; i++) {
		struct strip s = strip_on_plate(i, 2, 8 * IN, 1.5 * IN, IN);

		near(k.strips[i].from_mm, s.from_mm, 1e-6);
		near(k.strips[i].to_mm, s.to_mm, 1e-6);
	}
	says(k.strips[0].label, "face bend, 2 to 3-1/2 in");
	says(k.strips[1].label, "root bend, 4-1/2 to 6 in");
	/* Its lines name the places: one strip through the restart at mid-length. */
	assert_true(map_of(*state, "GP-05", 0, 1, &k));
	near((k.strips[1].from_mm + k.strips[1].to_mm) / 2, 4 * IN, 1e-6);
	near(k.strips[1].to_mm - k.strips[1].from_mm, IN, 1e-6);
	/* Side bends are 3/8 in wide, on sixteenths. */
	assert_true(map_of(*state, "CP-04", 0, 0, &k));
	near(k.strips[0].to_mm - k.strips[0].from_mm, 0.375 * IN, 1e-6);
	near(fmod(k.strips[0].from_mm / IN * 16 + 1e-9, 1), 0, 1e-6);
}

static void demo_pipe(void **state)
{
	static const char *const api[] = { "root bend 1 at 1:00", "tensile 1 at 3:00",
		"nick-break 1 at 5:00", "root bend 2 at 7:00", "tensile 2 at 9:00",
		"nick-break 2 at 11:00" };
	static const char *const five[] = { "face bend 1 at 1:30", "root bend 1 at 4:30",
		"face bend 2 at 7:30", "root bend 2 at 10:30" };
	struct fig_cut k;

	/* As the steps of these sheets say in words. */
	assert_true(map_of(*state, "PP-04", 0, 0, &k));
	assert_int_equal(k.nstrips, 4);
	for (size_t i = 0; i < 4; i++) {
		struct strip s = strip_on_pipe(i, 4, 6.625 * IN, 1.5 * IN, 45);

		says(k.strips[i].label, five[i]);
		near(k.strips[i].from_mm, s.from_mm, 1e-3);
		near(k.strips[i].to_mm, s.to_mm, 1e-3);
	}
	assert_true(map_of(*state, "PP-22", 0, 0, &k));
	assert_int_equal(k.nstrips, 6);
	for (size_t i = 0; i < 6; i++) {
		says(k.strips[i].label, api[i]);
		near(k.strips[i].to_mm - k.strips[i].from_mm, IN, 1e-6);
	}
	/* One face and one root of A, a quarter apart; strips of 2 in pipe as the line says. */
	assert_true(map_of(*state, "PP-06", 0, 0, &k));
	assert_int_equal(k.nstrips, 2);
	says(k.strips[1].label, "root bend at 4:30");
	assert_true(map_of(*state, "PP-20", 1, 1, &k));
	assert_int_equal(k.nstrips, 2);
	near(k.strips[0].to_mm - k.strips[0].from_mm, 0.75 * IN, 1e-6);
}

static void demo_without_a_map(void **state)
{
	struct fig_cut k;

	assert_false(map_of(*state, "SM-04", 0, 0, &k)); /* broken whole */
	assert_false(map_of(*state, "PP-02", 0, 0, &k)); /* turned: no hours */
	assert_false(map_of(*state, "GM-04", 0, 0, &k)); /* a macro alone */
	assert_true(map_of(*state, "SM-23", 0, 0, &k));  /* macro and break */
	assert_int_equal(k.nstrips, 1);
	near(k.strips[0].from_mm, IN, 1e-6);
	near(k.strips[0].to_mm, 7 * IN, 1e-6);
}

static bool symbol_of(struct run *r, const char *id, size_t drawing, struct fig_symbol *s)
{
	const struct assignment *x = find(r, id);

	return weld_symbol(r->arena, NULL, x, joint_of(x, drawing), s);
}

static void demo_symbols(void **state)
{
	struct fig_symbol s;

	assert_true(symbol_of(*state, "SM-04", 0, &s));
	assert_int_equal(s.arrow.weld, FIG_WELD_FILLET);
	assert_int_equal(s.other.weld, FIG_WELD_NONE);
	assert_true(str_eq(s.arrow.size, STR("5/16")) && str_eq(s.tail[0], STR("SMAW")));
	assert_int_equal(s.arrow.length.n, 0); /* from end to end of an 8 in web */
	assert_true(symbol_of(*state, "GP-03", 0, &s));
	assert_int_equal(s.arrow.weld, FIG_WELD_V);
	assert_int_equal(s.other.weld, FIG_WELD_STRIP);
	assert_true(str_eq(s.arrow.root_opening, STR("1/4")));
	assert_true(str_eq(s.arrow.angle, STR("45°")) && !s.arrow.size.n);
	assert_true(str_eq(s.tail[1], STR("backing 1/4 x 1")));
	/* Two bevels of 37-1/2 make 75 included; the tolerance is no part of a symbol. */
	assert_true(symbol_of(*state, "PP-03", 0, &s));
	assert_true(str_eq(s.arrow.angle, STR("75°")));
	assert_true(str_eq(s.arrow.root_opening, STR("1/8")));
	assert_int_equal(s.other.weld, FIG_WELD_NONE);
	/* Both sides of a square butt; not that of 1/4 in plate welded from one side. */
	assert_true(symbol_of(*state, "FB-03", 0, &s));
	assert_int_equal(s.other.weld, FIG_WELD_SQUARE);
	assert_int_equal(s.arrow.root_opening.n, 0); /* a range */
	assert_false(symbol_of(*state, "SM-02", 3, &s));
	/* The edges of an open corner form a V; a branch has a fillet over its bevel, all
	 * around; a gouge is no weld. */
	assert_true(symbol_of(*state, "GM-02", 4, &s));
	assert_int_equal(s.arrow.weld, FIG_WELD_V);
	assert_true(str_eq(s.arrow.angle, STR("90°")));
	assert_true(symbol_of(*state, "PP-05", 0, &s));
	assert_int_equal(s.arrow.weld, FIG_WELD_BEVEL);
	assert_true(str_eq(s.arrow.fillet_over, STR("1/8")));
	assert_true(s.all_around);
	assert_true(symbol_of(*state, "SM-25", 2, &s));
	assert_int_equal(s.arrow.weld, FIG_WELD_FLARE_BEVEL);
	assert_false(symbol_of(*state, "CP-02", 0, &s));
}

static void demo_positions(void **state)
{
	struct run *r = *state;
	struct fig_position p;
	const struct assignment *x = find(r, "GM-03");

	assert_true(weld_position(r->arena, NULL, x, joint_of(x, 0), 1, &p));
	assert_int_equal(p.place, FIG_3F);
	assert_int_equal(p.travel, FIG_TRAVEL_DOWN);
	assert_true(str_eq(p.label, STR("B: 3F down")));
	x = find(r, "PP-22");
	assert_true(weld_position(r->arena, NULL, x, joint_of(x, 0), 0, &p));
	assert_int_equal(p.members, FIG_MEMBERS_PIPE);
	assert_true(str_eq(fig_position_iso(&p), STR("PJ")));
	x = find(r, "PP-05");
	assert_false(weld_position(r->arena, NULL, x, joint_of(x, 0), 0, &p));
}

/* The members of the sketch of one weld of plate; FIG_MEMBERS_COUNT when there is none. */
static enum fig_members sketch_of(struct run *r, enum joint joint, uint32_t preparation,
    enum position position)
{
	struct weld w = { .letter = 'A', .joint = joint };
	struct joint_block j = { .weld = 0, .joint = joint, .preparation = preparation };
	struct assignment x = { .welds = &w, .nwelds = 1 };
	struct fig_position p;

	w.at.position = position;
	return weld_position(r->arena, NULL, &x, &j, 0, &p) ? p.members : FIG_MEMBERS_COUNT;
}

/* A butt is sketched whatever its edges; a groove in a tee or corner is another sketch than
 * their fillet, which a fillet position keeps. */
static void positions_of_prepared_edges(void **state)
{
	struct run *r = *state;

	assert_int_equal(sketch_of(r, JOINT_BUTT, PREPARATION_DOUBLE_V, POSITION_3G),
	    FIG_MEMBERS_BUTT);
	assert_int_equal(sketch_of(r, JOINT_CORNER, PREPARATION_V, POSITION_1G),
	    FIG_MEMBERS_CORNER_GROOVE);
	assert_int_equal(sketch_of(r, JOINT_TEE, PREPARATION_BEVEL, POSITION_2G),
	    FIG_MEMBERS_TEE_GROOVE);
	assert_int_equal(sketch_of(r, JOINT_TEE, PREPARATION_NONE, POSITION_2G),
	    FIG_MEMBERS_COUNT);
	assert_int_equal(sketch_of(r, JOINT_TEE, PREPARATION_FLARE_BEVEL, POSITION_4G),
	    FIG_MEMBERS_FLARE);
	assert_int_equal(sketch_of(r, JOINT_BUTT, PREPARATION_FLARE_V, POSITION_2G),
	    FIG_MEMBERS_FLARE_V);
	assert_int_equal(sketch_of(r, JOINT_EDGE, PREPARATION_NONE, POSITION_3G),
	    FIG_MEMBERS_EDGE);
	assert_int_equal(sketch_of(r, JOINT_EDGE, PREPARATION_V, POSITION_2F),
	    FIG_MEMBERS_COUNT);
	assert_int_equal(sketch_of(r, JOINT_BRANCH, PREPARATION_NONE, POSITION_2F),
	    FIG_MEMBERS_COUNT);
	assert_int_equal(sketch_of(r, JOINT_TEE, PREPARATION_BEVEL, POSITION_2F),
	    FIG_MEMBERS_TEE);
	assert_int_equal(sketch_of(r, JOINT_CORNER, PREPARATION_NONE, POSITION_FLAT),
	    FIG_MEMBERS_CORNER);
}

/* Why nothing is drawn: of a branch another reason than of a fillet in a groove's place. */
static void reasons_for_no_sketch(void **state)
{
	struct weld w = { .letter = 'A' };
	struct joint_block j = { .weld = 0, .joint = JOINT_BRANCH };
	struct assignment x = { .welds = &w, .nwelds = 1 };

	(void)state;
	w.at.position = POSITION_2F;
	assert_true(str_starts_nocase(weld_position_fault(&x, &j, 0), STR("no table tells how a "
	    "branch")));
	j.joint = JOINT_TEE;
	assert_true(str_starts_nocase(weld_position_fault(&x, &j, 0), STR("no table tells how "
	    "this joint")));
	/* A gouge has no position that a table tells; a position that is not given is reported. */
	j.joint = JOINT_U_GROOVE;
	assert_int_equal(weld_position_fault(&x, &j, 0).n, 0);
	j.joint = JOINT_TEE;
	w.at.position = POSITION_COUNT;
	assert_int_equal(weld_position_fault(&x, &j, 0).n, 0);
}

/* Strips that a root-bend line takes from a weld 30 in long; 0: no map. */
static size_t strips_of(struct run *r, const char *line, char letter, uint32_t welds)
{
	struct criterion c = { .name = S("Root bend"), .text = str_of(line) };
	struct weld w[2] = { { .letter = letter, .joint = JOINT_SINGLE_V },
		{ .letter = 'B', .joint = JOINT_SINGLE_V } };
	struct joint_block j = { .weld = 0, .joint = JOINT_SINGLE_V,
		.length = { .kind = QUANTITY_LENGTH, .lo = 30 * IN, .hi = 30 * IN } };
	struct assignment x = { .welds = w, .nwelds = welds, .criteria = &c, .ncriteria = 1 };
	struct fig_cut k;

	w[0].at.position = w[1].at.position = POSITION_1G;
	return cut_map(r->arena, NULL, &x, &j, 0, &k) ? k.nstrips : 0;
}

static void counts_as_they_are_written(void **state)
{
	struct run *r = *state;

	assert_int_equal(strips_of(r, "2, D1.1-2020, plunger 1-1/2 in", 0, 1), 2);
	assert_int_equal(strips_of(r, "two of A, D1.1-2020", 0, 1), 2);
	assert_int_equal(strips_of(r, "3, one of A and two of B, ASME IX-2023", 'A', 2), 1);
	assert_int_equal(strips_of(r, "2 of B, D1.1-2020", 'A', 2), 0);
	/* Not told, or not for which weld, or more than a map shows. */
	assert_int_equal(strips_of(r, "D1.1-2020, plunger 2 in", 0, 1), 0);
	assert_int_equal(strips_of(r, "2, D1.1-2020", 'A', 2), 0);
	assert_int_equal(strips_of(r, "8, D1.1-2020", 0, 1), 8);
	assert_int_equal(strips_of(r, "9, D1.1-2020", 0, 1), 0);
	/* Wider strips as the line says, until they do not fit. */
	assert_int_equal(strips_of(r, "8, D1.1-2020; strips 3 in wide", 0, 1), 8);
	assert_int_equal(strips_of(r, "8, D1.1-2020; strips 3-1/2 in wide", 0, 1), 0);
}

/* Every symbol, position and map that the demo prints keeps what figures promise. */
static void demo_pictures_fit(void **state)
{
	const rect pair = { 40, 40, 229, 116 }, row = { 40, 40, 468, 116 };
	struct run *r = *state;
	size_t symbols = 0, maps = 0;

	for (size_t i = 0; i < r->model->nassignments; i++) {
		const struct assignment *x = &r->model->assignments[i];

		for (size_t k = 0; k < x->ndrawings; k++) {
			const struct joint_block *j = &x->drawings[k].joint;
			struct figure_probe *p = figure_probe_new(r->arena, r->faces);
			struct fig_symbol s;
			struct fig_cut c;
			bool ok;

			if (x->drawings[k].kind != DRAWING_JOINT)
				continue;
			if (weld_symbol(r->arena, NULL, x, j, &s)) {
				/* A long tail takes the whole width of a sheet. */
				rect room = fig_symbol_draw(&p->canvas, r->faces, pair, &s) ? pair
				                                                            : row;

				p = figure_probe_new(r->arena, r->faces);
				assert_true(fig_symbol_draw(&p->canvas, r->faces, room, &s));
				figure_keeps_promises(p, room);
				symbols++;
			}
			canvas_page_end(&p->canvas);
			if (x->nwelds && cut_map(r->arena, NULL, x, j, j->weld == NONE ? 0 : j->weld, &c)) {
				p = draw(r, &c, &ok);
				assert_true(ok);
				figure_keeps_promises(p, wide);
				maps++;
			}
		}
	}
	assert_true(symbols > 50);
	assert_true(maps > 20);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(plate_to_scale),
		cmocka_unit_test(pipe_by_the_clock),
		cmocka_unit_test(what_does_not_fit_is_refused),
		cmocka_unit_test(demo_plate),
		cmocka_unit_test(demo_pipe),
		cmocka_unit_test(demo_without_a_map),
		cmocka_unit_test(demo_symbols),
		cmocka_unit_test(demo_positions),
		cmocka_unit_test(positions_of_prepared_edges),
		cmocka_unit_test(reasons_for_no_sketch),
		cmocka_unit_test(counts_as_they_are_written),
		cmocka_unit_test(demo_pictures_fit),
	};

	return cmocka_run_group_tests(tests, begin, end);
}
