/* The argument reader of `fitup reckon`: every topic's own example works, what is owed
 * is missed, and wrong values are refused with the input named. */
#include "reckon/topic.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

enum { WORDS_MOST = 64 };

static const struct answer *ask_in(struct arena *a, const char *line, bool metric)
{
	str rest = str_of(line), words[WORDS_MOST], likely, word;
	const struct topic *t;
	size_t n = 0;

	assert_true(str_word(&rest, &word));
	t = topic_find(word, &likely);
	assert_non_null(t);
	while (n < WORDS_MOST && str_word(&rest, &words[n]))
		n++;
	return topic_reckon(a, t, words, n, metric);
}

static const struct answer *ask(struct arena *a, const char *line)
{
	return ask_in(a, line, false);
}

static void every_example_works(void **state)
{
	size_t n;
	const struct topic *rows = topic_rows(&n);

	(void)state;
	assert_true(n >= 30);
	for (size_t i = 0; i < n; i++) {
		struct arena *a = arena_new(NULL, NULL);
		const struct answer *an = ask(a, rows[i].example);

		if (an->fault.n)
			print_error("%s: %.*s\n", rows[i].example, STR_ARG(an->fault));
		assert_true(str_starts(str_of(rows[i].example), str_of(rows[i].word)));
		assert_int_equal(an->fault.n, 0);
		assert_true(an->nfigures > 0 && an->nsources > 0 && an->ninputs > 0);
		assert_non_null(an->formula);
		for (size_t k = 0; k < an->nfigures; k++)
			assert_true(isfinite(an->figures[k].value));
		arena_free(a);
	}
}

static bool has_step_in(const char *line, const char *step, bool metric)
{
	struct arena *a = arena_new(NULL, NULL);
	const struct answer *an = ask_in(a, line, metric);
	bool found = false;

	for (size_t i = 0; i < an->nsteps; i++)
		found |= str_eq(an->steps[i], str_of(step));
	arena_free(a);
	return found;
}

static bool has_step(const char *line, const char *step)
{
	return has_step_in(line, step, false);
}

/* What is no table is worked out in the open. pi x 23.75 = 74.61283; 3.3125 tan 22.5 =
 * 1.37208; sqrt(16 + 2.25) = 4.272. */
static void steps_are_shown(void **state)
{
	size_t n;
	const struct topic *rows = topic_rows(&n);

	(void)state;
	for (size_t i = 0; i < n; i++) {
		struct arena *a = arena_new(NULL, NULL);
		const struct answer *an = ask(a, rows[i].example);

		if (!an->nsteps && !str_starts(str_of(an->formula), STR("by ")))
			fail_msg("%s shows no steps", rows[i].word);
		arena_free(a);
	}
	assert_true(has_step("cylinder diameter 24 in height 36 in thickness 1/4 in",
	    "pi x 23.75 = 74.61283 in"));
	assert_true(has_step("elbow diameter 6.625 in angle 45 pieces 2 height 6 in",
	    "throat: 6 - 3.3125 tan(22.5°) = 4.62792 in"));
	assert_true(has_step("cone base 8 in top 5 in height 4 in",
	    "slant = sqrt(4^2 + ((8 - 5) / 2)^2) = 4.272 in"));
	assert_true(has_step("saddle branch 4.5 in run 6.625 in angle 45 height 12 in",
	    "r = 2.25 in, R = 3.3125 in, A = 45°: the cut is 4.5 in deep"));
}

/* In metric the steps are worked in metric. 145 ft3 x 28.316846592 / 600 = 6.84 L/min;
 * 575 tons/ft an inch is 660.75 kN/m a millimeter; 0.25 in3 of 490 lb/ft3; (D - t) t of
 * NPS 6 schedule 40 in mm2 x 10.69 x 1.488164 / 645.16. */
static void metric_steps_are_worked_in_metric(void **state)
{
	static const struct { const char *line, *step; } cases[] = {
		{ "acetylene capacity 145 ft3 flow 25 cfh", "4105.94 L / 10 / 60 = 6.843 L/min" },
		{ "brake thickness 1/8 in length 4 ft opening 1 in",
		  "660.75 x 3.175^2 / 25.4 x 1 = 262.23 kN/m" },
		{ "heat-input volts 29 amps 325 speed 12.5 in/min",
		  "29 x 325 / (1000 x 5.292) = 1.7811 kJ/mm" },
		{ "pipe nps 6 schedule 40",
		  "0.024658 x (168.275 - 7.112) x 7.112 = 28.263 kg/m" },
		{ "punch diameter 13/16 in thickness 3/8 in strength 60 ksi",
		  "64.835 x 9.525 x 413.69 / 1000 = 255.47 kN" },
		{ "purge bore 6.065 in length 3 ft flow 20 cfh",
		  "6 x pi/4 x 154.051^2 x 914.4 / 10^6 L / 9.439 L/min = 10.8338 min" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		if (!has_step_in(cases[i].line, cases[i].step, true))
			fail_msg("%s: no step %s", cases[i].line, cases[i].step);
}

/* No topic but that of credits leaves an inch, a pound or a foot in its metric steps. */
static void metric_steps_have_no_customary_unit(void **state)
{
	static const char *const units[] = { " in", " in2", " lb", " ft", " lb/ft", " ft3",
		" cfh", " tons", " in/min", " psi", " ksi", " kJ/in", " lb/in3", " lb/h" };
	size_t n;
	const struct topic *rows = topic_rows(&n);

	(void)state;
	for (size_t i = 0; i < n; i++) {
		struct arena *a = arena_new(NULL, NULL);
		const struct answer *an = ask_in(a, rows[i].example, true);

		for (size_t k = 0; k < an->nsteps; k++)
			for (size_t u = 0; u < sizeof units / sizeof *units; u++)
				if (str_ends(an->steps[k], str_of(units[u])))
					fail_msg("%s: %.*s", rows[i].word, STR_ARG(an->steps[k]));
		arena_free(a);
	}
}

/* Without its first owed input no topic answers. */
static void every_topic_misses_what_is_owed(void **state)
{
	size_t n;
	const struct topic *rows = topic_rows(&n);

	(void)state;
	for (size_t i = 0; i < n; i++) {
		struct arena *a = arena_new(NULL, NULL);

		assert_true(ask(a, rows[i].word)->fault.n > 0);
		arena_free(a);
	}
}

static void words_and_defaults_are_sound(void **state)
{
	size_t n;
	const struct topic *rows = topic_rows(&n);
	str likely;

	(void)state;
	for (size_t i = 0; i < n; i++) {
		assert_ptr_equal(topic_find(str_of(rows[i].word), &likely), &rows[i]);
		for (int k = 0; k < TOPIC_INPUTS && rows[i].inputs[k].key; k++)
			for (int j = 0; j < k; j++)
				assert_string_not_equal(rows[i].inputs[k].key,
				    rows[i].inputs[j].key);
	}
	assert_null(topic_find(STR("heatinput"), &likely));
	assert_true(str_eq(likely, STR("heat-input")));
	assert_null(topic_find(STR("zzzzzzzz"), &likely));
	assert_int_equal(likely.n, 0);
}

static void check_refused(const char *line, const char *part)
{
	struct arena *a = arena_new(NULL, NULL);
	const struct answer *an = ask(a, line);

	if (!an->fault.n || str_find(an->fault, str_of(part), 0) == an->fault.n)
		print_error("%s: \"%.*s\" lacks \"%s\"\n", line, STR_ARG(an->fault),
		    part);
	assert_true(an->fault.n && str_find(an->fault, str_of(part), 0) < an->fault.n);
	arena_free(a);
}

static void refusals(void **state)
{
	(void)state;
	check_refused("fillet thinner nan in", "thinner");
	check_refused("fillet thinner inf in", "thinner");
	check_refused("fillet thinner 0 in", "more than 0");
	check_refused("fillet thinner -1/4 in", "under 0");
	check_refused("fillet thinner 1/4", "perhaps in");
	check_refused("fillet thinner 1/4 V", "thinner");
	check_refused("fillet thinner 1/4 to 1/2 in", "one value");
	check_refused("fillet thinner 1/4 in thinner 1/4 in", "twice");
	check_refused("fillet 1/4 in", "no input called");
	check_refused("fillet thinner", "no value");
	check_refused("fillet thinner 1/2 in thicker 1/4 in", "thicker");
	check_refused("fillet thinner 1/2 in hydrogen lots", "low|ordinary");
	check_refused("heat-input volts 29 amps 325", "speed is missing");
	check_refused("heat-input volts 29 amps 325 speed 0 in/min", "more than 0");
	check_refused("groove shape v thickness 1/2 in", "included");
	check_refused("groove shape v thickness 1/2 in included 60 deg land 1/2 in",
	    "land");
	check_refused("tube shape square side 1 in wall 1/2 in", "wall");
	check_refused("angle leg 1 in thickness 1 in", "thickness");
	check_refused("saddle branch 8 in run 6 in", "larger than its run");
	check_refused("pipe nps 7 schedule 40", "no NPS 7");
	check_refused("gauge number 3 material steel", "number");
	check_refused("shade process SMAW", "amps");
	check_refused("shade process OFC amps 100", "thickness");
	check_refused("bend thickness 3/8 in code IX", "edition");
	check_refused("bend thickness 3/8 in code X edition 2010", "code");
	check_refused("bend thickness 3/8 in", "plunger");
	check_refused("qualify code D1.1 edition 1890 test 3G thickness 3/8 in",
	    "edition");
	check_refused("qualify code D1.1 edition 2020 test 6G form pipe od 2 in "
	    "thickness 1 in", "wall");
	check_refused("blank flanges 0.1, 2, 1 in radius 1/2 in thickness 1/8 in",
	    "setback");
	check_refused("arc-time weight 1 lb", "rate");
	check_refused("arc-time weight 1 lb rate 3", "lb/h");
	check_refused("filler weight 1 lb stub 15 in", "stub");
	check_refused("punch thickness 1/4 in", "diameter");
	check_refused("brake thickness 1/2 in length 4 ft owned 1/2, 1 in", "owned");
	check_refused("roll rated 1/4 in bed 4 ft material aluminum", "material");
	check_refused("torch thickness 5 in", "4 in");
	check_refused("preheat thickness 1 in", "steel");
	check_refused("preheat thickness 1/16 in steel A36", "1/8");
	check_refused("preheat thickness 1 in steel A572-50 hydrogen ordinary",
	    "not listed");
	check_refused("credit-hours credits 3 weeks 11", "lecture");
}

static double figure(const char *line, const char *name)
{
	struct arena *a = arena_new(NULL, NULL);
	const struct answer *an = ask(a, line);
	double x = NAN;

	for (size_t i = 0; i < an->nfigures; i++)
		if (str_eq(str_of(an->figures[i].name), str_of(name)))
			x = an->figures[i].value;
	arena_free(a);
	return x;
}

/* The unit words may follow their key's number; a gauge takes its metal from material. */
static void readings(void **state)
{
	(void)state;
	assert_true(fabs(figure("heat-input volts 29 volts amps 325 amps speed 12.5 ipm",
	    "Heat input") - 45.24) < 1e-9);
	assert_true(fabs(figure("HEAT-INPUT Volts 29 AMPS 325 speed 12.5 in/min",
	    "Heat input") - 45.24) < 1e-9);
	assert_true(fabs(figure("brake material 304 thickness 10 ga length 1 ft opening "
	    "1 in", "Force") - 575 * 0.1406 * 0.1406 * 1.5) < 1e-9);
	assert_true(figure("shade process SMAW amps 110-160", "Least shade") == 10);
	assert_true(fabs(figure("gas flow 10 L/min arc 30 min",
	    "Gas") - 300 / 28.316846592) <
	    1e-9);
	assert_true(isnan(figure("fillet thinner 10 ga", "Least leg")));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_example_works),
		cmocka_unit_test(steps_are_shown),
		cmocka_unit_test(metric_steps_are_worked_in_metric),
		cmocka_unit_test(metric_steps_have_no_customary_unit),
		cmocka_unit_test(every_topic_misses_what_is_owed),
		cmocka_unit_test(words_and_defaults_are_sound),
		cmocka_unit_test(refusals),
		cmocka_unit_test(readings),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
