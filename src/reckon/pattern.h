/* reckon/pattern.h - flat patterns: what a bent, rolled or cut part looks like before
 * it is formed.
 *
 * Plain numbers in, named answers, ordinate tables and developed outlines out. All
 * lengths in mm, angles in degrees. A size of 0 is not given. Input that no part can
 * have gives a reason and nothing else.
 *
 * Formulas are plane and solid geometry, checked by tests/outside/pattern.sh against
 * the part in space; bend allowance = pi/180 x angle x (inside radius + K x thickness),
 * the general formula that shop handbooks share. */
#ifndef RECKON_PATTERN_H
#define RECKON_PATTERN_H

#include "base/arena.h"
#include "base/str.h"

#include <stdbool.h>

enum pattern_shape {
	PATTERN_BRAKE,           /* flanges between bends */
	PATTERN_CYLINDER,        /* a rolled shell */
	PATTERN_ELBOW,           /* round, of two pieces or more */
	PATTERN_SADDLE,          /* a branch on a run, square or leaning */
	PATTERN_CONE,            /* whole or cut off level */
	PATTERN_BOX,             /* tapered, of n equal sides */
	PATTERN_SQUARE,          /* square or oblong to round */
	PATTERN_SHAPES
};

/* Where in the thickness a size is measured, or a layout worked out. */
enum pattern_line {
	LINE_AS_GIVEN,           /* mold line: on the sizes as they are given */
	LINE_OUTSIDE, LINE_MEAN, LINE_INSIDE
};

enum { PATTERN_FLANGES = 16, PATTERN_DIVISIONS = 360, PATTERN_SIDES = 24 };

struct pattern_part {
	enum pattern_shape shape;
	double thickness_mm;     /* 0 only where no line but LINE_AS_GIVEN is asked */
	enum pattern_line given; /* sizes are measured OUTSIDE (or AS_GIVEN) or INSIDE */
	enum pattern_line line;  /* ordinates, radii and edges are worked out here */
	enum pattern_line wrap;  /* CYLINDER, ELBOW, SADDLE: the stretch-out goes here */
	/* BRAKE, and BOX for the allowance of its bends. */
	double flange_mm[PATTERN_FLANGES]; /* between mold lines on the given side */
	double bend_deg[PATTERN_FLANGES];  /* turned through, one fewer than flanges */
	size_t nflanges;
	double radius_mm;        /* inside radius of a bend; ELBOW: of the center line */
	double k, allowance_mm;  /* either; an allowance counts for every bend */
	double width_mm;         /* along the bends; 0: 100 mm is drawn */
	double diameter_mm;      /* CYLINDER, ELBOW; SADDLE: of the branch */
	double run_mm;           /* SADDLE: outside diameter of the run */
	/* CYLINDER, CONE, BOX, SQUARE: height. ELBOW: of an end piece on the center line.
	 * SADDLE: on the branch's center line from that of the run; may be 0. */
	double height_mm;
	double angle_deg;        /* ELBOW: turned; SADDLE: between center lines, to 90 */
	unsigned pieces;         /* ELBOW: in all; BOX, SQUARE: sheets that make it up */
	double base_mm, base2_mm; /* CONE diameter; BOX across flats; SQUARE both sides */
	double top_mm;           /* CONE, SQUARE diameter; BOX across flats; 0: a point */
	double offset_x_mm, offset_y_mm; /* SQUARE: round from the middle of the square;
	                          * SADDLE: x, branch beside the center line of the run */
	unsigned sides;          /* BOX */
	unsigned divisions;      /* of the circle; 0: twelve, SQUARE sixteen */
};

enum answer_unit { ANSWER_MM, ANSWER_DEG };

struct pattern_answer {
	str name;                /* "Slant height" */
	double value;
	enum answer_unit unit;
};

/* One line of a table of ordinates or true lengths. */
struct pattern_row {
	double at_deg, along_mm; /* round the part; on the stretch-out */
	double v_mm[2];
};

struct pattern_table {
	str name;                /* "End piece" */
	str at, head[2];         /* "From the throat"; head[1] empty: one column */
	struct pattern_row *v;
	size_t n, cap;
};

struct flat_point { double x_mm, y_mm; };

struct flat_line {
	enum flat_kind { FLAT_CUT, FLAT_BEND, FLAT_MARK } kind; /* MARK: division line */
	struct flat_point *v;
	size_t n, cap;
	bool closed;
};

/* What is worth a dimension on the pattern. */
struct flat_dim {
	enum flat_dim_kind { FLAT_ACROSS, FLAT_UP, FLAT_AT } kind; /* AT: points at a */
	struct flat_point a, b;
	str name;                /* for AT: "bend 1"; may be empty */
	double value;
	enum answer_unit unit;
};

/* One developed outline, its lower left corner at 0, 0. */
struct flat {
	str name;                /* "half pattern" */
	unsigned count;          /* pieces cut to it */
	struct flat_line *line;  /* the first is the closed outline */
	size_t nlines, lines_cap;
	struct flat_dim *dim;
	size_t ndims, dims_cap;
	double width_mm, height_mm;
	bool plain;              /* a rectangle, which needs no template */
};

struct pattern {
	str fault;               /* why there is no pattern; empty: all is well */
	str basis;               /* which lines of the thickness were taken, in words */
	struct pattern_answer *answer;
	size_t nanswers, answers_cap;
	struct pattern_table *table;
	size_t ntables, tables_cap;
	struct flat *flat;
	size_t nflats, flats_cap;
};

/* Works everything out in a. */
struct pattern *pattern_reckon(struct arena *a, const struct pattern_part *p);

/* The value of the answer of that name, NAN when there is none. */
double pattern_find(const struct pattern *p, str name);

/* One bend of deg: length of the neutral line, and from mold line to tangent on the
 * outside. Published example: FAA-H-8083-31 chapter 4, R .16, t .04, 90 deg: .20 in. */
double brake_allowance_mm(double deg, double radius_mm, double k, double thickness_mm);
double brake_setback_mm(double deg, double radius_mm, double thickness_mm);

#endif
