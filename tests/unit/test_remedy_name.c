/* One word that is misspelt or goes by another name is one finding: single slips of a
 * program without a finding, then two slips, which stay two. */
#include "slip_bench.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

enum { SHEETS, SPANISH, CUSTOMS, PROGRAM, SHOP, SKILLS, FILES };

#define REST \
	"## Drawing\n\n```joint\nleg: 1/4 in\nlength: 8 in\n```\n\n" \
	"## Acceptance\n\n- **Visual:** D1.1-2020 welder test\n\n" \
	"## Grading\n\n- **Visual:** 100, must pass\n- **Pass mark:** 70\n\n" \
	"## Cautions\n\n- Hot metal and fume: hood, gloves and extraction.\n\n"

static const struct file_text program[FILES] = {
	[SHEETS] = { "assignments/all.md",
	    "# SF-01: Walk\n\n- **Kind:** safety\n- **Hours:** 4\n- **Station:** booth\n"
	    "- **Machines:** saw, grinder\n\n"
	    "## Teaches\n\n- saf.shop assessed by Quiz\n\n## Acceptance\n\n- **Quiz:** 80 % or "
	    "better\n- **Tour:** every exit shown\n\n"
	    "## Notes\n\nKeep the card.\n\n"
	    COUPON("SM-01", "Tee", "tee", "2F", "saw")
	    "## Needs\n\n- saf.shop assessed\n\n## Teaches\n\n- smaw.2f assessed by Visual\n\n"
	    REST
	    COUPON("SM-02", "Lap", "lap", "1F", "saw")
	    "## Needs\n\n- smaw.2f assessed\n\n## Teaches\n\n- smaw.1f assessed by Visual\n\n"
	    REST },
	[SPANISH] = { "assignments/es/all.md",
	    "# SF-01: Recorrido\n\n## Acceptance\n\n- **Quiz:** 80 % o m\u00e1s\n"
	    "- **Tour:** cada salida mostrada\n\n## Notes\n\nGuarde la tarjeta.\n\n"
	    "# Words\n\n- **Quiz:** Prueba\n- **Tour:** Recorrido\n"
	    "- **saw, grinder:** sierra, esmeril\n" },
	[CUSTOMS] = { "customs.md", "# Customs\n\n## Off\n\n- **flat before horizontal:** "
	    "the rack of 2F plates is at hand\n" },
	[PROGRAM] = { "program.md",
	    "# Valley: Welding\n\n- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n"
	    "### ORW 101: Stick\n\n- **Lab hours:** 24\n\n"
	    "1. SF-01, week 1\n2. SM-01, week 2\n3. SM-02, week 4\n" },
	[SHOP] = { "shop.md", SHOP_TEXT },
	[SKILLS] = { "skills.md", SKILLS_TEXT },
};

static void the_program_is_clean(void **state)
{
	(void)state;
	slip_check_clean(program, FILES);
}

static void one_slip_is_one_finding(void **state)
{
	static const struct slip_told rows[] = {
		{ { SHEETS, "## Teaches\n\n- smaw.2f", "## Learning goals\n\n- smaw.2f" }, 2,
		  FINDING_UNKNOWN_SECTION, "write \"Teaches\" if" },
		{ { SHEETS, "## Drawing", "## Sketch" }, 2, FINDING_UNKNOWN_SECTION,
		  "write \"Drawing\" if" },
		{ { SHEETS, "## Acceptance\n\n- **Visual", "## Good\n\n- **Visual" }, 2,
		  FINDING_UNKNOWN_SECTION, "write \"Acceptance\" if" },
		{ { SHEETS, "**Hours:** 10", "**Time:** 10" }, 2, FINDING_UNKNOWN_KEY,
		  "write \"Hours\" if" },
		{ { SHEETS, "**Process:**", "**Method:**" }, 2, FINDING_UNKNOWN_KEY,
		  "write \"Process\" if" },
		{ { SHEETS, "**Oven:**", "**Storage:**" }, 2, FINDING_UNKNOWN_KEY,
		  "write \"Oven\" if" },
		{ { SHEETS, "**Pass mark:**", "**Pas mrak:**" }, 2, FINDING_NO_PASS_MARK,
		  "write \"Pass mark\" under Grading in place of \"Pas mrak\"" },
		{ { SHEETS, "**Pass mark:**", "**Needed:**" }, 2, FINDING_NO_PASS_MARK,
		  "write \"Pass mark\" under Grading in place of \"Needed\"" },
		{ { SHEETS, "- **Visual:** D1.1-2020 welder", "- **Looks:** D1.1-2020 welder" }, 1,
		  FINDING_GRADE_WITHOUT_TEST, "add an Acceptance line \"Visual\"" },
		{ { SHEETS, "- smaw.2f assessed by", "- weld.hor assessed by" }, 2,
		  FINDING_UNKNOWN_SKILL, "write \"smaw.2f\" if" },
		{ { SHEETS, "# SM-01: Tee", "# Tee fillet" }, 2, FINDING_BAD_ID,
		  "write \"# SM-01: Tee fillet\" if" },
		{ { SKILLS, "**smaw.2f:**", "**weld.hor:**" }, 2, FINDING_NEVER_TAUGHT,
		  "write \"smaw.2f\" if" },
		{ { SKILLS, "**smaw.2f:**", "**smaw.1f:**" }, 2, FINDING_DUPLICATE_ID,
		  "write \"smaw.2f\" if" },
		{ { SHOP, "## Machine saw", "## Cutting metal" }, 2, FINDING_UNKNOWN_SECTION,
		  "write \"## Machine saw\" if" },
		{ { SHOP, "## Machine saw", "## Machine grinder" }, 2, FINDING_DUPLICATE_ID,
		  "write \"## Machine saw\" if" },
		{ { SHOP, "## Machine grinder", "## Machine saw" }, 2, FINDING_DUPLICATE_ID,
		  "write \"## Machine grinder\" if" },
		{ { CUSTOMS, "**flat before horizontal:**", "**easy ones first:**" }, 2,
		  FINDING_UNKNOWN_WORD, "write \"flat before horizontal\" if" },
		{ { CUSTOMS, "## Off", "## Not here" }, 2, FINDING_UNKNOWN_SECTION,
		  "write \"Off\" if" },
		/* A waiver that names the sheet; what it names covers nothing else. */
		{ { CUSTOMS, "## Off\n\n- **flat before horizontal:** the rack of 2F plates is at hand",
		    "## Waivers\n\n- **flat last, SM-01:** plates at hand; lead instructor; until "
		    "fall-2028" }, 2, FINDING_UNKNOWN_WORD, "write \"horizontal-before-flat\" if" },
		{ { SPANISH, "- **Tour:** cada", "- **Exits:** cada" }, 2, FINDING_UNKNOWN_KEY,
		  "write \"Tour\" if" },
		{ { SPANISH, "## Acceptance", "## Pruebas" }, 2, FINDING_UNKNOWN_SECTION,
		  "write \"Acceptance\" if" },
		{ { SPANISH, "# Words", "# Palabras" }, 2, FINDING_BAD_ID, "write \"Words\" if" },
		/* The original is wrong, and the translation shows it. */
		{ { SHEETS, "- **Tour:** every", "- **Tuor:** every" }, 3,
		  FINDING_UNTRANSLATED_WORDS, "write \"Tour\" in place of \"Tuor\"" },
	};

	(void)state;
	for (size_t i = 0; i < COUNT(rows); i++)
		slip_check(program, FILES, &rows[i]);
}

/* The word is as near to smaw.1f, which stands first in skills.md and is not missed, as to
 * smaw.2f, which its own asker teaches too. */
static void of_two_near_words_the_missed_one(void **state)
{
	static const struct slip_made v[] = {
		{ SHEETS, "- smaw.2f assessed by", "- smaw.f assessed by" },
		{ SHEETS, "- smaw.1f assessed by Visual", "- smaw.1f assessed by Visual\n"
		    "- smaw.2f practiced" },
	};
	size_t before;
	struct bench t = slip_bench(program, FILES, v, COUNT(v), &before);

	(void)state;
	if (before < 2 || t.f->n != 1 || !str_has(t.f->v[0].repair, "write \"smaw.2f\"")) {
		print_findings(&t);
		fail_msg("%zu before", before);
	}
	bench_free(&t);
}

/* Two faults that have nothing to do with one another. */
static void two_slips_are_two_findings(void **state)
{
	static const struct slip_made pairs[][2] = {
		{ { SHEETS, "**Hours:** 10", "**Time:** 10" },
		  { SHEETS, "## Drawing", "## Sketch" } },
		{ { SKILLS, "**smaw.2f:**", "**weld.hor:**" },
		  { SHOP, "## Machine saw", "## Cutting metal" } },
		{ { SHEETS, "# SM-01: Tee", "# Tee fillet" },
		  { SPANISH, "- **Tour:** cada", "- **Exits:** cada" } },
		{ { SHOP, "## Machine grinder", "## Machine saw" },
		  { CUSTOMS, "**flat before horizontal:**", "**easy ones first:**" } },
		/* Facts below one another are no lost section. */
		{ { SHEETS, "**Filler:**", "**Electrode:**" }, { SHEETS, "**Oven:**", "**Baked:**" } },
		{ { SHEETS, "**Machines:** saw, g", "**Tools used:** saw, g" },
		  { SHEETS, "**Station:**", "**Plaice:**" } },
		{ { SHEETS, "- **Machines:** saw\n", "- **Travel:** 6-8 xn\n- **Equipment:** saw\n" },
		  { 0 } },
		/* Each lacks its part of the translation. */
		{ { SPANISH, "- **Tour:** cada", "- **Exits:** cada" },
		  { SPANISH, "## Notes", "## Apuntes" } },
		{ { SPANISH, "- **Tour:** cada", "- **Exits:** cada" },
		  { SPANISH, "- **Quiz:** 80", "- **Test:** 80" } },
		/* What stood under the wrong heading shows when that is right. */
		{ { SHEETS, "## Drawing\n\n```joint\nleg", "## Sketch\n\n```joint\nlegg" },
		  { SKILLS, "**smaw.2f:**", "**weld.hor:**" } },
		{ { SHEETS, "**Oven:**", "**Storage:**" },
		  { SHEETS, "**Pass mark:**", "**Needed:**" } },
		{ { SHEETS, "**Process:**", "**Method:**" },
		  { SHEETS, "- **Material:** A36 plate\n- **Thickness:** 3/8 in\n- **Position:** 1F",
		    "- **Metal:** A36 plate\n- **Thickness:** 3/8 in\n- **Position:** 1F" } },
	};

	(void)state;
	slip_check_pairs(program, FILES, pairs, COUNT(pairs));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_program_is_clean),
		cmocka_unit_test(one_slip_is_one_finding),
		cmocka_unit_test(of_two_near_words_the_missed_one),
		cmocka_unit_test(two_slips_are_two_findings),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
