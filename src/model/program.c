/* The sequence: quarters, courses and the lines of each course. */
#include "model/parts.h"

#include "base/buf.h"
#include "model/credit.h"

/* More quarters than any program has; keeps an entry path short. */
enum { QUARTERS_MOST = 40, TERMS_MOST = 40, WEEKS_MOST = 60 };

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

static void fact_terms(struct binder *b, const struct field *row, const struct block *in)
{
	struct model *m = b->model;
	struct said rest = said_all(in), part;

	(void)row;
	while (m->nterms < TERMS_MOST && said_next(&rest, ",;", &part))
		*ARENA_PUSH(b->arena, m->terms, m->nterms, m->terms_cap) = part.s;
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

static bool begin_quarter(struct binder *b, const struct block *h)
{
	struct model *m = b->model;
	uint32_t n = quarter_of(h->text);
	struct quarter *q;

	if (!n) {
		b->quarter = 0;
		finding_repair(b->f, complain(b, FINDING_UNKNOWN_SECTION, h->pos,
		    "\"%.*s\" is not a quarter; what stands under it is left out",
		    STR_ARG(h->text)), "write a heading such as \"## Quarter 1\"");
		return false;
	}
	while (m->nquarters < n)
		ARENA_PUSH(b->arena, m->quarters, m->nquarters, m->quarters_cap);
	b->quarter = n;
	q = &m->quarters[n - 1];
	if (q->pos.line)
		finding_relate(b->f, complain(b, FINDING_DUPLICATE_SECTION, h->pos,
		    "quarter %u stands twice; its courses are added to the first",
		    (unsigned)n), q->pos)->label = STR("the first");
	else
		q->pos = h->pos;
	return true;
}

static void begin_course(struct binder *b, const struct block *h, struct map *courses)
{
	struct model *m = b->model;
	struct course *c = ARENA_PUSH(b->arena, m->courses, m->ncourses, m->courses_cap);
	struct said title;
	size_t used;
	uint32_t fresh = (uint32_t)m->ncourses - 1, first;

	c->id = id_of_course(b->arena, h->text, &used);
	c->pos = h->pos;
	c->quarter = b->quarter;
	if (c->id.n && title_after(said_all(h), used, &title)) {
		c->title = title.s;
	} else {
		c->id = str_trim(str_sub(h->text, 0, str_find_char(h->text, ':', 0)));
		c->title = str_trim(str_sub(h->text, c->id.n + 1, h->text.n));
		finding_repair(b->f, complain(b, FINDING_BAD_ID, h->pos,
		    "\"%.*s\" does not look like a course", STR_ARG(h->text)),
		    "write a heading such as \"### ORW 130: Wire-Feed I\"");
	}
	first = map_add(courses, c->id, fresh);
	if (first != fresh)
		finding_relate(b->f, complain(b, FINDING_DUPLICATE_ID, h->pos,
		    "there are two courses %.*s; both are kept", STR_ARG(c->id)),
		    m->courses[first].pos)->label = STR("the first");
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

/* Facts come first; the first numbered line ends them. */
static void read_course(struct binder *b, const struct block *v, size_t n, uint32_t *seen)
{
	const struct block *found[FIELDS_MOST] = { NULL };
	size_t facts = 0;

	while (facts < n && !is_line(b, &v[facts]))
		facts++;
	fields_read(b, &course_fields, v, facts, found);
	for (size_t i = facts; i < n; i++)
		if (is_line(b, &v[i]))
			slot_read(b, &v[i], seen);
		else
			complain_block(b, &v[i],
			    "write \"1. SM-20, week 3\" in a line of its own");
}

static size_t read_heading(struct binder *b, const struct record_file *file, size_t i,
    struct map *courses, uint32_t *seen)
{
	const struct block *h = &file->v[i];
	const struct block *found[FIELDS_MOST] = { NULL };
	size_t end = blocks_until(file->v, file->n, i + 1, 6);

	if (h->level == 1) {
		b->quarter = 0;
		complain_second_title(b, h);
		return blocks_until(file->v, file->n, i + 1, 1);
	}
	if (h->level == 2) {
		if (!begin_quarter(b, h))
			return blocks_until(file->v, file->n, i + 1, 2);
		fields_read(b, &quarter_fields, h + 1, end - i - 1, found);
	} else if (h->level == 3 && b->quarter) {
		begin_course(b, h, courses);
		read_course(b, h + 1, end - i - 1, seen);
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

static void report_not_listed(struct binder *b, const uint32_t *seen)
{
	const struct model *m = b->model;

	for (size_t i = 0; m->nslots && i < m->nassignments; i++) {
		const struct assignment *a = &m->assignments[i];
		struct finding *d;

		if (seen[i])
			continue;
		d = complain(b, FINDING_NOT_LISTED, a->pos,
		    "%.*s stands in no course, so nobody is given it", STR_ARG(a->id));
		d->assignment = a->id;
		finding_repair(b->f, d, "add a line for it to a course in program.md");
	}
}

/* Comparisons spent on likely ids; past this many the findings go without. */
enum { LIKELY_MOST = 2000000 };

/* The assignment in no course that an unknown id means by its bracket, or NONE. */
static uint32_t by_title(const struct model *m, const uint32_t *seen, str title)
{
	for (uint32_t i = 0; title.n && i < m->nassignments; i++)
		if (!seen[i] && same_title(title, m->assignments[i].title))
			return i;
	return NONE;
}

/* The one that it means by its spelling. A bracket that says otherwise makes it doubtful. */
static uint32_t by_spelling(struct binder *b, const struct unknown_id *u, const str *ids,
    size_t n)
{
	str likely = u->title.n ? (str){ 0 } : likely_word(b->f->v[u->finding].assignment,
	    ids, n);

	return likely.n ? map_find(b->model->assignment_by_id, likely) : NONE;
}

/* Goes on with the assignment that is meant, so that one slip is one finding. */
static void take_for(struct binder *b, const struct unknown_id *u, uint32_t meant,
    uint32_t *seen)
{
	struct model *m = b->model;
	struct finding *d = &b->f->v[u->finding];

	m->slots[u->slot].assignment = meant;
	seen[meant] = (uint32_t)u->slot + 1;
	d->message = str_format(b->f->arena, "no file defines %.*s; %.*s is taken for it",
	    STR_ARG(d->assignment), STR_ARG(m->assignments[meant].id));
	finding_repair(b->f, d, "write \"%.*s\", or add a file that defines %.*s",
	    STR_ARG(m->assignments[meant].id), STR_ARG(d->assignment));
}

/* What each unknown id means, or NONE, into meant; ids are those in no course. */
static void find_meant(struct binder *b, const uint32_t *seen, const str *ids, size_t n,
    uint32_t *meant)
{
	for (size_t i = 0; i < b->nunknown; i++) {
		const struct unknown_id *u = &b->unknown[i];

		meant[i] = NONE;
		if (n * i < LIKELY_MOST)
			meant[i] = by_title(b->model, seen, u->title);
		if (meant[i] == NONE && n * i < LIKELY_MOST)
			meant[i] = by_spelling(b, u, ids, n);
	}
}

/* Only an assignment that stands in no course can be the one that is meant, and only by
 * one line: what two lines could mean is offered to both. */
static void offer_unlisted(struct binder *b, uint32_t *seen)
{
	const struct model *m = b->model;
	str *ids = arena_array(b->arena, m->nassignments, sizeof *ids);
	uint32_t *meant = arena_array(b->arena, b->nunknown, sizeof *meant);
	uint32_t *lines = arena_array(b->arena, m->nassignments, sizeof *lines);
	size_t n = 0;

	for (size_t i = 0; i < m->nassignments; i++)
		if (!seen[i])
			ids[n++] = m->assignments[i].id;
	find_meant(b, seen, ids, n, meant);
	for (size_t i = 0; i < b->nunknown; i++)
		if (meant[i] != NONE)
			lines[meant[i]]++;
	for (size_t i = 0; i < b->nunknown; i++) {
		struct finding *d = &b->f->v[b->unknown[i].finding];

		if (meant[i] != NONE && lines[meant[i]] == 1) {
			take_for(b, &b->unknown[i], meant[i], seen);
			continue;
		}
		if (n * i < LIKELY_MOST)
			offer_likely(b, d, d->assignment, ids, n);
		if (!d->repair.n)
			finding_repair(b->f, d,
			    "add a file that defines %.*s, or delete this line",
			    STR_ARG(d->assignment));
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
	struct map *courses = map_new(b->arena, true);
	const struct block *found[FIELDS_MOST] = { NULL };
	size_t i = file->n ? blocks_until(file->v, file->n, 1, 6) : 0;

	if (!file->n)
		return;
	read_program_facts(b, file, i, found);
	m->slots = arena_array(b->arena, count_lines(file), sizeof *m->slots);
	m->slots_cap = count_lines(file);
	while (i < file->n)
		i = read_heading(b, file, i, courses, seen);
	b->quarter = 0;
	if (found[PROGRAM_ENTRY] && found[PROGRAM_ENTRY]->text.n)
		entries_read(b, found[PROGRAM_ENTRY]);
	if (b->nunknown)
		offer_unlisted(b, seen);
	report_not_listed(b, seen);
}
