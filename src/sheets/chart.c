/* The blank wall chart of a quarter, and sign-off sheets by shop number. A shop has one of
 * each, for everybody: in a quarter with a translation they say it in both languages. */
#include "sheets/sheet.h"

/* As many columns as leave boxes of GLOVE_PT, in large print room for half an id. */
enum { CHART_COLUMNS = 15, CHART_COLUMNS_LARGE = 8 };
#define NUMBER_PT 66.0
#define HEAD_ROW_PT 36.0
#define WHOLE_ID_PT 52.0 /* of a column that holds an id of six characters on one line */

/* In a narrow column the id stands in two lines. */
static struct grid_cell id_cell(struct sheet *sh, str id, double column_pt)
{
	size_t at = str_find(id, STR("-"), 0);
	struct span *v;

	if (column_pt >= WHOLE_ID_PT * sh->e->zoom || at == id.n)
		return (struct grid_cell){ .text = id };
	v = arena_array(sh->arena, 2, sizeof *v);
	v[0] = (struct span){ str_sub(id, 0, at + 1), SPAN_BOLD };
	v[1] = (struct span){ str_sub(id, at + 1, id.n), SPAN_BOLD | SPAN_BREAK };
	return (struct grid_cell){ .spans = v, .nspans = 2 };
}

/* Blank rows down to the foot of the page. */
static void blank_rows(struct sheet *sh, struct grid *g, const struct grid_cell *row,
    size_t n, double used_pt)
{
	double left_pt = flow_height_pt(sh->flow) - used_pt;

	for (int i = 0; i < (int)((left_pt - 1) / GLOVE_PT); i++)
		grid_row(g, row, n);
}

/* Heading and texts under it, of which the second may be empty; returns the height that
 * they take. */
static double add_top(struct sheet *sh, str head, const struct type *type, const str text[2])
{
	struct block *h = block_plain(&sh->s, head, type, TAG_H1, sh->width_pt);
	double used_pt = h->height_pt + 6;

	sheet_add(sh, h, 0, 6);
	for (size_t i = 0; i < 2 && text[i].n; i++) {
		const struct type body = styled(sh->e->body, i ? SPAN_OTHER : 0);
		struct block *t = block_plain(&sh->s, text[i], &body, TAG_P, sh->width_pt);

		sheet_add(sh, t, 0, 6);
		used_pt += t->height_pt + 6;
	}
	return used_pt;
}

static void add_chart(struct sheet *sh, const uint32_t *v, size_t n, double used_pt)
{
	struct grid_column columns[CHART_COLUMNS + 1] = { { COLUMN_FIXED,
	    NUMBER_PT * sh->e->zoom, ALIGN_LEFT } };
	struct grid_cell head[CHART_COLUMNS + 1] = { { .text = STR("Shop number") } };
	const struct grid_cell blank = { 0 };
	struct grid_spec spec = { .columns = columns,
		.ncolumns = n + 1,
		.width_pt = sh->width_pt,
		.type = sh->e->body,
		.pad_pt = 1.5,
		.row_min_pt = GLOVE_PT,
		.heads = 1 };
	struct grid *g;

	for (size_t i = 0; i < n; i++) {
		columns[i + 1] = (struct grid_column){ COLUMN_SHARE, 1, ALIGN_CENTER };
		head[i + 1] = id_cell(sh, sh->m->assignments[v[i]].id,
		    (sh->width_pt - NUMBER_PT * sh->e->zoom) / (double)n);
	}
	g = grid_begin(&sh->s, &spec);
	grid_row(g, head, n + 1);
	blank_rows(sh, g, &blank, 1, used_pt + HEAD_ROW_PT * sh->e->zoom);
	sheet_add(sh, grid_end(g), 0, 4);
}

/* Ids share the pages evenly. */
static void add_charts(struct sheet *sh, str name, const struct beside *said,
    const uint32_t *v, size_t n)
{
	static const str rule = WORD("A passed box gets the day. Shop numbers only, never names.");
	size_t most = sh->e->choice.large ? CHART_COLUMNS_LARGE : CHART_COLUMNS;
	size_t pages = (n + most - 1) / most;
	size_t each = pages ? (n + pages - 1) / pages : 0;
	double used_pt;
	str head = str_format(sh->arena, "%.*s: who has passed what", STR_ARG(name));
	const str text[2] = { rule, said ? str_format(sh->arena, "%.*s %.*s",
	    STR_ARG(word(said->language, "Who has passed what.")),
	    STR_ARG(word_str(said->language, rule))) : (str){ 0 } };

	for (size_t at = 0; at < n; at += each) {
		flow_break(sh->flow, START_PAGE);
		used_pt = add_top(sh, head, &sh->e->h1, text);
		add_chart(sh, &v[at], n - at < each ? n - at : each, used_pt);
	}
}

/* ---- sign-off ---- */

/* A head in both languages, under one another. */
static struct grid_cell head_cell(struct sheet *sh, const struct beside *said, str english)
{
	struct span *v;

	if (!said)
		return (struct grid_cell){ .text = english };
	v = arena_array(sh->arena, 2, sizeof *v);
	v[0] = (struct span){ english, 0 };
	v[1] = (struct span){ word_str(said->language, english), SPAN_BREAK | SPAN_OTHER };
	return (struct grid_cell){ .spans = v, .nspans = 2 };
}

/* The title of the card as the translation has it, then what a line says. */
static str sign_off_said(struct sheet *sh, const struct beside *said, uint32_t assignment,
    str says)
{
	const struct assignment *x;

	if (!said)
		return (str){ 0 };
	x = &said->model->assignments[assignment];
	return x->in_english & 1u << SAID_TITLE ? word_str(said->language, says)
	    : str_format(sh->arena, "%.*s. %.*s", STR_ARG(x->title),
	    STR_ARG(word_str(said->language, says)));
}

static void add_sign_off(struct sheet *sh, const struct beside *said, uint32_t assignment,
    str mark)
{
	static const str says = WORD("Each line says: read in the version named, shown, asked, "
	    "and done under watch, before the first use. Initials of both, or it did not happen.");
	static const str words[] = { WORD("Shop number"), WORD("Date"), WORD("Student initials"),
		WORD("Instructor initials"), WORD("Version") };
	const struct assignment *x = &sh->m->assignments[assignment];
	const struct grid_column columns[] = { { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_FIXED, 92 * sh->e->zoom, ALIGN_CENTER } };
	const str text[2] = { says, sign_off_said(sh, said, assignment, says) };
	const struct grid_cell row[5] = {
		[4] = { .text = mark, .style = SPAN_CODE, .middle = true }
	};
	const struct grid_spec spec = { .columns = columns,
		.ncolumns = 5,
		.width_pt = sh->width_pt,
		.type = sh->e->body,
		.row_min_pt = GLOVE_PT,
		.heads = 1 };
	struct grid *g = grid_begin(&sh->s, &spec);
	struct grid_cell head[5];
	double used_pt;

	flow_section(sh->flow, x->id, START_PAGE);
	flow_mark(sh->flow, str_format(sh->arena, "at %.*s", STR_ARG(x->id)),
	    str_format(sh->arena, "Sign-off %.*s", STR_ARG(x->id)), 0);
	used_pt = add_top(sh, x->title, &sh->e->h2, text);
	for (size_t i = 0; i < 5; i++)
		head[i] = head_cell(sh, said, words[i]);
	grid_row(g, head, 5);
	blank_rows(sh, g, row, 5, used_pt + (said ? 2 : 1) * HEAD_ROW_PT * sh->e->zoom);
	sheet_add(sh, grid_end(g), 4, 0);
}

void sheet_chart(struct sheet *sh, const struct chart_spec *c)
{
	flow_section(sh->flow, STR("chart pages"), START_HERE);
	flow_mark(sh->flow, STR("at chart"), STR("Wall chart"), 0);
	add_charts(sh, c->name, c->said, c->v, c->n);
	for (size_t i = 0; i < c->n; i++)
		if (sh->m->assignments[c->v[i]].kind == KIND_SAFETY)
			add_sign_off(sh, c->said, c->v[i], c->marks[i]);
}
