#include "sheets/cut_map.h"

#include "model/test_line.h"
#include "reckon/pipe.h"
#include "reckon/strips.h"
#include "sheets/both_units.h"
#include "sheets/edition.h"
#include "sheets/figure_data.h"
#include "sheets/wording.h"
#include "units/format.h"

#include "base/buf.h"

#include <math.h>

#define KERF_MM 3.175            /* 1/8 in, a saw (common practice, no source) */
#define DISCARD_MM 25.4
#define FIRST_DEG 45.0

/* In the order in which strips lie beside one another on a plate. */
enum cut { CUT_FACE, CUT_SIDE, CUT_TENSILE, CUT_NICK, CUT_ROOT, CUT_FILLET, CUT_MACRO,
	CUT_COUNT };

/* name: how such a line begins; word: on the map. */
static const struct { const char *name; str word; } cuts[CUT_COUNT] = {
	[CUT_FACE] = { "face bend", WORD("face bend") },
	[CUT_SIDE] = { "side bend", WORD("side bend") },
	[CUT_TENSILE] = { "tensile", WORD("tensile") },
	[CUT_NICK] = { "nick", WORD("nick-break") },
	[CUT_ROOT] = { "root bend", WORD("root bend") },
	[CUT_FILLET] = { "fillet break", WORD("fillet break") },
	[CUT_MACRO] = { "macro", WORD("macro") },
};

/* What one Acceptance line takes from one weld. */
struct take {
	uint32_t n;              /* 0: no such line, or not of this weld */
	double width_mm;
	double place[FIG_CUT_STRIPS]; /* middles: mm from the left, or degrees */
	size_t nplaces;
};

static bool is_given(const struct quantity *q)
{
	return q->kind != QUANTITY_ANY && !q->no_value;
}

/* ---- reading a line ---- */

static enum cut cut_of(str name)
{
	enum cut k = 0;

	while (k < CUT_COUNT && !str_starts_nocase(name, str_of(cuts[k].name)))
		k++;
	return k;
}

static bool suits(enum cut k, enum joint j)
{
	if (k == CUT_FILLET || k == CUT_MACRO)
		return j == JOINT_TEE || j == JOINT_LAP || j == JOINT_CORNER;
	return j == JOINT_SQUARE_BUTT || j == JOINT_SINGLE_V || j == JOINT_SINGLE_BEVEL ||
	    j == JOINT_PIPE_BUTT || j == JOINT_BUTT;
}

/* How many welds, or drawings where there are no welds, a count has to be shared by. */
static size_t sharers(const struct assignment *x, enum cut k)
{
	size_t n = 0;

	for (size_t i = 0; i < x->nwelds; i++)
		n += suits(k, x->welds[i].joint);
	for (size_t i = 0; !x->nwelds && i < x->ndrawings; i++)
		n += x->drawings[i].kind == DRAWING_JOINT && suits(k, x->drawings[i].joint.joint);
	return n;
}

static double width_of(enum cut k, double od_mm)
{
	return strip_width_mm(k == CUT_SIDE ? STRIP_SIDE : k == CUT_NICK ? STRIP_NICK
	    : STRIP_FACE_ROOT, od_mm);
}

static void read_strips(const struct criterion *c, bool pipe, struct take *t)
{
	struct test_strips s = test_strips_of(c, pipe, FIG_CUT_STRIPS - t->nplaces);

	if (s.width_mm > 0)
		t->width_mm = s.width_mm;
	for (size_t i = 0; i < s.nplaces; i++)
		t->place[t->nplaces++] = s.place[i];
}

/* False when a count is not told, or shared by welds and nothing says how, or when there
 * are more strips than one map shows. */
static bool read_takes(const struct assignment *x, const struct joint_block *j,
    uint32_t weld, struct take *v)
{
	char letter = weld == NONE ? 0 : x->welds[weld].letter;
	uint32_t total = 0;

	for (size_t i = 0; i < x->ncriteria; i++) {
		const struct criterion *c = &x->criteria[i];
		enum cut k = cut_of(c->name);
		struct test_counts t;
		uint32_t n;

		if (k == CUT_COUNT || !suits(k, j->joint))
			continue;
		t = test_counts_of(c);
		n = t.lettered && letter ? t.of[letter - 'A'] : t.total;
		if (!t.lettered && (!n || sharers(x, k) > 1))
			return false;
		if (n > FIG_CUT_STRIPS || (total += n) > FIG_CUT_STRIPS)
			return false;
		v[k].n += n;
		v[k].width_mm = width_of(k, j->pipe.od_mm);
		read_strips(c, j->pipe.od_mm > 0, &v[k]);
	}
	return true;
}

/* ---- placing ---- */

struct piece_cut { enum cut kind; size_t of_kind; double width_mm; };

static size_t strips_in_order(const struct take *v, bool pipe, struct piece_cut *out)
{
	size_t n = 0;

	/* Round a pipe the sorts take turns, so that opposite strips are of one sort. */
	for (uint32_t turn = 0; pipe && turn < FIG_CUT_STRIPS; turn++)
		for (enum cut k = 0; k <= CUT_ROOT; k++)
			if (turn < v[k].n && n < FIG_CUT_STRIPS)
				out[n++] = (struct piece_cut){ k, turn, v[k].width_mm };
	for (enum cut k = 0; !pipe && k <= CUT_ROOT; k++)
		for (uint32_t i = 0; i < v[k].n && n < FIG_CUT_STRIPS; i++)
			out[n++] = (struct piece_cut){ k, i, v[k].width_mm };
	return n;
}

static str strip_name(struct arena *a, const struct language *l, const struct take *v,
    const struct piece_cut *p)
{
	str name = word_str(l, cuts[p->kind].word);

	return v[p->kind].n > 1 ? str_format(a, "%.*s %zu", STR_ARG(name), p->of_kind + 1) : name;
}

static str length_text(struct arena *a, const struct edition *e, double mm)
{
	struct buf b = { .arena = a };

	format_computed_as(&b, edition_format(e), mm, 0);
	return buf_str(&b);
}

/* One end of a span, without its unit. */
static str end_in(struct arena *a, double mm)
{
	struct buf b = { .arena = a };

	format_computed_in(&b, mm, 0);
	return buf_str(&b);
}

static str end_mm(struct arena *a, double mm)
{
	struct buf b = { .arena = a };

	format_mm(&b, mm, 0);
	return buf_str(&b);
}

static str span_text(struct arena *a, const struct edition *e, str name, double from_mm,
    double to_mm)
{
	const struct language *l = edition_language(e);

	if (e && e->choice.metric)
		return word_format(a, l, "%.*s, %.*s to %.*s mm [%.*s to %.*s in]", STR_ARG(name),
		    STR_ARG(end_mm(a, from_mm)), STR_ARG(end_mm(a, to_mm)),
		    STR_ARG(end_in(a, from_mm)), STR_ARG(end_in(a, to_mm)));
	return word_format(a, l, "%.*s, %.*s to %.*s in [%.*s to %.*s mm]", STR_ARG(name),
	    STR_ARG(end_in(a, from_mm)), STR_ARG(end_in(a, to_mm)),
	    STR_ARG(end_mm(a, from_mm)), STR_ARG(end_mm(a, to_mm)));
}

static void sort_strips(struct fig_strip *v, size_t n)
{
	for (size_t i = 1; i < n; i++) {
		struct fig_strip t = v[i];
		size_t at = i;

		for (; at > 0 && v[at - 1].from_mm > t.from_mm; at--)
			v[at] = v[at - 1];
		v[at] = t;
	}
}

/* Middles that the lines give; all of them or none. */
static bool places_given(const struct take *v)
{
	for (enum cut k = 0; k <= CUT_ROOT; k++)
		if (v[k].n != v[k].nplaces)
			return false;
	return true;
}

/* To the nearest 1/16 in, as it is marked out. */
static double marked_mm(double mm)
{
	return floor(mm * 16 / 25.4 + 0.5) * 25.4 / 16;
}

static bool map_plate(struct arena *a, const struct edition *e, const struct take *v, const struct piece_cut *p,
    size_t n, struct fig_cut *out)
{
	struct fig_strip *strips = arena_array(a, n, sizeof *strips);
	double width[FIG_CUT_STRIPS], sum = 0;
	struct strip at[FIG_CUT_STRIPS];

	for (size_t i = 0; i < n; i++)
		sum += width[i] = p[i].width_mm;
	if (strips_length_mm(n, sum / (double)n, DISCARD_MM, KERF_MM) > out->length_mm + 1e-6)
		return false;
	strips_on_plate(width, n, out->length_mm, DISCARD_MM, at);
	for (size_t i = 0; i < n; i++) {
		at[i].from_mm = places_given(v)
		    ? v[p[i].kind].place[p[i].of_kind] - width[i] / 2 : marked_mm(at[i].from_mm);
		at[i].to_mm = at[i].from_mm + width[i];
		strips[i] = (struct fig_strip){ at[i].from_mm, at[i].to_mm,
			span_text(a, e, strip_name(a, out->language, v, &p[i]),
			    at[i].from_mm, at[i].to_mm),
			/* Narrow ones have no room for more than one. */
			width[i] > 25 || i == 0 ? length_text(a, e, width[i]) : (str){ 0 } };
	}
	sort_strips(strips, n);
	out->strips = strips;
	out->nstrips = n;
	return true;
}

/* "root bend 1 at 1:30, 2.60 in [66 mm]": the middle, along the outside from 12. */
static str clock_text(struct arena *a, const struct edition *e, str name, double deg,
    double od_mm)
{
	struct buf b = { .arena = a }, in = b, mm = b;
	bool metric = e && e->choice.metric;
	int minutes = (int)(deg * 2 + 0.5);
	double along_mm = deg / 360 * pipe_round_mm(od_mm);

	word_addf(&b, edition_language(e), "%.*s at %d:%02d, ", STR_ARG(name),
	    minutes / 60 % 12 ? minutes / 60 % 12 : 12, minutes % 60);
	buf_add_real(&in, along_mm / 25.4, 2, true);
	buf_adds(&in, " in");
	format_mm(&mm, along_mm, 0);
	buf_adds(&mm, " mm");
	buf_addf(&b, "%.*s [%.*s]", STR_ARG(buf_str(metric ? &mm : &in)),
	    STR_ARG(buf_str(metric ? &in : &mm)));
	return buf_str(&b);
}

/* One width for all is told once, in the note; else each strip tells its own. */
static void tell_widths(struct arena *a, const struct edition *e, const struct piece_cut *p, size_t n,
    struct fig_strip *strips, struct fig_cut *out)
{
	bool same = true;

	for (size_t i = 1; i < n; i++)
		same &= p[i].width_mm == p[0].width_mm;
	if (same)
		out->note = word_format(a, out->language, "%.*s, %.*s wide", STR_ARG(out->note),
		    STR_ARG(length_text(a, e, p[0].width_mm)));
	for (size_t i = 0; !same && i < n; i++)
		strips[i].label = word_format(a, out->language, "%.*s, %.*s wide",
		    STR_ARG(strips[i].label),
		    STR_ARG(length_text(a, e, p[i].width_mm)));
}

static bool map_pipe(struct arena *a, const struct edition *e, const struct take *v, const struct piece_cut *p,
    size_t n, struct fig_cut *out)
{
	struct fig_strip *strips = arena_array(a, n, sizeof *strips);
	double sum = 0, round = pipe_round_mm(out->od_mm);

	for (size_t i = 0; i < n; i++)
		sum += p[i].width_mm;
	if (strips_round_mm(n, sum / (double)n, KERF_MM) > round + 1e-6)
		return false;
	for (size_t i = 0; i < n; i++) {
		struct strip at = strip_on_pipe(i, n < 4 ? 4 : n, out->od_mm, p[i].width_mm,
		    FIRST_DEG);
		double deg = places_given(v) ? v[p[i].kind].place[p[i].of_kind] : at.center_deg;
		double middle = deg / 360 * round;

		strips[i] = (struct fig_strip){ middle - p[i].width_mm / 2,
			middle + p[i].width_mm / 2, clock_text(a, e,
			    strip_name(a, out->language, v, &p[i]), deg, out->od_mm), { 0 } };
	}
	tell_widths(a, e, p, n, strips, out);
	sort_strips(strips, n);
	out->strips = strips;
	out->nstrips = n;
	return true;
}

/* The middle is broken, one of the ends is etched; the way of the structural welder test
 * (from memory). */
static bool map_fillet(struct arena *a, const struct edition *e, struct fig_cut *out)
{
	struct fig_strip *middle = arena_alloc(a, sizeof *middle);

	if (out->length_mm < 3 * DISCARD_MM)
		return false;
	*middle = (struct fig_strip){ DISCARD_MM, out->length_mm - DISCARD_MM,
		word(out->language, "fillet break"), length_text(a, e, out->length_mm - 2 * DISCARD_MM) };
	out->strips = middle;
	out->nstrips = 1;
	out->label_ends = word(out->language, "macro from one end");
	return true;
}

static str note_text(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, uint32_t weld)
{
	const struct language *l = edition_language(e);
	struct buf b = { .arena = a };

	if (weld != NONE && x->welds[weld].at.position < POSITION_COUNT) {
		if (x->welds[weld].letter)
			word_addf(&b, l, "Weld %c, ", x->welds[weld].letter);
		buf_add(&b, position_text(a, e, &x->welds[weld].at));
	}
	if (j->pipe.od_mm > 0)
		buf_addf(&b, "%s%.*s", b.n ? ", " : "", STR_ARG(pipe_text(a, e, j->pipe.text)));
	return buf_str(&b);
}

bool cut_maps_alike(const struct fig_cut *a, const struct fig_cut *b)
{
	if (a->nstrips != b->nstrips || a->length_mm != b->length_mm || a->od_mm != b->od_mm ||
	    a->restart != b->restart || a->restart_mm != b->restart_mm)
		return false;
	for (size_t i = 0; i < a->nstrips; i++)
		if (!str_eq(a->strips[i].label, b->strips[i].label) ||
		    a->strips[i].from_mm != b->strips[i].from_mm)
			return false;
	return true;
}

bool cut_map(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j,
    uint32_t weld, struct fig_cut *out)
{
	struct take v[CUT_COUNT] = { 0 };
	struct piece_cut pieces[FIG_CUT_STRIPS];
	bool pipe = j->pipe.od_mm > 0, fits;
	size_t n;

	*out = (struct fig_cut){ .note = note_text(a, e, x, j, weld),
		.language = edition_language(e) };
	if (!read_takes(x, j, weld, v))
		return false;
	n = strips_in_order(v, pipe, pieces);
	/* A turned pipe has no hours of its own. */
	if (pipe && weld != NONE && x->welds[weld].at.position == POSITION_1G_ROLLED &&
	    !places_given(v))
		return false;
	if (pipe) {
		out->od_mm = j->pipe.od_mm;
		out->wall_mm = is_given(&j->t1) ? j->t1.lo : j->pipe.wall_mm;
		return n && map_pipe(a, e, v, pieces, n, out) && !fig_cut_fault(out).n;
	}
	if (!is_given(&j->length))
		return false;
	out->length_mm = j->length.lo;
	out->label_length = length_text(a, e, out->length_mm);
	out->discard_mm = DISCARD_MM;
	out->label_discard = length_text(a, e, DISCARD_MM);
	out->restart = figure_restart(j, &out->restart_mm);
	out->label_restart = both_units(a, e, j->restart);
	fits = n ? map_plate(a, e, v, pieces, n, out) : v[CUT_FILLET].n && v[CUT_MACRO].n &&
	    map_fillet(a, e, out);
	return fits && !fig_cut_fault(out).n;
}
