#include "sheets/weld_symbol.h"

#include "model/words.h"
#include "sheets/sheet.h"
#include "units/format.h"

#include <math.h>

void welds_of_block(const struct assignment *x, const struct joint_block *j, uint32_t *v,
    size_t *n)
{
	*n = 0;
	if (j->weld != NONE) {
		v[(*n)++] = j->weld;
		return;
	}
	if (joint_is_cut(j->joint))
		return;
	for (uint32_t i = 0; i < x->nwelds; i++)
		if (x->welds[i].joint == j->joint || x->nwelds == 1)
			v[(*n)++] = i;
}

/* ---- symbol ---- */

struct maker {
	struct arena *a;
	const struct language *l;
	const struct assignment *x;
	const struct joint_block *j;
	bool metric;
};

static bool is_exact(const struct quantity *q)
{
	return given(q) && q->lo == q->hi && q->form != FORM_GAUGE && q->form != FORM_PIPE;
}

/* A size without unit and tolerance; empty when it is a range or not given. */
static str size_text(const struct maker *m, const struct quantity *q)
{
	struct buf b = { .arena = m->a };
	struct quantity bare = *q;

	if (!is_exact(q))
		return (str){ 0 };
	bare.tolerance = false;
	if (m->metric)
		format_length_mm(&b, &bare);
	else
		format_length_in(&b, &bare);
	return buf_str(&b);
}

/* "5/16", or "1/4 x 3/8" of legs that differ, whose order the section tells (AWS A2.4, as
 * cited by public guides; ISO 2553, from memory). */
static str leg_text(const struct maker *m)
{
	const char *z = m->j->marks.standard == SYMBOL_ISO ? "z" : "";
	str first = size_text(m, &m->j->leg), second = size_text(m, &m->j->leg2);

	if (!given(&m->j->leg2) || !first.n || !second.n)
		return given(&m->j->leg2) ? (str){ 0 } : first;
	return str_format(m->a, "%.*s x %s%.*s", STR_ARG(first), z, STR_ARG(second));
}

static str angle_text(const struct maker *m, double deg)
{
	struct buf b = { .arena = m->a };

	format_angle(&b, deg);
	return buf_str(&b);
}

/* Whether some piece is just as long: then the weld runs from end to end, which is what a
 * symbol without a length says. */
static bool is_whole_length(const struct maker *m)
{
	const struct quantity *length = &m->j->length;

	for (size_t i = 0; i < m->x->npieces; i++)
		for (uint32_t k = 0; k < m->x->pieces[i].ndims; k++)
			if (fabs(m->x->pieces[i].dims[k].lo - length->lo) < 0.05)
				return true;
	return false;
}

static bool make_fillet(const struct maker *m, struct fig_symbol *s)
{
	s->arrow = (struct fig_weld_side){ .weld = FIG_WELD_FILLET,
		.size = leg_text(m) };
	if (given(&m->j->length) && !is_whole_length(m) && !given(&m->j->marks.increment))
		s->arrow.length = size_text(m, &m->j->length);
	if (m->j->both_sides && m->j->joint != JOINT_CORNER)
		s->other = s->arrow;
	return s->arrow.size.n > 0;
}

/* ---- grooves ---- */

static const enum fig_weld grooves[PREPARATION_COUNT] = {
	[PREPARATION_SQUARE] = FIG_WELD_SQUARE, [PREPARATION_V] = FIG_WELD_V,
	[PREPARATION_BEVEL] = FIG_WELD_BEVEL, [PREPARATION_U] = FIG_WELD_U,
	[PREPARATION_J] = FIG_WELD_J, [PREPARATION_DOUBLE_V] = FIG_WELD_V,
	[PREPARATION_DOUBLE_BEVEL] = FIG_WELD_BEVEL, [PREPARATION_DOUBLE_U] = FIG_WELD_U,
	[PREPARATION_DOUBLE_J] = FIG_WELD_J, [PREPARATION_FLARE_V] = FIG_WELD_FLARE_V,
	[PREPARATION_FLARE_BEVEL] = FIG_WELD_FLARE_BEVEL,
};

bool preparation_is_double(uint32_t p)
{
	return p >= PREPARATION_DOUBLE_V && p <= PREPARATION_DOUBLE_J;
}

static bool is_one_member(enum fig_weld w)
{
	return w == FIG_WELD_BEVEL || w == FIG_WELD_J;
}

static uint32_t preparation_of(const struct joint_block *j)
{
	static const uint32_t own[JOINT_COUNT] = {
		[JOINT_SINGLE_V] = PREPARATION_V, [JOINT_SINGLE_BEVEL] = PREPARATION_BEVEL,
		[JOINT_SQUARE_BUTT] = PREPARATION_SQUARE, [JOINT_PIPE_BUTT] = PREPARATION_V,
		[JOINT_FLARE_BEVEL] = PREPARATION_FLARE_BEVEL, [JOINT_BRANCH] = PREPARATION_BEVEL,
	};

	return j->preparation ? j->preparation : own[j->joint];
}

static void add_tail(struct fig_symbol *s, str line)
{
	size_t n = 0;

	while (n < FIG_SYMBOL_TAIL && s->tail[n].n)
		n++;
	if (n < FIG_SYMBOL_TAIL)
		s->tail[n] = line;
}

/* The groove angle: of both members together, or of the one. False: not known, or a
 * range. */
static bool groove_angle(const struct quantity *angle, const struct quantity *bevel,
    enum fig_weld w, double *deg)
{
	const struct quantity *q = given(angle) ? angle : bevel;

	*deg = given(q) ? q->lo : 0;
	if (!given(angle) && !is_one_member(w))
		*deg *= 2;
	return *deg > 0 && q->lo == q->hi;
}

/* At the back of a double preparation: its own angle, or that of the front. */
static bool back_angle(const struct joint_block *j, enum fig_weld w, double *deg)
{
	if (given(&j->angle_back) || given(&j->bevel_back))
		return groove_angle(&j->angle_back, &j->bevel_back, w, deg);
	return groove_angle(&j->angle, &j->bevel, w, deg);
}

static void add_radius(const struct maker *m, struct fig_symbol *s)
{
	const struct joint_block *j = m->j;

	if (!is_exact(&j->radius))
		return;
	if (is_exact(&j->radius_back))
		add_tail(s, word_format(m->a, m->l, "root radius %.*s, other side %.*s",
		    STR_ARG(size_text(m, &j->radius)), STR_ARG(size_text(m, &j->radius_back))));
	else
		add_tail(s, word_format(m->a, m->l, "root radius %.*s",
		    STR_ARG(size_text(m, &j->radius))));
}

static str computed_text(const struct maker *m, double mm)
{
	struct buf b = { .arena = m->a };

	if (m->metric)
		format_mm(&b, mm, 1);
	else
		format_computed_in(&b, mm, 0);
	return buf_str(&b);
}

/* Depths of preparation, front and back. Without any a groove asks for complete
 * penetration, which one prepared through the thickness is for. False: a size that is no
 * single one. */
static bool groove_depths(const struct maker *m, bool both, str *front, str *back)
{
	const struct joint_block *j = m->j;
	double rest;

	*front = size_text(m, &j->depth);
	*back = size_text(m, &j->depth_back);
	if ((given(&j->depth) && !front->n) || (given(&j->depth_back) && !back->n))
		return false;
	if (!both || !front->n == !back->n)
		return true;
	if (!is_exact(&j->t1) || (given(&j->land) && !is_exact(&j->land)))
		return false;
	rest = j->t1.lo - (given(&j->land) ? j->land.lo : 0) -
	    (front->n ? j->depth.lo : j->depth_back.lo);
	*(front->n ? back : front) = computed_text(m, rest);
	return true;
}

/* What stands across a groove: a strip that is drawn, or the back weld of a gouged root,
 * or what the block says. */
static void add_backing(const struct maker *m, struct fig_symbol *s)
{
	str fact = fact_text(m->x, STR("Backing"));

	if (m->j->marks.back == BACK_MELT_THROUGH) {
		s->other = (struct fig_weld_side){ .weld = FIG_WELD_MELT_THROUGH,
			.size = size_text(m, &m->j->marks.melt) };
	} else if (m->j->marks.back) {
		s->other.weld = FIG_WELD_BACK;
		add_tail(s, m->j->marks.back == BACK_WELD ? word(m->l, "back weld")
		                                          : word(m->l, "backing weld"));
	} else if (str_starts_nocase(fact, STR("back-goug")) || m->j->both_sides) {
		s->other.weld = FIG_WELD_BACK;
	} else if (given(&m->j->backing_t)) {
		s->other.weld = FIG_WELD_STRIP;
		if (is_exact(&m->j->backing_t) && is_exact(&m->j->backing_w))
			add_tail(s, word_format(m->a, m->l, "backing %.*s x %.*s",
			    STR_ARG(size_text(m, &m->j->backing_t)),
			    STR_ARG(size_text(m, &m->j->backing_w))));
	}
}

/* A fillet over the groove has no place for the angle beside it: the tail has it. */
static void add_over(const struct maker *m, struct fig_symbol *s, bool both)
{
	str leg = size_text(m, &m->j->leg);

	if (!leg.n)
		return;
	if (both && !str_eq(s->arrow.angle, s->other.angle))
		add_tail(s, word_format(m->a, m->l, "%.*s bevel, other side %.*s",
		    STR_ARG(s->arrow.angle), STR_ARG(s->other.angle)));
	else
		add_tail(s, word_format(m->a, m->l, "%.*s bevel", STR_ARG(s->arrow.angle)));
	s->arrow.angle = s->other.angle = (str){ 0 };
	s->arrow.fillet_over = leg;
	if (both)
		s->other.fillet_over = leg;
}

static bool make_groove(const struct maker *m, struct fig_symbol *s)
{
	const struct joint_block *j = m->j;
	uint32_t p = preparation_of(j);
	bool both = preparation_is_double(p);
	enum fig_weld w = grooves[p];
	str front, back;
	double deg, deg_back;

	if (!groove_angle(&j->angle, &j->bevel, w, &deg) || !back_angle(j, w, &deg_back) ||
	    !groove_depths(m, both, &front, &back))
		return false;
	s->arrow = (struct fig_weld_side){ .weld = w, .size = front,
		.root_opening = size_text(m, &j->gap), .angle = angle_text(m, deg) };
	if (both)
		s->other = (struct fig_weld_side){ .weld = w, .size = back,
			.angle = angle_text(m, deg_back) };
	else
		add_backing(m, s);
	add_radius(m, s);
	if (j->joint == JOINT_TEE || j->joint == JOINT_BRANCH)
		add_over(m, s, both);
	else if (j->joint == JOINT_CORNER && given(&j->leg) && !both)
		s->other = (struct fig_weld_side){ .weld = FIG_WELD_FILLET,
			.size = size_text(m, &j->leg) };
	return true;
}

/* A branch is welded all the way round it. */
static bool make_branch(const struct maker *m, struct fig_symbol *s)
{
	s->all_around = true;
	return make_groove(m, s);
}

static bool make_square(const struct maker *m, struct fig_symbol *s)
{
	if (!given(&m->j->t1) || weld_is_thick_square(m->j))
		return false;
	s->arrow = (struct fig_weld_side){ .weld = FIG_WELD_SQUARE,
		.root_opening = size_text(m, &m->j->gap) };
	if (m->j->both_sides)
		s->other.weld = FIG_WELD_SQUARE;
	else
		add_backing(m, s);
	return true;
}

/* How full a flare is the symbol does not say; the section does. */
static bool make_flare(const struct maker *m, struct fig_symbol *s)
{
	s->arrow.weld = grooves[preparation_of(m->j)];
	if (m->j->both_sides)
		s->other.weld = s->arrow.weld;
	add_tail(s, word(m->l, "see the section"));
	return true;
}

/* The edges of an open corner form a V of 90 degrees (from memory). */
static bool make_open_corner(const struct maker *m, struct fig_symbol *s)
{
	s->arrow = (struct fig_weld_side){ .weld = FIG_WELD_V,
		.root_opening = size_text(m, &m->j->gap), .angle = angle_text(m, 90) };
	add_backing(m, s);
	return true;
}

static bool make_surfacing(const struct maker *m, struct fig_symbol *s)
{
	s->arrow = (struct fig_weld_side){ .weld = FIG_WELD_SURFACING,
		.size = size_text(m, &m->j->reinforcement) };
	return s->arrow.size.n > 0;
}

/* "n (e)" of plugs and spots from middle to middle, "n x l (e)" of slots with e the gap
 * between (ISO 2553, from memory). */
static void add_iso_row(const struct maker *m, struct fig_weld_side *k)
{
	const struct symbol_marks *s = &m->j->marks;
	double slot = s->hole != HOLE_SLOT ? 0
	    : s->slots_across ? s->hole_width.lo : s->hole_length.lo;
	str between = computed_text(m, s->spacing.lo - slot);

	k->pitch = (str){ 0 };
	if (s->hole == HOLE_SLOT)
		k->length = str_format(m->a, "%u x %.*s (%.*s)", s->count,
		    STR_ARG(size_text(m, &s->hole_length)), STR_ARG(between));
	else
		k->pitch = str_format(m->a, "%u (%.*s)", s->count, STR_ARG(between));
}

/* Of a slot the width stands before the figure, the length behind it (AWS A2.4, from
 * memory). */
static bool make_hole(const struct maker *m, struct fig_symbol *s)
{
	const struct symbol_marks *k = &m->j->marks;

	s->arrow = (struct fig_weld_side){
		.weld = k->hole == HOLE_SPOT ? FIG_WELD_SPOT : FIG_WELD_PLUG,
		.size = size_text(m, &k->hole_width), .length = size_text(m, &k->hole_length),
		.root_opening = size_text(m, &k->fill), .pitch = size_text(m, &k->spacing) };
	if (k->standard == SYMBOL_ISO && k->count > 1 && given(&k->spacing)) {
		add_iso_row(m, &s->arrow);
		return s->arrow.size.n > 0;
	}
	if (k->count)
		s->arrow.count = str_format(m->a, "(%u)", k->count);
	return s->arrow.size.n > 0;
}

/* Joints that are not here have no symbol: of an edge weld no figure was found that is
 * surely right, and a gouge is no weld. */
static const struct {
	bool (*make)(const struct maker *m, struct fig_symbol *s);
	enum fig_shape outline;
} makers[JOINT_COUNT] = {
	[JOINT_TEE] = { make_fillet, FIG_TEE }, [JOINT_LAP] = { make_fillet, FIG_LAP },
	[JOINT_CORNER] = { make_fillet, FIG_CORNER_CLOSED },
	[JOINT_OPEN_CORNER] = { make_open_corner, FIG_CORNER_OPEN },
	[JOINT_SQUARE_BUTT] = { make_square, FIG_SQUARE_BUTT },
	[JOINT_SINGLE_V] = { make_groove, FIG_SINGLE_V },
	[JOINT_SINGLE_BEVEL] = { make_groove, FIG_SINGLE_BEVEL },
	[JOINT_PIPE_BUTT] = { make_groove, FIG_PIPE_BUTT },
	[JOINT_FLARE_BEVEL] = { make_flare, FIG_FLARE_BEVEL },
	[JOINT_BRANCH] = { make_branch, FIG_BRANCH },
	[JOINT_SURFACING] = { make_surfacing, FIG_PAD },
};

/* The same with edges that the block prepares. */
static const enum fig_shape prepared[JOINT_COUNT] = {
	[JOINT_BUTT] = FIG_BUTT_GROOVE, [JOINT_TEE] = FIG_TEE_GROOVE,
	[JOINT_CORNER] = FIG_CORNER_GROOVE, [JOINT_EDGE] = FIG_EDGE_GROOVE,
};

static bool make_by_joint(const struct maker *m, struct fig_symbol *s)
{
	const struct joint_block *j = m->j;
	uint32_t p = j->preparation;

	if (j->marks.hole) {
		s->joint = j->marks.hole == HOLE_SPOT ? FIG_SPOT : FIG_PLUG;
		return j->joint == JOINT_LAP && make_hole(m, s);
	}
	s->joint = p && prepared[j->joint] ? prepared[j->joint] : makers[j->joint].outline;
	if (p == PREPARATION_SQUARE)
		return j->joint != JOINT_EDGE && make_square(m, s);
	if (!p || !prepared[j->joint])
		return makers[j->joint].make && makers[j->joint].make(m, s);
	if (p < PREPARATION_FLARE_V)
		return make_groove(m, s);
	if (j->joint == JOINT_TEE)
		s->joint = FIG_FLARE_BEVEL;
	return make_flare(m, s);
}

/* ---- what the block adds ---- */

static enum process process_of(const struct assignment *x, const struct joint_block *j)
{
	uint32_t w = j->weld == NONE && x->nwelds == 1 ? 0 : j->weld;

	if (w != NONE && x->welds[w].process != PROCESS_COUNT)
		return x->welds[w].process;
	return x->nprocesses == 1 ? x->processes[0] : PROCESS_COUNT;
}

/* Numbers of ISO 4063 (from memory) where the process alone decides them: that of solid
 * wire depends on the gas, so its letters stay. */
static str process_tail(enum process p, bool iso)
{
	static const str numbers[PROCESS_COUNT] = {
		[PROCESS_SMAW] = STR("111"), [PROCESS_FCAW_S] = STR("114"),
		[PROCESS_FCAW_G] = STR("136"), [PROCESS_GTAW] = STR("141"),
		[PROCESS_OFW] = STR("311"),
	};

	return iso && numbers[p].n ? numbers[p] : process_word(p);
}

/* Millimeters when the first size that the symbol shows is written so. */
static bool is_metric(const struct joint_block *j)
{
	const struct quantity *v[] = { &j->leg, &j->depth, &j->marks.hole_width, &j->gap,
		&j->reinforcement };

	for (size_t i = 0; i < sizeof v / sizeof *v; i++)
		if (is_exact(v[i]))
			return v[i]->form == FORM_METRIC;
	return false;
}

/* "2-6" is length and pitch; in ISO "n x l (e)" with e the gap between, so the number has
 * to be known. */
static bool add_increments(const struct maker *m, struct fig_weld_side *k)
{
	const struct symbol_marks *s = &m->j->marks;

	if (k->weld == FIG_WELD_NONE)
		return true;
	if (s->standard != SYMBOL_ISO) {
		k->length = size_text(m, &s->increment);
		k->pitch = size_text(m, &s->pitch);
		return true;
	}
	k->length = str_format(m->a, "%u x %.*s (%.*s)", s->count,
	    STR_ARG(size_text(m, &s->increment)),
	    STR_ARG(computed_text(m, s->pitch.lo - s->increment.lo)));
	return s->count > 0;
}

static void add_contours(const struct maker *m, struct fig_symbol *s)
{
	static const enum fig_contour kinds[] = { FIG_CONTOUR_NONE, FIG_FLUSH, FIG_CONVEX,
		FIG_CONCAVE };
	const struct symbol_marks *k = &m->j->marks;
	char letters[2] = { (char)k->finish, (char)k->finish_back };

	s->arrow.contour = kinds[k->contour];
	s->other.contour = kinds[k->contour_back];
	if (k->finish)
		s->arrow.finish = str_copy(m->a, (str){ &letters[0], 1 });
	if (k->finish_back)
		s->other.finish = str_copy(m->a, (str){ &letters[1], 1 });
}

/* Legs are told with a z in ISO 2553; a bare number would be a throat. */
static void add_iso(const struct maker *m, struct fig_weld_side *k)
{
	if (k->weld == FIG_WELD_FILLET && k->size.n)
		k->size = str_format(m->a, "z%.*s", STR_ARG(k->size));
	if (k->fillet_over.n)
		k->fillet_over = str_format(m->a, "z%.*s", STR_ARG(k->fillet_over));
}

static bool add_marks(const struct maker *m, struct fig_symbol *s)
{
	const struct symbol_marks *k = &m->j->marks;

	s->field = k->field;
	s->all_around |= k->all_around;
	s->staggered = k->staggered;
	if (given(&k->increment) && (!add_increments(m, &s->arrow) ||
	    (s->other.weld == FIG_WELD_FILLET && !add_increments(m, &s->other))))
		return false;
	add_contours(m, s);
	add_tail(s, k->tail);
	if (!s->iso)
		return true;
	add_iso(m, &s->arrow);
	add_iso(m, &s->other);
	return true;
}

static str note_of(const struct maker *m, bool iso)
{
	if (given(&m->j->leg2))
		return iso ? word(m->l, "ISO 2553 system A, two legs from memory; sizes in mm; "
		                        "which leg is which: see the section")
		    : m->metric
		    ? word(m->l, "AWS A2.4; sizes in mm; which leg is which: see the section")
		    : word(m->l, "AWS A2.4; sizes in inches; which leg is which: see the section");
	if (iso && m->j->marks.count > 1 && m->j->marks.hole)
		return word(m->l, "ISO 2553 system A, rows from memory; sizes in mm");
	if (iso)
		return word(m->l, "ISO 2553 system A; sizes in mm");
	return m->metric ? word(m->l, "AWS A2.4; sizes in mm")
	                 : word(m->l, "AWS A2.4; sizes in inches");
}

bool weld_symbol_make(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, struct fig_symbol *out)
{
	bool iso = j->marks.standard == SYMBOL_ISO;
	struct maker m = { a, edition_language(e), x, j,
		iso || (e && e->choice.metric) || is_metric(j) };
	enum process process = process_of(x, j);

	*out = (struct fig_symbol){ .language = m.l, .iso = iso, .note = note_of(&m, iso),
		.uneven = given(&j->angle_back) || given(&j->bevel_back) || given(&j->radius_back) };
	if (j->joint >= JOINT_COUNT || j->marks.standard == SYMBOL_LEFT_OUT)
		return false;
	if (process != PROCESS_COUNT)
		add_tail(out, process_tail(process, iso));
	return make_by_joint(&m, out) && add_marks(&m, out);
}

bool weld_symbol(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, struct fig_symbol *out)
{
	return weld_symbol_make(a, e, x, j, out) && fig_symbol_fault(out).n == 0;
}
