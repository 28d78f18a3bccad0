/* What all figures share: sizes left out, and how they say no. */
#include "draw/fig_section.h"

#include "draw/dim.h"
#include "draw/geom.h"

#include <assert.h>
#include <math.h>

bool fig_given(double mm)
{
	return mm > 0; /* false for NAN too */
}

double fig_t2_mm(const struct fig_joint *j)
{
	return fig_given(j->t2_mm) ? j->t2_mm : j->t1_mm;
}

double fig_leg2_mm(const struct fig_joint *j)
{
	return fig_given(j->leg2_mm) ? j->leg2_mm : j->leg_mm;
}

double fig_gap_low_mm(const struct fig_joint *j)
{
	return fig_given(j->gap_lo_mm) ? j->gap_lo_mm : 0;
}

double fig_gap_middle_mm(const struct fig_joint *j)
{
	double low = fig_gap_low_mm(j);

	return fig_given(j->gap_hi_mm) ? (low + j->gap_hi_mm) / 2 : low;
}

double fig_included_deg(const struct fig_joint *j)
{
	if (fig_given(j->angle_deg))
		return j->angle_deg;
	return fig_given(j->bevel_angle_deg) ? 2 * j->bevel_angle_deg : 0;
}

double fig_gouge_radius_mm(const struct fig_joint *j)
{
	double w = j->groove_width_mm, d = j->depth_mm;

	if (fig_given(j->radius_mm))
		return j->radius_mm;
	if (!fig_given(w))
		return 0;
	/* Deep: half round with upright sides. Shallow: the circle through three points,
	 * r = (w^2 / 4 + d^2) / 2d. */
	return d >= w / 2 ? w / 2 : (w * w / 4 + d * d) / (2 * d);
}

double fig_gouge_width_mm(const struct fig_joint *j)
{
	double r = j->radius_mm, d = j->depth_mm, half;

	if (fig_given(j->groove_width_mm) || !fig_given(r))
		return fig_given(j->groove_width_mm) ? j->groove_width_mm : 0;
	half = fig_given(j->angle_deg) ? j->angle_deg / 2 : 0;
	/* Above the point where the arc is tangent to the sides they are straight. */
	if (d >= r * (1 - geom_sin(half)))
		return 2 * (r * geom_cos(half) +
		    (d - r * (1 - geom_sin(half))) * geom_tan(half));
	return 2 * sqrt(d * (2 * r - d));
}

str fig_number(unsigned n)
{
	static const char *const number[SECTION_SPOTS] = { "1", "2", "3", "4", "5", "6",
	    "7", "8", "9", "10", "11", "12", "13", "14", "15", "16", "17", "18", "19",
	    "20", "21", "22", "23", "24", "25", "26", "27", "28", "29", "30", "31", "32",
	    "33", "34", "35", "36", "37", "38", "39", "40" };

	assert(n >= 1 && n <= SECTION_SPOTS);
	return str_of(number[n - 1]);
}

bool fig_refuse(struct canvas *c, const struct faces *f, rect area,
    const struct language *l, str why)
{
	struct dim_label say, reason;
	double y = area.y + 2;

	dim_label_set(&say, f, DIM_TYPE_PT, word(l, "no drawing:"), DIM_ONE_LINE);
	why = word_str(l, why);
	dim_label_set(&reason, f, DIM_TYPE_PT, why, DIM_ONE_LINE);
	if (reason.w > area.w - 4)
		dim_label_set(&reason, f, DIM_TYPE_PT, why, DIM_MEDIUM);
	if (y + say.h + reason.h > area.y + area.h)
		return false; /* not even room to say so */
	dim_label_draw(c, f, &say, (rect){ area.x + 2, y, say.w, say.h }, DIM_LEFT);
	dim_label_draw(c, f, &reason,
	    (rect){ area.x + 2, y + say.h, reason.w, reason.h }, DIM_LEFT);
	return false;
}
