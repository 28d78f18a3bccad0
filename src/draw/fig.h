/* draw/fig.h - drawings of joints, coupons and blanks, to scale.
 *
 * The caller fills plain data in millimeters and degrees, and writes each label
 * itself in both units ("3/8 in [9.5 mm]"). A size that is NAN or 0 is not given; an
 * empty label leaves that size without a dimension. A label breaks into lines before
 * '[' and at blanks when room is short.
 *
 * Nothing is clamped or guessed: when the data contradict each other, or the area is
 * too small for the labels, the drawing function returns false and writes only
 * "no drawing: <why>" in the area. Texts are borrowed: labels and words must outlive
 * the canvas that recorded them. Every label is drawn within canvas_box_begin/end,
 * named "label"; the note about the scale is named "note". Words that the figures write
 * themselves are in the language of the data.
 *
 * One scale serves both axes, taken from a short list of plain ratios, so that the note
 * is true when the page prints at full size. Long members are shortened by break lines;
 * thicknesses and all joint dimensions are never faked. */
#ifndef DRAW_FIG_H
#define DRAW_FIG_H

#include "base/language.h"
#include "draw/canvas.h"
#include "draw/face.h"

enum fig_shape {
	FIG_NONE,
	FIG_TEE,            /* t1 web (standing), t2 base */
	FIG_LAP,            /* t1 upper, t2 lower plate */
	FIG_CORNER_OPEN,    /* t1 flat, t2 standing; inner corners meet, weld outside */
	FIG_CORNER_CLOSED,  /* t1 flat over the edge of t2; fillet inside */
	FIG_EDGE,           /* t1, t2 face to face, bead along the flush edges */
	FIG_SQUARE_BUTT,    /* t1 left, t2 right */
	FIG_SINGLE_V,
	FIG_SINGLE_BEVEL,   /* the left plate (t1) is beveled */
	FIG_PIPE_BUTT,      /* V through the wall at the top of the pipe */
	FIG_PAD,            /* beads side by side on plate t1; plan below section */
	FIG_FLARE_BEVEL,    /* round of od_mm and wall t1 lying on plate t2 */
	FIG_U_GROOVE,       /* gouged groove in plate t1 */
	FIG_BRANCH,         /* wall t1 of the branch set on wall t2 of the run */
	FIG_BUTT_TEST,      /* a finished butt, sound through, as it goes to test */
	FIG_PLUG,           /* plug or slot: t1 with a hole groove_width_mm wide on t2, filled
	                     * depth_mm deep or flush */
	FIG_SPOT,           /* through t1 into t2, groove_width_mm wide where they meet */
	FIG_CUT_EDGE,       /* t1 cut square; kerf_mm beside the kept piece */
	FIG_BEVEL_CUT,      /* t1 cut at bevel_angle_deg off square, down to the land */
	FIG_BUTT_GROOVE,    /* these four: their edges are prepared as prep says */
	FIG_CORNER_GROOVE,  /* t1 flat against the inner face of t2, top edges flush */
	FIG_TEE_GROOVE,     /* the foot of the web is prepared; leg: of the fillet over it */
	FIG_EDGE_GROOVE,    /* t1, t2 face to face, open towards the flush edges */
	FIG_SHAPE_COUNT
};

/* How edges are prepared; names as in AWS A3.0. V and U prepare both members, bevel and
 * J the first one. The double ones open to both sides. Of the flares the members are
 * bent round by radius_mm, their outside. */
enum fig_prep {
	FIG_PREP_NONE,           /* what the shape says by itself */
	FIG_PREP_SQUARE, FIG_PREP_V, FIG_PREP_BEVEL, FIG_PREP_U, FIG_PREP_J,
	FIG_PREP_DOUBLE_V, FIG_PREP_DOUBLE_BEVEL, FIG_PREP_DOUBLE_U, FIG_PREP_DOUBLE_J,
	FIG_PREP_FLARE_V, FIG_PREP_FLARE_BEVEL,
	FIG_PREP_COUNT
};

/* Beads beside one another in one layer; back: laid from the other side. */
struct fig_layer { unsigned beads; bool back; };

/* What areas of one width have taught about one joint, for whoever tries higher ones until
 * it finds room: the least height, in points, that a scale and length of arms needs; 0: not
 * known yet. All zero at first, and again for another joint or other labels. */
enum { FIG_SCALES = 24, FIG_ARMS = 5 };
struct fig_tries {
	double wide, zoom;       /* what it was learned for */
	bool sheds;
	double needs[2][2][FIG_SCALES][FIG_ARMS]; /* by labels mixed, nothing left out */
};

struct fig_joint {
	enum fig_shape shape;
	enum fig_prep prep;      /* of butt, pipe, corner, tee and edge */
	double t1_mm, t2_mm;     /* members; t2 not given: as t1 */
	double width1_mm, width2_mm; /* members across the weld; not given: long */
	double leg_mm;           /* fillet; FLARE_BEVEL: line of contact to face */
	double leg2_mm;          /* its other leg, not given: as leg_mm. Plain fillets only:
	                          * tee: leg up the web, leg2 along the base; lap: leg at the
	                          * edge, leg2 on the other plate; corner: leg along t1, leg2
	                          * along t2 */
	double gap_lo_mm, gap_hi_mm; /* root opening or fit-up gap; hi not given: as lo.
	                          * Grooves are drawn at the middle of the range, fillet
	                          * and corner joints at its low end */
	double land_mm;
	double angle_deg;        /* included; V, pipe butt, U */
	double bevel_angle_deg;  /* of one member; bevel and branch; V: may be 0 */
	double backing_t_mm, backing_width_mm;
	double overlap_mm;
	double length_mm;        /* of the weld or coupon */
	double reinforcement_mm; /* height above flush; PAD: of the beads */
	double depth_mm, groove_width_mm, radius_mm; /* gouge: depth with width, or depth
	                          * with root radius and included angle. Prepared edge:
	                          * depth from the face, radius of U, J and flares */
	double angle_back_deg, bevel_back_deg, radius_back_mm; /* of a double preparation at
	                          * its back, when other than in front */
	double depth_back_mm;    /* of a double preparation, from the other face */
	double hole_length_mm;   /* of a slot, along its row unless across */
	double spacing_mm;       /* of plugs, slots and spots, middle to middle */
	unsigned holes;          /* in the row; 0: one */
	bool slots_across;       /* slots lie square to their row */
	double kerf_mm;          /* of a cut */
	bool ring;               /* the backing is a ring in the pipe */
	double od_mm;            /* pipe, branch or round */
	bool both_sides;         /* tee and lap: a fillet on the other side too; butt: a back
	                          * weld. A double preparation is welded from both anyway */
	unsigned passes;         /* told in words; PAD: number of beads */
	const struct fig_layer *layers; /* in the order laid, root first; beads are drawn
	                          * and numbered. Grooves: from the left in each layer;
	                          * fillets: from the base up */
	size_t nlayers;
	bool beads_from_right;   /* grooves: numbered from the right in each layer */
	bool beads_inside;       /* no drawing rather than numbers of beads on leaders */
	bool beads_only;         /* without dimensions */
	bool restart;            /* plan: stop and restart, restart_mm right of mid-length */
	double restart_mm;
	unsigned tacks;          /* plan: tack marks along the weld, at most 12 */
	str label_t1, label_t2, label_leg, label_leg2, label_gap, label_land, label_angle;
	str label_bevel, label_backing, label_overlap, label_length, label_reinforcement;
	str label_depth, label_depth_back, label_groove_width, label_radius, label_od, label_kerf;
	str label_angle_back, label_radius_back; /* they say that it is the back */
	str label_spacing, label_places; /* of the row; size and number */
	str label_width1, label_width2; /* plan */
	str label_restart;       /* where it is; in words only */
	str label_answer;        /* at the face of the weld: what a key says of it */
	str letter;              /* of the weld, "A"; may be empty */
	str position;            /* "2F", "3G up"; may be empty */
	const struct language *language; /* of labels and words; null: English */
	struct fig_tries *tries; /* null: nothing is kept */
};

/* Whether there is a section for this shape; FIG_NONE has none. */
bool fig_can_draw(enum fig_shape shape);

/* Whether beads of a layer lie from the base up, not from left to right. */
bool fig_beads_from_base(const struct fig_joint *j);
/* Whether both edges are prepared, so that the included angle is twice the bevel. */
bool fig_prepares_both(const struct fig_joint *j);

/* Why these data make no sense as a joint, in English; empty when they do. */
str fig_joint_fault(const struct fig_joint *j);

/* The section, with dimensions, beads and the scale. False: see above. */
bool fig_joint_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_joint *j);

/* The coupon from above: members, weld, length, restart and tacks. For pipe the end
 * view with clock positions. False: see above. */
bool fig_plan_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_joint *j);

/* What the section shows, in one or two sentences, for readers who cannot see it. Uses
 * the labels for sizes, so it says nothing that the drawing does not. */
str fig_joint_words(struct arena *a, const struct fig_joint *j);
/* The same of the coupon from above, or of the pipe from its end. */
str fig_plan_words(struct arena *a, const struct fig_joint *j);

/* A blank, seen flat. Coordinates in mm from the lower left corner, x right, y up. */
enum fig_mark { FIG_HOLE, FIG_SLOT, FIG_NOTCH, FIG_BEND, FIG_CUT };

struct fig_feature {
	enum fig_mark mark;
	double x_mm, y_mm;       /* HOLE, SLOT: center; NOTCH: lower left corner; BEND,
	                          * CUT: one end of the line */
	double w_mm, h_mm;       /* HOLE: w diameter; SLOT, NOTCH: size along x and y;
	                          * BEND, CUT: the other end less this one */
	str label_x, label_y;    /* distance from the datum edges */
	str label_far_x, label_far_y; /* BEND, CUT: of the other end; empty: told by size */
	str label_size;          /* "9/16 in [14.3 mm] dia", "bend 90 deg up" */
	str label_all;           /* beside the drawing, for this feature and those like it */
	double kerf_x, kerf_y;   /* CUT: towards the side of the kerf; both 0: its middle */
	str label_kerf;          /* "kerf above"; in words only */
	bool like_another;       /* one like it has the label for both */
};

/* Distances from place to place along an edge, first to last, from its lower or left end. */
#define FIG_LINKS 8
struct fig_chain {
	struct fig_link { double from_mm, to_mm; str label; } v[FIG_LINKS];
	size_t n;
};

struct fig_plate {
	double length_mm, width_mm; /* along x and y */
	str label_length, label_width, label_thickness;
	bool torch;              /* cut by torch: cuts run from their first end to the other,
	                          * kerfs of holes and slots lie inside */
	str label_kerf;          /* in words only */
	const struct fig_feature *features;
	size_t nfeatures;        /* at most FIG_FEATURES */
	struct fig_chain chain_x, chain_y; /* drawn in place of distances from the datum edges
	                          * where they find room; both empty: never */
	const struct language *language; /* of labels and words; null: English */
};

#define FIG_FEATURES 40

str fig_plate_fault(const struct fig_plate *p);
bool fig_plate_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_plate *p);
str fig_plate_words(struct arena *a, const struct fig_plate *p);

#endif
