#include "model/assignment.h"

#include "base/buf.h"
#include "model/shop_word.h"

/* Room for one entry a part: "a, b; c" has three. */
static size_t count_parts(str s, const char *seps)
{
	struct said rest = { .s = s }, part;
	size_t n = 0;

	while (said_next(&rest, seps, &part))
		n++;
	return n;
}

static void fact_kind(struct binder *b, const struct field *row, const struct block *in)
{
	uint32_t value;

	if (read_word(b, said_all(in), row->words, &value))
		b->a->kind = (enum kind)value;
	else
		b->a->unread = true;
}

static void fact_hours(struct binder *b, const struct field *row, const struct block *in)
{
	(void)row;
	read_hours(b, said_all(in), &b->a->hours);
}

static void plain(struct binder *b, const struct field *row, const struct block *in)
{
	struct assignment *a = b->a;
	struct plain_fact *p = ARENA_PUSH(b->arena, a->facts, a->nfacts, a->facts_cap);

	*p = (struct plain_fact){ .key = row->key, .text = in->text, .pos = block_pos(in, 0) };
}

/* Without shop.md there is nothing to compare a station with. */
static void fact_station(struct binder *b, const struct field *row,
    const struct block *in)
{
	const struct model *m = b->model;

	if (!m->nstations) {
		plain(b, row, in);
		return;
	}
	for (size_t i = 0; i < m->nstations; i++)
		if (words_same(m->stations[i].name, in->text)) {
			b->a->station = (uint32_t)i;
			return;
		}
	shop_word_note(b, said_all(in), SHOP_STATION);
}

static void fact_was(struct binder *b, const struct field *row, const struct block *in)
{
	size_t used;

	if (id_of_assignment(b->arena, in->text, &used).n && used == in->text.n) {
		plain(b, row, in);
		return;
	}
	finding_repair(b->f, complain(b, FINDING_BAD_ID, block_pos(in, 0),
	    "\"%.*s\" does not look like an assignment; this line is left out",
	    STR_ARG(in->text)), "write an id such as SM-19");
}

static void fact_process(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct assignment *a = b->a;
	struct said rest = said_all(in), part;
	uint32_t value;

	a->processes = arena_array(b->arena, count_parts(in->text, ",;"),
	    sizeof *a->processes);
	while (said_next(&rest, ",;", &part))
		if (read_word(b, part, row->words, &value))
			a->processes[a->nprocesses++] = (enum process)value;
		else
			a->unread = true;
}

enum joint joint_meant(struct binder *b, struct said t)
{
	uint32_t value = complain_word(b, t, &words_joint);

	return value == NONE ? JOINT_COUNT : (enum joint)value;
}

static void fact_joint(struct binder *b, const struct field *row, const struct block *in)
{
	struct assignment *a = b->a;
	struct said rest = said_all(in), part;

	(void)row;
	a->joints = arena_array(b->arena, count_parts(in->text, ",;"), sizeof *a->joints);
	while (said_next(&rest, ",;", &part)) {
		enum joint j = joint_find(part.s);

		/* Joints are short words, and a guess at one may be wrong. */
		a->unread |= j == JOINT_COUNT;
		j = j < JOINT_COUNT ? j : joint_meant(b, part);
		if (j < JOINT_COUNT)
			a->joints[a->njoints++] = j;
	}
}

static void fact_material(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct assignment *a = b->a;
	struct said rest = said_all(in), part;

	(void)row;
	a->materials = arena_array(b->arena, count_parts(in->text, ",;"),
	    sizeof *a->materials);
	while (said_next(&rest, ",;", &part))
		a->materials[a->nmaterials++] = (struct material){
			part.s, sheet_metal_of(part.s), said_pos(part) };
}

/* The unit at the end of a list, "in" of "1/4, 3/8 in": what follows its last digit. */
static str unit_at_end(str s)
{
	size_t n = s.n;

	while (n && !(s.p[n - 1] >= '0' && s.p[n - 1] <= '9'))
		n--;
	return str_trim(str_sub(s, n, s.n));
}

static bool read_thickness(struct binder *b, struct said part, enum sheet_metal metal,
    str unit, struct quantity *out)
{
	struct quantity_fault fault;
	str lent;

	if (quantity_parse(part.s, QUANTITY_LENGTH, metal, out, &fault) == QUANTITY_OK)
		return true;
	if (fault.result == QUANTITY_NO_UNIT && unit.n) {
		struct quantity_fault again;

		lent = str_format(b->arena, "%.*s %.*s", STR_ARG(part.s), STR_ARG(unit));
		if (quantity_parse(lent, QUANTITY_LENGTH, metal, out,
		    &again) == QUANTITY_OK)
			return true;
	}
	complain_fault(b, part, &fault);
	return false;
}

static bool is_figure(str s, size_t i)
{
	return i < s.n && s.p[i] >= '0' && s.p[i] <= '9';
}

/* "9,5" between blanks: half the world writes 9.5 so, and a list could be meant too. */
static bool find_decimal_comma(str s, size_t *from, size_t *to)
{
	for (size_t i = 1; i < s.n; i++) {
		if (s.p[i] != ',' || !is_figure(s, i - 1) || !is_figure(s, i + 1))
			continue;
		for (*from = i; is_figure(s, *from - 1); --*from)
			;
		for (*to = i + 1; is_figure(s, *to); ++*to)
			;
		if ((!*from || s.p[*from - 1] == ' ') && (*to == s.n || s.p[*to] == ' '))
			return true;
	}
	return false;
}

static bool has_decimal_comma(struct binder *b, struct said t)
{
	size_t from, to;
	struct said pair;

	if (!find_decimal_comma(t.s, &from, &to))
		return false;
	pair = said_sub(t, from, to);
	finding_repair(b->f, complain(b, FINDING_BAD_QUANTITY, said_pos(pair),
	    "\"%.*s\" can be one size or two; it is left out", STR_ARG(pair.s)),
	    "write a point in the number, or a blank after the comma of a list");
	return true;
}

static void complain_pairs(struct binder *b, const struct block *in)
{
	const struct assignment *a = b->a;
	struct finding *d = complain(b, FINDING_FACTS_DISAGREE, block_pos(in, 0),
	    "there are %u thicknesses for %u materials, and they pair in order",
	    (unsigned)a->nthicknesses, (unsigned)a->nmaterials);

	finding_relate(b->f, d, a->materials[0].pos)->label = STR("the materials");
	finding_repair(b->f, d, "write one thickness for each material, in the same order, "
	    "or one for all");
}

static void fact_thickness(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct assignment *a = b->a;
	struct said rest = said_all(in), part;
	str unit = unit_at_end(in->text);
	bool all = true;

	(void)row;
	if (has_decimal_comma(b, rest))
		return;
	a->thicknesses = arena_array(b->arena, count_parts(in->text, ",;"),
	    sizeof *a->thicknesses);
	for (uint32_t i = 0; said_next(&rest, ",;", &part); i++) {
		uint32_t of = a->nmaterials > 1 ? i : 0;
		enum sheet_metal metal = of < a->nmaterials ? a->materials[of].metal
		    : METAL_NONE;
		struct quantity q;

		if (read_thickness(b, part, metal, unit, &q) && keep_size(b, part, &q))
			a->thicknesses[a->nthicknesses++] = q;
		else
			all = false;
	}
	if (all && a->nmaterials > 1 && a->nthicknesses > 1 &&
	    a->nmaterials != a->nthicknesses)
		complain_pairs(b, in);
}

bool position_find(struct said t, struct position_at *out)
{
	uint32_t value = words_find(&words_position, t.s), way;
	struct said first;

	*out = (struct position_at){ .position = POSITION_COUNT, .pos = said_pos(t) };
	if (value != NONE) {
		out->position = (enum position)value;
		return true;
	}
	if (!said_word(&t, &first))
		return false;
	value = words_find(&words_position, first.s);
	way = words_find(&words_progression, str_trim(t.s));
	if (value == NONE || way == NONE)
		return false;
	out->position = (enum position)value;
	out->progression = (enum progression)way;
	return true;
}

void position_check(struct binder *b, struct said t, const struct position_at *at)
{
	if (!position_wants_progression(at->position) || at->progression)
		return;
	finding_repair(b->f, complain(b, FINDING_MISSING_PROGRESSION, said_pos(t),
	    "\"%.*s\" does not say whether the weld goes up or down", STR_ARG(t.s)),
	    "write \"%.*s up\" or \"%.*s down\"", STR_ARG(t.s), STR_ARG(t.s));
}

/* "F3 up": the way is known, the position most likely is. */
static bool position_meant(struct binder *b, struct said word, uint32_t way,
    struct position_at *out)
{
	uint32_t value = complain_word(b, word, &words_position);

	if (value == NONE)
		return false;
	out->position = (enum position)value;
	out->progression = (enum progression)way;
	return true;
}

/* "3F upp": the position is known, its way most likely is. */
static bool progression_meant(struct binder *b, struct said way, uint32_t position,
    struct position_at *out)
{
	uint32_t value = complain_word(b, way, &words_progression);

	if (value == NONE)
		return false;
	out->position = (enum position)position;
	out->progression = (enum progression)value;
	return true;
}

bool position_read(struct binder *b, struct said t, struct position_at *out)
{
	struct said rest = t, first;
	uint32_t value;

	if (position_find(t, out)) {
		position_check(b, t, out);
		return true;
	}
	if (said_word(&rest, &first) && str_trim(rest.s).n &&
	    words_find(&words_position, first.s) != NONE)
		return progression_meant(b, said_trim(rest), words_find(&words_position,
		    first.s), out);
	value = words_find(&words_progression, str_trim(rest.s));
	if (value != NONE)
		return position_meant(b, first, value, out);
	value = complain_word(b, t, &words_position);
	if (value != NONE)
		out->position = (enum position)value;
	return value != NONE;
}

static void fact_position(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct assignment *a = b->a;
	struct said rest = said_all(in), part;

	(void)row;
	a->positions = arena_array(b->arena, count_parts(in->text, ",;"),
	    sizeof *a->positions);
	while (said_next(&rest, ",;", &part))
		if (position_read(b, part, &a->positions[a->npositions]))
			a->npositions++;
		else
			a->unread = true;
}

/* "E7018, 1/8 in, root" or "E7018 1/8 in": a length may follow the class at once. */
static void read_filler(struct binder *b, struct said item, struct filler *out)
{
	struct said part, word, rest;
	struct quantity_fault fault;

	if (!said_next(&item, ",", &part))
		return;
	rest = part;
	said_word(&rest, &word);
	rest = said_trim(rest);
	out->class = part.s;
	out->pos = said_pos(part);
	if (rest.s.n && quantity_parse(rest.s, QUANTITY_LENGTH, METAL_NONE, &out->dia,
	    &fault) == QUANTITY_OK)
		out->class = word.s;
	while (said_next(&item, ",", &part)) {
		bool number = part.s.p[0] == '.' || (part.s.p[0] >= '0' &&
		    part.s.p[0] <= '9');

		if (number)
			read_quantity(b, part, QUANTITY_LENGTH, METAL_NONE, &out->dia);
		else
			out->where = part.s;
	}
}

static void fact_filler(struct binder *b, const struct field *row, const struct block *in)
{
	struct assignment *a = b->a;
	struct said rest = said_all(in), item;

	(void)row;
	a->fillers = arena_array(b->arena, count_parts(in->text, ";"),
	    sizeof *a->fillers);
	while (said_next(&rest, ";", &item))
		read_filler(b, item, &a->fillers[a->nfillers++]);
}

/* "45 A" lacks its kind of current, "45 A, DC+" has it behind: one slip either way. */
static void read_bare_current(struct binder *b, struct said item, struct current *out)
{
	struct said amps = { 0 }, kind = { 0 };
	struct quantity_fault fault;
	struct finding *d;
	uint32_t value = NONE;
	bool good;

	said_next(&item, ",", &amps);
	if (said_next(&item, ",", &kind))
		value = words_find(&words_polarity, kind.s);
	good = !item.s.n && quantity_parse(amps.s, QUANTITY_CURRENT, METAL_NONE, &out->amps,
	    &fault) == QUANTITY_OK;
	d = complain(b, FINDING_UNKNOWN_WORD, out->pos, "\"%.*s\" is not a kind of current, "
	    "and one stands before the amperes", STR_ARG(amps.s));
	if (value == NONE) {
		finding_repair(b->f, d, "begin it with one of: DC+, DC-, AC, as in "
		    "\"DC+, 110-140 A\"");
		return;
	}
	out->polarity = words_show(&words_polarity, value);
	finding_repair(b->f, d, "write \"%.*s, %.*s\"", STR_ARG(out->polarity),
	    STR_ARG(good ? amps.s : STR("110-140 A")));
}

static void read_current(struct binder *b, struct said item, struct current *out)
{
	struct said first;
	uint32_t value;

	out->pos = said_pos(item);
	if (item.s.p[0] >= '0' && item.s.p[0] <= '9') {
		read_bare_current(b, item, out);
		return;
	}
	said_word(&item, &first);
	if (str_ends(first.s, STR(",")))
		first.s.n--;
	if (read_word(b, first, &words_polarity, &value))
		out->polarity = words_show(&words_polarity, value);
	item = said_trim(item);
	if (str_starts(item.s, STR(",")))
		item = said_trim(said_sub(item, 1, item.s.n));
	if (item.s.n)
		read_quantity(b, item, QUANTITY_CURRENT, METAL_NONE, &out->amps);
}

static void fact_current(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct assignment *a = b->a;
	struct said rest = said_all(in), item;

	(void)row;
	a->currents = arena_array(b->arena, count_parts(in->text, ";"),
	    sizeof *a->currents);
	while (said_next(&rest, ";", &item))
		read_current(b, item, &a->currents[a->ncurrents++]);
}

/* A text that must also be one quantity, or several separated by semicolons. */
static void plain_quantity(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct said rest = said_all(in), part;
	struct quantity q;
	bool good = true;

	while (said_next(&rest, ";", &part))
		good &= read_quantity(b, part, row->kind, METAL_NONE, &q);
	if (good)
		plain(b, row, in);
}

/* A text chosen from a list is kept in its shown spelling. */
static void plain_word(struct binder *b, const struct field *row, const struct block *in)
{
	struct assignment *a = b->a;
	uint32_t value;

	if (!read_word(b, said_all(in), row->words, &value))
		return;
	plain(b, row, in);
	a->facts[a->nfacts - 1].text = words_show(row->words, value);
}

/* Any words will do; one alone that is a slip off from a known one is that. */
static void fact_backing(struct binder *b, const struct field *row, const struct block *in)
{
	struct assignment *a = b->a;
	bool alone = str_find_char(in->text, ' ', 0) == in->text.n;
	uint32_t value;

	if (!alone || !words_likely(b->arena, &words_backing, in->text).n) {
		plain(b, row, in);
	} else if (read_word(b, said_all(in), &words_backing, &value)) {
		plain(b, row, in);
		a->facts[a->nfacts - 1].text = words_show(&words_backing, value);
	}
}

static void fact_tungsten(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct said rest = said_all(in), part;
	struct quantity q;

	said_next(&rest, ",", &part);
	if (!said_next(&rest, ",", &part) ||
	    read_quantity(b, part, QUANTITY_LENGTH, METAL_NONE, &q))
		plain(b, row, in);
}

static bool is_machine(const struct model *m, str name)
{
	for (size_t i = 0; i < m->nmachines; i++)
		if (words_same(m->machines[i].name, name))
			return true;
	return false;
}

static void fact_machines(struct binder *b, const struct field *row,
    const struct block *in)
{
	const struct model *m = b->model;
	struct said rest = said_all(in), part;

	plain(b, row, in);
	while (m->nmachines && said_next(&rest, ",;", &part))
		if (!is_machine(m, part.s))
			shop_word_note(b, part, SHOP_MACHINE);
}

static void fact_attempts(struct binder *b, const struct field *row,
    const struct block *in)
{
	uint32_t n;

	(void)row;
	if (read_count(b, said_all(in), 1, 6, &n))
		b->a->attempts = n;
}

#define ROW(row, name, reader, text) \
	[FACT_##row] = { .key = { name, sizeof name - 1 }, .read = reader, .help = text
#define END }

static const struct field rows[] = {
	ROW(KIND, "Kind", fact_kind, "what kind of work this is"),
	    .words = &words_kind END,
	ROW(HOURS, "Hours", fact_hours, "hours that a student needs, as 16 or 16 h") END,
	ROW(STATION, "Station", fact_station, "a station of shop.md") END,
	ROW(WAS, "Was", fact_was, "the id that this assignment had before") END,
	ROW(PROCESS, "Process", fact_process, "AWS letters; a list pairs with Filler"),
	    .words = &words_process END,
	ROW(JOINT, "Joint", fact_joint, "the joint, or a list of joints"),
	    .words = &words_joint END,
	ROW(MATERIAL, "Material", fact_material, "such as A36 plate; a list pairs with "
	    "Thickness") END,
	ROW(THICKNESS, "Thickness", fact_thickness, "a list of lengths, gauges or pipe "
	    "walls") END,
	ROW(POSITION, "Position", fact_position, "2F, 3G up, 1G rolled; a list") END,
	ROW(FILLER, "Filler", fact_filler, "E7018, 1/8 in, and where it goes") END,
	ROW(CURRENT, "Current", fact_current, "DC+, 110-140 A; pairs with Filler") END,
	ROW(VOLTS, "Volts", plain_quantity, "17-19 V"), .kind = QUANTITY_VOLTAGE END,
	ROW(WIRE_FEED, "Wire feed", plain_quantity, "250-300 in/min"),
	    .kind = QUANTITY_SPEED END,
	ROW(TRAVEL, "Travel", plain_quantity, "6-8 in/min, along the joint"),
	    .kind = QUANTITY_SPEED END,
	ROW(HEAT_INPUT, "Heat input", plain, "45 kJ/in at most") END,
	ROW(TUNGSTEN, "Tungsten", fact_tungsten, "EWCe-2, 3/32 in") END,
	ROW(GAS, "Gas", plain, "shielding gas and flow") END,
	ROW(PURGE, "Purge", plain, "purge gas and flow") END,
	ROW(PREHEAT, "Preheat", plain, "least temperature before welding") END,
	ROW(INTERPASS, "Interpass", plain, "temperature limits between passes") END,
	ROW(OVEN, "Oven", plain, "how electrodes are kept") END,
	ROW(TRANSFER, "Transfer", plain_word, "how metal crosses the arc"),
	    .words = &words_transfer END,
	ROW(BACKING, "Backing", fact_backing,
	    "steel strip 1/4 x 1 in, ring, none, back-gouged") END,
	ROW(PROCEDURE, "Procedure", plain, "number of the welding procedure") END,
	ROW(STOCK, "Stock", plain_word, "who bevels the stock"),
	    .words = &words_stock END,
	ROW(COATING, "Coating", plain, "what is on the metal") END,
	ROW(MACHINES, "Machines", fact_machines, "machines of shop.md") END,
	ROW(TIME_LIMIT, "Time limit", plain, "how long an attempt may take") END,
	ROW(RANGE, "Range", plain, "what the coupon leads to") END,
	ROW(WITNESS, "Witness", plain, "the role of the person who watches") END,
	ROW(TEAM, "Team", plain, "how many work together") END,
	ROW(PLACE, "Place", plain_word, "booth, open floor or confined"),
	    .words = &words_place END,
	ROW(TESTED_BY, "Tested by", plain_word, "student or instructor"),
	    .words = &words_tester END,
	ROW(ATTEMPTS, "Attempts", fact_attempts, "1 to 6; 3 when not given") END,
};
_Static_assert(sizeof rows / sizeof *rows == FACT_ROWS, "one row a fact");
_Static_assert(sizeof rows / sizeof *rows <= FIELDS_MOST,
    "fields_read has room for every row");

const struct field_table fields_assignment = { rows, FACT_ROWS, "an assignment" };

struct pos assignment_fact_pos(const struct assignment *a, str key)
{
	for (uint32_t i = 0; i < a->nplaces; i++)
		if (words_same(rows[a->places[i].row].key, key))
			return a->places[i].pos;
	return a->pos;
}

const struct plain_fact *assignment_fact(const struct assignment *a, str key)
{
	for (size_t i = 0; i < a->nfacts; i++)
		if (words_same(a->facts[i].key, key))
			return &a->facts[i];
	return NULL;
}
