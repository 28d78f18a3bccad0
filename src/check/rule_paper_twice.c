/* Assignments that are too much alike. */
#include "check/rule_paper.h"

#include "base/buf.h"
#include "check/rule_joint.h"
#include "model/words.h"

/* Alike by a key; the first with each key is remembered. */
struct seen {
	struct map *first;       /* key -> assignment */
};

/* Letters and figures in lower case, so that dots and blanks make no difference. */
static str plain_words(struct arena *a, str s)
{
	char *p = arena_alloc(a, s.n);
	size_t n = 0;

	for (size_t i = 0; i < s.n; i++) {
		unsigned char c = (unsigned char)s.p[i];

		if (c >= 'A' && c <= 'Z')
			p[n++] = (char)(c | 0x20);
		else if (c >= 0x80 || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'))
			p[n++] = (char)c;
	}
	return (str){ p, n };
}

static void judge_title(struct rule_context *x, struct seen *s, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w], *b;
	str key = plain_words(x->scratch, a->title);
	uint32_t first = key.n ? map_add(s->first, key, w) : w;
	struct finding *d;

	if (first == w)
		return;
	b = &x->m->assignments[first];
	d = rule_report(x, FINDING_SAME_TITLE, a->pos, w,
	    "%.*s has the same title as %.*s: \"%.*s\"", STR_ARG(a->id), STR_ARG(b->id),
	    STR_ARG(a->title));
	finding_relate(x->f, d, b->pos)->assignment = b->id;
	finding_repair(x->f, d, "say in the title what sets them apart");
}

/* How the drawing prepares the edges, and what it makes of a lap. */
static void add_edges(struct buf *b, const struct joint_block *j)
{
	if (j && (j->preparation || j->marks.hole))
		buf_addf(b, " %u.%u", j->preparation, j->marks.hole);
}

static void add_weld(struct buf *b, const struct weld *w)
{
	buf_addf(b, "|%u %u %u %u ", (unsigned)w->process, (unsigned)w->joint,
	    (unsigned)w->at.position, (unsigned)w->at.progression);
	buf_add_real(b, w->t1_mm, 3, false);
	buf_addc(b, ' ');
	buf_add_real(b, w->t2_mm, 3, false);
	buf_addf(b, " %.*s/%.*s/%.*s/%.*s", STR_ARG(w->material1), STR_ARG(w->material2),
	    STR_ARG(w->run.text), STR_ARG(w->branch.text));
}

/* Everything by which two coupons are the same test: kind, welds with process, joint,
 * position, edges, thickness and metal, rods, backing, and what is looked at afterwards.
 * The written limits are left out: the same test by other limits is the same test. */
static str test_key(struct arena *a, const struct assignment *as)
{
	const struct plain_fact *backing = assignment_fact(as, STR("Backing"));
	struct buf b = { .arena = a };

	buf_addf(&b, "%u", (unsigned)as->kind);
	for (size_t i = 0; i < as->nwelds; i++) {
		add_weld(&b, &as->welds[i]);
		add_edges(&b, weld_block(as, i));
	}
	for (uint32_t i = 0; i < as->nfillers; i++)
		buf_addf(&b, "#%.*s", STR_ARG(as->fillers[i].class));
	if (backing)
		buf_addf(&b, "_%.*s", STR_ARG(backing->text));
	for (size_t i = 0; i < as->ncriteria; i++)
		buf_addf(&b, "!%.*s", STR_ARG(plain_words(a, as->criteria[i].name)));
	return buf_str(&b);
}

/* Branches of one choice may test the same: each student does only one of them. */
static bool share_choice(const struct rule_context *x, uint32_t a, uint32_t b)
{
	return x->view->units->of[a] == x->view->units->of[b];
}

/* Projects are built for their own sake and drills to be done again; what tests nothing
 * cannot test it twice. */
static bool is_test(const struct assignment *a)
{
	return a->nwelds && a->ncriteria && (a->kind == KIND_COUPON ||
	    a->kind == KIND_PRACTICE_TEST || a->kind == KIND_QUALIFICATION_TEST);
}

static void judge_test(struct rule_context *x, struct seen *s, uint32_t w)
{
	const struct assignment *a = &x->m->assignments[w], *b;
	uint32_t first;
	struct finding *d;

	if (!is_test(a))
		return;
	first = map_add(s->first, test_key(x->scratch, a), w);
	if (first == w || share_choice(x, first, w))
		return;
	b = &x->m->assignments[first];
	d = rule_report(x, FINDING_TESTS_TWICE, a->pos, w,
	    "%.*s tests what %.*s (%.*s) has tested", STR_ARG(a->id), STR_ARG(b->id),
	    STR_ARG(rule_place(x, first)));
	finding_cause(x->f, d, "both are a %.*s with the same process, joint, position, "
	    "thickness, metal, filler and tests", STR_ARG(kind_word(a->kind)));
	finding_relate(x->f, d, b->pos)->assignment = b->id;
	finding_repair(x->f, d, "let one of them test another position, thickness or "
	    "joint, or merge them");
}

void rule_paper_twice(struct rule_context *x)
{
	struct seen titles = { map_new(x->scratch, false) };
	struct seen tests = { map_new(x->scratch, false) };

	map_reserve(titles.first, x->o->nwalk);
	for (size_t i = 0; i < x->o->nwalk; i++) {
		judge_title(x, &titles, x->o->walk[i]);
		judge_test(x, &tests, x->o->walk[i]);
	}
}
