#include "draw/fig_layout.h"

#include "draw/fig_prep.h"
#include "draw/geom.h"

#include <math.h>

/* What a shape needs and admits, besides t1; PAD and the like take no backing. */
enum {
	NEEDS_LEG = 1, NO_BEADS = 2, NEEDS_BEVEL = 4, NEEDS_OD = 8, NEEDS_DEPTH = 16,
	NEEDS_BEADS = 32, TAKES_BACKING = 64, TAKES_BOTH = 128, TAKES_LAND = 256,
	CONTACT = 512,           /* the gap is a fault of fit-up, not a root opening */
	FROM_BASE = 1024,        /* beads lie from the base up */
	NEEDS_WIDTH = 2048, IS_CUT = 4096
};

static const struct shape {
	section_build *build;
	unsigned flags;
	str name;
} shapes[] = {
	[FIG_NONE] = { NULL, 0, { NULL, 0 } },
	[FIG_TEE] = { section_tee, FROM_BASE | NEEDS_LEG | TAKES_BOTH | CONTACT, WORD("Tee joint") },
	[FIG_LAP] = { section_lap, FROM_BASE | NEEDS_LEG | TAKES_BOTH | CONTACT, WORD("Lap joint") },
	[FIG_CORNER_OPEN] = { section_corner_open, CONTACT, WORD("Open corner joint") },
	[FIG_CORNER_CLOSED] = { section_corner_closed, FROM_BASE | NEEDS_LEG | CONTACT,
	    WORD("Closed corner joint, fillet inside") },
	[FIG_EDGE] = { section_edge, CONTACT, WORD("Edge joint") },
	[FIG_SQUARE_BUTT] = { section_butt, TAKES_BACKING | TAKES_BOTH,
	    WORD("Square butt joint") },
	[FIG_SINGLE_V] = { section_butt,
	    TAKES_BACKING | TAKES_BOTH | TAKES_LAND,
	    WORD("Single-V butt joint") },
	[FIG_SINGLE_BEVEL] = { section_butt,
	    TAKES_BACKING | TAKES_BOTH | TAKES_LAND,
	    WORD("Single-bevel butt joint, left plate beveled") },
	[FIG_PIPE_BUTT] = { section_butt,
	    NEEDS_OD | TAKES_BACKING | TAKES_LAND,
	    WORD("Pipe butt joint, cut through the wall at the top") },
	[FIG_PAD] = { section_pad, NEEDS_BEADS | NO_BEADS,
	    WORD("Pad of beads side by side on plate") },
	[FIG_FLARE_BEVEL] = { section_flare, FROM_BASE | NEEDS_LEG | NEEDS_OD | TAKES_BOTH,
	    WORD("Flare-bevel weld between a round and a plate") },
	[FIG_U_GROOVE] = { section_gouge, NEEDS_DEPTH | NO_BEADS, WORD("Groove gouged in plate") },
	[FIG_BRANCH] = { section_branch, FROM_BASE | NEEDS_BEVEL | TAKES_LAND,
	    WORD("Branch set on the run, cut through one wall") },
	[FIG_BUTT_TEST] = { section_butt, TAKES_BOTH | NO_BEADS, WORD("Finished butt weld") },
	[FIG_PLUG] = { section_plug, NEEDS_WIDTH | NO_BEADS | CONTACT,
	    WORD("Lap joint with a plug or slot weld") },
	[FIG_SPOT] = { section_spot, NEEDS_WIDTH | NO_BEADS | CONTACT,
	    WORD("Lap joint with a spot weld") },
	[FIG_CUT_EDGE] = { section_cut_edge, NO_BEADS | IS_CUT,
	    WORD("Square cut, the kept piece at the left") },
	[FIG_BEVEL_CUT] = { section_bevel_cut, NO_BEADS | NEEDS_BEVEL | TAKES_LAND | IS_CUT,
	    WORD("Bevel cut, the kept piece at the left") },
	[FIG_BUTT_GROOVE] = { section_butt, TAKES_BACKING | TAKES_BOTH | TAKES_LAND,
	    WORD("Butt joint") },
	[FIG_CORNER_GROOVE] = { section_corner_groove, TAKES_BACKING | TAKES_LAND,
	    WORD("Corner joint") },
	[FIG_TEE_GROOVE] = { section_tee_groove, FROM_BASE | TAKES_BACKING | TAKES_LAND,
	    WORD("Tee joint") },
	[FIG_EDGE_GROOVE] = { section_edge_groove, CONTACT, WORD("Edge joint") },
};

_Static_assert(
    sizeof shapes / sizeof shapes[0] == FIG_SHAPE_COUNT, "a row for each shape");

bool fig_can_draw(enum fig_shape shape)
{
	return (unsigned)shape < FIG_SHAPE_COUNT && shapes[shape].build != NULL;
}

/* The first size that is neither a proper length nor "not given". */
static bool any_size_odd(const struct fig_joint *j)
{
	const double v[] = { j->t1_mm, j->t2_mm, j->width1_mm, j->width2_mm, j->leg_mm, j->leg2_mm,
		j->gap_lo_mm, j->gap_hi_mm, j->land_mm, j->angle_deg, j->bevel_angle_deg,
		j->backing_t_mm, j->backing_width_mm, j->overlap_mm, j->length_mm,
		j->reinforcement_mm, j->depth_mm, j->groove_width_mm, j->radius_mm,
		j->od_mm, j->depth_back_mm, j->kerf_mm,
		j->hole_length_mm, j->spacing_mm, j->angle_back_deg, j->bevel_back_deg,
		j->radius_back_mm };

	for (size_t i = 0; i < sizeof v / sizeof v[0]; i++)
		if (v[i] < 0 || isinf(v[i]))
			return true;
	return false;
}

/* Of a branch and a finished butt; prepared edges are judged with them. */
static str groove_fault(const struct fig_joint *j, unsigned flags)
{
	double thin = fmin(j->t1_mm, fig_t2_mm(j));

	if ((flags & NEEDS_BEVEL) && !fig_given(j->bevel_angle_deg))
		return WORD("the bevel angle is not given");
	if ((flags & NEEDS_BEVEL) && j->bevel_angle_deg >= 80)
		return WORD("the bevel angle is 80 degrees or more");
	if (j->shape == FIG_BUTT_TEST && fig_included_deg(j) >= 160)
		return WORD("the included angle is 160 degrees or more");
	if (fig_given(j->land_mm) && (flags & TAKES_LAND) && j->land_mm >= thin)
		return WORD("the land is as thick as the member or thicker");
	if (fig_given(j->land_mm) && !(flags & TAKES_LAND))
		return WORD("a land does not go with this joint");
	return prep_fault(j);
}

/* Beads are drawn where they lie in a weld that is drawn. */
static str bead_fault(const struct fig_joint *j, unsigned flags)
{
	const struct prep_kind *k = prep_kind(prep_of(j));
	unsigned all = 0, back = 0;

	if (j->nlayers == 0)
		return STR("");
	for (size_t i = 0; i < j->nlayers; i++) {
		all += j->layers[i].beads;
		back += j->layers[i].back ? j->layers[i].beads : 0;
		if (j->layers[i].beads == 0)
			return WORD("a layer without beads");
	}
	if (flags & NO_BEADS)
		return WORD("beads of layers are not shown in this drawing");
	if (all > SECTION_SPOTS)
		return WORD("more than 40 beads");
	if (back > 0 && !k->doubled && !j->both_sides)
		return WORD("beads on the back of a joint that is welded from one side");
	if (back > 1 && !k->doubled && shapes[j->shape].build == section_butt)
		return WORD("more than one bead over a closed root");
	if (back > 0 && !k->doubled && shapes[j->shape].build == section_butt &&
	    !fig_given(j->reinforcement_mm))
		return WORD("a bead on the back without its height (reinforcement)");
	return STR("");
}

static str backing_fault(const struct fig_joint *j, unsigned flags)
{
	bool t = fig_given(j->backing_t_mm), w = fig_given(j->backing_width_mm);

	if (!t && !w)
		return STR("");
	if (!(flags & TAKES_BACKING))
		return WORD("a backing does not go with this joint");
	if (!t || !w)
		return WORD("the backing needs a thickness and a width");
	if (j->backing_width_mm <= fig_gap_middle_mm(j))
		return WORD("the backing is narrower than the root opening");
	if (j->both_sides || prep_kind(prep_of(j))->doubled)
		return WORD("a backing and a weld from both sides");
	if (j->ring && !fig_given(j->od_mm))
		return WORD("a backing ring goes into a pipe");
	return STR("");
}

/* A leg may melt the corner of a thin edge: 1/8 in on 11 ga is common, and a sheet whose
 * gauge lies between two 32nds is gauged by the next one up, as the rules take it. */
static double largest_edge_leg_mm(double t_mm)
{
	double step_mm = 25.4 / 32;

	return fmax(1.25 * t_mm, ceil(t_mm / step_mm - 1e-6) * step_mm + 1e-6);
}

static str fillet_fault(const struct fig_joint *j, unsigned flags)
{
	if ((flags & NEEDS_LEG) && !fig_given(j->leg_mm))
		return j->shape == FIG_FLARE_BEVEL
		    ? WORD("the width of the weld, from the line of contact, is not given as leg")
		    : WORD("the size of the fillet is not given");
	if (fig_given(j->leg2_mm) && j->shape != FIG_TEE && j->shape != FIG_LAP &&
	    j->shape != FIG_CORNER_CLOSED)
		return WORD("legs of two sizes go with a plain fillet");
	if ((flags & NEEDS_LEG) && (flags & CONTACT) &&
	    fig_gap_low_mm(j) >= fmin(j->leg_mm, fig_leg2_mm(j)))
		return WORD("the gap is as wide as the leg or wider");
	if (j->shape == FIG_LAP && j->leg_mm > largest_edge_leg_mm(j->both_sides
	    ? fmin(j->t1_mm, fig_t2_mm(j)) : j->t1_mm))
		return WORD("the leg is larger than the edge of the plate");
	if (j->shape == FIG_FLARE_BEVEL && j->leg_mm > 0.45 * j->od_mm)
		return WORD("the weld is too wide for the round");
	if (j->both_sides && !(flags & TAKES_BOTH) && !prep_kind(prep_of(j))->doubled)
		return WORD("this joint is not drawn from both sides");
	return STR("");
}

/* The least width that each member needs across the weld, for what it carries there. */
static void least_widths(const struct fig_joint *j, double least[2])
{
	double t2 = fig_t2_mm(j);
	struct prep_edge edge[2];

	prep_edges(j, edge);
	least[0] = least[1] = 0;
	if (j->shape == FIG_TEE) {
		least[0] = j->leg_mm;
		least[1] = j->t1_mm + 2 * fig_leg2_mm(j);
	} else if (j->shape == FIG_LAP) {
		least[0] =
		    fig_given(j->overlap_mm) ? j->overlap_mm : 5 * fmin(j->t1_mm, t2);
		least[1] = least[0] + fig_leg2_mm(j);
	} else if (j->shape == FIG_CORNER_CLOSED) {
		least[0] = t2 + j->leg_mm;
		least[1] = fig_leg2_mm(j);
	} else if (j->shape == FIG_U_GROOVE) {
		least[0] = fig_gouge_width_mm(j);
	} else if (shapes[j->shape].build == section_butt) {
		least[0] = fmax(edge[0].front.run_mm, edge[0].back.run_mm);
		least[1] = fmax(edge[1].front.run_mm, edge[1].back.run_mm);
	} else if (j->shape == FIG_CORNER_GROOVE) {
		least[0] = fmax(edge[0].front.run_mm, fig_given(j->leg_mm) ? j->leg_mm : 0);
		least[1] = j->t1_mm + (fig_given(j->leg_mm) ? j->leg_mm : 0);
	} else if (j->shape == FIG_TEE_GROOVE) {
		least[0] = fmax(edge[0].front.run_mm, fig_given(j->leg_mm) ? j->leg_mm : 0);
		least[1] = j->t1_mm + 2 * (fig_given(j->leg_mm) ? j->leg_mm : 0);
	} else if (j->shape == FIG_EDGE_GROOVE) {
		least[0] = least[1] = fig_given(j->depth_mm) ? j->depth_mm : 0;
	}
}

static str width_fault(const struct fig_joint *j)
{
	double least[2];

	if (j->restart && fig_given(j->length_mm) &&
	    fabs(j->restart_mm) >= j->length_mm / 2)
		return WORD("the stop and restart lies beyond the weld");
	least_widths(j, least);
	if ((fig_given(j->width1_mm) && j->width1_mm <= least[0]) ||
	    (fig_given(j->width2_mm) && j->width2_mm <= least[1]))
		return WORD("a member is too narrow for the joint");
	return STR("");
}

static str gouge_fault(const struct fig_joint *j)
{
	double r = fig_gouge_radius_mm(j), w = fig_gouge_width_mm(j);

	if (!fig_given(j->depth_mm))
		return WORD("the depth of the groove is not given");
	if (j->depth_mm >= j->t1_mm)
		return WORD("the groove is as deep as the plate or deeper");
	if (!(w > 0) || !(r > 0))
		return WORD("the width or the root radius of the groove is not given");
	if (fig_given(j->groove_width_mm) && fig_given(j->radius_mm))
		return WORD("the groove has both a width and a root radius");
	if (fig_given(j->groove_width_mm) && fig_given(j->angle_deg))
		return WORD("the groove has both a width and an angle");
	if (j->angle_deg >= 120)
		return WORD("the included angle is 120 degrees or more");
	return STR("");
}

/* Of a plug, slot or spot. */
static str hole_fault(const struct fig_joint *j)
{
	if (!fig_given(j->groove_width_mm))
		return WORD("the width of the plug, slot or spot is not given");
	if (fig_given(j->leg_mm))
		return WORD("fillets and plugs are welds of their own: a block for each");
	if (fig_given(j->depth_mm) && j->depth_mm > j->t1_mm + 1e-6)
		return WORD("the filling is deeper than the plate is thick");
	if (fig_given(j->overlap_mm) && j->overlap_mm <= (j->slots_across
	    ? j->hole_length_mm : j->groove_width_mm))
		return WORD("the plug, slot or spot is as wide as the overlap or wider");
	if (j->shape == FIG_SPOT && fig_given(j->depth_mm))
		return WORD("a depth of filling goes with a plug or slot");
	return STR("");
}

static str cut_fault(const struct fig_joint *j, unsigned flags)
{
	if (!(flags & IS_CUT))
		return fig_given(j->kerf_mm) ? WORD("a kerf goes with a cut, not with a weld")
		                             : STR("");
	if (fig_given(j->leg_mm) || fig_given(j->gap_hi_mm) || fig_given(j->reinforcement_mm) ||
	    fig_given(j->overlap_mm) || j->prep != FIG_PREP_NONE)
		return WORD("leg, gap, overlap, reinforcement and preparation are of welds, not of "
		           "cuts");
	if (j->shape == FIG_CUT_EDGE &&
	    (fig_given(j->bevel_angle_deg) || fig_given(j->land_mm)))
		return WORD("a square cut has neither bevel nor land; write bevel cut");
	return STR("");
}

static str shape_fault(const struct fig_joint *j, unsigned flags)
{
	if (fig_given(j->gap_hi_mm) && fig_given(j->gap_lo_mm) &&
	    j->gap_hi_mm < j->gap_lo_mm)
		return WORD("the gap ends below its beginning");
	if ((flags & NEEDS_OD) && !fig_given(j->od_mm))
		return WORD("the outside diameter is not given");
	if (fig_given(j->od_mm) && j->t1_mm >= j->od_mm / 2)
		return WORD("the wall is thicker than the pipe");
	if ((flags & NEEDS_BEADS) && j->passes == 0)
		return WORD("the number of beads is not given");
	if ((flags & NEEDS_BEADS) && j->passes > SECTION_SPOTS)
		return WORD("more than 40 beads");
	if ((flags & NEEDS_BEADS) && !fig_given(j->width1_mm))
		return WORD("the width of the plate is not given");
	if ((flags & NEEDS_BEADS) && j->groove_width_mm > j->width1_mm)
		return WORD("the pad is wider than the plate");
	return STR("");
}

str fig_joint_fault(const struct fig_joint *j)
{
	unsigned flags;
	str why;

	if (!fig_can_draw(j->shape))
		return WORD("no section for this joint");
	flags = shapes[j->shape].flags;
	if (any_size_odd(j))
		return WORD("a size is negative or without end");
	if (!fig_given(j->t1_mm))
		return WORD("the thickness is not given");
	why = shape_fault(j, flags);
	if (why.n == 0)
		why = cut_fault(j, flags);
	if (why.n == 0 && (flags & NEEDS_WIDTH))
		why = hole_fault(j);
	if (why.n == 0)
		why = groove_fault(j, flags);
	if (why.n == 0)
		why = backing_fault(j, flags);
	if (why.n == 0)
		why = fillet_fault(j, flags);
	if (why.n == 0 && (flags & NEEDS_DEPTH))
		why = gouge_fault(j);
	if (why.n == 0)
		why = width_fault(j);
	if (why.n == 0)
		why = bead_fault(j, flags);
	return why;
}

static void build_joint(struct section *s, const void *data, struct section_frame f)
{
	const struct fig_joint *j = data;

	shapes[j->shape].build(s, j, f);
	if (j->beads_only)
		s->ndims = 0;
	section_beads(s, j, f);
}

bool fig_joint_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_joint *j)
{
	str why = fig_joint_fault(j);
	struct fig_fit fit = { build_joint, j, fmin(j->t1_mm, fig_t2_mm(j)),
	    fmax(j->t1_mm, fig_t2_mm(j)), j->letter, j->position, j->language,
	    false, j->tries, false };

	/* Beads may be drawn as large as there is room. */
	if (j->nlayers > 0)
		fit.thick_mm = 0;
	if (fig_given(j->backing_t_mm))
		fit.thin_mm = fmin(fit.thin_mm, j->backing_t_mm);
	if (why.n == 0 && fig_fit_draw(c, f, area, &fit))
		return true;
	return fig_refuse(c, f, area, j->language, why.n > 0 ? why : FIG_NO_ROOM);
}

str fig_joint_name(const struct fig_joint *j)
{
	return shapes[j->shape].name;
}

bool fig_beads_from_base(const struct fig_joint *j)
{
	return (shapes[j->shape].flags & FROM_BASE) != 0;
}

bool fig_gap_is_fault(const struct fig_joint *j)
{
	return (shapes[j->shape].flags & CONTACT) != 0;
}
