#include "page/para.h"

#include "page/para_set.h"

#include <assert.h>
#include <string.h>

/* A last word of at most this many characters does not stand alone. */
enum { SHORT_WORD = 5 };

/* A stretch of one look in the flat text of a paragraph. A page reference takes one
 * byte there; its name is in place. */
struct seg_text {
	uint32_t start, end;
	uint8_t face;
	bool forced;             /* a line ends before it */
	bool ref, fleeting, other;
	str place;
};

/* A paragraph made ready for breaking: blanks at its ends and before forced breaks are
 * gone, neighbors of one look are joined. */
struct flat {
	const char *p;
	uint32_t n;
	struct seg_text *segs;
	size_t nsegs;
	struct seg_text one;     /* segs of a paragraph of one look point here */
};

/* Where a line ends, and where the next one starts. */
struct line_cut {
	uint32_t end, next;
	uint32_t width_mils;
	size_t next_seg;
	bool full;               /* ended for lack of room */
};

struct filling {
	const struct flat *t;
	const struct advances *a;
	uint32_t limit_mils;
	uint32_t start, pos, width_mils;
	struct line_cut best;    /* last place where the line may end; end 0: none yet */
	bool found;
};

/* One line of text while lines are decided. */
struct stretch { uint32_t start, end, width_mils; };

struct stretches {
	struct stretch *v;
	size_t n, cap;
	bool last_joined;        /* the last line goes on from the one before */
	struct stretch few[48];  /* v points here until more are needed */
};

static const uint8_t face_of_style[8] = {
	[0] = FACE_SANS,
	[SPAN_BOLD] = FACE_SANS_BOLD,
	[SPAN_ITALIC] = FACE_SANS_ITALIC,
	[SPAN_BOLD | SPAN_ITALIC] = FACE_SANS_BOLD_ITALIC,
	[SPAN_CODE] = FACE_MONO,
	[SPAN_CODE | SPAN_BOLD] = FACE_MONO_BOLD,
	[SPAN_CODE | SPAN_ITALIC] = FACE_MONO,
	[SPAN_CODE | SPAN_BOLD | SPAN_ITALIC] = FACE_MONO_BOLD,
};

uint8_t style_face(unsigned style)
{
	return face_of_style[style & (SPAN_BOLD | SPAN_ITALIC | SPAN_CODE)];
}

/* ---- metrics ---- */

struct setter setter_new(struct arena *arena, const struct faces *faces)
{
	struct advances *a = arena_alloc(arena, sizeof *a);

	a->faces = faces;
	for (int f = 0; f < FACE_COUNT; f++) {
		enum face_id face = (enum face_id)f;
		double up = face_ascent_pt(faces, face, 1);
		double down = face_descent_pt(faces, face, 1);

		a->ascent = up > a->ascent ? up : a->ascent;
		a->descent = down > a->descent ? down : a->descent;
		for (uint32_t c = 0; c < AT_HAND; c++)
			a->v[f][c] = (uint16_t)face_advance(faces, face,
			    face_glyph(faces, face, c));
	}
	return (struct setter){ .arena = arena, .faces = faces, .advances = a };
}

/* Advance of the character at pos, which moves past it. */
static uint32_t take_advance(const struct advances *a, uint8_t face, const char *p,
    uint32_t end, uint32_t *pos)
{
	unsigned char c = (unsigned char)p[*pos];

	if (c < 0x80) {
		(*pos)++;
		return a->v[face][c];
	}
	str rest = { p + *pos, end - *pos };
	uint32_t cp = utf8_next(&rest);

	*pos = end - (uint32_t)rest.n;
	if (cp < AT_HAND)
		return a->v[face][cp];
	return face_advance(a->faces, (enum face_id)face,
	    face_glyph(a->faces, (enum face_id)face, cp));
}

uint32_t measure_mils(const struct advances *a, uint8_t face, str s)
{
	uint32_t pos = 0, sum = 0;

	while (pos < s.n)
		sum += take_advance(a, face, s.p, (uint32_t)s.n, &pos);
	return sum;
}

static uint32_t ref_mils(const struct advances *a, uint8_t face)
{
	return (uint32_t)a->v[face]['0'] * PAGE_REF_DIGITS;
}

static uint32_t seg_mils(const struct advances *a, const struct flat *t,
    const struct seg_text *g, uint32_t start, uint32_t end)
{
	if (g->ref)
		return ref_mils(a, g->face);
	return measure_mils(a, g->face, (str){ t->p + start, end - start });
}

static uint32_t limit_mils(double width_pt, double size_pt)
{
	double mils = width_pt * 1000 / size_pt + 1e-6;

	if (!(mils > 0))
		return 0;
	return mils < 1e9 ? (uint32_t)mils : 1000000000;
}

/* ---- flattening ---- */

static bool is_blank(char c)
{
	return c == ' ' || c == '\n' || c == '\t' || c == '\r';
}

static bool has_odd_blanks(str s)
{
	return s.n && (memchr(s.p, '\n', s.n) || memchr(s.p, '\t', s.n) ||
	    memchr(s.p, '\r', s.n));
}

static uint32_t trim_end(const char *p, uint32_t n, uint32_t floor)
{
	while (n > floor && is_blank(p[n - 1]))
		n--;
	return n;
}

static struct seg_text seg_of_span(const struct span *s, unsigned style)
{
	style |= s->style;
	return (struct seg_text){
		.face = style_face(style),
		.forced = (style & SPAN_BREAK) != 0,
		.ref = (style & SPAN_PAGE_REF) != 0,
		.fleeting = (style & SPAN_FLEETING) != 0,
		.other = (style & SPAN_OTHER) != 0,
		.place = s->text,
	};
}

/* Appends s with runs of blanks as one space; none at the start of a line. */
static uint32_t add_squeezed(char *to, uint32_t n, uint32_t line_start, str s)
{
	for (size_t i = 0; i < s.n; i++) {
		if (!is_blank(s.p[i]))
			to[n++] = s.p[i];
		else if (n > line_start && to[n - 1] != ' ')
			to[n++] = ' ';
	}
	return n;
}

static bool same_look(const struct seg_text *a, const struct seg_text *b)
{
	return a->face == b->face && a->fleeting == b->fleeting && a->other == b->other &&
	    !a->ref && !b->ref;
}

/* The common case costs no copy. */
static bool flatten_one(const struct span *s, unsigned style, struct flat *t)
{
	struct seg_text g = seg_of_span(s, style);

	if (g.ref || has_odd_blanks(s->text))
		return false;
	str text = str_trim(s->text);
	g.end = (uint32_t)text.n;
	g.forced = false;
	t->p = text.p;
	t->n = g.end;
	t->nsegs = text.n > 0;
	t->one = g;
	t->segs = &t->one;
	return true;
}

static size_t spans_bytes(const struct span *spans, size_t n)
{
	size_t bytes = 1;

	for (size_t i = 0; i < n; i++)
		bytes += spans[i].text.n + 1;
	return bytes;
}

/* Ends the segment before a forced break at its last visible character. */
static uint32_t close_line(struct flat *t, const char *p, uint32_t n, uint32_t line_start)
{
	n = trim_end(p, n, line_start);
	for (size_t i = t->nsegs; i > 0 && t->segs[i - 1].end > n; i--) {
		t->segs[i - 1].end = n;
		if (t->segs[i - 1].start > n)
			t->segs[i - 1].start = n;
	}
	return n;
}

static void flatten(struct arena *arena, const struct span *spans, size_t n,
    unsigned style, struct flat *t)
{
	*t = (struct flat){ 0 };
	if (n == 0 || (n == 1 && flatten_one(spans, style, t)))
		return;
	char *p = arena_alloc(arena, spans_bytes(spans, n));
	uint32_t at = 0, line_start = 0;

	t->segs = arena_array(arena, n, sizeof *t->segs);
	for (size_t i = 0; i < n; i++) {
		struct seg_text g = seg_of_span(&spans[i], style);

		g.forced = g.forced && i > 0;
		if (g.forced)
			at = line_start = close_line(t, p, at, line_start);
		g.start = at;
		if (g.ref)
			p[at++] = '#';
		else
			at = add_squeezed(p, at, line_start, g.place);
		g.end = at;
		if (t->nsegs && !g.forced && same_look(&t->segs[t->nsegs - 1], &g))
			t->segs[t->nsegs - 1].end = at;
		else
			t->segs[t->nsegs++] = g;
	}
	t->p = p;
	t->n = close_line(t, p, at, line_start);
	if (t->n == 0 && t->nsegs == 1)
		t->nsegs = 0;
}

/* ---- breaking ---- */

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
	    (unsigned char)c >= 0x80;
}

/* A line may end after the sign at pos: three letters on each side, which spares
 * fractions, ids, edition years and "fit-up". */
static bool may_end_after(const struct flat *t, uint32_t pos)
{
	if (pos < 3 || pos + 4 > t->n)
		return false;
	for (uint32_t i = 1; i <= 3; i++)
		if (!is_letter(t->p[pos - i]) || !is_letter(t->p[pos + i]))
			return false;
	return true;
}

static void note_best(struct filling *f, uint32_t end, uint32_t next, uint32_t width_mils)
{
	f->found = true;
	f->best = (struct line_cut){ .end = end, .next = next, .width_mils = width_mils };
}

static void fill_blanks(struct filling *f, const struct seg_text *g)
{
	uint32_t end = f->pos, width_mils = f->width_mils;

	while (f->pos < g->end && is_blank(f->t->p[f->pos]))
		f->width_mils += f->a->v[g->face][(unsigned char)f->t->p[f->pos++]];
	note_best(f, end, f->pos, width_mils);
}

/* Puts one segment on the line; false when the line is full. */
static bool fill_seg(struct filling *f, const struct seg_text *g)
{
	const char *p = f->t->p;

	while (f->pos < g->end) {
		char c = p[f->pos];
		uint32_t next = f->pos, advance;

		if (is_blank(c) && !g->ref) {
			fill_blanks(f, g);
			continue;
		}
		if (g->ref) {
			advance = ref_mils(f->a, g->face);
			next++;
		} else {
			advance = take_advance(f->a, g->face, p, g->end, &next);
		}
		if (f->width_mils + advance > f->limit_mils && f->pos > f->start)
			return false;
		f->width_mils += advance;
		if ((c == '-' || c == '/') && may_end_after(f->t, f->pos))
			note_best(f, next, next, f->width_mils);
		f->pos = next;
	}
	return true;
}

/* One line from byte start, which lies in segment k. */
static struct line_cut fill_line(struct filling *f, uint32_t start, size_t k)
{
	const struct flat *t = f->t;

	f->start = f->pos = start;
	f->width_mils = 0;
	f->found = false;
	while (fill_seg(f, &t->segs[k])) {
		k++;
		if (k == t->nsegs || t->segs[k].forced)
			return (struct line_cut){ f->pos, f->pos, f->width_mils, k,
				false };
	}
	if (!f->found)
		note_best(f, f->pos, f->pos, f->width_mils);
	while (t->segs[k].start > f->best.next)
		k--;
	f->best.next_seg = k;
	f->best.full = true;
	return f->best;
}

/* l must not be copied: it may point into itself. */
static void fill_lines(struct arena *arena, struct filling *f, struct stretches *l)
{
	struct line_cut cut = { 0 };

	l->v = l->few;
	l->n = 0;
	l->cap = sizeof l->few / sizeof *l->few;
	l->last_joined = false;
	while (cut.next_seg < f->t->nsegs) {
		uint32_t start = cut.next;

		l->last_joined = cut.full;
		cut = fill_line(f, start, cut.next_seg);
		*ARENA_PUSH(arena, l->v, l->n, l->cap) =
		    (struct stretch){ start, cut.end, cut.width_mils };
	}
}

static uint32_t max_u32(uint32_t a, uint32_t b)
{
	return a > b ? a : b;
}

static uint32_t min_u32(uint32_t a, uint32_t b)
{
	return a < b ? a : b;
}

static uint32_t stretch_mils(const struct advances *a, const struct flat *t,
    uint32_t start, uint32_t end)
{
	uint32_t sum = 0;

	for (size_t i = 0; i < t->nsegs; i++) {
		const struct seg_text *g = &t->segs[i];
		uint32_t from = max_u32(g->start, start), to = min_u32(g->end, end);

		if (from < to)
			sum += seg_mils(a, t, g, from, to);
	}
	return sum;
}

/* Offset of the last blank in [start, end), or end. */
static uint32_t last_blank(const char *p, uint32_t start, uint32_t end)
{
	for (uint32_t i = end; i > start; i--)
		if (is_blank(p[i - 1]))
			return i - 1;
	return end;
}

/* A short word alone on the last line gets company from the line above, which must keep
 * two words of its own. */
static void spare_last_word(const struct filling *f, struct stretches *l)
{
	const struct flat *t = f->t;

	if (l->n < 2 || !l->last_joined)
		return;
	struct stretch *above = &l->v[l->n - 2], *last = &l->v[l->n - 1];

	if (last_blank(t->p, last->start, last->end) != last->end)
		return;
	if (str_chars((str){ t->p + last->start, last->end - last->start }) > SHORT_WORD)
		return;
	uint32_t gap = last_blank(t->p, above->start, above->end);
	uint32_t end = trim_end(t->p, gap, above->start);

	if (gap == above->end || last_blank(t->p, above->start, end) == end)
		return;
	uint32_t width_mils = stretch_mils(f->a, t, gap + 1, last->end);

	if (width_mils > f->limit_mils)
		return;
	above->end = end;
	above->width_mils = stretch_mils(f->a, t, above->start, end);
	last->start = gap + 1;
	last->width_mils = width_mils;
}

/* ---- runs ---- */

static struct text_run make_run(const struct advances *a, const struct flat *t,
    const struct seg_text *g, struct stretch s)
{
	struct text_run r = { .face = g->face, .page_ref = g->ref,
		.fleeting = g->fleeting, .other = g->other };
	uint32_t from = max_u32(g->start, s.start), to = min_u32(g->end, s.end);
	bool whole_line = from == s.start && to == s.end;

	r.text = g->ref ? g->place : (str){ t->p + from, to - from };
	r.width_mils = whole_line ? s.width_mils : seg_mils(a, t, g, from, to);
	return r;
}

/* Cuts the segments at the line ends. At most one run more than lines and segments. */
static void make_runs(struct arena *arena, const struct filling *f,
    const struct stretches *s, struct lines *l)
{
	const struct flat *t = f->t;
	struct text_line *v = arena_array(arena, s->n + 1, sizeof *v);
	struct text_run *runs = arena_array(arena, s->n + t->nsegs, sizeof *runs);
	uint32_t n = 0;
	size_t k = 0;

	l->other = t->nsegs > 0;
	for (size_t i = 0; i < t->nsegs; i++)
		l->other &= t->segs[i].other;
	for (size_t i = 0; i < s->n; i++) {
		v[i] = (struct text_line){ n, s->v[i].width_mils };
		while (k < t->nsegs && t->segs[k].end <= s->v[i].start)
			k++;
		for (size_t j = k; j < t->nsegs && t->segs[j].start < s->v[i].end; j++)
			if (t->segs[j].end > t->segs[j].start)
				runs[n++] = make_run(f->a, t, &t->segs[j], s->v[i]);
	}
	v[s->n] = (struct text_line){ n, 0 };
	l->v = v;
	l->n = s->n;
	l->runs = runs;
}

double para_lead_pt(const struct setter *s, const struct type *type)
{
	double body_pt = (s->advances->ascent + s->advances->descent) * type->size_pt;
	double lead_pt = type->lead_pt > 0 ? type->lead_pt : 1.25 * type->size_pt;

	return lead_pt > body_pt ? lead_pt : body_pt;
}

const struct lines *para_break(const struct setter *s, const struct span *spans, size_t n,
    const struct type *type, double width_pt)
{
	struct lines *l = arena_alloc(s->arena, sizeof *l);
	struct flat t;
	struct filling f = { .t = &t, .a = s->advances };
	double body_pt = (s->advances->ascent + s->advances->descent) * type->size_pt;
	struct stretches lines;

	assert(type->size_pt > 0);
	flatten(s->arena, spans, n, type->style, &t);
	f.limit_mils = limit_mils(width_pt, type->size_pt);
	fill_lines(s->arena, &f, &lines);
	spare_last_word(&f, &lines);
	make_runs(s->arena, &f, &lines, l);
	l->advances = s->advances;
	l->width_pt = width_pt;
	l->size_pt = type->size_pt;
	l->lead_pt = para_lead_pt(s, type);
	l->rise_pt = (l->lead_pt - body_pt) / 2 + s->advances->ascent * type->size_pt;
	l->align = type->align;
	return l;
}

const struct lines *para_break_plain(const struct setter *s, str text,
    const struct type *type, double width_pt)
{
	struct span span = { .text = text };

	return para_break(s, &span, 1, type, width_pt);
}

double para_height_pt(const struct lines *l)
{
	return (double)l->n * l->lead_pt;
}

double para_width_pt(const struct lines *l)
{
	uint32_t most = 0;

	for (size_t i = 0; i < l->n; i++)
		most = max_u32(most, l->v[i].width_mils);
	return most * l->size_pt / 1000;
}

/* Width of an unbroken piece with the next character; 0 after a blank. */
static uint32_t widen(const struct advances *a, const struct flat *t,
    const struct seg_text *g, uint32_t *pos, uint32_t width)
{
	if (g->ref) {
		(*pos)++;
		return width + ref_mils(a, g->face);
	}
	if (is_blank(t->p[*pos])) {
		(*pos)++;
		return 0;
	}
	return width + take_advance(a, g->face, t->p, g->end, pos);
}

/* Width of the widest piece between two places where a line may end: lines filled with
 * no room at all would break inside words, so the places are sought here. */
static uint32_t widest_piece(const struct flat *t, const struct advances *a)
{
	uint32_t widest = 0, width = 0;

	for (size_t i = 0; i < t->nsegs; i++) {
		const struct seg_text *g = &t->segs[i];
		uint32_t pos = g->start;

		if (g->forced)
			width = 0;
		while (pos < g->end) {
			uint32_t at = pos;

			width = widen(a, t, g, &pos, width);
			widest = max_u32(widest, width);
			if ((t->p[at] == '-' || t->p[at] == '/') && may_end_after(t, at))
				width = 0;
		}
	}
	return widest;
}

struct text_widths para_widths(const struct setter *s, const struct span *spans, size_t n,
    const struct type *type)
{
	struct flat t;
	struct filling f = { .t = &t, .a = s->advances, .limit_mils = UINT32_MAX };
	struct stretches l;
	uint32_t natural = 0, least;

	flatten(s->arena, spans, n, type->style, &t);
	fill_lines(s->arena, &f, &l);
	for (size_t i = 0; i < l.n; i++)
		natural = max_u32(natural, l.v[i].width_mils);
	least = widest_piece(&t, s->advances);
	return (struct text_widths){ natural * type->size_pt / 1000,
	    least * type->size_pt / 1000 };
}
