/* Position sketches. Everything is drawn from behind to the front; what is in front hides
 * what is behind by its white faces. */
#include "draw/fig_position.h"

#include "draw/fig_position_side.h"
#include "draw/fig_position_solids.h"

#include "base/buf.h"
#include "draw/bounds.h"
#include "draw/dim.h"
#include "draw/fig_section.h"
#include "draw/geom.h"

#include <math.h>

#define HALF POSITION_HALF
#define PIPE_R 0.85
#define PIPE_HALF 1.55
#define FLOOR_PT 9.0
#define SKETCH_LEAST_PT 80.0

struct place_row {
	bool pipe, pipe_on_plate; /* what is welded so, beside plates */
	double axis_deg;         /* of pipe, above the horizon */
	bool turns;
	str plain_plate, plain_pipe;
	/* Plate, pipe; without travel, up, down. */
	const char *iso[3], *iso_pipe[3];
};

#define SAME(letters) { letters, letters, letters }
#define VERTICAL WORD("weld axis vertical")
static const struct place_row rows[FIG_PLACE_COUNT] = {
	[FIG_FLAT] = { .plain_plate = WORD("flat, welded from above"),
		.iso = SAME("PA") },
	[FIG_1F] = { .plain_plate = WORD("flat, weld face up"), .iso = SAME("PA") },
	[FIG_2F] = { .pipe_on_plate = true, .axis_deg = 90,
		.plain_plate = WORD("horizontal fillet"), .plain_pipe = WORD("pipe axis vertical, fixed"),
		.iso = SAME("PB"), .iso_pipe = SAME("PB") },
	[FIG_3F] = { .plain_plate = VERTICAL,
		.iso = { NULL, "PF", "PG" } },
	[FIG_4F] = { .pipe_on_plate = true, .axis_deg = -90,
		.plain_plate = WORD("overhead fillet"), .plain_pipe = WORD("overhead, pipe axis vertical"),
		.iso = SAME("PD"), .iso_pipe = SAME("PD") },
	[FIG_5F] = { .pipe_on_plate = true, .plain_pipe = WORD("pipe axis horizontal, fixed"),
		.iso_pipe = { NULL, "PH", "PJ" } },
	[FIG_1G] = { .plain_plate = WORD("flat, weld face up"), .iso = SAME("PA") },
	[FIG_2G] = { .pipe = true, .axis_deg = 90,
		.plain_plate = WORD("horizontal, plates upright"),
		.plain_pipe = WORD("pipe axis vertical, fixed"),
		.iso = SAME("PC"), .iso_pipe = SAME("PC") },
	[FIG_3G] = { .plain_plate = VERTICAL,
		.iso = { NULL, "PF", "PG" } },
	[FIG_4G] = { .plain_plate = WORD("overhead, weld face down"),
		.iso = SAME("PE") },
	[FIG_5G] = { .pipe = true, .plain_pipe = WORD("pipe axis horizontal, fixed"),
		.iso_pipe = { NULL, "PH", "PJ" } },
	[FIG_6G] = { .pipe = true, .axis_deg = 45, .plain_pipe = WORD("pipe axis at 45°, fixed"),
		.iso_pipe = { NULL, "H-L045", "J-L045" } },
	[FIG_1G_ROLLED] = { .pipe = true, .turns = true,
		.plain_pipe = WORD("pipe axis horizontal, turned"), .iso_pipe = SAME("PA") },
	[FIG_1F_ROLLED] = { .pipe_on_plate = true, .turns = true, .axis_deg = 45,
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
	if (p->members == FIG_MEMBERS_PIPE_ON_PLATE)
		return row->pipe_on_plate;
	return position_has_solids(p->members, p->place);
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
	str set_up = is_pipe(p) ? row->plain_pipe : position_set_up(p);

	return word_str(p->language, set_up.n ? set_up : row->plain_plate);
}

/* ---- plates ---- */

struct scene {
	struct space_view view;
	struct position_solids solids;
};

static void ink_axis(struct canvas *c, const struct scene *s, double from, double to,
    double z)
{
	struct seg g[2] = { { SEG_MOVE, { space_point(&s->view,
	    space_turn(&s->solids.frame, (vec){ from, 0, z })) } }, { SEG_LINE, {
	    space_point(&s->view, space_turn(&s->solids.frame, (vec){ to, 0, z })) } } };

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
	const struct position_solids *o = &s->solids;
	pt low = space_point(&s->view, space_turn(&o->frame, (vec){ -1, 0, 0 }));
	pt high = space_point(&s->view, space_turn(&o->frame, (vec){ 1, 0, 0 }));

	for (size_t i = 0; i < o->n; i++)
		for (size_t k = 0; k < o->prism[i].n; k++)
			low.x = fmin(low.x, space_point(&s->view,
			    space_corner(&o->frame, &o->prism[i], k, false)).x);
	low.x -= 0.4 * s->view.scale;
	high.x = low.x;
	ink_arrow(c, down ? high : low, down ? low : high);
}

static void ink_plates(struct canvas *c, const struct scene *s,
    const struct fig_position *p)
{
	const struct space_frame *f = &s->solids.frame;
	double mid = s->solids.face / 2, near = vec_dot(f->x, s->view.to_eye) > 0 ? 1 : -1;

	ink_axis(c, s, -near * HALF, -near * (HALF + 0.55), mid);
	for (size_t i = 0; i < s->solids.n; i++)
		space_prism_ink(c, &s->view, f, &s->solids.prism[i]);
	ink_axis(c, s, near * HALF, near * (HALF + 0.55), mid);
	ink_rod(c, s, space_turn(f, (vec){ 0.45, 0, s->solids.face }),
	    vec_add(f->z, vec_mul(f->x, -0.4)));
	if (s->solids.upright && p->travel != FIG_TRAVEL_NONE)
		ink_way(c, s, p->travel == FIG_TRAVEL_DOWN);
}

static void build_plates(struct scene *s, const struct fig_position *p)
{
	position_solids(&s->solids, p);
	s->view = space_view_from(s->solids.upright ? 32 : 38,
	    s->solids.roll_deg > 90 ? -26 : 26);
	position_sort(&s->solids, &s->view);
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
	double facing = space_facing_deg(&s->view, &s->solids.frame);
	const struct ink white = { .stroke_pt = 1, .fill = true, .fill_gray = 1 };
	pt v[2 * (SPACE_STEPS + 1)];
	struct seg g[2 * SPACE_STEPS + 3];
	size_t n = space_arc(&s->view, &s->solids.frame, -near * PIPE_HALF, PIPE_R,
	    facing - 90, facing + 90, v);

	/* Half of each rim bounds the barrel; at the near end it is the hidden half, which
	 * the cap covers. */
	n += space_arc(&s->view, &s->solids.frame, near * PIPE_HALF, PIPE_R, facing + 90,
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
	size_t n = space_arc(&s->view, &s->solids.frame, near * PIPE_HALF, PIPE_R, 0, 360, v);

	ink_curve(c, v, n, white, true);
	n = space_arc(&s->view, &s->solids.frame, near * PIPE_HALF, PIPE_R * 0.78, 0, 360, v);
	ink_curve(c, v, n, white, true);
}

static void ink_sweep(struct canvas *c, const struct scene *s, double x, double r,
    double from, double to)
{
	pt v[SPACE_STEPS + 1];
	size_t n = space_arc(&s->view, &s->solids.frame, x, r, from, to, v);

	ink_curve(c, v, n - 3, (struct ink){ .stroke_pt = 1.4 }, false);
	dim_arrow(c, v[n - 1], pt_unit(pt_sub(v[n - 1], v[n - 6])));
}

static void ink_ring(struct canvas *c, const struct scene *s, double x)
{
	double facing = space_facing_deg(&s->view, &s->solids.frame);
	pt v[SPACE_STEPS + 1];
	size_t n = space_arc(&s->view, &s->solids.frame, x, PIPE_R * 1.02, facing - 90,
	    facing + 90, v);

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
	double facing = space_facing_deg(&s->view, &s->solids.frame);
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
	double facing = space_facing_deg(&s->view, &s->solids.frame);

	if (fabs(row->axis_deg) == 90)
		return facing + (row->axis_deg < 0 ? 62 : -62);
	if (row->turns)
		return 90;
	return fabs(facing) > 90 ? 140 : 40;
}

static void ink_pipe(struct canvas *c, const struct scene *s, const struct fig_position *p)
{
	const struct place_row *row = &rows[p->place];
	double near = vec_dot(s->solids.frame.x, s->view.to_eye) > 0 ? 1 : -1;
	bool plate = p->members == FIG_MEMBERS_PIPE_ON_PLATE;
	double ring = plate ? -PIPE_HALF + 0.1 : 0, end = near * PIPE_HALF;
	pt u = pt_polar(1, rod_deg(s, row));
	vec away = space_turn(&s->solids.frame, (vec){ plate ? 0.7 : 0, u.x, u.y });

	ink_axis(c, s, -end, -near * (PIPE_HALF + 0.7), 0);
	if (plate)
		space_prism_ink(c, &s->view, &s->solids.frame, &s->solids.prism[0]);
	ink_barrel(c, s, near);
	ink_cap(c, s, near);
	ink_ring(c, s, ring);
	ink_axis(c, s, end * 0.9, near * (PIPE_HALF + 0.9), 0);
	ink_travel(c, s, p, ring + near * 0.45);
	if (row->turns)
		ink_sweep(c, s, end + near * 0.25, PIPE_R * 0.5, 150, -150);
	ink_rod(c, s, space_turn(&s->solids.frame,
	    (vec){ ring, u.x * PIPE_R, u.y * PIPE_R }), away);
}

static void build_pipe(struct scene *s, const struct fig_position *p)
{
	const struct place_row *row = &rows[p->place];

	s->solids.frame = pipe_frame(row);
	s->view = space_view_from(38, row->axis_deg < 0 ? -26 : 22);
	s->solids.prism[0] = (struct space_prism){ .n = 4, .x0 = -PIPE_HALF - 0.35,
		.x1 = -PIPE_HALF,
		.v = { { -1.5, -1.5 }, { 1.5, -1.5 }, { 1.5, 1.5 }, { -1.5, 1.5 } } };
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
	struct scene s = { .solids.n = 0 };

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
		WORD("a tee with a groove"), WORD("a corner with a groove"), WORD("an edge joint"),
		WORD("an edge joint with a groove"), WORD("a flare groove on a flat member"),
		WORD("a flare groove in a corner"), WORD("a flare groove between two members"),
		WORD("a pipe butt"), WORD("a pipe on a plate") };
	static const str ways[] = { STR(""), WORD(", welded upward"), WORD(", welded downward") };
	const struct language *l = p->language;
	str iso = fig_position_iso(p);

	return word_format(a, l, "Position %.*s of %.*s: %.*s%.*s%s%.*s.", STR_ARG(p->label),
	    STR_ARG(word_str(l, members[p->members])), STR_ARG(fig_position_plain(p)),
	    STR_ARG(word_str(l, ways[p->travel])), iso.n ? "; ISO 6947 " : "", STR_ARG(iso));
}
