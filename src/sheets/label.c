#include "sheets/label.h"

#include "draw/geom.h"
#include "model/translation.h"
#include "sheets/band.h"
#include "sheets/sheet.h"

#include <math.h>

enum { ATTEMPTS_MOST = 20, COLUMNS_MOST = 2 };
#define PAD_PT 9.0
#define LIST_LINE_PT 14.0

/* Tags on a page: large print takes twice the width and more height. */
struct raster { size_t columns, rows; };

static struct raster raster_of(const struct edition *e)
{
	return e->choice.large ? (struct raster){ 1, 3 } : (struct raster){ COLUMNS_MOST, 5 };
}

/* One tag; attempt 0 is a bench label. */
struct label {
	const struct assignment *x;
	str mark, line; /* line: positions, or what the kit holds */
	uint32_t attempt;
};

/* The tags of a row. */
struct tag_row {
	struct labels *labels;
	struct label tag[COLUMNS_MOST];
	size_t n;
};

struct labels {
	struct arena *arena;
	struct label_spec spec;
	struct model model;  /* spec.model in the language of the edition */
	struct setter setter;
	struct edition edition;
	struct flow *flow;
	uint32_t *sections; /* by quarter; SECTION_NONE */
	struct label *tags; /* of the quarter being filled */
	size_t ntags, tags_cap;
};

static void furniture(void *user, struct canvas *c, const struct page_place *p)
{
	const struct labels *l = user;
	const struct language *w = edition_language(&l->edition);
	const struct band band = { .big = p->section_id.n ? p->section_id : word(w, "Labels"),
		.line = word(w, "Coupon tags and bench labels for one student"),
		.foot = l->spec.model->title,
		.draft = l->spec.draft };

	band_draw(&l->setter, &l->edition, c, p, &band);
}

/* ---- one tag ---- */

static void put(const struct labels *l, struct canvas *c, str text,
    const struct type *type, pt at, double width_pt)
{
	plain_draw(&l->setter, c, plain_cut(&l->setter, text, type, width_pt), type, at);
}

/* A list on as many lines as it needs, up to `most`, broken behind its commas; what the
 * last line cannot hold is cut with dots. */
static void put_list(const struct labels *l, struct canvas *c, str text, pt at,
    double width_pt, int most)
{
	const struct type *type = &l->edition.body;

	for (int line = 1; text.n; line++) {
		size_t n = 0;

		for (size_t i = 0; line < most && i < text.n; i++) {
			bool gap = i + 1 == text.n || ((text.p[i] == ',' || text.p[i] == ';') &&
			    text.p[i + 1] == ' ');

			if (gap && plain_width_pt(&l->setter, str_sub(text, 0, i + 1), type) <=
			    width_pt)
				n = i + 1;
		}
		if (!n)
			n = text.n;
		put(l, c, str_sub(text, 0, n), type, at, width_pt);
		text = str_trim(str_sub(text, n, text.n));
		at.y += LIST_LINE_PT * l->edition.zoom;
	}
}

/* The point of the arrow goes to the end of the coupon that is up, or to 12 o'clock. */
static void draw_top_mark(const struct labels *l, struct canvas *c, pt at)
{
	const struct edition *e = &l->edition;
	const struct type top = edition_type(e, 12, SPAN_BOLD, ALIGN_CENTER);
	const struct ink solid = { .fill = true };
	double foot = at.y - 14 * e->zoom;
	const pt arrow[3] = { { at.x, foot - 22 }, { at.x + 13, foot }, { at.x - 13, foot } };

	canvas_polygon(c, arrow, 3, &solid);
	put(l, c, word(edition_language(e), "TOP"), &top, at, 60 * e->zoom);
}

static void draw_shop_number(const struct labels *l, struct canvas *c, rect r)
{
	const struct edition *e = &l->edition;
	str label = word(edition_language(e), "Shop number");
	double wide = fmax(80 * e->zoom, plain_width_pt(&l->setter, label, &e->body) + 6);
	double y = r.y + r.h, x = r.x + wide;

	put(l, c, label, &e->body, (pt){ r.x, y }, wide);
	canvas_line(c, (pt){ x, y + 2 }, (pt){ r.x + r.w, y + 2 }, RULE_PT);
}

static void draw_tag(
    const struct labels *l, struct canvas *c, rect area, const struct label *t)
{
	const struct edition *e = &l->edition;
	const struct type id = edition_type(e, 26, SPAN_BOLD, ALIGN_LEFT);
	const struct type mark = edition_type(e, 12, SPAN_BOLD | SPAN_CODE, ALIGN_RIGHT);
	rect r = rect_inset(area, PAD_PT);
	const struct language *w = edition_language(e);
	str words = t->attempt
	    ? word_format(l->arena, w, "Attempt %u of %u", t->attempt, t->x->attempts)
	    : word(w, "Kit for one attempt");
	double z = e->zoom, wide = t->attempt ? r.w - 66 * z : r.w;

	canvas_box_begin(c, area, STR("tag"));
	put(l, c, t->x->id, &id, (pt){ r.x, r.y + 22 * z }, r.w - 95 * z);
	put(l, c, t->mark, &mark, (pt){ r.x + r.w, r.y + 12 * z }, 95 * z);
	put(l, c, t->x->title, &e->body, (pt){ r.x, r.y + 40 * z }, r.w);
	put(l, c, words, t->attempt ? &e->number : &e->bold, (pt){ r.x, r.y + 60 * z }, wide);
	put_list(l, c, t->line, (pt){ r.x, r.y + 77 * z }, wide, t->attempt ? 2 : 3);
	if (t->attempt) {
		draw_top_mark(l, c, (pt){ r.x + r.w - 30 * z, r.y + 82 * z });
		draw_shop_number(l, c, (rect){ r.x, r.y, r.w, r.h - 3 });
	}
	canvas_box_end(c);
}

/* Lines to cut along. Rows start their dashes alike, so that a line that two of them
 * share is one. */
static void draw_cuts(struct canvas *c, rect r, size_t n)
{
	const struct ink dashes = {
		.stroke_pt = RULE_PT, .dash_on_pt = 6, .dash_off_pt = 4
	};
	double right = r.x + (double)n * r.w, bottom = r.y + r.h;
	struct seg v[10] = { { SEG_MOVE, { { r.x, r.y } } },
		{ SEG_LINE, { { right, r.y } } }, { SEG_MOVE, { { r.x, bottom } } },
		{ SEG_LINE, { { right, bottom } } } };
	size_t m = 4;

	for (size_t i = 0; i <= n; i++) {
		double x = r.x + (double)i * r.w;

		v[m++] = (struct seg){ SEG_MOVE, { { x, r.y } } };
		v[m++] = (struct seg){ SEG_LINE, { { x, bottom } } };
	}
	canvas_path(c, v, m, &dashes);
}

static void draw_row(void *user, struct canvas *c, rect area)
{
	const struct tag_row *k = user;
	double w = area.w / (double)raster_of(&k->labels->edition).columns;

	draw_cuts(c, (rect){ area.x, area.y, w, area.h }, k->n);
	for (size_t i = 0; i < k->n; i++) {
		rect r = { area.x + (double)i * w, area.y, w, area.h };

		draw_tag(k->labels, c, r, &k->tag[i]);
	}
}

/* ---- what there is to tag ---- */

static str positions_text(struct arena *a, const struct edition *e, const struct assignment *x)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < x->nwelds; i++) {
		const struct weld *w = &x->welds[i];

		if (w->at.position >= POSITION_COUNT)
			continue;
		buf_adds(&b, b.n ? "; " : "");
		if (w->letter)
			buf_addf(&b, "%c ", w->letter);
		buf_add(&b, position_text(a, e, &w->at));
	}
	return buf_str(&b);
}

static str kit_text(struct arena *a, const struct assignment *x)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < x->npieces; i++)
		buf_addf(&b, "%s%u %.*s", i ? ", " : "", x->pieces[i].count,
		    STR_ARG(said_or(x->pieces[i].shown_name, x->pieces[i].name)));
	return buf_str(&b);
}

static void push_tag(struct labels *l, uint32_t assignment, uint32_t attempt)
{
	const struct assignment *x = &l->model.assignments[assignment];

	*ARENA_PUSH(l->arena, l->tags, l->ntags, l->tags_cap) = (struct label){ .x = x,
		.mark = l->spec.marks[assignment],
		.attempt = attempt,
		.line = attempt ? positions_text(l->arena, &l->edition, x) : kit_text(l->arena, x) };
}

static void collect(struct labels *l, uint32_t quarter)
{
	const struct order *o = l->spec.order;

	l->ntags = 0;
	for (int bench = 0; bench < 2; bench++)
		for (size_t i = 0; i < o->nwalk; i++) {
			const struct assignment *x = &l->model.assignments[o->walk[i]];

			if (o->places[o->walk[i]].quarter != quarter)
				continue;
			if (bench && x->npieces)
				push_tag(l, o->walk[i], 0);
			for (uint32_t k = 1; !bench && x->nwelds && k <= x->attempts &&
			     k <= ATTEMPTS_MOST;
			     k++)
				push_tag(l, o->walk[i], k);
		}
}

static str row_words(struct arena *a, const struct language *l, const struct tag_row *k)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < k->n; i++) {
		buf_adds(&b, i ? ". " : "");
		if (k->tag[i].attempt)
			word_addf(&b, l, "Tag %.*s, attempt %u of %u, %.*s",
			    STR_ARG(k->tag[i].x->id), k->tag[i].attempt, k->tag[i].x->attempts,
			    STR_ARG(k->tag[i].line));
		else
			word_addf(&b, l, "Label %.*s, kit for one attempt, %.*s",
			    STR_ARG(k->tag[i].x->id), STR_ARG(k->tag[i].line));
	}
	return buf_str(&b);
}

/* A quarter without a translation has no labels in another language, like no packet. */
static bool is_said(const struct labels *l, uint32_t quarter)
{
	const struct language *w = edition_language(&l->edition);
	const struct speech *s = speech_of(l->spec.model, w);
	const struct order *o = l->spec.order;
	bool said = !w;

	for (size_t i = 0; s && i < o->nwalk && !said; i++)
		said = o->places[o->walk[i]].quarter == quarter && speech_find(s, o->walk[i]);
	return said;
}

static void fill_quarter(struct labels *l, uint32_t quarter)
{
	struct raster raster = raster_of(&l->edition);
	double height_pt = (flow_height_pt(l->flow) - 1) / (double)raster.rows;
	const struct language *w = edition_language(&l->edition);
	str name = word_format(l->arena, w, "Quarter %u", quarter);

	if (!is_said(l, quarter))
		return;
	collect(l, quarter);
	if (!l->ntags)
		return;
	l->sections[quarter] = flow_section(l->flow, name, START_PAGE);
	flow_mark(l->flow, str_format(l->arena, "at %.*s", STR_ARG(name)), name, 0);
	for (size_t i = 0; i < l->ntags; i += raster.columns) {
		struct tag_row *k = arena_alloc(l->arena, sizeof *k);

		*k = (struct tag_row){ .labels = l, .n = l->ntags - i < raster.columns ? 1 : raster.columns };
		for (size_t j = 0; j < k->n; j++)
			k->tag[j] = l->tags[i + j];
		flow_add(l->flow,
		    block_picture(&l->setter, draw_row, k, row_words(l->arena, w, k),
			height_pt, flow_width_pt(l->flow)));
	}
}

struct labels *labels_new(struct arena *a, const struct label_spec *spec)
{
	struct labels *l = arena_alloc(a, sizeof *l);
	struct flow_spec flow;

	l->arena = a;
	l->spec = *spec;
	l->edition = edition_new(&spec->edition);
	l->model = model_in(a, spec->model, spec->edition.language);
	l->setter = setter_new(a, spec->faces);
	flow = band_flow_spec(&l->edition);
	flow.furniture = furniture;
	flow.user = l;
	flow.one_sided = true;
	l->flow = flow_new(&l->setter, &flow);
	flow_label(l->flow, LABEL_DECIMAL, (str){ 0 }, 1);
	l->sections = arena_array(a, spec->model->nquarters + 1, sizeof *l->sections);
	for (uint32_t q = 0; q <= spec->model->nquarters; q++)
		l->sections[q] = SECTION_NONE;
	for (uint32_t q = 1; q <= spec->model->nquarters; q++)
		fill_quarter(l, q);
	flow_end(l->flow);
	return l;
}

str labels_title(const struct labels *l)
{
	return word(edition_language(&l->edition), "coupon tags and bench labels");
}

unsigned labels_pages(const struct labels *l)
{
	return flow_pages(l->flow);
}

unsigned labels_overfull(const struct labels *l)
{
	return flow_overfull(l->flow);
}

void labels_quarter_pages(
    const struct labels *l, uint32_t quarter, unsigned *first, unsigned *last)
{
	*first = *last = 0;
	if (quarter <= l->spec.model->nquarters && l->sections[quarter] != SECTION_NONE)
		flow_section_pages(l->flow, l->sections[quarter], first, last);
}

void labels_emit(const struct labels *l, struct canvas *c)
{
	flow_emit(l->flow, c);
}
