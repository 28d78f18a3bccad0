/* Headings that are missing, so that what should stand under them stands elsewhere. */
#include "check/remedy_seek.h"

#include "base/buf.h"

/* What a line may be part of, told by how it begins; "": anything. The likelier first. */
static const struct {
	const char *begins;
	const char *sections[8];
} shapes[] = {
	{ "```", { "Drawing" } },
	{ "- **", { "Grading", "Acceptance", "Welds", "Passes" } },
	{ "- ", { "Pieces", "Teaches", "Needs", "Bring", "Cautions", "Notes",
	    "If it fails" } },
	{ "", { "Cautions", "Notes", "If it fails", "Drawing" } },
};
enum { SECTIONS_MOST = sizeof shapes->sections / sizeof *shapes->sections };

static struct remedy *add_above(struct seeker *s, str heading, struct pos pos)
{
	struct edit e = { EDIT_ADD, pos.file, pos.line - 1, { 0 }, 0 };
	struct remedy *r;

	e.text = str_format(s->arena, "\n## %.*s\n\n", STR_ARG(heading));
	r = seek_add(s, &e, 1);
	r->names_cause = true;
	r->say = str_format(s->arena, "write \"## %.*s\" above this line", STR_ARG(heading));
	return r;
}

/* A heading above the line that the finding is about. */
static void add_heading(struct seeker *s, str heading)
{
	add_above(s, heading, seek_finding(s)->pos);
}

/* The first line of the paragraph that stands above a line, its own where none does. */
static struct pos caption_above(const struct seeker *s, struct pos pos)
{
	struct pos at = pos;

	while (at.line > 1 && !str_trim(seek_line(s, (struct pos){ at.file, at.line - 1, 1 })).n)
		at.line--;
	while (at.line > 1 && str_trim(seek_line(s, (struct pos){ at.file, at.line - 1, 1 })).n)
		at.line--;
	return str_starts(seek_line(s, at), STR("- ")) || at.line == 1 ? pos : at;
}

/* What is drawn disagrees with the facts because the welds stand under another heading,
 * where their lines are words like others. */
static void seek_welds_heading(struct seeker *s, const struct assignment *a)
{
	uint32_t last = seek_last_line(s, a);
	struct pos pos = a->pos;

	if (seek_section(s, a, STR("Welds")))
		return;
	for (; pos.line <= last; pos.line++)
		if (str_starts(seek_line(s, pos), STR("- **A:** "))) {
			add_above(s, STR("Welds"), pos)->say = STR("write \"## Welds\" above "
			    "the line of weld A");
			return;
		}
}

static bool is_step(str line)
{
	size_t n = seek_digits(line, 0).n;

	return n && n < line.n && (line.p[n] == '.' || line.p[n] == ')');
}

/* Whether a line behind the first of Needs perhaps teaches: others are told to need the
 * same skill. */
static bool may_teach(const struct seeker *s, const struct assignment *a)
{
	const struct finding *d = seek_finding(s);

	if (!a->nneeds || d->pos.line <= a->needs[0].pos.line)
		return false;
	for (size_t i = 0; d->skill.n && i < s->f->n; i++) {
		const struct finding *o = &s->f->v[i];

		if (!o->waived && str_eq(o->skill, d->skill) &&
		    !str_eq(o->assignment, d->assignment))
			return true;
	}
	return false;
}

/* Whether a line stands right below another, as facts do that are no section. */
static bool follows_on(const struct seeker *s, struct pos pos)
{
	pos.line--;
	return str_trim(seek_line(s, pos)).n;
}

static void seek_sections(struct seeker *s, const struct assignment *a)
{
	str line = str_trim(seek_line(s, seek_finding(s)->pos));
	size_t k = 0;

	if (str_starts(line, STR("![")) && !seek_section(s, a, STR("Drawing")))
		add_above(s, STR("Drawing"), caption_above(s, seek_finding(s)->pos));
	if (is_step(line) || seek_finding(s)->name == FINDING_UNTAUGHT_SKILL) {
		bool step = is_step(line);
		str only = step ? STR("Procedure") : STR("Teaches");

		if ((step || may_teach(s, a)) && !seek_section(s, a, only))
			add_heading(s, only);
		return;
	}
	while (!str_starts(line, str_of(shapes[k].begins)))
		k++;
	if (str_starts(line, STR("- **")) && follows_on(s, seek_finding(s)->pos))
		return;
	for (size_t i = 0; i < SECTIONS_MOST && shapes[k].sections[i]; i++)
		if (!seek_section(s, a, str_of(shapes[k].sections[i])))
			add_heading(s, str_of(shapes[k].sections[i]));
}

/* The word in quotes that opens a message: "booth" is not a station of shop.md */
static str quoted(str message)
{
	size_t end = str_find_char(message, '"', 1);

	return message.n && message.p[0] == '"' ? str_sub(message, 1, end) : (str){ 0 };
}

/* A station, machine or section that others name and shop.md lacks, above a fact that has
 * no meaning where it stands. */
static void seek_shop(struct seeker *s)
{
	static const char *const kinds[] = { "station", "machine", "section" };
	bool fact = str_starts(str_trim(seek_line(s, seek_finding(s)->pos)), STR("- **"));

	if (!fact) {
		add_heading(s, STR("Gauges"));
		add_heading(s, STR("Stock"));
		return;
	}
	for (size_t i = 0; i < s->f->n; i++) {
		const struct finding *d = &s->f->v[i];

		if (d->name != FINDING_UNKNOWN_WORD || d->waived)
			continue;
		for (size_t k = 0; k < sizeof kinds / sizeof *kinds; k++) {
			str after = str_format(s->arena, "is not a %s of shop.md", kinds[k]);

			if (str_find(d->message, after, 0) < d->message.n)
				add_heading(s, str_format(s->arena, "%c%s %.*s",
				    kinds[k][0] - 'a' + 'A', kinds[k] + 1,
				    STR_ARG(quoted(d->message))));
		}
	}
}

/* The next quarter, above what belongs to no quarter, or to it no more. */
static void seek_quarter(struct seeker *s)
{
	uint32_t before = 0;

	while (before < s->m->nquarters && s->m->quarters[before].pos.line &&
	    s->m->quarters[before].pos.line < seek_finding(s)->pos.line)
		before++;
	add_heading(s, str_format(s->arena, "Quarter %u", before + 1));
}

/* A quarter that is missed may begin with any course that is not the first of the one
 * before. */
static void seek_course(struct seeker *s, uint32_t before)
{
	const struct course *v = s->m->courses;

	str heading = str_format(s->arena, "Quarter %u", before + 1);

	for (size_t c = 1; c < s->m->ncourses; c++)
		if (v[c].quarter == before && v[c - 1].quarter == before)
			add_above(s, heading, v[c].pos)->say = str_format(s->arena,
			    "write \"## %.*s\" above %.*s in program.md", STR_ARG(heading),
			    STR_ARG(v[c].id));
}

/* Missed between two quarters, or behind the last one by a credential. */
static void seek_lost_quarter(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	uint32_t n = (uint32_t)s->m->nquarters;

	if (d->name == FINDING_BAD_CREDENTIAL)
		seek_course(s, n);
	for (uint32_t q = 2; d->name == FINDING_MISSING_FACT && q < n; q++)
		if (!pos_cmp(s->m->quarters[q].pos, d->pos) && !s->m->quarters[q - 1].pos.line)
			seek_course(s, q - 1);
}

/* Some heading of that sort, as the finding says itself. */
static void seek_any(struct seeker *s, str heading)
{
	add_above(s, heading, seek_finding(s)->pos)->say = (str){ 0 };
}

/* An outcome that credentials name and skills.md lacks, else any. */
static void seek_outcome(struct seeker *s)
{
	str mark = STR(" names outcome \"");

	for (size_t i = 0; i < s->f->n; i++) {
		str words = s->f->v[i].message;
		size_t at = str_find(words, mark, 0) + mark.n;

		if (s->f->v[i].name == FINDING_BAD_CREDENTIAL && at < words.n)
			add_heading(s, str_format(s->arena, "%.*s: Title", STR_ARG(str_sub(words,
			    at, str_find_char(words, '"', at)))));
	}
	seek_any(s, STR("X0: Outcome"));
}

static bool may_lack_heading(enum finding_name name)
{
	return name == FINDING_UNTAUGHT_SKILL || name == FINDING_BAD_QUANTITY ||
	    name == FINDING_NOT_UNDERSTOOD || name == FINDING_DUPLICATE_KEY ||
	    name == FINDING_UNKNOWN_SKILL || name == FINDING_UNKNOWN_KEY;
}

void seek_headings(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	const struct assignment *a = seek_assignment(s);

	seek_lost_quarter(s);
	if (d->name == FINDING_FACTS_DISAGREE && a)
		seek_welds_heading(s, a);
	if (!may_lack_heading(d->name) || !d->pos.line || !s->m->sources ||
	    d->pos.file >= s->m->sources->n)
		return;
	if (seek_is_in(s, d->pos, "shop.md"))
		seek_shop(s);
	else if (seek_is_in(s, d->pos, "skills.md"))
		seek_outcome(s);
	else if (seek_is_in(s, d->pos, "cohorts.md"))
		seek_any(s, STR("Group"));
	else if (seek_is_in(s, d->pos, "program.md"))
		seek_quarter(s);
	else if (a && a->pos.file == d->pos.file)
		seek_sections(s, a);
}
