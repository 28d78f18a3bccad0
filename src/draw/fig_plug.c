/* Sections of plug, slot and spot welds through the upper plate of a lap. The nugget of a
 * spot is an outline for looks (common practice, no source); its width where the plates
 * meet is true. */
#include "draw/fig_section.h"

#include <math.h>

#define NUGGET_TOP 1.3           /* width at the surface against that at the lap */
#define NUGGET_BOTTOM 0.5
#define NUGGET_DEEP 0.5          /* of the lower plate */

static void lap_dims(struct section *s, const struct fig_joint *j, double reach)
{
	double gap = fig_gap_low_mm(j), half = j->groove_width_mm / 2, t2 = fig_t2_mm(j);

	section_upright(s, SECTION_LEFT, (pt){ -reach, gap }, (pt){ -reach, gap + j->t1_mm },
	    SECTION_UP, j->label_t1);
	section_upright(s, SECTION_LEFT, (pt){ -reach, -t2 }, (pt){ -reach, 0 },
	    SECTION_DOWN, j->label_t2);
	section_pointer(s, SECTION_RIGHT, (pt){ half + (reach - half) / 2, gap / 2 },
	    (pt){ reach, -t2 }, j->label_gap);
}

void section_plug(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double half = j->groove_width_mm / 2, gap = fig_gap_low_mm(j), t2 = fig_t2_mm(j);
	double top = gap + j->t1_mm, reach = half + f.arm_mm;
	double fill = fig_given(j->depth_mm) ? j->depth_mm : top;
	struct section_bead *b;

	section_box(section_plate(s, 45), -reach, gap, -half, top, true, false);
	section_box(section_plate(s, 45), half, gap, reach, top, false, true);
	section_box(section_plate(s, 135), -reach, -t2, reach, 0, true, true);
	b = section_bead(s);
	section_move(b, (pt){ -half, 0 });
	section_line(b, (pt){ half, 0 });
	section_line(b, (pt){ half, fill });
	section_line(b, (pt){ -half, fill });
	section_close(b);
	lap_dims(s, j, reach);
	section_level(
	    s, SECTION_TOP, (pt){ -half, top }, (pt){ half, top }, j->label_groove_width);
	if (fig_given(j->depth_mm))
		section_upright(s, SECTION_RIGHT, (pt){ half, 0 }, (pt){ half, fill },
		    SECTION_UP, j->label_depth);
}

void section_spot(struct section *s, const struct fig_joint *j, struct section_frame f)
{
	double half = j->groove_width_mm / 2, gap = fig_gap_low_mm(j), t2 = fig_t2_mm(j);
	double top = gap + j->t1_mm, reach = half * NUGGET_TOP + f.arm_mm;
	double rise = fig_given(j->reinforcement_mm) ? j->reinforcement_mm : 0;
	struct section_bead *b;

	section_box(section_plate(s, 45), -reach, gap, reach, top, true, true);
	section_box(section_plate(s, 135), -reach, -t2, reach, 0, true, true);
	b = section_bead(s);
	section_move(b, (pt){ half * NUGGET_TOP, top });
	section_face(b, (pt){ half * NUGGET_TOP, top }, (pt){ -half * NUGGET_TOP, top }, -rise);
	section_line(b, (pt){ -half, 0 });
	section_line(b, (pt){ -half * NUGGET_BOTTOM, -t2 * NUGGET_DEEP });
	section_line(b, (pt){ half * NUGGET_BOTTOM, -t2 * NUGGET_DEEP });
	section_line(b, (pt){ half, 0 });
	section_close(b);
	lap_dims(s, j, reach);
	section_level(
	    s, SECTION_BOTTOM, (pt){ -half, 0 }, (pt){ half, 0 }, j->label_groove_width);
	section_pointer(s, SECTION_RIGHT, (pt){ half * 0.4, top + rise * 0.9 },
	    (pt){ reach, top + rise * 2 }, j->label_reinforcement);
}
