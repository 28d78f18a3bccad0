/* The student's sheet of one assignment, in the order of work at a bench: before you
 * start, what you make, material and settings, steps, acceptance, checks, notes. */
#include "sheets/figure.h"
#include "sheets/limits.h"
#include "sheets/safety.h"
#include "sheets/sheet.h"

#include "units/format.h"

#define HOLD_BOX_PT MM_PT(30) /* initials of a gloved hand (common practice, no source) */

#define NOTES_LEAST_PT (2 * GLOVE_PT) /* two lines; more where the page has room */

/* ---- before you start ---- */

static enum skill_level taught_level(const struct assignment *x, uint32_t skill)
{
	enum skill_level most = 0;

	for (size_t t = 0; t < x->nteaches; t++)
		if (x->teaches[t].skill == skill && x->teaches[t].level > most)
			most = x->teaches[t].level;
	return most;
}

uint32_t first_teacher(const struct sheet *sh, const struct skill_at *at, uint32_t self)
{
	const struct teachers *t = sh->teachers;
	const struct place *best = &sh->o->places[self];
	uint32_t hit = NONE;

	for (uint32_t i = t->start[at->skill]; i < t->start[at->skill + 1]; i++) {
		const struct place *p = &sh->o->places[t->v[i]];

		if (p->slot == NONE || place_cmp(p, best) >= 0 ||
		    taught_level(&sh->m->assignments[t->v[i]], at->skill) < at->level)
			continue;
		best = p;
		hit = t->v[i];
	}
	return hit;
}

/* The words of a skill; where it comes from follows the sequence, as the week does,
 * and so is no part of the revision mark. */
static size_t skill_spans(struct sheet *sh, const struct skill_at *at, uint32_t self, struct span *v)
{
	size_t n = 0;
	uint32_t from;

	if (at->skill == NONE) {
		v[n++] = (struct span){ at->written, 0 };
		return n;
	}
	v[n++] = (struct span){ str_format(sh->arena, "%.*s%s%.*s",
	    STR_ARG(sh->m->skills[at->skill].title), at->level ? ", " : "",
	    STR_ARG(at->level ? edition_word(sh->e, skill_level_word(at->level))
	                      : (str){ 0 })), 0 };
	from = first_teacher(sh, at, self);
	if (from != NONE)
		v[n++] = (struct span){ sh_format(sh, " (from %.*s)",
		    STR_ARG(sh->m->assignments[from].id)), SPAN_FLEETING };
	return n;
}

static void add_need(struct sheet *sh, const struct need *need, uint32_t self)
{
	const struct item_spec spec = { .mark = MARK_CHECK };
	struct span *v = arena_array(sh->arena, need->n * 3 + 1, sizeof *v);
	size_t n = 0;

	for (size_t i = 0; i < need->n; i++) {
		if (i)
			v[n++] = (struct span){ sh_word(sh, ", or "), 0 };
		n += skill_spans(sh, &need->v[i], self, &v[n]);
	}
	sheet_add(sh, block_item(&sh->s, &spec, v, n, &sh->e->body, sh->width_pt), 4, 4);
}

static void add_needs(struct sheet *sh, const struct assignment *x, uint32_t self)
{
	if (!x->nneeds) {
		sheet_text(sh, sh_word(sh, "Nothing has to come before this."));
		return;
	}
	sheet_text(sh, sh_word(sh, "You have done these; the instructor checks each one:"));
	for (size_t i = 0; i < x->nneeds; i++)
		add_need(sh, &x->needs[i], self);
}

static void add_safety(struct sheet *sh, const struct assignment *x)
{
	str v[SAFETY_LINES_MOST];
	size_t n = safety_lines(sh->arena, sh->e, x, v);
	struct block *frame[SAFETY_LINES_MOST + 16];
	const struct type other = styled(sh->e->bold, SPAN_OTHER);
	const double pad = 6;
	double inner = block_frame_inner_pt(pad, RULE_PT, sh->width_pt);
	size_t k = 0;

	if (!n && !x->cautions.n)
		return;
	frame[k++] = block_plain(&sh->s, str_format(sh->arena, "%.*s%.*s",
	    STR_ARG(sh_word(sh, "Cautions")), STR_ARG(sheet_part_mark(sh, x, SAID_CAUTIONS))),
	    &sh->e->bold, TAG_P, inner);
	for (size_t i = 0; i < n; i++)
		frame[k++] = block_plain(&sh->s, v[i], &sh->e->body, TAG_P, inner);
	if (x->cautions.n) {
		const struct type own_type = styled(sh->e->body, part_style(x, SAID_CAUTIONS));
		struct block **own = block_prose(&sh->s, &x->cautions, &own_type, 3, inner);

		for (size_t i = 0; i < x->cautions.n && k < SAFETY_LINES_MOST + 14; i++)
			frame[k++] = own[i];
	}
	n = safety_other_lines(sh->arena, sh->e, x, v);
	for (size_t i = 0; i < n && k < SAFETY_LINES_MOST + 15; i++)
		frame[k++] = block_plain(&sh->s, v[i], &other, TAG_P, inner);
	frame[k++] = block_plain(&sh->s, safety_deference(sh->e), &sh->e->body, TAG_P,
	    inner);
	for (size_t i = 0; i < k; i++)
		frame[i]->before_pt = frame[i]->after_pt = 3;
	sheet_add(sh, block_frame(&sh->s, frame, k, pad, 1.5, sh->width_pt), 8, 8);
}

static void add_before(struct sheet *sh, const struct assignment *x, uint32_t self)
{
	sheet_heading(sh, sh_word(sh, "Before you start"), 2);
	add_needs(sh, x, self);
	if (x->bring.n) {
		sheet_bold(sh, str_format(sh->arena, "%.*s%.*s", STR_ARG(sh_word(sh, "Bring")),
		    STR_ARG(sheet_part_mark(sh, x, SAID_BRING))));
		sheet_prose(sh, &x->bring, part_style(x, SAID_BRING));
	}
	add_safety(sh, x);
}

/* ---- what you make, with what ---- */

static void add_material(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = {
		{ COLUMN_NATURAL, 60, ALIGN_LEFT }, { COLUMN_NATURAL, 40, ALIGN_CENTER },
		{ COLUMN_SHARE, 3, ALIGN_LEFT }, { COLUMN_SHARE, 2, ALIGN_LEFT },
	};
	const str head[] = { WORD("Piece"), WORD("Count"), WORD("Size"),
		WORD("Material, how made") };
	struct grid *g;

	if (!x->npieces)
		return;
	g = sheet_grid(sh, columns, 4, 0, sh_word(sh, "Pieces for one attempt"));
	sheet_heads(sh, g, head, 4);
	for (size_t i = 0; i < x->npieces; i++) {
		const struct piece *p = &x->pieces[i];
		str material = material_text(sh->arena, sh->e, p->material);
		str name = said_or(p->shown_name, p->name);
		const struct grid_cell row[4] = {
			{ .text = name, .style = text_style(sh, name, p->name) },
			{ .text = str_format(sh->arena, "%u", p->count) },
			{ .text = piece_size(sh->arena, sh->e, p) },
			{ .text = str_format(sh->arena, "%.*s%s%.*s", STR_ARG(material),
			    p->made.n ? ", " : "", STR_ARG(p->made)) } };

		grid_row(g, row, 4);
	}
	sheet_grid_end(sh, g);
}

static void add_welds(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = {
		{ COLUMN_FIXED, 50 * sh->e->zoom, ALIGN_CENTER }, { COLUMN_SHARE, 1, ALIGN_LEFT } };
	const str head[] = { WORD("Weld"), WORD("What it is") };
	struct grid *g;

	if (x->nwelds < 2)
		return;
	g = sheet_grid(sh, columns, 2, 0, (str){ 0 });
	sheet_heads(sh, g, head, 2);
	for (size_t i = 0; i < x->nwelds; i++) {
		str row[2] = { str_copy(sh->arena, (str){ &x->welds[i].letter, 1 }),
			weld_text(sh->arena, sh->e, &x->welds[i]) };

		grid_row_plain(g, row, 2);
	}
	sheet_grid_end(sh, g);
}

/* ---- steps and acceptance ---- */

static void add_step(struct sheet *sh, const struct step *step, uint32_t number,
    unsigned style)
{
	const struct type type = styled(sh->e->body, style);
	const struct side_box initials = { HOLD_BOX_PT, GLOVE_PT, sh_word(sh, "initials") };
	const struct item_spec spec = { .mark = MARK_NUMBER, .number = number, .hang_pt = 26 * sh->e->zoom,
		.boxes = &initials, .nboxes = step->hold.n ? 1 : 0 };
	struct span *v = arena_array(sh->arena, step->para.nspans + 1, sizeof *v);
	size_t n = 0;

	if (step->hold.n)
		v[n++] = (struct span){ str_format(sh->arena, "%.*s: ", STR_ARG(step->hold)), SPAN_BOLD };
	for (size_t i = 0; i < step->para.nspans; i++)
		v[n++] = step->para.spans[i];
	sheet_add(sh, block_item(&sh->s, &spec, v, n, &type, sh->width_pt), 4, 4);
}

static void add_steps(struct sheet *sh, const struct assignment *x)
{
	if (!x->nsteps)
		return;
	sheet_part_heading(sh, x, SAID_STEPS, "Steps", 2);
	for (size_t i = 0; i < x->nsteps; i++)
		add_step(sh, &x->steps[i], (uint32_t)i + 1, part_style(x, SAID_STEPS));
}

/* A line with limits of its own gets a row that names it, then one row a limit. */
static unsigned criterion_rows(struct sheet *sh, struct grid *g, const struct assignment *x,
    const struct criterion *c)
{
	struct limits l = limits_of(sh->arena, sh->e, x, c);
	unsigned signs = 0;

	if (l.n > 1) {
		str shown = said_or(c->shown_name, c->name);
		const struct grid_cell name = { .columns = 5,
			.style = SPAN_BOLD | text_style(sh, shown, c->name),
			.text = str_format(sh->arena, "%.*s: %.*s", STR_ARG(shown),
			    STR_ARG(limits_head(sh->arena, sh->e, c))) };

		grid_row(g, &name, 1);
		grid_row_min(g, 0);
	}
	for (size_t i = 0; i < l.n; i++) {
		sheet_limit_row(sh, g, &l.v[i], 4);
		signs |= l.v[i].sign;
	}
	return signs;
}

/* What passes, a blank for what was found, and two places to tick: the student
 * first, the instructor after. */
static void add_acceptance(struct sheet *sh, const struct assignment *x)
{
	const struct grid_column columns[] = {
		{ COLUMN_SHARE, 5, ALIGN_LEFT }, { COLUMN_SHARE, 8, ALIGN_LEFT },
		{ COLUMN_FIXED, MM_PT(28), ALIGN_LEFT }, { COLUMN_FIXED, 38 * sh->e->zoom, ALIGN_CENTER },
		{ COLUMN_FIXED, 44 * sh->e->zoom, ALIGN_CENTER },
	};
	const str head[] = { WORD("What is judged"), WORD("Passes when"), WORD("Found"),
		WORD("Me"), WORD("Instr.") };
	bool named = sh->e->choice.large;
	unsigned signs = 0;
	struct grid *g;

	if (!x->ncriteria)
		return;
	sheet_part_heading(sh, x, SAID_ACCEPTANCE,
	    "Acceptance: check it yourself, then call the instructor", 2);
	g = sheet_grid(sh, &columns[named], 5u - named, GLOVE_PT, (str){ 0 });
	sheet_heads(sh, g, &head[named], 5u - named);
	for (size_t i = 0; i < x->ncriteria; i++)
		signs |= criterion_rows(sh, g, x, &x->criteria[i]);
	sheet_grid_end(sh, g);
	sheet_signs(sh, signs);
}

static void add_grading_weights(struct sheet *sh, const struct assignment *x)
{
	struct buf b = { .arena = sh->arena };
	str *english = arena_array(sh->arena, x->ngrades, sizeof *english);
	size_t n = 0;

	if (!x->ngrades)
		return;
	for (size_t i = 0; i < x->ngrades; i++) {
		if (x->grades[i].english)
			english[n++] = x->grades[i].name;
		buf_addf(&b, "%s%.*s %u", i ? ", " : "", STR_ARG(x->grades[i].name),
		    x->grades[i].weight);
		if (x->grades[i].must_pass)
			buf_add(&b, sh_word(sh, " (must pass)"));
	}
	sheet_text_other(sh, x->pass_mark
	    ? sh_format(sh, "How it counts: %.*s; pass mark %u of 100.", STR_ARG(buf_str(&b)),
	        x->pass_mark)
	    : sh_format(sh, "How it counts: %.*s.", STR_ARG(buf_str(&b))), english, n);
}

static void add_checks(struct sheet *sh)
{
	const struct blank blanks[] = { { sh_word(sh, "My shop number"), (str){ 0 }, 0 },
		{ sh_word(sh, "Date"), (str){ 0 }, 0 } };

	sheet_check(sh, sh_word(sh, "Work marked with my shop number and attempt, place clean"));
	sheet_add(sh, block_blanks(&sh->s, blanks, 2, &sh->e->body, 0, sh->width_pt), 6, 6);
}

static void add_failing(struct sheet *sh, const struct assignment *x)
{
	sheet_part_heading(sh, x, SAID_IF_IT_FAILS, "If it fails", 2);
	if (x->if_it_fails.n)
		sheet_prose(sh, &x->if_it_fails, part_style(x, SAID_IF_IT_FAILS));
	sheet_text(sh, x->attempts == 1
	    ? sh_word(sh, "There is one attempt. The reason is written on the grading sheet.")
	    : sh_format(sh, "There are %u attempts. The reason is written on the grading sheet "
	        "and practice comes before the next one.", x->attempts));
}

static void add_notes(struct sheet *sh, const struct assignment *x)
{
	sheet_part_heading(sh, x, SAID_NOTES, "Notes", 2);
	if (x->notes.n)
		sheet_prose(sh, &x->notes, part_style(x, SAID_NOTES));
	if (x->nwelds)
		sheet_text(sh, safety_record_line(sh->e, x));
	flow_add(sh->flow, block_ruled(&sh->s, NOTES_LEAST_PT, true, sh->width_pt));
}

void sheet_student(struct sheet *sh, uint32_t assignment)
{
	const struct assignment *x = &sh->m->assignments[assignment];

	sheet_title(sh, str_format(sh->arena, "%.*s ", STR_ARG(x->id)), x);
	if (x->in_english == SAID_NOTHING)
		sheet_bold(sh, sh_word(sh, "This sheet is not translated yet: its own words are in "
		    "English. Ask the instructor."));
	add_before(sh, x, assignment);
	sheet_part_heading(sh, x, SAID_DRAWING, "What you make", 2);
	add_welds(sh, x);
	sheet_figures(sh, x);
	add_material(sh, x);
	sheet_settings(sh, x);
	add_steps(sh, x);
	add_acceptance(sh, x);
	add_grading_weights(sh, x);
	add_checks(sh);
	add_failing(sh, x);
	add_notes(sh, x);
}
