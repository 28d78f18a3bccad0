/* The lookup of words, and what every table of words owes: order, glyphs, the words of
 * the model. tests/tables.sh holds the tables against the sources. */
#include "base/language.h"

#include "draw/face.h"
#include "model/model.h"
#include "sheets/edition.h"
#include "sheets/wording.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

static void no_memory(void *user)
{
	(void)user;
	abort();
}

static const struct language *spanish(void)
{
	return language_find(STR("es"));
}

static void is(str got, const char *wanted)
{
	if (!str_eq(got, str_of(wanted)))
		print_error("\"%.*s\", not \"%s\"\n", STR_ARG(got), wanted);
	assert_true(str_eq(got, str_of(wanted)));
}

static void english_is_itself(void **state)
{
	(void)state;
	assert_null(language_find(STR("en")));
	assert_null(language_find(STR("ES")));
	is(word(NULL, "Steps"), "Steps");
	is(word_str(NULL, STR("Steps")), "Steps");
	is(language_tag(NULL), "en-US");
	is(language_code(NULL), "");
}

static void words_are_found_whole(void **state)
{
	(void)state;
	is(word(spanish(), "Steps"), "Pasos");
	is(word(spanish(), "Ste"), "Ste");
	is(word(spanish(), "Steps "), "Steps ");
	is(word(spanish(), ""), "");
	is(word_str(spanish(), str_sub(STR("Stepson"), 0, 5)), "Pasos");
	is(language_tag(spanish()), "es-US");
}

static void patterns_take_values(void **state)
{
	struct arena *a = arena_new(no_memory, NULL);
	struct buf b = { .arena = a };

	(void)state;
	is(word_format(a, spanish(), "page %u of %u", 3u, 80u), "página 3 de 80");
	is(word_format(a, NULL, "page %u of %u", 3u, 80u), "page 3 of 80");
	is(word_format(a, spanish(), "no row %u", 3u), "no row 3");
	word_addf(&b, spanish(), "leg %.*s", STR_ARG(STR("5/16 in")));
	is(buf_str(&b), "pierna 5/16 in");
	arena_free(a);
}

/* Binary search needs it; so the first and the last row are found too. */
static void rows_are_in_order(void **state)
{
	struct word_row row, before = { "", "" };
	size_t i = 0;

	(void)state;
	for (; language_row(spanish(), i, &row); i++) {
		assert_true(str_cmp(str_of(before.english), str_of(row.english)) < 0);
		is(word(spanish(), row.english), row.other);
		before = row;
	}
	assert_true(i > 400);
	assert_false(language_row(NULL, 0, &row));
}

static void fonts_have_the_glyphs(void **state)
{
	struct arena *a = arena_new(no_memory, NULL);
	const struct faces *f = faces_new(a);
	struct word_row row;

	(void)state;
	for (size_t i = 0; language_row(spanish(), i, &row); i++)
		for (int face = 0; face < FACE_MONO; face++) {
			str s = str_of(row.other);

			assert_int_equal(face_missing(f, (enum face_id)face, s), s.n);
		}
	/* What prose may bring along. */
	for (int face = 0; face < FACE_COUNT; face++) {
		str s = STR("áéíóúüñÁÉÍÓÚÜÑ¿¡«»ºª");

		assert_int_equal(face_missing(f, (enum face_id)face, s), s.n);
	}
	arena_free(a);
}

/* A word of capitals and figures (SMAW, 3G) is the same in every language. */
static bool is_said(str s)
{
	for (size_t i = 0; i < s.n; i++)
		if (s.p[i] >= 'a' && s.p[i] <= 'z')
			return true;
	return false;
}

static void has_row(str english)
{
	struct word_row row;

	for (size_t i = 0; language_row(spanish(), i, &row); i++)
		if (str_eq(english, str_of(row.english)))
			return;
	print_error("no row for \"%.*s\"\n", STR_ARG(english));
	assert_true(!is_said(english));
}

static void the_model_has_its_words(void **state)
{
	(void)state;
	for (int i = 0; i < KIND_COUNT; i++)
		has_row(kind_word((enum kind)i));
	for (int i = 0; i < PROCESS_COUNT; i++)
		assert_false(is_said(process_word((enum process)i)));
	for (int i = 0; i < JOINT_COUNT; i++)
		has_row(joint_word((enum joint)i));
	for (int i = 0; i < POSITION_COUNT; i++)
		if (is_said(position_word((enum position)i)))
			has_row(position_word((enum position)i));
	for (int i = SKILL_INTRODUCED; i <= SKILL_ASSESSED; i++)
		has_row(skill_level_word((enum skill_level)i));
}

/* ---- what sheets word with it ---- */

static struct edition in(const struct language *l)
{
	return edition_new(&(struct edition_choice){ .language = l });
}

static void quantities_keep_their_figures(void **state)
{
	struct arena *a = arena_new(no_memory, NULL);
	const struct edition e = in(spanish()), english = in(NULL);
	struct quantity_fault fault;
	struct quantity q;

	(void)state;
	assert_int_equal(quantity_parse(STR("0 to 1/16 in"), QUANTITY_LENGTH, METAL_NONE, &q,
	    &fault), QUANTITY_OK);
	is(quantity_text(a, &english, &q), "0 to 1/16 in [0 to 1.6 mm]");
	is(quantity_text(a, NULL, &q), "0 to 1/16 in [0 to 1.6 mm]");
	is(quantity_text(a, &e, &q), "0 a 1/16 in [0 a 1.6 mm]");
	assert_int_equal(quantity_parse(STR("110-140 A"), QUANTITY_CURRENT, METAL_NONE, &q,
	    &fault), QUANTITY_OK);
	is(quantity_text(a, &e, &q), "110-140 A");
	arena_free(a);
}

static void forms_stand_before_grades(void **state)
{
	struct arena *a = arena_new(no_memory, NULL);
	const struct edition e = in(spanish());

	(void)state;
	is(material_text(a, NULL, STR("A36 plate")), "A36 plate");
	is(material_text(a, &e, STR("A36 plate")), "placa A36");
	is(material_text(a, &e, STR("A36 flat bar")), "solera A36");
	is(material_text(a, &e, STR("plate")), "plate");
	is(material_text(a, &e, STR("A36template")), "A36template");
	is(hours_text(a, &e, 1), "1 hora");
	is(hours_text(a, &e, 2.5), "2.5 horas");
	is(hours_text(a, NULL, 1), "1 hour");
	arena_free(a);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(english_is_itself),
		cmocka_unit_test(words_are_found_whole),
		cmocka_unit_test(patterns_take_values),
		cmocka_unit_test(rows_are_in_order),
		cmocka_unit_test(fonts_have_the_glyphs),
		cmocka_unit_test(the_model_has_its_words),
		cmocka_unit_test(quantities_keep_their_figures),
		cmocka_unit_test(forms_stand_before_grades),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
