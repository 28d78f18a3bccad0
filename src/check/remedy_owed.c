/* Lines of an assignment that it owes. */
#include "check/remedy_seek.h"

#include "base/buf.h"

/* Values tried of one fact. */
enum { VALUES_MOST = 12 };

/* Adds a fact below the heading of the assignment. */
static struct remedy *add_fact(struct seeker *s, const struct assignment *a, str key,
    str value)
{
	struct edit e = { EDIT_ADD, a->pos.file, a->pos.line, { 0 }, 0 };
	struct remedy *r;

	e.text = str_format(s->arena, "\n- **%.*s:** %.*s", STR_ARG(key), STR_ARG(value));
	r = seek_add(s, &e, 1);
	r->names_cause = true;
	r->say = str_format(s->arena, "add \"- **%.*s:** %.*s\" if that is what is meant",
	    STR_ARG(key), STR_ARG(value));
	return r;
}

static void seek_kinds(struct seeker *s, const struct assignment *a)
{
	for (int k = 0; k < KIND_COUNT; k++)
		add_fact(s, a, STR("Kind"), kind_word((enum kind)k));
}

/* A value of a fact, and how many sheets have it. */
struct value {
	str text;
	size_t n;
};

/* The first of those that most sheets have; each is given once. */
static str take_usual(struct value *v, size_t n)
{
	size_t best = 0;
	str text;

	for (size_t i = 1; i < n; i++)
		if (v[i].n > v[best].n)
			best = i;
	text = v[best].text;
	v[best].n = 0;
	return text;
}

/* What other work says of a fact, the usual first. */
static void seek_value(struct seeker *s, const struct assignment *a, str key)
{
	struct value *v = arena_array(s->arena, s->m->nassignments, sizeof *v);
	size_t n = 0;

	for (uint32_t i = 0; key.n && i < s->m->nassignments; i++) {
		str value = seek_said(s, &s->m->assignments[i], key);
		size_t k = 0;

		while (k < n && !str_eq(v[k].text, value))
			k++;
		if (!value.n)
			continue;
		v[k].text = value;
		v[k].n++;
		n += k == n;
	}
	for (size_t i = 0; i < n && i < VALUES_MOST; i++)
		add_fact(s, a, key, take_usual(v, n));
}

/* A line of Grading that brings the total to 100. */
static void seek_weight(struct seeker *s, const struct assignment *a)
{
	uint32_t total = seek_total(a);
	struct edit e;

	if (!a->ngrades || total >= 100)
		return;
	e = (struct edit){ EDIT_ADD, a->pos.file, a->grades[a->ngrades - 1].pos.line,
		str_format(s->arena, "- **One line more:** %u", 100 - total), 0 };
	seek_add(s, &e, 1)->names_cause = true;
}

/* A line behind the last of Grading or of Acceptance. */
static void add_result(struct seeker *s, struct pos last, const char *section, str name,
    str text)
{
	struct edit e = { EDIT_ADD, last.file, last.line, { 0 }, 0 };
	struct remedy *r;

	e.text = str_format(s->arena, "- **%.*s:** %.*s", STR_ARG(name), STR_ARG(text));
	r = seek_add(s, &e, 1);
	r->names_cause = true;
	r->say = str_format(s->arena, "add \"%.*s\" under %s", STR_ARG(e.text), section);
}

static bool all_must_pass(const struct assignment *a)
{
	for (size_t i = 0; i < a->ngrades; i++)
		if (!a->grades[i].must_pass)
			return false;
	return true;
}

/* A test that counts nowhere counts for what the weights lack. */
static void seek_grade(struct seeker *s, const struct assignment *a)
{
	struct pos pos = seek_finding(s)->pos;
	uint32_t total = seek_total(a);

	for (size_t i = 0; a->ngrades && total < 100 && i < a->ncriteria; i++)
		if (!pos_cmp(a->criteria[i].pos, pos))
			add_result(s, a->grades[a->ngrades - 1].pos, "Grading",
			    a->criteria[i].name, str_format(s->arena, "%u%s", 100 - total,
			    all_must_pass(a) ? ", must pass" : ""));
}

/* What other work asks of a test that is graded here and asked for nowhere. */
static void seek_criterion(struct seeker *s, const struct assignment *a)
{
	str name = { 0 }, seen[VALUES_MOST];
	size_t n = 0;

	for (size_t i = 0; i < a->ngrades; i++)
		if (!pos_cmp(a->grades[i].pos, seek_finding(s)->pos))
			name = a->grades[i].name;
	for (size_t i = 0; name.n && a->ncriteria && i < s->m->nassignments; i++) {
		const struct assignment *o = &s->m->assignments[i];

		for (size_t k = 0, same; k < o->ncriteria && n < VALUES_MOST; k++) {
			for (same = 0; same < n && !str_eq(seen[same], o->criteria[k].text); )
				same++;
			if (same < n || !str_eq(o->criteria[k].name, name))
				continue;
			seen[n++] = o->criteria[k].text;
			add_result(s, a->criteria[a->ncriteria - 1].pos, "Acceptance", name,
			    o->criteria[k].text);
		}
	}
}

/* "PS-03 (quarter 1, week 2) uses the bandsaw, which no safety card signs off" */
static str unsigned_machine(const struct finding *d)
{
	str from = STR(" uses the "), to = STR(", which no safety card");
	size_t at = str_find(d->message, from, 0) + from.n;
	size_t end = str_find(d->message, to, 0);

	return d->name == FINDING_MACHINE_BEFORE_SIGN_OFF && end < d->message.n
	    ? str_sub(d->message, at, end) : (str){ 0 };
}

/* All machines that no card signs off, on a card that has none at all. */
static void seek_card(struct seeker *s)
{
	struct buf list = { .arena = s->arena };

	for (size_t i = 0; i < s->f->n; i++) {
		str machine = unsigned_machine(&s->f->v[i]);

		if (machine.n && !s->f->v[i].waived)
			buf_addf(&list, "%s%.*s", list.n ? ", " : "", STR_ARG(machine));
	}
	for (uint32_t i = 0; i < s->m->nassignments && s->turn < VALUES_MOST; i++) {
		const struct assignment *a = &s->m->assignments[i];

		if (a->kind != KIND_SAFETY || seek_said(s, a, STR("Machines")).n)
			continue;
		add_fact(s, a, STR("Machines"), buf_str(&list))->say = str_format(s->arena,
		    "add \"- **Machines:** %.*s\" to the safety assignment that signs them off, "
		    "such as %.*s", STR_ARG(buf_str(&list)), STR_ARG(a->id));
	}
}

void seek_owed(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	const struct assignment *a = seek_assignment(s);

	if (unsigned_machine(d).n)
		seek_card(s);
	if (!a || a->pos.file != d->pos.file)
		return;
	if (d->name == FINDING_WEIGHTS_NOT_100)
		seek_weight(s, a);
	else if (d->name == FINDING_TEST_WITHOUT_GRADE)
		seek_grade(s, a);
	else if (d->name == FINDING_GRADE_WITHOUT_TEST)
		seek_criterion(s, a);
	if (d->name != FINDING_MISSING_FACT)
		return;
	if (str_starts(d->message, STR("the fact Kind ")))
		seek_kinds(s, a);
	else if (str_ends(d->message, STR(" says no process")))
		seek_value(s, a, STR("Process"));
	else if (str_starts(d->message, STR("the fact ")))
		seek_value(s, a, str_sub(d->message, 9, str_find(d->message, STR(" is owed"), 0)));
}
