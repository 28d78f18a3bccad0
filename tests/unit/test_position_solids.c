/* The attitude of the drawn solids, measured from their corners alone: inclination of the
 * weld's axis and rotation of its face, held against the zones of positions of AWS A3.0 and
 * D1.1 (figures of production welding positions; ranges from memory): rotation 180 is face
 * straight up, 0 straight down. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "draw/fig_position_solids.h"

#include <math.h>

#define DEG (180 / 3.14159265358979323846)

static double length(vec v)
{
	return sqrt(vec_dot(v, v));
}

static const struct space_prism *weld_of(const struct position_solids *s)
{
	const struct space_prism *found = NULL;

	for (size_t i = 0; i < s->n; i++)
		if (s->prism[i].weld) {
			assert_null(found);
			found = &s->prism[i];
		}
	assert_non_null(found);
	return found;
}

/* Whether a point lies in a polygon: a ray crosses its sides an odd number of times. */
static bool is_in(const struct space_prism *p, double y, double z)
{
	bool in = false;

	for (size_t i = 0, k = p->n - 1; i < p->n; k = i++) {
		pt a = p->v[i], b = p->v[k];

		if ((a.y > z) != (b.y > z) &&
		    y < (b.x - a.x) * (z - a.y) / (b.y - a.y) + a.x)
			in = !in;
	}
	return in;
}

/* The line square to the face, in the frame: that of the sides of the weld with neither
 * metal nor weld before them, each as heavy as it is long. */
static pt face_line(const struct position_solids *s)
{
	const struct space_prism *w = weld_of(s);
	pt sum = { 0, 0 };

	for (size_t i = 0; i < w->n; i++) {
		pt a = w->v[i], b = w->v[(i + 1) % w->n];
		double dy = b.x - a.x, dz = b.y - a.y, l = sqrt(dy * dy + dz * dz);
		pt out = { dz / l, -dy / l };
		bool covered = false;

		if (is_in(w, (a.x + b.x) / 2 + out.x * 1e-3, (a.y + b.y) / 2 + out.y * 1e-3))
			out = (pt){ -out.x, -out.y };
		for (size_t k = 0; k < s->n; k++)
			covered |= &s->prism[k] != w && is_in(&s->prism[k],
			    (a.x + b.x) / 2 + out.x * 0.02, (a.y + b.y) / 2 + out.y * 0.02);
		if (!covered)
			sum = (pt){ sum.x + out.x * l, sum.y + out.y * l };
	}
	return sum;
}

struct attitude { double incline, rotation; };

static struct attitude measure(const struct position_solids *s)
{
	const struct space_prism *w = weld_of(s);
	vec from = space_corner(&s->frame, w, 0, false), to = space_corner(&s->frame, w, 0, true);
	vec axis = vec_add(to, vec_mul(from, -1));
	pt line = face_line(s);
	vec face = space_turn(&s->frame, (vec){ 0, line.x, line.y });
	struct attitude t = { asin(fabs(axis.z) / length(axis)) * DEG, 0 };

	assert_true(fabs(vec_dot(axis, face)) < 1e-9);
	t.rotation = acos(-face.z / length(face)) * DEG; /* from straight down */
	return t;
}

/* Only one half of each range: the other is its mirror image. */
static const struct { enum fig_place place; bool fillet; double rise[2], turn[2]; }
zones[] = {
	{ FIG_FLAT, false, { 0, 15 }, { 150, 180 } }, { FIG_1G, false, { 0, 15 }, { 150, 180 } },
	{ FIG_2G, false, { 0, 15 }, { 80, 150 } }, { FIG_3G, false, { 80, 90 }, { 0, 180 } },
	{ FIG_4G, false, { 0, 80 }, { 0, 80 } }, { FIG_1F, true, { 0, 15 }, { 150, 180 } },
	{ FIG_2F, true, { 0, 15 }, { 125, 150 } }, { FIG_3F, true, { 80, 90 }, { 0, 180 } },
	{ FIG_4F, true, { 0, 80 }, { 0, 125 } },
};

/* The test positions themselves (same tables): face of grooves up, at the side, down; that
 * of fillets up, or 45 degrees above or below the level; weld axis level or upright. */
static const double exact[FIG_PLACE_COUNT] = { [FIG_FLAT] = 180, [FIG_1G] = 180,
	[FIG_2G] = 90, [FIG_4G] = 0, [FIG_1F] = 180, [FIG_2F] = 135, [FIG_4F] = 45 };

static bool drawn(struct position_solids *s, enum fig_place place, enum fig_members m)
{
	const struct fig_position p = { place, FIG_TRAVEL_NONE, m, STR("x"), NULL };

	if (!position_has_solids(m, place) || !fig_position_can_draw(&p))
		return false;
	position_solids(s, &p);
	return true;
}

static void attitudes_lie_in_their_zones(void **state)
{
	size_t measured = 0;

	(void)state;
	for (enum fig_members m = 0; m < FIG_MEMBERS_PIPE; m++)
		for (size_t i = 0; i < sizeof zones / sizeof *zones; i++) {
			struct position_solids s;
			struct attitude t;

			if (!drawn(&s, zones[i].place, m))
				continue;
			t = measure(&s);
			assert_true(t.incline >= zones[i].rise[0] - 1e-6);
			assert_true(t.incline <= zones[i].rise[1] + 1e-6);
			assert_true(t.rotation >= zones[i].turn[0] - 1e-6);
			assert_true(t.rotation <= zones[i].turn[1] + 1e-6);
			if (!s.upright)
				assert_true(fabs(t.rotation - exact[zones[i].place]) < 10);
			measured++;
		}
	/* 6 of plates and pads in 9 places; 7 with grooves in 5. */
	assert_int_equal(measured, 6 * 9 + 7 * 5);
}

/* How far the widest side of a member leans from level; 90: upright. Solids lie along the
 * weld, so its widest side is the longest of its outline. */
static double lean(const struct position_solids *s, size_t member)
{
	const struct space_prism *p = NULL;
	double most = 0;
	vec along = { 1, 0, 0 };

	for (size_t i = 0, k = 0; i < s->n && !p; i++)
		if (!s->prism[i].weld && k++ == member)
			p = &s->prism[i];
	assert_non_null(p);
	for (size_t i = 0; i < p->n; i++) {
		vec side = vec_add(space_corner(&s->frame, p, i + 1, false),
		    vec_mul(space_corner(&s->frame, p, i, false), -1));

		if (length(side) > most) {
			most = length(side);
			along = side;
		}
	}
	return asin(fabs(along.z) / length(along)) * DEG;
}

/* What the words beside the sketch say: which member lies level, which stands. First the
 * one beside the prepared member, then that one. */
static void members_lie_as_the_words_say(void **state)
{
	static const struct { enum fig_members m; enum fig_place place; double base, web; } v[] = {
		{ FIG_MEMBERS_TEE_GROOVE, FIG_1G, 90, 0 }, { FIG_MEMBERS_TEE_GROOVE, FIG_2G, 0, 90 },
		{ FIG_MEMBERS_TEE_GROOVE, FIG_4G, 90, 0 },
		{ FIG_MEMBERS_CORNER_GROOVE, FIG_1G, 90, 0 },
		{ FIG_MEMBERS_CORNER_GROOVE, FIG_2G, 0, 90 },
		{ FIG_MEMBERS_CORNER_GROOVE, FIG_4G, 90, 0 },
		{ FIG_MEMBERS_EDGE, FIG_1G, 90, 90 }, { FIG_MEMBERS_EDGE, FIG_2G, 0, 0 },
		{ FIG_MEMBERS_EDGE_GROOVE, FIG_1G, 90, 90 },
		{ FIG_MEMBERS_EDGE_GROOVE, FIG_2G, 0, 0 }, { FIG_MEMBERS_TEE, FIG_2F, 0, 90 },
		{ FIG_MEMBERS_TEE, FIG_4F, 0, 90 }, { FIG_MEMBERS_BUTT, FIG_1G, 0, 0 },
		{ FIG_MEMBERS_BUTT, FIG_2G, 90, 90 }, { FIG_MEMBERS_BUTT, FIG_4G, 0, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof v / sizeof *v; i++) {
		struct position_solids s;

		assert_true(drawn(&s, v[i].place, v[i].m));
		assert_true(fabs(lean(&s, 0) - v[i].base) < 1e-6);
		assert_true(fabs(lean(&s, 1) - v[i].web) < 1e-6);
	}
}

/* A web stands on its level base, and the post of an overhead corner above its plate. */
static double middle_height(const struct position_solids *s, size_t member)
{
	double sum = 0;
	size_t i = 0;

	for (size_t k = 0; s->prism[i].weld || k++ != member; i++)
		;
	for (size_t k = 0; k < s->prism[i].n; k++)
		sum += space_corner(&s->frame, &s->prism[i], k, false).z;
	return sum / (double)s->prism[i].n;
}

static void members_stand_on_one_another(void **state)
{
	struct position_solids s;

	(void)state;
	assert_true(drawn(&s, FIG_2G, FIG_MEMBERS_TEE_GROOVE));
	assert_true(middle_height(&s, 0) < middle_height(&s, 1));
	assert_true(drawn(&s, FIG_2G, FIG_MEMBERS_FLARE));
	assert_true(middle_height(&s, 0) < middle_height(&s, 1));
	assert_true(drawn(&s, FIG_1G, FIG_MEMBERS_CORNER_GROOVE));
	assert_true(middle_height(&s, 0) < middle_height(&s, 1));
	assert_true(drawn(&s, FIG_4G, FIG_MEMBERS_CORNER_GROOVE));
	assert_true(middle_height(&s, 0) > middle_height(&s, 1));
}

/* Before the weld, where the rod stands, no member may be. */
static void the_groove_is_open_to_the_rod(void **state)
{
	(void)state;
	for (enum fig_members m = 0; m < FIG_MEMBERS_PIPE; m++) {
		struct position_solids s;

		if (!drawn(&s, FIG_1G, m))
			continue;
		for (size_t k = 0; k < s.n; k++)
			for (double up = 0.02; up < 1; up += 0.1)
				assert_false(!s.prism[k].weld && is_in(&s.prism[k], 0.02 *
				    (m == FIG_MEMBERS_TEE_GROOVE || m == FIG_MEMBERS_FLARE ? -1 : 1),
				    s.face + up));
	}
}

static void no_groove_stands_as_a_fillet(void **state)
{
	(void)state;
	assert_false(position_has_solids(FIG_MEMBERS_TEE_GROOVE, FIG_2F));
	assert_false(position_has_solids(FIG_MEMBERS_FLARE_V, FIG_4F));
	assert_false(position_has_solids(FIG_MEMBERS_EDGE, FIG_5G));
	assert_true(position_has_solids(FIG_MEMBERS_TEE, FIG_2F));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(attitudes_lie_in_their_zones),
		cmocka_unit_test(members_lie_as_the_words_say),
		cmocka_unit_test(members_stand_on_one_another),
		cmocka_unit_test(the_groove_is_open_to_the_rod),
		cmocka_unit_test(no_groove_stands_as_a_fillet),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
