/* Figures of program.md and shop.md that are perhaps too small, and weeks of lines. */
#include "check/remedy_fact.h"

#include "base/buf.h"
#include "check/load.h"
#include "model/credit.h"

/* Figures that are tried of one line, each one more than the last. */
enum { FIGURES_MOST = 4, WEEKS_MOST = 6 };

/* More than a tenth of a station is kept free, as rule_load.c judges it. */
#define SHARE_MOST 0.90

/* Where the value of a bullet stands below a heading; line 0: it has none such. */
static struct pos value_below(const struct seeker *s, struct pos heading, str key)
{
	str open = str_format(s->arena, "**%.*s", STR_ARG(key));
	uint32_t last = (uint32_t)text_count_lines(s->m->sources->v[heading.file].text);
	struct pos at = { heading.file, heading.line + 1, 1 };

	for (; at.line <= last; at.line++) {
		str line = seek_line(s, at);
		size_t from = str_find(line, open, 0) + open.n, end;

		if (line.n && line.p[0] == '#')
			break;
		if (from > line.n)
			continue;
		for (end = from; end < line.n && (line.p[end] == ':' || line.p[end] == '*'); end++)
			;
		at.col = (uint32_t)str_chars(str_sub(line, 0, end)) + 1;
		return at;
	}
	return (struct pos){ 0 };
}

/* The line below a heading with another figure in it. */
static void seek_figure(struct seeker *s, struct pos heading, const char *key,
    uint32_t figure, str say)
{
	struct pos at = value_below(s, heading, str_of(key));
	str old = at.line ? seek_item(s, at, ' ', 0) : (str){ 0 };
	struct remedy *r;

	/* The value follows a blank. */
	if (at.line && !old.n)
		old = seek_item(s, at, ' ', 1);
	r = seek_write(s, at, old, str_format(s->arena, "%u", figure));
	if (!r)
		return;
	r->say = say;
	r->names_cause = r->strict = false;
}

/* ---- weeks in a quarter ---- */

static void write_weeks(struct seeker *s, uint32_t weeks)
{
	struct pos top = { s->m->courses[0].pos.file, 1, 1 };

	if (weeks > s->m->weeks)
		seek_figure(s, top, "Weeks in a quarter", weeks, str_format(s->arena,
		    "write %u at Weeks in a quarter in program.md", weeks));
}

/* Whether a section is open too short for several quarters. */
static bool several_too_long(const struct finding *d)
{
	size_t n = 0;

	for (size_t i = 0; d->name == FINDING_QUARTER_OVER && i < d->nrelated; i++)
		n += d->related[i].pos.file == d->pos.file;
	return n >= 2;
}

/* Where the credit rule counts a lecture hour a week, it tells the weeks (common practice,
 * no source). Where there is none, several quarters that are too long tell that they are
 * more. */
static void seek_weeks(struct seeker *s)
{
	struct credit_rule rule;

	if (credit_rule_parse(s->m->credit_rule, &rule) && rule.lecture_h >= 1) {
		write_weeks(s, (uint32_t)rule.lecture_h);
		return;
	}
	for (uint32_t k = 1; several_too_long(seek_finding(s)) && k <= FIGURES_MOST; k++)
		write_weeks(s, s->m->weeks + k);
}

/* ---- open hours of a section ---- */

/* The least whole hours a week in which every quarter fits. */
static uint32_t hours_wanted(const struct seeker *s)
{
	struct stints *all = stints_new(s->arena, order_of_program(s->arena, s->m));
	double most = 0;

	for (uint32_t q = 1; q <= s->m->nquarters; q++)
		if (quarter_hours(all, q) > most)
			most = quarter_hours(all, q);
	most /= s->m->weeks;
	return (uint32_t)most + ((double)(uint32_t)most < most - 1e-6);
}

static void seek_open_hours(struct seeker *s)
{
	uint32_t hours = s->m->weeks ? hours_wanted(s) : 0;

	for (size_t i = 0; i < s->m->nsections; i++) {
		const struct section *c = &s->m->sections[i];

		/* No more than the quarters take, or it would hide what else is too tight. */
		if (c->open_hours_week > 0 && hours > c->open_hours_week)
			seek_figure(s, c->pos, "Open", hours, str_format(s->arena,
			    "open section %.*s %u h a week", STR_ARG(c->name), hours));
	}
}

/* ---- the station of a sheet ---- */

static uint32_t station_at(const struct seeker *s, struct pos pos)
{
	for (uint32_t i = 0; i < s->m->nstations; i++)
		if (!pos_cmp(s->m->stations[i].pos, pos))
			return i;
	return NONE;
}

/* The one station of all other work in a course; NONE: none, or several. */
static uint32_t station_of_others(const struct model *m, const struct slot *own)
{
	uint32_t hit = NONE;

	for (size_t i = 0; i < m->nslots; i++) {
		const struct slot *k = &m->slots[i];
		uint32_t at = k->assignment == NONE || k == own || k->course != own->course
		    ? NONE : m->assignments[k->assignment].station;

		if (at != NONE && hit != NONE && at != hit)
			return NONE;
		hit = at != NONE ? at : hit;
	}
	return hit;
}

/* Work at a station that is asked for too much, while all else in its course is at another
 * one. */
static void seek_station(struct seeker *s)
{
	uint32_t full = station_at(s, seek_finding(s)->pos);

	for (size_t i = 0, n = 0; full != NONE && i < s->m->nslots && n < FIGURES_MOST; i++) {
		const struct slot *k = &s->m->slots[i];
		const struct assignment *a = k->assignment == NONE ? NULL
		    : &s->m->assignments[k->assignment];
		uint32_t other = a && a->station == full ? station_of_others(s->m, k) : NONE;

		if (other == NONE || other == full)
			continue;
		seek_fact(s, a, "Station", 0, s->m->stations[other].name, str_format(s->arena,
		    "as all else in %.*s; or %.*s", STR_ARG(s->m->courses[k->course].id),
		    STR_ARG(seek_finding(s)->repair)));
		n++;
	}
}

/* ---- places of a station ---- */

/* The least places with which the station is asked for no more than its share. */
static uint32_t places_wanted(const struct seeker *s, uint32_t station)
{
	const struct load *l = load_new(s->arena, stints_new(s->arena,
	    order_of_program(s->arena, s->m)));
	double most = 0;

	for (size_t i = 0; i < l->n; i++) {
		double asked = l->v[i].open_h > 0 ? l->v[i].must_h / l->v[i].open_h : 0;

		if (l->v[i].station == station && l->v[i].term < l->near && asked > most)
			most = asked;
	}
	most *= s->m->stations[station].places / SHARE_MOST;
	return (uint32_t)most + ((double)(uint32_t)most < most - 1e-6);
}

static void seek_places(struct seeker *s)
{
	for (uint32_t i = 0; i < s->m->nstations; i++) {
		const struct station *st = &s->m->stations[i];
		uint32_t least;

		if (pos_cmp(st->pos, seek_finding(s)->pos) || !st->places)
			continue;
		least = places_wanted(s, i);
		for (uint32_t k = 0; k < FIGURES_MOST; k++)
			if (least + k > st->places)
				seek_figure(s, st->pos, "Places", least + k,
				    str_format(s->arena, "give station %.*s %u places",
				    STR_ARG(st->name), least + k));
	}
}

/* ---- the week of a line ---- */

static void write_week(struct seeker *s, const struct slot *k, uint32_t week)
{
	str line = seek_line(s, k->pos), mark = STR("week ");
	str old = seek_digits(line, str_find(line, mark, 0) + mark.n);
	struct remedy *r;

	if (k->assignment == NONE || k->group)
		return;
	r = seek_write(s, k->pos, old, str_format(s->arena, "%u", week));
	if (!r)
		return;
	r->say = str_format(s->arena, "write week %u at %.*s in program.md", week,
	    STR_ARG(s->m->assignments[k->assignment].id));
	r->names_cause = r->strict = false;
}

/* Lines of a course come in the order of their weeks: of two that do not, the upper one is
 * too late or the lower one too early. */
static void seek_weeks_of_lines(struct seeker *s)
{
	const struct slot *v = s->m->slots;

	for (size_t i = 1; i < s->m->nslots; i++) {
		uint32_t first = i > 1 && v[i - 2].course == v[i].course ? v[i - 2].week : 1;
		uint32_t last = i + 1 < s->m->nslots && v[i + 1].course == v[i].course
		    ? v[i + 1].week : s->m->weeks;

		if (v[i].course != v[i - 1].course || v[i].week >= v[i - 1].week)
			continue;
		for (uint32_t w = v[i - 1].week; w <= last && w < v[i - 1].week + WEEKS_MOST; w++)
			write_week(s, &v[i], w);
		for (uint32_t w = v[i].week; w >= first && w + WEEKS_MOST > v[i].week; w--)
			write_week(s, &v[i - 1], w);
	}
}

/* ---- which finding asks for what ---- */

struct asking {
	enum finding_name name;
	void (*v[2])(struct seeker *s);
};

static const struct asking askings[] = {
	{ FINDING_QUARTER_OVER, { seek_weeks, seek_open_hours } },
	{ FINDING_TEST_IN_EDGE_WEEK, { seek_weeks } },
	{ FINDING_WEEK_OUTSIDE, { seek_weeks } },
	{ FINDING_STATION_OVER, { seek_station, seek_places } },
	{ FINDING_STATION_TIGHT, { seek_station, seek_places } },
};

void seek_figures(struct seeker *s)
{
	for (size_t i = 0; s->m->ncourses && i < sizeof askings / sizeof *askings; i++)
		for (size_t k = 0; k < 2 && askings[i].name == seek_finding(s)->name; k++)
			if (askings[i].v[k])
				askings[i].v[k](s);
	if (seek_finding(s)->name == FINDING_UNTAUGHT_SKILL ||
	    finding_is_of_order(seek_finding(s)->name))
		seek_weeks_of_lines(s);
}
