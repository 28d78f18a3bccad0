/* draw/fig_section.h - a joint cut across, before it is placed on paper.
 *
 * Millimeters, x right, y up, origin at the root. Shapes are built for one scale at
 * a time because arms cut short by a break line have a length on paper, not in steel.
 * Private to the figures of draw. */
#ifndef DRAW_FIG_SECTION_H
#define DRAW_FIG_SECTION_H

#include "draw/fig.h"

#define SECTION_POINTS 80
#define SECTION_MEMBERS 16
#define SECTION_BEADS 64
#define SECTION_SEGS 48
#define SECTION_DIMS 60
#define SECTION_SPOTS 40
#define SECTION_RULES 440
#define SECTION_EDGE_NONE SECTION_POINTS

/* Radius of the ring around a number, in points. */
#define SECTION_SPOT_PT 10.0

struct section_member {
	pt v[SECTION_POINTS];
	size_t n;
	double hatch_deg;        /* NAN: seen from outside, not cut */
	size_t broken[2];        /* edges from v[i] to v[i + 1] that are break lines */
	bool open; /* the edge from the last corner to the first is not drawn */
};

struct section_bead {
	struct seg s[SECTION_SEGS];
	size_t n;
	bool thin;               /* between beads */
};

enum section_dim_kind {
	SECTION_UPRIGHT,         /* height from a to b, line at the left or right */
	SECTION_LEVEL,           /* width from a to b, line above or below */
	SECTION_LEVEL_BESIDE,    /* the same with the label at the left or right end */
	SECTION_ANGLE,           /* at apex, from a to b counterclockwise, above */
	SECTION_POINTER,         /* a leader to a; the label wants the height of b */
	SECTION_DROP,            /* a label below the part with a leader up to a */
	SECTION_ORDINATE_X,      /* a line from a to a label below the part */
	SECTION_ORDINATE_Y,      /* a line from a to a label at the left */
	SECTION_CHAIN_X,         /* width from a to b in one row of arrows below */
	SECTION_CHAIN_Y          /* height from a to b in one row of arrows at the left */
};

enum section_side { SECTION_LEFT, SECTION_RIGHT, SECTION_TOP, SECTION_BOTTOM };
/* Where the leader leaves an upright dimension too small for arrows inside. */
enum section_exit { SECTION_MIDDLE, SECTION_UP, SECTION_DOWN };

struct section_dim {
	enum section_dim_kind kind;
	enum section_side side;
	enum section_side end;   /* LEVEL_BESIDE: which end has the label */
	enum section_exit exit;
	bool repeated;           /* LEVEL_BESIDE: that end has a label already */
	bool first;              /* CHAIN: begins the row, so a has a line too */
	bool near;               /* LEVEL: just below a and b, not below the whole part */
	pt a, b, apex;
	str label;
};

/* What one weld fills, for its beads: walls from the root to the toes. For a fillet a runs
 * along the base. */
#define SECTION_WALL 20
#define SECTION_REGIONS 2
struct section_region {
	pt a[SECTION_WALL], b[SECTION_WALL];
	size_t na, nb;
	double rise;             /* of its face over the line from toe to toe */
	bool back;               /* welded from the other side */
};

struct section_rule { pt a, b; bool dashed, thin; };
struct section_text { pt at; str text; };

struct section {
	struct section_member member[SECTION_MEMBERS];
	struct section_bead bead[SECTION_BEADS];
	struct section_dim dim[SECTION_DIMS];
	struct section_rule rule[SECTION_RULES];
	struct section_region region[SECTION_REGIONS];
	pt spot[SECTION_SPOTS];  /* centers of numbers */
	unsigned spot_number[SECTION_SPOTS];
	struct section_text text;
	double clock_mm;         /* end view: how far out 12, 3, 6, 9 stand; 0 none */
	bool no_3, no_9;         /* a label that names the hour stands there */
	bool spots_apart;        /* rings may touch neither each other nor a bead */
	bool spots_bare;         /* no rings: the numbers stand in beads */
	bool sheds;              /* its shape leaves things out when room is short */
	bool crowded;            /* beads have no room for their numbers at this scale */
	size_t nmembers, nbeads, ndims, nspots, nrules, nregions;
};

/* What a shape is built for. */
struct section_frame {
	double mm_pt;            /* millimeters of steel under one point of paper */
	rect room;               /* what the section has on paper; points */
	double arm_mm;           /* how far a member runs on past the joint */
	bool full;               /* with what may be left out when room is short */
};

void section_clear(struct section *s); /* sheds stays */
/* Whether nothing is to be left out. Asked by shapes only that then leave something out;
 * noted in s. */
bool section_full(struct section *s, struct section_frame f);

/* Adding parts; each asserts that there is room. */
struct section_member *section_plate(struct section *s, double hatch_deg);
void section_corner(struct section_member *m, double x, double y);
/* The edge from the latest corner to the next is a break line. */
void section_break(struct section_member *m);
/* A level plate from (x0, y0) to (x1, y1); either end may be a break. */
void section_box(struct section_member *m, double x0, double y0, double x1, double y1,
    bool left_broken, bool right_broken);
struct section_bead *section_bead(struct section *s);
void section_move(struct section_bead *b, pt p);
void section_line(struct section_bead *b, pt p);
/* A face from the latest point to p, bulging by rise to its left. */
void section_face(struct section_bead *b, pt from, pt to, double rise);
void section_close(struct section_bead *b);
/* An empty region. */
struct section_region *section_region(struct section *s, bool back);
void section_rule(struct section *s, pt a, pt b, bool dashed);
/* A center line from a to b: long and short strokes. */
void section_axis(struct section *s, pt a, pt b, double mm_pt);
/* Adds d unless its label is empty. */
void section_dim(struct section *s, struct section_dim d);
void section_upright(struct section *s, enum section_side side, pt a, pt b,
    enum section_exit exit, str label);
void section_level(struct section *s, enum section_side side, pt a, pt b, str label);
/* Below the part, the label at that end. */
void section_beside(struct section *s, enum section_side end, pt a, pt b, str label);
/* A leader to `to`; the label wants the height of `want`. */
void section_pointer(struct section *s, enum section_side side, pt to, pt want,
    str label);

/* How far a member reaches: to its own width when that is nearer than used + arm.
 * *broken tells whether it is cut short. */
double section_reach(double width_mm, double used_mm, double arm_mm, bool *broken);

/* Draws and numbers the beads of j in the regions of s. */
void section_beads(struct section *s, const struct fig_joint *j, struct section_frame f);

/* Builds the section of j into an empty s. */
typedef void section_build(struct section *s, const struct fig_joint *j,
    struct section_frame f);

/* The builders, by shape; see fig_joint_fault for what they may rely on. */
void section_tee(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_lap(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_corner_open(struct section *s, const struct fig_joint *j,
    struct section_frame f);
void section_corner_closed(struct section *s, const struct fig_joint *j,
    struct section_frame f);
void section_edge(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_butt(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_plug(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_spot(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_corner_groove(struct section *s, const struct fig_joint *j,
    struct section_frame f);
void section_tee_groove(struct section *s, const struct fig_joint *j,
    struct section_frame f);
void section_edge_groove(struct section *s, const struct fig_joint *j,
    struct section_frame f);
void section_pad(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_flare(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_gouge(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_cut_edge(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_bevel_cut(struct section *s, const struct fig_joint *j, struct section_frame f);
void section_branch(struct section *s, const struct fig_joint *j, struct section_frame f);

/* A round hole or a slot with round ends, as a heavy line. */
void plate_opening(struct section *s, const struct fig_feature *h);
/* Links of both chains; what they say, appended as sentences. */
struct buf;
void plate_chains(struct section *s, const struct fig_plate *p);
void plate_chain_words(struct buf *b, const struct fig_plate *p);
/* Of a plate that is cut by torch, from above: the way along a line with the side of its
 * kerf, and the kerf within a hole or slot. Signs of one size on paper. */
void plate_cut_line(struct section *s, const struct fig_feature *g, double mm_pt);
void plate_cut_opening(struct section *s, const struct fig_feature *g, double mm_pt);

/* "Tee joint"; whether a gap there is a fault of fit-up and no root opening. */
str fig_joint_name(const struct fig_joint *j);
bool fig_gap_is_fault(const struct fig_joint *j);

/* 1 to SECTION_SPOTS in figures. */
str fig_number(unsigned n);

/* Sizes with their defaults applied. */
bool fig_given(double mm);
double fig_t2_mm(const struct fig_joint *j);
double fig_leg2_mm(const struct fig_joint *j);
double fig_gap_low_mm(const struct fig_joint *j);
double fig_gap_middle_mm(const struct fig_joint *j);
double fig_included_deg(const struct fig_joint *j);
/* Width and root radius of a gouged groove. */
double fig_gouge_width_mm(const struct fig_joint *j);
double fig_gouge_radius_mm(const struct fig_joint *j);

/* A figure looking for its scale. */
struct fig_fit {
	/* Builds into an empty s what data (that of the figure) describes. */
	void (*build)(struct section *s, const void *data, struct section_frame f);
	const void *data;
	double thin_mm, thick_mm; /* members that must be readable; 0: not judged */
	str letter, position;    /* told in the strip below, with the scale */
	const struct language *language;
	bool small;              /* scales below 1:10 too; the part has no arms */
	struct fig_tries *tries; /* or null */
	bool arms;               /* small, and with arms after all */
};

/* For figures that find their scale themselves: paper to steel, largest first, and the
 * strip at the foot of area that tells scale i. */
#define FIG_STRIP_PT 18.0
size_t fig_scales(void);
double fig_scale_factor(size_t i);
void fig_scale_strip(struct canvas *c, const struct faces *f, rect area,
    const struct fig_fit *fit, size_t i);
/* Draws at the largest scale that fits, with the strip; false: nothing drawn. */
bool fig_fit_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_fit *fit);
/* Writes "no drawing: <why>" in the area and returns false; why is looked up. */
#define FIG_NO_ROOM WORD("too little room for it")
bool fig_refuse(struct canvas *c, const struct faces *f, rect area,
    const struct language *l, str why);

#endif
