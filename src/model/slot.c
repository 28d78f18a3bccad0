/* One line of a course: "SM-26, week 10, optional" or "one of GM-06, GM-07, week 9". */
#include "model/parts.h"

struct line {
	struct binder *b;
	const struct block *in;
	uint32_t *seen;
	uint32_t week;
	bool optional, choice;
	size_t first;            /* of this line's slots */
	bool read_any;           /* an id was there, known or not */
};

static void complain_unknown(struct line *l, struct said id)
{
	struct binder *b = l->b;
	struct finding *d;

	/* Where no file defines anything, that is one fault and not one a line. */
	if (!b->model->nassignments && b->nunknown) {
		finding_relate(b->f, &b->f->v[b->unknown[0].finding], said_pos(id))->label =
		    str_format(b->arena, "nor %.*s", STR_ARG(id.s));
		return;
	}
	d = complain(b, FINDING_UNKNOWN_ASSIGNMENT, said_pos(id),
	    "no file defines %.*s; this line gives nothing", STR_ARG(id.s));

	d->assignment = id.s;
	*ARENA_PUSH(b->arena, b->unknown, b->nunknown, b->unknown_cap) =
	    (struct unknown_id){ b->f->n - 1, b->model->nslots, { 0 } };
}

static bool is_listed(struct line *l, struct said id, uint32_t assignment)
{
	struct binder *b = l->b;
	struct finding *d;

	if (!l->seen[assignment])
		return false;
	d = complain(b, FINDING_LISTED_TWICE, said_pos(id),
	    "%.*s is listed twice; this one is left out", STR_ARG(id.s));
	d->assignment = b->model->assignments[assignment].id;
	finding_relate(b->f, d, b->model->slots[l->seen[assignment] - 1].pos)->label =
	    STR("the first counts");
	finding_repair(b->f, d, "delete one of the two");
	return true;
}

static void add_slot(struct line *l, struct said id)
{
	struct model *m = l->b->model;
	uint32_t assignment = map_find(m->assignment_by_id, id.s);
	struct slot *s;

	l->read_any = true;
	if (assignment == MAP_NONE)
		complain_unknown(l, id);
	else if (is_listed(l, id, assignment))
		return;
	s = ARENA_PUSH(l->b->arena, m->slots, m->nslots, m->slots_cap);
	s->assignment = assignment;
	s->pos = said_pos(id);
	if (assignment != MAP_NONE)
		l->seen[assignment] = (uint32_t)m->nslots;
}

bool same_title(str a, str b)
{
	str x, y;

	for (;;) {
		bool more = str_word(&a, &x);

		if (more != str_word(&b, &y))
			return false;
		if (!more)
			return true;
		if (!str_eq_nocase(x, y))
			return false;
	}
}

/* The bracket is a reading aid. Beside a choice it may say anything. */
static void check_title(struct line *l, struct said title)
{
	struct model *m = l->b->model;
	const struct slot *s;
	str right;

	if (m->nslots == l->first)
		return;
	s = &m->slots[m->nslots - 1];
	if (!l->choice && s->assignment == NONE)
		l->b->unknown[l->b->nunknown - 1].title = title.s;
	if (l->choice || s->assignment == NONE)
		return;
	right = m->assignments[s->assignment].title;
	if (same_title(title.s, right))
		return;
	finding_repair(l->b->f, complain(l->b, FINDING_STALE_TITLE, said_pos(title),
	    "\"%.*s\" is not the title of %.*s", STR_ARG(title.s),
	    STR_ARG(m->assignments[s->assignment].id)), "write (%.*s)", STR_ARG(right));
}

/* The week that a line of a course names; 0 for none or one that cannot be meant. */
static uint32_t week_named(const struct block *v)
{
	size_t at = str_find(v->text, STR("week "), 0), end = at + 5;
	uint32_t week;

	if ((v->kind != BLOCK_STEP && v->kind != BLOCK_BULLET) || at == v->text.n)
		return 0;
	while (end < v->text.n && v->text.p[end] >= '0' && v->text.p[end] <= '9')
		end++;
	return str_to_u32(str_sub(v->text, at + 5, end), &week) && week <= WEEKS_MOST
	    ? week : 0;
}

/* Lines beyond the quarter before its length is doubted, and one in so many. */
enum { BEYOND_LEAST = 3, BEYOND_SHARE = 4 };

/* Where many lines stand in weeks that the quarter does not have, its length is the slip:
 * told there once, with the lines as a list, and nothing is judged by it. */
static void widen_weeks(struct binder *b)
{
	const struct record_file *file = b->program;
	uint32_t beyond = 0, all = 0, last = 0, most = b->model->weeks;
	struct finding *d;

	b->program = NULL;
	for (size_t i = 0; i < file->n; i++) {
		uint32_t week = week_named(&file->v[i]);

		all += week > 0;
		beyond += week > most;
		last = week > last ? week : last;
	}
	if (beyond < BEYOND_LEAST || beyond * BEYOND_SHARE < all)
		return;
	d = complain(b, FINDING_WEEK_OUTSIDE, block_pos(b->weeks_in, 0),
	    "%u of %u lines stand in weeks after week %u, up to week %u; how long a quarter is "
	    "is left out", (unsigned)beyond, (unsigned)all, (unsigned)most, (unsigned)last);
	finding_repair(b->f, d, "write \"- **Weeks in a quarter:** %u\" or more, or choose "
	    "weeks from 1 to %u", (unsigned)last, (unsigned)most);
	d->scope = SCOPE_FILE;
	for (size_t i = 0; i < file->n; i++)
		if (week_named(&file->v[i]) > most)
			finding_relate(b->f, d, block_pos(&file->v[i], 0))->label =
			    file->v[i].text;
	b->model->weeks = 0;
}

static void read_week(struct line *l, struct said t)
{
	struct binder *b = l->b;
	uint32_t most = b->model->weeks, week;
	struct finding *d;

	if (str_to_u32(t.s, &week) && most && week > most && b->program) {
		widen_weeks(b);
		most = b->model->weeks;
	}
	if (!str_to_u32(t.s, &week)) {
		read_count(b, t, 1, most ? most : 60, &week);
	} else if (!week || (most && week > most)) {
		d = complain(b, FINDING_WEEK_OUTSIDE, said_pos(t),
		    "week %u is not within the quarter; that of the line above is taken",
		    (unsigned)week);
		if (most)
			finding_repair(b->f, d, "choose a week from 1 to %u",
			    (unsigned)most);
	} else {
		l->week = week;
	}
}

static void complain_part(struct line *l, struct said t)
{
	static const str known[] = { { "optional", 8 }, { "week", 4 } };
	struct said rest = t, first;
	struct finding *d;

	said_word(&rest, &first);
	d = complain(l->b, l->read_any ? FINDING_UNKNOWN_WORD : FINDING_BAD_ID,
	    said_pos(t),
	    l->read_any ? "\"%.*s\" is not known in a line of a course; it is left out"
	    : "\"%.*s\" does not look like an assignment; it is left out", STR_ARG(t.s));
	if (l->read_any)
		offer_likely(l->b, d, first.s, known, 2);
	if (!d->repair.n)
		finding_repair(l->b->f, d,
		    "write a line such as \"SM-20, week 3, optional\"");
}

/* The end of the bracket that opens at i: brackets inside a title nest. */
static size_t bracket_end(str s, size_t i)
{
	size_t depth = 0;

	for (; i < s.n; i++) {
		depth += s.p[i] == '(';
		depth -= s.p[i] == ')';
		if (!depth)
			break;
	}
	return i;
}

/* The words up to the next comma or bracket; a bracket at their end goes with them. */
static struct said next_part(struct said *rest, struct said *bracket)
{
	str s = rest->s;
	struct said part;
	size_t open = 0, next;

	while (open < s.n && s.p[open] != ',' && s.p[open] != ';' && s.p[open] != '(')
		open++;
	next = open;
	if (open < s.n && s.p[open] == '(')
		next = bracket_end(s, open);
	part = said_trim(said_sub(*rest, 0, open));
	*bracket = said_trim(said_sub(*rest, open + 1, next));
	*rest = said_trim(said_sub(*rest, next + 1, s.n));
	return part;
}

static void read_part(struct line *l, struct said t)
{
	struct binder *b = l->b;
	size_t used;

	said_skip(&t, STR("or"));
	if (said_skip(&t, STR("week"))) {
		read_week(l, t);
	} else if (str_eq_nocase(t.s, STR("optional"))) {
		l->optional = true;
	} else if (id_of_assignment(b->arena, t.s, &used).n && used == t.s.n &&
	    (l->choice || !l->read_any)) {
		add_slot(l, t);
	} else {
		complain_part(l, t);
	}
}

/* "one of GM-06 or GM-07": the word stands for a comma. */
static void read_alternatives(struct line *l, struct said t)
{
	for (;;) {
		size_t at = str_find(t.s, STR(" or "), 0);

		read_part(l, said_trim(said_sub(t, 0, at)));
		if (at == t.s.n)
			return;
		t = said_trim(said_sub(t, at + 4, t.s.n));
	}
}

/* What the whole line says, to each of its slots. */
static void finish(struct line *l)
{
	struct model *m = l->b->model;
	size_t n = m->nslots - l->first;
	const struct slot *before = l->first ? &m->slots[l->first - 1] : NULL;
	uint32_t line = before ? before->line + 1 : 1, group = 0;

	for (size_t i = 0; n > 1 && i < l->first && !group; i++)
		group = m->slots[l->first - 1 - i].group;
	for (size_t i = l->first; i < m->nslots; i++) {
		struct slot *s = &m->slots[i];

		s->course = (uint32_t)m->ncourses - 1;
		s->week = l->week;
		s->optional = l->optional;
		s->line = line;
		s->group = n > 1 ? group + 1 : 0;
	}
}

/* The week of the line above in this course; 1 for the first. */
static uint32_t inherited_week(const struct model *m)
{
	const struct slot *s = m->nslots ? &m->slots[m->nslots - 1] : NULL;

	return s && s->course + 1 == m->ncourses ? s->week : 1;
}

void slot_read(struct binder *b, const struct block *v, uint32_t *seen)
{
	struct line l = { .b = b, .in = v, .seen = seen, .first = b->model->nslots };
	struct said rest = said_all(v), bracket, part;

	l.week = inherited_week(b->model);
	if (said_skip(&rest, STR("one"))) {
		l.choice = said_skip(&rest, STR("of")) || said_skip(&rest, STR("of:"));
		if (!l.choice)
			rest = said_all(v);
	}
	while (rest.s.n) {
		part = next_part(&rest, &bracket);
		if (part.s.n)
			read_alternatives(&l, part);
		if (bracket.s.n)
			check_title(&l, bracket);
	}
	finish(&l);
}
