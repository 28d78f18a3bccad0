#include "model/setting.h"

static str text_of(const struct assignment *a, str key)
{
	const struct plain_fact *f = assignment_fact(a, key);

	return f ? str_trim(f->text) : (str){ 0 };
}

str setting_table_process(const struct assignment *a, enum process p)
{
	str transfer = text_of(a, STR("Transfer"));

	if (p == PROCESS_GMAW && str_eq_nocase(transfer, STR("spray")))
		return STR("GMAW spray");
	if (p == PROCESS_GMAW && str_eq_nocase(transfer, STR("short circuit")))
		return STR("GMAW-S");
	return p < PROCESS_COUNT ? process_word(p) : (str){ 0 };
}

bool setting_tungsten(const struct assignment *a, str *class, double *dia_mm)
{
	str rest = text_of(a, STR("Tungsten")), size;
	struct quantity_fault fault;
	struct quantity q;

	if (!str_next(&rest, ',', class) || !str_next(&rest, ',', &size) ||
	    quantity_parse(str_trim(size), QUANTITY_LENGTH, METAL_NONE, &q,
	    &fault) != QUANTITY_OK)
		return false;
	*class = str_trim(*class);
	*dia_mm = q.lo;
	return true;
}

bool setting_quantity(str text, enum quantity_kind kind, struct quantity *out)
{
	for (size_t i = 0; i < text.n; i++) {
		struct quantity_fault fault;
		size_t used;

		if (i && text.p[i - 1] != ' ')
			continue;
		if (quantity_prefix(str_sub(text, i, text.n), kind, METAL_NONE, out,
		    &used, &fault) == QUANTITY_OK)
			return true;
	}
	return false;
}

bool setting_part(const struct assignment *a, str key, size_t i, enum quantity_kind kind,
    struct quantity *out)
{
	str rest = text_of(a, key), part, first = { 0 };
	size_t n = 0;

	for (; str_next(&rest, ';', &part); n++) {
		first = n ? first : part;
		if (n == i)
			return setting_quantity(str_trim(part), kind, out);
	}
	return n == 1 && setting_quantity(str_trim(first), kind, out);
}

/* Digits with at most one point, at the start of a text. */
static bool plain_number(str *s, double *out)
{
	double value = 0, scale = 0;
	size_t i = 0;

	for (; i < s->n && ((s->p[i] >= '0' && s->p[i] <= '9') ||
	    (s->p[i] == '.' && scale == 0)); i++) {
		if (s->p[i] == '.') {
			scale = 1;
			continue;
		}
		value = value * 10 + (s->p[i] - '0');
		scale *= 10;
	}
	*out = scale > 1 ? value / scale : value;
	*s = str_sub(*s, i, s->n);
	return i > 0;
}

bool setting_heat_limit(const struct assignment *a, double *kj_in)
{
	str text = text_of(a, STR("Heat input"));

	return plain_number(&text, kj_in) &&
	    str_starts_nocase(str_trim_left(text), STR("kJ/in"));
}

/* Coatings that end in 5, 6 or 8 are the low-hydrogen ones (AWS A5.1 designation). */
static enum setting_hydrogen hydrogen_of_class(str class)
{
	size_t n = 1;

	if (class.n < 5 || class.p[0] != 'E' || class.p[1] < '0' || class.p[1] > '9')
		return HYDROGEN_UNTOLD;
	while (n < class.n && class.p[n] >= '0' && class.p[n] <= '9')
		n++;
	if (n < 5) /* E308 is stainless */
		return HYDROGEN_UNTOLD;
	return class.p[n - 1] == '5' || class.p[n - 1] == '6' || class.p[n - 1] == '8'
	    ? HYDROGEN_LOW : HYDROGEN_ORDINARY;
}

static enum setting_hydrogen hydrogen_of_sticks(const struct assignment *a)
{
	enum setting_hydrogen all = HYDROGEN_UNTOLD;

	for (uint32_t i = 0; i < a->nfillers; i++) {
		enum setting_hydrogen one = hydrogen_of_class(a->fillers[i].class);

		if (one == HYDROGEN_ORDINARY)
			return one;
		if (one == HYDROGEN_LOW)
			all = one;
	}
	return all;
}

enum setting_hydrogen setting_hydrogen(const struct assignment *a)
{
	enum setting_hydrogen all = HYDROGEN_UNTOLD;

	for (uint32_t i = 0; i < a->nprocesses; i++) {
		enum process p = a->processes[i];
		enum setting_hydrogen one = HYDROGEN_UNTOLD;

		if (p == PROCESS_SMAW)
			one = hydrogen_of_sticks(a);
		else if (p == PROCESS_GMAW || p == PROCESS_GMAW_S ||
		    p == PROCESS_FCAW_G || p == PROCESS_FCAW_S)
			one = HYDROGEN_LOW;
		if (one == HYDROGEN_ORDINARY)
			return one;
		if (one == HYDROGEN_LOW)
			all = one;
	}
	return all;
}

double setting_thickest_mm(const struct assignment *a, size_t i)
{
	const struct weld *w = &a->welds[i];

	return w->t2_mm > w->t1_mm ? w->t2_mm : w->t1_mm;
}
