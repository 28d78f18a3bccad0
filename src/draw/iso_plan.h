/* draw/iso_plan.h - where everything of an isometric figure lies, before it is inked.
 *
 * The scene is worked out once, on paper in millimeters of the members; a plan is the
 * scene at one scale with its dimensions and balloons, in points. Private to the
 * figures of draw; all memory comes from the arena of the figure. */
#ifndef DRAW_ISO_PLAN_H
#define DRAW_ISO_PLAN_H

#include "draw/dim.h"
#include "draw/solid.h"

#define ISO_BALLOON_PT 10.0
#define ISO_ANCHORS 8

struct iso_line {
	pt a, b;
	bool thick;
};

/* Spots on the surface of a part that are seen, those farthest from lines and corners
 * first. */
struct iso_anchors {
	pt v[ISO_ANCHORS];
	double clear[ISO_ANCHORS];  /* from the nearest line, with a share of that from the
	                             * nearest end of one */
	size_t n;
};

/* One way to lay a dimension: which axis it measures, along which it is moved off, and an
 * edge of the box, parallel to the axis, that it is moved off from. */
#define ISO_WAYS 4
struct iso_way {
	enum fig_axis axis, off;
	double base[3];          /* a corner of the box on that edge */
	double way;              /* +1 or -1 along `off` */
	double lo[3], hi[3];     /* the corners of the weldment that it measures between */
	double cost;
};

struct iso_scene {
	const struct fig_iso *f;
	struct space_view view;  /* scale 1.2247: lengths along the axes are true */
	struct solid *solid;     /* by member */
	struct iso_line *line;
	size_t nlines, lines_cap;
	struct iso_anchors anchors[FIG_ISO_PARTS];
	double lo[3], hi[3];
	struct iso_way way[3][ISO_WAYS]; /* of dimensions, by axis */
	pt *hull;                /* around all lines */
	size_t nhull;
};

struct iso_scene *iso_scene_new(const struct fig_iso *f);
/* Its last part: the ways. */
void iso_scene_ways(struct iso_scene *s);

#define ISO_THIN 40
#define ISO_ARROWS 6

struct iso_balloon {
	bool shown;              /* false: nothing of the part is seen */
	pt at, edge, tip;        /* middle; where the leader leaves it; the spot */
};

struct iso_plan {
	const struct iso_scene *scene;
	const struct faces *faces;
	rect area;
	double pt_mm, size_pt;
	enum dim_lines lines;
	pt shift;                /* added to every place below */
	struct { pt a, b; } thin[ISO_THIN];
	struct { pt tip, dir; } arrow[ISO_ARROWS];
	struct { struct dim_label text; rect r; } label[3];
	size_t nthin, narrows, nlabels;
	struct iso_balloon balloon[FIG_ISO_PARTS];
	pt *hull, *line;         /* of the scene, placed; of each line both ends */
	pt *spot;                /* where a balloon meets neither part nor dimension */
	size_t nspots;
};

/* A place of the scene on paper. */
pt iso_point(const struct iso_plan *p, pt mm);
/* Places dimensions and balloons within p->area. False: too little room. scene, faces,
 * area, pt_mm, size_pt and lines are set by the caller. */
bool iso_plan_place(struct iso_plan *p);
/* The second half: the balloons, once the dimensions lie. */
bool iso_place_balloons(struct iso_plan *p);

#endif
