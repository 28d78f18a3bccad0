#include "check/settle_sheet.h"

/* Lines apart of which two belong to one stretch: a step may go on over some. */
enum { STRETCH_GAP = 4 };

bool settle_waived(const struct waivers *ws, const struct finding *d)
{
	return waivers_find(ws, d->name, d->pos, d->assignment, d->skill) != NONE;
}

/* Whether a repair writes that path: "write ../pictures/bench.png if that is what is meant" */
static bool names_path(str repair, str path)
{
	size_t from = sizeof "write ../" - 1;

	return str_starts(repair, STR("write ../")) &&
	    str_starts(str_sub(repair, from, repair.n), path) &&
	    str_starts(str_sub(repair, from + path.n, repair.n), STR(" if"));
}

/* A picture that is not there is told once for all that show it, and one that nobody shows
 * is told with the name that was likely meant for it. */
void settle_pictures(const struct model *m, const struct waivers *ws,
    struct findings *f, uint32_t at)
{
	const struct finding *d = &f->v[at];

	for (size_t i = 0; i < f->n; i++) {
		const struct finding *o = &f->v[i];
		bool same = i > at && o->name == d->name && str_eq(o->message, d->message);
		bool meant = o->name == FINDING_UNUSED_PICTURE &&
		    o->pos.file < m->sources->n &&
		    names_path(d->repair, m->sources->v[o->pos.file].path);

		if ((!same && !meant) || settle_waived(ws, o))
			continue;
		finding_take(f, &f->v[at], &f->v[i]);
	}
}

/* Members of an assignment that hang on nothing may all have hung on one. */
void settle_floating(const struct waivers *ws, struct findings *f, size_t at)
{
	struct finding *d = &f->v[at];

	for (size_t i = at + 1; i < f->n; i++)
		if (f->v[i].name == d->name && str_eq(f->v[i].assignment, d->assignment) &&
		    !settle_waived(ws, &f->v[i]))
			finding_take(f, d, &f->v[i]);
}

/* A drawing that cannot be made is told with what is wrong in its block. */
void settle_drawing(const struct waivers *ws, struct findings *f, size_t at)
{
	struct finding *d = &f->v[at];

	for (size_t i = 0; i < f->n; i++) {
		struct finding *o = &f->v[i];

		if (i == at || o->name != d->name || pos_cmp(o->pos, d->pos) ||
		    !str_starts(o->message, STR("this drawing cannot be made")) ||
		    settle_waived(ws, d) || settle_waived(ws, o))
			continue;
		finding_take(f, d, o);
	}
}

/* Where a weld cannot be, which way it goes is not asked. */
void settle_position(const struct waivers *ws, struct findings *f, size_t at)
{
	struct finding *d = &f->v[at];

	for (size_t i = 0; i < f->n; i++)
		if (f->v[i].name == FINDING_MISSING_PROGRESSION &&
		    !pos_cmp(f->v[i].pos, d->pos) && !settle_waived(ws, &f->v[i]))
			finding_take(f, d, &f->v[i]);
}

/* Lines of a stretch that have no meaning where they stand are told once. */
void settle_stretch(const struct waivers *ws, struct findings *f, size_t at)
{
	struct finding *d = &f->v[at];
	uint32_t last = d->pos.line;

	for (size_t i = at + 1; i < f->n; i++) {
		struct finding *o = &f->v[i];

		if (o->name != d->name || o->pos.file != d->pos.file ||
		    !str_eq(o->assignment, d->assignment) ||
		    o->pos.line <= last || o->pos.line - last > STRETCH_GAP ||
		    !str_eq(o->message, d->message) || !str_eq(o->repair, d->repair) ||
		    settle_waived(ws, o))
			continue;
		last = o->pos.line;
		finding_take(f, d, o);
	}
}

/* The only finding by a name about an assignment that nothing else explains; NONE. */
static uint32_t only_one(const struct findings *f, const struct waivers *ws,
    enum finding_name name, str assignment)
{
	uint32_t hit = NONE;

	for (uint32_t i = 0; i < f->n; i++) {
		const struct finding *d = &f->v[i];

		if (d->name != name || !str_eq(d->assignment, assignment))
			continue;
		if (hit != NONE || settle_waived(ws, d) || !str_starts(d->repair, STR("add ")))
			return NONE;
		hit = i;
	}
	return hit;
}

/* One test without a grade and one grade without a test are one line by two names. */
void settle_tests(const struct model *m, const struct waivers *ws, struct findings *f,
    size_t at)
{
	struct finding *d = &f->v[at];
	uint32_t who = map_find(m->assignment_by_id, d->assignment);
	uint32_t test = only_one(f, ws, d->name, d->assignment);
	uint32_t grade = only_one(f, ws, FINDING_GRADE_WITHOUT_TEST, d->assignment);
	const struct assignment *a;
	str names[2] = { 0 };

	if (who == MAP_NONE || test != at || grade == NONE)
		return;
	a = &m->assignments[who];
	for (size_t i = 0; i < a->ncriteria; i++)
		if (!pos_cmp(a->criteria[i].pos, d->pos))
			names[0] = a->criteria[i].name;
	for (size_t i = 0; i < a->ngrades; i++)
		if (!pos_cmp(a->grades[i].pos, f->v[grade].pos))
			names[1] = a->grades[i].name;
	finding_repair(f, d, "name both lines alike, \"%.*s\" or \"%.*s\"; or add a Grading "
	    "line for the one and an Acceptance line for the other", STR_ARG(names[0]),
	    STR_ARG(names[1]));
	finding_take(f, d, &f->v[grade]);
}

/* A step that names other amperes than a Current that its electrode does not take: the
 * Current is the slip. */
void settle_current(const struct waivers *ws, struct findings *f, size_t at)
{
	const struct finding *d = &f->v[at];

	for (size_t i = 0; i < f->n; i++) {
		const struct finding *o = &f->v[i];

		if (o->name != FINDING_TEXT_DISAGREES || !o->nrelated ||
		    !str_eq(o->assignment, d->assignment) ||
		    o->related[0].pos.file != d->pos.file ||
		    o->related[0].pos.line != d->pos.line || settle_waived(ws, o))
			continue;
		finding_take(f, &f->v[at], &f->v[i]);
	}
}

/* Whether a finding asks for another week of an assignment within its quarter. */
static bool asks_for_week(const struct model *m, const struct finding *d, const struct slot *s)
{
	if (d->name == FINDING_PRACTICE_TOO_CLOSE)
		return s->week < m->weeks &&
		    str_eq(d->assignment, m->assignments[s->assignment].id);
	return d->wrong && d->wrong->mover == s->assignment && m->weeks &&
	    d->wrong->week / m->weeks + 1 == m->courses[s->course].quarter;
}

/* The week of a line was not read, and that of the line above is only taken: what another
 * week of its quarter mends is not certain, and told with the week. */
void settle_week(const struct model *m, const struct waivers *ws, struct findings *f,
    size_t at)
{
	struct pos pos = f->v[at].pos;

	for (size_t k = 0; k < m->nslots; k++) {
		const struct slot *s = &m->slots[k];

		if (s->pos.file != pos.file || s->pos.line != pos.line || s->assignment == NONE)
			continue;
		for (size_t i = 0; i < f->n; i++) {
			const struct finding *d = &f->v[i];

			if (d->name == FINDING_COUNT || settle_waived(ws, d) ||
			    finding_info(d->name)->class == CLASS_SAFETY ||
			    !asks_for_week(m, d, s))
				continue;
			finding_take(f, &f->v[at], &f->v[i]);
		}
	}
}
