/* The sequence: quarters, courses and the lines of each course. */
#include "model/parts.h"

#include "base/buf.h"
#include "model/credit.h"

/* More quarters than any program has; keeps an entry path short. */
enum { QUARTERS_MOST = 40, TERMS_MOST = 40 };

static void fact_year(struct binder *b, const struct field *row, const struct block *in)
{
	(void)row;
	b->model->catalog_year = in->text;
}

static void fact_weeks(struct binder *b, const struct field *row, const struct block *in)
{
	(void)row;
	read_count(b, said_all(in), 1, WEEKS_MOST, &b->model->weeks);
}

/* A season or another word of the program's own; a slip of a season is that season. */
static str term_meant(struct binder *b, struct said t)
{
	static const str seasons[] = { { "Winter", 6 }, { "Spring", 6 }, { "Summer", 6 },
		{ "Autumn", 6 }, { "Fall", 4 } };
	struct finding *d;
	str likely = { 0 };

	for (size_t i = 0; i < sizeof seasons / sizeof *seasons; i++) {
		if (str_eq_nocase(t.s, seasons[i]))
			return t.s;
		if (t.s.n > 3 && str_distance(t.s, seasons[i], 1) == 1)
			likely = seasons[i];
	}
	if (!likely.n)
		return t.s;
	d = complain(b, FINDING_UNKNOWN_WORD, said_pos(t), "\"%.*s\" is not a term; it is "
	    "read as \"%.*s\"", STR_ARG(t.s), STR_ARG(likely));
	finding_offer(b->f, d, d->pos, t.s, likely);
	return likely;
}

static void fact_terms(struct binder *b, const struct field *row, const struct block *in)
{
	struct model *m = b->model;
	struct said rest = said_all(in), part;

	(void)row;
	while (m->nterms < TERMS_MOST && said_next(&rest, ",;", &part))
		*ARENA_PUSH(b->arena, m->terms, m->nterms, m->terms_cap) =
		    term_meant(b, part);
	if (said_next(&rest, ",;", &part))
		complain(b, FINDING_OVER_LIMIT, said_pos(part),
		    "there are more than %d terms; the rest are left out", TERMS_MOST);
}

/* Read after the quarters, which it names; see program_read. */
static void fact_entry(struct binder *b, const struct field *row, const struct block *in)
{
	(void)b;
	(void)row;
	(void)in;
}

static void fact_credential(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct model *m = b->model;

	*ARENA_PUSH(b->arena, m->credentials, m->ncredentials, m->credentials_cap) =
	    (struct plain_fact){ .key = row->key, .text = in->text, .pos = block_pos(in, 0) };
}

static void fact_credit_rule(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct credit_rule rule;

	(void)row;
	b->model->credit_rule = in->text;
	if (!credit_rule_parse(in->text, &rule))
		finding_repair(b->f, complain(b, FINDING_NOT_UNDERSTOOD, block_pos(in, 0),
		    "\"%.*s\" is no rule of credits; credits are not compared with hours",
		    STR_ARG(in->text)),
		    "write \"1 credit = 11 lecture hours or 22 lab hours\"");
}

/* "50 minutes"; a bare number is minutes too. */
static void fact_hour(struct binder *b, const struct field *row, const struct block *in)
{
	struct quantity_fault fault;
	struct quantity q;
	uint32_t minutes;

	(void)row;
	if (str_to_u32(in->text, &minutes) && minutes >= 1 && minutes <= 120) {
		b->model->hour_minutes = minutes;
		return;
	}
	if (quantity_parse(in->text, QUANTITY_TIME, METAL_NONE, &q, &fault)) {
		complain_fault(b, said_all(in), &fault);
		return;
	}
	minutes = q.lo > 0 && q.lo <= 2 ? (uint32_t)(q.lo * 60 + 0.5) : 0;
	if (minutes)
		b->model->hour_minutes = minutes;
	else
		complain(b, FINDING_BAD_QUANTITY, block_pos(in, 0),
		    "\"%.*s\" is not the length of a class hour; it is left out",
		    STR_ARG(in->text));
}

static bool digits_at(str s, size_t from, size_t n, uint32_t lo, uint32_t hi)
{
	uint32_t value;

	return str_to_u32(str_sub(s, from, from + n), &value) && value >= lo &&
	    value <= hi;
}

static void fact_starts(struct binder *b, const struct field *row, const struct block *in)
{
	str t = in->text;

	(void)row;
	if (t.n == 10 && t.p[4] == '-' && t.p[7] == '-' && digits_at(t, 0, 4, 1900,
	    9999) &&
	    digits_at(t, 5, 2, 1, 12) && digits_at(t, 8, 2, 1, 31)) {
		b->model->quarters[b->quarter - 1].starts = t;
		b->model->quarters[b->quarter - 1].starts_pos = block_pos(in, 0);
		return;
	}
	finding_repair(b->f, complain(b, FINDING_BAD_QUANTITY, block_pos(in, 0),
	    "\"%.*s\" is not a date; it is left out", STR_ARG(t)),
	    "write year, month and day as 2026-09-21");
}

static struct course *last_course(struct binder *b)
{
	return &b->model->courses[b->model->ncourses - 1];
}

static void fact_credits(struct binder *b, const struct field *row,
    const struct block *in)
{
	(void)row;
	read_number(b, said_all(in), &last_course(b)->credits);
}

static void fact_lecture(struct binder *b, const struct field *row,
    const struct block *in)
{
	(void)row;
	read_hours(b, said_all(in), &last_course(b)->lecture_hours);
}

static void fact_lab(struct binder *b, const struct field *row, const struct block *in)
{
	(void)row;
	read_hours(b, said_all(in), &last_course(b)->lab_hours);
}

#define FIELD(name, reader, text) \
	{ .key = { name, sizeof name - 1 }, .read = reader, .help = text }

enum { PROGRAM_WEEKS = 1, PROGRAM_ENTRY = 3 };

static const struct field program_rows[] = {
	FIELD("Catalog year", fact_year, "as 2026-27"),
	[PROGRAM_WEEKS] = FIELD("Weeks in a quarter", fact_weeks, "owed"),
	FIELD("Terms", fact_terms, "the terms in which quarters 1, 2, 3 are held"),
	[PROGRAM_ENTRY] = FIELD("Entry", fact_entry, "where students may begin"),
	{ .key = { "Credential", 10 }, .read = fact_credential, .many = true,
	    .help = "its name, quarters and outcomes" },
	FIELD("Credit rule", fact_credit_rule, "hours that make a credit"),
	FIELD("Hour", fact_hour, "length of a class hour"),
};
static const struct field_table program_fields = { program_rows,
	sizeof program_rows / sizeof *program_rows, "a program" };

static const struct field quarter_rows[] = { FIELD("Starts", fact_starts, "2026-09-21") };
static const struct field_table quarter_fields = { quarter_rows, 1, "a quarter" };

static const struct field course_rows[] = {
	FIELD("Credits", fact_credits, "a number"),
	FIELD("Lecture hours", fact_lecture, "in the quarter"),
	FIELD("Lab hours", fact_lab, "in the quarter"),
};
static const struct field_table course_fields = { course_rows, 3, "a course" };

/* The quarter that a heading names, 0 for none. */
static uint32_t quarter_of(str heading)
{
	str word;
	uint32_t n;

	if (!str_word(&heading, &word) || !str_eq_nocase(word, STR("quarter")) ||
	    !str_to_u32(str_trim(heading), &n) || n > QUARTERS_MOST)
		return 0;
	return n;
}

/* Goes on in quarter n, whose heading stands at pos or should. */
static void open_quarter(struct binder *b, uint32_t n, struct pos pos)
{
	struct model *m = b->model;
	struct quarter *q;

	while (m->nquarters < n)
		ARENA_PUSH(b->arena, m->quarters, m->nquarters, m->quarters_cap);
	b->quarter = n;
	q = &m->quarters[n - 1];
	if (q->pos.line)
		finding_relate(b->f, complain(b, FINDING_DUPLICATE_SECTION, pos,
		    "quarter %u stands twice; its courses are added to the first",
		    (unsigned)n), q->pos)->label = STR("the first");
	else
		q->pos = pos;
}

/* program.md while its headings are gone through. */
struct walk_down {
	struct binder *b;
	const struct record_file *file;
	struct map *courses;
	uint32_t *seen;
};

/* The highest quarter from `least` on that a heading names, 0; `exact`: just that one. */
static uint32_t named_quarter(const struct walk_down *w, uint32_t least, bool exact)
{
	uint32_t most = 0;

	for (size_t i = 0; i < w->file->n; i++) {
		const struct block *v = &w->file->v[i];
		uint32_t n = v->kind == BLOCK_HEADING && v->level == 2
		    ? quarter_of(v->text) : 0;

		if (n > most && n >= least && !(exact && n > least))
			most = n;
	}
	return most;
}

/* The quarter after the present one when no heading of the file names it; 0. */
static uint32_t lost_quarter(const struct walk_down *w)
{
	uint32_t n = w->b->quarter + 1;

	return n > QUARTERS_MOST || named_quarter(w, n, true) ? 0 : n;
}

/* A number that stood before, where only that of the next quarter is missing. */
static bool repeats_for_next(const struct walk_down *w, uint32_t n)
{
	return n && n <= w->b->quarter && w->b->model->quarters[n - 1].pos.line &&
	    lost_quarter(w) && named_quarter(w, w->b->quarter + 2, false);
}

/* Whether a heading begins with the word or with what looks like a slip of it. */
static bool says_quarter(str heading)
{
	static const str quarter = { "quarter", 7 };
	str word;

	return str_word(&heading, &word) && (str_eq_nocase(word, quarter) ||
	    likely_word(word, &quarter, 1).n);
}

/* A heading that means a quarter and does not say so as owed, where just the next one is
 * missing. */
static bool take_for_quarter(const struct walk_down *w, const struct block *h)
{
	uint32_t n = lost_quarter(w);

	if (!n || !says_quarter(h->text))
		return false;
	finding_repair(w->b->f, complain(w->b, FINDING_UNKNOWN_SECTION, h->pos,
	    "\"%.*s\" cannot be meant here; it is read as quarter %u", STR_ARG(h->text),
	    (unsigned)n), "write \"## Quarter %u\"", (unsigned)n);
	finding_slip(w->b->f, &w->b->f->v[w->b->f->n - 1], h->pos, h->text,
	    str_format(w->b->f->arena, "Quarter %u", (unsigned)n));
	open_quarter(w->b, n, h->pos);
	return true;
}

static struct course *add_course(struct binder *b, struct pos pos)
{
	struct model *m = b->model;
	struct course *c = ARENA_PUSH(b->arena, m->courses, m->ncourses, m->courses_cap);

	c->pos = pos;
	c->quarter = b->quarter;
	return c;
}

static void complain_second_course(struct binder *b, const struct block *h,
    const struct course *first)
{
	struct finding *d = complain(b, FINDING_DUPLICATE_ID, h->pos,
	    "there are two courses %.*s; both are kept", STR_ARG(first->id));

	finding_relate(b->f, d, first->pos)->label = STR("the first");
	finding_repair(b->f, d, "give one of them another number, or make them one course");
}

static void begin_course(const struct walk_down *w, const struct block *h)
{
	struct binder *b = w->b;
	struct model *m = b->model;
	struct course *c = add_course(b, h->pos);
	struct said title;
	size_t used;
	uint32_t fresh = (uint32_t)m->ncourses - 1, first;

	c->id = id_of_course(b->arena, h->text, &used);
	if (c->id.n && title_after(said_all(h), used, &title)) {
		c->title = title.s;
	} else {
		c->id = str_trim(str_sub(h->text, 0, str_find_char(h->text, ':', 0)));
		c->title = str_trim(str_sub(h->text, c->id.n + 1, h->text.n));
		finding_repair(b->f, complain(b, FINDING_BAD_ID, h->pos,
		    "\"%.*s\" does not look like a course", STR_ARG(h->text)),
		    "write a heading such as \"### ORW 130: Wire-Feed I\"");
	}
	first = map_add(w->courses, c->id, fresh);
	if (first != fresh)
		complain_second_course(b, h, &m->courses[first]);
}

/* A numbered line, or a bullet that begins as one would. */
static bool is_line(struct binder *b, const struct block *v)
{
	size_t used;

	if (v->level > 1)
		return false;
	return v->kind == BLOCK_STEP || (v->kind == BLOCK_BULLET &&
	    (id_of_assignment(b->arena, v->text, &used).n ||
	    str_starts_nocase(v->text, STR("one of "))));
}

static bool is_fact_of(const struct field_table *t, const struct block *v)
{
	return v->kind == BLOCK_FACT && fields_find(t, v->key) != NONE;
}

static const char *wanted_of_course(struct binder *b, const struct block *v)
{
	struct buf t = { .arena = b->arena };

	if (!is_fact_of(&quarter_fields, v))
		return "write \"1. SM-20, week 3\" in a line of its own";
	buf_addf(&t, "move it up, right below \"## Quarter %u\"", (unsigned)b->quarter);
	return buf_z(&t);
}

/* Facts come first; the first numbered line ends them. Facts of a course behind lines
 * are those of the next one, whose heading was lost. The index of the first block that
 * is not of this course. */
static size_t read_course(const struct walk_down *w, const struct block *v, size_t n)
{
	const struct block *found[FIELDS_MOST] = { NULL };
	size_t i = 0;

	while (i < n && !is_line(w->b, &v[i]))
		i++;
	fields_read(w->b, &course_fields, v, i, found);
	for (; i < n && !is_fact_of(&course_fields, &v[i]) &&
	    !(is_fact_of(&quarter_fields, &v[i]) && lost_quarter(w)); i++)
		if (is_line(w->b, &v[i]))
			slot_read(w->b, &v[i], w->seen);
		else
			complain_block(w->b, &v[i], wanted_of_course(w->b, &v[i]));
	return i;
}

/* The lines are read as what they are, so that one heading is one finding. */
static void begin_without_heading(const struct walk_down *w, const struct block *v)
{
	struct binder *b = w->b;
	struct course *c;

	if (is_fact_of(&quarter_fields, v)) {
		open_quarter(b, lost_quarter(w), v->pos);
		finding_repair(b->f, complain(b, FINDING_NO_HEADING, v->pos,
		    "a quarter begins here without its heading; it is read as quarter %u",
		    (unsigned)b->quarter), "write \"## Quarter %u\" above this line",
		    (unsigned)b->quarter);
		return;
	}
	c = add_course(b, v->pos);
	c->id = c->title = str_format(b->arena, "the course at line %u", v->pos.line);
	finding_repair(b->f, complain(b, FINDING_NO_HEADING, v->pos,
	    "a course begins here without its heading; its lines are read as a course of "
	    "quarter %u", (unsigned)b->quarter), "write a heading such as "
	    "\"### ORW 130: Wire-Feed I\" above this line");
}

/* Courses, and at most one quarter, whose headings were lost. */
static void read_without_headings(const struct walk_down *w, const struct block *v, size_t n)
{
	const struct block *found[FIELDS_MOST] = { NULL };

	for (size_t i = 0; i < n;) {
		bool quarter = is_fact_of(&quarter_fields, &v[i]);

		begin_without_heading(w, &v[i]);
		if (quarter) {
			fields_read(w->b, &quarter_fields, &v[i], 1, found);
			i++;
		} else {
			i += read_course(w, v + i, n - i);
		}
	}
}

/* Facts of a quarter; a course whose heading was lost may follow them. */
static void read_quarter(const struct walk_down *w, const struct block *v, size_t n)
{
	const struct block *found[FIELDS_MOST] = { NULL };
	size_t own = 0;

	while (own < n && !is_line(w->b, &v[own]) && !is_fact_of(&course_fields, &v[own]))
		own++;
	fields_read(w->b, &quarter_fields, v, own, found);
	read_without_headings(w, v + own, n - own);
}

/* A heading that names a course and stands one level off. */
static bool is_course_astray(const struct walk_down *w, const struct block *h)
{
	size_t used;

	return w->b->quarter && h->level != 3 && !says_quarter(h->text) &&
	    id_of_course(w->b->arena, h->text, &used).n;
}

static size_t skip_unknown(const struct walk_down *w, size_t i)
{
	struct binder *b = w->b;
	const struct block *h = &w->file->v[i];
	uint32_t lost = lost_quarter(w);
	struct finding *d;

	b->quarter = 0;
	d = complain(b, FINDING_UNKNOWN_SECTION, h->pos, "\"%.*s\" is not a quarter; what "
	    "stands under it is left out", STR_ARG(h->text));
	finding_repair(b->f, d, "write a heading such as \"## Quarter 1\"");
	if (lost)
		finding_guess(b->f, d, h->pos, h->text, str_format(b->f->arena, "Quarter %u",
		    (unsigned)lost));
	return blocks_until(w->file->v, w->file->n, i + 1, 2);
}

static void read_under_course(const struct walk_down *w, const struct block *h, size_t n)
{
	size_t used;

	begin_course(w, h);
	used = read_course(w, h + 1, n);
	read_without_headings(w, h + 1 + used, n - used);
}

/* A heading of a quarter; false when it is none. */
static bool read_as_quarter(const struct walk_down *w, const struct block *h, size_t n)
{
	uint32_t quarter = h->level == 2 ? quarter_of(h->text) : 0;

	if (quarter && !repeats_for_next(w, quarter))
		open_quarter(w->b, quarter, h->pos);
	else if (!take_for_quarter(w, h))
		return false;
	read_quarter(w, h + 1, n);
	return true;
}

static size_t read_heading(const struct walk_down *w, size_t i)
{
	struct binder *b = w->b;
	const struct record_file *file = w->file;
	const struct block *h = &file->v[i];
	size_t end = blocks_until(file->v, file->n, i + 1, 6);

	if (h->level <= 3 && read_as_quarter(w, h, end - i - 1))
		return end;
	if (is_course_astray(w, h)) {
		finding_repair(b->f, complain(b, FINDING_NOT_UNDERSTOOD, h->pos,
		    "the heading of a course has three #; it is read as one of quarter %u",
		    (unsigned)b->quarter), "write \"### %.*s\"", STR_ARG(h->text));
		read_under_course(w, h, end - i - 1);
	} else if (h->level == 1) {
		b->quarter = 0;
		complain_second_title(b, h);
		return blocks_until(file->v, file->n, i + 1, 1);
	} else if (h->level == 2) {
		return skip_unknown(w, i);
	} else if (h->level == 3 && b->quarter) {
		read_under_course(w, h, end - i - 1);
	} else {
		complain_block(b, h, h->level == 3
		    ? "write \"## Quarter 1\" before the first "
		    "course" : "use ## for a quarter and ### for a course");
	}
	return end;
}

static void read_program_facts(struct binder *b, const struct record_file *file,
    size_t end,
    const struct block **found)
{
	struct model *m = b->model;

	m->title = file->v[0].text;
	fields_read(b, &program_fields, file->v + 1, end - 1, found);
	if (!found[PROGRAM_WEEKS])
		finding_repair(b->f, complain(b, FINDING_MISSING_FACT, file->v[0].pos,
		    "the fact Weeks in a quarter is owed"),
		    "add \"- **Weeks in a quarter:** 11\" or the like");
}

/* Of three quarters in turn the middle one starts outside the others, which are in order:
 * its date is wrong. Quarters that several cohorts meet at once may start over again. */
static void judge_starts(struct binder *b)
{
	const struct model *m = b->model;

	for (size_t i = 1; i + 1 < m->nquarters; i++) {
		const struct quarter *q = &m->quarters[i];
		str before = q[-1].starts, here = q->starts, after = q[1].starts;

		if (!before.n || !here.n || !after.n || str_cmp(before, after) >= 0 ||
		    (str_cmp(before, here) < 0 && str_cmp(here, after) < 0))
			continue;
		finding_repair(b->f, complain(b, FINDING_STARTS_OUT_OF_ORDER, q->starts_pos,
		    "quarter %u starts on %.*s, and the quarters around it on %.*s and %.*s",
		    (unsigned)i + 1, STR_ARG(here), STR_ARG(before), STR_ARG(after)),
		    "write a day between the two");
		/* The next is seen against a date that is wrong. */
		i++;
	}
}

/* Quarters without a heading between two that have one. */
static void judge_gaps(struct binder *b)
{
	const struct quarter *v = b->model->quarters;

	for (size_t i = 1, last = 0; i < b->model->nquarters; i++) {
		if (v[i].pos.line && v[last].pos.line && last + 1 < i) {
			struct finding *d = complain(b, FINDING_MISSING_FACT, v[i].pos,
			    "quarter %u follows quarter %u, and none stands between",
			    (unsigned)i + 1, (unsigned)last + 1);

			d->level = LEVEL_WARNING;
			finding_repair(b->f, d, "write \"## Quarter %u\" above its first course, "
			    "or with nothing under it", (unsigned)last + 2);
		}
		last = v[i].pos.line ? i : last;
	}
}

/* Nearly always the number of slots; a choice grows it. */
static size_t count_lines(const struct record_file *file)
{
	size_t n = 1;

	for (size_t i = 0; i < file->n; i++)
		n += file->v[i].kind == BLOCK_STEP;
	return n;
}

void program_read(struct binder *b, const struct record_file *file)
{
	struct model *m = b->model;
	uint32_t *seen = arena_array(b->arena, m->nassignments, sizeof *seen);
	const struct walk_down w = { b, file, map_new(b->arena, true), seen };
	const struct block *found[FIELDS_MOST] = { NULL };
	size_t i = file->n ? blocks_until(file->v, file->n, 1, 6) : 0;

	if (!file->n)
		return;
	read_program_facts(b, file, i, found);
	b->weeks_in = found[PROGRAM_WEEKS];
	b->program = b->weeks_in ? file : NULL;
	m->slots = arena_array(b->arena, count_lines(file), sizeof *m->slots);
	m->slots_cap = count_lines(file);
	while (i < file->n)
		i = read_heading(&w, i);
	b->quarter = 0;
	judge_starts(b);
	judge_gaps(b);
	if (found[PROGRAM_ENTRY] && found[PROGRAM_ENTRY]->text.n)
		entries_read(b, found[PROGRAM_ENTRY]);
	if (b->nunknown)
		unlisted_offer(b, seen);
	unlisted_report(b, seen);
}
