/* Limits of machines in shop.md that the rules would pass over: a key or a unit that is a
 * slip takes a limit away, and no sheet shows it. */
#include "check/rule_machine.h"

#include "model/words.h"

enum reading { READ_LENGTH, READ_BOX, READ_FORCE, READ_LIST };

/* What the rules read of a machine, by a word of its name, as src/manual/format.md lists
 * it; the other ways to write a key come behind its first. */
static const struct said {
	const char *machine, *key;
	enum reading reading;
} rows[] = {
	{ "shear", "Bed", READ_LENGTH }, { "shear", "Length", READ_LENGTH },
	{ "shear", "Mild steel", READ_LENGTH }, { "shear", "Carbon steel", READ_LENGTH },
	{ "shear", "Stainless", READ_LENGTH }, { "shear", "Aluminum", READ_LENGTH },
	{ "brake", "Bed", READ_LENGTH }, { "brake", "Length", READ_LENGTH },
	{ "brake", "Force", READ_FORCE }, { "brake", "Tonnage", READ_FORCE },
	{ "brake", "V openings", READ_LIST }, { "brake", "V ", READ_LIST },
	{ "brake", "V-", READ_LIST }, { "brake", "Die openings", READ_LIST },
	{ "ironworker", "Force", READ_FORCE }, { "ironworker", "Tonnage", READ_FORCE },
	{ "ironworker", "Punch", READ_LENGTH }, { "ironworker", "Largest hole", READ_LENGTH },
	{ "ironworker", "Flat bar", READ_BOX },
	{ "roll", "Width", READ_LENGTH }, { "roll", "Mild steel", READ_LENGTH },
	{ "roll", "Least diameter", READ_LENGTH },
	{ "roll", "Minimum diameter", READ_LENGTH },
	{ "plasma", "Table", READ_BOX }, { "plasma", "Edge start", READ_LENGTH },
	{ "plasma", "Pierce", READ_LENGTH },
	{ "track", "Carbon steel", READ_LENGTH }, { "track", "Mild steel", READ_LENGTH },
	{ "saw", "Round", READ_LENGTH }, { "saw", "Rectangle", READ_BOX },
	{ "drill", "Mild steel", READ_LENGTH },
	{ "tensile", "Force", READ_FORCE }, { "tensile", "Grips", READ_BOX },
};
enum { ROWS = sizeof rows / sizeof *rows };

static bool is_read(struct rule_context *x, const struct machine *m, const struct said *row)
{
	const char *keys[] = { row->key, NULL };
	struct quantity_fault fault;
	struct quantity_list list;
	double small, large;

	switch (row->reading) {
	case READ_BOX:
		return machine_box(m, keys, &small, &large);
	case READ_FORCE:
		return machine_lbf(m) > 0;
	case READ_LIST:
		return quantity_list_parse(x->scratch, machine_says(m, keys), QUANTITY_LENGTH,
		    METAL_NONE, &list, &fault) == QUANTITY_OK;
	default:
		return machine_mm(m, keys, sheet_metal_of(str_of(row->key))) > 0;
	}
}

static bool has_figure(str s)
{
	for (size_t i = 0; i < s.n; i++)
		if (s.p[i] >= '0' && s.p[i] <= '9')
			return true;
	return false;
}

/* Words alone say that there is no such limit. */
static void judge_value(struct rule_context *x, const struct machine *m,
    const struct plain_fact *f, const struct said *row)
{
	static const char *const forms[] = {
		[READ_LENGTH] = "\"3/4 in\" or \"10 ft\"", [READ_BOX] = "\"3/4 x 8 in\"",
		[READ_FORCE] = "\"60 ton\" or \"60,000 lbf\"",
		[READ_LIST] = "\"1/2, 1, 2 in\"",
	};
	static const char *const units[2][2] = { { "in", "ft" }, { "ton", "lbf" } };
	struct quantity_fault fault = { 0 };
	struct quantity q;
	struct finding *d;
	str rest, word;
	size_t at = f->text.n;

	if (!has_figure(f->text) || is_read(x, m, row))
		return;
	d = rule_report(x, FINDING_BAD_QUANTITY, f->pos, NONE,
	    "\"%.*s\" is not understood, so %.*s of the %.*s is not judged", STR_ARG(f->text),
	    STR_ARG(f->key), STR_ARG(m->name));
	d->level = LEVEL_WARNING;
	finding_repair(x->f, d, "write it as %s", forms[row->reading]);
	if (row->reading == READ_LENGTH)
		quantity_parse(f->text, QUANTITY_LENGTH, METAL_NONE, &q, &fault);
	rest = str_sub(f->text, fault.offset, f->text.n);
	if (fault.result == QUANTITY_UNKNOWN_UNIT && fault.likely.n && str_word(&rest, &word))
		finding_offer(x->f, d, f->pos, word, fault.likely);
	while (at && f->text.p[at - 1] != ' ')
		at--;
	for (size_t i = 0; i < 2; i++)
		finding_guess(x->f, d, f->pos, str_sub(f->text, at, f->text.n),
		    str_of(units[row->reading == READ_FORCE][i]));
}

/* Long words bear two slips. */
static bool is_slip(str key, const char *of)
{
	size_t most = str_of(of).n < 10 ? 1 : 2;

	return str_distance(key, str_of(of), most) <= most;
}

static void judge_key(struct rule_context *x, const struct machine *m,
    const struct plain_fact *f)
{
	for (size_t i = 0; i < ROWS; i++) {
		const char *keys[] = { rows[i].key, NULL };
		struct finding *d;

		if (!says(m->name, rows[i].machine) || machine_limit(m, keys) ||
		    !is_slip(f->key, rows[i].key))
			continue;
		d = rule_report(x, FINDING_UNKNOWN_KEY, f->pos, NONE,
		    "\"%.*s\" is no limit of the %.*s that is judged", STR_ARG(f->key),
		    STR_ARG(m->name));
		d->level = LEVEL_WARNING;
		finding_offer(x->f, d, (struct pos){ f->pos.file, f->pos.line, 1 }, f->key,
		    str_of(rows[i].key));
		return;
	}
}

static void judge_limit(struct rule_context *x, const struct machine *m,
    const struct plain_fact *f)
{
	for (size_t i = 0; i < ROWS; i++)
		if (says(m->name, rows[i].machine) &&
		    str_starts_nocase(f->key, str_of(rows[i].key))) {
			judge_value(x, m, f, &rows[i]);
			return;
		}
	judge_key(x, m, f);
}

void rule_machine_said(struct rule_context *x)
{
	for (size_t i = 0; i < x->m->nmachines; i++)
		for (size_t k = 0; k < x->m->machines[i].nlimits; k++)
			judge_limit(x, &x->m->machines[i], &x->m->machines[i].limits[k]);
}
