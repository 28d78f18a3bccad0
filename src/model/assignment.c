#include "model/assignment.h"

#include "base/buf.h"

/* The drawing comes last: it borrows from the welds. */
const struct section_row sections_assignment[] = {
	{ { "Needs", 5 }, read_needs, "skills that a student brings" },
	{ { "Teaches", 7 }, read_teaches, "skills that the work gives" },
	{ { "Welds", 5 }, read_welds, "one bullet a weld" },
	{ { "Passes", 6 }, read_passes, "one bullet a pass, where passes differ" },
	{ { "Pieces", 6 }, read_pieces, "what is cut for one attempt" },
	{ { "Procedure", 9 }, read_steps, "numbered steps, hold points in bold" },
	{ { "Acceptance", 10 }, read_criteria, "what is accepted, by which code" },
	{ { "Grading", 7 }, read_grades, "weights that total 100, and the pass mark" },
	{ { "Bring", 5 }, read_bring, "tools and gear beyond the usual" },
	{ { "Cautions", 8 }, read_cautions, "what can hurt, and what to do about it" },
	{ { "If it fails", 11 }, read_if_it_fails,
	    "what to practice before trying again" },
	{ { "Notes", 5 }, read_notes, "for the student" },
	{ { "Instructor only", 15 }, read_instructor, "never on a student sheet" },
	{ { "Drawing", 7 }, read_drawing, "blocks that draw a joint or a plate" },
};
enum { SECTIONS = sizeof sections_assignment / sizeof *sections_assignment,
	SECTION_DRAWING = SECTIONS - 1 };
const size_t nsections_assignment = SECTIONS;

static size_t find_section(str name)
{
	size_t i = 0;

	while (i < SECTIONS && !words_same(sections_assignment[i].name, name))
		i++;
	return i;
}

/* Returns the section that is likely meant, SECTIONS when none is. */
static size_t complain_section(struct binder *b, const struct block *h)
{
	struct finding *d = complain(b, FINDING_UNKNOWN_SECTION, h->pos,
	    "\"%.*s\" is not a section of an assignment; what stands under it is "
	    "left out",
	    STR_ARG(h->text));
	str names[SECTIONS], likely;

	for (size_t i = 0; i < SECTIONS; i++)
		names[i] = sections_assignment[i].name;
	likely = offer_likely(b, d, h->text, names, SECTIONS);
	if (!likely.n)
		finding_repair(b->f, d, "give it the name of a section, such as \"Teaches\" "
		    "or \"Procedure\", or delete it");
	return find_section(likely);
}

/* A misspelt heading is read as the section that it likely means, when that is not there;
 * the finding just added says so. */
static void take_section(struct binder *b, const struct block *h, size_t meant,
    const struct block **at)
{
	if (meant == SECTIONS || at[meant])
		return;
	at[meant] = h;
	b->f->v[b->f->n - 1].message = str_format(b->f->arena, "\"%.*s\" is not a section "
	    "of an assignment; it is read as \"%.*s\"", STR_ARG(h->text),
	    STR_ARG(sections_assignment[meant].name));
}

static bool has_section(const struct block *v, size_t n, size_t i, size_t row)
{
	for (; i < n; i = blocks_until(v, n, i + 1, 2))
		if (find_section(v[i].text) == row)
			return true;
	return false;
}

/* Notes for trial the sections that are not there, for the unknown headings from i on. */
static void offer_sections(struct binder *b, const struct block *v, size_t n, size_t i,
    const struct block *const *at, size_t from)
{
	str missing[SECTIONS];
	size_t k = 0;

	for (size_t row = 0; row < SECTIONS; row++)
		if (!at[row])
			missing[k++] = sections_assignment[row].name;
	for (; b->f->n > from && i < n; i = blocks_until(v, n, i + 1, 2))
		offer_missing(b, from, v[i].pos, v[i].text, missing, k);
}

/* Where each section's heading is, by row; NULL: not there. */
static void find_sections(struct binder *b, const struct block *v, size_t n, size_t i,
    const struct block **at)
{
	size_t first = i, from = b->f->n;

	for (; i < n; i = blocks_until(v, n, i + 1, 2)) {
		size_t row = find_section(v[i].text);

		if (row == SECTIONS) {
			size_t meant = complain_section(b, &v[i]);

			if (meant < SECTIONS && !has_section(v, n, i, meant))
				take_section(b, &v[i], meant, at);
		} else if (at[row]) {
			struct finding *d = complain(b, FINDING_DUPLICATE_SECTION,
			    v[i].pos,
			    "\"%.*s\" stands twice; what stands under this one is "
			    "left out",
			    STR_ARG(v[i].text));

			finding_relate(b->f, d,
			    at[row]->pos)->label = STR("the first counts");
			finding_repair(b->f, d, "write these lines under the first, or "
			    "delete them");
		} else {
			at[row] = &v[i];
		}
	}
	offer_sections(b, v, n, first, at, from);
}

static void read_facts(struct binder *b, const struct block *v, size_t n)
{
	struct assignment *a = b->a;

	fields_read(b, &fields_assignment, v, n, b->facts);
	a->places = arena_array(b->arena, n, sizeof *a->places);
	for (uint32_t row = 0; row < FACT_ROWS; row++)
		if (b->facts[row])
			a->places[a->nplaces++] =
			    (struct fact_place){ row, block_pos(b->facts[row], 0) };
}

bool fact_is_told(const struct binder *b, uint32_t row)
{
	return b->facts[row] || b->nearly >> row & 1;
}

static void check_always_owed(struct binder *b)
{
	if (!fact_is_told(b, FACT_KIND))
		finding_repair(b->f, complain(b, FINDING_MISSING_FACT, b->a->pos,
		    "the fact Kind is owed"),
		    "add \"- **Kind:** coupon\" or another of: %.*s",
		    STR_ARG(words_list(b->arena, &words_kind)));
	if (!fact_is_told(b, FACT_HOURS))
		finding_repair(b->f, complain(b, FINDING_MISSING_FACT, b->a->pos,
		    "the fact Hours is owed"), "add \"- **Hours:** 16\" or the like");
}

/* Headings below level 2 are reported; what follows them is read as if they were not
 * there. */
static size_t drop_low_headings(struct binder *b, struct block *v, size_t n)
{
	size_t kept = 0;

	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_HEADING && v[i].level > 2)
			complain_block(b, &v[i], "use bold words instead of a heading");
		else
			v[kept++] = v[i];
	return kept;
}

static bool has_low_headings(const struct block *v, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_HEADING && v[i].level > 2)
			return true;
	return false;
}

static void read_sections(struct binder *b, const struct block *v, size_t n,
    const struct block *const *at)
{
	for (size_t row = 0; row < SECTIONS; row++) {
		size_t i;

		if (row == SECTION_DRAWING)
			welds_complete(b);
		if (!at[row])
			continue;
		i = (size_t)(at[row] - v) + 1;
		sections_assignment[row].read(b, at[row], v + i,
		    blocks_until(v, n, i, 2) - i);
	}
}

void assignment_read(struct binder *b, struct assignment *a, const struct block *v,
    size_t n)
{
	const struct block *facts[FIELDS_MOST] = { NULL }, *at[SECTIONS] = { NULL };
	size_t end;

	b->a = a;
	b->facts = facts;
	a->kind = KIND_COUNT;
	a->station = NONE;
	a->attempts = 3;
	if (has_low_headings(v, n)) {
		struct block *own = arena_array(b->arena, n, sizeof *own);

		for (size_t i = 0; i < n; i++)
			own[i] = v[i];
		n = drop_low_headings(b, own, n);
		v = own;
	}
	end = blocks_until(v, n, 1, 2);
	read_facts(b, v + 1, end - 1);
	find_sections(b, v, n, end, at);
	read_sections(b, v, n, at);
	check_always_owed(b);
	b->a = NULL;
	b->facts = NULL;
}
