#include "sheets/sheet.h"

#include "draw/zoom.h"

/* ---- words ---- */

str sh_word(const struct sheet *sh, const char *english)
{
	return word(edition_language(sh->e), english);
}

str sh_format(const struct sheet *sh, const char *english, ...)
{
	struct buf b = { .arena = sh->arena };
	va_list ap;

	va_start(ap, english);
	word_addv(&b, edition_language(sh->e), english, &ap);
	va_end(ap);
	return buf_str(&b);
}

/* ---- blocks ---- */

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

/* A sheet without any translation says so once, on top. */
str sheet_part_mark(const struct sheet *sh, const struct assignment *x, enum said_part part)
{
	bool marked = x->in_english != SAID_NOTHING && x->in_english >> part & 1;

	return marked ? sh_word(sh, " (in English)") : (str){ 0 };
}

void sheet_part_heading(struct sheet *sh, const struct assignment *x, enum said_part part,
    const char *english, int level)
{
	str words = word(edition_language(sh->e), english), mark = sheet_part_mark(sh, x, part);

	sheet_heading(sh, str_format(sh->arena, "%.*s%.*s", STR_ARG(words), STR_ARG(mark)),
	    level);
}

void sheet_text(struct sheet *sh, str text)
{
	sheet_add(sh, block_plain(&sh->s, text, &sh->e->body, TAG_P, sh->width_pt), 3, 3);
}

void sheet_text_other(struct sheet *sh, str text, const str *other, size_t n)
{
	struct span *v = arena_array(sh->arena, 2 * n + 1, sizeof *v);
	size_t at = 0, m = 0;

	for (size_t i = 0; i < n; i++) {
		size_t hit = str_find(text, other[i], at);

		if (hit == text.n)
			continue;
		v[m++] = (struct span){ str_sub(text, at, hit), 0 };
		v[m++] = (struct span){ str_sub(text, hit, hit + other[i].n), SPAN_OTHER };
		at = hit + other[i].n;
	}
	v[m++] = (struct span){ str_sub(text, at, text.n), 0 };
	sheet_add(sh, block_text(&sh->s, v, m, &sh->e->body, TAG_P, sh->width_pt), 3, 3);
}

void sheet_bold(struct sheet *sh, str text)
{
	struct block *b = block_plain(&sh->s, text, &sh->e->bold, TAG_P, sh->width_pt);

	b->keep_next = true;
	sheet_add(sh, b, 3, 3);
}

struct type styled(struct type type, unsigned style)
{
	type.style |= style;
	return type;
}

unsigned part_style(const struct assignment *x, enum said_part part)
{
	return x->in_english >> part & 1 ? SPAN_OTHER : 0;
}

unsigned text_style(const struct sheet *sh, str shown, str original)
{
	return stays_english(sh->e, shown, original) ? SPAN_OTHER : 0;
}

void sheet_title(struct sheet *sh, str lead, const struct assignment *x)
{
	const struct span v[] = { { lead, 0 }, { x->title, SPAN_OTHER } };

	if (!part_style(x, SAID_TITLE))
		sheet_heading(sh, str_format(sh->arena, "%.*s%.*s", STR_ARG(lead),
		    STR_ARG(x->title)), 1);
	else
		sheet_add(sh, block_text(&sh->s, v, 2, &sh->e->h1, TAG_H1, sh->width_pt), 0, 8);
}

void sheet_prose(struct sheet *sh, const struct prose *p, unsigned style)
{
	const struct type type = styled(sh->e->body, style);
	struct block **v = block_prose(&sh->s, p, &type, 4, sh->width_pt);

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

void sheet_heads(struct sheet *sh, struct grid *g, const str *v, size_t n)
{
	str *words = arena_array(sh->arena, n, sizeof *words);

	for (size_t i = 0; i < n; i++)
		words[i] = edition_word(sh->e, v[i]);
	grid_row_plain(g, words, n);
}

/* ---- texts ---- */

str assignment_name(struct arena *a, const struct assignment *x)
{
	return str_format(a, "%.*s %.*s", STR_ARG(x->id), STR_ARG(x->title));
}

str place_text(struct arena *a, const struct edition *e, const struct order *o,
    uint32_t assignment)
{
	const struct place *p = &o->places[assignment];
	const struct language *l = edition_language(e);

	if (p->slot == NONE)
		return word(l, "in no course");
	return word_format(a, l, "quarter %u, week %u", p->quarter, p->week);
}

static const struct plain_fact *fact_of(const struct assignment *x, str key)
{
	for (size_t i = 0; i < x->nfacts; i++)
		if (str_eq_nocase(x->facts[i].key, key))
			return &x->facts[i];
	return NULL;
}

str fact_text(const struct assignment *x, str key)
{
	const struct plain_fact *f = fact_of(x, key);

	return f ? f->text : (str){ 0 };
}

str fact_shown(const struct assignment *x, str key)
{
	const struct plain_fact *f = fact_of(x, key);

	return f ? said_or(f->shown, f->text) : (str){ 0 };
}

unsigned fact_style(const struct sheet *sh, const struct assignment *x, str key)
{
	const struct plain_fact *f = fact_of(x, key);

	return f ? text_style(sh, f->shown, f->text) : 0;
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
