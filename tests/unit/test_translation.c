/* Translations: read and bound by id, held against their originals, and the model as it
 * is printed with them. */
#include "model_bench.h"

#include "check/figures.h"
#include "check/translation.h"
#include "sheets/hold.h"

#define COUNT(v) (sizeof (v) / sizeof *(v))

#define ORIGINAL                                                                        \
	"# SM-04: Tee fillet 2F, three passes\n\n"                                       \
	"- **Kind:** written\n- **Hours:** 16\n- **Oven:** 250-300 degF, 4 h out\n\n"      \
	"## Pieces\n\n- web: 1 of 3/8 x 3 x 8 in A36 plate, sawn\n\n"                      \
	"## Procedure\n\n1. Grind 1 in [25 mm] back.\n"                                    \
	"2. **Stop, fit-up:** gap at most 1/16 in.\n3. Weld at 130 A.\n\n"                 \
	"## Acceptance\n\n- **Oven log:** no rod out longer than 4 hours\n"                \
	"- **Visual:** D1.1-2020 welder test\n- **Leg size:** 5/16 in, +1/16 -0 in\n\n"    \
	"## Grading\n\n- **Visual:** 90\n- **Oven log:** 10\n\n"                           \
	"## Cautions\n\nSlag pops off hot.\n\n## Notes\n\n- Keep it.\n"

#define WORDS "# Words\n\n- **web:** alma\n- **sawn:** aserrada\n"                        \
	"## Juzgado\n- **oven log:** Registro\n- **Leg size:** Pierna\n"

#define TITLE "# SM-04: Filete en T 2F, tres pases\n\n"
#define OVEN "- **Oven:** 250-300 degF, 4 h fuera\n\n"
#define STEPS "## Procedure\n\n1. Esmerile 1 in [25 mm] atrás.\n"                          \
	"2. **Alto, ajuste:** separación 1/16 in como máximo.\n3. Suelde a 130 A.\n\n"
#define LOG "## Acceptance\n\n- **Oven log:** ningún electrodo fuera más de 4 horas\n\n"
#define CAUTIONS "## Cautions\n\nLa escoria salta caliente.\n\n"
#define NOTES "## Notes\n\n- Guárdela.\n"
#define WHOLE TITLE OVEN STEPS LOG CAUTIONS NOTES

static const struct language *spanish(void)
{
	return language_find(STR("es"));
}

static struct bench judge_with(const char *original, const char *said, const char *words)
{
	struct file_text files[] = { { "assignments/all.md", original },
		{ "assignments/es/all.md", said }, { "assignments/es/words.md", words } };
	struct bench t = bench_bind(files, COUNT(files) - !words);
	struct arena *scratch = arena_new(NULL, NULL);

	translations_check(scratch, t.m, t.f);
	arena_free(scratch);
	findings_sort(t.f);
	return t;
}

static struct bench judge(const char *said)
{
	return judge_with(ORIGINAL, said, WORDS);
}

/* One finding in the file of the translation, or none when name is FINDING_COUNT. */
static void expect(const char *said, enum finding_name name, uint32_t line, const char *words)
{
	struct bench t = judge(said);

	if (t.f->n != (name != FINDING_COUNT))
		print_findings(&t);
	assert_int_equal(t.f->n, name != FINDING_COUNT);
	if (t.f->n) {
		assert_int_equal(t.f->v[0].name, name);
		assert_int_equal(t.f->v[0].pos.file, 1);
		if (line != t.f->v[0].pos.line || !str_has(t.f->v[0].message, words))
			print_findings(&t);
		assert_int_equal(t.f->v[0].pos.line, line);
		assert_true(str_has(t.f->v[0].message, words));
	}
	bench_free(&t);
}

static void a_whole_translation_is_clean(void **state)
{
	(void)state;
	expect(WHOLE, FINDING_COUNT, 0, "");
	/* Figures may come in another order. */
	expect(TITLE OVEN "## Procedure\n\n1. [25 mm] 1 in.\n2. **Stop, ajuste:** 1/16 in.\n"
	    "3. 130 A.\n\n" LOG CAUTIONS NOTES, FINDING_COUNT, 0, "");
}

static void figures_that_differ_are_told(void **state)
{
	(void)state;
	expect(TITLE OVEN "## Procedure\n\n1. Esmerile 1 in [25 mm] atrás.\n"
	    "2. **Alto, ajuste:** separación 1/8 in.\n3. Suelde a 130 A.\n\n" LOG CAUTIONS NOTES,
	    FINDING_TRANSLATION_DIFFERS, 8, "step 2 of SM-04 says 1/8 in where the original says "
	    "1/16 in");
	expect(TITLE OVEN "## Procedure\n\n1. Esmerile 1 in [25 mm] atrás.\n"
	    "2. **Alto, ajuste:** separación 1/16 mm.\n3. Suelde a 130 A.\n\n" LOG CAUTIONS NOTES,
	    FINDING_TRANSLATION_DIFFERS, 8, "says 1/16 mm where the original says 1/16 in");
	expect(TITLE OVEN "## Procedure\n\n1. Esmerile atrás.\n"
	    "2. **Alto, ajuste:** separación 1/16 in.\n3. Suelde a 130 A.\n\n" LOG CAUTIONS NOTES,
	    FINDING_TRANSLATION_DIFFERS, 7, "does not say 1 in, 25 mm");
	expect("# SM-04: Filete en T 3F\n\n" OVEN STEPS LOG CAUTIONS NOTES,
	    FINDING_TRANSLATION_DIFFERS, 1, "the title of SM-04 says 3F");
	expect(TITLE "- **Oven:** 250-300 degF, 5 h fuera\n\n" STEPS LOG CAUTIONS NOTES,
	    FINDING_TRANSLATION_DIFFERS, 3, "Oven of SM-04 says 5 h");
	expect(TITLE OVEN STEPS "## Acceptance\n\n- **Oven log:** 5 horas\n\n" CAUTIONS NOTES,
	    FINDING_TRANSLATION_DIFFERS, 13, "Oven log of SM-04 says 5");
	expect(TITLE OVEN STEPS LOG "## Cautions\n\nEscoria a 800 °F.\n\n" NOTES,
	    FINDING_TRANSLATION_DIFFERS, 17, "Cautions of SM-04 says 800 °F");
}

static void steps_that_differ_are_one_finding(void **state)
{
	(void)state;
	expect(TITLE OVEN "## Procedure\n\n1. Esmerile 9 in.\n2. Suelde a 9 A.\n\n"
	    LOG CAUTIONS NOTES, FINDING_TRANSLATION_DIFFERS, 7, "2 steps here and 3");
	expect(TITLE OVEN "## Procedure\n\n1. Esmerile 1 in [25 mm] atrás.\n"
	    "2. Separación 1/16 in.\n3. Suelde a 130 A.\n\n" LOG CAUTIONS NOTES,
	    FINDING_TRANSLATION_DIFFERS, 8, "step 2 of SM-04 is a hold point in the original");
	expect(TITLE OVEN "## Procedure\n\n1. **Alto:** 1 in [25 mm] atrás.\n"
	    "2. **Alto, ajuste:** 1/16 in.\n3. Suelde a 130 A.\n\n" LOG CAUTIONS NOTES,
	    FINDING_TRANSLATION_DIFFERS, 7, "step 1 of SM-04 is a hold point here");
}

static void a_caution_that_is_lost_is_told(void **state)
{
	struct bench t = judge_with("# SF-01: Walk\n\n- **Kind:** drill\n- **Hours:** 5\n\n"
	    "## Cautions\n\n- Hot metal.\n- Sparks fly.\n", "# SF-01: Recorrido\n\n"
	    "## Cautions\n\n- Metal caliente.\n", NULL);

	(void)state;
	assert_int_equal(t.f->n, 1);
	assert_int_equal(t.f->v[0].name, FINDING_TRANSLATION_DIFFERS);
	assert_true(str_has(t.f->v[0].message, "Cautions of SF-01 has 1 entry here and 2"));
	bench_free(&t);
}

static void what_is_left_out_is_told_once(void **state)
{
	(void)state;
	expect(TITLE OVEN STEPS LOG NOTES, FINDING_UNTRANSLATED_SAFETY, 1, "Cautions");
	expect(TITLE OVEN STEPS CAUTIONS, FINDING_UNTRANSLATED_SECTION, 1, "Acceptance, Notes");
	expect(TITLE OVEN CAUTIONS LOG NOTES, FINDING_UNTRANSLATED_SECTION, 1, "Procedure");
}

/* On a safety card every section is owed. */
static void a_safety_card_is_owed_whole(void **state)
{
	struct bench t = judge_with("# SF-01: Walk\n\n- **Kind:** safety\n- **Hours:** 5\n\n"
	    "## Notes\n\nStay out.\n\n## Bring\n\n- Glasses\n",
	    "# SF-01: Recorrido\n\n## Bring\n\n- Lentes\n", NULL);

	(void)state;
	assert_int_equal(t.f->n, 1);
	assert_int_equal(t.f->v[0].name, FINDING_UNTRANSLATED_SAFETY);
	assert_true(str_has(t.f->v[0].message, "SF-01 has no Spanish for: Notes"));
	bench_free(&t);
}

static void without_a_translation_nothing_is_told(void **state)
{
	struct bench t = judge_with(ORIGINAL "# SM-05: Another\n\n- **Kind:** written\n"
	    "- **Hours:** 1\n\n## Cautions\n\nHot.\n", WHOLE, WORDS);

	(void)state;
	assert_int_equal(t.f->n, 0);
	bench_free(&t);
}

static void what_does_not_bind_is_told(void **state)
{
	(void)state;
	expect(WHOLE "\n# SM-40: Otra\n", FINDING_UNKNOWN_TRANSLATION, 23, "SM-40");
	expect(WHOLE "\n# Otra\n", FINDING_BAD_ID, 23, "neither Words nor the id");
	expect(WHOLE "\n# SM-04: Otra vez\n", FINDING_DUPLICATE_ID, 23, "translated twice");
	expect(WHOLE "\n## Grading\n\n- **Visual:** 90\n", FINDING_UNKNOWN_SECTION, 23, "Grading");
	expect(TITLE OVEN STEPS "## Acceptance\n\n- **Oven log:** 4 horas\n- **Oven lug:** x\n\n"
	    CAUTIONS NOTES, FINDING_UNKNOWN_KEY, 14, "no line \"Oven lug\"");
	expect(TITLE OVEN "## Procedure\n\n1. 1 in [25 mm].\n2. **Alto:** 1/16 in.\n3. 130 A.\n\n"
	    "Suelto.\n\n" LOG CAUTIONS NOTES, FINDING_NOT_UNDERSTOOD, 11, "no meaning");
}

static void names_without_words_are_one_note(void **state)
{
	struct bench t = judge_with(ORIGINAL, WHOLE, "# Words\n\n- **Leg size:** Pierna\n");

	(void)state;
	assert_int_equal(t.f->n, 1);
	assert_int_equal(t.f->v[0].name, FINDING_UNTRANSLATED_WORDS);
	assert_true(str_has(t.f->v[0].message, "\"web\", \"sawn\", \"Oven log\""));
	bench_free(&t);
}

/* What is wrong in a translation holds back the papers in that language alone. */
static void only_its_own_papers_wait(void **state)
{
	struct bench t = judge(TITLE OVEN "## Procedure\n\n1. Nada.\n\n" LOG CAUTIONS NOTES);
	const uint32_t v[] = { 0 };

	(void)state;
	assert_int_equal(t.f->n, 1);
	assert_null(hold_find(t.m, t.f, v, 1, 0, NULL));
	assert_ptr_equal(hold_find(t.m, t.f, v, 1, 0, spanish()), t.f->v);
	finding_add(t.f, FINDING_MISSING_FACT, (struct pos){ 0, 1, 1 }, "x")->assignment =
	    STR("SM-04");
	assert_non_null(hold_find(t.m, t.f, v, 1, 0, NULL));
	assert_non_null(hold_find(t.m, t.f, v, 1, 0, spanish()));
	/* The original waits still when its fault is told with one of the translation. */
	finding_take(t.f, &t.f->v[0], &t.f->v[1]);
	findings_sweep(t.f);
	assert_int_equal(t.f->n, 1);
	assert_ptr_equal(hold_find(t.m, t.f, v, 1, 0, NULL), t.f->v);
	assert_ptr_equal(hold_find(t.m, t.f, v, 1, 0, spanish()), t.f->v);
	bench_free(&t);
}

/* ---- the view ---- */

static void is(str got, const char *wanted)
{
	if (!str_eq(got, str_of(wanted)))
		print_error("\"%.*s\", not \"%s\"\n", STR_ARG(got), wanted);
	assert_true(str_eq(got, str_of(wanted)));
}

static void the_view_says_it_in_spanish(void **state)
{
	struct bench t = judge(WHOLE);
	struct model v = model_in(t.arena, t.m, spanish());
	const struct assignment *x = &v.assignments[0], *own = &t.m->assignments[0];

	(void)state;
	is(x->title, "Filete en T 2F, tres pases");
	is(x->steps[1].hold, "Alto, ajuste");
	is(x->pieces[0].shown_name, "alma");
	is(x->pieces[0].made, "aserrada");
	is(x->criteria[0].shown_name, "Registro");
	is(x->criteria[0].shown_text, "ningún electrodo fuera más de 4 horas");
	is(x->criteria[1].shown_name, "Visual");
	is(x->criteria[1].shown_text, "D1.1-2020 welder test");
	is(x->criteria[2].shown_name, "Pierna");
	is(x->grades[1].name, "Registro");
	is(x->facts[0].shown, "250-300 degF, 4 h fuera");
	is(x->cautions.v[0].spans[0].text, "La escoria salta caliente.");
	assert_int_equal(x->in_english, 0);
	/* What decides stays, and so does the original. */
	is(x->criteria[0].name, "Oven log");
	is(x->facts[0].text, "250-300 degF, 4 h out");
	is(own->title, "Tee fillet 2F, three passes");
	is(own->pieces[0].made, "sawn");
	assert_int_equal(own->criteria[0].shown_name.n, 0);
	bench_free(&t);
}

static void the_view_marks_what_stays_english(void **state)
{
	struct bench t = judge_with(ORIGINAL "# SM-05: Another\n\n- **Kind:** written\n"
	    "- **Hours:** 1\n", TITLE OVEN LOG NOTES, WORDS);
	struct model v = model_in(t.arena, t.m, spanish());

	(void)state;
	assert_int_equal(v.assignments[0].in_english, 1u << SAID_STEPS | 1u << SAID_CAUTIONS);
	is(v.assignments[0].cautions.v[0].spans[0].text, "Slag pops off hot.");
	assert_int_equal(v.assignments[1].in_english, SAID_NOTHING);
	is(v.assignments[1].title, "Another");
	/* In a language of which there is nothing the model is as it is. */
	v = model_in(t.arena, t.m, NULL);
	assert_ptr_equal(v.assignments, t.m->assignments);
	bench_free(&t);
}

static void words_are_told_from_figures(void **state)
{
	static const char *const with[] = { "4 h out", "sawn", "Fit-up", "PPE fit", "raíz" };
	static const char *const without[] = { "", "A36", "E7018, 1/8 in", "250-300 degF",
		"NPS 6 schedule 40", "±1/16 in", "SM-04 A", "DC+, 110-140 A", "15 psig" };

	(void)state;
	for (size_t i = 0; i < COUNT(with); i++)
		assert_true(has_words(str_of(with[i])));
	for (size_t i = 0; i < COUNT(without); i++)
		assert_false(has_words(str_of(without[i])));
}

static void only_files_of_a_language_are_its_own(void **state)
{
	(void)state;
	assert_ptr_equal(translation_folder(STR("assignments/es/SM-04.md")), spanish());
	assert_null(translation_folder(STR("assignments/SM-04.md")));
	assert_null(translation_folder(STR("assignments/es.md")));
	assert_null(translation_folder(STR("assignments/es/.md")));
	assert_null(translation_folder(STR("assignments/es/more/SM-04.md")));
	assert_null(translation_folder(STR("assignments/xx/SM-04.md")));
	assert_null(translation_folder(STR("assignments/es/SM-04.txt")));
}

/* ---- figures ---- */

static void lists(const char *text, const char *wanted)
{
	struct arena *a = arena_new(NULL, NULL);
	struct figures f = { 0 };

	figures_add(a, &f, str_of(text));
	is(figures_list(a, &f), wanted);
	arena_free(a);
}

static void figures_are_read_with_units(void **state)
{
	(void)state;
	lists("no figure here, two at most", "");
	lists("1/2 in [13 mm] and 22-1/2 deg, 40 %.", "1/2 in, 13 mm, 22-1/2 deg, 40 %");
	lists("E7018 at 1:30, SM-04; 29 CFR 1910.133.", "E7018, 1:30, SM-04, 29, 1910.133");
	lists("at 800 °F, 250-300 degF, 10-foot", "800 °F, 250-300 degF, 10");
	lists("A1 in one direction, 5 inside, 3 minutes", "A1, 5, 3");
	lists("1/8, 1/4 and 13/32 in", "1/8, 1/4, 13/32 in");
}

static bool alike(const char *x, const char *y)
{
	struct arena *a = arena_new(NULL, NULL);
	struct figures f = { 0 }, g = { 0 }, only_f = { 0 }, only_g = { 0 };
	bool differ;

	figures_add(a, &f, str_of(x));
	figures_add(a, &g, str_of(y));
	differ = figures_differ(a, &f, &g, &only_f, &only_g);
	arena_free(a);
	return !differ;
}

static void a_preposition_is_no_inch(void **state)
{
	(void)state;
	assert_true(alike("steps 1 to 12 in order", "pasos 1 a 12 en orden"));
	assert_true(alike("pasos 1 a 12 en orden", "steps 1 to 12 in order"));
	assert_true(alike("its 8 in length", "sus 8 in"));
	assert_false(alike("8 in long", "8 de largo"));
	assert_false(alike("3 in wide.", "3 de ancho."));
	assert_false(alike("1/2 in length", "1/2 de largo"));
	assert_false(alike("steps 1 to 12 in order", "pasos 1 a 13 en orden"));
	assert_false(alike("two of 4 and 4", "4"));
	assert_true(alike("6 in and 12 in", "12 in y 6 in"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_whole_translation_is_clean),
		cmocka_unit_test(figures_that_differ_are_told),
		cmocka_unit_test(steps_that_differ_are_one_finding),
		cmocka_unit_test(a_caution_that_is_lost_is_told),
		cmocka_unit_test(what_is_left_out_is_told_once),
		cmocka_unit_test(a_safety_card_is_owed_whole),
		cmocka_unit_test(without_a_translation_nothing_is_told),
		cmocka_unit_test(what_does_not_bind_is_told),
		cmocka_unit_test(names_without_words_are_one_note),
		cmocka_unit_test(only_its_own_papers_wait),
		cmocka_unit_test(the_view_says_it_in_spanish),
		cmocka_unit_test(the_view_marks_what_stays_english),
		cmocka_unit_test(words_are_told_from_figures),
		cmocka_unit_test(only_files_of_a_language_are_its_own),
		cmocka_unit_test(figures_are_read_with_units),
		cmocka_unit_test(a_preposition_is_no_inch),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
