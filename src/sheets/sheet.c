#include "sheets/sheet.h"

#include "draw/zoom.h"
#include "units/format.h"


void sheet_add(struct sheet *sh, struct block *b, double before_pt, double after_pt)
{
	b->before_pt = before_pt;
	b->after_pt = after_pt;
	flow_add(sh->flow, b);
}

void sheet_heading(struct sheet *sh, str text, int level)
{
	struct block *b = block_plain(&sh->s, text, level == 1 ? &sh->e->h1 : &sh->e->h2,
	    level == 1 ? TAG_H1 : TAG_H2, sh->width_pt);

	sheet_add(sh, b, level == 1 ? 0 : 14, level == 1 ? 8 : 4);
}

void sheet_text(struct sheet *sh, str text)
{
	sheet_add(sh, block_plain(&sh->s, text, &sh->e->body, TAG_P, sh->width_pt), 3, 3);
}

void sheet_bold(struct sheet *sh, str text)
{
	struct block *b = block_plain(&sh->s, text, &sh->e->bold, TAG_P, sh->width_pt);

	b->keep_next = true;
	sheet_add(sh, b, 3, 3);
}

void sheet_prose(struct sheet *sh, const struct prose *p)
{
	struct block **v = block_prose(&sh->s, p, &sh->e->body, 4, sh->width_pt);

	flow_add_all(sh->flow, v, p->n);
}

void sheet_bullets(struct sheet *sh, const str *v, size_t n)
{
	const struct item_spec spec = { .mark = MARK_BULLET };

	for (size_t i = 0; i < n; i++) {
		struct span one = { .text = v[i] };

		sheet_add(sh, block_item(&sh->s, &spec, &one, 1, &sh->e->body, sh->width_pt), 2, 2);
	}
}

void sheet_check(struct sheet *sh, str text)
{
	sheet_add(sh, block_check(&sh->s, text, &sh->e->body, sh->width_pt), 4, 4);
}

void sheet_space(struct sheet *sh, double height_pt)
{
	flow_add(sh->flow, block_space(&sh->s, height_pt, false));
}

struct grid *sheet_grid(struct sheet *sh, const struct grid_column *columns, size_t n,
    double row_min_pt, str caption)
{
	const struct grid_spec spec = {
		.columns = columns, .ncolumns = n, .width_pt = sh->width_pt, .type = sh->e->body,
		.caption = caption, .row_min_pt = row_min_pt, .heads = 1, .keep_whole = true,
	};

	return grid_begin(&sh->s, &spec);
}

void sheet_grid_end(struct sheet *sh, struct grid *g)
{
	sheet_add(sh, grid_end(g), 4, 8);
}

/* ---- figures ---- */

struct figure {
	double zoom;
	struct arena *arena;
	draw_picture *draw;
	void *user;
};

static void draw_figure(void *user, struct canvas *c, rect area)
{
	const struct figure *k = user;
	rect small = { area.x / k->zoom, area.y / k->zoom, area.w / k->zoom, area.h / k->zoom };
	struct zoom z;

	if (k->zoom <= 1) {
		k->draw(k->user, c, area);
		return;
	}
	zoom_init(&z, c, k->zoom, k->arena);
	k->draw(k->user, &z.canvas, small);
}

void sheet_figure_draw(const struct sheet *sh, draw_picture *draw, void *user,
    struct canvas *c, rect area)
{
	struct figure k = { sh->e->figure_zoom, sh->arena, draw, user };

	draw_figure(&k, c, area);
}

struct block *sheet_figure(struct sheet *sh, draw_picture *draw, void *user, str alt,
    double height_pt, double width_pt)
{
	struct figure *k = arena_alloc(sh->arena, sizeof *k);

	*k = (struct figure){ sh->e->figure_zoom, sh->arena, draw, user };
	return block_picture(&sh->s, draw_figure, k, alt, height_pt, width_pt);
}

/* ---- texts ---- */

bool given(const struct quantity *q)
{
	return q->kind != QUANTITY_ANY;
}

str quantity_text(struct arena *a, const struct quantity *q)
{
	struct buf b = { .arena = a };

	if (given(q))
		format_quantity(&b, q);
	return buf_str(&b);
}

str hours_text(struct arena *a, double hours)
{
	struct buf b = { .arena = a };

	buf_add_real(&b, hours, 2, false);
	buf_adds(&b, hours == 1 ? " hour" : " hours");
	return buf_str(&b);
}

str assignment_name(struct arena *a, const struct assignment *x)
{
	return str_format(a, "%.*s %.*s", STR_ARG(x->id), STR_ARG(x->title));
}

str place_text(struct arena *a, const struct order *o, uint32_t assignment)
{
	const struct place *p = &o->places[assignment];

	if (p->slot == NONE)
		return STR("in no course");
	return str_format(a, "quarter %u, week %u", p->quarter, p->week);
}

str fact_text(const struct assignment *x, str key)
{
	for (size_t i = 0; i < x->nfacts; i++)
		if (str_eq_nocase(x->facts[i].key, key))
			return x->facts[i].text;
	return (str){ 0 };
}

static void add_inches(struct buf *b, const struct piece *p)
{
	for (uint32_t i = 0; i < p->ndims; i++) {
		buf_adds(b, i ? " x " : "");
		if (p->dims[i].form == FORM_GAUGE)
			buf_addf(b, "%u ga", p->dims[i].gauge_lo);
		else
			format_length_in(b, &p->dims[i]);
	}
	buf_adds(b, " in");
}

str piece_size(struct arena *a, const struct piece *p)
{
	struct buf b = { .arena = a };

	if (!p->ndims)
		return p->size;
	if (p->pipe.od_mm > 0)
		buf_addf(&b, "%.*s x ", STR_ARG(p->pipe.text));
	add_inches(&b, p);
	buf_adds(&b, " [");
	for (uint32_t i = 0; i < p->ndims; i++) {
		buf_adds(&b, i ? " x " : "");
		format_length_mm(&b, &p->dims[i]);
	}
	buf_adds(&b, " mm]");
	return buf_str(&b);
}

static void add_member(struct buf *b, str material, const struct quantity *t)
{
	if (!material.n && !given(t))
		return;
	buf_adds(b, ", ");
	buf_add(b, material);
	if (material.n && given(t))
		buf_addc(b, ' ');
	if (given(t))
		format_quantity(b, t);
}

str weld_text(struct arena *a, const struct weld *w)
{
	static const char *const ways[] = { "", " up", " down" };
	struct buf b = { .arena = a };

	buf_addf(&b, "%.*s, %.*s%s", STR_ARG(joint_word(w->joint)),
	    STR_ARG(position_word(w->at.position)), ways[w->at.progression]);
	if (given(&w->leg)) {
		buf_adds(&b, ", leg ");
		format_quantity(&b, &w->leg);
	}
	add_member(&b, w->material1, &w->t1);
	if (w->t2_mm > 0 || w->material2.n)
		add_member(&b, w->material2, &w->t2);
	if (given(&w->length)) {
		buf_adds(&b, ", ");
		format_quantity(&b, &w->length);
		buf_adds(&b, " long");
	}
	return buf_str(&b);
}

/* Counts, then fills: linear in the lines of all Teaches. */
struct teachers teachers_new(struct arena *a, const struct model *m)
{
	struct teachers t = { arena_array(a, m->nskills + 2, sizeof *t.start), NULL };
	uint32_t *next = t.start + 1;

	for (size_t i = 0; i < m->nassignments; i++)
		for (size_t k = 0; k < m->assignments[i].nteaches; k++)
			if (m->assignments[i].teaches[k].skill != NONE)
				next[m->assignments[i].teaches[k].skill + 1]++;
	for (size_t s = 0; s < m->nskills; s++)
		next[s + 1] += next[s];
	t.v = arena_array(a, next[m->nskills], sizeof *t.v);
	for (size_t i = 0; i < m->nassignments; i++)
		for (size_t k = 0; k < m->assignments[i].nteaches; k++)
			if (m->assignments[i].teaches[k].skill != NONE)
				t.v[next[m->assignments[i].teaches[k].skill]++] = (uint32_t)i;
	return t;
}
