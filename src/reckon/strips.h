/* reckon/strips.h - where the bend strips of a coupon are cut. Geometry; widths and
 * discards come from the caller. Lengths mm. */
#ifndef RECKON_STRIPS_H
#define RECKON_STRIPS_H

#include <stddef.h>

/* Width of a strip along the weld: of a face or root bend 1-1/2 in, and 1 in from pipe of
 * 4 in diameter and under (AWS D1.1 Fig. 6.8 (2020), told in a code forum; od 0: plate);
 * of a side bend 3/8 in (Fig. 6.9); of a nick-break 1 in, a custom from memory. A tensile
 * strip is taken as wide as a face bend, from memory too. */
enum strip_sort { STRIP_FACE_ROOT, STRIP_SIDE, STRIP_NICK };
double strip_width_mm(enum strip_sort sort, double od_mm);

struct strip {
	double from_mm, to_mm;   /* along the weld from the left end, or round the pipe
	                          * from its top */
	double center_deg;       /* pipe: clock angle of the middle, 0 at the top */
};

/* Length of weld that n strips take: discards at both ends, n widths, and a cut on
 * each side of every strip. */
double strips_length_mm(size_t n, double width_mm, double discard_mm, double kerf_mm);
/* Strip i of n from a plate: discard, then strips side by side, the waste shared out
 * evenly between them. Only when the length is enough. */
struct strip strip_on_plate(size_t i, size_t n, double length_mm, double width_mm,
    double discard_mm);
/* The same for strips of n widths, in that order, waste shared out evenly. */
void strips_on_plate(const double *width_mm, size_t n, double length_mm,
    double discard_mm, struct strip *out);

/* Length round the pipe that n strips take with a cut on both sides of each. */
double strips_round_mm(size_t n, double width_mm, double kerf_mm);
/* Strip i of n round a pipe of that outside diameter, evenly from first_deg on. */
struct strip strip_on_pipe(size_t i, size_t n, double od_mm, double width_mm,
    double first_deg);

#endif
