#include "draw/fig_layout.h"

#include "base/buf.h"
#include "draw/geom.h"

#include <math.h>

/* What a shape needs and admits, besides t1; PAD and the like take no backing. */
enum {
	NEEDS_LEG = 1, NEEDS_ANGLE = 2, NEEDS_BEVEL = 4, NEEDS_OD = 8, NEEDS_DEPTH = 16,
	NEEDS_BEADS = 32, TAKES_BACKING = 64, TAKES_BOTH = 128, TAKES_LAND = 256,
	CONTACT = 512            /* the gap is a fault of fit-up, not a root opening */
};

static const struct shape {
	section_build *build;
	unsigned flags;
	str name;
} shapes[] = {
	[FIG_NONE] = { NULL, 0, { NULL, 0 } },
	[FIG_TEE] = { section_tee, NEEDS_LEG | TAKES_BOTH | CONTACT, WORD("Tee joint") },
	[FIG_LAP] = { section_lap, NEEDS_LEG | TAKES_BOTH | CONTACT, WORD("Lap joint") },
	[FIG_CORNER_OPEN] = { section_corner_open, CONTACT, WORD("Open corner joint") },
	[FIG_CORNER_CLOSED] = { section_corner_closed, NEEDS_LEG | CONTACT,
	    WORD("Closed corner joint, fillet inside") },
	[FIG_EDGE] = { section_edge, CONTACT, WORD("Edge joint") },
	[FIG_SQUARE_BUTT] = { section_butt, TAKES_BACKING | TAKES_BOTH,
	    WORD("Square butt joint") },
	[FIG_SINGLE_V] = { section_butt,
	    NEEDS_ANGLE | TAKES_BACKING | TAKES_BOTH | TAKES_LAND,
	    WORD("Single-V butt joint") },
	[FIG_SINGLE_BEVEL] = { section_butt,
	    NEEDS_BEVEL | TAKES_BACKING | TAKES_BOTH | TAKES_LAND,
	    WORD("Single-bevel butt joint, left plate beveled") },
	[FIG_PIPE_BUTT] = { section_butt,
	    NEEDS_ANGLE | NEEDS_OD | TAKES_BACKING | TAKES_LAND,
	    WORD("Pipe butt joint, cut through the wall at the top") },
	[FIG_PAD] = { section_pad, NEEDS_BEADS,
	    WORD("Pad of beads side by side on plate") },
	[FIG_FLARE_BEVEL] = { section_flare, NEEDS_LEG | NEEDS_OD | TAKES_BOTH,
	    WORD("Flare-bevel weld between a round and a plate") },
	[FIG_U_GROOVE] = { section_gouge, NEEDS_DEPTH, WORD("Groove gouged in plate") },
	[FIG_BRANCH] = { section_branch, NEEDS_BEVEL | TAKES_LAND,
	    WORD("Branch set on the run, cut through one wall") },
	[FIG_BUTT_TEST] = { section_butt, TAKES_BOTH, WORD("Finished butt weld") },
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
	const double v[] = { j->t1_mm, j->t2_mm, j->width1_mm, j->width2_mm, j->leg_mm,
		j->gap_lo_mm, j->gap_hi_mm, j->land_mm, j->angle_deg, j->bevel_angle_deg,
		j->backing_t_mm, j->backing_width_mm, j->overlap_mm, j->length_mm,
		j->reinforcement_mm, j->depth_mm, j->groove_width_mm, j->radius_mm,
		j->od_mm };

	for (size_t i = 0; i < sizeof v / sizeof v[0]; i++)
		if (v[i] < 0 || isinf(v[i]))
			return true;
	return false;
}

static str groove_fault(const struct fig_joint *j, unsigned flags)
{
	double thin = fmin(j->t1_mm, fig_t2_mm(j)), angle = fig_included_deg(j);

	if ((flags & NEEDS_ANGLE) && !(angle > 0))
		return STR("the included angle is not given");
	if ((flags & NEEDS_ANGLE) && angle >= 160)
		return STR("the included angle is 160 degrees or more");
	if ((flags & NEEDS_ANGLE) && fig_given(j->angle_deg) &&
	    fig_given(j->bevel_angle_deg) &&
	    fabs(j->angle_deg - 2 * j->bevel_angle_deg) > 0.1)
		return STR("the included angle is not twice the bevel angle");
	if ((flags & NEEDS_BEVEL) && !fig_given(j->bevel_angle_deg))
		return STR("the bevel angle is not given");
	if ((flags & NEEDS_BEVEL) && j->bevel_angle_deg >= 80)
		return STR("the bevel angle is 80 degrees or more");
	if (j->shape == FIG_BUTT_TEST && angle >= 160)
		return STR("the included angle is 160 degrees or more");
	if (fig_given(j->land_mm) && (flags & TAKES_LAND) && j->land_mm >= thin)
		return STR("the land is as thick as the member or thicker");
	if (fig_given(j->land_mm) && !(flags & TAKES_LAND))
		return STR("a land does not go with this joint");
	return STR("");
}

static str backing_fault(const struct fig_joint *j, unsigned flags)
{
	bool t = fig_given(j->backing_t_mm), w = fig_given(j->backing_width_mm);

	if (!t && !w)
		return STR("");
	if (!(flags & TAKES_BACKING))
		return STR("a backing does not go with this joint");
	if (!t || !w)
		return STR("the backing needs a thickness and a width");
	if (j->backing_width_mm <= fig_gap_middle_mm(j))
		return STR("the backing is narrower than the root opening");
	if (j->both_sides)
		return STR("a backing and a weld from both sides");
	return STR("");
}

static str fillet_fault(const struct fig_joint *j, unsigned flags)
{
	if ((flags & NEEDS_LEG) && !fig_given(j->leg_mm))
		return STR("the size of the fillet is not given");
	if ((flags & NEEDS_LEG) && (flags & CONTACT) && fig_gap_low_mm(j) >= j->leg_mm)
		return STR("the gap is as wide as the leg or wider");
	/* A leg may melt the corner of a thin edge: 1/8 in on 11 ga is common. */
	if (j->shape == FIG_LAP && j->leg_mm > 1.25 *
	    (j->both_sides ? fmin(j->t1_mm, fig_t2_mm(j)) : j->t1_mm))
		return STR("the leg is larger than the edge of the plate");
	if (j->shape == FIG_FLARE_BEVEL && j->leg_mm > 0.45 * j->od_mm)
		return STR("the weld is too wide for the round");
	if (j->both_sides && !(flags & TAKES_BOTH))
		return STR("this joint is not drawn from both sides");
	return STR("");
}

/* The least width that each member needs across the weld, for what it carries there. */
static void least_widths(const struct fig_joint *j, double least[2])
{
	double t2 = fig_t2_mm(j), land = fig_given(j->land_mm) ? j->land_mm : 0;
	double bevel = j->shape == FIG_SINGLE_BEVEL ? j->bevel_angle_deg
	    : fig_included_deg(j) / 2;

	least[0] = least[1] = 0;
	if (j->shape == FIG_TEE) {
		least[0] = j->leg_mm;
		least[1] = j->t1_mm + 2 * j->leg_mm;
	} else if (j->shape == FIG_LAP) {
		least[0] =
		    fig_given(j->overlap_mm) ? j->overlap_mm : 5 * fmin(j->t1_mm, t2);
		least[1] = least[0] + j->leg_mm;
	} else if (j->shape == FIG_CORNER_CLOSED) {
		least[0] = t2 + j->leg_mm;
		least[1] = j->leg_mm;
	} else if (j->shape == FIG_U_GROOVE) {
		least[0] = fig_gouge_width_mm(j);
	} else if (shapes[j->shape].build == section_butt) {
		least[0] = (j->t1_mm - land) * geom_tan(bevel);
		least[1] =
		    j->shape == FIG_SINGLE_BEVEL ? 0 : (t2 - land) * geom_tan(bevel);
	}
}

static str width_fault(const struct fig_joint *j)
{
	double least[2];

	least_widths(j, least);
	if ((fig_given(j->width1_mm) && j->width1_mm <= least[0]) ||
	    (fig_given(j->width2_mm) && j->width2_mm <= least[1]))
		return STR("a member is too narrow for the joint");
	return STR("");
}

static str gouge_fault(const struct fig_joint *j)
{
	double r = fig_gouge_radius_mm(j), w = fig_gouge_width_mm(j);

	if (!fig_given(j->depth_mm))
		return STR("the depth of the groove is not given");
	if (j->depth_mm >= j->t1_mm)
		return STR("the groove is as deep as the plate or deeper");
	if (!(w > 0) || !(r > 0))
		return STR("the width or the root radius of the groove is not given");
	if (fig_given(j->groove_width_mm) && fig_given(j->radius_mm))
		return STR("the groove has both a width and a root radius");
	if (fig_given(j->groove_width_mm) && fig_given(j->angle_deg))
		return STR("the groove has both a width and an angle");
	if (j->angle_deg >= 120)
		return STR("the included angle is 120 degrees or more");
	return STR("");
}

static str shape_fault(const struct fig_joint *j, unsigned flags)
{
	if (fig_given(j->gap_hi_mm) && fig_given(j->gap_lo_mm) &&
	    j->gap_hi_mm < j->gap_lo_mm)
		return STR("the gap ends below its beginning");
	if ((flags & NEEDS_OD) && !fig_given(j->od_mm))
		return STR("the outside diameter is not given");
	if (fig_given(j->od_mm) && j->t1_mm >= j->od_mm / 2)
		return STR("the wall is thicker than the pipe");
	if ((flags & NEEDS_BEADS) && j->passes == 0)
		return STR("the number of beads is not given");
	if ((flags & NEEDS_BEADS) && j->passes > SECTION_SPOTS)
		return STR("more than 24 beads");
	if ((flags & NEEDS_BEADS) && !fig_given(j->width1_mm))
		return STR("the width of the plate is not given");
	if ((flags & NEEDS_BEADS) && j->groove_width_mm > j->width1_mm)
		return STR("the pad is wider than the plate");
	return STR("");
}

str fig_joint_fault(const struct fig_joint *j)
{
	unsigned flags;
	str why;

	if (!fig_can_draw(j->shape))
		return STR("no section for this joint");
	flags = shapes[j->shape].flags;
	if (any_size_odd(j))
		return STR("a size is negative or without end");
	if (!fig_given(j->t1_mm))
		return STR("the thickness is not given");
	why = shape_fault(j, flags);
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
	return why;
}

static void build_joint(struct section *s, const void *data, struct section_frame f)
{
	const struct fig_joint *j = data;

	shapes[j->shape].build(s, j, f);
}

bool fig_joint_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_joint *j)
{
	str why = fig_joint_fault(j);
	struct fig_fit fit = { build_joint, j, fmin(j->t1_mm, fig_t2_mm(j)),
	    fmax(j->t1_mm, fig_t2_mm(j)), j->letter, j->position, j->language,
	    false };

	if (fig_given(j->backing_t_mm))
		fit.thin_mm = fmin(fit.thin_mm, j->backing_t_mm);
	if (why.n == 0 && fig_fit_draw(c, f, area, &fit))
		return true;
	return fig_refuse(c, f, area, j->language, why.n > 0 ? why : FIG_NO_ROOM);
}

/* what: looked up. */
static void add_size(struct buf *b, const struct fig_joint *j, str what, str label)
{
	what = word_str(j->language, what);
	if (label.n == 0)
		return;
	buf_adds(b, ", ");
	/* A label that names its size already is not told twice. */
	if (str_find(label, what, 0) == label.n)
		buf_addf(b, "%.*s ", STR_ARG(what));
	buf_add(b, label);
}

static void add_sizes(struct buf *b, const struct fig_joint *j)
{
	bool contact = shapes[j->shape].flags & CONTACT;

	add_size(b, j, WORD("position"), j->position);
	add_size(b, j, WORD("thickness"), j->label_t1);
	if (fig_given(j->t2_mm))
		add_size(b, j, WORD("on"), j->label_t2);
	add_size(b, j, WORD("fillet leg"), j->label_leg);
	add_size(b, j, WORD("included angle"), j->label_angle);
	add_size(b, j, WORD("bevel"), j->label_bevel);
	add_size(b, j, WORD("land"), j->label_land);
	add_size(b, j, contact ? WORD("gap") : WORD("root opening"), j->label_gap);
	add_size(b, j, WORD("backing"), j->label_backing);
	add_size(b, j, WORD("overlap"), j->label_overlap);
	add_size(b, j, WORD("groove depth"), j->label_depth);
	add_size(b, j, WORD("width"), j->label_groove_width);
	add_size(b, j, WORD("root radius"), j->label_radius);
	add_size(b, j, WORD("outside diameter"), j->label_od);
	add_size(b, j, WORD("reinforcement"), j->label_reinforcement);
	add_size(b, j, STR(""), j->label_answer);
}

str fig_joint_words(struct arena *a, const struct fig_joint *j)
{
	const struct language *l = j->language;
	struct buf b = { .arena = a };
	str why = fig_joint_fault(j);

	if (why.n > 0)
		return word_format(a, l, "No drawing: %.*s.", STR_ARG(word_str(l, why)));
	buf_add(&b, word_str(l, shapes[j->shape].name));
	buf_add(&b, j->shape == FIG_PAD ? word(l, ", in section and from above")
	                                : word(l, ", in section"));
	add_sizes(&b, j);
	buf_adds(&b, ".");
	if (j->passes > 0 && j->shape == FIG_PAD)
		word_addf(&b, l, " Beads: %u.", j->passes);
	else if (j->passes > 0)
		word_addf(&b, l, " Passes: %u.", j->passes);
	if (j->both_sides)
		buf_add(&b, word(l, " Welded from both sides."));
	return buf_str(&b);
}
