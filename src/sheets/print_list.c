#include "sheets/print_list.h"

#include "sheets/band.h"
#include "sheets/sheet.h"

struct print_list {
	struct arena *arena;
	struct print_list_spec spec;
	struct setter setter;
	struct edition edition;
	struct flow *flow;
};

/* ---- how many ---- */

static const struct entry *path_of(const struct model *m, uint32_t quarter)
{
	for (size_t i = 0; i < m->nentries; i++)
		if (m->entries[i].nquarters && m->entries[i].quarters[0] == quarter)
			return &m->entries[i];
	return NULL;
}

/* The quarter that a cohort meets next, 0 when it has finished. */
static uint32_t next_quarter(const struct model *m, const struct cohort *c)
{
	uint32_t first = c->entry_quarter ? c->entry_quarter : 1,
		 n = (uint32_t)m->nquarters;
	const struct entry *e = path_of(m, first);

	if (!c->finished)
		return first;
	for (size_t i = 0; e && i < e->nquarters; i++)
		if (e->quarters[i] == c->finished)
			return i + 1 < e->nquarters ? e->quarters[i + 1] : 0;
	if (e || !n)
		return 0;
	return c->finished % n + 1 == first ? 0 : c->finished % n + 1;
}

unsigned print_list_students(const struct model *m, uint32_t quarter)
{
	unsigned n = 0;

	for (size_t i = 0; i < m->ncohorts; i++)
		if (next_quarter(m, &m->cohorts[i]) == quarter)
			n += m->cohorts[i].students;
	return n;
}

unsigned print_list_copies(unsigned students)
{
	return (unsigned)(((unsigned long)students * 21 + 19) / 20);
}

size_t print_list_sheets(const struct print_item *k)
{
	size_t each = k->one_sided ? k->pages : (k->pages + (size_t)1) / 2;

	return k->held ? 0 : each * k->copies;
}

/* ---- onto paper ---- */

static void furniture(void *user, struct canvas *c, const struct page_place *p)
{
	const struct print_list *l = user;
	const struct band band = { .big = STR("Print list"),
		.line = STR("For the office"),
		.foot = l->spec.model->title,
		.draft = l->spec.draft };

	band_draw(&l->setter, &l->edition, c, p, &band);
}

static str number(struct arena *a, size_t n)
{
	return str_format(a, "%zu", n);
}

static void add_item(struct sheet *sh, struct grid *g, const struct print_item *k)
{
	str file = k->part.n
	    ? str_format(sh->arena, "%.*s, %.*s", STR_ARG(k->file), STR_ARG(k->part))
	    : k->file;
	str row[7] = { file, number(sh->arena, k->pages),
		k->copies ? number(sh->arena, k->copies) : (str){ 0 },
		k->one_sided ? STR("single") : STR("double"), k->binding, k->paper,
		k->copies ? number(sh->arena, print_list_sheets(k)) : (str){ 0 } };

	if (k->held) {
		row[1] = row[2] = row[6] = STR("-");
		row[4] = STR("held back: an error is open");
	}
	grid_row_plain(g, row, 7);
}

static void add_items(struct sheet *sh, const struct print_list *l)
{
	const struct grid_column columns[] = { { COLUMN_FIXED, 152, ALIGN_LEFT },
		{ COLUMN_FIXED, 46, ALIGN_RIGHT }, { COLUMN_FIXED, 52, ALIGN_RIGHT },
		{ COLUMN_FIXED, 52, ALIGN_LEFT }, { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_FIXED, 50, ALIGN_LEFT }, { COLUMN_FIXED, 52, ALIGN_RIGHT } };
	const struct grid_spec spec = { .columns = columns,
		.ncolumns = 7,
		.width_pt = sh->width_pt,
		.type = sh->e->body,
		.heads = 1 };
	const str head[] = { STR("File"), STR("Pages"), STR("Copies"), STR("Sides"),
		STR("Staple or bind"), STR("Paper"), STR("Sheets") };
	struct grid *g = grid_begin(&sh->s, &spec);
	size_t sum = 0;

	grid_row_plain(g, head, 7);
	for (size_t i = 0; i < l->spec.n; i++) {
		add_item(sh, g, &l->spec.items[i]);
		sum += print_list_sheets(&l->spec.items[i]);
	}
	const struct grid_cell total[] = { { .text = STR(
						 "Sheets of paper in all, rows without "
						 "copies left out"),
					       .style = SPAN_BOLD,
					       .columns = 6 },
		{ .text = number(sh->arena, sum),
		    .style = SPAN_BOLD,
		    .align = ALIGN_RIGHT,
		    .own_align = true } };
	grid_row(g, total, 2);
	sheet_add(sh, grid_end(g), 4, 8);
}

static void add_cohorts(struct sheet *sh, const struct print_list *l)
{
	const struct model *m = l->spec.model;

	if (!m->ncohorts) {
		sheet_text(
		    sh, STR("There is no cohorts.md: fill the copies in by hand."));
		return;
	}
	for (size_t i = 0; i < m->ncohorts; i++) {
		const struct cohort *c = &m->cohorts[i];
		uint32_t next = next_quarter(m, c);
		str line = next
		    ? str_format(sh->arena, "%.*s: %u students, next in quarter %u",
			  STR_ARG(c->name), c->students, next)
		    : str_format(sh->arena, "%.*s: finished", STR_ARG(c->name));

		sheet_bullets(sh, &line, 1);
	}
	sheet_text(sh,
	    STR("Copies are the students of a quarter and 5 % spares, rounded up. Where "
		"nobody is now, fill them in; of papers in Spanish as many as are asked for."));
}

static const str ways[] = {
	STR("Print at 100 %, never fit to page; templates are full size."),
	STR("Double-sided: flip on the long edge. The wide margin is for punching."),
	STR("Single-sided grading sheets use twice the paper and leave their backs to "
	    "write on."),
	STR("Keys, templates and this list stay with the instructor."),
};

struct print_list *print_list_new(struct arena *a, const struct print_list_spec *spec)
{
	struct print_list *l = arena_alloc(a, sizeof *l);
	struct flow_spec flow;
	struct print_item *items = arena_array(a, spec->n, sizeof *items);
	struct sheet sh;

	for (size_t i = 0; i < spec->n; i++)
		items[i] = spec->items[i];
	l->arena = a;
	l->spec = *spec;
	l->spec.edition.large = false; /* It is for the office. */
	l->edition = edition_new(&l->spec.edition);
	l->spec.items = items;
	l->setter = setter_new(a, spec->faces);
	flow = band_flow_spec(&l->edition);
	flow.furniture = furniture;
	flow.user = l;
	l->flow = flow_new(&l->setter, &flow);
	sh = (struct sheet){ .s = l->setter,
		.arena = a,
		.m = spec->model,
		.flow = l->flow,
		.e = &l->edition,
		.width_pt = flow_width_pt(l->flow) };
	flow_label(l->flow, LABEL_DECIMAL, (str){ 0 }, 1);
	flow_section(l->flow, STR("print list"), START_HERE);
	flow_mark(l->flow, STR("at list"), STR("What to print"), 0);
	sheet_heading(&sh, STR("What to print"), 1);
	add_cohorts(&sh, l);
	add_items(&sh, l);
	sheet_bullets(&sh, ways, sizeof ways / sizeof *ways);
	flow_end(l->flow);
	return l;
}

unsigned print_list_pages(const struct print_list *l)
{
	return flow_pages(l->flow);
}

unsigned print_list_overfull(const struct print_list *l)
{
	return flow_overfull(l->flow);
}

void print_list_emit(const struct print_list *l, struct canvas *c)
{
	flow_emit(l->flow, c);
}
