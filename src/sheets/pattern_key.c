/* Worked-out patterns for the instructor's key. */
#include "sheets/pattern_sheet.h"

#include "sheets/sheet.h"
#include "units/format.h"

#include <math.h>

str key_length_text(struct arena *a, const struct edition *e, double mm)
{
	struct buf b = { .arena = a };

	format_answer_as(&b, edition_format(e), mm);
	return buf_str(&b);
}

str key_answer_text(struct arena *a, const struct edition *e, const struct pattern_answer *k)
{
	struct buf b = { .arena = a };

	buf_addf(&b, "%.*s: ", STR_ARG(k->name));
	if (k->unit == ANSWER_MM)
		format_answer_as(&b, edition_format(e), k->value);
	else
		format_angle(&b, k->value);
	return buf_str(&b);
}

/* ---- outlines ---- */

static str dim_text(struct arena *a, const struct edition *e, const struct flat_dim *d)
{
	struct buf b = { .arena = a };

	if (d->name.n)
		buf_addf(&b, "%.*s ", STR_ARG(d->name));
	if (d->unit == ANSWER_MM)
		format_answer_as(&b, edition_format(e), d->value);
	else
		format_angle(&b, d->value);
	return buf_str(&b);
}

static struct fig_path path_of(struct arena *a, const struct flat_line *l)
{
	static const enum fig_stroke strokes[] = { [FLAT_CUT] = FIG_EDGE_LINE,
		[FLAT_BEND] = FIG_FOLD_LINE, [FLAT_MARK] = FIG_THIN_LINE };
	pt *v = arena_array(a, l->n, sizeof *v);

	for (size_t i = 0; i < l->n; i++)
		v[i] = (pt){ l->v[i].x_mm, l->v[i].y_mm };
	return (struct fig_path){ strokes[l->kind], v, l->n, l->closed };
}

static struct fig_size size_of_dim(struct arena *a, const struct edition *e, const struct flat *f,
    const struct flat_dim *d)
{
	pt at = { d->a.x_mm, d->a.y_mm }, to = { d->b.x_mm, d->b.y_mm };
	enum fig_size_kind kind = d->kind == FLAT_ACROSS ? FIG_SIZE_BELOW
	    : d->kind == FLAT_UP ? FIG_SIZE_RIGHT
	    : at.x < f->width_mm / 2 ? FIG_SIZE_AT_LEFT : FIG_SIZE_AT_RIGHT;

	return (struct fig_size){ kind, at, to, dim_text(a, e, d) };
}

struct fig_view key_flat_view(struct arena *a, const struct edition *e, const struct flat *f)
{
	struct fig_path *path = arena_array(a, f->nlines, sizeof *path);
	struct fig_size *size = arena_array(a, f->ndims, sizeof *size);

	for (size_t i = 0; i < f->nlines; i++)
		path[i] = path_of(a, &f->line[i]);
	for (size_t i = 0; i < f->ndims; i++)
		size[i] = size_of_dim(a, e, f, &f->dim[i]);
	return (struct fig_view){ .path = path, .npaths = f->nlines, .size = size,
		.nsizes = f->ndims, .note = f->name };
}

/* ---- onto the key ---- */

struct picture {
	const struct faces *faces;
	struct fig_view view;
};

static void draw_flat(void *user, struct canvas *c, rect area)
{
	const struct picture *p = user;

	fig_view_draw(c, p->faces, area, &p->view);
}

static void add_flat(struct sheet *sh, const struct flat *f)
{
	struct picture *p = arena_alloc(sh->arena, sizeof *p);
	str head = str_format(sh->arena, "Pattern: %.*s, cut %u", STR_ARG(f->name),
	    f->count);
	struct block *h = block_plain(&sh->s, head, &sh->e->bold, TAG_P, sh->width_pt);
	str alt = str_format(sh->arena, "Developed outline, %.*s, fits %.*s by %.*s",
	    STR_ARG(f->name), STR_ARG(key_length_text(sh->arena, sh->e, f->width_mm)),
	    STR_ARG(key_length_text(sh->arena, sh->e, f->height_mm)));

	p->faces = sh->s.faces;
	p->view = key_flat_view(sh->arena, sh->e, f);
	h->keep_next = true;
	sheet_add(sh, h, 6, 2);
	sheet_add(sh, sheet_figure(sh, draw_flat, p, alt,
	    flow_height_pt(sh->flow) / 3 + 12, sh->width_pt), 2, 6);
}

static void add_table(struct sheet *sh, const struct pattern_table *t)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 4, ALIGN_LEFT }, { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_SHARE, 4, ALIGN_LEFT } };
	const str head[] = { t->at, STR("Along the stretch-out"), t->head[0],
	    t->head[1] };
	struct grid *g = sheet_grid(sh, columns, 4, 0, str_format(sh->arena,
	    "Lines: %.*s", STR_ARG(t->name)));

	grid_row_plain(g, head, 4);
	for (size_t i = 0; i < t->n; i++) {
		const struct pattern_row *r = &t->v[i];
		struct buf deg = { .arena = sh->arena };
		str row[4];

		format_angle(&deg, r->at_deg);
		row[0] = buf_str(&deg);
		row[1] = key_length_text(sh->arena, sh->e, r->along_mm);
		row[2] = key_length_text(sh->arena, sh->e, r->v_mm[0]);
		row[3] = key_length_text(sh->arena, sh->e, r->v_mm[1]);
		grid_row_plain(g, row, 4);
	}
	sheet_grid_end(sh, g);
}

static void add_pattern(struct sheet *sh, const struct pattern_block *b)
{
	struct pattern *p = pattern_of(sh->arena, b);
	str *lines = arena_array(sh->arena, p->nanswers, sizeof *lines);

	sheet_bold(sh, pattern_head(sh->arena, sh->e, b));
	if (p->fault.n) {
		sheet_text(sh, str_format(sh->arena, "No pattern: %.*s.",
		    STR_ARG(p->fault)));
		return;
	}
	sheet_text(sh, str_format(sh->arena, "Taken: %.*s. Given: %.*s.",
	    STR_ARG(p->basis),
	    STR_ARG(pattern_given(sh->arena, sh->e, b))));
	for (size_t i = 0; i < p->nanswers; i++)
		lines[i] = key_answer_text(sh->arena, sh->e, &p->answer[i]);
	sheet_bullets(sh, lines, p->nanswers);
	for (size_t i = 0; i < p->ntables; i++)
		add_table(sh, &p->table[i]);
	for (size_t i = 0; i < p->nflats; i++)
		add_flat(sh, &p->flat[i]);
}

bool sheet_pattern_key(struct sheet *sh, const struct assignment *x)
{
	bool any = false;

	for (size_t i = 0; i < x->ndrawings; i++) {
		if (x->drawings[i].kind != DRAWING_PATTERN)
			continue;
		add_pattern(sh, x->drawings[i].pattern);
		any = true;
	}
	return any;
}
