/* A welding symbol put together: what stands where along and across the line. */
#include "draw/fig_symbol_plan.h"

#include "base/buf.h"
#include "draw/dim.h"
#include "draw/fig_section.h"
#include "draw/geom.h"

#include <assert.h>
#include <math.h>

#define NOTE_PT DIM_TYPE_PT
#define NOTE_STRIP_PT 16.0
#define BESIDE_U 0.6             /* from the line to the capitals beside a figure */
#define GAP_U 0.5
#define CIRCLE_U 0.65
#define LINE_LEAST_U 12.0
#define TAIL_U 2.0
#define ARROW_U 4.6
#define DASHED_U 1.3

bool fig_weld_breaks_arrow(enum fig_weld w)
{
	return w == FIG_WELD_BEVEL || w == FIG_WELD_J || w == FIG_WELD_FLARE_BEVEL;
}

static bool is_groove(enum fig_weld w)
{
	return w >= FIG_WELD_SQUARE && w <= FIG_WELD_FLARE_BEVEL;
}

static bool is_backside(enum fig_weld w)
{
	return w >= FIG_WELD_BACK && w <= FIG_WELD_STRIP;
}

static bool is_hole(enum fig_weld w)
{
	return w == FIG_WELD_PLUG || w == FIG_WELD_SPOT;
}

static bool has_tail(const struct fig_symbol *s)
{
	return s->tail[0].n > 0;
}

/* ---- what cannot be ---- */

static str side_fault(const struct fig_weld_side *k, const struct fig_weld_side *across)
{
	if ((unsigned)k->weld >= FIG_WELD_COUNT)
		return STR("no such weld");
	if (is_backside(k->weld) && !is_groove(across->weld))
		return STR("a back weld, melt-through or strip without a groove across");
	if (!is_groove(k->weld) && ((k->root_opening.n && k->weld != FIG_WELD_PLUG) ||
	    k->groove_size.n || k->angle.n || k->fillet_over.n))
		return STR("root opening, angle, groove size or fillet without a groove");
	if (k->pitch.n && !k->length.n && !is_hole(k->weld))
		return STR("a pitch without a length");
	if (k->count.n && !is_hole(k->weld))
		return STR("a count without plugs or spots");
	if (k->fillet_over.n && (k->angle.n || k->contour))
		return STR("a fillet over a groove leaves no room for angle or contour");
	if (k->finish.n && k->contour == FIG_CONTOUR_NONE)
		return STR("a finish without a contour");
	if (k->weld == FIG_WELD_NONE && (k->size.n || k->length.n || k->contour))
		return STR("sizes on a side without a weld");
	return (str){ 0 };
}

str fig_symbol_fault(const struct fig_symbol *s)
{
	str why = side_fault(&s->arrow, &s->other);

	if (!why.n)
		why = side_fault(&s->other, &s->arrow);
	if (why.n)
		return why;
	if (s->arrow.weld == FIG_WELD_NONE && s->other.weld == FIG_WELD_NONE)
		return STR("no weld is given");
	if (s->other.weld == FIG_WELD_SURFACING ||
	    (s->arrow.weld == FIG_WELD_SURFACING && s->other.weld != FIG_WELD_NONE))
		return STR("surfacing stands on the arrow side alone");
	if (s->staggered && (s->arrow.weld != FIG_WELD_FILLET ||
	    s->other.weld != FIG_WELD_FILLET || !s->arrow.pitch.n || !s->other.pitch.n))
		return STR("only intermittent fillets on both sides are staggered");
	return (str){ 0 };
}

/* ---- text ---- */

double symbol_text_width(const struct symbol_plan *p, const str *part, size_t n)
{
	double w = 0;

	for (size_t i = 0; i < n; i++)
		w += face_width_pt(p->faces, FACE_SANS, p->size_pt, part[i]);
	return w;
}

void symbol_text(struct symbol_plan *p, const str *part, size_t n, double x, double y)
{
	assert(p->nlabels < SYMBOL_LABELS && n <= SYMBOL_PARTS);
	struct symbol_label *l = &p->label[p->nlabels++];

	for (size_t i = 0; i < n; i++)
		l->part[i] = part[i];
	l->n = n;
	l->r = (rect){ x, y - p->ascent, symbol_text_width(p, part, n),
		p->ascent + p->descent };
	p->ink = rect_join(p->ink, l->r);
}

/* A text whose capitals begin at that depth; returns the depth where its box ends. */
static double text_at_depth(struct symbol_plan *p, const str *part, size_t n, double x,
    double depth, struct symbol_place at)
{
	double y = at.y + at.way * depth + (at.way > 0 ? p->u : 0);

	symbol_text(p, part, n, x, y);
	return depth + (at.way > 0 ? p->u + p->descent : p->ascent);
}

/* Where capitals begin so that their box begins at `depth`. */
static double below_edge(const struct symbol_plan *p, double depth, double way)
{
	return depth + (way > 0 ? p->ascent - p->u : p->descent) + 1;
}

static size_t size_parts(const struct fig_weld_side *k, str *out)
{
	size_t n = 0;

	if (k->size.n)
		out[n++] = k->size;
	if (!k->groove_size.n)
		return n;
	out[n] = n ? STR(" (") : STR("(");
	n++;
	out[n++] = k->groove_size;
	out[n++] = STR(")");
	return n;
}

static size_t length_parts(const struct fig_weld_side *k, bool iso, str *out)
{
	size_t n = 0;

	if (k->length.n)
		out[n++] = k->length;
	if (!k->pitch.n)
		return n;
	if (n)
		out[n++] = iso ? STR(" ") : STR("-");
	out[n++] = k->pitch;
	return n;
}

/* ---- one side ---- */

struct side {
	const struct fig_weld_side *data;
	struct symbol_figure figure;
	struct symbol_place at;
	double shift;            /* staggered: how far the figure is set off */
	str left[SYMBOL_PARTS], right[SYMBOL_PARTS];
	size_t nleft, nright;
	double wleft, wright;
	double from, to;         /* how far figure and root opening reach to either side */
};

static struct side side_of(struct symbol_plan *p, const struct fig_weld_side *k, bool iso)
{
	double root = k->root_opening.n ? symbol_text_width(p, &k->root_opening, 1) : 0;
	struct side s = { .data = k };

	s.figure = symbol_figure_of(k->weld, p->u, root);
	s.from = fmax(s.figure.left, root / 2 - s.figure.root_x);
	s.to = fmax(s.figure.right, root / 2 + s.figure.root_x);
	s.nleft = size_parts(k, s.left);
	s.nright = length_parts(k, iso, s.right);
	s.wleft = s.nleft ? symbol_text_width(p, s.left, s.nleft) + GAP_U * p->u : 0;
	if (k->fillet_over.n)
		s.wleft = fmax(s.wleft,
		    symbol_text_width(p, &k->fillet_over, 1) + GAP_U * p->u);
	s.wright = s.nright ? symbol_text_width(p, s.right, s.nright) + GAP_U * p->u : 0;
	return s;
}

static void add_centered(struct symbol_plan *p, str text, double x, double *depth,
    struct symbol_place at)
{
	double w;

	if (!text.n)
		return;
	w = symbol_text_width(p, &text, 1);
	*depth = text_at_depth(p, &text, 1, at.x + x - w / 2, below_edge(p, *depth, at.way),
	    at);
}

/* Angle, contour and finish beyond a groove, a pad or a back weld. */
static void add_beyond(struct symbol_plan *p, const struct side *s, double from)
{
	const struct fig_weld_side *k = s->data;
	double x = (s->figure.right - s->figure.left) / 2, depth = from;

	add_centered(p, k->angle, x, &depth, s->at);
	add_centered(p, k->count, x, &depth, s->at);
	if (!k->contour)
		return;
	depth += GAP_U * p->u;
	symbol_contour_add(p, k->contour, x, depth, false, s->at);
	depth += 0.4 * p->u;
	add_centered(p, k->finish, x, &depth, s->at);
}

/* The mark follows the slope of a fillet; its letter stands further out. */
static void add_fillet_contour(struct symbol_plan *p, const struct side *s, double from)
{
	double mid = s->figure.depth / 2 + 0.45 * p->u, depth = fmax(from, mid + 0.9 * p->u);

	if (!s->data->contour)
		return;
	symbol_contour_add(p, s->data->contour, mid, mid, true, s->at);
	add_centered(p, s->data->finish, s->figure.right * 0.75, &depth, s->at);
}

/* A fillet beyond a groove, its size before it. Returns the depth where it ends. */
static double add_over(struct symbol_plan *p, const struct side *s, double from)
{
	struct symbol_figure g = symbol_figure_of(FIG_WELD_FILLET, p->u, 0);
	double base = from + GAP_U * p->u, w;
	str size = s->data->fillet_over;
	struct symbol_place at = { s->at.x - s->figure.left, s->at.y + s->at.way * base,
		s->at.way };

	if (!size.n)
		return from;
	w = symbol_text_width(p, &size, 1);
	symbol_figure_add(p, FIG_WELD_FILLET, &g, at);
	return fmax(base + g.depth, base + text_at_depth(p, &size, 1,
	    at.x - w - GAP_U * p->u, BESIDE_U * p->u, at));
}

/* Everything on one side; returns where its texts end to the right. */
static double add_side(struct symbol_plan *p, const struct side *s)
{
	const struct symbol_figure *g = &s->figure;
	double right = s->at.x + s->to, far = g->depth, end, beside = BESIDE_U * p->u;
	str root = s->data->root_opening;

	if (s->data->weld == FIG_WELD_NONE)
		return 0;
	symbol_figure_add(p, s->data->weld, g, s->at);
	if (s->nleft) {
		end = text_at_depth(p, s->left, s->nleft, s->at.x - s->from - s->wleft, beside,
		    s->at);
		far = fmax(far, end);
	}
	if (s->nright) {
		end = text_at_depth(p, s->right, s->nright, right + GAP_U * p->u, beside, s->at);
		far = fmax(far, end);
	}
	if (root.n) {
		double w = symbol_text_width(p, &root, 1);

		end = text_at_depth(p, &root, 1, s->at.x + g->root_x - w / 2, g->root_depth,
		    s->at);
		far = fmax(far, end);
	}
	far = add_over(p, s, far);
	if (s->data->weld == FIG_WELD_FILLET)
		add_fillet_contour(p, s, far);
	else
		add_beyond(p, s, far);
	return right + s->wright;
}

/* ---- the whole ---- */

/* System A leaves the dashed line out when both sides are alike. */
static bool sides_alike(const struct fig_symbol *s)
{
	return s->arrow.weld == s->other.weld && str_eq(s->arrow.size, s->other.size) &&
	    str_eq(s->arrow.length, s->other.length) &&
	    str_eq(s->arrow.pitch, s->other.pitch) &&
	    str_eq(s->arrow.angle, s->other.angle) &&
	    s->arrow.contour == s->other.contour && !s->staggered && !s->uneven;
}

static void add_line(struct symbol_plan *p, pt a, pt b, struct ink ink)
{
	struct symbol_stroke *k = symbol_stroke_new(p, ink);

	symbol_move(p, k, a);
	symbol_line(p, k, b);
}

static void add_junction(struct symbol_plan *p, const struct fig_symbol *s)
{
	const struct ink line = { .stroke_pt = 1 };
	double u = p->u;
	struct symbol_stroke *k;

	if (s->all_around) {
		k = symbol_stroke_new(p, line);
		symbol_arc(p, k, (pt){ 0, 0 }, CIRCLE_U * u, 0, 180);
		symbol_arc(p, k, (pt){ 0, 0 }, CIRCLE_U * u, 180, 360);
		symbol_close(k);
	}
	if (!s->field)
		return;
	add_line(p, (pt){ 0, 0 }, (pt){ 0, -2.8 * u }, line);
	k = symbol_stroke_new(p, (struct ink){ .fill = true });
	symbol_move(p, k, (pt){ 0, -2.8 * u });
	symbol_line(p, k, (pt){ 1.5 * u, -2.3 * u });
	symbol_line(p, k, (pt){ 0, -1.8 * u });
	symbol_close(k);
}

static void add_arrow(struct symbol_plan *p, const struct fig_symbol *s)
{
	double far = ARROW_U * p->u;
	bool broken = fig_weld_breaks_arrow(s->arrow.weld) ||
	    fig_weld_breaks_arrow(s->other.weld);
	pt tip = { -far, far }, knee = { -0.28 * far, 0.62 * far };
	struct symbol_stroke *k = symbol_stroke_new(p, (struct ink){ .stroke_pt = 1 });

	symbol_move(p, k, (pt){ 0, 0 });
	if (broken)
		symbol_line(p, k, knee);
	symbol_line(p, k, tip);
	p->arrow_tip = tip;
	p->arrow_dir = pt_unit(pt_sub(tip, broken ? knee : (pt){ 0, 0 }));
	if (s->joint != FIG_NONE)
		symbol_joint_add(p, s->joint, tip);
}

static void add_tail(struct symbol_plan *p, const struct fig_symbol *s, double end)
{
	double reach = TAIL_U * p->u * geom_cos(45), line = p->ascent + p->descent + 1;
	size_t n = 0;

	if (!has_tail(s))
		return;
	add_line(p, (pt){ end, 0 }, (pt){ end + reach, -reach },
	    (struct ink){ .stroke_pt = 1 });
	add_line(p, (pt){ end, 0 }, (pt){ end + reach, reach },
	    (struct ink){ .stroke_pt = 1 });
	while (n < FIG_SYMBOL_TAIL && s->tail[n].n)
		n++;
	for (size_t i = 0; i < n; i++)
		symbol_text(p, &s->tail[i], 1, end + reach + GAP_U * p->u,
		    p->ascent + line * ((double)i - (double)n / 2) + 0.5);
}

/* The lines of a symbol: where each side stands, and the dashed one. */
static void place_sides(struct symbol_plan *p, const struct fig_symbol *s,
    struct side *arrow, struct side *other)
{
	double start = (s->field ? 1.5 : CIRCLE_U) * p->u + GAP_U * p->u;
	double x = start + fmax(arrow->wleft + arrow->from, other->wleft + other->from);
	bool dashed = s->iso && !sides_alike(s);

	arrow->at = (struct symbol_place){ x, 0, s->iso ? -1 : 1 };
	other->at = (struct symbol_place){ x, dashed ? DASHED_U * p->u : 0, s->iso ? 1 : -1 };
	if (s->staggered)
		other->at.x += arrow->to + 1.2 * p->u + other->wleft;
}

static void build(struct symbol_plan *p, const struct fig_symbol *s, double size_pt)
{
	struct side arrow, other;
	double end;

	p->size_pt = size_pt;
	p->u = face_cap_height_pt(p->faces, FACE_SANS, size_pt);
	p->ascent = face_ascent_pt(p->faces, FACE_SANS, size_pt);
	p->descent = face_descent_pt(p->faces, FACE_SANS, size_pt);
	p->nstrokes = p->nlabels = 0;
	p->ink = rect_at((pt){ 0, 0 });
	arrow = side_of(p, &s->arrow, s->iso);
	other = side_of(p, &s->other, s->iso);
	place_sides(p, s, &arrow, &other);
	end = add_side(p, &arrow);
	end = fmax(end, add_side(p, &other)) + p->u;
	end = fmax(end, LINE_LEAST_U * p->u);
	add_line(p, (pt){ 0, 0 }, (pt){ end, 0 }, (struct ink){ .stroke_pt = 1 });
	if (s->iso && !sides_alike(s))
		add_line(p, (pt){ 0, DASHED_U * p->u }, (pt){ end, DASHED_U * p->u },
		    (struct ink){ .stroke_pt = 1, .dash_on_pt = 5, .dash_off_pt = 3 });
	add_junction(p, s);
	add_arrow(p, s);
	add_tail(p, s, end);
	p->ink = rect_inset(p->ink, -1);
}

static void emit_label(const struct symbol_plan *p, struct canvas *c,
    const struct symbol_label *l, pt by)
{
	rect r = { l->r.x + by.x, l->r.y + by.y, l->r.w, l->r.h };
	pt at = { r.x, r.y + p->ascent };

	canvas_box_begin(c, r, STR("label"));
	for (size_t i = 0; i < l->n; i++) {
		canvas_text(c, at, FACE_SANS, p->size_pt, l->part[i]);
		at.x += face_width_pt(p->faces, FACE_SANS, p->size_pt, l->part[i]);
	}
	canvas_box_end(c);
}

static void emit(const struct symbol_plan *p, struct canvas *c, rect area)
{
	pt by = { area.x + (area.w - p->ink.w) / 2 - p->ink.x,
		area.y + (area.h - p->ink.h) / 2 - p->ink.y };

	for (size_t i = 0; i < p->nstrokes; i++) {
		struct symbol_stroke k = p->stroke[i];

		for (size_t n = 0; n < k.n; n++)
			for (int q = 0; q < 3; q++)
				k.s[n].p[q] = pt_add(k.s[n].p[q], by);
		canvas_path(c, k.s, k.n, &k.ink);
	}
	dim_arrow(c, pt_add(p->arrow_tip, by), p->arrow_dir);
	for (size_t i = 0; i < p->nlabels; i++)
		emit_label(p, c, &p->label[i], by);
}

static void emit_note(struct canvas *c, const struct faces *f, rect area, str note)
{
	rect box = { area.x, area.y + area.h - NOTE_STRIP_PT, area.w, NOTE_STRIP_PT };

	if (!note.n)
		return;
	canvas_box_begin(c, box, STR("note"));
	canvas_text(c, (pt){ area.x, box.y + box.h - face_descent_pt(f, FACE_SANS, NOTE_PT) },
	    FACE_SANS, NOTE_PT, note);
	canvas_box_end(c);
}

bool fig_symbol_draw(struct canvas *c, const struct faces *f, rect area,
    const struct fig_symbol *s)
{
	double strip = s->note.n ? NOTE_STRIP_PT : 0;
	rect inner = { area.x, area.y, area.w, area.h - strip };
	struct symbol_plan p = { .faces = f };
	str why = fig_symbol_fault(s);

	if (!why.n && s->joint != FIG_NONE && !fig_symbol_outlines(s->joint))
		why = STR("no outline for this joint");
	if (why.n)
		return fig_refuse(c, f, area, s->language, why);
	build(&p, s, DIM_TYPE_PT);
	if (p.ink.w > inner.w || p.ink.h > inner.h ||
	    face_width_pt(f, FACE_SANS, NOTE_PT, s->note) > area.w)
		return fig_refuse(c, f, area, s->language, FIG_NO_ROOM);
	emit(&p, c, inner);
	emit_note(c, f, area, s->note);
	return true;
}

/* ---- words ---- */

static const str weld_words[FIG_WELD_COUNT] = {
	[FIG_WELD_FILLET] = WORD("fillet"), [FIG_WELD_SQUARE] = WORD("square groove"),
	[FIG_WELD_V] = WORD("V-groove"), [FIG_WELD_BEVEL] = WORD("bevel groove"),
	[FIG_WELD_U] = WORD("U-groove"), [FIG_WELD_J] = WORD("J-groove"),
	[FIG_WELD_FLARE_V] = WORD("flare-V groove"), [FIG_WELD_FLARE_BEVEL] = WORD("flare-bevel groove"),
	[FIG_WELD_SURFACING] = WORD("surfacing"), [FIG_WELD_BACK] = WORD("back or backing weld"),
	[FIG_WELD_MELT_THROUGH] = WORD("melt-through"), [FIG_WELD_STRIP] = WORD("backing strip"),
	[FIG_WELD_PLUG] = WORD("plug or slot weld"), [FIG_WELD_SPOT] = WORD("spot weld"),
};

/* What is said of a symbol, in its language. */
struct telling {
	struct buf b;
	const struct language *l;
	bool begun;
};

static void say(struct telling *t, str what, str value)
{
	if (value.n)
		buf_addf(&t->b, ", %.*s %.*s", STR_ARG(word_str(t->l, what)), STR_ARG(value));
}

static void say_side(struct telling *t, const struct fig_weld_side *k, bool arrow)
{
	static const str contours[] = { STR(""), WORD("flush"), WORD("convex"),
		WORD("concave") };
	str weld = word_str(t->l, weld_words[k->weld]);

	if (k->weld == FIG_WELD_NONE)
		return;
	buf_adds(&t->b, t->begun ? ";" : "");
	t->begun = true;
	if (arrow)
		word_addf(&t->b, t->l, " %.*s on the arrow side", STR_ARG(weld));
	else
		word_addf(&t->b, t->l, " %.*s on the other side", STR_ARG(weld));
	say(t, WORD("size"), k->size);
	say(t, WORD("groove weld size"), k->groove_size);
	say(t, k->weld == FIG_WELD_PLUG ? WORD("depth of filling") : WORD("root opening"),
	    k->root_opening);
	say(t, WORD("angle"), k->angle);
	say(t, WORD("length"), k->length);
	say(t, WORD("pitch"), k->pitch);
	say(t, WORD("number"), k->count);
	say(t, WORD("with a fillet over it of"), k->fillet_over);
	if (k->contour)
		buf_addf(&t->b, ", %.*s", STR_ARG(word_str(t->l, contours[k->contour])));
	say(t, WORD("finish"), k->finish);
}

static str tail_text(struct arena *a, const struct fig_symbol *s)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < FIG_SYMBOL_TAIL && s->tail[i].n; i++)
		buf_addf(&b, "%s%.*s", i ? ", " : "", STR_ARG(s->tail[i]));
	return buf_str(&b);
}

str fig_symbol_words(struct arena *a, const struct fig_symbol *s)
{
	struct telling t = { { .arena = a }, s->language, false };
	str tail = tail_text(a, s);

	buf_add(&t.b, word(t.l, "Welding symbol:"));
	say_side(&t, &s->arrow, true);
	say_side(&t, &s->other, false);
	if (s->staggered)
		buf_add(&t.b, word(t.l, ", staggered"));
	if (s->all_around)
		buf_add(&t.b, word(t.l, "; all around"));
	if (s->field)
		buf_add(&t.b, word(t.l, "; field weld"));
	if (fig_weld_breaks_arrow(s->arrow.weld) || fig_weld_breaks_arrow(s->other.weld))
		buf_add(&t.b, word(t.l, "; the arrow breaks towards the prepared member"));
	if (tail.n)
		word_addf(&t.b, t.l, "; in the tail: %.*s", STR_ARG(tail));
	buf_addc(&t.b, '.');
	return buf_str(&t.b);
}
