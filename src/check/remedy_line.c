/* Lines of program.md: elsewhere, added, or no more optional. */
#include "check/remedy_seek.h"

#include "base/buf.h"

/* Ways tried of one finding: more of them are seldom the one. */
enum { PLACES_MOST = 8, OPTIONAL_MOST = 6 };

/* The line as written, at another week. */
static str line_in_week(const struct seeker *s, str line, uint32_t week)
{
	str mark = STR("week ");
	size_t at = str_find(line, mark, 0) + mark.n;

	if (at > line.n)
		return (str){ 0 };
	return str_format(s->arena, "%.*s%u%.*s", STR_ARG(str_sub(line, 0, at)), week,
	    STR_ARG(str_sub(line, at + seek_digits(line, at).n, line.n)));
}

/* Behind which line of program.md work of a week stands last in its course, but for
 * `who`; 0: the course has no lines. */
static struct pos behind(const struct seeker *s, uint32_t course, uint32_t week, uint32_t who)
{
	const struct model *m = s->m;
	struct pos pos = { 0 };

	for (size_t i = 0; i < m->nslots; i++) {
		const struct slot *k = &m->slots[i];

		if (k->course != course || k->assignment == who)
			continue;
		if (!pos.line)
			pos = (struct pos){ k->pos.file, k->pos.line - 1, 1 };
		if (k->week <= week)
			pos = k->pos;
	}
	return pos;
}

static bool has_hours_finding(const struct seeker *s, uint32_t course)
{
	struct pos pos = s->m->courses[course].pos;
	const struct finding *own = seek_finding(s);

	for (size_t i = 0; i < s->f->n; i++)
		if (s->f->v[i].name == FINDING_HOURS_UNDER && !s->f->v[i].waived &&
		    !pos_cmp(s->f->v[i].pos, pos))
			return true;
	for (size_t i = 0; i < own->nrelated; i++)
		if (!pos_cmp(own->related[i].pos, pos))
			return true;
	return false;
}

static void add_move(struct seeker *s, const struct slot *k, uint32_t course, uint32_t week)
{
	const struct course *to = &s->m->courses[course];
	struct pos at = behind(s, course, week, k->assignment);
	struct edit v[2] = {
		{ EDIT_DROP, k->pos.file, k->pos.line, { 0 }, 0 },
		{ EDIT_ADD, at.file, at.line, line_in_week(s, seek_line(s, k->pos), week),
		    k->pos.line },
	};
	struct remedy *r;

	if (!at.line || !v[1].text.n)
		return;
	r = seek_add(s, v, 2);
	r->say = str_format(s->arena, "move %.*s to the end of quarter %u, week %u, in %.*s",
	    STR_ARG(s->m->assignments[k->assignment].id), to->quarter, week,
	    STR_ARG(to->id));
}

/* To the end of a week, counted from the first of the program: into the courses that lack
 * hours, else its own, else any of that quarter. */
static void add_moves(struct seeker *s, const struct slot *k, uint64_t spot)
{
	uint32_t weeks = s->m->weeks, quarter = (uint32_t)(spot / weeks) + 1;
	bool lacking = false;

	for (uint32_t c = 0; c < s->m->ncourses; c++)
		if (s->m->courses[c].quarter == quarter && c != k->course &&
		    has_hours_finding(s, c)) {
			add_move(s, k, c, (uint32_t)(spot % weeks) + 1);
			lacking = true;
		}
	for (uint32_t c = 0; c < s->m->ncourses; c++)
		if (s->m->courses[c].quarter == quarter && (c == k->course || (!lacking &&
		    s->m->courses[k->course].quarter != quarter)))
			add_move(s, k, c, (uint32_t)(spot % weeks) + 1);
}

/* To the end of any week of the courses that lack hours, between two weeks. */
static void move_between(struct seeker *s, const struct slot *k, uint64_t from, uint64_t to)
{
	const struct slot *last = NULL;
	uint32_t places = 0;

	for (size_t i = 0; i < s->m->nslots && places < PLACES_MOST; i++) {
		const struct slot *at = &s->m->slots[i];
		uint64_t spot = (uint64_t)(s->m->courses[at->course].quarter - 1) *
		    s->m->weeks + at->week - 1;

		if (spot <= from || spot >= to || !has_hours_finding(s, at->course) ||
		    (last && last->course == at->course && last->week == at->week))
			continue;
		last = at;
		add_move(s, k, at->course, at->week);
		places++;
	}
}

/* The line that stands wrong goes where the finding says, nearest first. */
static void move_one(struct seeker *s, const struct standing_wrong *w)
{
	const struct slot *k = seek_slot_of(s, w->mover);

	if (!k || k->group)
		return;
	add_moves(s, k, w->week);
	if (w->end == w->week)
		return;
	add_moves(s, k, w->end);
	move_between(s, k, w->week < w->end ? w->week : w->end,
	    w->week < w->end ? w->end : w->week);
}

/* Of two lines the wrong way round either may be the one. Its place may be far behind the
 * least that serves, or far before it: where hours are lacking. */
static void move_two(struct seeker *s, const struct standing_wrong *w)
{
	const struct slot *first = seek_slot_of(s, w->first);
	const struct slot *second = seek_slot_of(s, w->second);

	for (uint32_t i = 0; i < w->ntold; i++) {
		const struct slot *told = seek_slot_of(s, w->told[i].mover);

		if (told && !told->group)
			add_moves(s, told, w->told[i].week);
	}
	if (second && !second->group)
		add_moves(s, second, w->first_week);
	if (first && !first->group && w->second_week)
		add_moves(s, first, w->second_week - 1);
	if (second && !second->group)
		move_between(s, second, w->first_week, UINT64_MAX);
	if (first && !first->group && w->second_week)
		move_between(s, first, 0, w->second_week);
}

void seek_moves(struct seeker *s)
{
	const struct standing_wrong *w = seek_finding(s)->wrong;

	if (!w || !s->m->weeks || seek_finding(s)->name == FINDING_OPTIONAL_TEACHER)
		return;
	if (w->first != w->second)
		move_two(s, w);
	else if (seek_finding(s)->name == FINDING_UNTAUGHT_SKILL)
		move_one(s, w);
}

static void add_line(struct seeker *s, uint32_t course, struct pos at, uint32_t week)
{
	str id = seek_finding(s)->assignment;
	struct edit e = { EDIT_ADD, at.file, at.line, { 0 }, 0 };
	struct remedy *r;

	e.text = str_format(s->arena, "1. %.*s, week %u", STR_ARG(id), week);
	r = seek_add(s, &e, 1);
	r->names_cause = true;
	r->say = str_format(s->arena,
	    "give %.*s a line in program.md, such as \"%.*s, week %u\" in %.*s", STR_ARG(id),
	    STR_ARG(id), week, STR_ARG(s->m->courses[course].id));
}

/* Of the lines of program.md those of one course. */
struct stretch { size_t first, end; };

static struct stretch lines_of(const struct model *m, uint32_t course)
{
	struct stretch s = { 0, 0 };

	while (s.first < m->nslots && m->slots[s.first].course != course)
		s.first++;
	for (s.end = s.first; s.end < m->nslots && m->slots[s.end].course == course; s.end++)
		;
	return s;
}

static uint64_t spot_of(const struct model *m, const struct slot *k)
{
	return (uint64_t)(m->courses[k->course].quarter - 1) * m->weeks + k->week;
}

/* Behind the line before `at`, or before the first of the course: as late as may be, and
 * before it is asked for. */
static void add_before(struct seeker *s, struct stretch in, size_t at, uint64_t asked)
{
	uint64_t begins = (uint64_t)(s->m->courses[s->m->slots[in.first].course].quarter - 1) *
	    s->m->weeks;
	const struct slot *v = s->m->slots, *k = &v[at > in.first ? at - 1 : at];
	struct pos pos = { k->pos.file, at > in.first ? k->pos.line : k->pos.line - 1, 1 };
	uint32_t week = at > in.first ? k->week : 1;

	if (at < in.end && v[at].week > week + 1)
		week = begins + v[at].week > asked && begins + week < asked
		    ? (uint32_t)(asked - begins) - 1 : v[at].week - 1;
	if (week < k->week && at > in.first)
		week = k->week;
	add_line(s, k->course, pos, week);
}

/* When the first asks who is told with the finding. */
static uint64_t first_asked(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	uint64_t first = UINT64_MAX;

	for (size_t i = 0; i < d->nrelated; i++) {
		const struct slot *k = seek_slot(s, d->related[i].assignment);
		uint64_t spot = k ? spot_of(s->m, k) : UINT64_MAX;

		if (spot < first)
			first = spot;
	}
	return first;
}

/* Anywhere in a course that lacks hours, right before it is asked for at first. */
static void add_to_course(struct seeker *s, uint32_t course, uint64_t asked)
{
	struct stretch in = lines_of(s->m, course);
	size_t best = in.end;
	uint32_t places = 1;

	while (best > in.first && spot_of(s->m, &s->m->slots[best - 1]) >= asked)
		best--;
	add_before(s, in, best, asked);
	for (size_t i = in.end + 1; i-- > in.first && places < PLACES_MOST; )
		if (i != best) {
			add_before(s, in, i, asked);
			places++;
		}
}

/* Work in no course goes back to the course that lacks its hours; when none does, before
 * whatever else is found wrong. */
static void restore_line(struct seeker *s)
{
	const struct model *m = s->m;
	uint64_t asked = first_asked(s);

	for (size_t i = 0; i < m->nslots; i++)
		if ((!i || m->slots[i - 1].course != m->slots[i].course) &&
		    has_hours_finding(s, m->slots[i].course))
			add_to_course(s, m->slots[i].course, asked);
	for (size_t i = 0; i < s->f->n && s->turn < PLACES_MOST; i++) {
		const struct slot *k = s->f->v[i].waived ? NULL
		    : seek_slot(s, s->f->v[i].assignment);

		if (k)
			add_to_course(s, k->course, spot_of(m, k));
	}
}

/* Work that is optional and perhaps must not be. */
static void oblige(struct seeker *s, const struct slot *k)
{
	str line = seek_line(s, k->pos), word = STR(", optional");
	size_t at = str_find(line, word, 0);
	struct edit e = { EDIT_REPLACE, k->pos.file, k->pos.line, { 0 }, 0 };
	struct remedy *r;

	if (at >= line.n)
		return;
	e.text = str_format(s->arena, "%.*s%.*s", STR_ARG(str_sub(line, 0, at)),
	    STR_ARG(str_sub(line, at + word.n, line.n)));
	r = seek_add(s, &e, 1);
	r->say = str_format(s->arena, "take \"optional\" off %.*s in program.md",
	    STR_ARG(s->m->assignments[k->assignment].id));
}

static void oblige_course(struct seeker *s)
{
	uint32_t n = 0;

	for (size_t i = 0; i < s->m->nslots && n < OPTIONAL_MOST; i++) {
		const struct slot *k = &s->m->slots[i];

		if (!k->optional || k->group || k->assignment == NONE ||
		    pos_cmp(s->m->courses[k->course].pos, seek_finding(s)->pos))
			continue;
		oblige(s, k);
		n++;
	}
}

/* A line that names the wrong work: which of the two is it, and what is in no course? */
static void rename_line(struct seeker *s, struct pos pos, str wrong, str right)
{
	struct pos start = { pos.file, pos.line, 1 };
	struct remedy *r = seek_replace(s, start, wrong, right);

	if (r)
		r->say = str_format(s->arena, "write %.*s in place of %.*s in line %u",
		    STR_ARG(right), STR_ARG(wrong), pos.line);
}

static void seek_twin(struct seeker *s)
{
	const struct finding *d = seek_finding(s);

	for (size_t i = 0; i < s->f->n && s->turn < PLACES_MOST; i++) {
		const struct finding *o = &s->f->v[i];

		if (o->name != FINDING_NOT_LISTED || o->waived || !d->nrelated)
			continue;
		rename_line(s, d->related[0].pos, d->assignment, o->assignment);
		rename_line(s, d->pos, d->assignment, o->assignment);
	}
}

void seek_lines(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	const struct slot *k;

	if (d->name == FINDING_NOT_LISTED && d->assignment.n)
		restore_line(s);
	else if (d->name == FINDING_HOURS_UNDER)
		oblige_course(s);
	else if (d->name == FINDING_LISTED_TWICE)
		seek_twin(s);
	k = d->name == FINDING_OPTIONAL_TEACHER && d->wrong ? seek_slot_of(s, d->wrong->mover)
	    : NULL;
	if (k && !k->group)
		oblige(s, k);
}
