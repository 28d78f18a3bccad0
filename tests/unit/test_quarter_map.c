/* The layout of quarter maps on random quarters: boxes apart and on the page, no line
 * through a box, and what is thinned out is what other lines imply. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "page_probe.h"
#include "sheets/quarter_map.h"

#include <math.h>
#include <string.h>

/* The body of a letter page less heading and notes. */
enum { WIDTH = 504, HEIGHT = 520 };

static pt curve_at(const struct map_curve *c, double t)
{
	double u = 1 - t, k[4] = { u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t };
	pt p = { 0, 0 };

	for (int i = 0; i < 4; i++)
		p = pt_add(p, pt_mul(c->p[i], k[i]));
	return p;
}

static bool inside(rect r, pt p)
{
	const double edge = 0.01;

	return p.x > r.x + edge && p.x < r.x + r.w - edge && p.y > r.y + edge &&
	    p.y < r.y + r.h - edge;
}

static bool on_edge(rect r, pt p)
{
	return rect_holds((rect){ r.x - 0.01, r.y - 0.01, r.w + 0.02, r.h + 0.02 },
	    rect_at(p)) && !inside(r, p);
}

static void check_map(const struct quarter_map *m, const struct quarter_map_spec *s)
{
	rect page = { -0.01, -0.01, s->width_pt + 0.02, s->height_pt + 0.02 };
	size_t heads = 0;

	for (size_t i = 0; i < s->n; i++) {
		assert_true(rect_holds(page, m->boxes[i]));
		assert_true(m->boxes[i].w >= 60 && m->boxes[i].h >= 36);
		for (size_t j = 0; j < i; j++)
			assert_true(rect_apart(m->boxes[i], m->boxes[j]));
		for (size_t r = 0; r < m->nranks; r++)
			assert_true(rect_apart(m->boxes[i], m->ranks[r].label));
	}
	for (size_t k = 0; k < m->ncurves; k++) {
		bool ends = !m->curves[k].head;

		heads += m->curves[k].head;
		for (size_t i = 0; i < s->n; i++) {
			for (int t = 0; t <= 64; t++)
				assert_false(inside(m->boxes[i], curve_at(&m->curves[k], t / 64.0)));
			ends |= on_edge(m->boxes[i], m->curves[k].p[3]);
		}
		assert_true(ends);
	}
	assert_int_equal(heads, m->nlines);
}

/* Boxes reached from each, by Warshall's closure: independent of the code's own way. */
static void reach(const struct map_line *v, size_t n, uint64_t *from)
{
	memset(from, 0, MAP_BOXES * sizeof *from);
	for (size_t i = 0; i < n; i++)
		from[v[i].from] |= (uint64_t)1 << v[i].to;
	for (int k = 0; k < MAP_BOXES; k++)
		for (int i = 0; i < MAP_BOXES; i++)
			if (from[i] >> k & 1)
				from[i] |= from[k];
}

static size_t throw_lines(struct dice *d, struct map_line *v, uint32_t n, uint32_t lines)
{
	size_t k = 0;

	while (lines-- && n > 1) {
		uint32_t to = 1 + dice_roll(d, n - 1), from = dice_roll(d, to);
		bool known = false;

		for (size_t i = 0; i < k; i++)
			known |= v[i].from == from && v[i].to == to;
		if (!known)
			v[k++] = (struct map_line){ from, to };
	}
	return k;
}

static void random_quarters_are_clean(void **state)
{
	struct dice d = { 20260921 };
	unsigned fitting = 0, down = 0, thinned = 0;

	(void)state;
	for (int round = 0; round < 600; round++) {
		struct arena *a = arena_new(NULL, NULL);
		uint32_t weeks[MAP_BOXES], week = 1, n = 1 + dice_roll(&d, 18);
		struct map_line v[64];
		struct quarter_map_spec s = { .weeks = weeks, .n = n, .lines = v, .width_pt = WIDTH,
			.height_pt = HEIGHT };
		uint64_t want[MAP_BOXES], have[MAP_BOXES];
		struct quarter_map *m;

		for (uint32_t i = 0; i < n; i++)
			weeks[i] = week += dice_roll(&d, 2);
		s.nlines = throw_lines(&d, v, n, dice_roll(&d, 2 * n + 1));
		m = quarter_map_new(a, &s);
		if (m->fits)
			check_map(m, &s);
		if (m->fits && m->thinned) {
			assert_true(m->nlines < s.nlines);
			reach(v, s.nlines, want);
			reach(m->lines, m->nlines, have);
			assert_memory_equal(want, have, sizeof want);
			thinned++;
		}
		fitting += m->fits;
		down += m->fits && m->downward;
		arena_free(a);
	}
	assert_true(fitting > 400);
	assert_true(down > 30);
	assert_true(thinned > 30);
}

/* Where a piece of a line may end besides at a box: at the edge of its page, or at the end
 * of a lane beside a rank of boxes. */
static void check_pieces(const struct quarter_map *m, const struct quarter_map_spec *s)
{
	size_t heads = 0;

	for (size_t k = 0; k < m->ncurves; k++) {
		const struct map_curve *c = &m->curves[k];
		double page = floor((c->p[0].y + c->p[3].y) / 2 / s->height_pt);

		heads += c->head;
		for (int t = 0; t <= 32; t++) {
			pt at = curve_at(c, t / 32.0);

			assert_true(at.y >= page * s->height_pt - 0.01);
			assert_true(at.y <= (page + 1) * s->height_pt + 0.01);
			for (size_t i = 0; i < s->n; i++)
				assert_false(inside(m->boxes[i], at));
		}
	}
	assert_int_equal(heads, m->nlines);
}

/* Each piece that ends where a page ends goes on from there, at the same place across. */
static size_t check_turns(const struct quarter_map *m, const struct quarter_map_spec *s)
{
	size_t turns = 0;

	for (size_t k = 0; k < m->ncurves; k++) {
		pt end = m->curves[k].p[3];
		double page = end.y / s->height_pt;
		bool goes_on = false;

		if (fabs(page - round(page)) * s->height_pt > 0.01)
			continue;
		for (size_t o = 0; o < m->ncurves && !m->curves[k].head; o++)
			goes_on |= o != k && pt_length(pt_sub(m->curves[o].p[0], end)) < 0.01;
		assert_true(goes_on);
		turns++;
	}
	return turns;
}

static void maps_over_pages_are_whole(void **state)
{
	struct dice d = { 20261125 };
	size_t turns = 0, pages = 0;

	(void)state;
	for (int round = 0; round < 200; round++) {
		struct arena *a = arena_new(NULL, NULL);
		uint32_t weeks[MAP_BOXES], week = 1, n = 1 + dice_roll(&d, 18);
		struct map_line v[64];
		struct quarter_map_spec s = { .weeks = weeks, .n = n, .lines = v,
			.width_pt = WIDTH, .height_pt = 600, .zoom = 1.5, .paged = true };
		struct quarter_map *m;

		for (uint32_t i = 0; i < n; i++)
			weeks[i] = week += dice_roll(&d, 2);
		s.nlines = throw_lines(&d, v, n, dice_roll(&d, n + 1));
		m = quarter_map_new(a, &s);
		for (size_t i = 0; i < n && m->fits; i++) {
			double top = fmod(m->boxes[i].y, s.height_pt);

			assert_true(m->boxes[i].w >= 120 && m->boxes[i].h > 76);
			assert_true(top + m->boxes[i].h < s.height_pt);
			assert_true(m->boxes[i].y < (double)m->pages * s.height_pt);
		}
		if (m->fits) {
			check_pieces(m, &s);
			turns += check_turns(m, &s);
			pages += m->pages;
		}
		arena_free(a);
	}
	assert_true(turns > 100);
	assert_true(pages > 200);
}

static struct quarter_map *small_map(struct arena *a, const struct map_line *v, size_t nlines)
{
	static const uint32_t weeks[4] = { 1, 1, 2, 3 };
	const struct quarter_map_spec s = { .weeks = weeks, .n = 4, .lines = v,
		.nlines = nlines, .width_pt = WIDTH, .height_pt = HEIGHT };
	struct quarter_map *m = quarter_map_new(a, &s);

	assert_true(m->fits);
	check_map(m, &s);
	return m;
}

static void ranks_follow_the_weeks(void **state)
{
	const struct map_line v[] = { { 0, 2 }, { 2, 3 } };
	struct arena *a = arena_new(NULL, NULL);
	struct quarter_map *m = small_map(a, v, 2);

	(void)state;
	assert_int_equal(m->nranks, 3);
	assert_false(m->downward);
	assert_true(m->boxes[0].x == m->boxes[1].x);
	assert_true(m->boxes[2].x > m->boxes[1].x + m->boxes[1].w);
	assert_true(m->boxes[3].x > m->boxes[2].x + m->boxes[2].w);
	assert_int_equal(m->ranks[0].first_week, 1);
	assert_int_equal(m->ranks[2].last_week, 3);
	arena_free(a);
}

/* Five lines for four boxes may stay; the sixth is one too many, and of all six three
 * are implied. */
static void a_full_map_is_thinned(void **state)
{
	const struct map_line v[] = { { 0, 1 }, { 1, 2 }, { 2, 3 }, { 0, 2 }, { 0, 3 }, { 1, 3 } };
	struct arena *a = arena_new(NULL, NULL);
	struct quarter_map *m = small_map(a, v, 5);

	(void)state;
	assert_false(m->thinned);
	assert_int_equal(m->nlines, 5);
	m = small_map(a, v, 6);
	assert_true(m->thinned);
	assert_int_equal(m->nlines, 3);
	arena_free(a);
}

static void too_much_is_not_drawn(void **state)
{
	struct arena *a = arena_new(NULL, NULL);
	uint32_t weeks[MAP_BOXES + 1] = { 0 };
	struct map_line chain[MAP_BOXES];
	struct quarter_map_spec s = { .weeks = weeks, .n = MAP_BOXES + 1, .width_pt = WIDTH,
		.height_pt = HEIGHT };

	(void)state;
	assert_false(quarter_map_new(a, &s)->fits);
	for (uint32_t i = 0; i + 1 < 12; i++)
		chain[i] = (struct map_line){ i, i + 1 };
	s.n = 12;
	s.lines = chain;
	s.nlines = 11;
	assert_false(quarter_map_new(a, &s)->fits); /* Twelve ranks of 59 points: 708. */
	s.n = 0;
	assert_false(quarter_map_new(a, &s)->fits);
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(random_quarters_are_clean),
		cmocka_unit_test(maps_over_pages_are_whole),
		cmocka_unit_test(ranks_follow_the_weeks),
		cmocka_unit_test(a_full_map_is_thinned),
		cmocka_unit_test(too_much_is_not_drawn),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
