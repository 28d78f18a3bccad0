/* What a packet has around its assignments: cover, use, safety, quarter list, index. */
#include "sheets/safety.h"
#include "sheets/sheet.h"

#include <stdlib.h>

/* ---- cover ---- */

static bool course_listed(const struct sheet *sh, const struct packet_cover *c, uint32_t course)
{
	for (size_t i = 0; i < c->n; i++) {
		uint32_t slot = sh->o->places[c->v[i]].slot;

		if (slot != NONE && sh->m->slots[slot].course == course)
			return true;
	}
	return false;
}

static str real_text(struct arena *a, double x)
{
	struct buf b = { .arena = a };

	buf_add_real(&b, x, 2, false);
	return buf_str(&b);
}

static void add_courses(struct sheet *sh, const struct packet_cover *c)
{
	const struct grid_column columns[] = { { COLUMN_NATURAL, 70, ALIGN_LEFT },
		{ COLUMN_SHARE, 1, ALIGN_LEFT }, { COLUMN_NATURAL, 50, ALIGN_RIGHT },
		{ COLUMN_NATURAL, 60, ALIGN_RIGHT }, { COLUMN_NATURAL, 60, ALIGN_RIGHT } };
	const str head[] = { WORD("Course"), WORD("Title"), WORD("Credits"), WORD("Lecture h"),
		WORD("Lab h") };
	struct grid *g = sheet_grid(sh, columns, 5, 0, sh_word(sh, "Courses"));

	sheet_heads(sh, g, head, 5);
	for (size_t i = 0; i < sh->m->ncourses; i++) {
		const struct course *k = &sh->m->courses[i];
		str row[5] = { k->id, k->title, real_text(sh->arena, k->credits),
			real_text(sh->arena, k->lecture_hours), real_text(sh->arena, k->lab_hours) };

		if (course_listed(sh, c, (uint32_t)i))
			grid_row_plain(g, row, 5);
	}
	sheet_grid_end(sh, g);
}

static void add_cover(struct sheet *sh, const struct packet_cover *c)
{
	const struct blank number[] = { { sh_word(sh, "Shop number"), (str){ 0 }, 0 },
		{ sh_word(sh, "Section"), (str){ 0 }, 0 } };
	str rest = sh->m->title, part;

	sheet_space(sh, sh->e->choice.large ? 0 : 60);
	while (str_next(&rest, ':', &part))
		sheet_add(sh, block_plain(&sh->s, str_trim(part), &sh->e->h1, TAG_P, sh->width_pt), 4, 4);
	sheet_add(sh, block_plain(&sh->s, sh_format(sh, "%.*s student packet",
	    STR_ARG(c->name)), &sh->e->cover, TAG_H1, sh->width_pt), 20, 12);
	if (sh->m->catalog_year.n)
		sheet_text(sh, sh_format(sh, "Catalog year %.*s", STR_ARG(sh->m->catalog_year)));
	if (c->quarter && c->quarter <= sh->m->nquarters && sh->m->quarters[c->quarter - 1].starts.n)
		sheet_text(sh, sh_format(sh, "Starts %.*s",
		    STR_ARG(sh->m->quarters[c->quarter - 1].starts)));
	sheet_space(sh, sh->e->choice.large ? 4 : 24);
	sheet_add(sh, block_blanks(&sh->s, number, 2, &sh->e->number, 40, sh->width_pt), 8, 4);
	sheet_text(sh, sh_word(sh,
	    "Write your shop number, never your name, on anything that stays in a booth."));
	sheet_space(sh, sh->e->choice.large ? 4 : 24);
	add_courses(sh, c);
	sheet_text(sh, sh_word(sh,
	    "Every weld made from this packet is a training record, not a qualification."));
}

/* ---- how to use it, safety ---- */

static const str use_lines[] = {
	WORD("Each assignment starts on a right-hand page. Its id is the large word at the top left "
	    "of every page; the same id is on the grading sheet."),
	WORD("The ten letters and figures at the top right are the revision mark. Packet and grading "
	    "sheet of one assignment show the same mark. If they differ, ask before you strike an arc."),
	WORD("Before you start: tick what you have done. If a box cannot be ticked, do that first."),
	WORD("Read the drawing, gather the pieces, set the machine, and write the setting you really "
	    "used in the column Used."),
	WORD("Steps are done in order, one action each. At a step that says Stop, put the hood up and "
	    "call the instructor. Work past a missed stop is done again."),
	WORD("Acceptance says what passes. Check it yourself first and write what you found."),
};

/* By edition: US customary first, metric first. */
static const str unit_lines[] = {
	WORD("Sizes are US customary with metric in square brackets. Fractions are for layout, "
	    "decimals for gauges and walls."),
	WORD("Sizes are metric with US customary in square brackets. Fractions are for layout, "
	    "decimals for gauges and walls."),
};
static const str failed_line = WORD("A failed attempt is written down with its reason. "
    "Practice comes before the next one.");

static void add_lines(struct sheet *sh, const str *v, size_t n)
{
	for (size_t i = 0; i < n; i++) {
		str line = edition_word(sh->e, v[i]);

		sheet_bullets(sh, &line, 1);
	}
}

static void add_use(struct sheet *sh)
{
	flow_break(sh->flow, START_PAGE);
	sheet_heading(sh, sh_word(sh, "How to use this packet"), 1);
	add_lines(sh, use_lines, sizeof use_lines / sizeof *use_lines);
	add_lines(sh, &unit_lines[sh->e->choice.metric], 1);
	add_lines(sh, &failed_line, 1);
}

static void add_shop_safety(struct sheet *sh)
{
	const struct blank v[] = { { sh_word(sh, "Shop number"), (str){ 0 }, 0 }, { sh_word(sh, "Date"), (str){ 0 }, 0 },
		{ sh_word(sh, "Instructor initials"), (str){ 0 }, MM_PT(30) } };

	flow_break(sh->flow, START_PAGE);
	sheet_heading(sh, sh_word(sh, "Shop safety"), 1);
	add_lines(sh, safety_page, safety_page_lines);
	sheet_bold(sh, safety_deference(sh->e));
	sheet_text(sh, sh_word(sh,
	    "I have read this page and asked about what I did not understand."));
	sheet_add(sh, block_blanks(&sh->s, v, 3, &sh->e->body, 0, sh->width_pt), 8, 4);
}

/* ---- lists ---- */

static struct grid_cell page_cell(struct sheet *sh, str place)
{
	struct span *v = arena_alloc(sh->arena, sizeof *v);

	*v = (struct span){ place, SPAN_PAGE_REF };
	return (struct grid_cell){ .spans = v, .nspans = 1 };
}

static void list_row(struct sheet *sh, struct grid *g, uint32_t assignment)
{
	const struct assignment *x = &sh->m->assignments[assignment];
	const struct place *p = &sh->o->places[assignment];
	const struct grid_cell row[] = {
		{ .text = p->slot == NONE ? STR("-") : str_format(sh->arena, "%u", p->week) },
		{ .text = x->id, .style = SPAN_BOLD },
		{ .text = p->slot != NONE && sh->m->slots[p->slot].optional
		    ? sh_format(sh, "%.*s (optional)", STR_ARG(x->title)) : x->title,
		    .style = part_style(x, SAID_TITLE) },
		{ .text = x->kind < KIND_COUNT
		    ? edition_word(sh->e, kind_word(x->kind)) : STR("-") },
		{ .text = real_text(sh->arena, x->hours) }, page_cell(sh, x->id),
	};

	grid_row(g, row, 6);
}

static void add_quarter_list(struct sheet *sh, const struct packet_cover *c)
{
	const struct grid_column columns[] = { { COLUMN_NATURAL, 40, ALIGN_CENTER },
		{ COLUMN_NATURAL, 56, ALIGN_LEFT }, { COLUMN_SHARE, 1, ALIGN_LEFT },
		{ COLUMN_NATURAL, 60, ALIGN_LEFT }, { COLUMN_NATURAL, 40, ALIGN_RIGHT },
		{ COLUMN_FIXED, 44 * sh->e->zoom, ALIGN_RIGHT } };
	const str head[] = { WORD("Week"), WORD("Id"), WORD("Assignment"), WORD("Kind"),
		WORD("Hours"), WORD("Page") };
	double hours = 0;
	struct grid *g;

	flow_break(sh->flow, START_PAGE);
	sheet_heading(sh, sh_format(sh, "%.*s, week by week", STR_ARG(c->name)), 1);
	g = sheet_grid(sh, columns, 6, 0, (str){ 0 });
	sheet_heads(sh, g, head, 6);
	for (size_t i = 0; i < c->n; i++) {
		list_row(sh, g, c->v[i]);
		hours += sh->m->assignments[c->v[i]].hours;
	}
	sheet_grid_end(sh, g);
	sheet_text(sh, sh_format(sh, "%zu assignments, %.*s. The week is the one in which an "
	    "assignment starts.", c->n, STR_ARG(hours_text(sh->arena, sh->e, hours))));
}

void sheet_front(struct sheet *sh, const struct packet_cover *c)
{
	add_cover(sh, c);
	add_use(sh);
	add_shop_safety(sh);
	add_quarter_list(sh, c);
	sheet_quarter_map(sh, c);
}

/* ---- index ---- */

/* One line a skill: its words, then each assignment that teaches it and its page. */
static void index_skill(struct sheet *sh, struct grid *g, const uint8_t *in_packet,
    uint32_t skill)
{
	const struct teachers *t = sh->teachers;
	size_t cap = 0, n = 0;
	struct span *v = NULL;

	for (uint32_t i = t->start[skill]; i < t->start[skill + 1]; i++) {
		const struct assignment *x = &sh->m->assignments[t->v[i]];

		if (!in_packet[t->v[i]] || (i > t->start[skill] && t->v[i] == t->v[i - 1]))
			continue;
		v = arena_grow(sh->arena, v, n, n + 2, &cap, sizeof *v);
		v[n] = (struct span){ str_format(sh->arena, "%s%.*s, ", n ? "; " : "", STR_ARG(x->id)), 0 };
		v[n + 1] = (struct span){ x->id, SPAN_PAGE_REF };
		n += 2;
	}
	if (n) {
		const struct grid_cell row[] = { { .text = sh->m->skills[skill].title },
			{ .spans = v, .nspans = n } };

		grid_row(g, row, 2);
	}
}

struct titled { str title; uint32_t skill; };

static int by_title(const void *x, const void *y)
{
	const struct titled *a = x, *b = y;
	int c = str_cmp(a->title, b->title);

	return c ? c : (a->skill > b->skill) - (a->skill < b->skill);
}

static struct titled *skills_by_title(const struct sheet *sh)
{
	struct titled *v = arena_array(sh->arena, sh->m->nskills, sizeof *v);

	for (uint32_t i = 0; i < sh->m->nskills; i++)
		v[i] = (struct titled){ sh->m->skills[i].title, i };
	if (sh->m->nskills)
		qsort(v, sh->m->nskills, sizeof *v, by_title);
	return v;
}

static uint8_t *packet_bits(const struct sheet *sh, const struct packet_cover *c)
{
	uint8_t *v = arena_array(sh->arena, sh->m->nassignments, 1);

	for (size_t i = 0; i < c->n; i++)
		v[c->v[i]] = 1;
	return v;
}

void sheet_index(struct sheet *sh, const struct packet_cover *c)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 1, ALIGN_LEFT },
		{ COLUMN_SHARE, 1, ALIGN_LEFT } };
	const str head[] = { WORD("Skill"), WORD("Assignment, page") };
	struct titled *order = skills_by_title(sh);
	const uint8_t *in_packet = packet_bits(sh, c);
	struct grid *g;

	sheet_heading(sh, sh_word(sh, "Index"), 1);
	g = sheet_grid(sh, columns, 2, 0, (str){ 0 });
	sheet_heads(sh, g, head, 2);
	for (size_t i = 0; i < sh->m->nskills; i++)
		index_skill(sh, g, in_packet, order[i].skill);
	sheet_grid_end(sh, g);
}
