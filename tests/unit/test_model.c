/* A whole program, read without a complaint, field by field; and kind reading. */
#include "model_bench.h"

#define IN 25.4

static const char sm04[] =
    "# SM-04: Tee fillet 2F, three passes\n\n"
    "- **Kind:** coupon\n- **Hours:** 16\n- **Station:** booth\n- **Process:** SMAW\n"
    "- **Joint:** tee\n- **Material:** A36 plate\n- **Thickness:** 3/8 in\n"
    "- **Position:** 2F\n- **Filler:** E7018, 1/8 in\n- **Current:** DC+, 110-140 A\n"
    "- **Oven:** 4 h out\n- **Attempts:** 3\n\n"
    "## Needs\n\n- smaw.1f practiced\n"
    "- one of: fit.tack practiced, fit.square introduced\n\n"
    "## Teaches\n\n- smaw.2f assessed by Visual, Fillet break\n"
    "- smaw.lowh assessed by Oven log\n- test.break introduced\n\n"
    "## Pieces\n\n- web: 1 of 3/8 x 3 x 8 in A36 plate, sawn\n"
    "- base: 1 of 3/8 x 4 x 8 in A36 plate, sawn\n\n"
    "## Drawing\n\n```joint\njoint: tee\nleg: 5/16 in\ngap: 0 to 1/16 in\nsides: one\n"
    "passes: 3\nrestart: near mid-length\n```\n\n"
    "## Procedure\n\n"
    "1. Grind the mill scale 1 in back from the joint on both pieces.\n"
    "2. **Stop, fit-up:** gap and squareness checked before tacking off.\n"
    "3. Weld it.\n\n"
    "## Acceptance\n\n- **Visual:** D1.1-2020 welder test\n"
    "- **Fillet break:** 1 of A, D1.1-2020\n"
    "- **Oven log:** filled in, no electrode out longer than the limit\n\n"
    "## Grading\n\n- **Fit-up:** 20\n- **Visual:** 50, must pass\n"
    "- **Fillet break:** 30, must pass\n- **Pass mark:** 70\n\n"
    "## Cautions\n\nLow-hydrogen slag pops off hot: glasses under the hood.\n\n"
    "## Instructor only\n\nTypical first-attempt fault: arc too long at the toes.\n";

static const char program[] =
    "# Orehollow Valley Community College: Welding Technology\n\n"
    "- **Catalog year:** 2026-27\n- **Weeks in a quarter:** 11\n"
    "- **Terms:** Fall, Winter, Spring, Fall, Winter, Spring\n"
    "- **Entry:** quarter 1 in Fall; quarter 2, then 1, with smaw.1f practiced\n"
    "- **Credential:** Certificate, quarters 1-2, outcomes PO1\n"
    "- **Credential:** Associate, quarters 1-2, all\n"
    "- **Credit rule:** 1 credit = 11 lecture hours or 22 lab hours\n"
    "- **Hour:** 50 minutes\n\n"
    "## Quarter 1\n\n- **Starts:** 2026-09-21\n\n"
    "### ORW 101: Shop Foundations\n\n"
    "- **Credits:** 3\n- **Lecture hours:** 11\n- **Lab hours:** 44\n\n"
    "1. SM-04, week 2 (Tee fillet 2F, three passes)\n"
    "2. SM-05\n"
    "3. one of SM-06, SM-07, week 9\n"
    "7. SM-08, week 10, optional (Extra (with a bracket))\n\n"
    "## Quarter 2\n\n### orw-130: Wire-Feed\n\n1. SM-09\n";

static const char skills[] =
    "# Skills\n\n## PO4: Makes sound stick fillets\n\n"
    "- **smaw.1f:** Stick fillet 1F\n- **smaw.2f:** Stick fillet 2F\n"
    "- **smaw.lowh:** Keeps electrodes dry\n\n"
    "## PO3: Fits and tests\n\n- **fit.tack:** Tacks\n- **fit.square:** Squares\n"
    "- **test.break:** Breaks fillets\n- **meas.rule:** Measures\n\n"
    "## Entry skills\n\n- **meas.rule introduced:** every student can read a tape\n";

static const char shop[] =
    "# Shop\n\n## Station booth\n- **Places:** 18\n- **Sections:** day, evening\n\n"
    "## Section day\n- **Open:** 16 h a week\n\n## Section evening\n- **Open:** 12 h a week\n\n"
    "## Machine shear\n- **Bed:** 10 ft\n- **Mild steel:** 1/4 in\n\n"
    "## Plungers\n- **Diameters:** 1/2, 7/8, 1-1/8, 1-1/2 in\n\n"
    "## Gauges\n- fillet gauge set\n\n## Stock\n- **3/8 x 3 flat bar:** 20 ft\n";

#define SMALL(id, title) "# " id ": " title "\n\n- **Kind:** drill\n- **Hours:** 2\n\n"

static struct bench whole(void)
{
	static const struct file_text files[] = {
		{ "assignments/SM-04.md", sm04 },
		{ "assignments/rest.md", SMALL("SM-09", "Nine") SMALL("SM-06", "Six")
		    SMALL("SM-05", "Five") SMALL("SM-07", "Seven")
		    SMALL("SM-08", "Extra (with a bracket)") },
		{ "program.md", program }, { "shop.md", shop }, { "skills.md", skills },
	};

	return bench_bind(files, 5);
}

static void whole_program_has_no_finding(void **state)
{
	struct bench t = whole();

	(void)state;
	expect_none(&t);
	bench_free(&t);
}

static void facts_of_the_example(void **state)
{
	struct bench t = whole();
	const struct assignment *a = &t.m->assignments[0];

	(void)state;
	expect_str(a->id, "SM-04");
	expect_str(a->title, "Tee fillet 2F, three passes");
	assert_int_equal(a->pos.line, 1);
	assert_int_equal(a->pos.col, 3);
	assert_int_equal(a->kind, KIND_COUPON);
	assert_true(a->hours == 16);
	assert_int_equal(a->station, 0);
	assert_int_equal(a->attempts, 3);
	assert_int_equal(a->nprocesses, 1);
	assert_int_equal(a->processes[0], PROCESS_SMAW);
	assert_int_equal(a->njoints, 1);
	assert_int_equal(a->joints[0], JOINT_TEE);
	assert_int_equal(a->npositions, 1);
	assert_int_equal(a->positions[0].position, POSITION_2F);
	assert_int_equal(a->positions[0].progression, PROGRESS_NONE);
	assert_int_equal(a->nmaterials, 1);
	expect_str(a->materials[0].text, "A36 plate");
	assert_int_equal(a->materials[0].metal, METAL_STEEL);
	assert_int_equal(a->nthicknesses, 1);
	expect_near(a->thicknesses[0].lo, 3.0 / 8 * IN);
	assert_int_equal(a->nfillers, 1);
	expect_str(a->fillers[0].class, "E7018");
	expect_str(a->fillers[0].where, "");
	expect_near(a->fillers[0].dia.lo, IN / 8);
	assert_int_equal(a->ncurrents, 1);
	expect_str(a->currents[0].polarity, "DC+");
	expect_near(a->currents[0].amps.lo, 110);
	expect_near(a->currents[0].amps.hi, 140);
	assert_int_equal(a->nfacts, 1);
	expect_str(a->facts[0].key, "Oven");
	expect_str(a->facts[0].text, "4 h out");
	bench_free(&t);
}

static void places_of_facts(void **state)
{
	struct bench t = whole();
	const struct assignment *a = &t.m->assignments[0];
	struct pos thickness = assignment_fact_pos(a, STR("Thickness"));
	struct pos none = assignment_fact_pos(a, STR("Preheat"));

	(void)state;
	assert_int_equal(thickness.line, 9);
	assert_int_equal(thickness.col, 18);
	assert_int_equal(none.line, 1);
	assert_int_equal(assignment_fact(a, STR("oven"))->pos.line, 13);
	assert_null(assignment_fact(a, STR("Gas")));
	bench_free(&t);
}

static void needs_and_teaching_of_the_example(void **state)
{
	struct bench t = whole();
	const struct assignment *a = &t.m->assignments[0];

	(void)state;
	assert_int_equal(a->nneeds, 2);
	assert_int_equal(a->needs[0].n, 1);
	expect_str(t.m->skills[a->needs[0].v[0].skill].id, "smaw.1f");
	assert_int_equal(a->needs[0].v[0].level, SKILL_PRACTICED);
	assert_int_equal(a->needs[0].pos.line, 18);
	assert_int_equal(a->needs[1].n, 2);
	expect_str(a->needs[1].v[0].written, "fit.tack");
	expect_str(t.m->skills[a->needs[1].v[1].skill].id, "fit.square");
	assert_int_equal(a->needs[1].v[1].level, SKILL_INTRODUCED);
	assert_int_equal(a->needs[1].v[1].pos.line, 19);
	assert_int_equal(a->needs[1].v[1].pos.col, 31);
	assert_int_equal(a->nteaches, 3);
	expect_str(a->teaches[0].evidence, "Visual, Fillet break");
	assert_int_equal(a->teaches[0].level, SKILL_ASSESSED);
	expect_str(a->teaches[2].evidence, "");
	assert_int_equal(a->teaches[2].level, SKILL_INTRODUCED);
	bench_free(&t);
}

static void work_of_the_example(void **state)
{
	struct bench t = whole();
	const struct assignment *a = &t.m->assignments[0];

	(void)state;
	assert_int_equal(a->nwelds, 1);
	assert_int_equal(a->welds[0].letter, 0);
	assert_int_equal(a->welds[0].joint, JOINT_TEE);
	assert_int_equal(a->welds[0].at.position, POSITION_2F);
	assert_int_equal(a->welds[0].process, PROCESS_SMAW);
	expect_near(a->welds[0].t1_mm, 9.525);
	assert_true(a->welds[0].t2_mm == 0 && a->welds[0].leg_mm == 0);
	expect_str(a->welds[0].text, "tee, 2F");
	expect_str(a->welds[0].material1, "A36 plate");
	assert_int_equal(a->npieces, 2);
	expect_str(a->pieces[1].name, "base");
	assert_int_equal(a->pieces[1].count, 1);
	expect_str(a->pieces[1].size, "3/8 x 4 x 8 in");
	assert_int_equal(a->pieces[1].ndims, 3);
	expect_near(a->pieces[1].dims[1].lo, 4 * IN);
	expect_str(a->pieces[1].material, "A36 plate");
	expect_str(a->pieces[1].made, "sawn");
	assert_int_equal(a->nsteps, 3);
	expect_str(a->steps[0].hold, "");
	expect_str(a->steps[1].hold, "Stop, fit-up");
	expect_str(a->steps[1].para.spans[0].text,
	    "gap and squareness checked before tacking off.");
	assert_int_equal(a->steps[2].para.number, 3);
	bench_free(&t);
}

static void drawing_of_the_example(void **state)
{
	struct bench t = whole();
	const struct assignment *a = &t.m->assignments[0];
	const struct joint_block *j = &a->drawings[0].joint;

	(void)state;
	assert_int_equal(a->ndrawings, 1);
	assert_int_equal(a->drawings[0].kind, DRAWING_JOINT);
	assert_int_equal(j->weld, 0);
	assert_int_equal(j->joint, JOINT_TEE);
	expect_near(j->leg.lo, 5.0 / 16 * IN);
	expect_near(j->gap.lo, 0);
	expect_near(j->gap.hi, IN / 16);
	expect_near(j->t1.lo, 9.525);
	assert_int_equal(j->t2.kind, QUANTITY_ANY);
	assert_int_equal(j->land.kind, QUANTITY_ANY);
	assert_false(j->both_sides);
	assert_int_equal(j->passes, 3);
	expect_str(j->restart, "near mid-length");
	bench_free(&t);
}

static void judging_of_the_example(void **state)
{
	struct bench t = whole();
	const struct assignment *a = &t.m->assignments[0];

	(void)state;
	assert_int_equal(a->ncriteria, 3);
	expect_str(a->criteria[0].name, "Visual");
	expect_str(a->criteria[0].code, "D1.1");
	assert_int_equal(a->criteria[0].edition, 2020);
	expect_str(a->criteria[0].loading, "welder test");
	expect_str(a->criteria[1].code, "D1.1");
	expect_str(a->criteria[1].loading, "");
	expect_str(a->criteria[2].code, "");
	assert_int_equal(a->criteria[2].edition, 0);
	assert_int_equal(a->ngrades, 3);
	assert_int_equal(a->grades[0].weight, 20);
	assert_false(a->grades[0].must_pass);
	assert_int_equal(a->grades[1].weight, 50);
	assert_true(a->grades[1].must_pass);
	assert_int_equal(a->pass_mark, 70);
	assert_int_equal(a->cautions.n, 1);
	assert_int_equal(a->instructor.n, 1);
	assert_int_equal(a->notes.n + a->bring.n + a->if_it_fails.n, 0);
	bench_free(&t);
}

static void the_program_itself(void **state)
{
	struct bench t = whole();
	const struct model *m = t.m;

	(void)state;
	expect_str(m->title, "Orehollow Valley Community College: Welding Technology");
	expect_str(m->catalog_year, "2026-27");
	assert_int_equal(m->weeks, 11);
	assert_int_equal(m->nterms, 6);
	expect_str(m->terms[2], "Spring");
	expect_str(m->credit_rule, "1 credit = 11 lecture hours or 22 lab hours");
	assert_int_equal(m->hour_minutes, 50);
	assert_int_equal(m->ncredentials, 2);
	expect_str(m->credentials[1].text, "Associate, quarters 1-2, all");
	assert_int_equal(m->nquarters, 2);
	expect_str(m->quarters[0].starts, "2026-09-21");
	expect_str(m->quarters[1].starts, "");
	assert_int_equal(m->ncourses, 2);
	expect_str(m->courses[0].id, "ORW 101");
	expect_str(m->courses[0].title, "Shop Foundations");
	assert_true(m->courses[0].credits == 3 && m->courses[0].lecture_hours == 11);
	assert_true(m->courses[0].lab_hours == 44);
	expect_str(m->courses[1].id, "ORW 130");
	assert_int_equal(m->courses[1].quarter, 2);
	bench_free(&t);
}

static void lines_of_courses(void **state)
{
	/* id, week, line, optional, group, course */
	static const struct { const char *id; uint32_t week, line; bool optional;
	    uint32_t group, course; } want[] = {
		{ "SM-04", 2, 1, false, 0, 0 }, { "SM-05", 2, 2, false, 0, 0 },
		{ "SM-06", 9, 3, false, 1, 0 }, { "SM-07", 9, 3, false, 1, 0 },
		{ "SM-08", 10, 4, true, 0, 0 }, { "SM-09", 1, 5, false, 0, 1 },
	};
	struct bench t = whole();

	(void)state;
	assert_int_equal(t.m->nslots, 6);
	for (size_t i = 0; i < 6; i++) {
		const struct slot *s = &t.m->slots[i];

		expect_str(t.m->assignments[s->assignment].id, want[i].id);
		assert_int_equal(s->week, want[i].week);
		assert_int_equal(s->line, want[i].line);
		assert_int_equal(s->optional, want[i].optional);
		assert_int_equal(s->group, want[i].group);
		assert_int_equal(s->course, want[i].course);
	}
	bench_free(&t);
}

static void entry_paths(void **state)
{
	struct bench t = whole();
	const struct model *m = t.m;

	(void)state;
	assert_int_equal(m->nentries, 2);
	expect_str(m->entries[0].text, "quarter 1 in Fall");
	assert_int_equal(m->entries[0].nquarters, 2);
	assert_int_equal(m->entries[0].quarters[0], 1);
	assert_int_equal(m->entries[0].quarters[1], 2);
	assert_int_equal(m->entries[0].nwith, 0);
	assert_int_equal(m->entries[1].nquarters, 2);
	assert_int_equal(m->entries[1].quarters[0], 2);
	assert_int_equal(m->entries[1].quarters[1], 1);
	assert_int_equal(m->entries[1].nwith, 1);
	expect_str(m->skills[m->entries[1].with[0].skill].id, "smaw.1f");
	assert_int_equal(m->entries[1].with[0].level, SKILL_PRACTICED);
	bench_free(&t);
}

static void skills_and_shop(void **state)
{
	struct bench t = whole();
	const struct model *m = t.m;

	(void)state;
	assert_int_equal(m->noutcomes, 2);
	expect_str(m->outcomes[0].id, "PO4");
	expect_str(m->outcomes[1].title, "Fits and tests");
	assert_int_equal(m->nskills, 7);
	expect_str(m->skills[3].id, "fit.tack");
	assert_int_equal(m->skills[3].outcome, 1);
	assert_int_equal(map_find(m->skill_by_id, STR("FIT.TACK")), 3);
	assert_int_equal(m->nentry_skills, 1);
	assert_int_equal(m->entry_skills[0].skill, 6);
	assert_int_equal(m->entry_skills[0].level, SKILL_INTRODUCED);
	assert_int_equal(m->nsections, 2);
	assert_true(m->sections[0].open_hours_week == 16);
	assert_int_equal(m->nstations, 1);
	expect_str(m->stations[0].name, "booth");
	assert_int_equal(m->stations[0].places, 18);
	expect_str(m->stations[0].sections, "day, evening");
	assert_int_equal(m->nmachines, 1);
	assert_int_equal(m->machines[0].nlimits, 2);
	expect_str(m->machines[0].limits[1].key, "Mild steel");
	assert_int_equal(m->nplungers, 4);
	expect_near(m->plungers[3].lo, 1.5 * IN);
	assert_int_equal(m->ngauges, 1);
	assert_int_equal(m->nstock, 1);
	expect_str(m->stock[0].key, "3/8 x 3 flat bar");
	bench_free(&t);
}

static void assignments_stand_in_order_of_ids(void **state)
{
	struct bench t = whole();

	(void)state;
	assert_int_equal(t.m->nassignments, 6);
	for (size_t i = 1; i < 6; i++)
		assert_true(str_cmp(t.m->assignments[i - 1].id, t.m->assignments[i].id) < 0);
	assert_int_equal(map_find(t.m->assignment_by_id, STR("sm-09")), 5);
	bench_free(&t);
}

static void same_meaning_same_model(void **state)
{
	static const char plain[] =
	    "# SM-20: Tee\n\n- **Kind:** practice test\n- **Hours:** 16\n- **Process:** SMAW\n"
	    "- **Joint:** tee, open corner\n- **Material:** A36 plate\n"
	    "- **Thickness:** 3/8 in\n- **Position:** 2F, 3F up\n"
	    "- **Filler:** E6010, 1/8 in, root; E7018, 3/32 in, fill and cap\n"
	    "- **Current:** DC+, 80-110 A; DC-, 110-140 A\n- **Stock:** bevelled by aide\n"
	    "- **Place:** booth\n- **Attempts:** 3\n\n"
	    "## Needs\n\n- smaw.1f practiced\n- one of: a.b practiced, c.d introduced\n\n"
	    "## Teaches\n\n- smaw.2f assessed by Visual\n\n"
	    "## Pieces\n\n- web: 1 of 3/8 x 3 x 8 in A36 plate, sawn\n\n"
	    "## Grading\n\n- **Visual:** 100, must pass\n- **Pass mark:** 70\n";
	static const char other[] =
	    "\xEF\xBB\xBF" "sm-20 - Tee\r\n===========\r\n\r\n"
	    "* **kind**: Practice-Test\r\n* **HOURS:** 16 h\r\n* **Process:** smaw\r\n"
	    "+ **Joint:** T joint; open corner\r\n+ **Material**: A36 plate\r\n"
	    "+ **Thickness:** 3/8\"\r\n+ **Position:** 2f; 3F\r\n  upward\r\n"
	    "+ **Filler:** E6010 1/8 in, root; E7018, 3/32 in, fill and cap\r\n"
	    "+ **Current:** DCEP 80\xE2\x80\x93" "110 A; dc-, 110 to 140 A\r\n"
	    "+ **Stock:** beveled by aide\r\n+ **Place:** Booth\r\n\r\n"
	    "needs\r\n-----\r\n\r\n- smaw.1f practised\r\n- one of a.b practised, c.d introduced\r\n"
	    "\r\n## TEACHES\r\n\r\n- smaw.2f assessed by Visual\r\n\r\n"
	    "## Pieces\r\n\r\n- web: 1 of 3/8 x 3 x 8 in A36 plate, sawn\r\n\r\n"
	    "## Grading\r\n\r\n- **Visual:** 100 %; must pass\r\n- **Pass mark:** 70\r\n";
	struct bench a = bench_one(plain), b = bench_one(other + 3);
	str x, y;

	(void)state;
	expect_none(&a);
	expect_none(&b);
	x = dump_assignment(a.arena, a.m->assignments);
	y = dump_assignment(b.arena, b.m->assignments);
	if (!str_eq(x, y))
		print_message("%.*s\n%.*s\n", STR_ARG(x), STR_ARG(y));
	assert_true(str_eq(x, y));
	bench_free(&a);
	bench_free(&b);
}

static void roles_of_paths(void **state)
{
	static const struct { const char *path; bool read; enum file_role role; } rows[] = {
		{ "program.md", true, ROLE_PROGRAM }, { "skills.md", true, ROLE_SKILLS },
		{ "shop.md", true, ROLE_SHOP }, { "customs.md", true, ROLE_CUSTOMS },
		{ "cohorts.md", true, ROLE_COHORTS }, { "assignments/customs.md", true,
		    ROLE_ASSIGNMENTS },
		{ "assignments/SM-20.md", true, ROLE_ASSIGNMENTS },
		{ "standards/shop.md", true, ROLE_STANDARD },
		{ "standards/old/shop.md", false, 0 }, { "standards/shop.csv", false, 0 },
		{ "assignments/es/SM-20.md", true, ROLE_TRANSLATION },
		{ "assignments/xx/SM-20.md", false, 0 }, { "pictures/a.png", true, ROLE_PICTURE },
		{ "pictures/A B.PNG", true, ROLE_PICTURE }, { "pictures/a.jpg", false, 0 },
		{ "pictures/old/a.png", false, 0 }, { "pictures/.png", false, 0 }, { "assignments/.md", false, 0 },
		{ "README.md", false, 0 }, { "assignments/a.txt", false, 0 },
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		enum file_role role = ROLE_SHOP;

		assert_int_equal(file_role_of(str_of(rows[i].path), &role), rows[i].read);
		if (rows[i].read)
			assert_int_equal(role, rows[i].role);
	}
}

static void words_shown(void **state)
{
	(void)state;
	expect_str(kind_word(KIND_QUALIFICATION_TEST), "qualification test");
	expect_str(process_word(PROCESS_GMAW_S), "GMAW-S");
	expect_str(joint_word(JOINT_SINGLE_V), "single-V");
	expect_str(position_word(POSITION_1G_ROLLED), "1G rolled");
	expect_str(skill_level_word(SKILL_PRACTICED), "practiced");
	for (int i = 0; i < KIND_COUNT; i++)
		assert_true(kind_word((enum kind)i).n > 0);
	for (int i = 0; i < PROCESS_COUNT; i++)
		assert_true(process_word((enum process)i).n > 0);
	for (int i = 0; i < JOINT_COUNT; i++)
		assert_true(joint_word((enum joint)i).n > 0);
	for (int i = 0; i < POSITION_COUNT; i++)
		assert_true(position_word((enum position)i).n > 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(whole_program_has_no_finding),
		cmocka_unit_test(facts_of_the_example),
		cmocka_unit_test(places_of_facts),
		cmocka_unit_test(needs_and_teaching_of_the_example),
		cmocka_unit_test(work_of_the_example),
		cmocka_unit_test(drawing_of_the_example),
		cmocka_unit_test(judging_of_the_example),
		cmocka_unit_test(the_program_itself),
		cmocka_unit_test(lines_of_courses),
		cmocka_unit_test(entry_paths),
		cmocka_unit_test(skills_and_shop),
		cmocka_unit_test(assignments_stand_in_order_of_ids),
		cmocka_unit_test(same_meaning_same_model),
		cmocka_unit_test(roles_of_paths),
		cmocka_unit_test(words_shown),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
