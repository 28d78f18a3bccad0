#include "check/settle.h"

#include "base/buf.h"
#include "check/settle_sheet.h"
#include "model/credit.h"

/* By assignment, the unmet need that proposes to move it, by index + 1. Of several the
 * first found: the others are other causes. */
static uint32_t *index_moves(struct arena *scratch, const struct model *m,
    const struct waivers *ws, const struct findings *f)
{
	uint32_t *by = NULL;

	for (size_t i = 0; i < f->n; i++) {
		const struct finding *d = &f->v[i];

		if (d->name != FINDING_UNTAUGHT_SKILL || !d->wrong || settle_waived(ws, d))
			continue;
		if (!by)
			by = arena_array(scratch, m->nassignments, sizeof *by);
		if (!by[d->wrong->mover])
			by[d->wrong->mover] = (uint32_t)i + 1;
	}
	return by;
}

/* Whether a move to the end of a week puts two lines the right way round. */
static bool mends(const struct standing_wrong *move, const struct standing_wrong *two)
{
	if (move->mover == two->second)
		return move->week >= two->first_week;
	return move->mover == two->first && move->week < two->second_week;
}

/* The need whose move mends a finding of a rule, NONE. */
static uint32_t mended_by(const struct findings *f, const uint32_t *by,
    const struct waivers *ws, const struct finding *d)
{
	const struct standing_wrong *w = d->wrong;
	uint32_t sides[2];

	if (!w || w->first == w->second || finding_info(d->name)->class == CLASS_SAFETY ||
	    settle_waived(ws, d))
		return NONE;
	sides[0] = by[w->second];
	sides[1] = by[w->first];
	for (size_t i = 0; i < 2; i++)
		if (sides[i] && mends(f->v[sides[i] - 1].wrong, w))
			return sides[i] - 1;
	return NONE;
}

/* Assignments in no course that are looked at. */
enum { UNLISTED_MOST = 200 };

/* A course: what its work takes by plain addition, -1 where optional work or a choice
 * makes that open, the same without the optional work, -1 where a choice makes that open,
 * and its finding about hours, by index + 1. */
struct course_hours {
	double sum_h, must_h;
	uint32_t finding;
};

static str place_key(struct arena *scratch, struct pos pos)
{
	return str_format(scratch, "%u %u", pos.file, pos.line);
}

static struct course_hours *add_up(struct arena *scratch, const struct model *m,
    const struct waivers *ws, const struct findings *f)
{
	struct course_hours *v = arena_array(scratch, m->ncourses, sizeof *v);
	struct map *at = map_new(scratch, false);

	for (size_t i = 0; i < m->nslots; i++) {
		const struct slot *s = &m->slots[i];

		if (s->optional || s->group)
			v[s->course].sum_h = -1;
		else if (s->assignment != NONE && v[s->course].sum_h >= 0)
			v[s->course].sum_h += m->assignments[s->assignment].hours;
		if (s->group)
			v[s->course].must_h = -1;
		else if (!s->optional && s->assignment != NONE && v[s->course].must_h >= 0)
			v[s->course].must_h += m->assignments[s->assignment].hours;
	}
	for (uint32_t c = 0; c < m->ncourses; c++)
		map_add(at, place_key(scratch, m->courses[c].pos), c);
	for (uint32_t i = 0; i < f->n; i++) {
		const struct finding *d = &f->v[i];
		uint32_t c = d->name == FINDING_HOURS_OVER || d->name == FINDING_HOURS_UNDER
		    ? map_find(at, place_key(scratch, d->pos)) : MAP_NONE;

		if (c != MAP_NONE && !settle_waived(ws, d))
			v[c].finding = i + 1;
	}
	return v;
}

static bool fits(const struct course *c, double h)
{
	/* As rule_time.c judges it. */
	return h <= c->lab_hours + 1e-6 && h >= c->lab_hours * 0.85 - 1e-6;
}

/* The only course, of one quarter or (0) of all, that lacks just these hours; NONE. */
static uint32_t course_that_lacks(const struct model *m, const struct course_hours *v,
    const struct findings *f, uint32_t quarter, double h)
{
	uint32_t hit = NONE;

	for (uint32_t c = 0; c < m->ncourses; c++) {
		if (!v[c].finding || v[c].sum_h < 0 || (quarter && m->courses[c].quarter !=
		    quarter) || f->v[v[c].finding - 1].name != FINDING_HOURS_UNDER ||
		    !fits(&m->courses[c], v[c].sum_h + h))
			continue;
		if (hit != NONE)
			return NONE;
		hit = c;
	}
	return hit;
}

static void take_course(struct findings *f, struct course_hours *v, uint32_t course,
    uint32_t at)
{
	finding_take(f, &f->v[at], &f->v[v[course].finding - 1]);
	v[course].finding = 0;
}

static const struct slot *line_of(const struct model *m, uint32_t who)
{
	for (size_t i = 0; i < m->nslots; i++)
		if (m->slots[i].assignment == who)
			return &m->slots[i];
	return NULL;
}

static void say_lacks(const struct model *m, struct findings *f, uint32_t at, uint32_t course)
{
	finding_repair(f, &f->v[at], "%.*s; %.*s lacks its hours", STR_ARG(f->v[at].repair),
	    STR_ARG(m->courses[course].id));
}

/* A line that a need moves away takes its hours along, from the course that is too full
 * to the one that lacks them. */
static void settle_move(const struct model *m, struct findings *f, struct course_hours *v,
    uint32_t at)
{
	const struct standing_wrong *w = f->v[at].wrong;
	uint32_t quarter = m->weeks ? (uint32_t)(w->week / m->weeks) + 1 : 0;
	const struct slot *line = line_of(m, w->mover);
	double h = m->assignments[w->mover].hours;
	uint32_t from, to;

	if (!line || !quarter)
		return;
	from = line->course;
	to = course_that_lacks(m, v, f, quarter, h);
	/* Within its quarter a line stays in its course, unless another lacks it. */
	if (to == NONE && m->courses[from].quarter == quarter)
		return;
	if (v[from].finding && f->v[v[from].finding - 1].name == FINDING_HOURS_OVER &&
	    v[from].sum_h >= 0 && v[from].sum_h - h <= m->courses[from].lab_hours + 1e-6)
		take_course(f, v, from, at);
	if (to == NONE || to == from)
		return;
	take_course(f, v, to, at);
	say_lacks(m, f, at, to);
}

static bool gives(const struct assignment *a, const struct need *need)
{
	for (size_t i = 0; i < need->n; i++)
		for (size_t k = 0; k < a->nteaches; k++)
			if (need->v[i].skill != NONE && a->teaches[k].skill == need->v[i].skill &&
			    a->teaches[k].level >= need->v[i].level)
				return true;
	return false;
}

/* Whether work of an earlier week gives it, whoever does that work. */
static bool is_given_before(const struct model *m, const struct need *need,
    const struct slot *line)
{
	uint32_t quarter = m->courses[line->course].quarter;

	for (size_t i = 0; i < m->nslots; i++) {
		const struct slot *s = &m->slots[i];
		uint32_t q = m->courses[s->course].quarter;

		if (s->assignment != NONE && (q < quarter || (q == quarter && s->week <
		    line->week)) && gives(&m->assignments[s->assignment], need))
			return true;
	}
	return false;
}

/* Whether a line for `who` in a course, before the assignment that asks, meets the need
 * that stands at pos: nothing before it does, and what `who` itself needs comes earlier. */
static bool would_meet(const struct model *m, uint32_t who, uint32_t course, str asker,
    struct pos pos)
{
	const struct assignment *late = &m->assignments[who], *as;
	uint32_t id = map_find(m->assignment_by_id, asker);
	const struct need *need = NULL;
	const struct slot *line;

	if (id == MAP_NONE)
		return false;
	as = &m->assignments[id];
	for (size_t i = 0; i < as->nneeds && !need; i++)
		if (!pos_cmp(as->needs[i].pos, pos))
			need = &as->needs[i];
	/* The lines of program.md are looked through only for what it does teach. */
	line = need && gives(late, need) ? line_of(m, id) : NULL;
	if (!line || m->courses[line->course].quarter < m->courses[course].quarter ||
	    is_given_before(m, need, line))
		return false;
	for (size_t i = 0; i < late->nneeds; i++)
		if (!is_given_before(m, &late->needs[i], line))
			return false;
	return true;
}

/* What others taught later was lost as well, with the line that a course lacks. */
static void take_needs(const struct model *m, const struct waivers *ws, struct findings *f,
    uint32_t at, uint32_t course)
{
	struct finding *lost = &f->v[at];
	uint32_t who = map_find(m->assignment_by_id, lost->assignment);

	for (size_t i = 0; i < f->n; i++) {
		const struct finding *d = &f->v[i];
		bool met = d->name == FINDING_UNTAUGHT_SKILL && !settle_waived(ws, d) &&
		    would_meet(m, who, course, d->assignment, d->pos);

		for (size_t k = 0; met && k < d->nrelated; k++)
			met = would_meet(m, who, course, d->related[k].assignment,
			    d->related[k].pos);
		if (!met)
			continue;
		if (lost->level != LEVEL_ERROR) {
			lost->message = str_format(f->arena, "%.*s; %.*s needs what it teaches",
			    STR_ARG(lost->message), STR_ARG(d->assignment));
			finding_repair(f, lost, "give %.*s a line in program.md before %.*s",
			    STR_ARG(lost->assignment), STR_ARG(d->assignment));
		}
		finding_take(f, lost, &f->v[i]);
	}
}

/* An assignment in no course that others need: the course that lacks its hours lost it. */
static void settle_unlisted(const struct model *m, const struct waivers *ws,
    struct findings *f, struct course_hours *v, uint32_t at)
{
	uint32_t who = map_find(m->assignment_by_id, f->v[at].assignment), to;

	if (who == MAP_NONE)
		return;
	to = course_that_lacks(m, v, f, 0, m->assignments[who].hours);
	if (to == NONE)
		return;
	take_needs(m, ws, f, at, to);
	take_course(f, v, to, at);
	say_lacks(m, f, at, to);
}

/* Work that is optional and must not be: its course is short of just its hours. */
static void settle_optional(const struct model *m, struct findings *f,
    struct course_hours *v, uint32_t at)
{
	uint32_t who = f->v[at].wrong->mover, to;
	const struct slot *line = line_of(m, who);

	if (!line)
		return;
	to = line->course;
	if (!v[to].finding || v[to].must_h < 0 ||
	    f->v[v[to].finding - 1].name != FINDING_HOURS_UNDER ||
	    !fits(&m->courses[to], v[to].must_h + m->assignments[who].hours))
		return;
	take_course(f, v, to, at);
	say_lacks(m, f, at, to);
}

/* Lab hours that the credits of a course want beside its lecture hours; 0 when those are
 * too many already. */
static double lab_wanted(const struct course *c, const struct credit_rule *r)
{
	double lecture = c->lecture_hours > 0 ? c->lecture_hours / r->lecture_h : 0;

	return c->credits > lecture ? (c->credits - lecture) * r->lab_h : 0;
}

/* "88", "44.5" */
static str hours_text(struct arena *a, double h)
{
	struct buf b = { .arena = a };

	buf_add_real(&b, h, 1, false);
	return buf_str(&b);
}

/* Credits and assignments agree with each other and not with the hours written down: those
 * are the slip, and both findings one. */
static void settle_credits(const struct model *m, const struct waivers *ws,
    struct findings *f, const struct course_hours *v, size_t at)
{
	const struct finding *d = &f->v[at];
	struct credit_rule r;

	if (!credit_rule_parse(m->credit_rule, &r) || r.lecture_h <= 0 || r.lab_h <= 0)
		return;
	for (uint32_t i = 0; i < m->ncourses; i++) {
		const struct course *c = &m->courses[i];
		struct course right = *c, turned = *c;
		struct finding *hours = v[i].finding ? &f->v[v[i].finding - 1] : NULL;

		if (pos_cmp(c->pos, d->pos) || !hours || v[i].sum_h <= 0 || settle_waived(ws, d))
			continue;
		right.lab_hours = lab_wanted(c, &r);
		turned.lab_hours = c->lecture_hours;
		turned.lecture_hours = c->lab_hours;
		if (right.lab_hours > 0 && fits(&right, v[i].sum_h))
			finding_repair(f, hours, "write \"- **Lab hours:** %.*s\", which its "
			    "credits and its assignments ask for",
			    STR_ARG(hours_text(f->arena, right.lab_hours)));
		else if (fits(&turned, v[i].sum_h) && lab_wanted(&turned, &r) >
		    turned.lab_hours * 0.99 && lab_wanted(&turned, &r) <
		    turned.lab_hours * 1.01)
			finding_repair(f, hours, "let Lecture hours and Lab hours change places, "
			    "as its credits and its assignments ask");
		else
			return;
		finding_take(f, hours, &f->v[at]);
		return;
	}
}

static void settle_hours(struct arena *scratch, const struct model *m,
    const struct waivers *ws, struct findings *f)
{
	struct course_hours *v = NULL;
	uint32_t looked = 0;

	for (uint32_t i = 0; i < f->n; i++) {
		const struct finding *d = &f->v[i];
		bool moves = d->name == FINDING_UNTAUGHT_SKILL && d->wrong;
		bool optional = d->name == FINDING_OPTIONAL_TEACHER && d->wrong;
		bool unlisted = d->name == FINDING_NOT_LISTED && d->assignment.n &&
		    looked++ < UNLISTED_MOST;

		if ((!moves && !unlisted && !optional && d->name != FINDING_CREDITS_OFF) ||
		    settle_waived(ws, d))
			continue;
		if (!v)
			v = add_up(scratch, m, ws, f);
		if (d->name == FINDING_CREDITS_OFF) {
			settle_credits(m, ws, f, v, i);
			continue;
		}
		if (moves)
			settle_move(m, f, v, i);
		else if (optional)
			settle_optional(m, f, v, i);
		else
			settle_unlisted(m, ws, f, v, i);
	}
}

static void settle_order(const struct waivers *ws, struct findings *f, const uint32_t *by)
{
	for (size_t i = 0; i < f->n; i++) {
		uint32_t at = mended_by(f, by, ws, &f->v[i]);

		if (at == NONE)
			continue;
		finding_take(f, &f->v[at], &f->v[i]);
	}
}

/* Whether a path ends with the id as the name of its file: "assignments/SM-03.md". */
static bool is_file_of(str path, str id)
{
	str name = str_ends(path, STR(".md")) ? str_sub(path, 0, path.n - 3) : (str){ 0 };

	return id.n && name.n > id.n && name.p[name.n - id.n - 1] == '/' &&
	    str_eq_nocase(str_sub(name, name.n - id.n, name.n), id);
}

/* What keeps a file from giving its assignment. */
static bool is_of_file(enum finding_name name)
{
	return name == FINDING_EMPTY_FILE || name == FINDING_NOT_UTF8 ||
	    name == FINDING_NO_HEADING || name == FINDING_BAD_ID ||
	    name == FINDING_UNREADABLE_FILE || name == FINDING_CONTROL_CHARACTER;
}

/* A line of program.md that gives nothing: its file, when that is named for the id and
 * could not be read, is the cause; a translation of it is a consequence. */
static void settle_lost(const struct model *m, const struct waivers *ws, struct findings *f,
    size_t at)
{
	str id = f->v[at].assignment;

	for (size_t i = 0; i < f->n; i++) {
		struct finding *d = &f->v[i];

		if (d->name == FINDING_UNKNOWN_TRANSLATION && str_eq(d->assignment, id) &&
		    !settle_waived(ws, d))
			finding_take(f, &f->v[at], d);
	}
	for (size_t i = 0; i < f->n; i++) {
		struct finding *d = &f->v[i];

		if (!is_of_file(d->name) || d->pos.file >= m->sources->n ||
		    !is_file_of(m->sources->v[d->pos.file].path, id) || settle_waived(ws, d))
			continue;
		if (d->name == FINDING_EMPTY_FILE)
			finding_repair(f, d, "fill it in, or delete it and its line in "
			    "program.md");
		if (d->name == FINDING_BAD_ID)
			finding_repair(f, d, "begin it with \"%.*s:\", as the name of the file "
			    "says", STR_ARG(id));
		finding_take(f, d, &f->v[at]);
		return;
	}
}

/* Whether a finding proposes to write again what a line of a translation shows was lost. */
static bool asks_for(const struct finding *d, str section, str key)
{
	return section.n ? str_find(d->repair, section, 0) < d->repair.n
	    : key.n && str_find(d->repair, key, 0) < d->repair.n;
}

/* Lines of a translation that its original lost are told with what else the loss brings. */
static void settle_translated(struct arena *scratch, const struct waivers *ws,
    struct findings *f, size_t at)
{
	const struct finding *d = &f->v[at];
	size_t from = str_find_char(d->message, '"', 0) + 1;
	str word = str_sub(d->message, from, str_find_char(d->message, '"', from));
	bool whole = str_starts(d->message, STR("the original has no lines here"));
	str key = str_format(scratch, "**%.*s:**", STR_ARG(word));

	for (size_t i = 0; i < f->n; i++) {
		if (f->v[i].name == FINDING_COUNT || f->v[i].pos.file == d->pos.file ||
		    settle_waived(ws, &f->v[i]) ||
		    !str_eq(f->v[i].assignment, d->assignment) ||
		    !asks_for(&f->v[i], whole ? STR("## Acceptance") : (str){ 0 }, key))
			continue;
		finding_take(f, &f->v[i], &f->v[at]);
		return;
	}
}

/* A figure of the original that is wrong by itself, and that its translation has right. */
static bool is_figure_fault(enum finding_name name)
{
	return name == FINDING_METRIC_DISAGREES || name == FINDING_SIZE_SAID_TWICE ||
	    name == FINDING_TEXT_DISAGREES;
}

static void settle_figures(const struct waivers *ws, struct findings *f, size_t at)
{
	const struct finding *d = &f->v[at];

	for (size_t i = 0; d->nrelated && i < f->n; i++) {
		struct pos there = d->related[0].pos;

		if (!is_figure_fault(f->v[i].name) || f->v[i].pos.file != there.file ||
		    f->v[i].pos.line != there.line || settle_waived(ws, &f->v[i]))
			continue;
		finding_take(f, &f->v[i], &f->v[at]);
		return;
	}
}

/* A paragraph that is out of place because HTML stands in it is told by that. */
static void settle_html(const struct waivers *ws, struct findings *f, size_t at)
{
	for (size_t i = 0; i < f->n; i++)
		if (f->v[i].name == FINDING_NOT_UNDERSTOOD &&
		    !pos_cmp(f->v[i].pos, f->v[at].pos) && !settle_waived(ws, &f->v[i]))
			finding_take(f, &f->v[at], &f->v[i]);
}

static bool is_lost_translation(const struct finding *d)
{
	return d->name == FINDING_UNKNOWN_KEY && d->assignment.n &&
	    str_starts(d->message, STR("the original has no line"));
}

/* A handful at the most: a program with many such lines is being written. */
enum { LOST_MOST = 20 };

static void settle_files(struct arena *scratch, const struct model *m,
    const struct waivers *ws, struct findings *f)
{
	uint32_t seen = 0;

	for (size_t i = 0; m->sources && i < f->n && seen < LOST_MOST; i++) {
		enum finding_name name = f->v[i].name;
		bool translated = is_lost_translation(&f->v[i]);

		if (name == FINDING_COUNT || settle_waived(ws, &f->v[i]))
			continue;
		seen++;
		if (name == FINDING_UNKNOWN_ASSIGNMENT && f->v[i].assignment.n)
			settle_lost(m, ws, f, i);
		else if (translated)
			settle_translated(scratch, ws, f, i);
		else if (name == FINDING_TRANSLATION_DIFFERS)
			settle_figures(ws, f, i);
		else if (name == FINDING_RAW_HTML)
			settle_html(ws, f, i);
		else if (name == FINDING_NOT_UNDERSTOOD)
			settle_stretch(ws, f, i);
		else if (name == FINDING_BAD_DRAWING)
			settle_drawing(ws, f, i);
		else if (name == FINDING_POSITION_IMPOSSIBLE)
			settle_position(ws, f, i);
		else if (name == FINDING_FLOATING_PART)
			settle_floating(ws, f, i);
		else if (name == FINDING_MISSING_PICTURE)
			settle_pictures(m, ws, f, (uint32_t)i);
		else if (name == FINDING_TEST_WITHOUT_GRADE)
			settle_tests(m, ws, f, i);
		else if (name == FINDING_CURRENT_OUTSIDE_RANGE)
			settle_current(ws, f, i);
		else if (name == FINDING_WEEK_OUTSIDE)
			settle_week(m, ws, f, i);
		else
			seen--;
	}
}

static struct finding *not_listed(const struct waivers *ws, struct findings *f, str id)
{
	for (size_t i = 0; i < f->n; i++)
		if (f->v[i].name == FINDING_NOT_LISTED && str_eq(f->v[i].assignment, id) &&
		    !settle_waived(ws, &f->v[i]))
			return &f->v[i];
	return NULL;
}

/* What only work in no course would show or teach is told with that work. */
static void settle_shown(const struct model *m, const struct waivers *ws,
    struct findings *f)
{
	for (size_t i = 0; i < f->n; i++) {
		struct finding *d = &f->v[i], *lost;

		if (!finding_is_of_order(d->name) || !d->wrong ||
		    d->wrong->first != d->wrong->second || d->wrong->mover == NONE ||
		    settle_waived(ws, d))
			continue;
		lost = not_listed(ws, f, m->assignments[d->wrong->mover].id);
		if (!lost)
			continue;
		if (lost->level < d->level)
			finding_repair(f, lost, "give %.*s a line in program.md before %.*s",
			    STR_ARG(lost->assignment), STR_ARG(d->assignment));
		finding_take(f, lost, d);
	}
}

void findings_settle(struct arena *scratch, const struct model *m, struct findings *f)
{
	const struct waivers *ws = waivers_new(scratch, m);
	uint32_t *by = index_moves(scratch, m, ws, f);

	if (by)
		settle_order(ws, f, by);
	settle_shown(m, ws, f);
	settle_hours(scratch, m, ws, f);
	settle_files(scratch, m, ws, f);
	findings_sweep(f);
}
