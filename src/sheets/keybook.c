#include "sheets/keybook.h"

#include "sheets/band.h"
#include "sheets/key.h"
#include "sheets/key_figure.h"
#include "sheets/limits.h"
#include "sheets/pattern_sheet.h"
#include "sheets/sheet.h"
#include "sheets/metric_words.h"

struct keybook {
	struct arena *arena;
	struct model model;      /* spec.model in the units of the edition */
	struct keybook_spec spec;
	struct setter setter;
	struct edition edition;
	struct flow *flow;
	struct map *by_id;
};

static void furniture(void *user, struct canvas *c, const struct page_place *p)
{
	const struct keybook *k = user;
	uint32_t i = p->section_id.n ? map_find(k->by_id, p->section_id) : MAP_NONE;
	struct band band = { .big = STR("Keys"), .line = STR("For the instructor only"),
		.foot = STR("Instructor's key. Not for students."), .draft = k->spec.draft };

	if (i != MAP_NONE) {
		band.big = str_format(k->arena, "Key %.*s", STR_ARG(k->spec.model->assignments[i].id));
		band.line = band_facts(k->arena, &k->edition, k->spec.model, k->spec.order, i);
		band.mark = k->spec.marks[i];
	}
	band_draw(&k->setter, &k->edition, c, p, &band);
}

/* Sources by number, so that a row is no higher for a long one. */
struct key_sources {
	str v[32];
	size_t n;
};

static size_t source_number(struct key_sources *k, str source)
{
	size_t i = 0;

	while (i < k->n && !str_eq(k->v[i], source))
		i++;
	if (i == k->n && k->n < sizeof k->v / sizeof *k->v)
		k->v[k->n++] = source;
	return i + 1;
}

static void add_sources(struct sheet *sh, const struct key_sources *k, bool dagger)
{
	struct buf b = { .arena = sh->arena };

	for (size_t i = 0; i < k->n; i++)
		buf_addf(&b, "%s%zu %.*s", i ? "; " : "Sources: ", i + 1, STR_ARG(k->v[i]));
	buf_adds(&b, ".");
	sheet_text(sh, buf_str(&b));
	if (dagger)
		sheet_text(sh, dagger_words(sh->arena, sh->e));
}

/* Calls of the author: the words, the steps, then a bullet a figure. */
static void add_asked(struct sheet *sh, const struct workings *w)
{
	bool dagger = false;

	for (size_t i = 0; i < w->n; i++) {
		const struct worked *k = &w->v[i];
		str rest = k->result, line;

		if (!k->asked)
			continue;
		sheet_bold(sh, str_format(sh->arena, "Reckoned: %.*s", STR_ARG(k->name)));
		if (k->steps.n)
			sheet_text(sh, str_format(sh->arena, "%.*s. Source: %.*s.",
			    STR_ARG(k->steps), STR_ARG(k->source)));
		while (str_next(&rest, '\n', &line))
			sheet_bullets(sh, &line, 1);
		dagger |= k->dagger;
	}
	if (dagger)
		sheet_text(sh, dagger_words(sh->arena, sh->e));
}

static bool any_in_table(const struct workings *w)
{
	for (size_t i = 0; i < w->n; i++)
		if (!w->v[i].asked)
			return true;
	return false;
}

static void add_workings(struct sheet *sh, const struct workings *w)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_SHARE, 8, ALIGN_LEFT }, { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_NATURAL, 20, ALIGN_CENTER } };
	const str head[] = { STR("Figure"), STR("How"), STR("Answer"), STR("Source") };
	struct key_sources sources = { .n = 0 };
	bool dagger = false;
	struct block *b;
	struct grid *g;

	if (!any_in_table(w))
		return;
	g = sheet_grid(sh, columns, 4, 0, STR("Worked out"));
	grid_row_plain(g, head, 4);
	for (size_t i = 0; i < w->n; i++) {
		const struct worked *k = &w->v[i];

		if (k->asked)
			continue;
		const struct grid_cell row[] = { { .text = k->name }, { .text = k->steps },
			{ .text = str_format(sh->arena, "%.*s%s", STR_ARG(k->result),
			    k->dagger ? DAGGER : ""), .style = SPAN_BOLD },
			{ .text = str_format(sh->arena, "%zu",
			    source_number(&sources, k->source)) } };

		dagger |= k->dagger;
		grid_row(g, row, 4);
	}
	b = grid_end(g);
	b->keep_whole = b->height_pt < flow_height_pt(sh->flow) / 3;
	sheet_add(sh, b, 4, 8);
	add_sources(sh, &sources, dagger);
}

static void add_expected(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT } };
	const str head[] = { STR("Measured"), STR("Nominal"), STR("Low"), STR("High"), STR("Tool") };
	struct measures m = measures_of(sh->arena, sh->e, x);
	struct grid *g;

	if (!m.n)
		return;
	g = sheet_grid(sh, columns, 5, 0, STR("Expected measurements"));
	grid_row_plain(g, head, 5);
	for (size_t i = 0; i < m.n; i++) {
		str row[5] = { m.v[i].feature, m.v[i].nominal, m.v[i].low, m.v[i].high, m.v[i].tool };

		grid_row_plain(g, row, 5);
	}
	sheet_grid_end(sh, g);
}

static void add_key(struct sheet *sh, uint32_t assignment)
{
	const struct assignment *x = &sh->m->assignments[assignment];
	struct workings w;

	sheet_heading(sh, str_format(sh->arena, "Key: %.*s", STR_ARG(assignment_name(sh->arena, x))), 1);
	if (x->instructor.n) {
		sheet_heading(sh, STR("Remarks"), 2);
		sheet_prose(sh, &x->instructor, 0);
	}
	w = workings_of(sh->arena, x, sh->e);
	sheet_key_figures(sh, x, &w);
	add_workings(sh, &w);
	add_asked(sh, &w);
	sheet_pattern_key(sh, x);
	add_expected(sh, x);
}

static void fill(struct keybook *k)
{
	struct teachers teachers = teachers_new(k->arena, k->spec.model);
	struct sheet sh = { .s = k->setter, .arena = k->arena, .m = k->spec.model,
		.o = k->spec.order, .e = &k->edition, .teachers = &teachers, .flow = k->flow };

	sh.width_pt = flow_width_pt(k->flow);
	for (size_t i = 0; i < k->spec.order->nwalk; i++) {
		uint32_t id = k->spec.order->walk[i];
		const struct assignment *x = &k->spec.model->assignments[id];

		map_add(k->by_id, x->id, id);
		flow_section(k->flow, x->id, START_PAGE);
		flow_mark(k->flow, str_format(k->arena, "at %.*s", STR_ARG(x->id)),
		    assignment_name(k->arena, x), 0);
		add_key(&sh, id);
	}
	flow_end(k->flow);
}

struct keybook *keybook_new(struct arena *a, const struct keybook_spec *spec)
{
	struct keybook *k = arena_alloc(a, sizeof *k);
	struct flow_spec flow;

	k->arena = a;
	k->spec = *spec;
	k->edition = edition_new(&spec->edition);
	k->model = units_view(a, &k->edition, spec->model);
	k->spec.model = &k->model;
	k->setter = setter_new(a, spec->faces);
	k->by_id = map_new(a, false);
	flow = band_flow_spec(&k->edition);
	flow.furniture = furniture;
	flow.user = k;
	k->flow = flow_new(&k->setter, &flow);
	flow_label(k->flow, LABEL_DECIMAL, (str){ 0 }, 1);
	fill(k);
	return k;
}

unsigned keybook_pages(const struct keybook *k)
{
	return flow_pages(k->flow);
}

unsigned keybook_overfull(const struct keybook *k)
{
	return flow_overfull(k->flow);
}

void keybook_emit(const struct keybook *k, struct canvas *c)
{
	flow_emit(k->flow, c);
}
