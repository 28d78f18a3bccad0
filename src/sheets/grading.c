/* The blank grading sheet of one assignment: the same numbers as the student's sheet,
 * with a place to write for each result. */
#include "sheets/limits.h"
#include "sheets/safety.h"
#include "sheets/sheet.h"

#define CHECK_PT MM_PT(14)

static void add_head(struct sheet *sh, const struct assignment *x)
{
	const struct blank v[] = {
		{ STR("Shop number"), (str){ 0 }, 0 }, { STR("Section"), (str){ 0 }, 0 },
		{ STR("Started"), (str){ 0 }, 0 }, { STR("Finished"), (str){ 0 }, 0 },
		{ STR("Booth"), (str){ 0 }, 0 }, { STR("Machine"), (str){ 0 }, 0 },
		{ STR("Rod or wire lot"), (str){ 0 }, 0 },
	};
	size_t n = sizeof v / sizeof *v;

	/* Pairs of like length stand better than one long row. */
	for (size_t i = 0; i < n; i += 2) {
		if (i == 6 && !x->nfillers)
			break;
		sheet_add(sh, block_blanks(&sh->s, &v[i], i + 2 <= n ? 2 : 1, &TYPE_BODY, 0,
		    sh->width_pt), 0, 0);
	}
}

static void add_attempts(struct sheet *sh, const struct assignment *x)
{
	static const str rows[] = { STR("Date"), STR("Result (pass or fail)"),
		STR("Reason, defect words"), STR("Instructor initials"),
		STR("Practice done before next try: hours, date") };
	struct grid_column columns[8] = { { COLUMN_SHARE, 2, ALIGN_LEFT } };
	str head[8] = { STR("Attempt") };
	uint32_t n = x->attempts < 6 ? x->attempts : 6;
	struct grid *g;

	for (uint32_t i = 1; i <= n; i++) {
		columns[i] = (struct grid_column){ COLUMN_SHARE, 1, ALIGN_LEFT };
		head[i] = str_format(sh->arena, "%u", i);
	}
	g = sheet_grid(sh, columns, n + 1, GLOVE_PT, STR("Attempts, side by side"));
	grid_row_plain(g, head, n + 1);
	for (size_t r = 0; r < sizeof rows / sizeof *rows; r++)
		grid_row_plain(g, &rows[r], 1);
	sheet_grid_end(sh, g);
}

static void add_holds(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = { { COLUMN_FIXED, 40, ALIGN_CENTER },
		{ COLUMN_SHARE, 2, ALIGN_LEFT }, { COLUMN_SHARE, 2, ALIGN_LEFT },
		{ COLUMN_FIXED, MM_PT(30), ALIGN_LEFT } };
	const str head[] = { STR("Step"), STR("Hold point"), STR("Found"), STR("Initials") };
	struct grid *g = NULL;

	for (size_t i = 0; i < x->nsteps; i++) {
		str row[2];

		if (!x->steps[i].hold.n)
			continue;
		if (!g) {
			g = sheet_grid(sh, columns, 4, GLOVE_PT, STR("Hold points"));
			grid_row_plain(g, head, 4);
		}
		row[0] = str_format(sh->arena, "%zu", i + 1);
		row[1] = x->steps[i].hold;
		grid_row_plain(g, row, 2);
	}
	if (g)
		sheet_grid_end(sh, g);
}

static void add_measured(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_FIXED, 34, ALIGN_LEFT } };
	const str head[] = { STR("Feature, tool"), STR("Nominal"), STR("Low"), STR("High"),
		STR("Measured"), STR("OK") };
	struct measures m = measures_of(sh->arena, x);
	struct grid *g;

	if (!m.n)
		return;
	g = sheet_grid(sh, columns, 6, GLOVE_PT, STR("Measured"));
	grid_row_plain(g, head, 6);
	for (size_t i = 0; i < m.n; i++) {
		const struct measure *k = &m.v[i];
		str row[4] = { str_format(sh->arena, "%.*s; %.*s", STR_ARG(k->feature),
		    STR_ARG(k->tool)), k->nominal, k->low, k->high };

		grid_row_plain(g, row, 4);
	}
	sheet_grid_end(sh, g);
}

/* Rows of one acceptance line, under its name when it has several. */
static bool judged_rows(struct sheet *sh, struct grid *g, const struct assignment *x,
    const struct criterion *c)
{
	struct limits l = limits_of(sh->arena, x, c);
	bool dagger = false;

	if (l.n > 1) {
		const struct grid_cell name = { .style = SPAN_BOLD, .columns = 5,
			.text = str_format(sh->arena, "%.*s: %.*s", STR_ARG(c->name), STR_ARG(c->text)) };

		grid_row(g, &name, 1);
		grid_row_min(g, 0);
	}
	for (size_t i = 0; i < l.n; i++) {
		const struct limit *k = &l.v[i];
		str row[2] = { k->feature, str_format(sh->arena, "%.*s%s", STR_ARG(k->rule),
		    k->dagger ? DAGGER : "") };

		dagger |= k->dagger;
		grid_row_plain(g, row, 2);
	}
	return dagger;
}

/* How many specimens a line asks for: "2, D1.1-2020", "1 of A, 1 of B", "3, one of A
 * and two of B". The first part that is a whole number, or the sum of the numbers that
 * stand before "of"; one when there is none. */
static uint32_t specimens(const struct criterion *c)
{
	str rest = c->text, part;
	uint32_t n, sum = 0;

	while (str_next(&rest, ',', &part)) {
		str word, of;

		if (!str_word(&part, &word) || !str_to_u32(word, &n))
			continue;
		if (!str_word(&part, &of))
			return n >= 1 && n <= 12 ? n : 1;
		sum += str_eq(of, STR("of")) ? n : 0;
	}
	return sum >= 1 && sum <= 12 ? sum : 1;
}

static void add_destructive(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 5, ALIGN_LEFT }, { COLUMN_FIXED, CHECK_PT * 1.4, ALIGN_LEFT } };
	const str head[] = { STR("Specimen"), STR("Thickness"), STR("Plunger or tool"),
		STR("Flaws: size, sum"), STR("Pass") };
	struct grid *g = NULL;

	for (size_t i = 0; i < x->ncriteria; i++) {
		const struct criterion *c = &x->criteria[i];

		if (!is_destructive(c->name))
			continue;
		if (!g) {
			g = sheet_grid(sh, columns, 5, GLOVE_PT, STR("Destructive tests"));
			grid_row_plain(g, head, 5);
		}
		for (uint32_t k = 1; k <= specimens(c); k++) {
			str row = str_format(sh->arena, "%.*s %u", STR_ARG(c->name), k);

			grid_row_plain(g, &row, 1);
		}
	}
	if (g)
		sheet_grid_end(sh, g);
}

static void add_judged(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 5, ALIGN_LEFT },
		{ COLUMN_SHARE, 7, ALIGN_LEFT }, { COLUMN_SHARE, 5, ALIGN_LEFT },
		{ COLUMN_FIXED, 36, ALIGN_CENTER }, { COLUMN_FIXED, 36, ALIGN_CENTER } };
	const str head[] = { STR("Judged"), STR("Passes when"), STR("Where, how much"),
		STR("Yes"), STR("No") };
	bool dagger = false;
	struct grid *g = NULL;

	for (size_t i = 0; i < x->ncriteria; i++) {
		if (is_measured(&x->criteria[i]))
			continue;
		if (!g) {
			g = sheet_grid(sh, columns, 5, GLOVE_PT, STR("Judged"));
			grid_row_plain(g, head, 5);
		}
		dagger |= judged_rows(sh, g, x, &x->criteria[i]);
	}
	if (g)
		sheet_grid_end(sh, g);
	if (dagger)
		sheet_text(sh, dagger_words());
}

static void add_score(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_SHARE, 1, ALIGN_RIGHT }, { COLUMN_SHARE, 2, ALIGN_LEFT },
		{ COLUMN_SHARE, 2, ALIGN_LEFT } };
	const str head[] = { STR("Score"), STR("Weight"), STR("Earned"), STR("Gate") };
	uint32_t total = 0;
	struct grid *g;

	if (!x->ngrades)
		return;
	g = sheet_grid(sh, columns, 4, GLOVE_PT, (str){ 0 });
	grid_row_plain(g, head, 4);
	for (size_t i = 0; i < x->ngrades; i++) {
		str row[4] = { x->grades[i].name, str_format(sh->arena, "%u", x->grades[i].weight),
			(str){ 0 }, x->grades[i].must_pass ? STR("must pass") : STR("-") };

		total += x->grades[i].weight;
		grid_row_plain(g, row, 4);
	}
	const struct grid_cell sum[] = { { .text = STR("Total"), .style = SPAN_BOLD },
		{ .text = str_format(sh->arena, "%u", total), .style = SPAN_BOLD }, { 0 },
		{ .text = x->pass_mark ? str_format(sh->arena, "pass mark %u", x->pass_mark) : (str){ 0 } } };
	grid_row(g, sum, 4);
	sheet_grid_end(sh, g);
	sheet_text(sh, STR("A failed gate fails the attempt whatever the points. The best attempt "
	    "counts unless the college's policy says otherwise."));
}

static str taught_text(struct sheet *sh, const struct skill_at *t)
{
	const struct skill *k = &sh->m->skills[t->skill];
	str outcome = k->outcome == NONE ? (str){ 0 } : sh->m->outcomes[k->outcome].id;

	return str_format(sh->arena, "%.*s %.*s: %.*s, %.*s%s%.*s", STR_ARG(outcome), STR_ARG(k->id),
	    STR_ARG(k->title), STR_ARG(skill_level_word(t->level)), t->evidence.n ? " by " : "",
	    STR_ARG(t->evidence));
}

static void add_assessed(struct sheet *sh, const struct assignment *x)
{
	sheet_heading(sh, STR("What this paper is evidence for"), 2);
	for (size_t i = 0; i < x->nteaches; i++) {
		str line;

		if (x->teaches[i].skill == NONE || !x->teaches[i].level)
			continue;
		line = taught_text(sh, &x->teaches[i]);
		sheet_bullets(sh, &line, 1);
	}
}

/* Three boxes side by side: passed, not passed, filed. */
static void add_verdict(struct sheet *sh)
{
	static const str words[] = { STR("Passed"), STR("Not passed"), STR("Filed") };
	struct block *boxes[3];
	struct block_column columns[3];
	double gap = 12, width = (sh->width_pt - 2 * gap) / 3;

	for (int i = 0; i < 3; i++) {
		boxes[i] = block_check(&sh->s, words[i], &TYPE_BOLD, width);
		columns[i] = (struct block_column){ &boxes[i], 1, width };
	}
	sheet_add(sh, block_columns(&sh->s, columns, 3, gap), 8, 4);
}

static void add_foot(struct sheet *sh, const struct assignment *x)
{
	const struct blank v[] = { { STR("Instructor initials"), (str){ 0 }, MM_PT(30) },
		{ STR("Student initials"), (str){ 0 }, MM_PT(30) } };

	add_assessed(sh, x);
	add_verdict(sh);
	sheet_add(sh, block_blanks(&sh->s, v, 2, &TYPE_BODY, 0, sh->width_pt), 4, 4);
	if (x->nwelds) {
		sheet_text(sh, STR("Defect words: crack, undercut, overlap, porosity, slag, lack of fusion, "
		    "burn-through, leg low, leg high, profile, start or stop."));
		sheet_text(sh, safety_record_line(x));
	}
}

void sheet_grading(struct sheet *sh, uint32_t assignment)
{
	const struct assignment *x = &sh->m->assignments[assignment];

	sheet_heading(sh, str_format(sh->arena, "Grading: %.*s",
	    STR_ARG(assignment_name(sh->arena, x))), 1);
	add_head(sh, x);
	add_attempts(sh, x);
	add_holds(sh, x);
	add_measured(sh, x);
	add_judged(sh, x);
	add_destructive(sh, x);
	add_score(sh, x);
	add_foot(sh, x);
}
