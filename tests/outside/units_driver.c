/* Prints "from-value from-unit to-unit our-value" for many conversions, for
 * tests/outside/units.sh to compare with GNU units. The spellings of the units are
 * those of GNU units; ours stand beside them. */
#include "units/quantity.h"

#include <stdio.h>

static int failed;

static double read_value(const char *text, enum quantity_kind want)
{
	struct quantity q;
	struct quantity_fault f;

	if (quantity_parse(str_of(text), want, METAL_NONE, &q, &f) != QUANTITY_OK) {
		fprintf(stderr, "%s: %s\n", text, f.reason);
		failed = 1;
	}
	return q.lo;
}

static void print_fractions(void)
{
	for (int den = 2; den <= 64; den *= 2)
		for (int num = 1; num < den; num += 2) {
			char text[40];

			snprintf(text, sizeof text, "%d/%d in", num, den);
			printf("%d|%d inch mm %.17g\n", num, den, read_value(text, QUANTITY_LENGTH));
			snprintf(text, sizeof text, "%d-%d/%d in", num, num, den);
			printf("(%d+%d|%d) inch mm %.17g\n", num, num, den,
			    read_value(text, QUANTITY_LENGTH));
		}
}

struct pair { const char *ours, *theirs, *base; enum quantity_kind kind; };

static void print_decimals(const struct pair *p)
{
	static const char *const numbers[] = {
		"1", "0.035", "7.112", "12.5", "0.1196", "350", "1000.25", "0.000001",
		"9999999", "33.3",
	};

	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
		char text[60];

		snprintf(text, sizeof text, "%s %s", numbers[i], p->ours);
		printf("%s %s %s %.17g\n", numbers[i], p->theirs, p->base,
		    read_value(text, p->kind));
	}
}

int main(void)
{
	static const struct pair pairs[] = {
		{ "in", "inch", "mm", QUANTITY_LENGTH },
		{ "ft", "foot", "mm", QUANTITY_LENGTH },
		{ "cm", "cm", "mm", QUANTITY_LENGTH },
		{ "m", "m", "mm", QUANTITY_LENGTH },
		{ "min", "minute", "hour", QUANTITY_TIME },
		{ "s", "second", "hour", QUANTITY_TIME },
		{ "oz", "ounce", "pound", QUANTITY_MASS },
		{ "kg", "kg", "pound", QUANTITY_MASS },
		{ "g", "gram", "pound", QUANTITY_MASS },
		{ "ton", "ton", "pound", QUANTITY_MASS },
		{ "cfm", "ft3/min", "ft3/hour", QUANTITY_FLOW },
		{ "L/min", "liter/min", "ft3/hour", QUANTITY_FLOW },
		{ "kPa", "kPa", "psi", QUANTITY_PRESSURE },
		{ "MPa", "MPa", "psi", QUANTITY_PRESSURE },
		{ "bar", "bar", "psi", QUANTITY_PRESSURE },
		{ "ksi", "ksi", "psi", QUANTITY_PRESSURE },
		{ "mm/s", "mm/s", "inch/min", QUANTITY_SPEED },
		{ "mm/min", "mm/min", "inch/min", QUANTITY_SPEED },
		{ "m/min", "m/min", "inch/min", QUANTITY_SPEED },
		{ "ft/min", "ft/min", "inch/min", QUANTITY_SPEED },
		{ "degC", "tempC", "tempF", QUANTITY_TEMPERATURE },
		{ "degF", "tempF", "tempF", QUANTITY_TEMPERATURE },
	};

	print_fractions();
	for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++)
		print_decimals(&pairs[i]);
	return failed;
}
