#include "units/format.h"

#include <math.h>

/* How one length prints; made from a quantity or from a computed value. */
struct style {
	enum quantity_form form;
	unsigned denominator;
	int decimals;
};

static const double noise = 1e-6;

/* x as "1-1/2" when it is a whole number of 1/denominator; false otherwise. */
static bool add_fraction(struct buf *b, double x, unsigned denominator)
{
	double parts = x * denominator;
	double near = floor(parts + 0.5);
	uint64_t all, whole;
	unsigned num, den = denominator;

	if (fabs(parts - near) > noise * denominator || x < 0 || x > 1e8)
		return false;
	all = (uint64_t)near;
	whole = all / denominator;
	num = (unsigned)(all % denominator);
	for (unsigned f = 2; num && f <= den; f++)
		while (num % f == 0 && den % f == 0) {
			num /= f;
			den /= f;
		}
	if (whole || !num)
		buf_addf(b, "%zu", (size_t)whole);
	if (num)
		buf_addf(b, "%s%u/%u", whole ? "-" : "", num, den);
	return true;
}

/* Whether the places written say all of x; "3/8 to 22.5 in" has one place, and 3/8
 * needs three. */
static bool places_suffice(double x, int decimals)
{
	double scaled = x;

	for (int i = 0; i < decimals; i++)
		scaled *= 10;
	return fabs(scaled - floor(scaled + 0.5)) <= noise * (1 + scaled);
}

static void add_inches(struct buf *b, double in, struct style s)
{
	if (in == 0)
		buf_addc(b, '0');
	else if (s.form == FORM_DECIMAL && places_suffice(in, s.decimals))
		buf_add_real(b, in, s.decimals, true);
	else if (s.form == FORM_METRIC || !add_fraction(b, in, s.denominator))
		buf_add_real(b, in, 3, true);
}

/* Millimeters to one place beside a fraction, to two beside a measured wall. */
static void add_mm(struct buf *b, double mm, struct style s)
{
	if (mm == 0)
		buf_addc(b, '0');
	else if (s.form == FORM_FRACTION || s.form == FORM_FEET)
		buf_add_real(b, mm, 1, false);
	else if (s.form == FORM_METRIC)
		buf_add_real(b, mm, 6, false);
	else
		buf_add_real(b, mm, 2, true);
}

static struct style style_of(const struct quantity *q)
{
	unsigned den = q->denominator ? q->denominator : 1;

	return (struct style){ q->form, den, q->decimals };
}

typedef void add_length(struct buf *b, double mm, struct style s);

static void add_in(struct buf *b, double mm, struct style s)
{
	add_inches(b, mm / 25.4, s);
}

/* "6 ft 4 in" has its unit inside, so it is a word of its own. */
static void add_feet(struct buf *b, double mm, struct style s)
{
	double in = mm / 25.4;
	double feet = floor(in / 12 + noise);
	double rest = in - 12 * feet;

	if (feet > 0)
		buf_addf(b, "%zu ft", (size_t)feet);
	if (feet > 0 && rest < noise)
		return;
	if (feet > 0)
		buf_addc(b, ' ');
	add_inches(b, rest < noise ? 0 : rest, s);
	buf_adds(b, " in");
}

/* Value, range and tolerance, each figure printed by add. */
static void add_all(struct buf *b, const struct quantity *q, add_length *add)
{
	struct style s = style_of(q);

	if (!q->no_value)
		add(b, q->lo, s);
	if (q->range) {
		buf_adds(b, " to ");
		add(b, q->hi, s);
	}
	if (!q->tolerance)
		return;
	if (!q->no_value)
		buf_addc(b, ' ');
	if (q->plus == q->minus) {
		buf_adds(b, "\xC2\xB1");
		add(b, q->plus, s);
		return;
	}
	buf_addc(b, '+');
	add(b, q->plus, s);
	buf_adds(b, " -");
	add(b, q->minus, s);
}

/* A pipe wall in inches to three places, as ASME B36.10M prints it. */
static void add_wall_in(struct buf *b, double mm, struct style s)
{
	(void)s;
	buf_add_real(b, mm / 25.4, 3, true);
}

/* A gauge to four, as the gauge tables print it: 11 ga is 0.1196 in. */
static void add_gauge_in(struct buf *b, double mm, struct style s)
{
	(void)s;
	buf_add_real(b, mm / 25.4, 4, true);
}

static void add_gauge(struct buf *b, const struct quantity *q)
{
	/* The thinner sheet, lo, has the higher number. */
	if (q->range)
		buf_addf(b, "%u to ", q->gauge_lo);
	buf_addf(b, "%u ga (", q->range ? q->gauge_hi : q->gauge_lo);
	add_all(b, q, add_gauge_in);
	buf_adds(b, " in)");
}

static void add_pipe(struct buf *b, const struct quantity *q)
{
	buf_addf(b, "NPS %s", q->pipe->nps);
	if (q->scheduled)
		buf_addf(b, " schedule %s", q->pipe->schedule);
}

static void add_metric(struct buf *b, const struct quantity *q)
{
	buf_adds(b, " [");
	add_all(b, q, add_mm);
	buf_adds(b, " mm]");
}

/* In inches or feet; a pipe goes by its name. */
static void add_length_us(struct buf *b, const struct quantity *q)
{
	switch (q->form) {
	case FORM_GAUGE:
		add_gauge(b, q);
		break;
	case FORM_FEET:
		add_all(b, q, add_feet);
		break;
	default:
		add_all(b, q, add_in);
		buf_adds(b, " in");
	}
}

void format_length(struct buf *b, const struct quantity *q)
{
	if (q->form != FORM_PIPE) {
		add_length_us(b, q);
		add_metric(b, q);
		return;
	}
	add_pipe(b, q);
	if (q->kind == QUANTITY_PIPE) {
		buf_addf(b, " [DN %d]", q->pipe->dn);
		return;
	}
	buf_adds(b, " (");
	add_wall_in(b, q->lo, style_of(q));
	buf_adds(b, " in)");
	add_metric(b, q);
}

void format_length_in(struct buf *b, const struct quantity *q)
{
	add_length *wall = q->form == FORM_GAUGE ? add_gauge_in : add_wall_in;
	bool measured = q->form == FORM_GAUGE || q->form == FORM_PIPE;

	add_all(b, q, measured ? wall : add_in);
}

void format_length_mm(struct buf *b, const struct quantity *q)
{
	add_all(b, q, add_mm);
}

static struct style computed_style(double mm, double tolerance_mm)
{
	double in = mm / 25.4;
	/* A tolerance of 1/32 in, 0.79375 mm, or finer. */
	bool fine = tolerance_mm > 0 && tolerance_mm <= 25.4 / 32 + noise;
	unsigned den = fine ? 32 : 16;
	double near = floor(in * den + 0.5) / den;

	if (fabs(in - near) <= 0.002 + noise)
		return (struct style){ FORM_FRACTION, den, 0 };
	return (struct style){ FORM_DECIMAL, den, 3 };
}

static void add_computed_in(struct buf *b, double mm, struct style s)
{
	double in = mm / 25.4;

	if (s.form == FORM_FRACTION)
		in = floor(in * s.denominator + 0.5) / s.denominator;
	add_inches(b, in, s);
}

/* A negative length, such as an offset, prints its sign before the size. */
static double add_sign(struct buf *b, double mm)
{
	if (mm < 0)
		buf_addc(b, '-');
	return fabs(mm);
}

void format_computed(struct buf *b, double mm, double tolerance_mm)
{
	struct style s = computed_style(fabs(mm), tolerance_mm);

	add_computed_in(b, add_sign(b, mm), s);
	buf_adds(b, " in [");
	add_mm(b, add_sign(b, mm), s);
	buf_adds(b, " mm]");
}

void format_computed_in(struct buf *b, double mm, double tolerance_mm)
{
	struct style s = computed_style(fabs(mm), tolerance_mm);

	add_computed_in(b, add_sign(b, mm), s);
}

void format_mm(struct buf *b, double mm, int decimals)
{
	buf_add_real(b, mm, decimals, false);
}

static void add_degrees(struct buf *b, double deg)
{
	if (!add_fraction(b, deg, 4))
		buf_add_real(b, deg, 2, false);
}

void format_angle(struct buf *b, double deg)
{
	add_degrees(b, deg);
	buf_adds(b, "\xC2\xB0");
}

/* A figure of a kind that is no length, in the unit it was written in. */
static void add_plain(struct buf *b, const struct quantity *q, double x)
{
	if (q->kind == QUANTITY_ANGLE)
		add_degrees(b, x);
	else if (q->form == FORM_FRACTION && q->denominator > 1 &&
	    add_fraction(b, x, q->denominator))
		return;
	else if (q->form == FORM_METRIC)
		buf_add_real(b, x, 1, false);
	else
		buf_add_real(b, x, q->decimals > 3 ? q->decimals : 3, false);
}

/* In how many of a unit one base unit is counted, and from where: x = base mul + add. */
struct scale {
	const char *unit;
	double mul, add;
};

static const struct scale customary[QUANTITY_KINDS] = {
	[QUANTITY_ANGLE] = { "\xC2\xB0", 1, 0 },
	[QUANTITY_CURRENT] = { " A", 1, 0 },
	[QUANTITY_VOLTAGE] = { " V", 1, 0 },
	[QUANTITY_TIME] = { " h", 1, 0 },
	[QUANTITY_MASS] = { " lb", 1, 0 },
	[QUANTITY_FLOW] = { " cfh", 1, 0 },
	[QUANTITY_TEMPERATURE] = { " \xC2\xB0" "F", 1, 0 },
	[QUANTITY_PRESSURE] = { " psi", 1, 0 },
	[QUANTITY_SPEED] = { " in/min", 1, 0 },
	[QUANTITY_PERCENT] = { " %", 1, 0 },
	[QUANTITY_COUNT] = { "", 1, 0 },
};

/* Wire runs at this speed and more, in meters a minute; a torch or an arc below it. */
#define WIRE_LEAST_IPM 50.0
static const struct scale wire_speed = { " m/min", 0.0254, 0 };

/* Units that a US sheet prints as written, without a bracket of their own. */
static const struct { const char *print; struct scale scale; } written[] = {
	{ "min", { " min", 60, 0 } },
	{ "s", { " s", 3600, 0 } },
	{ "oz", { " oz", 16, 0 } },
	{ "ton", { " ton", 1.0 / 2000, 0 } },
	{ "cfm", { " cfm", 1.0 / 60, 0 } },
	{ "ksi", { " ksi", 1.0 / 1000, 0 } },
	{ "ft/min", { " ft/min", 1.0 / 12, 0 } },
};

/* Metric kin in brackets, with the places a sheet gives them. Factors as in the
 * table of units (NIST SP 811, appendix B). */
static const struct { struct scale scale; int decimals; } metric[QUANTITY_KINDS] = {
	[QUANTITY_MASS] = { { " kg", 0.45359237, 0 }, 2 },
	[QUANTITY_FLOW] = { { " L/min", 28.316846592 / 60, 0 }, 1 },
	[QUANTITY_TEMPERATURE] = { { " \xC2\xB0" "C", 5.0 / 9, -160.0 / 9 }, 0 },
	[QUANTITY_PRESSURE] = { { " kPa", 44482.216152605 / 6451.6, 0 }, 0 },
	[QUANTITY_SPEED] = { { " mm/s", 25.4 / 60, 0 }, 1 },
};

/* Strengths in MPa: 60 ksi in kPa has figures that nobody reads. */
static const struct scale megapascal = { " MPa", 44482.216152605 / 6451600, 0 };

static struct scale scale_of(const struct quantity *q)
{
	for (size_t i = 0; q->unit && i < sizeof written / sizeof *written; i++)
		if (str_eq(str_of(q->unit), str_of(written[i].print)))
			return written[i].scale;
	return customary[q->kind];
}

/* Whole ends join by a hyphen, as in 110-140 A; others by "to", and so do degrees F
 * and C, which may be below zero. */
static void add_range_joint(struct buf *b, const struct quantity *q)
{
	bool plain = q->form == FORM_FRACTION && q->denominator <= 1 &&
	    q->kind != QUANTITY_TEMPERATURE;

	buf_adds(b, plain ? "-" : " to ");
}

static void add_in_scale(struct buf *b, const struct quantity *q, struct scale s)
{
	if (!q->no_value)
		add_plain(b, q, q->lo * s.mul + s.add);
	if (q->range) {
		add_range_joint(b, q);
		add_plain(b, q, q->hi * s.mul + s.add);
	}
	if (!q->tolerance)
		return;
	if (!q->no_value)
		buf_addc(b, ' ');
	buf_adds(b, q->plus == q->minus ? "\xC2\xB1" : "+");
	add_plain(b, q, q->plus * s.mul);
	if (q->plus == q->minus)
		return;
	buf_adds(b, " -");
	add_plain(b, q, q->minus * s.mul);
}

/* The metric kin of q; unit null: none. */
static struct scale metric_scale_of(const struct quantity *q)
{
	if (q->unit && str_eq(str_of(q->unit), STR("ksi")))
		return megapascal;
	if (q->kind == QUANTITY_SPEED && q->lo >= WIRE_LEAST_IPM)
		return wire_speed;
	return metric[q->kind].scale;
}

static void add_metric_kin(struct buf *b, const struct quantity *q, struct scale s)
{
	int decimals = metric[q->kind].decimals;

	buf_add_real(b, q->lo * s.mul + s.add, decimals, false);
	if (q->range) {
		add_range_joint(b, q);
		buf_add_real(b, q->hi * s.mul + s.add, decimals, false);
	}
	buf_adds(b, s.unit);
}

static void add_bracket(struct buf *b, const struct quantity *q)
{
	struct scale s = metric_scale_of(q);

	if (!s.unit || q->tolerance)
		return;
	buf_adds(b, " [");
	add_metric_kin(b, q, s);
	buf_addc(b, ']');
}

void format_quantity(struct buf *b, const struct quantity *q)
{
	struct scale s;

	if (q->kind == QUANTITY_ANY)
		return;
	if (q->kind == QUANTITY_LENGTH || q->kind == QUANTITY_PIPE) {
		format_length(b, q);
		return;
	}
	s = scale_of(q);
	add_in_scale(b, q, s);
	buf_adds(b, s.unit);
	add_bracket(b, q);
}

/* Within half a thousandth a fraction is the size itself. */
static void add_answer_in(struct buf *b, double mm)
{
	struct style s = { FORM_FRACTION, 64, 0 };
	double in = fabs(mm) / 25.4, near = floor(in * 64 + 0.5) / 64;

	add_sign(b, mm);
	if (fabs(in - near) <= 0.0005) {
		add_inches(b, near, s);
	} else {
		buf_add_real(b, in, 3, true);
		buf_adds(b, " (");
		add_inches(b, near, s);
		buf_addc(b, ')');
	}
}

void format_answer(struct buf *b, double mm)
{
	add_answer_in(b, mm);
	buf_adds(b, " in [");
	buf_add_real(b, add_sign(b, mm), 2, false);
	buf_adds(b, " mm]");
}

/* ---- metric first ---- */

static void add_length_metric(struct buf *b, const struct quantity *q)
{
	if (q->form == FORM_PIPE)
		buf_addf(b, "DN %d", q->pipe->dn);
	if (q->form == FORM_PIPE && q->scheduled)
		buf_addf(b, " schedule %s", q->pipe->schedule);
	if (q->form == FORM_PIPE && q->kind == QUANTITY_PIPE)
		return;
	buf_adds(b, q->form == FORM_PIPE ? " (" : "");
	add_all(b, q, add_mm);
	buf_adds(b, q->form == FORM_PIPE ? " mm)" : " mm");
}

static void add_length_customary(struct buf *b, const struct quantity *q)
{
	if (q->form != FORM_PIPE) {
		add_length_us(b, q);
		return;
	}
	buf_addf(b, "NPS %s", q->pipe->nps);
	if (q->kind == QUANTITY_PIPE)
		return;
	buf_adds(b, ", ");
	add_wall_in(b, q->lo, style_of(q));
	buf_adds(b, " in");
}

void format_quantity_as(struct buf *b, const struct format *f, const struct quantity *q)
{
	struct scale s = metric_scale_of(q), us = scale_of(q);
	bool length = q->kind == QUANTITY_LENGTH || q->kind == QUANTITY_PIPE;

	if (!f || !f->metric_first || (!length && (!s.unit || q->tolerance))) {
		format_quantity(b, q);
		return;
	}
	if (length)
		add_length_metric(b, q);
	else
		add_metric_kin(b, q, s);
	buf_adds(b, " [");
	if (length)
		add_length_customary(b, q);
	else
		add_in_scale(b, q, us);
	buf_addf(b, "%s]", length ? "" : us.unit);
}

void format_words(struct buf *b, const struct format *f, const struct quantity *q)
{
	const bool first = f && f->metric_first;
	const double feet = q->lo / 304.8;

	if (q->kind != QUANTITY_LENGTH || q->form != FORM_FEET || q->range || q->tolerance ||
	    fabs(feet - floor(feet + 0.5)) > noise) {
		format_quantity_as(b, f, q);
		return;
	}
	buf_add_real(b, first ? q->lo / 1000 : feet, first ? 1 : 0, false);
	buf_adds(b, first ? " m [" : " ft [");
	buf_add_real(b, first ? feet : q->lo / 1000, first ? 0 : 1, false);
	buf_adds(b, first ? " ft]" : " m]");
}

void format_computed_as(struct buf *b, const struct format *f, double mm,
    double tolerance_mm)
{
	struct style s = computed_style(fabs(mm), tolerance_mm);

	if (!f || !f->metric_first) {
		format_computed(b, mm, tolerance_mm);
		return;
	}
	add_mm(b, add_sign(b, mm), s);
	buf_adds(b, " mm [");
	add_computed_in(b, add_sign(b, mm), s);
	buf_adds(b, " in]");
}

void format_answer_as(struct buf *b, const struct format *f, double mm)
{
	if (!f || !f->metric_first) {
		format_answer(b, mm);
		return;
	}
	buf_add_real(b, add_sign(b, mm), 2, false);
	buf_adds(b, " mm [");
	add_answer_in(b, mm);
	buf_adds(b, " in]");
}

/* 1 psi is 44482216152605 / 6451600000 Pa (NIST SP 811, from the pound-force). */
void format_strength(struct buf *b, const struct format *f, double psi)
{
	const double mpa = psi * 44482216152605 / 6451600000 / 1e6;
	bool first = f && f->metric_first;

	buf_add_real(b, first ? mpa : psi / 1000, first ? 0 : 2, false);
	buf_adds(b, first ? " MPa [" : " ksi [");
	buf_add_real(b, first ? psi / 1000 : mpa, first ? 2 : 0, false);
	buf_adds(b, first ? " ksi]" : " MPa]");
}

static void add_pounds(struct buf *b, double lb, int places)
{
	buf_add_real(b, lb, lb < 0.1 ? 3 : places, true);
	buf_adds(b, " lb");
}

static void add_kilograms(struct buf *b, double kg, int places)
{
	if (kg >= 0.1) {
		buf_add_real(b, kg, places, true);
		buf_adds(b, " kg");
		return;
	}
	buf_add_real(b, kg * 1000, kg < 0.01 ? 1 : 0, true);
	buf_adds(b, " g");
}

void format_weight(struct buf *b, const struct format *f, double lb, int places)
{
	const double kg = lb * 0.45359237;
	bool first = f && f->metric_first;

	first ? add_kilograms(b, kg, places) : add_pounds(b, lb, places);
	buf_adds(b, " [");
	first ? add_pounds(b, lb, places) : add_kilograms(b, kg, places);
	buf_addc(b, ']');
}
