/* cohorts.md: groups of students part-way through, as counts and never by name. */
#include "model/parts.h"
#include "model/when.h"

/* Each asks for a section of its own, and reports compare them one by one. */
enum { COHORTS_MOST = 200, STUDENTS_MOST = 10000 };

static struct cohort *present(struct binder *b)
{
	return &b->model->cohorts[b->model->ncohorts - 1];
}

/* "quarter 3", a quarter that the program has. */
static bool read_quarter(struct binder *b, struct said t, uint32_t *out)
{
	struct said number = t;
	struct finding *d;

	if (!said_skip(&number, STR("quarter"))) {
		finding_repair(b->f, complain(b, FINDING_UNKNOWN_WORD, said_pos(t),
		    "\"%.*s\" is not a quarter; it is left out", STR_ARG(t.s)),
		    "write \"quarter 1\"");
		return false;
	}
	number = said_trim(number);
	if (str_to_u32(number.s, out) && *out >= 1 && *out <= b->model->nquarters)
		return true;
	*out = 0;
	if (!b->model->nquarters)
		return false;
	d = complain(b, FINDING_BAD_ENTRY, said_pos(t),
	    "\"%.*s\" is not a quarter of program.md; it is left out", STR_ARG(t.s));
	finding_repair(b->f, d, "name one from 1 to %u", (unsigned)b->model->nquarters);
	return false;
}

/* "fall-2025, quarter 1" */
static void fact_entered(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct said rest = said_all(in), part;
	struct cohort *c = present(b);
	struct when when;

	(void)row;
	if (!said_next(&rest, ",", &part))
		return;
	if (when_parse(part.s, &when))
		c->entered = part.s;
	else
		finding_repair(b->f, complain(b, FINDING_UNKNOWN_WORD, said_pos(part),
		    "\"%.*s\" is not a term; it is left out", STR_ARG(part.s)),
		    "write the term in which they began as fall-2025");
	if (said_next(&rest, ",", &part))
		read_quarter(b, part, &c->entry_quarter);
	else
		finding_repair(b->f, complain(b, FINDING_MISSING_FACT, said_pos(said_all(in)),
		    "this does not say with which quarter they began"),
		    "write \"%.*s, quarter 1\"", STR_ARG(in->text));
	if (said_next(&rest, ",", &part))
		finding_repair(b->f, complain(b, FINDING_NOT_UNDERSTOOD, said_pos(part),
		    "\"%.*s\" has no meaning here; it is left out", STR_ARG(part.s)),
		    "write \"fall-2025, quarter 1\"");
}

static void fact_finished(struct binder *b, const struct field *row,
    const struct block *in)
{
	(void)row;
	if (!str_eq_nocase(in->text, STR("none")))
		read_quarter(b, said_all(in), &present(b)->finished);
}

static void fact_students(struct binder *b, const struct field *row,
    const struct block *in)
{
	(void)row;
	read_count(b, said_all(in), 1, STUDENTS_MOST, &present(b)->students);
}

static void fact_section(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct cohort *c = present(b);

	(void)row;
	if (shop_is_hollow(b->model))
		return;
	c->section = section_find(b, said_all(in));
	c->astray = c->section == NONE;
}

#define FIELD(name, reader, text) \
	{ .key = { name, sizeof name - 1 }, .read = reader, .help = text }

/* All but the last are owed. A cohort on an entry path of its own may finish a quarter
 * that the catalog counts before the one it began with. */
static const struct field field_rows[] = {
	FIELD("Entered", fact_entered, "the term in which they began and with which "
	    "quarter, as fall-2025, quarter 1"),
	FIELD("Finished", fact_finished, "the last quarter they finished, as quarter 3; "
	    "or none"),
	FIELD("Students", fact_students, "how many they are"),
	FIELD("Section", fact_section, "the section of shop.md in which they work"),
};
enum { ROWS = sizeof field_rows / sizeof *field_rows, OWED = ROWS - 1 };

const struct field_table fields_cohort = { field_rows, ROWS, "a cohort" };

static void complain_owed(struct binder *b, const struct block *h,
    const struct block **found)
{
	for (size_t row = 0; row < OWED; row++)
		if (!found[row])
			finding_repair(b->f, complain(b, FINDING_MISSING_FACT, h->pos,
			    "this cohort does not say \"%.*s\"",
			    STR_ARG(field_rows[row].key)), "add \"- **%.*s:** ...\": %s",
			    STR_ARG(field_rows[row].key), field_rows[row].help);
}

static bool is_repeat(struct binder *b, const struct block *h)
{
	struct model *m = b->model;

	for (size_t i = 0; i < m->ncohorts; i++) {
		if (!words_same(m->cohorts[i].name, h->text))
			continue;
		complain_same_name(b, h, m->cohorts[i].pos);
		return true;
	}
	return false;
}

static void read_cohort(struct binder *b, const struct block *h, const struct block *v,
    size_t n)
{
	const struct block *found[FIELDS_MOST] = { NULL };
	struct model *m = b->model;

	if (is_repeat(b, h))
		return;
	if (m->ncohorts == COHORTS_MOST) {
		complain(b, FINDING_OVER_LIMIT, h->pos, "there are more than %d cohorts; "
		    "what stands under this one is left out", COHORTS_MOST);
		return;
	}
	*ARENA_PUSH(b->arena, m->cohorts, m->ncohorts, m->cohorts_cap) =
	    (struct cohort){ .name = h->text, .section = NONE, .pos = h->pos };
	fields_read(b, &fields_cohort, v, n, found);
	complain_owed(b, h, found);
}

void cohorts_read(struct binder *b, const struct record_file *file)
{
	size_t end;

	b->aside = true;
	for (size_t i = 1; i < file->n; i = end) {
		const struct block *h = &file->v[i];
		bool heading = h->kind == BLOCK_HEADING;

		end = heading ? blocks_until(file->v, file->n, i + 1, h->level < 2 ? 1 : 2)
		    : i + 1;
		if (heading && h->level < 2)
			complain_second_title(b, h);
		else if (heading && h->level == 2)
			read_cohort(b, h, h + 1, end - i - 1);
		else
			complain_block(b, h, "write it under a heading such as "
			    "\"## Day 2025\"");
	}
	b->aside = false;
}
