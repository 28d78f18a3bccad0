/* reckon/qualify.h - what a welder performance test qualifies, by code. AWS D1.1
 * Tables 6.10, 6.11, 10.12, 10.13 (2020) and ASME IX QW-452, QW-461.9 (2010), generated
 * from templates/tables/qualify_*.csv. A coupon in class is a training record only. */
#ifndef RECKON_QUALIFY_H
#define RECKON_QUALIFY_H

#include "base/str.h"
#include "reckon/source.h"

enum qualify_form { COUPON_PLATE, COUPON_PIPE, COUPON_ANY };
enum qualify_weld { QUALIFY_GROOVE, QUALIFY_FILLET };

struct qualify_position {
	const char *code, *test; /* "3G+4G" */
	enum qualify_form form;
	enum qualify_weld weld;
	const char *groove_plate, *groove_pipe, *fillet; /* "F H V"; "" none */
	const char *note, *clause, *verified;
};

struct qualify_range {
	const char *code;
	enum qualify_form form;
	enum qualify_weld weld;
	const char *positions;   /* "5G 6G"; "" every one */
	double od_lo_in;
	bool od_lo_open;
	double od_hi_in, t_lo_in;
	bool t_lo_open;
	double t_hi_in;
	bool t_hi_open;
	int face, root, side, fracture, macro; /* specimens owed */
	double least_in, most_in, most_times; /* most: fixed, times t, or both 0: none */
	const char *note, *clause, *verified;
};

struct qualify_diameter {
	const char *code;
	double od_lo_in;
	bool od_lo_open;
	double od_hi_in;
	bool od_hi_open;
	double least_in, least_times, most_in; /* most 0: no limit */
	const char *note, *clause, *verified;
};

/* "D1.1" or "AWS D1.1" to "AWS D1.1", "IX" to "ASME IX"; null for other codes. */
const char *qualify_code(str words);

/* Each is null when the table has no row: a position not tested so, a thickness that
 * the code does not test on. Test as "3G" or "3G+4G" without blanks. */
const struct qualify_position *qualify_position_find(str code, str test,
    enum qualify_form form, enum qualify_weld weld);
/* od_mm 0: plate. thickness: plate or wall, for ASME IX the weld metal deposited. */
const struct qualify_range *qualify_range_find(str code, str test,
    enum qualify_form form, enum qualify_weld weld, double od_mm, double thickness_mm);
const struct qualify_diameter *qualify_diameter_find(str code, double od_mm);

/* Greatest thickness in mm that the row qualifies; 0: no limit. For ASME IX 1/2 in
 * or more of weld metal in at least three layers has no limit (QW-452.1(b), 2010). */
double qualify_most_mm(const struct qualify_range *r, double thickness_mm,
    unsigned layers);

#endif
