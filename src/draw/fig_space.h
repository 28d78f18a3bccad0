/* draw/fig_space.h - solids in space, seen from a place without perspective.
 *
 * World: x right, y away from the reader, z up. Solids are built in a frame of their own:
 * x along the weld, z out of its face. Paper: x right, y down, in units of the solids
 * until scaled. Private to the figures of draw. */
#ifndef DRAW_FIG_SPACE_H
#define DRAW_FIG_SPACE_H

#include "draw/canvas.h"

typedef struct { double x, y, z; } vec;

vec vec_add(vec a, vec b);
vec vec_mul(vec a, double k);
double vec_dot(vec a, vec b);
vec vec_cross(vec a, vec b);

/* Where the axes of a frame of solids point in the world; unit vectors. */
struct space_frame { vec x, y, z; };
vec space_turn(const struct space_frame *f, vec v);

struct space_view {
	vec right, up, to_eye;   /* unit vectors */
	double scale;            /* points for one unit */
	pt at;                   /* of the origin, on paper */
};

/* The eye stands that many degrees to the right of front and above the horizon. */
struct space_view space_view_from(double right_deg, double above_deg);
pt space_point(const struct space_view *w, vec v);

/* A polygon in y and z drawn out along x from x0 to x1; convex but for covered sides. */
#define SPACE_ROUND 5            /* steps of a round corner */
#define SPACE_CORNERS (4 * (SPACE_ROUND + 1))
struct space_prism {
	pt v[SPACE_CORNERS];     /* x is y, y is z of the frame */
	size_t n;
	double x0, x1;
	size_t covered;          /* so many first sides lie against others: never drawn */
	bool weld;               /* told by ripples across it */
	bool round;              /* a tube: no lines along its sides but the outline */
};

/* The corner at either end, in the world. */
vec space_corner(const struct space_frame *f, const struct space_prism *p, size_t i,
    bool far);
/* Whether a stands in front of b, or cannot hide it: some face of one parts them. */
bool space_in_front(const struct space_view *w, const struct space_frame *f,
    const struct space_prism *a, const struct space_prism *b);
/* The faces turned to the eye, white with an outline. */
void space_prism_ink(struct canvas *c, const struct space_view *w,
    const struct space_frame *f, const struct space_prism *p);
/* An arc of a circle around the x axis of the frame at x, from one angle to another, from
 * y towards z, as points on paper; at most SPACE_STEPS + 1, returns how many. */
#define SPACE_STEPS 48
size_t space_arc(const struct space_view *w, const struct space_frame *f, double x,
    double r, double from_deg, double to_deg, pt *out);
/* The angle at which such a circle faces the eye most. */
double space_facing_deg(const struct space_view *w, const struct space_frame *f);

#endif
