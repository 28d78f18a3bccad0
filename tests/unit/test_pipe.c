/* ASME B36.10M. Outside diameter and wall in inches, their printed millimeters, the
 * weight of the older shop charts (10.68 rule, lb/ft; 0 where none was seen) and
 * kg/m by 0.0246615 (D - t) t on the printed millimeters. The tables round the metric
 * sizes on their own, so they must agree within half a unit of the last place or so. */
#include "reckon/pipe.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static const struct {
	const char *nps, *schedule, *ident;
	double od_in, wall_in, od_mm, wall_mm, old_lb_ft, kg_m;
} rows[] = {
	{ "1/2", "10", "", 0.840, 0.083, 21.3, 2.11, 0.67, 1.00 },
	{ "1/2", "40", "STD", 0.840, 0.109, 21.3, 2.77, 0.85, 1.27 },
	{ "1/2", "80", "XS", 0.840, 0.147, 21.3, 3.73, 1.09, 1.62 },
	{ "1/2", "160", "", 0.840, 0.188, 21.3, 4.78, 1.31, 1.95 },
	{ "1/2", "XXS", "XXS", 0.840, 0.294, 21.3, 7.47, 1.71, 2.55 },
	{ "3/4", "10", "", 1.050, 0.083, 26.7, 2.11, 0.86, 1.28 },
	{ "3/4", "40", "STD", 1.050, 0.113, 26.7, 2.87, 1.13, 1.69 },
	{ "3/4", "80", "XS", 1.050, 0.154, 26.7, 3.91, 1.47, 2.20 },
	{ "3/4", "160", "", 1.050, 0.219, 26.7, 5.56, 1.94, 2.90 },
	{ "3/4", "XXS", "XXS", 1.050, 0.308, 26.7, 7.82, 2.44, 3.64 },
	{ "1", "10", "", 1.315, 0.109, 33.4, 2.77, 1.40, 2.09 },
	{ "1", "40", "STD", 1.315, 0.133, 33.4, 3.38, 1.68, 2.50 },
	{ "1", "80", "XS", 1.315, 0.179, 33.4, 4.55, 2.17, 3.24 },
	{ "1", "160", "", 1.315, 0.250, 33.4, 6.35, 2.84, 4.24 },
	{ "1", "XXS", "XXS", 1.315, 0.358, 33.4, 9.09, 3.66, 5.45 },
	{ "1-1/4", "10", "", 1.660, 0.109, 42.2, 2.77, 1.81, 2.69 },
	{ "1-1/4", "40", "STD", 1.660, 0.140, 42.2, 3.56, 2.27, 3.39 },
	{ "1-1/4", "80", "XS", 1.660, 0.191, 42.2, 4.85, 3.00, 4.47 },
	{ "1-1/4", "160", "", 1.660, 0.250, 42.2, 6.35, 3.76, 5.61 },
	{ "1-1/4", "XXS", "XXS", 1.660, 0.382, 42.2, 9.70, 5.21, 7.77 },
	{ "1-1/2", "10", "", 1.900, 0.109, 48.3, 2.77, 2.09, 3.11 },
	{ "1-1/2", "40", "STD", 1.900, 0.145, 48.3, 3.68, 2.72, 4.05 },
	{ "1-1/2", "80", "XS", 1.900, 0.200, 48.3, 5.08, 3.63, 5.41 },
	{ "1-1/2", "160", "", 1.900, 0.281, 48.3, 7.14, 4.86, 7.25 },
	{ "1-1/2", "XXS", "XXS", 1.900, 0.400, 48.3, 10.15, 6.41, 9.55 },
	{ "2", "10", "", 2.375, 0.109, 60.3, 2.77, 2.64, 3.93 },
	{ "2", "40", "STD", 2.375, 0.154, 60.3, 3.91, 3.65, 5.44 },
	{ "2", "80", "XS", 2.375, 0.218, 60.3, 5.54, 5.02, 7.48 },
	{ "2", "160", "", 2.375, 0.344, 60.3, 8.74, 7.46, 11.11 },
	{ "2", "XXS", "XXS", 2.375, 0.436, 60.3, 11.07, 9.03, 13.44 },
	{ "2-1/2", "10", "", 2.875, 0.120, 73.0, 3.05, 3.53, 5.26 },
	{ "2-1/2", "40", "STD", 2.875, 0.203, 73.0, 5.16, 5.79, 8.63 },
	{ "2-1/2", "80", "XS", 2.875, 0.276, 73.0, 7.01, 7.66, 11.41 },
	{ "2-1/2", "160", "", 2.875, 0.375, 73.0, 9.53, 10.01, 14.92 },
	{ "2-1/2", "XXS", "XXS", 2.875, 0.552, 73.0, 14.02, 13.69, 20.39 },
	{ "3", "10", "", 3.500, 0.120, 88.9, 3.05, 4.33, 6.46 },
	{ "3", "40", "STD", 3.500, 0.216, 88.9, 5.49, 7.58, 11.29 },
	{ "3", "80", "XS", 3.500, 0.300, 88.9, 7.62, 10.25, 15.27 },
	{ "3", "160", "", 3.500, 0.438, 88.9, 11.13, 14.32, 21.35 },
	{ "3", "XXS", "XXS", 3.500, 0.600, 88.9, 15.24, 18.58, 27.68 },
	{ "3-1/2", "10", "", 4.000, 0.120, 101.6, 3.05, 4.97, 7.41 },
	{ "3-1/2", "40", "STD", 4.000, 0.226, 101.6, 5.74, 9.11, 13.57 },
	{ "3-1/2", "80", "XS", 4.000, 0.318, 101.6, 8.08, 12.50, 18.64 },
	{ "4", "10", "", 4.500, 0.120, 114.3, 3.05, 5.61, 8.37 },
	{ "4", "40", "STD", 4.500, 0.237, 114.3, 6.02, 10.79, 16.08 },
	{ "4", "80", "XS", 4.500, 0.337, 114.3, 8.56, 14.98, 22.32 },
	{ "4", "120", "", 4.500, 0.438, 114.3, 11.13, 0, 28.32 },
	{ "4", "160", "", 4.500, 0.531, 114.3, 13.49, 22.51, 33.54 },
	{ "4", "XXS", "XXS", 4.500, 0.674, 114.3, 17.12, 27.54, 41.03 },
	{ "5", "10", "", 5.563, 0.134, 141.3, 3.40, 7.77, 11.56 },
	{ "5", "40", "STD", 5.563, 0.258, 141.3, 6.55, 14.62, 21.77 },
	{ "5", "80", "XS", 5.563, 0.375, 141.3, 9.53, 20.78, 30.97 },
	{ "5", "120", "", 5.563, 0.500, 141.3, 12.70, 27.04, 40.28 },
	{ "5", "160", "", 5.563, 0.625, 141.3, 15.88, 32.96, 49.12 },
	{ "5", "XXS", "XXS", 5.563, 0.750, 141.3, 19.05, 38.55, 57.43 },
	{ "6", "10", "", 6.625, 0.134, 168.3, 3.40, 9.29, 13.83 },
	{ "6", "40", "STD", 6.625, 0.280, 168.3, 7.11, 18.97, 28.26 },
	{ "6", "80", "XS", 6.625, 0.432, 168.3, 10.97, 28.57, 42.56 },
	{ "6", "120", "", 6.625, 0.562, 168.3, 14.27, 36.39, 54.21 },
	{ "6", "160", "", 6.625, 0.719, 168.3, 18.26, 45.35, 67.57 },
	{ "6", "XXS", "XXS", 6.625, 0.864, 168.3, 21.95, 53.16, 79.22 },
	{ "8", "10", "", 8.625, 0.148, 219.1, 3.76, 13.40, 19.97 },
	{ "8", "20", "", 8.625, 0.250, 219.1, 6.35, 22.36, 33.32 },
	{ "8", "40", "STD", 8.625, 0.322, 219.1, 8.18, 28.55, 42.55 },
	{ "8", "60", "", 8.625, 0.406, 219.1, 10.31, 35.64, 53.09 },
	{ "8", "80", "XS", 8.625, 0.500, 219.1, 12.70, 43.39, 64.64 },
	{ "8", "120", "", 8.625, 0.719, 219.1, 18.26, 60.71, 90.44 },
	{ "8", "160", "", 8.625, 0.906, 219.1, 23.01, 74.69, 111.27 },
	{ "8", "XXS", "XXS", 8.625, 0.875, 219.1, 22.23, 72.42, 107.93 },
	{ "10", "10", "", 10.750, 0.165, 273.0, 4.19, 18.65, 27.78 },
	{ "10", "20", "", 10.750, 0.250, 273.0, 6.35, 28.04, 41.76 },
	{ "10", "40", "STD", 10.750, 0.365, 273.0, 9.27, 40.48, 60.29 },
	{ "10", "60", "XS", 10.750, 0.500, 273.0, 12.70, 54.74, 81.53 },
	{ "10", "80", "", 10.750, 0.594, 273.0, 15.09, 64.43, 95.98 },
	{ "10", "120", "", 10.750, 0.844, 273.0, 21.44, 89.29, 133.01 },
	{ "10", "140", "XXS", 10.750, 1.000, 273.0, 25.40, 104.13, 155.10 },
	{ "10", "160", "", 10.750, 1.125, 273.0, 28.58, 115.64, 172.27 },
	{ "12", "10", "", 12.750, 0.180, 323.8, 4.57, 24.16, 35.98 },
	{ "12", "20", "", 12.750, 0.250, 323.8, 6.35, 33.38, 49.71 },
	{ "12", "STD", "STD", 12.750, 0.375, 323.8, 9.53, 49.56, 73.86 },
	{ "12", "40", "", 12.750, 0.406, 323.8, 10.31, 53.52, 79.71 },
	{ "12", "XS", "XS", 12.750, 0.500, 323.8, 12.70, 65.42, 97.44 },
	{ "12", "80", "", 12.750, 0.688, 323.8, 17.48, 88.63, 132.05 },
	{ "12", "120", "XXS", 12.750, 1.000, 323.8, 25.40, 125.49, 186.92 },
	{ "12", "160", "", 12.750, 1.312, 323.8, 33.32, 160.27, 238.69 },
};

enum { NROWS = sizeof rows / sizeof *rows };

static void every_row_is_found(void **state)
{
	size_t n;

	(void)state;
	(void)pipe_rows(&n);
	assert_int_equal(n, NROWS);
	for (size_t i = 0; i < NROWS; i++) {
		const struct pipe_row *p =
		    pipe_find(str_of(rows[i].nps), str_of(rows[i].schedule));

		assert_non_null(p);
		assert_true(p->od_in == rows[i].od_in);
		assert_true(p->wall_in == rows[i].wall_in);
		if (rows[i].ident[0])
			assert_ptr_equal(p, pipe_find(str_of(rows[i].nps),
			    str_of(rows[i].ident)));
	}
}

static void metric_sizes_agree(void **state)
{
	(void)state;
	for (size_t i = 0; i < NROWS; i++) {
		const struct pipe_row *p =
		    pipe_find(str_of(rows[i].nps), str_of(rows[i].schedule));

		/* NPS 10 is printed as 273.0, 0.05 off the inch size; walls to 0.01. */
		assert_true(fabs(pipe_od_mm(p) - rows[i].od_mm) <= 0.0501);
		assert_true(fabs(pipe_wall_mm(p) - rows[i].wall_mm) <= 0.0101);
	}
}

static void weights_agree(void **state)
{
	(void)state;
	for (size_t i = 0; i < NROWS; i++) {
		const struct pipe_row *p =
		    pipe_find(str_of(rows[i].nps), str_of(rows[i].schedule));
		double lb_ft = pipe_weight_lb_ft(pipe_od_mm(p), pipe_wall_mm(p));
		double old = rows[i].old_lb_ft;

		/* The rule rounds to the printed weight. */
		assert_true(fabs(lb_ft - p->lb_ft) <= 0.00501);
		/* 10.69 against 10.68 is a tenth of one percent, and charts round. */
		if (old > 0)
			assert_true(fabs(lb_ft - old) <= 0.001 * old + 0.006);
		/* lb/ft from kg/m: 0.45359237 kg in 0.3048 m; B36.10M's 10.69 is rounded. */
		assert_true(fabs(lb_ft - rows[i].kg_m * 0.3048 / 0.45359237) <=
		    0.002 * lb_ft + 0.006);
	}
}

static void printed_weights(void **state)
{
	(void)state;
	/* 6 in schedule 40: 18.99 lb/ft by the 10.69 rule of B36.10M. */
	assert_true(fabs(pipe_weight_lb_ft(168.275, 7.112) - 18.99) <= 0.005);
}

/* Schedule 40 is STD through NPS 10, schedule 80 is XS through NPS 8. At NPS 8
 * schedule 160 is thicker than XXS. */
static void second_names(void **state)
{
	(void)state;
	assert_ptr_equal(pipe_find(STR("10"), STR("40")), pipe_find(STR("10"), STR("std")));
	assert_ptr_equal(pipe_find(STR("8"), STR("80")), pipe_find(STR("8"), STR("XS")));
	assert_ptr_not_equal(pipe_find(STR("12"), STR("40")),
	    pipe_find(STR("12"), STR("STD")));
	assert_true(pipe_find(STR("8"), STR("160"))->wall_in >
	    pipe_find(STR("8"), STR("XXS"))->wall_in);
}

static void sizes_not_made(void **state)
{
	(void)state;
	assert_null(pipe_find(STR("3-1/2"), STR("160")));
	assert_null(pipe_find(STR("7"), STR("40")));
	assert_null(pipe_find(STR("6"), STR("41")));
	assert_null(pipe_find(STR(""), STR("")));
	assert_true(pipe_find(STR("4"), STR(""))->od_in == 4.5);
}

/* NPS 6 schedule 40: pi x 6.625 = 20.8131 in, pi x 6.345 = 19.9334 in (bc). */
static void lengths_round_a_pipe(void **state)
{
	(void)state;
	assert_true(fabs(pipe_round_mm(6.625 * 25.4) / 25.4 - 20.813051330032372) < 1e-9);
	assert_true(fabs(pipe_mean_round_mm(6.625 * 25.4, 0.28 * 25.4) / 25.4 -
	    19.933405387027230) < 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(lengths_round_a_pipe),
		cmocka_unit_test(every_row_is_found),
		cmocka_unit_test(metric_sizes_agree),
		cmocka_unit_test(weights_agree),
		cmocka_unit_test(printed_weights),
		cmocka_unit_test(second_names),
		cmocka_unit_test(sizes_not_made),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
