#include "reckon/answer.h"

#include "units/format.h"

#include <assert.h>

struct measure_row {
	const char *us;
	double us_times;         /* base to US unit */
	int us_places;
	const char *metric;
	double metric_times;     /* base to metric unit */
	int metric_places;
	const char *rounding;
};

/* Exact by definition: inch 25.4 mm, pound 0.45359237 kg, pound-force 4.4482216152605 N,
 * cubic foot 28.316846592 L (NIST SP 811, appendix B). */
#define LB 0.45359237
#define LBF 4.4482216152605
#define FT3 28.316846592

static const struct measure_row measures[MEASURES] = {
	[MEASURE_LENGTH] = { "in", 1 / 25.4, 3, "mm", 1, 1,
	    "lengths to a 16th of an inch when within 0.002 in of one, else to 0.001 "
	    "in" },
	[MEASURE_FINE] = { "in", 1 / 25.4, 4, "mm", 1, 2, "fine lengths to 0.0001 in" },
	[MEASURE_AREA] = { "in2", 1 / (25.4 * 25.4), 4, "mm2", 1, 1,
	    "areas to 0.0001 in2" },
	[MEASURE_WEIGHT] = { "lb", 1, 2, "kg", LB, 2, "weights to 0.01 lb" },
	[MEASURE_PER_FOOT] = { "lb/ft", 1, 2, "kg/m", LB / 0.3048, 2,
	    "weights a foot to 0.01 lb/ft" },
	[MEASURE_DEPOSIT] = { "lb/ft", 1, 3, "kg/m", LB / 0.3048, 3,
	    "weld metal to 0.001 lb/ft" },
	[MEASURE_PER_AREA] = { "lb/ft2", 1, 3, "kg/m2", LB / (0.3048 * 0.3048), 2,
	    "weights of sheet to 0.001 lb/ft2" },
	[MEASURE_HEAT] = { "kJ/in", 1, 2, "kJ/mm", 1 / 25.4, 2, "heat to 0.01 kJ/in" },
	[MEASURE_HOURS] = { "h", 1, 2, "min", 60, 0, "times to 0.01 h" },
	[MEASURE_MINUTES] = { "min", 1, 1, "", 1, 0, "times to 0.1 min" },
	[MEASURE_FLOW] = { "cfh", 1, 1, "L/min", FT3 / 60, 1, "flows to 0.1 cfh" },
	[MEASURE_VOLUME] = { "ft3", 1, 1, "L", FT3, 0, "gas to 0.1 ft3" },
	[MEASURE_TEMPERATURE] = { "°F", 1, 0, "°C", 5.0 / 9, 0, "temperatures to 1 °F" },
	[MEASURE_TONS] = { "tons", 1, 1, "kN", 2 * LBF, 0,
	    "forces to 0.1 ton of 2000 lb" },
	[MEASURE_TONS_PER_FOOT] = { "tons/ft", 1, 2, "kN/m", 2 * LBF / 0.3048, 0,
	    "forces a foot to 0.01 ton" },
	[MEASURE_PRESSURE] = { "psig", 1, 0, "kPa", LBF / (25.4 * 25.4) * 1000, 0,
	    "pressures to 1 psi" },
	[MEASURE_SPEED] = { "in/min", 1, 1, "mm/s", 25.4 / 60, 1,
	    "speeds to 0.1 in/min" },
	[MEASURE_RUN] = { "ft", 1 / 304.8, 2, "m", 0.001, 2, "" },
	[MEASURE_RATE] = { "lb/h", 1, 2, "kg/h", LB, 2, "" },
	[MEASURE_DENSITY] = { "lb/in3", 1, 4, "kg/m3", LB / (0.0254 * 0.0254 * 0.0254), 0, "" },
	[MEASURE_STRENGTH] = { "ksi", 1, 1, "MPa", LBF / (25.4 * 25.4) * 1000, 0, "" },
	[MEASURE_PERCENT] = { "%", 1, 2, "", 1, 0, "percent to 0.01" },
	[MEASURE_ANGLE] = { "°", 1, 2, "", 1, 0, "angles to 0.01 degree" },
	[MEASURE_NUMBER] = { "", 1, 3, "", 1, 0, "numbers to 0.001" },
	[MEASURE_COUNT] = { "", 1, 0, "", 1, 0, "" },
	[MEASURE_WORDS] = { "", 1, 0, "", 1, 0, "" },
};

static str say(struct answer *an, const char *format, va_list *ap)
{
	struct buf b = { .arena = an->arena };

	buf_addv(&b, format, ap);
	return buf_str(&b);
}

void answer_range(struct answer *an, const char *name, enum measure measure, double value,
    double high, enum seen seen)
{
	struct figure *f = ARENA_PUSH(an->arena, an->figures, an->nfigures,
	    an->figures_cap);

	*f = (struct figure){ name, measure, value, high, { 0 }, seen };
}

void answer_figure(struct answer *an, const char *name, enum measure measure,
    double value,
    enum seen seen)
{
	answer_range(an, name, measure, value, value, seen);
}

void answer_words(struct answer *an, const char *name, enum seen seen, const char *format,
    ...)
{
	va_list ap;

	va_start(ap, format);
	answer_figure(an, name, MEASURE_WORDS, 0, seen);
	an->figures[an->nfigures - 1].words = say(an, format, &ap);
	va_end(ap);
}

void answer_remark(struct answer *an, const char *format, ...)
{
	va_list ap;

	assert(an->nfigures);
	va_start(ap, format);
	an->figures[an->nfigures - 1].words = say(an, format, &ap);
	va_end(ap);
}

void answer_step(struct answer *an, const char *format, ...)
{
	va_list ap;

	va_start(ap, format);
	*ARENA_PUSH(an->arena, an->steps, an->nsteps, an->steps_cap) =
	    say(an, format, &ap);
	va_end(ap);
}

void answer_note(struct answer *an, const char *format, ...)
{
	va_list ap;

	va_start(ap, format);
	*ARENA_PUSH(an->arena, an->notes, an->nnotes, an->notes_cap) =
	    say(an, format, &ap);
	va_end(ap);
}

void answer_source(struct answer *an, const char *source)
{
	str s = str_of(source);

	for (size_t i = 0; i < an->nsources; i++)
		if (str_eq(an->sources[i], s))
			return;
	*ARENA_PUSH(an->arena, an->sources, an->nsources, an->sources_cap) = s;
}

void answer_refuse(struct answer *an, const char *format, ...)
{
	va_list ap;

	if (an->fault.n)
		return;
	va_start(ap, format);
	an->fault = say(an, format, &ap);
	va_end(ap);
}

bool answer_has_dagger(const struct answer *an)
{
	for (size_t i = 0; i < an->nfigures; i++)
		if (an->figures[i].seen != SEEN_PAGE)
			return true;
	return false;
}

const char *answer_say(struct answer *an, const char *format, ...)
{
	struct buf b = { .arena = an->arena };
	va_list ap;

	va_start(ap, format);
	buf_addv(&b, format, &ap);
	va_end(ap);
	return buf_z(&b);
}

const char *answer_number(struct answer *an, double x)
{
	struct buf b = { .arena = an->arena };

	buf_add_real(&b, x, x < 1 && x > -1 ? 5 : 4, false);
	return buf_z(&b);
}

static bool is_length(enum measure m)
{
	return m == MEASURE_LENGTH || m == MEASURE_FINE;
}

/* Places of a step in metric: fine enough that whoever follows it comes to the figure. */
static int metric_places(enum measure m)
{
	if (is_length(m))
		return 3;
	return m == MEASURE_DENSITY ? 0 : measures[m].metric_places + 2;
}

const char *answer_bare(struct answer *an, enum measure m, double base)
{
	struct buf b = { .arena = an->arena };

	if (!an->metric && !is_length(m))
		return answer_number(an, measure_us(m, base));
	if (an->metric)
		buf_add_real(&b, measure_metric(m, base), metric_places(m), false);
	else
		buf_add_real(&b, measure_us(m, base), 5, false);
	return buf_z(&b);
}

const char *answer_value(struct answer *an, enum measure m, double base)
{
	return answer_say(an, "%s %s", answer_bare(an, m, base),
	    an->metric ? measures[m].metric : measures[m].us);
}

double measure_us(enum measure m, double base)
{
	return base * measures[m].us_times;
}

double measure_metric(enum measure m, double base)
{
	if (m == MEASURE_TEMPERATURE)
		return (base - 32) * measures[m].metric_times;
	return base * measures[m].metric_times;
}

const char *measure_us_unit(enum measure m)
{
	return measures[m].us;
}

const char *measure_metric_unit(enum measure m)
{
	return measures[m].metric;
}

const char *measure_rounding(enum measure m)
{
	return measures[m].rounding;
}

/* One side: "20-25 psig", "6-3/8 in". */
static void add_side(struct buf *b, const struct figure *f, bool metric)
{
	const struct measure_row *row = &measures[f->measure];
	double (*side)(enum measure, double) = metric ? measure_metric : measure_us;
	const char *unit = metric ? row->metric : row->us;
	int places = metric ? row->metric_places : row->us_places;

	for (int i = 0; i < (f->high > f->value ? 2 : 1); i++) {
		double base = i ? f->high : f->value;

		if (i)
			buf_adds(b, " to ");
		if (f->measure == MEASURE_LENGTH && !metric)
			format_computed_in(b, base, 0);
		else
			buf_add_real(b, side(f->measure, base), places, places > 1);
	}
	if (unit[0])
		buf_addf(b, "%s%s", f->measure == MEASURE_ANGLE ? "" : " ", unit);
}

void figure_text(struct buf *b, const struct figure *f, bool metric_first)
{
	/* Minutes stand behind hours in every edition: they are not the metric of them. */
	bool first = metric_first && f->measure != MEASURE_HOURS;

	if (f->measure == MEASURE_WORDS) {
		buf_add(b, f->words);
		return;
	}
	if (!measures[f->measure].metric[0]) {
		add_side(b, f, false);
	} else {
		add_side(b, f, first);
		buf_adds(b, " [");
		add_side(b, f, !first);
		buf_addc(b, ']');
	}
	if (f->words.n)
		buf_addf(b, ", %.*s", STR_ARG(f->words));
}
