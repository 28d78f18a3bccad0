/* The ways in which each overall dimension may be laid, and what it measures between. */
#include "draw/iso_plan.h"

#include "draw/geom.h"

#include <math.h>

#define SAME_MM 1e-3

static pt project(const struct iso_scene *s, const double mm[3])
{
	return space_point(&s->view, (vec){ mm[0], mm[1], mm[2] });
}

static void part_corner(const struct solid_part *part, size_t i, double v[3])
{
	v[0] = part->v[i].x;
	v[1] = part->v[i].y;
	v[2] = part->v[i].z;
}

/* The corner of the weldment at that end of the axis whose picture is nearest to where the
 * extension line goes. */
static void find_corner(const struct iso_scene *s, const struct iso_way *m, double end,
    double out[3])
{
	double least = INFINITY, at[3] = { m->base[0], m->base[1], m->base[2] };
	pt base;

	at[m->axis] = end;
	base = project(s, at);
	for (size_t i = 0; i < s->f->nmembers; i++)
		for (size_t k = 0; k < s->solid[i].nparts; k++)
			for (size_t c = 0; c < 2 * s->solid[i].part[k].n; c++) {
				double v[3], d;

				part_corner(&s->solid[i].part[k], c, v);
				if (fabs(v[m->axis] - end) > SAME_MM)
					continue;
				d = pt_length(pt_sub(project(s, v), base));
				if (d >= least)
					continue;
				least = d;
				for (int q = 0; q < 3; q++)
					out[q] = v[q];
			}
}

/* Where both ends of the weldment lie in one plane, the dimension lies there too. */
static void measure(const struct iso_scene *s, struct iso_way *m)
{
	int third = 3 - (int)m->axis - (int)m->off;

	find_corner(s, m, s->lo[m->axis], m->lo);
	find_corner(s, m, s->hi[m->axis], m->hi);
	if (fabs(m->lo[third] - m->hi[third]) < SAME_MM)
		m->base[third] = m->lo[third];
}

/* The edges of the box around which its picture turns: for each axis two, and each may be
 * left along either of the other axes. The usual one, below or at the right, comes first. */
void iso_scene_ways(struct iso_scene *s)
{
	const double *lo = s->lo, *hi = s->hi;
	bool left = s->f->from_left;
	double near = left ? lo[0] : hi[0], far = left ? hi[0] : lo[0], way = left ? -1 : 1;
	const struct iso_way all[3][ISO_WAYS] = {
		{ { FIG_X, FIG_Y, { near, lo[1], lo[2] }, -1, { 0 }, { 0 }, 0 },
		    { FIG_X, FIG_Z, { near, lo[1], lo[2] }, -1, { 0 }, { 0 }, 0 },
		    { FIG_X, FIG_Z, { near, hi[1], hi[2] }, 1, { 0 }, { 0 }, 0 },
		    { FIG_X, FIG_Y, { near, hi[1], hi[2] }, 1, { 0 }, { 0 }, 0 } },
		{ { FIG_Y, FIG_X, { near, lo[1], lo[2] }, way, { 0 }, { 0 }, 0 },
		    { FIG_Y, FIG_Z, { near, lo[1], lo[2] }, -1, { 0 }, { 0 }, 0 },
		    { FIG_Y, FIG_Z, { far, lo[1], hi[2] }, 1, { 0 }, { 0 }, 0 },
		    { FIG_Y, FIG_X, { far, lo[1], hi[2] }, -way, { 0 }, { 0 }, 0 } },
		{ { FIG_Z, FIG_Y, { near, hi[1], lo[2] }, 1, { 0 }, { 0 }, 0 },
		    { FIG_Z, FIG_X, { near, hi[1], lo[2] }, way, { 0 }, { 0 }, 0 },
		    { FIG_Z, FIG_X, { far, lo[1], lo[2] }, -way, { 0 }, { 0 }, 0 },
		    { FIG_Z, FIG_Y, { far, lo[1], lo[2] }, -1, { 0 }, { 0 }, 0 } },
	};

	for (int i = 0; i < 3; i++)
		for (int k = 0; k < ISO_WAYS; k++) {
			s->way[i][k] = all[i][k];
			measure(s, &s->way[i][k]);
		}
}
