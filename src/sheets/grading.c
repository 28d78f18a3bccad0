/* The blank grading sheet of one assignment: the same numbers as the student's sheet,
 * with a place to write for each result. */
#include "model/standard.h"
#include "model/test_line.h"
#include "sheets/limits.h"
#include "sheets/safety.h"
#include "sheets/sheet.h"
#include "sheets/tensile.h"

#define CHECK_PT MM_PT(14)

/* Long tables go on overleaf under a repeated head: a sheet kept whole table by table
 * wastes leaves. What is under a sixth of a page stays together. */
static void table_end(struct sheet *sh, struct grid *g)
{
	struct block *b = grid_end(g);

	b->keep_whole = b->height_pt < flow_height_pt(sh->flow) / 6;
	sheet_add(sh, b, 4, 8);
}

static bool is_test(const struct assignment *x)
{
	return x->kind == KIND_PRACTICE_TEST || x->kind == KIND_QUALIFICATION_TEST;
}

static bool is_pipe(const struct assignment *x)
{
	for (size_t i = 0; i < x->nwelds; i++)
		if (x->welds[i].run.od_mm > 0)
			return true;
	return false;
}

/* Blanks of the head that depend on the work; at most HEAD_BLANKS. A qualification lapses
 * when a process is not used for six months in the usual code (common practice, confirm
 * against the edition), so tests ask when each was used last. */
enum { HEAD_BLANKS = 16 };

static size_t head_blanks(struct sheet *sh, const struct assignment *x, struct blank *v)
{
	size_t n = 0;

	if (x->nwelds)
		v[n++].label = sh_word(sh, "Heat or lot of the metal");
	if (x->nfillers)
		v[n++].label = sh_word(sh, "Rod or wire lot");
	if (!is_test(x))
		return n;
	v[n++].label = sh_word(sh, "Stamp on the coupon");
	for (uint32_t i = 0; i < x->nprocesses && n < HEAD_BLANKS; i++)
		v[n++].label = sh_format(sh, "%.*s last used, date",
		    STR_ARG(process_word(x->processes[i])));
	return n;
}

static void add_blanks(struct sheet *sh, const struct blank *v, size_t n)
{
	sheet_add(sh, block_blanks(&sh->s, v, n, &sh->e->body, 0, sh->width_pt), 0, 0);
}

/* Rows of three short blanks, then pairs of those with longer names. */
static void add_head(struct sheet *sh, const struct assignment *x)
{
	const struct blank always[2][3] = {
		{ { .label = sh_word(sh, "Shop number") }, { .label = sh_word(sh, "Section") },
		    { .label = sh_word(sh, "Booth") } },
		{ { .label = sh_word(sh, "Started") }, { .label = sh_word(sh, "Finished") },
		    { .label = sh_word(sh, "Machine") } } };
	struct blank *v = arena_array(sh->arena, HEAD_BLANKS, sizeof *v);
	size_t n = head_blanks(sh, x, v);

	for (int i = 0; i < 2; i++)
		add_blanks(sh, always[i], 3);
	for (size_t i = 0; i < n; i += 2)
		add_blanks(sh, &v[i], i + 2 <= n ? 2 : 1);
}

static str number(struct sheet *sh, uint32_t n)
{
	return str_format(sh->arena, "%u", n);
}

/* A column for what each attempt earned; of more than four the best four count. */
enum { EARNED_MOST = 4 };

static void add_attempts(struct sheet *sh, const struct assignment *x)
{
	const str rows[] = { sh_word(sh, "Date"), sh_word(sh, "Result (pass or fail)"),
		sh_word(sh, "Reason"), sh_word(sh, "Instructor initials"),
		sh_word(sh, "Practice after it: hours, date, initials"),
		sh_word(sh, "Retest: at once or after practice") };
	struct grid_column columns[8] = { { COLUMN_SHARE, 2, ALIGN_LEFT } };
	str head[8] = { sh_word(sh, "Attempt") };
	uint32_t n = x->attempts < 6 ? x->attempts : 6;
	struct grid *g;

	for (uint32_t i = 1; i <= n; i++) {
		columns[i] = (struct grid_column){ COLUMN_SHARE, 1, ALIGN_LEFT };
		head[i] = str_format(sh->arena, "%u", i);
	}
	g = sheet_grid(sh, columns, n + 1, GLOVE_PT, (str){ 0 });
	grid_row_plain(g, head, n + 1);
	for (size_t r = 0; r < sizeof rows / sizeof *rows - !is_test(x); r++)
		grid_row_plain(g, &rows[r], 1);
	table_end(sh, g);
	if (x->nwelds)
		sheet_text(sh, sh_word(sh, "Reasons: crack, undercut, overlap, porosity, slag, "
		    "lack of fusion, burn-through, leg low or high, profile, start or stop."));
	if (is_test(x))
		sheet_text(sh, sh_word(sh, "Retest, common practice: at once with two of each "
		    "type and position that failed, all to pass, or one after recorded "
		    "practice. The named edition decides."));
}

/* The name of the stop, and what is looked at there. */
static struct grid_cell hold_cell(struct sheet *sh, const struct step *step)
{
	struct span *v = arena_array(sh->arena, step->para.nspans + 1, sizeof *v);
	size_t n = 0;

	v[n++] = (struct span){ str_format(sh->arena, "%.*s%s", STR_ARG(step->hold),
	    step->para.nspans ? ": " : ""), SPAN_BOLD };
	for (size_t i = 0; i < step->para.nspans; i++)
		v[n++] = step->para.spans[i];
	return (struct grid_cell){ .spans = v, .nspans = n };
}

static void add_holds(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = { { COLUMN_FIXED, 40 * sh->e->zoom, ALIGN_CENTER },
		{ COLUMN_SHARE, 5, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_FIXED, MM_PT(30), ALIGN_LEFT } };
	const str head[] = { WORD("Step"), WORD("Hold point"), WORD("Found"),
		WORD("Initials") };
	struct grid *g = NULL;

	for (size_t i = 0; i < x->nsteps; i++) {
		struct grid_cell row[2] = { { .text = str_format(sh->arena, "%zu", i + 1) } };

		if (!x->steps[i].hold.n)
			continue;
		if (!g) {
			g = sheet_grid(sh, columns, 4, GLOVE_PT, (str){ 0 });
			sheet_heads(sh, g, head, 4);
		}
		row[1] = hold_cell(sh, &x->steps[i]);
		row[1].style = part_style(x, SAID_STEPS);
		grid_row(g, row, 2);
	}
	if (g)
		table_end(sh, g);
}

/* named: the feature has a row of its own over all columns, because large type leaves it
 * no column. */
static void measured_row(struct sheet *sh, struct grid *g, const struct measure *k,
    size_t columns, bool named)
{
	const unsigned style = k->english ? SPAN_OTHER : 0;
	const struct grid_cell row[4] = { { .style = style,
		.text = str_format(sh->arena, "%.*s%s%s%.*s", STR_ARG(k->feature),
		    sign_text(k->sign), k->tool.n ? "; " : "", STR_ARG(k->tool)) },
		{ .text = k->nominal }, { .text = k->low }, { .text = k->high } };
	const struct grid_cell name = { .style = SPAN_BOLD | style,
		.columns = (uint32_t)columns, .text = row[0].text };

	if (named) {
		grid_row(g, &name, 1);
		grid_row_min(g, 0);
	}
	grid_row(g, &row[named], 4u - named);
}

/* The blanks of a measured row: both places and a verdict for a single attempt; both
 * places, a and b, for each of two or three; one blank each for more. Returns their count. */
static size_t measured_blanks(struct sheet *sh, size_t attempts,
    struct grid_column columns[2 * EARNED_MOST], str head[2 * EARNED_MOST])
{
	const double wide = attempts > 2 ? MM_PT(13) : MM_PT(18);
	const str one[] = { WORD("Found 1"), WORD("Found 2"), WORD("OK") };
	size_t places = attempts > 3 ? 1 : 2;

	if (attempts <= 1) {
		for (size_t i = 0; i < 3; i++) {
			columns[i] = (struct grid_column){ COLUMN_SHARE, 3, ALIGN_LEFT };
			head[i] = one[i];
		}
		columns[2] = (struct grid_column){ COLUMN_FIXED, 34 * sh->e->zoom, ALIGN_LEFT };
		return 3;
	}
	for (size_t i = 0; i < attempts * places; i++) {
		columns[i] = (struct grid_column){ COLUMN_FIXED, wide, ALIGN_CENTER };
		head[i] = str_format(sh->arena, "%zu%s", i / places + 1,
		    places == 1 ? "" : i % 2 ? " b" : " a");
	}
	return attempts * places;
}

/* Returns the signs that it uses. */
static unsigned add_measured(struct sheet *sh, const struct assignment *x)
{
	struct grid_column columns[4 + 2 * EARNED_MOST] = { { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT } };
	str head[4 + 2 * EARNED_MOST] = { WORD("Feature, tool"), WORD("Nominal"), WORD("Low"),
		WORD("High") };
	size_t attempts = x->attempts < EARNED_MOST ? x->attempts : EARNED_MOST;
	struct measures m = measures_of(sh->arena, sh->e, x);
	bool named = sh->e->choice.large;
	unsigned signs = 0;
	struct grid *g;

	if (!m.n)
		return 0;
	size_t n = 4 + measured_blanks(sh, attempts, &columns[4], &head[4]) - named;
	g = sheet_grid(sh, &columns[named], n, GLOVE_PT, attempts <= 1
	    ? sh_word(sh, "Measured twice, at two places") : attempts <= 3
	    ? sh_word(sh, "Measured in each attempt at two places, a and b; circle what is out")
	    : sh_word(sh, "Measured in each attempt; circle what is out"));
	sheet_heads(sh, g, &head[named], n);
	for (size_t i = 0; i < m.n; i++) {
		measured_row(sh, g, &m.v[i], n, named);
		signs |= m.v[i].sign;
	}
	table_end(sh, g);
	return signs;
}

static bool same_limits(const struct limits *a, const struct limits *b)
{
	if (a->n < 2 || a->n != b->n)
		return false;
	for (size_t i = 0; i < a->n; i++)
		if (!str_eq(a->v[i].feature, b->v[i].feature) ||
		    !str_eq(a->v[i].rule, b->v[i].rule))
			return false;
	return true;
}

/* Whether another line of the same table has the same limits, which then serve both. */
static bool repeats(struct sheet *sh, const struct assignment *x, size_t at, size_t of)
{
	struct limits a = limits_of(sh->arena, sh->e, x, &x->criteria[at]);
	struct limits b = limits_of(sh->arena, sh->e, x, &x->criteria[of]);

	return at != of &&
	    is_destructive(x->criteria[at].name) ==
	    is_destructive(x->criteria[of].name) &&
	    !is_measured(&x->criteria[of]) && same_limits(&a, &b);
}

static str shown_name(const struct criterion *c)
{
	return said_or(c->shown_name, c->name);
}

/* "Face bend: 1, D1.1-2020; Root bend: 1, D1.1-2020". */
static str judged_name(struct sheet *sh, const struct assignment *x, size_t at)
{
	struct buf b = { .arena = sh->arena };

	for (size_t i = at; i < x->ncriteria; i++)
		if (i == at || repeats(sh, x, at, i))
			buf_addf(&b, "%s%.*s: %.*s", b.n ? "; " : "",
			    STR_ARG(shown_name(&x->criteria[i])),
			    STR_ARG(limits_head(sh->arena, sh->e, &x->criteria[i])));
	return buf_str(&b);
}

/* Rows of one acceptance line, under its name when it has several. */
static unsigned judged_rows(
    struct sheet *sh, struct grid *g, const struct assignment *x, size_t at, size_t columns)
{
	struct limits l = limits_of(sh->arena, sh->e, x, &x->criteria[at]);
	unsigned signs = 0;

	if (l.n > 1) {
		const struct grid_cell name = {
			.style = SPAN_BOLD | text_style(sh, shown_name(&x->criteria[at]),
			    x->criteria[at].name),
			.columns = (uint32_t)columns, .text = judged_name(sh, x, at)
		};

		grid_row(g, &name, 1);
		grid_row_min(g, 0);
	}
	for (size_t i = 0; i < l.n; i++) {
		signs |= l.v[i].sign;
		sheet_limit_row(sh, g, &l.v[i], columns);
	}
	return signs;
}

/* Rows for specimens: one when no count is told, or more than a table has room for. */
static uint32_t specimens(const struct criterion *c)
{
	uint32_t n = test_counts_of(c).total;

	return n >= 1 && n <= 12 ? n : 1;
}

/* Rows for the specimens of each destructive line that is a tensile test, or is not. */
static void add_specimens(struct sheet *sh, struct grid **g, const struct assignment *x,
    bool tensile, struct grid *(*begin)(struct sheet *sh))
{
	for (size_t i = 0; i < x->ncriteria; i++) {
		const struct criterion *c = &x->criteria[i];
		enum standard_test test;

		if (!is_destructive(c->name) || !criterion_test(c->name, &test) ||
		    (test == TEST_TENSILE) != tensile)
			continue;
		if (!*g)
			*g = begin(sh);
		for (uint32_t k = 1; k <= specimens(c); k++) {
			str row = str_format(sh->arena, "%.*s %u", STR_ARG(shown_name(c)), k);

			grid_row_plain(*g, &row, 1);
		}
	}
}

static struct grid *begin_destructive(struct sheet *sh)
{
	const struct grid_column columns[] = { { COLUMN_SHARE, 4, ALIGN_LEFT },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 3, ALIGN_LEFT },
		{ COLUMN_SHARE, 5, ALIGN_LEFT },
		{ COLUMN_FIXED, CHECK_PT * 1.4 * (sh->e->zoom > 1 ? 1.1 : 1), ALIGN_LEFT } };
	const str head[] = { WORD("Specimen"), WORD("Thickness"), WORD("Plunger or tool"),
		WORD("Flaws: size, sum"), WORD("Pass") };
	struct grid *g = sheet_grid(sh, columns, 5, GLOVE_PT, sh_word(sh, "Destructive tests"));

	sheet_heads(sh, g, head, 5);
	return g;
}

static void add_destructive(struct sheet *sh, const struct assignment *x)
{
	struct grid *g = NULL, *tensile = NULL;

	add_specimens(sh, &g, x, false, begin_destructive);
	if (g)
		table_end(sh, g);
	add_specimens(sh, &tensile, x, true, tensile_begin);
	if (!tensile)
		return;
	table_end(sh, tensile);
	tensile_loads(sh, x);
}

/* Sources are told in the words of their set, so a translated sheet points at the
 * original. */
static str source_text(struct sheet *sh, const struct standard *s)
{
	bool from = s->source.n && !str_starts_nocase(s->source, STR("from "));

	if (edition_language(sh->e))
		return sh_format(sh, "Limits of %.*s; the English sheet names their source.",
		    STR_ARG(s->name));
	return str_format(sh->arena, "Limits of %.*s%s%s%.*s%s%.*s.", STR_ARG(s->name),
	    s->source.n ? ", " : "", from ? "from " : "", STR_ARG(s->source),
	    s->checked.n ? "; checked against " : "", STR_ARG(s->checked));
}

/* Each set once: whose limits these are and where they were read. */
static void add_criteria_sources(struct sheet *sh, const struct assignment *x)
{
	for (size_t i = 0; i < x->ncriteria; i++) {
		const struct standard *s = x->criteria[i].standard;
		bool told = !s;

		for (size_t k = 0; k < i && !told; k++)
			told = x->criteria[k].standard == s;
		if (!told)
			sheet_text(sh, source_text(sh, s));
	}
}

static bool told_before(struct sheet *sh, const struct assignment *x, size_t at)
{
	for (size_t i = 0; i < at; i++)
		if (repeats(sh, x, at, i))
			return true;
	return false;
}

/* Large print has no column that could say it. */
static str judged_title(struct sheet *sh)
{
	return sh->e->choice.large ? sh_word(sh, "Judged, by attempt") : (str){ 0 };
}

static str where_head(const struct assignment *x)
{
	if (x->nwelds > 1)
		return is_pipe(x) ? WORD("Weld, o'clock, how much")
		                  : WORD("Weld, where, how much");
	return is_pipe(x) ? WORD("O'clock, how much") : WORD("Where, how much");
}

/* What is judged, with a column an attempt for yes or no; the columns are counted in *n. */
static struct grid *begin_judged(struct sheet *sh, const struct assignment *x, str title,
    size_t *n)
{
	struct grid_column columns[3 + EARNED_MOST] = { { COLUMN_SHARE, 9, ALIGN_LEFT },
		{ COLUMN_SHARE, 17, ALIGN_LEFT }, { COLUMN_SHARE, 9, ALIGN_LEFT } };
	str head[3 + EARNED_MOST] = { WORD("Judged, by attempt"),
		WORD("Passes when"), where_head(x) };
	size_t attempts = x->attempts < EARNED_MOST ? x->attempts : EARNED_MOST;
	bool named = sh->e->choice.large;
	struct grid *g;

	for (size_t i = 0; i < attempts; i++) {
		columns[3 + i] = (struct grid_column){ COLUMN_FIXED,
			(attempts > 2 ? MM_PT(10) : 36) * sh->e->zoom, ALIGN_CENTER };
		head[3 + i] = number(sh, (uint32_t)i + 1);
	}
	*n = 3 + attempts - named;
	g = sheet_grid(sh, &columns[named], *n, GLOVE_PT, title);
	sheet_heads(sh, g, &head[named], *n);
	return g;
}

/* What is judged on the weld, or on its specimens: two tables, so that each stands whole
 * on a page. Returns the signs that it uses. */
static unsigned add_judged(struct sheet *sh, const struct assignment *x, bool destructive)
{
	unsigned signs = 0;
	struct grid *g = NULL;
	size_t columns = 0;

	for (size_t i = 0; i < x->ncriteria; i++) {
		if (is_measured(&x->criteria[i]) ||
		    is_destructive(x->criteria[i].name) != destructive ||
		    told_before(sh, x, i))
			continue;
		if (!g)
			g = begin_judged(sh, x, destructive ? sh_word(sh, "Judged on specimens")
			                                    : judged_title(sh), &columns);
		signs |= judged_rows(sh, g, x, i, columns);
	}
	if (g)
		table_end(sh, g);
	return signs;
}

static void add_results(struct sheet *sh, const struct assignment *x)
{
	unsigned signs = add_measured(sh, x) | add_judged(sh, x, false);

	signs |= add_judged(sh, x, true);
	add_destructive(sh, x);
	sheet_signs(sh, signs);
	add_criteria_sources(sh, x);
}

static str grade_name(struct sheet *sh, const struct grade *g)
{
	return g->must_pass ? str_format(sh->arena, "%.*s%.*s", STR_ARG(g->name),
	    STR_ARG(sh_word(sh, " (must pass)"))) : g->name;
}

static void score_rows(struct sheet *sh, struct grid *g, const struct assignment *x)
{
	uint32_t total = 0;

	for (size_t i = 0; i < x->ngrades; i++) {
		const struct grid_cell row[2] = {
			{ .text = grade_name(sh, &x->grades[i]),
			    .style = x->grades[i].english ? SPAN_OTHER : 0 },
			{ .text = number(sh, x->grades[i].weight) } };

		total += x->grades[i].weight;
		grid_row(g, row, 2);
	}
	const struct grid_cell sum[] = { { .style = SPAN_BOLD, .text = x->pass_mark
			? sh_format(sh, "Total, pass mark %u", x->pass_mark)
			: sh_word(sh, "Total") },
		{ .text = number(sh, total), .style = SPAN_BOLD } };

	grid_row(g, sum, 2);
}

static void add_score(struct sheet *sh, const struct assignment *x)
{
	struct grid_column columns[2 + EARNED_MOST] = { { COLUMN_SHARE, 1, ALIGN_LEFT },
		{ COLUMN_NATURAL, 40, ALIGN_RIGHT } };
	str head[2 + EARNED_MOST] = { sh_word(sh, "Score, by attempt"),
		sh_word(sh, "Weight") };
	size_t n = x->attempts < EARNED_MOST ? x->attempts : EARNED_MOST;
	struct grid *g;

	if (!x->ngrades)
		return;
	for (size_t i = 0; i < n; i++) {
		columns[2 + i] = (struct grid_column){ COLUMN_FIXED, MM_PT(20), ALIGN_LEFT };
		head[2 + i] = str_format(sh->arena, "%zu", i + 1);
	}
	g = sheet_grid(sh, columns, 2 + n, GLOVE_PT, (str){ 0 });
	grid_row_plain(g, head, 2 + n);
	score_rows(sh, g, x);
	sheet_grid_end(sh, g);
	sheet_text(sh, sh_word(sh, "A failed gate (must pass) fails the attempt whatever the "
	    "points. The best attempt counts unless the college's policy says otherwise."));
}

static str taught_text(struct sheet *sh, const struct skill_at *t)
{
	const struct skill *k = &sh->m->skills[t->skill];
	str outcome = k->outcome == NONE ? (str){ 0 } : sh->m->outcomes[k->outcome].id;

	return str_format(sh->arena, "%.*s %.*s: %.*s, %.*s%.*s%.*s", STR_ARG(outcome),
	    STR_ARG(k->id), STR_ARG(k->title),
	    STR_ARG(edition_word(sh->e, skill_level_word(t->level))),
	    STR_ARG(t->evidence.n ? sh_word(sh, " by ") : (str){ 0 }), STR_ARG(t->evidence));
}

/* Stands with the verdict: boxes alone on a page do not say what they decide. */
static void add_assessed(struct sheet *sh, const struct assignment *x)
{
	const struct item_spec spec = { .mark = MARK_BULLET };

	sheet_bold(sh, sh_word(sh, "What this paper is evidence for"));
	for (size_t i = 0; i < x->nteaches; i++) {
		struct span line;
		struct block *b;

		if (x->teaches[i].skill == NONE || !x->teaches[i].level)
			continue;
		line = (struct span){ .text = taught_text(sh, &x->teaches[i]) };
		b = block_item(&sh->s, &spec, &line, 1, &sh->e->body, sh->width_pt);
		b->keep_next = true;
		sheet_add(sh, b, 2, 2);
	}
}

/* Three boxes side by side: passed, not passed, filed. */
static void add_verdict(struct sheet *sh)
{
	static const str words[] = { WORD("Passed"), WORD("Not passed"), WORD("Filed") };
	struct block *boxes[3], *b;
	struct block_column columns[3];
	double gap = 12, width = (sh->width_pt - 2 * gap) / 3;

	for (int i = 0; i < 3; i++) {
		boxes[i] = block_check(&sh->s, edition_word(sh->e, words[i]), &sh->e->bold, width);
		columns[i] = (struct block_column){ &boxes[i], 1, width };
	}
	b = block_columns(&sh->s, columns, 3, gap);
	b->keep_next = true;
	sheet_add(sh, b, 8, 4);
}

static void add_foot(struct sheet *sh, const struct assignment *x)
{
	const struct blank v[] = { { sh_word(sh, "Instructor initials"), (str){ 0 }, MM_PT(30) },
		{ sh_word(sh, "Student initials"), (str){ 0 }, MM_PT(30) } };

	add_assessed(sh, x);
	add_verdict(sh);
	sheet_add(sh, block_blanks(&sh->s, v, 2, &sh->e->body, 0, sh->width_pt), 4, 4);
}

void sheet_grading(struct sheet *sh, uint32_t assignment)
{
	const struct assignment *x = &sh->m->assignments[assignment];

	sheet_title(sh, sh_format(sh, "Grading: %.*s",
	    STR_ARG(str_format(sh->arena, "%.*s ", STR_ARG(x->id)))), x);
	if (x->nwelds)
		sheet_text(sh, safety_record_line(sh->e, x));
	add_head(sh, x);
	sheet_used(sh, x);
	add_attempts(sh, x);
	add_holds(sh, x);
	add_results(sh, x);
	add_score(sh, x);
	add_foot(sh, x);
}
