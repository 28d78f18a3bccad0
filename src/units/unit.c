#include "units/unit.h"

#include "base/finding.h"
#include "units/scan.h"

#define UNIT(word, kind, print, mul, div, form) \
	{ { word, sizeof word - 1 }, kind, print, mul, div, 0, form }

/* Exact by definition: inch 25.4 mm; pound 0.45359237 kg; pound-force 4.4482216152605
 * N, hence 1 psi = 44482216152605 / 6451600000 Pa; cubic foot 28.316846592 L (NIST SP
 * 811, appendix B). The first unit of a kind is the one a sheet uses. */
static const struct unit units[] = {
	UNIT("in", QUANTITY_LENGTH, "in", 254, 10, FORM_FRACTION),
	UNIT("inch", QUANTITY_LENGTH, "in", 254, 10, FORM_FRACTION),
	UNIT("inches", QUANTITY_LENGTH, "in", 254, 10, FORM_FRACTION),
	UNIT("\"", QUANTITY_LENGTH, "in", 254, 10, FORM_FRACTION),
	UNIT("ft", QUANTITY_LENGTH, "ft", 3048, 10, FORM_FEET),
	UNIT("foot", QUANTITY_LENGTH, "ft", 3048, 10, FORM_FEET),
	UNIT("feet", QUANTITY_LENGTH, "ft", 3048, 10, FORM_FEET),
	UNIT("'", QUANTITY_LENGTH, "ft", 3048, 10, FORM_FEET),
	/* No reader spells this one: inches that were written after feet. */
	UNIT("ft-in", QUANTITY_LENGTH, "ft", 254, 10, FORM_FEET),
	UNIT("ga", QUANTITY_LENGTH, "ga", 1, 1, FORM_GAUGE),
	UNIT("gauge", QUANTITY_LENGTH, "ga", 1, 1, FORM_GAUGE),
	UNIT("gage", QUANTITY_LENGTH, "ga", 1, 1, FORM_GAUGE),
	UNIT("mm", QUANTITY_LENGTH, "mm", 1, 1, FORM_METRIC),
	UNIT("millimeters", QUANTITY_LENGTH, "mm", 1, 1, FORM_METRIC),
	UNIT("cm", QUANTITY_LENGTH, "cm", 10, 1, FORM_METRIC),
	UNIT("m", QUANTITY_LENGTH, "m", 1000, 1, FORM_METRIC),
	UNIT("deg", QUANTITY_ANGLE, "deg", 1, 1, FORM_FRACTION),
	UNIT("degree", QUANTITY_ANGLE, "deg", 1, 1, FORM_FRACTION),
	UNIT("degrees", QUANTITY_ANGLE, "deg", 1, 1, FORM_FRACTION),
	UNIT("A", QUANTITY_CURRENT, "A", 1, 1, FORM_FRACTION),
	UNIT("amp", QUANTITY_CURRENT, "A", 1, 1, FORM_FRACTION),
	UNIT("amps", QUANTITY_CURRENT, "A", 1, 1, FORM_FRACTION),
	UNIT("ampere", QUANTITY_CURRENT, "A", 1, 1, FORM_FRACTION),
	UNIT("amperes", QUANTITY_CURRENT, "A", 1, 1, FORM_FRACTION),
	UNIT("V", QUANTITY_VOLTAGE, "V", 1, 1, FORM_FRACTION),
	UNIT("volt", QUANTITY_VOLTAGE, "V", 1, 1, FORM_FRACTION),
	UNIT("volts", QUANTITY_VOLTAGE, "V", 1, 1, FORM_FRACTION),
	UNIT("h", QUANTITY_TIME, "h", 1, 1, FORM_FRACTION),
	UNIT("hr", QUANTITY_TIME, "h", 1, 1, FORM_FRACTION),
	UNIT("hrs", QUANTITY_TIME, "h", 1, 1, FORM_FRACTION),
	UNIT("hour", QUANTITY_TIME, "h", 1, 1, FORM_FRACTION),
	UNIT("hours", QUANTITY_TIME, "h", 1, 1, FORM_FRACTION),
	UNIT("min", QUANTITY_TIME, "min", 1, 60, FORM_FRACTION),
	UNIT("minute", QUANTITY_TIME, "min", 1, 60, FORM_FRACTION),
	UNIT("minutes", QUANTITY_TIME, "min", 1, 60, FORM_FRACTION),
	UNIT("s", QUANTITY_TIME, "s", 1, 3600, FORM_FRACTION),
	UNIT("sec", QUANTITY_TIME, "s", 1, 3600, FORM_FRACTION),
	UNIT("seconds", QUANTITY_TIME, "s", 1, 3600, FORM_FRACTION),
	UNIT("lb", QUANTITY_MASS, "lb", 1, 1, FORM_FRACTION),
	UNIT("lbs", QUANTITY_MASS, "lb", 1, 1, FORM_FRACTION),
	UNIT("lbf", QUANTITY_MASS, "lb", 1, 1, FORM_FRACTION),
	UNIT("pound", QUANTITY_MASS, "lb", 1, 1, FORM_FRACTION),
	UNIT("pounds", QUANTITY_MASS, "lb", 1, 1, FORM_FRACTION),
	UNIT("oz", QUANTITY_MASS, "oz", 1, 16, FORM_FRACTION),
	UNIT("ton", QUANTITY_MASS, "ton", 2000, 1, FORM_FRACTION),
	UNIT("tons", QUANTITY_MASS, "ton", 2000, 1, FORM_FRACTION),
	UNIT("kg", QUANTITY_MASS, "kg", 1e8, 45359237, FORM_METRIC),
	UNIT("g", QUANTITY_MASS, "g", 1e5, 45359237, FORM_METRIC),
	UNIT("cfh", QUANTITY_FLOW, "cfh", 1, 1, FORM_FRACTION),
	UNIT("ft3/h", QUANTITY_FLOW, "cfh", 1, 1, FORM_FRACTION),
	UNIT("cfm", QUANTITY_FLOW, "cfm", 60, 1, FORM_FRACTION),
	UNIT("L/min", QUANTITY_FLOW, "L/min", 60e9, 28316846592, FORM_METRIC),
	UNIT("lpm", QUANTITY_FLOW, "L/min", 60e9, 28316846592, FORM_METRIC),
	UNIT("degF", QUANTITY_TEMPERATURE, "\xC2\xB0" "F", 1, 1, FORM_FRACTION),
	UNIT("F", QUANTITY_TEMPERATURE, "\xC2\xB0" "F", 1, 1, FORM_FRACTION),
	{ { "degC", 4 }, QUANTITY_TEMPERATURE, "\xC2\xB0" "C", 9, 5, 32, FORM_METRIC },
	{ { "C", 1 }, QUANTITY_TEMPERATURE, "\xC2\xB0" "C", 9, 5, 32, FORM_METRIC },
	UNIT("psi", QUANTITY_PRESSURE, "psi", 1, 1, FORM_FRACTION),
	UNIT("psig", QUANTITY_PRESSURE, "psi", 1, 1, FORM_FRACTION),
	UNIT("ksi", QUANTITY_PRESSURE, "ksi", 1000, 1, FORM_FRACTION),
	UNIT("kPa", QUANTITY_PRESSURE, "kPa", 64516e8, 44482216152605, FORM_METRIC),
	UNIT("MPa", QUANTITY_PRESSURE, "MPa", 64516e11, 44482216152605, FORM_METRIC),
	UNIT("bar", QUANTITY_PRESSURE, "bar", 64516e10, 44482216152605, FORM_METRIC),
	UNIT("in/min", QUANTITY_SPEED, "in/min", 1, 1, FORM_FRACTION),
	UNIT("ipm", QUANTITY_SPEED, "in/min", 1, 1, FORM_FRACTION),
	UNIT("ft/min", QUANTITY_SPEED, "ft/min", 12, 1, FORM_FRACTION),
	UNIT("mm/s", QUANTITY_SPEED, "mm/s", 600, 254, FORM_METRIC),
	UNIT("mm/min", QUANTITY_SPEED, "mm/min", 10, 254, FORM_METRIC),
	UNIT("cm/min", QUANTITY_SPEED, "cm/min", 100, 254, FORM_METRIC),
	UNIT("m/min", QUANTITY_SPEED, "m/min", 10000, 254, FORM_METRIC),
	UNIT("%", QUANTITY_PERCENT, "%", 1, 1, FORM_FRACTION),
	UNIT("percent", QUANTITY_PERCENT, "%", 1, 1, FORM_FRACTION),
	UNIT("each", QUANTITY_COUNT, "", 1, 1, FORM_FRACTION),
	UNIT("pieces", QUANTITY_COUNT, "", 1, 1, FORM_FRACTION),
};

enum { NUNITS = sizeof units / sizeof *units };

const struct unit *unit_find(str name)
{
	for (size_t i = 0; i < NUNITS; i++)
		if (str_eq_nocase(units[i].name, name))
			return &units[i];
	return NULL;
}

const struct unit *unit_usual(enum quantity_kind kind)
{
	for (size_t i = 0; i < NUNITS; i++)
		if (units[i].kind == kind)
			return &units[i];
	return NULL;
}

str unit_likely(str wrong, enum quantity_kind kind)
{
	const struct unit *usual = unit_usual(kind);
	str names[NUNITS], near = { 0 };
	size_t n = 0;

	for (size_t i = 0; wrong.n && i < NUNITS; i++)
		if (kind == QUANTITY_ANY || units[i].kind == kind)
			names[n++] = units[i].name;
	if (n)
		near = likely_word(wrong, names, n);
	return near.n || !usual ? near : usual->name;
}

/* End of a word of letters with at most one slash: "in/min", "ft3/h". */
static size_t word_end(str s, size_t at)
{
	size_t end = at;

	while (scan_is_letter(scan_glyph(s, end).c))
		end++;
	if (scan_glyph(s, end).c == '3' && scan_glyph(s, end + 1).c == '/')
		end++;
	if (scan_glyph(s, end).c == '/' && scan_is_letter(scan_glyph(s, end + 1).c))
		for (end++; scan_is_letter(scan_glyph(s, end).c);)
			end++;
	return end;
}

/* The F or C that may follow a degree sign or deg: its end, or `at`. */
static size_t scale_end(str s, size_t at, const char **name)
{
	size_t start = scan_skip_blanks(s, at);
	int c = scan_glyph(s, start).c & ~0x20;

	if ((c != 'F' && c != 'C') || word_end(s, start) != start + 1)
		return at;
	*name = c == 'F' ? "degF" : "degC";
	return start + 1;
}

static const struct unit *read_degrees(str s, size_t at, size_t *end)
{
	const char *name = "deg";

	*end = scale_end(s, at, &name);
	return unit_find(str_of(name));
}

/* Signs: degree, inch mark, foot mark (two of them are an inch mark), percent. */
static const struct unit *read_sign(str s, size_t at, size_t *end)
{
	struct glyph g = scan_glyph(s, at);

	*end = at + g.n;
	switch (g.c) {
	case GLYPH_DEGREE:
		return read_degrees(s, *end, end);
	case '"':
		return unit_find(STR("\""));
	case '%':
		return unit_find(STR("%"));
	case '\'':
		g = scan_glyph(s, *end);
		if (g.c != '\'')
			return unit_find(STR("'"));
		*end += g.n;
		return unit_find(STR("\""));
	default:
		*end = at;
		return NULL;
	}
}

const struct unit *unit_read(str s, size_t at, size_t *start, size_t *end)
{
	size_t from = scan_skip_blanks(s, at);
	struct glyph g = scan_glyph(s, from);
	const struct unit *u;

	if (g.c == '-' && from == at && scan_is_letter(scan_glyph(s, from + g.n).c))
		from += g.n;
	*start = from;
	if (!scan_is_letter(scan_glyph(s, from).c)) {
		u = read_sign(s, from, end);
		if (!u)
			*start = *end = at;
		return u;
	}
	*end = word_end(s, from);
	u = unit_find(str_sub(s, from, *end));
	g = scan_glyph(s, *end);
	if (u && g.c == '.' && !scan_is_digit(scan_glyph(s, *end + 1).c))
		++*end;
	if (u && u->kind == QUANTITY_ANGLE)
		return read_degrees(s, *end, end);
	return u;
}
