/* Prose metric first. Conversions by hand: 15 psi x 6.894757 = 103 kPa, 35 ft x 0.3048 =
 * 10.7 m, (800 - 32) 5/9 = 427, 60 ksi x 6.894757 = 414 MPa, 1/8 x 25.4 = 3.2 mm. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "sheets/edition.h"
#include "sheets/metric_words.h"

#define DEG "\xC2\xB0"

static void expect_all(const struct edition *e, const char *const (*cases)[2], size_t n)
{
	struct arena *a = arena_new(NULL, NULL);

	for (size_t i = 0; i < n; i++) {
		str out = units_text(a, e, str_of(cases[i][0]));

		if (!str_eq(out, str_of(cases[i][1])))
			fail_msg("\"%s\" became \"%.*s\"", cases[i][0], STR_ARG(out));
	}
	arena_free(a);
}

static void pairs_are_turned_round(void **state)
{
	static const char *const cases[][2] = {
		{ "a 1/2 in [13 mm] bar", "a 13 mm [1/2 in] bar" },
		{ "(1/2 in [13 mm])", "(13 mm [1/2 in])" },
		{ "at 2, 4 and 6 in [51, 102 and 152 mm] on", "at 51, 102 and 152 mm [2, 4 and 6 in] on" },
		{ "is 28 x 16 in [711 x 406 mm], so", "is 711 x 406 mm [28 x 16 in], so" },
		{ "to 1/16 to 3/32 in [1.6 to 2.4 mm] gap", "to 1.6 to 2.4 mm [1/16 to 3/32 in] gap" },
		{ "a 2, 4 y 6 in [51, 102 y 152 mm]", "a 51, 102 y 152 mm [2, 4 y 6 in]" },
		{ "over 50 lb [23 kg] get", "over 23 kg [50 lb] get" },
		{ "a 200 " DEG "F [93 " DEG "C] crayon", "a 93 " DEG "C [200 " DEG "F] crayon" },
		{ "6 ft 4 in [1.93 m] high", "1.93 m [6 ft 4 in] high" },
	};
	const struct edition e = edition_new(&(struct edition_choice){ .metric = true });

	(void)state;
	expect_all(&e, cases, sizeof cases / sizeof *cases);
}

static void sure_figures_get_their_metric(void **state)
{
	static const char *const cases[][2] = {
		{ "held below 30 psi and", "held below 207 kPa [30 psi] and" },
		{ "over 15 psig (29 CFR 1910.253);", "over 103 kPa [15 psig] (29 CFR 1910.253);" },
		{ "moved 35 ft away", "moved 10.7 m [35 ft] away" },
		{ "cold at 800 " DEG "F.", "cold at 427 " DEG "C [800 " DEG "F]." },
		{ "within 1/8 in of", "within 3.2 mm [1/8 in] of" },
		{ "at 60,000 psi or", "at 414 MPa [60,000 psi] or" },
		{ "at 60000 psi or", "at 414 MPa [60000 psi] or" },
		{ "foot 20 in, post 24 in.", "foot 508 mm [20 in], post 609.6 mm [24 in]." },
		{ "a 3 in diameter", "a 76.2 mm [3 in] diameter" },
	};
	const struct edition e = edition_new(&(struct edition_choice){ .metric = true });

	(void)state;
	expect_all(&e, cases, sizeof cases / sizeof *cases);
}

/* A position, a number before the word "in", a list, a sum, another writer's bracket. */
static void the_rest_stays(void **state)
{
	static const char *const same[] = { "legs in 1F mean", "clamp 4 in the vise",
		"Fill 1/2 in the middle", "drills 1/8, 1/4 and 13/32 in, oil",
		"so 0.6 x 3/8 = 0.225 in, so ten", "0.2 + 0.3 in", "= 0.152 in\xC2\xB2 [98 mm\xC2\xB2]",
		"0.375 x 0.375 = 0.14 in [3.6 mm]", "to 1/32 in / 1 mm", "an 8 oz hammer",
		"0.2836 lb for", "4 mm [5/32 in] and", "15 psig (103 kPa)", "13 mm", "week 3 in [see]",
		"1 to 2 in [25 mm]", "10 in bastard file", "" };
	const struct edition metric = edition_new(&(struct edition_choice){ .metric = true });
	const struct edition usual = edition_new(&(struct edition_choice){ 0 });
	const char *const pair[][2] = { { "1/2 in [13 mm]", "1/2 in [13 mm]" } };

	(void)state;
	for (size_t i = 0; i < sizeof same / sizeof *same; i++) {
		const char *const one[][2] = { { same[i], same[i] } };

		expect_all(&metric, one, 1);
	}
	expect_all(&usual, pair, 1);
	expect_all(NULL, pair, 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(pairs_are_turned_round),
		cmocka_unit_test(sure_figures_get_their_metric),
		cmocka_unit_test(the_rest_stays),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
