/* reckon/groove.h - cross section of a groove weld without its caps. Geometry, in
 * square millimeters.
 *
 * Root opening G and root face f (land); each prepared side is a slope, or an arc of
 * radius r that starts level at the root face and runs into a slope. The area is
 * G T + sides; one side of depth d at angle b from the vertical adds
 *   slope: d^2 tan b / 2
 *   arc and slope: r^2 ((pi/2 - b)/2 - sin(2b)/4)
 *       + (d - y) r cos b + (d - y)^2 tan b / 2,   y = r (1 - sin b)
 * Bevel and J have one side, V and U two; a double form has them from both faces. */
#ifndef RECKON_GROOVE_H
#define RECKON_GROOVE_H

#include <stdbool.h>

enum groove_shape { GROOVE_SQUARE, GROOVE_BEVEL, GROOVE_V, GROOVE_J, GROOVE_U };

struct groove {
	enum groove_shape shape;
	bool both;               /* prepared from both faces */
	double thickness_mm, gap_mm, land_mm;
	double angle_deg;        /* included for V and U, of the one side otherwise */
	double radius_mm;        /* J and U */
	double front_mm;         /* depth from the front of a double form; 0: half */
	double back_deg, back_radius_mm; /* of a double form at the back; 0: as in front */
};

/* What makes the section impossible, in a few words, or null: a land as thick as the
 * part, an angle of 180 degrees (one side: 90) and over, a radius deeper than the
 * groove. */
const char *groove_fault(const struct groove *g);
/* Needs a section without a fault. */
double groove_mm2(const struct groove *g);
/* Width at the front face: G + the runs of the front sides. */
double groove_width_mm(const struct groove *g);
/* Width at the back face: of a double form likewise, else G. */
double groove_back_width_mm(const struct groove *g);

#endif
