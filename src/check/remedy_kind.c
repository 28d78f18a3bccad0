/* Sheets whose Kind is perhaps not the one that is meant. */
#include "check/remedy_fact.h"

#include "check/rule_joint.h"

/* Sheets at odds with their titles that are tried for one finding. */
enum { KINDS_MOST = 3 };

static bool has_word(str s, str want)
{
	str word;

	while (str_word(&s, &word)) {
		if (word.n && (word.p[word.n - 1] == ':' || word.p[word.n - 1] == ','))
			word.n--;
		if (str_eq_nocase(word, want))
			return true;
	}
	return false;
}

/* What the title says of the kind; KIND_COUNT: nothing. */
static enum kind kind_titled(const struct assignment *a)
{
	static const char *const safety[] = { "safety", "sign-off", "sign off", NULL };

	if (says(a->title, "qualification test"))
		return KIND_QUALIFICATION_TEST;
	if (says(a->title, "practice test"))
		return KIND_PRACTICE_TEST;
	if (says_any(a->title, safety))
		return KIND_SAFETY;
	return has_word(a->title, STR("drill")) ? KIND_DRILL : KIND_COUNT;
}

/* Written work of which something is welded or cut is none, nor is a safety card. */
static enum kind kind_shown(const struct assignment *a)
{
	enum kind titled = kind_titled(a);

	if (titled < KIND_COUNT)
		return titled;
	return (a->kind == KIND_WRITTEN || a->kind == KIND_SAFETY) && a->nprocesses &&
	    a->npieces ? KIND_COUPON : KIND_COUNT;
}

/* A kind that was not understood is told as that. */
static void write_kind(struct seeker *s, const struct assignment *a, enum kind k, str why)
{
	if (k < KIND_COUNT && a->kind < KIND_COUNT && k != a->kind)
		seek_fact(s, a, "Kind", 0, kind_word(k), why);
}

static bool has_record(const struct assignment *a)
{
	return assignment_fact(a, STR("Witness")) || assignment_fact(a, STR("Range"));
}

/* A test without anything of its record whose title speaks of none is perhaps no test. */
void seek_kind(struct seeker *s, const struct assignment *a)
{
	enum kind titled = kind_titled(a);

	if (titled < KIND_COUNT)
		write_kind(s, a, titled, STR("as the title says"));
	else if (!has_record(a))
		write_kind(s, a, a->nprocesses ? KIND_COUPON : KIND_WRITTEN,
		    STR("or what else it is: its title speaks of no test"));
}

/* A card that is none or a test that is none is missed by other sheets, so that whichever
 * finding is looked at, the sheet is looked for among all. */
void seek_other_kinds(struct seeker *s)
{
	uint32_t n = 0;

	for (uint32_t i = 0; i < s->m->nassignments && n < KINDS_MOST; i++) {
		const struct assignment *a = &s->m->assignments[i];
		enum kind k = kind_shown(a);

		if (k == KIND_COUNT || k == a->kind)
			continue;
		write_kind(s, a, k, k == kind_titled(a) ? STR("as its title says")
		    : STR("for it is welded or cut"));
		n++;
	}
}
