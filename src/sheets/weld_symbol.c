#include "sheets/weld_symbol.h"

#include "sheets/sheet.h"
#include "units/format.h"

#include <math.h>

/* A square edge up to this is taken to be melted through from one side (common practice,
 * no source); above it a square groove without a depth would claim too much. */
#define SQUARE_MOST_MM (0.1875 * 25.4 + 0.01)

void welds_of_block(const struct assignment *x, const struct joint_block *j, uint32_t *v,
    size_t *n)
{
	*n = 0;
	if (j->weld != NONE) {
		v[(*n)++] = j->weld;
		return;
	}
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
		.size = size_text(m, &m->j->leg) };
	if (given(&m->j->length) && !is_whole_length(m))
		s->arrow.length = size_text(m, &m->j->length);
	if (m->j->both_sides && m->j->joint != JOINT_CORNER)
		s->other = s->arrow;
	return s->arrow.size.n > 0;
}

/* What stands across a groove: a strip that is drawn, or the back weld of a gouged root. */
static void add_backing(const struct maker *m, struct fig_symbol *s, size_t *tail)
{
	str fact = fact_text(m->x, STR("Backing"));

	if (str_starts_nocase(fact, STR("back-goug"))) {
		s->other.weld = FIG_WELD_BACK;
		return;
	}
	if (!given(&m->j->backing_t))
		return;
	s->other.weld = FIG_WELD_STRIP;
	if (is_exact(&m->j->backing_t) && is_exact(&m->j->backing_w))
		s->tail[(*tail)++] = word_format(m->a, m->l, "backing %.*s x %.*s",
		    STR_ARG(size_text(m, &m->j->backing_t)),
		    STR_ARG(size_text(m, &m->j->backing_w)));
}

/* Without a depth a groove figure asks for complete penetration, which a groove prepared
 * through the thickness is for. */
static bool make_groove(const struct maker *m, struct fig_symbol *s)
{
	const struct joint_block *j = m->j;
	bool one = j->joint == JOINT_SINGLE_BEVEL;
	double deg = one ? j->bevel.lo : given(&j->angle) ? j->angle.lo : 2 * j->bevel.lo;

	if (!(deg > 0) || (!one && given(&j->angle) && j->angle.lo != j->angle.hi))
		return false;
	s->arrow = (struct fig_weld_side){ .weld = one ? FIG_WELD_BEVEL : FIG_WELD_V,
		.root_opening = size_text(m, &j->gap), .angle = angle_text(m, deg) };
	return true;
}

static bool make_square(const struct maker *m, struct fig_symbol *s)
{
	if (!given(&m->j->t1) || (!m->j->both_sides && m->j->t1.hi > SQUARE_MOST_MM))
		return false;
	s->arrow = (struct fig_weld_side){ .weld = FIG_WELD_SQUARE,
		.root_opening = size_text(m, &m->j->gap) };
	if (m->j->both_sides)
		s->other.weld = FIG_WELD_SQUARE;
	return true;
}

static bool make_surfacing(const struct maker *m, struct fig_symbol *s)
{
	s->arrow = (struct fig_weld_side){ .weld = FIG_WELD_SURFACING,
		.size = size_text(m, &m->j->reinforcement) };
	return s->arrow.size.n > 0;
}

/* Joints that are not here have no symbol yet: an edge, an open corner or a gouge has no
 * figure that is surely right, a branch needs two figures on one side. */
static const struct {
	bool (*make)(const struct maker *m, struct fig_symbol *s);
	enum fig_shape outline;
} makers[JOINT_COUNT] = {
	[JOINT_TEE] = { make_fillet, FIG_TEE }, [JOINT_LAP] = { make_fillet, FIG_LAP },
	[JOINT_CORNER] = { make_fillet, FIG_CORNER_CLOSED },
	[JOINT_SQUARE_BUTT] = { make_square, FIG_SQUARE_BUTT },
	[JOINT_SINGLE_V] = { make_groove, FIG_SINGLE_V },
	[JOINT_SINGLE_BEVEL] = { make_groove, FIG_SINGLE_BEVEL },
	[JOINT_PIPE_BUTT] = { make_groove, FIG_PIPE_BUTT },
	[JOINT_SURFACING] = { make_surfacing, FIG_PAD },
};

static enum process process_of(const struct assignment *x, const struct joint_block *j)
{
	uint32_t w = j->weld == NONE && x->nwelds == 1 ? 0 : j->weld;

	if (w != NONE && x->welds[w].process != PROCESS_COUNT)
		return x->welds[w].process;
	return x->nprocesses == 1 ? x->processes[0] : PROCESS_COUNT;
}

/* Millimeters when the first size that the symbol shows is written so. */
static bool is_metric(const struct joint_block *j)
{
	const struct quantity *v[] = { &j->leg, &j->gap, &j->reinforcement };

	for (size_t i = 0; i < sizeof v / sizeof *v; i++)
		if (is_exact(v[i]))
			return v[i]->form == FORM_METRIC;
	return false;
}

bool weld_symbol(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, struct fig_symbol *out)
{
	struct maker m = { a, edition_language(e), x, j,
		(e && e->choice.metric) || is_metric(j) };
	enum process process = process_of(x, j);
	size_t tail = 0;

	*out = (struct fig_symbol){ .language = m.l,
		.note = m.metric ? word(m.l, "AWS A2.4; sizes in mm")
		                 : word(m.l, "AWS A2.4; sizes in inches") };
	if (j->joint >= JOINT_COUNT || !makers[j->joint].make || !makers[j->joint].make(&m, out))
		return false;
	out->joint = makers[j->joint].outline;
	if (process != PROCESS_COUNT)
		out->tail[tail++] = process_word(process);
	if (makers[j->joint].make == make_groove)
		add_backing(&m, out, &tail);
	return fig_symbol_fault(out).n == 0;
}

/* ---- position ---- */

static const enum fig_place places[POSITION_COUNT] = {
	[POSITION_FLAT] = FIG_FLAT, [POSITION_1F] = FIG_1F, [POSITION_2F] = FIG_2F,
	[POSITION_3F] = FIG_3F, [POSITION_4F] = FIG_4F, [POSITION_5F] = FIG_5F,
	[POSITION_1G] = FIG_1G, [POSITION_2G] = FIG_2G, [POSITION_3G] = FIG_3G,
	[POSITION_4G] = FIG_4G, [POSITION_5G] = FIG_5G, [POSITION_6G] = FIG_6G,
	[POSITION_1G_ROLLED] = FIG_1G_ROLLED, [POSITION_1F_ROLLED] = FIG_1F_ROLLED,
};

static const struct {
	bool drawn;
	enum fig_members plate, pipe;
} members[JOINT_COUNT] = {
	[JOINT_TEE] = { true, FIG_MEMBERS_TEE, FIG_MEMBERS_PIPE_ON_PLATE },
	[JOINT_LAP] = { true, FIG_MEMBERS_LAP, FIG_MEMBERS_LAP },
	[JOINT_CORNER] = { true, FIG_MEMBERS_CORNER, FIG_MEMBERS_CORNER },
	[JOINT_OPEN_CORNER] = { true, FIG_MEMBERS_ROOF, FIG_MEMBERS_ROOF },
	[JOINT_SQUARE_BUTT] = { true, FIG_MEMBERS_BUTT, FIG_MEMBERS_PIPE },
	[JOINT_SINGLE_V] = { true, FIG_MEMBERS_BUTT, FIG_MEMBERS_PIPE },
	[JOINT_SINGLE_BEVEL] = { true, FIG_MEMBERS_BUTT, FIG_MEMBERS_PIPE },
	[JOINT_PIPE_BUTT] = { true, FIG_MEMBERS_PIPE, FIG_MEMBERS_PIPE },
	[JOINT_SURFACING] = { true, FIG_MEMBERS_PAD, FIG_MEMBERS_PAD },
};

/* 2G to 4G are groove positions, 2F to 5F those of fillets. */
static bool is_at_home(enum fig_members m, enum position p)
{
	bool groove = p == POSITION_2G || p == POSITION_3G || p == POSITION_4G;
	bool fillet = p == POSITION_2F || p == POSITION_3F || p == POSITION_4F;

	if (m == FIG_MEMBERS_TEE || m == FIG_MEMBERS_LAP || m == FIG_MEMBERS_CORNER)
		return !groove;
	return m != FIG_MEMBERS_BUTT || !fillet;
}

bool weld_position(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, uint32_t weld, struct fig_position *out)
{
	const struct weld *w = &x->welds[weld];
	bool pipe = j->pipe.od_mm > 0 || w->run.od_mm > 0;

	if (w->at.position >= POSITION_COUNT || j->joint >= JOINT_COUNT ||
	    !members[j->joint].drawn)
		return false;
	*out = (struct fig_position){ .language = edition_language(e), .place = places[w->at.position],
		.travel = (enum fig_travel)w->at.progression,
		.members = pipe ? members[j->joint].pipe : members[j->joint].plate };
	/* A turned or fixed round says by itself that it is no plate. */
	if (!fig_position_can_draw(out))
		out->members = members[j->joint].pipe;
	if (!fig_position_can_draw(out) || !is_at_home(out->members, w->at.position))
		return false;
	out->label = position_text(a, e, &w->at);
	if (j->weld == NONE && w->letter && x->nwelds > 1)
		out->label = str_format(a, "%c: %.*s", w->letter, STR_ARG(out->label));
	return true;
}
