/* Position sketches. ISO letters: the table of positions of the project's sources (AWS
 * test positions against ISO 6947; pairs of plates seen on pages, pipe partly memory). */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "draw/fig_position.h"

#include "draw/dim.h"
#include "draw/fig_space.h"
#include "figure_probe.h"

#define S(text) { "" text, sizeof(text) - 1 }

static struct figure_probe *draw(struct figure_bench *x, rect area,
    const struct fig_position *s, bool *ok)
{
	struct figure_probe *p = figure_probe_new(x->arena, x->faces);

	*ok = fig_position_draw(&p->canvas, x->faces, area, s);
	canvas_page_end(&p->canvas);
	return p;
}

/* 40 mm high, as wide as half a page. */
static const rect half = { 30, 40, 228, 114 };

static void every_position_is_drawn(void **state)
{
	size_t drawn = 0;

	for (enum fig_place place = 0; place < FIG_PLACE_COUNT; place++)
		for (enum fig_members m = 0; m < FIG_MEMBERS_COUNT; m++)
			for (int way = 0; way < 3; way++) {
				struct fig_position s = { place, (enum fig_travel)way, m,
					S("1G rolled"), NULL };
				bool ok;
				struct figure_probe *p = draw(*state, half, &s, &ok);

				assert_int_equal(ok, fig_position_can_draw(&s));
				if (!ok) {
					assert_true(figure_has_text(p, "no drawing:"));
					continue;
				}
				figure_keeps_promises(p, half);
				assert_true(fig_position_plain(&s).n > 0);
				assert_true(figure_has_text(p, "1G rolled\n"));
				/* The sketch fills its square one way or the other. */
				assert_true(p->left < half.x + 4 || p->top < half.y + 4);
				drawn++;
			}
	/* 9 plate places x 6 members, 5 x 7 with grooves, 4 of pipe, 4 of pipe on plate; three
	 * travels each. */
	assert_int_equal(drawn, 3 * (9 * 6 + 5 * 7 + 4 + 4));
}

/* In Spanish, whose words are longer, over the width of a page: what no half has room for
 * is drawn there. */
static void spanish_has_room(void **state)
{
	const rect wide = { 30, 40, 468, 116 };

	for (enum fig_place place = 0; place < FIG_PLACE_COUNT; place++)
		for (enum fig_members m = 0; m < FIG_MEMBERS_COUNT; m++) {
			struct fig_position s = { place, FIG_TRAVEL_NONE, m, S("1G rolled"),
				language_find(STR("es")) };
			bool ok;

			draw(*state, wide, &s, &ok);
			assert_int_equal(ok, fig_position_can_draw(&s));
		}
}

static void letters_of_iso(void **state)
{
	static const struct { enum fig_place place; int way; bool pipe; const char *letters; }
	pairs[] = {
		{ FIG_1G, 0, false, "PA" }, { FIG_2G, 0, false, "PC" }, { FIG_3G, 1, false, "PF" },
		{ FIG_3G, 2, false, "PG" }, { FIG_4G, 0, false, "PE" }, { FIG_1F, 0, false, "PA" },
		{ FIG_2F, 0, false, "PB" }, { FIG_3F, 1, false, "PF" }, { FIG_3F, 2, false, "PG" },
		{ FIG_4F, 0, false, "PD" }, { FIG_1G_ROLLED, 0, true, "PA" },
		{ FIG_2G, 0, true, "PC" }, { FIG_5G, 1, true, "PH" }, { FIG_5G, 2, true, "PJ" },
		{ FIG_6G, 1, true, "H-L045" }, { FIG_6G, 2, true, "J-L045" },
		{ FIG_3G, 0, false, "" }, { FIG_5G, 0, true, "" }, { FIG_6G, 0, true, "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
		struct fig_position s = { pairs[i].place, (enum fig_travel)pairs[i].way,
			pairs[i].pipe ? FIG_MEMBERS_PIPE : FIG_MEMBERS_BUTT, S("x"), NULL };

		assert_true(str_eq(fig_position_iso(&s), str_of(pairs[i].letters)));
	}
}

/* Arrowheads: black triangles; the first corner is the tip. Returns how many, and how far
 * the last one points up the page. */
static size_t heads(const struct figure_probe *p, double *up)
{
	size_t n = 0;

	for (size_t i = 0; i < p->npaths; i++) {
		const struct seg *s = p->path[i].s;

		if (p->path[i].n != 4 || !p->path[i].ink.fill || p->path[i].ink.fill_gray > 0 ||
		    p->path[i].ink.stroke_pt > 0)
			continue;
		*up = (s[1].p[0].y + s[2].p[0].y) / 2 - s[0].p[0].y;
		n++;
	}
	return n;
}

static void travel_points_up_or_down(void **state)
{
	static const struct { enum fig_place place; enum fig_members m; } v[] = {
		{ FIG_3G, FIG_MEMBERS_BUTT }, { FIG_3F, FIG_MEMBERS_TEE },
		{ FIG_3F, FIG_MEMBERS_LAP }, { FIG_3G, FIG_MEMBERS_TEE_GROOVE },
		{ FIG_3G, FIG_MEMBERS_FLARE_V }, { FIG_5G, FIG_MEMBERS_PIPE },
		{ FIG_6G, FIG_MEMBERS_PIPE }, { FIG_5F, FIG_MEMBERS_PIPE_ON_PLATE } };

	for (size_t i = 0; i < sizeof v / sizeof *v; i++)
		for (int way = 0; way < 3; way++) {
			struct fig_position s = { v[i].place, (enum fig_travel)way, v[i].m, S("x"),
				NULL };
			double up = 0;
			bool ok;
			size_t n = heads(draw(*state, half, &s, &ok), &up);

			assert_int_equal(n, way ? 1 : 0);
			if (way == FIG_TRAVEL_UP)
				assert_true(up > 1);
			if (way == FIG_TRAVEL_DOWN)
				assert_true(up < -1);
		}
}

static void only_a_turned_pipe_has_a_turning_arrow(void **state)
{
	struct fig_position s = { FIG_1G_ROLLED, FIG_TRAVEL_NONE, FIG_MEMBERS_PIPE, S("x"),
		NULL };
	double up;
	bool ok;

	assert_int_equal(heads(draw(*state, half, &s, &ok), &up), 1);
	s.place = FIG_2G;
	assert_int_equal(heads(draw(*state, half, &s, &ok), &up), 0);
}

/* The rod: the one stroke of 2.4 pt, drawn from the weld outward. */
static pt rod(struct figure_bench *x, enum fig_place place, enum fig_members m)
{
	struct fig_position s = { place, FIG_TRAVEL_NONE, m, S("x"), NULL };
	bool ok;
	struct figure_probe *p = draw(x, half, &s, &ok);

	for (size_t i = 0; i < p->npaths; i++)
		if (p->path[i].ink.stroke_pt == 2.4)
			return (pt){ p->path[i].s[1].p[0].x - p->path[i].s[0].p[0].x,
				p->path[i].s[1].p[0].y - p->path[i].s[0].p[0].y };
	fail_msg("no rod");
	return (pt){ 0, 0 };
}

static void the_rod_stands_on_the_side_that_is_welded(void **state)
{
	assert_true(rod(*state, FIG_1G, FIG_MEMBERS_BUTT).y < -5);
	assert_true(rod(*state, FIG_1F, FIG_MEMBERS_TEE).y < -5);
	assert_true(rod(*state, FIG_4G, FIG_MEMBERS_BUTT).y > 5);
	assert_true(rod(*state, FIG_4F, FIG_MEMBERS_TEE).y > 5);
	assert_true(rod(*state, FIG_1G, FIG_MEMBERS_TEE_GROOVE).y < -5);
	assert_true(rod(*state, FIG_4G, FIG_MEMBERS_FLARE).y > 5);
	assert_true(rod(*state, FIG_1G_ROLLED, FIG_MEMBERS_PIPE).y < -5);
}

/* A box before another, seen from the right front and above: the nearer one is in front
 * whichever is asked first. */
static void nearer_solids_are_in_front(void **state)
{
	const struct space_frame f = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
	const struct space_view w = space_view_from(30, 25);
	const struct space_prism near = { { { -2, 0 }, { -1, 0 }, { -1, 1 }, { -2, 1 } }, 4,
		.x0 = -1, .x1 = 1 };
	const struct space_prism far = { { { 1, 0 }, { 2, 0 }, { 2, 1 }, { 1, 1 } }, 4, .x0 = -1,
		.x1 = 1 };

	(void)state;
	assert_true(space_in_front(&w, &f, &near, &far));
	assert_false(space_in_front(&w, &f, &far, &near));
	assert_true(fabs(vec_dot(w.right, w.up)) < 1e-12);
	assert_true(fabs(vec_dot(w.up, w.up) - 1) < 1e-12);
	/* Up in the world is up on paper: y falls. */
	assert_true(space_point(&w, (vec){ 0, 0, 1 }).y < 0);
}

static void words_and_refusals(void **state)
{
	struct figure_bench *x = *state;
	struct fig_position s = { FIG_3G, FIG_TRAVEL_UP, FIG_MEMBERS_BUTT, S("3G up"), NULL };
	bool ok;

	assert_true(str_eq(fig_position_words(x->arena, &s), STR("Position 3G up of two plates "
	    "butted: weld axis vertical, welded upward; ISO 6947 PF.")));
	draw(x, (rect){ 0, 0, 120, 60 }, &s, &ok);
	assert_false(ok);
	s.place = FIG_6G;
	assert_false(fig_position_can_draw(&s));
	/* The plates of an open corner stand askew. */
	s = (struct fig_position){ FIG_2G, FIG_TRAVEL_NONE, FIG_MEMBERS_ROOF, S("2G"), NULL };
	assert_true(str_eq(fig_position_plain(&s), STR("horizontal, weld face to the side")));
	s.place = FIG_2F;
	assert_true(str_eq(fig_position_plain(&s), STR("horizontal fillet")));
	s = (struct fig_position){ FIG_2G, FIG_TRAVEL_NONE, FIG_MEMBERS_TEE_GROOVE, S("2G"), NULL };
	assert_true(str_eq(fig_position_words(x->arena, &s), STR("Position 2G of a tee with a "
	    "groove: base level, web upright, groove to the side; ISO 6947 PC.")));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_position_is_drawn),
		cmocka_unit_test(spanish_has_room),
		cmocka_unit_test(letters_of_iso),
		cmocka_unit_test(travel_points_up_or_down),
		cmocka_unit_test(only_a_turned_pipe_has_a_turning_arrow),
		cmocka_unit_test(the_rod_stands_on_the_side_that_is_welded),
		cmocka_unit_test(nearer_solids_are_in_front),
		cmocka_unit_test(words_and_refusals),
	};

	return cmocka_run_group_tests(tests, figure_bench_begin, figure_bench_end);
}
