/* AWS D1.1 Tables 6.10, 10.13 (2020) and ASME IX QW-452, QW-461.9 (2010), read in
 * copies; rows from memory are marked. */
#include "reckon/qualify.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static const struct qualify_position *position(const char *code, const char *test,
    enum qualify_form form, enum qualify_weld weld)
{
	return qualify_position_find(str_of(code), str_of(test), form, weld);
}

static void positions(void **state)
{
	const struct qualify_position *p;

	(void)state;
	/* A 3G plate gives horizontal grooves in D1.1, not in IX. */
	p = position("AWS D1.1", "3G", COUPON_PLATE, QUALIFY_GROOVE);
	assert_string_equal(p->groove_plate, "F H V");
	p = position("ASME IX", "3g", COUPON_PLATE, QUALIFY_GROOVE);
	assert_string_equal(p->groove_plate, "F V");
	assert_string_equal(p->groove_pipe, "F (OD>=2-7/8)");
	assert_string_equal(p->fillet, "F H V");
	p = position("AWS D1.1", "3G+4G", COUPON_PLATE, QUALIFY_GROOVE);
	assert_string_equal(p->groove_pipe, "All");
	p = position("ASME IX", "6G", COUPON_PIPE, QUALIFY_GROOVE);
	assert_string_equal(p->groove_plate, "All");
	p = position("AWS D1.1", "2F", COUPON_PLATE, QUALIFY_FILLET);
	assert_string_equal(p->fillet, "F H");
	assert_string_equal(p->groove_plate, "");
	assert_null(position("AWS D1.1", "6G", COUPON_PLATE, QUALIFY_GROOVE));
	assert_null(position("AWS D1.1", "9G", COUPON_PIPE, QUALIFY_GROOVE));
	assert_null(position("API 1104", "5G", COUPON_PIPE, QUALIFY_GROOVE));
}

static const struct qualify_range *range(const char *code, const char *test,
    enum qualify_form form, double od_in, double t_in)
{
	return qualify_range_find(str_of(code), str_of(test), form, QUALIFY_GROOVE,
	    od_in * 25.4, t_in * 25.4);
}

static void ranges(void **state)
{
	const struct qualify_range *r;

	(void)state;
	r = range("AWS D1.1", "3G", COUPON_PLATE, 0, 0.375); /* from memory */
	assert_true(r->face == 1 && r->root == 1 && r->least_in == 0.125);
	assert_true(fabs(qualify_most_mm(r, 9.525, 1) - 19.05) < 1e-9);
	r = range("AWS D1.1", "1G", COUPON_PLATE, 0, 0.5); /* code forum: to 1 in */
	assert_true(r->side == 2 && fabs(qualify_most_mm(r, 12.7, 1) - 25.4) < 1e-9);
	r = range("AWS D1.1", "1G", COUPON_PLATE, 0, 1); /* from memory */
	assert_true(qualify_most_mm(r, 25.4, 1) == 0);
	assert_null(range("AWS D1.1", "1G", COUPON_PLATE, 0, 0.25));
	/* Table 10.13 (2020): 4 in and under; over 4 in by wall. */
	r = range("AWS D1.1", "6G", COUPON_PIPE, 2.375, 0.218);
	assert_true(r->face == 2 && r->root == 2 && r->most_in == 0.75);
	r = range("AWS D1.1", "2G", COUPON_PIPE, 6.625, 0.280);
	assert_true(r->face == 1 && r->root == 1 && r->most_in == 0.75);
	r = range("AWS D1.1", "6G", COUPON_PIPE, 8.625, 0.5);
	assert_true(r->side == 4 && r->least_in == 0.1875 &&
	    qualify_most_mm(r, 12.7, 1) == 0);
}

/* QW-452.1 (2010): 2 t; 1/2 in and over in three layers or more, the most to be
 * welded. */
static void pressure_ranges(void **state)
{
	const struct qualify_range *r = range("ASME IX", "6G", COUPON_PIPE, 6.625, 0.28);

	(void)state;
	assert_true(r->face == 2 && r->root == 2);
	assert_true(fabs(qualify_most_mm(r, 0.28 * 25.4, 3) - 0.56 * 25.4) < 1e-9);
	r = range("ASME IX", "2G", COUPON_PIPE, 6.625, 0.5);
	assert_true(r->side == 2);
	assert_true(fabs(qualify_most_mm(r, 12.7, 2) - 25.4) < 1e-9);
	assert_true(qualify_most_mm(r, 12.7, 3) == 0);
	assert_true(qualify_most_mm(r, 12.6, 3) > 0);
	r = range("ASME IX", "3G", COUPON_PLATE, 0, 0.75);
	assert_true(r->side == 2 && r->face == 0);
}

static void diameters(void **state)
{
	const struct qualify_diameter *d;

	(void)state;
	/* QW-452.3 (2010): under 1 in the size welded; 1 to 2-7/8; over it. */
	d = qualify_diameter_find(STR("ASME IX"), 0.84 * 25.4);
	assert_true(d->least_times == 1 && d->most_in == 0);
	d = qualify_diameter_find(STR("ASME IX"), 1 * 25.4);
	assert_true(d->least_in == 1);
	d = qualify_diameter_find(STR("ASME IX"), 2.875 * 25.4);
	assert_true(d->least_in == 1);
	d = qualify_diameter_find(STR("ASME IX"), 3.5 * 25.4);
	assert_true(d->least_in == 2.875);
	d = qualify_diameter_find(STR("AWS D1.1"), 4 * 25.4);
	assert_true(d->least_in == 0.75 && d->most_in == 4);
	d = qualify_diameter_find(STR("AWS D1.1"), 12.75 * 25.4); /* from memory */
	assert_true(d->least_times == 0.5 && d->least_in == 4 && d->most_in == 0);
}

static void codes(void **state)
{
	(void)state;
	assert_string_equal(qualify_code(STR("d1.1")), "AWS D1.1");
	assert_string_equal(qualify_code(STR("ASME IX")), "ASME IX");
	assert_null(qualify_code(STR("B31.3")));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(positions),
		cmocka_unit_test(ranges),
		cmocka_unit_test(pressure_ranges),
		cmocka_unit_test(diameters),
		cmocka_unit_test(codes),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
