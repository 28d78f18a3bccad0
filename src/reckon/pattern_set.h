/* reckon/pattern_set.h - how the shapes fill a pattern. Private to reckon.
 *
 * Each shape has a fault function, which sees the part before anything is worked out,
 * and a make function, which may rely on it. */
#ifndef RECKON_PATTERN_SET_H
#define RECKON_PATTERN_SET_H

#include "reckon/pattern.h"

#define PATTERN_PI 3.14159265358979323846

/* Below any shop size, above binary noise. */
#define PATTERN_NOISE_MM 1e-9

struct pattern_maker {
	struct arena *arena;
	const struct pattern_part *p;
	struct pattern *out;
};

void answer_add(struct pattern_maker *m, str name, double value, enum answer_unit unit);
/* Length and width of the sheet that holds the first outline. */
void answer_sheet(struct pattern_maker *m);
struct pattern_table *table_add(struct pattern_maker *m, str name, str at, str head);
void table_row(struct pattern_maker *m, struct pattern_table *t, struct pattern_row r);

/* Pointers to flats and lines are good until the next one is added. */
struct flat *flat_add(struct pattern_maker *m, str name, unsigned count);
struct flat_line *flat_line_add(struct pattern_maker *m, struct flat *f,
    enum flat_kind kind);
void flat_line_to(struct pattern_maker *m, struct flat_line *l, double x, double y);
/* A line of two points. */
void flat_stroke(struct pattern_maker *m, struct flat *f, enum flat_kind kind,
    struct flat_point a, struct flat_point b);
void flat_dim_add(struct pattern_maker *m, struct flat *f, struct flat_dim d);
/* Moves everything so that the outline begins at 0, 0, measures it, and adds its two
 * overall dimensions. */
void flat_settle(struct pattern_maker *m, struct flat *f);
/* A rectangle as the outline. */
struct flat *flat_rectangle(struct pattern_maker *m, str name, double w, double h);

double deg_sin(double deg);
double deg_cos(double deg);
double deg_tan(double deg);

/* How far outward a line lies from where the sizes are measured. */
double line_shift_mm(const struct pattern_part *p, enum pattern_line to);
/* "the outside diameter", for basis and names. */
str line_words(const struct pattern_part *p, enum pattern_line line);
/* divisions, or n when it is not given. */
unsigned divisions_or(const struct pattern_part *p, unsigned n);
/* Points of a curve between two division lines. */
unsigned curve_steps(unsigned divisions);

str brake_fault(const struct pattern_part *p);
void brake_make(struct pattern_maker *m);
str cylinder_fault(const struct pattern_part *p);
void cylinder_make(struct pattern_maker *m);
str elbow_fault(const struct pattern_part *p);
void elbow_make(struct pattern_maker *m);
str saddle_fault(const struct pattern_part *p);
void saddle_make(struct pattern_maker *m);
str cone_fault(const struct pattern_part *p);
void cone_make(struct pattern_maker *m);
str box_fault(const struct pattern_part *p);
void box_make(struct pattern_maker *m);
str square_fault(const struct pattern_part *p);
void square_make(struct pattern_maker *m);

#endif
