#include "draw/fig_prep.h"

#include "draw/fig_section.h"
#include "draw/geom.h"

#include <math.h>

/* Depths and land that make up the thickness to this are taken as exact: sizes in inch
 * and millimeter fractions round by less. */
#define SAME_MM 0.15
#define ROOT_STEPS 8

static const struct prep_kind kinds[FIG_PREP_COUNT] = {
	[FIG_PREP_NONE] = { false, false, false, false, { NULL, 0 } },
	[FIG_PREP_SQUARE] = { .name = WORD("square groove") },
	[FIG_PREP_V] = { .both = true, .name = WORD("single-V groove") },
	[FIG_PREP_BEVEL] = { .name = WORD("single-bevel groove") },
	[FIG_PREP_U] = { .both = true, .curved = true, .name = WORD("single-U groove") },
	[FIG_PREP_J] = { .curved = true, .name = WORD("single-J groove") },
	[FIG_PREP_DOUBLE_V] = { .both = true, .doubled = true,
	    .name = WORD("double-V groove") },
	[FIG_PREP_DOUBLE_BEVEL] = { .doubled = true, .name = WORD("double-bevel groove") },
	[FIG_PREP_DOUBLE_U] = { .both = true, .curved = true, .doubled = true,
	    .name = WORD("double-U groove") },
	[FIG_PREP_DOUBLE_J] = { .curved = true, .doubled = true,
	    .name = WORD("double-J groove") },
	[FIG_PREP_FLARE_V] = { .both = true, .flare = true, .name = WORD("flare-V groove") },
	[FIG_PREP_FLARE_BEVEL] = { .flare = true, .name = WORD("flare-bevel groove") },
};

#define BIT(prep) (1U << FIG_PREP_##prep)
#define SINGLE (BIT(SQUARE) | BIT(V) | BIT(BEVEL) | BIT(U) | BIT(J))
#define ONE_MEMBER (BIT(BEVEL) | BIT(J) | BIT(DOUBLE_BEVEL) | BIT(DOUBLE_J))
#define FLARES (BIT(FLARE_V) | BIT(FLARE_BEVEL))

/* What each shape means by itself, and which preparations it takes (AWS A3.0, joint
 * types with their usual grooves; from memory). */
static const struct { enum fig_prep own; unsigned takes; str why; } shapes[FIG_SHAPE_COUNT] = {
	[FIG_SQUARE_BUTT] = { FIG_PREP_SQUARE, BIT(SQUARE),
	    WORD("a square butt is not prepared otherwise; write butt") },
	[FIG_SINGLE_V] = { FIG_PREP_V, BIT(V),
	    WORD("a single-V is not prepared otherwise; write butt") },
	[FIG_SINGLE_BEVEL] = { FIG_PREP_BEVEL, BIT(BEVEL),
	    WORD("a single bevel is not prepared otherwise; write butt") },
	/* A welder gets into a pipe from 24 in on (common practice, no source); the table of
	 * pipe ends below. */
	[FIG_PIPE_BUTT] = { FIG_PREP_V, SINGLE,
	    WORD("nobody gets into a pipe of these sizes to weld its inside: prepare it from "
	      "outside, square, V, bevel, U or J") },
	[FIG_BUTT_GROOVE] = { FIG_PREP_NONE, SINGLE | ONE_MEMBER | FLARES | BIT(DOUBLE_V) |
	        BIT(DOUBLE_U), { NULL, 0 } },
	[FIG_CORNER_GROOVE] = { FIG_PREP_NONE, SINGLE | ONE_MEMBER | BIT(FLARE_BEVEL),
	    WORD("a corner takes no double V or U and no flare-V: the standing plate has no "
	      "second edge") },
	[FIG_TEE_GROOVE] = { FIG_PREP_NONE, ONE_MEMBER,
	    WORD("a tee takes a bevel or a J, single or double: its base has no edge to prepare") },
	[FIG_EDGE_GROOVE] = { FIG_PREP_NONE, SINGLE | FLARES,
	    WORD("an edge joint opens to one side: no double preparation") },
	[FIG_LAP] = { FIG_PREP_NONE, 0,
	    WORD("a lap takes fillets, plugs, slots or spots: its plates lie flat on each other and "
	      "leave no groove; few shops bevel its edge, and a picture shows that") },
	[FIG_FLARE_BEVEL] = { FIG_PREP_NONE, BIT(FLARE_BEVEL),
	    WORD("a round on a plate makes a flare-bevel and nothing else") },
};

const struct prep_kind *prep_kind(enum fig_prep p)
{
	return &kinds[(unsigned)p < FIG_PREP_COUNT ? p : FIG_PREP_NONE];
}

enum fig_prep prep_of(const struct fig_joint *j)
{
	return j->prep != FIG_PREP_NONE ? j->prep : shapes[j->shape].own;
}

bool fig_prepares_both(const struct fig_joint *j)
{
	const struct prep_kind *k = prep_kind(prep_of(j));

	return k->both && !k->flare;
}

/* ---- faults ---- */

static double front_deg(const struct fig_joint *j, const struct prep_kind *k)
{
	return k->both ? fig_included_deg(j) / 2
	    : fig_given(j->bevel_angle_deg) ? j->bevel_angle_deg : j->angle_deg;
}

/* Bevel of each prepared member at the back of a double preparation. */
static double back_deg(const struct fig_joint *j, const struct prep_kind *k)
{
	if (fig_given(j->bevel_back_deg))
		return j->bevel_back_deg;
	if (fig_given(j->angle_back_deg))
		return k->both ? j->angle_back_deg / 2 : j->angle_back_deg;
	return front_deg(j, k);
}

static double back_radius(const struct fig_joint *j)
{
	return fig_given(j->radius_back_mm) ? j->radius_back_mm : j->radius_mm;
}

static str back_fault(const struct fig_joint *j, const struct prep_kind *k)
{
	double most = k->both ? 80 : 79.999;

	if (back_deg(j, k) >= most)
		return WORD("the angle at the back is 160 degrees or more, or 80 of one member");
	if (fig_given(j->angle_back_deg) && fig_given(j->bevel_back_deg) &&
	    fabs(j->angle_back_deg - (k->both ? 2 : 1) * j->bevel_back_deg) > 0.1)
		return WORD("angle and bevel at the back do not agree");
	return STR("");
}

static str angle_fault(const struct fig_joint *j, const struct prep_kind *k)
{
	bool angle = fig_given(j->angle_deg), bevel = fig_given(j->bevel_angle_deg);
	double want = k->both ? 2 * j->bevel_angle_deg : j->bevel_angle_deg;

	if (!angle && !bevel)
		return k->both ? WORD("the included angle is not given")
		               : WORD("the bevel angle is not given");
	if (k->both && fig_included_deg(j) >= 160)
		return WORD("the included angle is 160 degrees or more");
	if (!k->both && (bevel ? j->bevel_angle_deg : j->angle_deg) >= 80)
		return WORD("the bevel angle is 80 degrees or more");
	if (angle && bevel && fabs(j->angle_deg - want) > 0.1)
		return k->both ? WORD("the included angle is not twice the bevel angle")
		               : WORD("the angle is not the bevel angle of the one member");
	return STR("");
}

/* What goes with no groove of that kind. */
static str extra_fault(const struct fig_joint *j, const struct prep_kind *k, bool square)
{
	bool plain = square || k->flare;

	if (!k->doubled && fig_given(j->depth_back_mm))
		return WORD("a depth at the back goes with a double preparation");
	if (!k->doubled && (fig_given(j->angle_back_deg) || fig_given(j->bevel_back_deg) ||
	    fig_given(j->radius_back_mm)))
		return WORD("an angle or radius at the back goes with a double preparation");
	if (!k->curved && fig_given(j->radius_back_mm))
		return WORD("a root radius goes with a U or J");
	if (!k->curved && !k->flare && fig_given(j->radius_mm))
		return WORD("a root radius goes with a U or J");
	if (plain && fig_given(j->land_mm))
		return WORD("a land does not go with this joint");
	if (plain && fig_given(j->depth_mm))
		return WORD("a depth of preparation does not go with this joint");
	if (k->flare && (fig_given(j->angle_deg) || fig_given(j->bevel_angle_deg)))
		return WORD("an angle does not go with a flare");
	if (k->flare && fig_given(j->backing_t_mm))
		return WORD("a backing does not go with a flare");
	return STR("");
}

/* Thickness at the prepared edge. */
static double edge_thick(const struct fig_joint *j, const struct prep_kind *k)
{
	return k->both && j->shape != FIG_CORNER_GROOVE ? fmin(j->t1_mm, fig_t2_mm(j))
	                                                : j->t1_mm;
}

/* Depths and land as they follow from one another; false: they cannot. */
static bool share_depth(const struct fig_joint *j, const struct prep_kind *k, double *front,
    double *back, double *land)
{
	double t = edge_thick(j, k), rest;

	*front = fig_given(j->depth_mm) ? j->depth_mm : 0;
	*back = fig_given(j->depth_back_mm) ? j->depth_back_mm : 0;
	*land = fig_given(j->land_mm) ? j->land_mm : 0;
	rest = t - *front - *back - *land;
	if (!k->doubled && !(*front > 0))
		*front = rest;
	else if (k->doubled && !(*front > 0) && !(*back > 0))
		*front = *back = rest / 2;
	else if (k->doubled && !(*front > 0))
		*front = rest;
	else if (k->doubled && !(*back > 0))
		*back = rest;
	else if (!(*land > 0))
		*land = fmax(rest, 0);
	else if (rest > SAME_MM)
		return false;
	return *front > 0 && (!k->doubled || *back > 0) &&
	    *front + *back + *land <= t + SAME_MM;
}

static str depth_fault(const struct fig_joint *j, const struct prep_kind *k)
{
	double front, back, land;
	double t = edge_thick(j, k);

	if (j->shape == FIG_EDGE_GROOVE) {
		if (fig_given(j->land_mm))
			return WORD("a land does not go with this joint");
		return fig_given(j->depth_mm) ? STR("")
		                              : WORD("the depth of the groove is not given");
	}
	if (fig_given(j->land_mm) && j->land_mm >= t)
		return WORD("the land is as thick as the member or thicker");
	if (k->doubled && k->both && fabs(j->t1_mm - fig_t2_mm(j)) > SAME_MM)
		return WORD("a double preparation wants both members of one thickness");
	if (share_depth(j, k, &front, &back, &land))
		return STR("");
	if (front + back + land > t + SAME_MM || !(front > 0))
		return k->doubled ? WORD("the preparations are deeper than the member is thick")
		                  : WORD("the preparation is deeper than the member is thick");
	if (k->doubled && !(back > 0))
		return WORD("the preparations are deeper than the member is thick");
	return WORD("depth and land do not make up the thickness");
}

static double root_height(double deg, double radius_mm)
{
	return radius_mm * (1 - geom_sin(deg));
}

static str size_fault(const struct fig_joint *j, const struct prep_kind *k)
{
	struct prep_edge e[2];

	prep_edges(j, e);
	if (k->curved && (e[0].front.depth_mm < root_height(e[0].front.deg, j->radius_mm) ||
	    (k->doubled && e[0].back.depth_mm < root_height(e[0].back.deg, back_radius(j)))))
		return WORD("the root radius is larger than the groove is deep");
	if (j->shape == FIG_CORNER_GROOVE && e[1].front.run_mm >= fig_t2_mm(j))
		return WORD("the groove is wider than the standing plate is thick");
	if (j->shape == FIG_EDGE_GROOVE && (e[0].front.run_mm >= j->t1_mm ||
	    e[1].front.run_mm >= fig_t2_mm(j)))
		return WORD("the groove is wider than the plates are thick");
	return STR("");
}

static str flare_fault(const struct fig_joint *j)
{
	double t2 = fig_t2_mm(j);

	if (j->shape == FIG_FLARE_BEVEL)
		return STR("");
	if (!fig_given(j->radius_mm))
		return WORD("the outside radius of the bend is not given");
	if (j->radius_mm < j->t1_mm - SAME_MM ||
	    (j->prep == FIG_PREP_FLARE_V && j->radius_mm < t2 - SAME_MM))
		return WORD("the outside radius of the bend is smaller than the member is thick");
	if (j->shape == FIG_BUTT_GROOVE && j->prep == FIG_PREP_FLARE_BEVEL &&
	    t2 < j->radius_mm - SAME_MM)
		return WORD("the square edge is thinner than the bend is high: there is no root");
	return STR("");
}

str prep_fault(const struct fig_joint *j)
{
	enum fig_prep p = prep_of(j);
	const struct prep_kind *k = prep_kind(p);
	str why;

	if (p == FIG_PREP_NONE)
		return j->shape >= FIG_BUTT_GROOVE ? WORD("the preparation is not given") : STR("");
	if (!(shapes[j->shape].takes & 1U << p))
		return shapes[j->shape].why.n ? shapes[j->shape].why
		                              : WORD("this joint takes no preparation");
	why = extra_fault(j, k, p == FIG_PREP_SQUARE);
	if (why.n > 0 || p == FIG_PREP_SQUARE)
		return why;
	if (k->flare)
		return flare_fault(j);
	why = angle_fault(j, k);
	if (why.n == 0 && k->doubled)
		why = back_fault(j, k);
	if (why.n == 0 && k->curved && !fig_given(j->radius_mm))
		why = WORD("the root radius is not given");
	if (why.n == 0)
		why = depth_fault(j, k);
	return why.n > 0 ? why : size_fault(j, k);
}

/* ---- edges ---- */

static struct prep_face face_of(double depth, double deg, double radius)
{
	struct prep_face f = { depth, deg, radius, 0 };

	if (depth > 0)
		f.run_mm = radius * geom_cos(deg) +
		    (depth - root_height(deg, radius)) * geom_tan(deg);
	return f;
}

void prep_edges(const struct fig_joint *j, struct prep_edge out[2])
{
	enum fig_prep p = prep_of(j);
	const struct prep_kind *k = prep_kind(p);
	double t[2] = { j->t1_mm, fig_t2_mm(j) }, front = 0, back = 0, land = 0;
	double radius = k->curved ? j->radius_mm : 0, deg = front_deg(j, k);

	if (j->shape == FIG_EDGE_GROOVE)
		front = j->depth_mm;
	else if (p != FIG_PREP_NONE && p != FIG_PREP_SQUARE)
		share_depth(j, k, &front, &back, &land);
	for (int i = 0; i < 2; i++) {
		bool cut = p > FIG_PREP_SQUARE && !k->flare && (i == 0 || k->both);
		/* A thicker member is beveled through like the other. */
		double more = cut && j->shape < FIG_CORNER_GROOVE ? t[i] - edge_thick(j, k) : 0;

		out[i] = (struct prep_edge){ .thick_mm = t[i], .land_mm = cut ? land : 0 };
		out[i].front = face_of(cut ? front + more : 0, deg, radius);
		out[i].back = face_of(cut ? back : 0, back_deg(j, k),
		    k->curved ? back_radius(j) : 0);
	}
}

size_t prep_line(const struct prep_face *f, pt *out)
{
	size_t n = 0;

	out[n++] = (pt){ 0, 0 };
	for (int i = 1; i <= ROOT_STEPS && f->radius_mm > 0; i++) {
		pt p = pt_polar(f->radius_mm, -90 + (90 - f->deg) * i / ROOT_STEPS);

		out[n++] = (pt){ p.x, p.y + f->radius_mm };
	}
	out[n++] = (pt){ f->run_mm, f->depth_mm };
	return n;
}
