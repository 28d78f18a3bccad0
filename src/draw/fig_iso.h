/* draw/fig_iso.h - a weldment put together: its members in isometric projection, to scale.
 *
 * The projection is the isometric axonometry of ISO 5456-3 (number of the standard from
 * memory): the three axes stand at 120 degrees to each other, and lengths along them are
 * not shortened (common practice of drafting), so the scale told holds along the axes.
 * What is hidden is not drawn. Edges beyond which one sees past the part are thicker.
 *
 * Millimeters; x from left to right, y from front to back, z up. The rules of draw/fig.h
 * hold: labels are written by the caller, nothing is clamped, and too little room gives
 * false with "no drawing: <why>" in the area. */
#ifndef DRAW_FIG_ISO_H
#define DRAW_FIG_ISO_H

#include "draw/fig.h"

#define FIG_ISO_MEMBERS 60
#define FIG_ISO_CORNERS 16
/* Letters from P on, so that none is taken for that of a weld. */
#define FIG_ISO_LETTERS "PQRSTUVWXYZ"
#define FIG_ISO_PARTS (sizeof FIG_ISO_LETTERS - 1)

enum fig_member_shape {
	FIG_MEMBER_SOLID,        /* plate or bar: box or outline */
	FIG_MEMBER_TUBE,         /* square or rectangular, open at both ends */
	FIG_MEMBER_ANGLE, FIG_MEMBER_PIPE, FIG_MEMBER_ROUND
};

enum fig_axis { FIG_X, FIG_Y, FIG_Z };

struct fig_member {
	enum fig_member_shape shape;
	size_t part;             /* in the parts of the figure */
	enum fig_axis along;     /* outline: across it; else the length */
	double size_mm[3];       /* of its box along x, y, z */
	const pt *outline;       /* corners on the two other axes in their order, any way
	                          * round, size_mm[along] thick; null: the whole box. Of a
	                          * tube four, its length along the longest */
	size_t noutline;
	double wall_mm;          /* tube, angle, pipe */
	bool heel_far[2];        /* angle: its corner is at the far side of its box on the
	                          * two other axes */
	double turn_deg;         /* counterclockwise as seen from the end of the axis, about */
	enum fig_axis about;     /* it through `at` */
	double at_mm[3];         /* lowest corner of its box, zero of its outline; pipe and
	                          * round: middle of the end nearest to zero */
	str place;               /* where that is, in words */
};

struct fig_iso_part {
	str name;                /* "rail" */
	str size;                /* "2-1/2 x 2-1/2 x 36 in [...]"; may be empty */
};

struct fig_iso {
	struct arena *arena;     /* to work in */
	const struct fig_member *member;
	size_t nmembers;
	const struct fig_iso_part *part;
	size_t nparts;
	str label[3];            /* of the whole along x, y, z */
	bool from_left;          /* else from the right, both from front and above */
	const struct language *language; /* of labels and words; null: English */
	/* By fig_iso_prepare: */
	str fault;               /* why it cannot be drawn; empty when it can */
	const struct iso_scene *scene;
};

enum fig_iso_wrong {
	FIG_ISO_SOUND,
	FIG_ISO_SIZE,            /* member a: why says what */
	FIG_ISO_OVERLAP,         /* members a and b, mm deep */
	FIG_ISO_FLOATS,          /* member a is mm away from all others */
	FIG_ISO_COUNT            /* of members or kinds: why says what */
};

struct fig_iso_fault {
	enum fig_iso_wrong wrong;
	size_t a, b;
	double mm;
	str why;                 /* in English */
};

/* What makes the members impossible as one weldment, in order of members; returns how
 * many of them out has, at most cap. Parts of a weldment may be FIG_ISO_APART_MM apart
 * and FIG_ISO_DEEP_MM in each other. */
#define FIG_ISO_APART_MM 6.4    /* the widest root opening in use, 1/4 in (common practice,
                                 * no source) */
#define FIG_ISO_DEEP_MM 0.4     /* 1/64 in: sizes are written in fractions */
size_t fig_iso_faults(const struct fig_iso *f, struct fig_iso_fault *out, size_t cap);
/* The box around all members; for labels. */
void fig_iso_extent(const struct fig_iso *f, double lo_mm[3], double hi_mm[3]);

/* Works out what is seen, once for any number of drawings. f and what it points at stay as
 * they are from then on; the struct itself may be copied. */
void fig_iso_prepare(struct fig_iso *f);
/* iso is prepared. */
bool fig_iso_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_iso *iso);
str fig_iso_words(struct arena *a, const struct fig_iso *iso);

#endif
