/* Position sketches. Everything is drawn from behind to the front; what is in front hides
 * what is behind by its white faces. */
#include "draw/fig_position.h"

#include "draw/fig_position_side.h"

#include "base/buf.h"
#include "draw/bounds.h"
#include "draw/dim.h"
#include "draw/fig_section.h"
#include "draw/fig_space.h"
#include "draw/geom.h"

#include <math.h>

#define PRISMS 4
#define HALF 1.5                 /* of the weld's length */
#define T 0.42                   /* of a plate */
#define WING 1.5                 /* of a plate across the weld */
#define R2 0.70710678
#define PIPE_R 0.85
#define PIPE_HALF 1.55
#define FLOOR_PT 9.0
#define SKETCH_LEAST_PT 80.0

/* How plates are turned from the flat position: about the weld, or stood upright. */
struct place_row {
	double roll_deg;
	bool upright;            /* weld axis of plates vertical */
	bool plate, pipe, pipe_on_plate; /* what is welded so */
	double axis_deg;         /* of pipe, above the horizon */
	bool turns;
	str plain_plate, plain_pipe;
	/* Plate, pipe; without travel, up, down. */
	const char *iso[3], *iso_pipe[3];
};

#define SAME(letters) { letters, letters, letters }
#define VERTICAL WORD("weld axis vertical")
static const struct place_row rows[FIG_PLACE_COUNT] = {
	[FIG_FLAT] = { 0, .plate = true, .plain_plate = WORD("flat, welded from above"),
		.iso = SAME("PA") },
	[FIG_1F] = { 0, .plate = true, .plain_plate = WORD("flat, weld face up"), .iso = SAME("PA") },
	[FIG_2F] = { 45, .plate = true, .pipe_on_plate = true, .axis_deg = 90,
		.plain_plate = WORD("horizontal fillet"), .plain_pipe = WORD("pipe axis vertical, fixed"),
		.iso = SAME("PB"), .iso_pipe = SAME("PB") },
	[FIG_3F] = { 90, .upright = true, .plate = true, .plain_plate = VERTICAL,
		.iso = { NULL, "PF", "PG" } },
	[FIG_4F] = { 135, .plate = true, .pipe_on_plate = true, .axis_deg = -90,
		.plain_plate = WORD("overhead fillet"), .plain_pipe = WORD("overhead, pipe axis vertical"),
		.iso = SAME("PD"), .iso_pipe = SAME("PD") },
	[FIG_5F] = { 0, .pipe_on_plate = true, .plain_pipe = WORD("pipe axis horizontal, fixed"),
		.iso_pipe = { NULL, "PH", "PJ" } },
	[FIG_1G] = { 0, .plate = true, .plain_plate = WORD("flat, weld face up"), .iso = SAME("PA") },
	[FIG_2G] = { 90, .plate = true, .pipe = true, .axis_deg = 90,
		.plain_plate = WORD("horizontal, plates upright"),
		.plain_pipe = WORD("pipe axis vertical, fixed"),
		.iso = SAME("PC"), .iso_pipe = SAME("PC") },
	[FIG_3G] = { 90, .upright = true, .plate = true, .plain_plate = VERTICAL,
		.iso = { NULL, "PF", "PG" } },
	[FIG_4G] = { 180, .plate = true, .plain_plate = WORD("overhead, weld face down"),
		.iso = SAME("PE") },
	[FIG_5G] = { 0, .pipe = true, .plain_pipe = WORD("pipe axis horizontal, fixed"),
		.iso_pipe = { NULL, "PH", "PJ" } },
	[FIG_6G] = { 0, .pipe = true, .axis_deg = 45, .plain_pipe = WORD("pipe axis at 45°, fixed"),
		.iso_pipe = { NULL, "H-L045", "J-L045" } },
	[FIG_1G_ROLLED] = { 0, .pipe = true, .turns = true,
		.plain_pipe = WORD("pipe axis horizontal, turned"), .iso_pipe = SAME("PA") },
	[FIG_1F_ROLLED] = { 0, .pipe_on_plate = true, .turns = true, .axis_deg = 45,
		.plain_pipe = WORD("pipe axis at 45°, turned"), .iso_pipe = SAME("PA") },
};

static bool is_pipe(const struct fig_position *p)
{
	return p->members == FIG_MEMBERS_PIPE || p->members == FIG_MEMBERS_PIPE_ON_PLATE;
}

bool fig_position_can_draw(const struct fig_position *p)
{
	const struct place_row *row;

	if ((unsigned)p->place >= FIG_PLACE_COUNT ||
	    (unsigned)p->members >= FIG_MEMBERS_COUNT)
		return false;
	row = &rows[p->place];
	if (p->members == FIG_MEMBERS_PIPE)
		return row->pipe;
	return p->members == FIG_MEMBERS_PIPE_ON_PLATE ? row->pipe_on_plate : row->plate;
}

str fig_position_iso(const struct fig_position *p)
{
	const struct place_row *row = &rows[p->place];
	const char *letters = is_pipe(p) ? row->iso_pipe[p->travel] : row->iso[p->travel];

	return letters ? str_of(letters) : (str){ 0 };
}

str fig_position_plain(const struct fig_position *p)
{
	const struct place_row *row = &rows[p->place];

	return word_str(p->language, is_pipe(p) ? row->plain_pipe : row->plain_plate);
}

/* ---- plates ---- */

struct scene {
	struct space_frame frame;
	struct space_view view;
	struct space_prism prism[PRISMS];
	size_t n;
	double face;             /* from the root to the face of the weld */
};

static struct space_prism *add_prism(struct scene *s, bool weld)
{
	struct space_prism *p = &s->prism[s->n++];

	*p = (struct space_prism){ .x0 = -HALF, .x1 = HALF, .weld = weld };
	return p;
}

static void add_corner(struct space_prism *p, double y, double z)
{
	p->v[p->n++] = (pt){ y, z };
}

/* Corners in the frame of a fillet: along a lies the plate that carries, along b the one
 * that stands. Both are at 45 degrees to the face; swapped for overhead welds, so that the
 * carrying plate is level above. */
static void add_oblique(struct scene *s, bool weld, bool swap, const rect *box)
{
	struct space_prism *p = add_prism(s, weld);
	pt a = { swap ? R2 : -R2, R2 }, b = { swap ? -R2 : R2, R2 };
	const pt v[4] = { { box->x, box->y }, { box->x + box->w, box->y },
		{ box->x + box->w, box->y + box->h }, { box->x, box->y + box->h } };

	for (size_t i = 0; i < 4; i++)
		add_corner(p, a.x * v[i].x + b.x * v[i].y, a.y * v[i].x + b.y * v[i].y);
}

#define LEG 0.4
static void add_fillet_bead(struct scene *s)
{
	struct space_prism *p = add_prism(s, true);

	add_corner(p, 0, 0);
	add_corner(p, -LEG * R2, LEG * R2);
	add_corner(p, LEG * R2, LEG * R2);
	s->face = LEG * R2;
}

/* Boxes along a and b from the root: the carrying and the standing or upper plate. */
static void build_fillet(struct scene *s, const struct fig_position *p)
{
	bool swap = rows[p->place].roll_deg > 90 && !rows[p->place].upright;
	static const rect carrying[] = { [FIG_MEMBERS_TEE] = { -1.2, -T, 2.4, T },
		[FIG_MEMBERS_LAP] = { -1, -T, 2.2, T }, [FIG_MEMBERS_CORNER] = { -T, -T, 1.8, T } };
	static const rect other[] = { [FIG_MEMBERS_TEE] = { -T, 0, T, WING },
		[FIG_MEMBERS_LAP] = { -1.9, 0, 1.9, T }, [FIG_MEMBERS_CORNER] = { -T, 0, T, WING } };

	add_oblique(s, false, swap, &carrying[p->members]);
	add_oblique(s, false, swap, &other[p->members]);
	add_fillet_bead(s);
}

static void build_butt(struct scene *s)
{
	const double gap = 0.06, flare = 0.28;

	for (int way = -1; way <= 1; way += 2) {
		struct space_prism *p = add_prism(s, false);

		add_corner(p, way * gap, 0);
		add_corner(p, way * (gap + flare), T);
		add_corner(p, way * WING, T);
		add_corner(p, way * WING, 0);
	}
	struct space_prism *bead = add_prism(s, true);
	add_corner(bead, -gap, 0);
	add_corner(bead, gap, 0);
	add_corner(bead, gap + flare, T);
	add_corner(bead, 0, T + 0.1);
	add_corner(bead, -gap - flare, T);
	s->face = T + 0.1;
}

/* An open corner as a roof: the inner corners meet, the weld fills the valley outside. */
static void build_roof(struct scene *s)
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

static void build_pad(struct scene *s)
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
	bead->x0 = -HALF * 0.9;
	s->face = T + 0.12;
}

/* Turned about the weld, its face goes from up over the reader's side to down. */
static struct space_frame plate_frame(const struct place_row *row)
{
	double roll = row->roll_deg;

	if (row->upright)
		return (struct space_frame){ { 0, 0, 1 }, { 1, 0, 0 }, { 0, -1, 0 } };
	return (struct space_frame){ { 1, 0, 0 }, { 0, geom_cos(roll), geom_sin(roll) },
		{ 0, -geom_sin(roll), geom_cos(roll) } };
}

/* Few prisms: what hides nothing of those left is drawn first. */
static void sort_prisms(struct scene *s)
{
	for (size_t i = 0; i + 1 < s->n; i++) {
		size_t back = i;

		for (size_t k = i + 1; k < s->n; k++)
			if (!space_in_front(&s->view, &s->frame, &s->prism[k], &s->prism[back]))
				back = k;
		struct space_prism t = s->prism[i];
		s->prism[i] = s->prism[back];
		s->prism[back] = t;
	}
}

static void ink_axis(struct canvas *c, const struct scene *s, double from, double to,
    double z)
{
	struct seg g[2] = { { SEG_MOVE, { space_point(&s->view,
	    space_turn(&s->frame, (vec){ from, 0, z })) } },
		{ SEG_LINE, { space_point(&s->view, space_turn(&s->frame, (vec){ to, 0, z })) } } };

	canvas_path(c, g, 2, &(struct ink){ .stroke_pt = DIM_THIN_PT, .dash_on_pt = 6,
	    .dash_off_pt = 2 });
}

static void ink_arrow(struct canvas *c, pt from, pt tip)
{
	pt dir = pt_unit(pt_sub(tip, from));

	canvas_line(c, from, pt_sub(tip, pt_mul(dir, DIM_ARROW_PT / 2)), 1.4);
	dim_arrow(c, tip, dir);
}

/* The rod: a thick line to the weld from the side where the welder stands. */
static void ink_rod(struct canvas *c, const struct scene *s, vec at, vec away)
{
	vec near = vec_add(at, vec_mul(away, 0.12)), far = vec_add(at, vec_mul(away, 1.25));

	canvas_line(c, space_point(&s->view, near), space_point(&s->view, far), 2.4);
}

/* Beside the plates, so that it stands free. */
static void ink_way(struct canvas *c, const struct scene *s, bool down)
{
	double y = s->prism[0].v[0].x, way = down ? -1 : 1;

	for (size_t i = 0; i < s->n; i++)
		for (size_t k = 0; k < s->prism[i].n; k++)
			y = fmin(y, s->prism[i].v[k].x);
	ink_arrow(c, space_point(&s->view, space_turn(&s->frame, (vec){ -way, y - 0.4, 0.3 })),
	    space_point(&s->view, space_turn(&s->frame, (vec){ way, y - 0.4, 0.3 })));
}

static void ink_plates(struct canvas *c, const struct scene *s,
    const struct fig_position *p)
{
	const struct space_frame *f = &s->frame;
	double mid = s->face / 2, near = vec_dot(f->x, s->view.to_eye) > 0 ? 1 : -1;

	ink_axis(c, s, -near * HALF, -near * (HALF + 0.55), mid);
	for (size_t i = 0; i < s->n; i++)
		space_prism_ink(c, &s->view, f, &s->prism[i]);
	ink_axis(c, s, near * HALF, near * (HALF + 0.55), mid);
	ink_rod(c, s, space_turn(f, (vec){ 0.45, 0, s->face }),
	    vec_add(f->z, vec_mul(f->x, -0.4)));
	if (rows[p->place].upright && p->travel != FIG_TRAVEL_NONE)
		ink_way(c, s, p->travel == FIG_TRAVEL_DOWN);
}

static void build_plates(struct scene *s, const struct fig_position *p)
{
	const struct place_row *row = &rows[p->place];

	s->frame = plate_frame(row);
	s->view = space_view_from(row->upright ? 32 : 38, row->roll_deg > 90 ? -26 : 26);
	if (p->members == FIG_MEMBERS_BUTT)
		build_butt(s);
	else if (p->members == FIG_MEMBERS_ROOF)
		build_roof(s);
	else if (p->members == FIG_MEMBERS_PAD)
		build_pad(s);
	else
		build_fillet(s, p);
	sort_prisms(s);
}

/* ---- pipe ---- */

/* x along the axis towards the reader's right, z up in the plane of the ring, or to the
 * reader when the axis is upright. */
static struct space_frame pipe_frame(const struct place_row *row)
{
	double a = row->axis_deg;
	vec x = { geom_cos(a), 0, geom_sin(a) }, z = { -geom_sin(a), 0, geom_cos(a) };

	if (fabs(a) == 90)
		z = (vec){ 0, -1, 0 };
	return (struct space_frame){ x, vec_cross(z, x), z };
}

static void ink_curve(struct canvas *c, const pt *v, size_t n, struct ink ink, bool closed)
{
	struct seg g[SPACE_STEPS + 2];

	for (size_t i = 0; i < n; i++)
		g[i] = (struct seg){ i ? SEG_LINE : SEG_MOVE, { v[i] } };
	if (closed)
		g[n] = (struct seg){ .op = SEG_CLOSE };
	canvas_path(c, g, n + closed, &ink);
}

/* The barrel as one white shape from the far end's rim to the near one's. */
static void ink_barrel(struct canvas *c, const struct scene *s, double near)
{
	double facing = space_facing_deg(&s->view, &s->frame);
	const struct ink white = { .stroke_pt = 1, .fill = true, .fill_gray = 1 };
	pt v[2 * (SPACE_STEPS + 1)];
	struct seg g[2 * SPACE_STEPS + 3];
	size_t n = space_arc(&s->view, &s->frame, -near * PIPE_HALF, PIPE_R, facing - 90,
	    facing + 90, v);

	/* Half of each rim bounds the barrel; at the near end it is the hidden half, which
	 * the cap covers. */
	n += space_arc(&s->view, &s->frame, near * PIPE_HALF, PIPE_R, facing + 90,
	    facing - 90, v + n);
	for (size_t i = 0; i < n; i++)
		g[i] = (struct seg){ i ? SEG_LINE : SEG_MOVE, { v[i] } };
	g[n] = (struct seg){ .op = SEG_CLOSE };
	canvas_path(c, g, n + 1, &white);
}

static void ink_cap(struct canvas *c, const struct scene *s, double near)
{
	const struct ink white = { .stroke_pt = 1, .fill = true, .fill_gray = 1 };
	pt v[SPACE_STEPS + 1];
	size_t n = space_arc(&s->view, &s->frame, near * PIPE_HALF, PIPE_R, 0, 360, v);

	ink_curve(c, v, n, white, true);
	n = space_arc(&s->view, &s->frame, near * PIPE_HALF, PIPE_R * 0.78, 0, 360, v);
	ink_curve(c, v, n, white, true);
}

static void ink_sweep(struct canvas *c, const struct scene *s, double x, double r,
    double from, double to)
{
	pt v[SPACE_STEPS + 1];
	size_t n = space_arc(&s->view, &s->frame, x, r, from, to, v);

	ink_curve(c, v, n - 3, (struct ink){ .stroke_pt = 1.4 }, false);
	dim_arrow(c, v[n - 1], pt_unit(pt_sub(v[n - 1], v[n - 6])));
}

static void ink_ring(struct canvas *c, const struct scene *s, double x)
{
	double facing = space_facing_deg(&s->view, &s->frame);
	pt v[SPACE_STEPS + 1];
	size_t n = space_arc(&s->view, &s->frame, x, PIPE_R * 1.02, facing - 90, facing + 90,
	    v);

	ink_curve(c, v, n, (struct ink){ .stroke_pt = 3.6 }, false);
}

/* An angle and its whole turns, as near as can be to another, and within its sight. */
static double seen_deg(double deg, double facing_deg)
{
	while (deg - facing_deg > 180)
		deg -= 360;
	while (deg - facing_deg < -180)
		deg += 360;
	return fmin(fmax(deg, facing_deg - 48), facing_deg + 48);
}

/* An arrow on the pipe beside the weld, on the side that the eye sees. From y towards z:
 * the bottom is at -90, the top at 90. */
static void ink_travel(struct canvas *c, const struct scene *s,
    const struct fig_position *p, double x)
{
	double facing = space_facing_deg(&s->view, &s->frame);
	double low = seen_deg(-90, facing), high = seen_deg(90, facing);
	bool down = p->travel == FIG_TRAVEL_DOWN;

	if (rows[p->place].turns || p->travel == FIG_TRAVEL_NONE)
		return;
	ink_sweep(c, s, x, PIPE_R, down ? high : low, down ? low : high);
}

/* Where round the pipe the rod stands: on top of a turned one, at the side of an upright
 * one so that the rod is seen from its side, else half way up the side that is seen. */
static double rod_deg(const struct scene *s, const struct place_row *row)
{
	double facing = space_facing_deg(&s->view, &s->frame);

	if (fabs(row->axis_deg) == 90)
		return facing + (row->axis_deg < 0 ? 62 : -62);
	if (row->turns)
		return 90;
	return fabs(facing) > 90 ? 140 : 40;
}

static void ink_pipe(struct canvas *c, const struct scene *s, const struct fig_position *p)
{
	const struct place_row *row = &rows[p->place];
	double near = vec_dot(s->frame.x, s->view.to_eye) > 0 ? 1 : -1;
	bool plate = p->members == FIG_MEMBERS_PIPE_ON_PLATE;
	double ring = plate ? -PIPE_HALF + 0.1 : 0, end = near * PIPE_HALF;
	pt u = pt_polar(1, rod_deg(s, row));
	vec away = space_turn(&s->frame, (vec){ plate ? 0.7 : 0, u.x, u.y });

	ink_axis(c, s, -end, -near * (PIPE_HALF + 0.7), 0);
	if (plate)
		space_prism_ink(c, &s->view, &s->frame, &s->prism[0]);
	ink_barrel(c, s, near);
	ink_cap(c, s, near);
	ink_ring(c, s, ring);
	ink_axis(c, s, end * 0.9, near * (PIPE_HALF + 0.9), 0);
	ink_travel(c, s, p, ring + near * 0.45);
	if (row->turns)
		ink_sweep(c, s, end + near * 0.25, PIPE_R * 0.5, 150, -150);
	ink_rod(c, s, space_turn(&s->frame, (vec){ ring, u.x * PIPE_R, u.y * PIPE_R }), away);
}

static void build_pipe(struct scene *s, const struct fig_position *p)
{
	const struct place_row *row = &rows[p->place];
	struct space_prism *plate;

	s->frame = pipe_frame(row);
	s->view = space_view_from(38, row->axis_deg < 0 ? -26 : 22);
	plate = add_prism(s, false);
	plate->x0 = -PIPE_HALF - 0.35;
	plate->x1 = -PIPE_HALF;
	add_corner(plate, -1.5, -1.5);
	add_corner(plate, 1.5, -1.5);
	add_corner(plate, 1.5, 1.5);
	add_corner(plate, -1.5, 1.5);
}

/* ---- onto paper ---- */

static void ink_floor(struct canvas *c, rect r)
{
	double y = r.y + r.h - FLOOR_PT + 2, from = r.x + r.w * 0.2, to = r.x + r.w * 0.8;

	canvas_line(c, (pt){ from, y }, (pt){ to, y }, 1);
	for (double x = from + 6; x < to; x += 8)
		canvas_line(c, (pt){ x, y }, (pt){ x - 5, y + 5 }, DIM_THIN_PT);
}

static void ink_scene(struct canvas *c, const struct scene *s,
    const struct fig_position *p)
{
	if (is_pipe(p))
		ink_pipe(c, s, p);
	else
		ink_plates(c, s, p);
}

/* Scaled and moved until its ink fills r: strokes do not scale, so this is done twice. */
static void fit_scene(struct scene *s, const struct faces *f, rect r,
    const struct fig_position *p)
{
	s->view.scale = r.w / 6;
	for (int i = 0; i < 3; i++) {
		struct bounds b;
		rect ink;

		bounds_init(&b, f);
		canvas_page_begin(&b.canvas, 612, 792);
		ink_scene(&b.canvas, s, p);
		canvas_page_end(&b.canvas);
		ink = bounds_rect(&b);
		if (i < 2)
			s->view.scale *= fmin((r.w - 4) / ink.w, (r.h - 4) / ink.h);
		s->view.at.x += r.x + (r.w - ink.w) / 2 - ink.x;
		s->view.at.y += r.y + (r.h - ink.h) / 2 - ink.y;
	}
}

static void ink_sketch(struct canvas *c, const struct faces *f, rect r,
    const struct fig_position *p)
{
	struct scene s = { .n = 0 };

	if (is_pipe(p))
		build_pipe(&s, p);
	else
		build_plates(&s, p);
	fit_scene(&s, f, (rect){ r.x, r.y, r.w, r.h - FLOOR_PT }, p);
	ink_scene(c, &s, p);
	ink_floor(c, r);
}

bool fig_position_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_position *p)
{
	double side = fmin(area.h, area.w * 0.58);
	rect text = { area.x + side + 8, area.y, area.w - side - 8, area.h };

	if (!fig_position_can_draw(p))
		return fig_refuse(c, f, area, p->language,
		    WORD("these members are not welded in this position"));
	if (side < SKETCH_LEAST_PT || !position_texts(c, f, text, p))
		return fig_refuse(c, f, area, p->language, FIG_NO_ROOM);
	ink_sketch(c, f, (rect){ area.x, area.y + (area.h - side) / 2, side, side }, p);
	return true;
}

str fig_position_words(struct arena *a, const struct fig_position *p)
{
	static const str members[FIG_MEMBERS_COUNT] = { WORD("two plates butted"),
		WORD("a tee"), WORD("a lap"), WORD("a corner welded inside"),
		WORD("a corner welded outside"), WORD("one plate with beads"),
		WORD("a pipe butt"), WORD("a pipe on a plate") };
	static const str ways[] = { STR(""), WORD(", welded upward"), WORD(", welded downward") };
	const struct language *l = p->language;
	str iso = fig_position_iso(p);

	return word_format(a, l, "Position %.*s of %.*s: %.*s%.*s%s%.*s.", STR_ARG(p->label),
	    STR_ARG(word_str(l, members[p->members])), STR_ARG(fig_position_plain(p)),
	    STR_ARG(word_str(l, ways[p->travel])), iso.n ? "; ISO 6947 " : "", STR_ARG(iso));
}
