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

/* What one copy takes, where how many are wanted is not known here. */
static str sheets_text(struct arena *a, const struct print_item *k)
{
	struct print_item one = *k;

	if (k->copies)
		return number(a, print_list_sheets(k));
	one.copies = 1;
	return str_format(a, "%zu each", print_list_sheets(&one));
}

/* Columns after that of the file, which stands in a row of its own where it is wide. */
enum { NUMBER_COLUMNS = 6, ALL_COLUMNS };

static void add_item(struct sheet *sh, struct grid *g, const struct print_item *k, bool own_row)
{
	str file = k->part.n
	    ? str_format(sh->arena, "%.*s, %.*s", STR_ARG(k->file), STR_ARG(k->part))
	    : k->file;
	str row[ALL_COLUMNS] = { file, number(sh->arena, k->pages),
		k->copies ? number(sh->arena, k->copies) : (str){ 0 },
		k->one_sided ? STR("single") : STR("double"), k->binding, k->paper,
		sheets_text(sh->arena, k) };
	const struct grid_cell name = { .text = file, .style = SPAN_BOLD,
		.columns = NUMBER_COLUMNS, .align = ALIGN_LEFT, .own_align = true };

	if (k->held) {
		row[1] = row[2] = row[6] = STR("-");
		row[4] = STR("held back: an error is open");
	}
	if (own_row)
		grid_row(g, &name, 1);
	grid_row_plain(g, row + own_row, ALL_COLUMNS - own_row);
}

#define FILE_PT 152.0
#define CELL_PAD_PT 8.0 /* of a grid, both sides */

/* Whether a name is wider than its column: it would be broken in two. */
static bool is_wide(const struct print_list *l)
{
	for (size_t i = 0; i < l->spec.n; i++)
		if (face_width_pt(l->spec.faces, FACE_SANS, l->edition.body.size_pt,
		    l->spec.items[i].file) > FILE_PT - CELL_PAD_PT)
			return true;
	return false;
}

static void add_sum(struct sheet *sh, struct grid *g, size_t sum, bool own_row)
{
	const struct grid_cell total[] = { { .text = STR("Sheets of paper in all, rows "
		    "without copies left out"), .style = SPAN_BOLD,
		.columns = NUMBER_COLUMNS - own_row, .align = ALIGN_LEFT, .own_align = true },
		{ .text = number(sh->arena, sum), .style = SPAN_BOLD, .align = ALIGN_RIGHT,
		  .own_align = true } };

	grid_row(g, total, 2);
}

static void add_items(struct sheet *sh, const struct print_list *l)
{
	const double z = sh->e->zoom;
	const struct grid_column columns[] = { { COLUMN_FIXED, FILE_PT, ALIGN_LEFT },
		{ COLUMN_FIXED, 46 * z, ALIGN_RIGHT }, { COLUMN_FIXED, 52 * z, ALIGN_RIGHT },
		{ COLUMN_FIXED, 50 * z, ALIGN_LEFT }, { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_FIXED, 44 * z, ALIGN_LEFT }, { COLUMN_FIXED, 60 * z, ALIGN_RIGHT } };
	const bool own_row = is_wide(l);
	const struct grid_spec spec = { .columns = columns + own_row,
		.ncolumns = ALL_COLUMNS - own_row, .width_pt = sh->width_pt,
		.type = sh->e->body, .heads = 1 };
	const str head[] = { STR("File"), STR("Pages"), STR("Copies"), STR("Sides"),
		STR("Staple or bind"), STR("Paper"), STR("Sheets") };
	struct grid *g = grid_begin(&sh->s, &spec);
	size_t sum = 0;

	grid_row_plain(g, head + own_row, ALL_COLUMNS - own_row);
	for (size_t i = 0; i < l->spec.n; i++) {
		add_item(sh, g, &l->spec.items[i], own_row);
		sum += print_list_sheets(&l->spec.items[i]);
	}
	add_sum(sh, g, sum, own_row);
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
	sheet_text(sh, l->spec.edition.large
	    ? STR("Large print is for those who ask for it: fill the copies in. These papers "
		  "stand beside the usual ones, whose list counts every student.")
	    : STR("Copies are the students of a quarter and 5 % spares, rounded up. Where "
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
