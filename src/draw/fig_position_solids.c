/* Plates, bars and tubes of the position sketches. Built face up: y across the weld, z out
 * of its face; then turned about the weld or stood upright. */
#include "draw/fig_position_solids.h"

#include "draw/geom.h"

#include <math.h>

#define T 0.42                   /* of a plate */
#define WING 1.5                 /* of a plate across the weld */
#define R2 0.70710678
#define GAP 0.06                 /* half a root opening */
#define FLARE 0.28               /* of a beveled face, across */
#define CROWN 0.1
#define ROUND 0.4                /* radius of round corners */
#define ROUND_SIDE 1.0           /* of a tube */

/* How the weld is turned from face up, and which welds are made so. */
static const struct { double roll_deg; bool upright, plate, groove; }
attitudes[FIG_PLACE_COUNT] = {
	[FIG_FLAT] = { 0, false, true, true }, [FIG_1F] = { 0, false, true, false },
	[FIG_2F] = { 45, false, true, false }, [FIG_3F] = { 90, true, true, false },
	[FIG_4F] = { 135, false, true, false }, [FIG_1G] = { 0, false, true, true },
	[FIG_2G] = { 90, false, true, true }, [FIG_3G] = { 90, true, true, true },
	[FIG_4G] = { 180, false, true, true },
};

static bool is_groove(enum fig_members m)
{
	return m >= FIG_MEMBERS_TEE_GROOVE && m <= FIG_MEMBERS_FLARE_V;
}

bool position_has_solids(enum fig_members m, enum fig_place place)
{
	return is_groove(m) ? attitudes[place].groove : attitudes[place].plate;
}

static struct space_prism *add_prism(struct position_solids *s, bool weld)
{
	struct space_prism *p = &s->prism[s->n++];

	*p = (struct space_prism){ .x0 = -POSITION_HALF, .x1 = POSITION_HALF, .weld = weld };
	return p;
}

static void add_corner(struct space_prism *p, double y, double z)
{
	p->v[p->n++] = (pt){ y, z };
}

static void add_box(struct position_solids *s, rect r)
{
	struct space_prism *p = add_prism(s, false);

	add_corner(p, r.x, r.y);
	add_corner(p, r.x + r.w, r.y);
	add_corner(p, r.x + r.w, r.y + r.h);
	add_corner(p, r.x, r.y + r.h);
}

/* Corners in the frame of a fillet: along a lies the plate that carries, along b the one
 * that stands. Both are at 45 degrees to the face; swapped for overhead welds, so that the
 * carrying plate is level above. */
static void add_oblique(struct position_solids *s, bool weld, bool swap, const rect *box)
{
	struct space_prism *p = add_prism(s, weld);
	pt a = { swap ? R2 : -R2, R2 }, b = { swap ? -R2 : R2, R2 };
	const pt v[4] = { { box->x, box->y }, { box->x + box->w, box->y },
		{ box->x + box->w, box->y + box->h }, { box->x, box->y + box->h } };

	for (size_t i = 0; i < 4; i++)
		add_corner(p, a.x * v[i].x + b.x * v[i].y, a.y * v[i].x + b.y * v[i].y);
}

#define LEG 0.4
static void add_fillet_bead(struct position_solids *s)
{
	struct space_prism *p = add_prism(s, true);

	add_corner(p, 0, 0);
	add_corner(p, -LEG * R2, LEG * R2);
	add_corner(p, LEG * R2, LEG * R2);
	s->face = LEG * R2;
}

/* Boxes along a and b from the root: the carrying and the standing or upper plate. */
static void build_fillet(struct position_solids *s, enum fig_members m)
{
	bool swap = s->roll_deg > 90 && !s->upright;
	static const rect carrying[] = { [FIG_MEMBERS_TEE] = { -1.2, -T, 2.4, T },
		[FIG_MEMBERS_LAP] = { -1, -T, 2.2, T }, [FIG_MEMBERS_CORNER] = { -T, -T, 1.8, T } };
	static const rect other[] = { [FIG_MEMBERS_TEE] = { -T, 0, T, WING },
		[FIG_MEMBERS_LAP] = { -1.9, 0, 1.9, T }, [FIG_MEMBERS_CORNER] = { -T, 0, T, WING } };

	add_oblique(s, false, swap, &carrying[m]);
	add_oblique(s, false, swap, &other[m]);
	add_fillet_bead(s);
}

static void build_butt(struct position_solids *s)
{
	for (int way = -1; way <= 1; way += 2) {
		struct space_prism *p = add_prism(s, false);

		add_corner(p, way * GAP, 0);
		add_corner(p, way * (GAP + FLARE), T);
		add_corner(p, way * WING, T);
		add_corner(p, way * WING, 0);
	}
	struct space_prism *bead = add_prism(s, true);
	add_corner(bead, -GAP, 0);
	add_corner(bead, GAP, 0);
	add_corner(bead, GAP + FLARE, T);
	add_corner(bead, 0, T + CROWN);
	add_corner(bead, -GAP - FLARE, T);
	s->face = T + CROWN;
}

/* An open corner as a roof: the inner corners meet, the weld fills the valley outside. */
static void build_roof(struct position_solids *s)
{
	for (int way = -1; way <= 1; way += 2) {
		struct space_prism *p = add_prism(s, false);

		add_corner(p, 0, 0);
		add_corner(p, way * WING * R2, -WING * R2);
		add_corner(p, way * (WING + T) * R2, (T - WING) * R2);
		add_corner(p, way * T * R2, T * R2);
	}
	struct space_prism *bead = add_prism(s, true);
	add_corner(bead, 0, 0);
	add_corner(bead, T * R2, T * R2);
	add_corner(bead, 0, T * 1.05);
	add_corner(bead, -T * R2, T * R2);
	s->face = T * 1.05;
}

static void build_pad(struct position_solids *s)
{
	struct space_prism *plate = add_prism(s, false), *bead = add_prism(s, true);

	add_corner(plate, -WING, 0);
	add_corner(plate, WING, 0);
	add_corner(plate, WING, T);
	add_corner(plate, -WING, T);
	add_corner(bead, -0.22, T);
	add_corner(bead, -0.1, T + 0.12);
	add_corner(bead, 0.1, T + 0.12);
	add_corner(bead, 0.22, T);
	bead->x1 = 0.5;          /* still being laid */
	bead->x0 = -POSITION_HALF * 0.9;
	s->face = T + 0.12;
}

/* ---- grooves ---- */

/* Seen from the front and above, a wall beside a flat groove stands behind it; under a
 * horizontal one it lies below, beside an overhead one behind again. */
static double wall_way(const struct position_solids *s)
{
	return s->roll_deg > 0 ? -1 : 1;
}

/* The member that is beveled towards the face, on the side away from the wall. */
static void add_beveled(struct position_solids *s, double way)
{
	struct space_prism *p = add_prism(s, false);

	add_corner(p, way * 2 * GAP, 0);
	add_corner(p, way * (2 * GAP + FLARE), T);
	add_corner(p, way * WING, T);
	add_corner(p, way * WING, 0);
}

/* From the wall to that bevel. */
static void add_groove_bead(struct position_solids *s, double way)
{
	struct space_prism *p = add_prism(s, true);

	add_corner(p, 0, 0);
	add_corner(p, way * 2 * GAP, 0);
	add_corner(p, way * (2 * GAP + FLARE), T);
	add_corner(p, way * (GAP + FLARE / 2), T + CROWN);
	add_corner(p, 0, T);
	s->face = T + CROWN;
}

/* The base goes on beyond the face; the web stands on it. */
static void build_tee_groove(struct position_solids *s)
{
	double way = wall_way(s);

	add_box(s, (rect){ way > 0 ? 0 : -T, -1, T, 2 + T });
	add_beveled(s, -way);
	add_groove_bead(s, -way);
}

/* A member that ends flush with the face. In front of a flat groove it hides nothing. */
static void build_corner_groove(struct position_solids *s)
{
	add_box(s, (rect){ -T, T - WING, T, WING });
	add_beveled(s, 1);
	add_groove_bead(s, 1);
}

static void build_edge(struct position_solids *s)
{
	struct space_prism *bead;

	add_box(s, (rect){ -T, -WING, T, WING });
	add_box(s, (rect){ 0, -WING, T, WING });
	bead = add_prism(s, true);
	add_corner(bead, -T * 0.85, 0);
	add_corner(bead, -T * 0.4, CROWN * 1.5);
	add_corner(bead, T * 0.4, CROWN * 1.5);
	add_corner(bead, T * 0.85, 0);
	s->face = CROWN * 1.5;
}

static void build_edge_groove(struct position_solids *s)
{
	const double deep = 0.3, wide = 0.3;
	struct space_prism *bead;

	for (int way = -1; way <= 1; way += 2) {
		struct space_prism *p = add_prism(s, false);

		add_corner(p, 0, 0);
		add_corner(p, way * wide, deep);
		add_corner(p, way * 1.3 * T, deep);
		add_corner(p, way * 1.3 * T, -WING);
		add_corner(p, 0, -WING);
	}
	bead = add_prism(s, true);
	add_corner(bead, 0, 0);
	add_corner(bead, wide, deep);
	add_corner(bead, 0, deep + CROWN);
	add_corner(bead, -wide, deep);
	s->face = deep + CROWN;
}

/* A tube with round corners whose side lies along z, its corner at the root. */
static void add_round(struct position_solids *s, double way)
{
	struct space_prism *p = add_prism(s, false);
	const double side = ROUND_SIDE - ROUND;
	const pt at[4] = { { side, 0 }, { ROUND, 0 }, { ROUND, ROUND - side },
		{ side, ROUND - side } };

	p->round = true;
	for (int i = 0; i < 4; i++)
		for (int k = 0; k <= SPACE_ROUND; k++) {
			pt u = pt_polar(ROUND, 90.0 * (i + (double)k / SPACE_ROUND));

			add_corner(p, way * (at[i].x + u.x), at[i].y + u.y);
		}
}

/* The weld lies against round sides and fills up to the face. way 0: between two of them,
 * else from a flat member to one on that side. */
static void add_flare_bead(struct position_solids *s, double way)
{
	struct space_prism *p = add_prism(s, true);
	double to = way < 0 ? -1 : 1, from = way == 0 ? -ROUND : 0;

	for (int k = SPACE_ROUND; way == 0 && k > 0; k--)
		add_corner(p, -ROUND + ROUND * geom_cos(90.0 * k / SPACE_ROUND),
		    ROUND * geom_sin(90.0 * k / SPACE_ROUND));
	if (way != 0)
		add_corner(p, 0, ROUND);
	for (int k = 0; k <= SPACE_ROUND; k++)
		add_corner(p, to * (ROUND - ROUND * geom_cos(90.0 * k / SPACE_ROUND)),
		    ROUND * geom_sin(90.0 * k / SPACE_ROUND));
	p->covered = p->n - 1;
	add_corner(p, (from + to * ROUND) / 2, ROUND + CROWN);
	s->face = ROUND + CROWN;
	s->weld_last = true;
}

static void build_flare(struct position_solids *s, bool goes_on)
{
	double way = goes_on ? wall_way(s) : -1, above = goes_on ? 1 : ROUND;

	add_box(s, (rect){ way > 0 ? 0 : -T, -1, T, 1 + above });
	add_round(s, -way);
	add_flare_bead(s, -way);
}

static void build_flare_v(struct position_solids *s)
{
	add_round(s, -1);
	add_round(s, 1);
	add_flare_bead(s, 0);
}

/* ---- all of them ---- */

/* Turned about the weld, its face goes from up over the reader's side to down. */
static struct space_frame plate_frame(double roll, bool upright)
{
	if (upright)
		return (struct space_frame){ { 0, 0, 1 }, { 1, 0, 0 }, { 0, -1, 0 } };
	return (struct space_frame){ { 1, 0, 0 }, { 0, geom_cos(roll), geom_sin(roll) },
		{ 0, -geom_sin(roll), geom_cos(roll) } };
}

static void build_members(struct position_solids *s, enum fig_members m)
{
	switch (m) {
	case FIG_MEMBERS_BUTT:
		build_butt(s);
		break;
	case FIG_MEMBERS_ROOF:
		build_roof(s);
		break;
	case FIG_MEMBERS_PAD:
		build_pad(s);
		break;
	case FIG_MEMBERS_TEE_GROOVE:
		build_tee_groove(s);
		break;
	case FIG_MEMBERS_CORNER_GROOVE:
		build_corner_groove(s);
		break;
	case FIG_MEMBERS_EDGE:
		build_edge(s);
		break;
	case FIG_MEMBERS_EDGE_GROOVE:
		build_edge_groove(s);
		break;
	case FIG_MEMBERS_FLARE:
	case FIG_MEMBERS_FLARE_CORNER:
		build_flare(s, m == FIG_MEMBERS_FLARE);
		break;
	case FIG_MEMBERS_FLARE_V:
		build_flare_v(s);
		break;
	default:
		build_fillet(s, m);
	}
}

void position_solids(struct position_solids *s, const struct fig_position *p)
{
	*s = (struct position_solids){ .roll_deg = attitudes[p->place].roll_deg,
		.upright = attitudes[p->place].upright };
	s->frame = plate_frame(s->roll_deg, s->upright);
	build_members(s, p->members);
}

/* Few prisms: what hides nothing of those left is drawn first. */
void position_sort(struct position_solids *s, const struct space_view *view)
{
	size_t n = s->weld_last ? s->n - 1 : s->n;

	for (size_t i = 0; i + 1 < n; i++) {
		size_t back = i;

		for (size_t k = i + 1; k < n; k++)
			if (!space_in_front(view, &s->frame, &s->prism[k], &s->prism[back]))
				back = k;
		struct space_prism t = s->prism[i];
		s->prism[i] = s->prism[back];
		s->prism[back] = t;
	}
}

/* Face up, to the side, down; upright the axis says all. */
enum { UP, SIDEWAYS, DOWN, WAYS };
static const str set_ups[FIG_MEMBERS_COUNT][WAYS] = {
	[FIG_MEMBERS_ROOF] = { [SIDEWAYS] = WORD("horizontal, weld face to the side") },
	[FIG_MEMBERS_TEE_GROOVE] = {
		WORD("web level, base upright, groove up"),
		WORD("base level, web upright, groove to the side"),
		WORD("web level, base upright, groove down") },
	[FIG_MEMBERS_CORNER_GROOVE] = {
		WORD("one plate level, one hanging, groove up"),
		WORD("one plate level, one upright, groove to the side"),
		WORD("one plate level, one upright, groove down") },
	[FIG_MEMBERS_EDGE] = { WORD("plates upright, weld on top"),
		WORD("plates level, weld at the side"),
		WORD("plates upright, weld underneath") },
	[FIG_MEMBERS_EDGE_GROOVE] = { WORD("plates upright, groove on top"),
		WORD("plates level, groove at the side"),
		WORD("plates upright, groove underneath") },
	[FIG_MEMBERS_FLARE] = { WORD("flat member upright, groove up"),
		WORD("flat member level, groove to the side"),
		WORD("flat member upright, groove down") },
	[FIG_MEMBERS_FLARE_CORNER] = { WORD("flat member upright, groove up"),
		WORD("flat member level, groove to the side"),
		WORD("flat member upright, groove down") },
	[FIG_MEMBERS_FLARE_V] = { WORD("side by side, groove up"),
		WORD("one over the other, groove to the side"),
		WORD("side by side, groove down") },
};

str position_set_up(const struct fig_position *p)
{
	double turns = attitudes[p->place].roll_deg / 90;

	if (attitudes[p->place].upright || turns != floor(turns))
		return (str){ 0 };
	return set_ups[p->members][(int)turns];
}
