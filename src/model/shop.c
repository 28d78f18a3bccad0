/* Sections, stations, machines and the jig. */
#include "model/parts.h"

#include "base/buf.h"

/* Names are compared one by one, so there is a limit to how many there may be. */
enum { NAMES_MOST = 200 };

/* Findings among which an unknown section is looked for again. */
enum { TOLD_MOST = 500 };

/* The rest of a heading such as "Station booth"; also the thing read last. */
static void add_section(struct binder *b, str name, struct pos pos)
{
	struct model *m = b->model;
	struct section *s = ARENA_PUSH(b->arena, m->sections, m->nsections,
	    m->sections_cap);

	s->name = name;
	s->pos = pos;
}

static void add_station(struct binder *b, str name, struct pos pos)
{
	struct model *m = b->model;
	struct station *s = ARENA_PUSH(b->arena, m->stations, m->nstations,
	    m->stations_cap);

	s->name = name;
	s->pos = pos;
}

static void add_machine(struct binder *b, str name, struct pos pos)
{
	struct model *m = b->model;
	struct machine *s = ARENA_PUSH(b->arena, m->machines, m->nmachines,
	    m->machines_cap);

	s->name = name;
	s->pos = pos;
}

/* "16 h a week" */
static void fact_open(struct binder *b, const struct field *row, const struct block *in)
{
	static const struct word rests[] = { { { "a week", 6 }, 0 }, { { "per week", 8 },
	    0 },
		{ { "/week", 5 }, 0 }, { { "weekly", 6 }, 0 } };
	static const struct words weekly = { { "how often: a week", 17 }, rests, 4 };
	struct section *s = &b->model->sections[b->model->nsections - 1];
	struct said t = said_all(in), rest;
	struct quantity_fault fault;
	struct quantity q;
	size_t used;
	uint32_t value;

	(void)row;
	if (quantity_prefix(t.s, QUANTITY_TIME, METAL_NONE, &q, &used, &fault)) {
		complain_fault(b, t, &fault);
		return;
	}
	s->open_hours_week = q.lo;
	rest = said_trim(said_sub(t, used, t.s.n));
	if (rest.s.n)
		read_word(b, rest, &weekly, &value);
}

static void fact_places(struct binder *b, const struct field *row, const struct block *in)
{
	(void)row;
	read_count(b, said_all(in), 1, 1000,
	    &b->model->stations[b->model->nstations - 1].places);
}

/* The finding of the same unknown section, null at its first line. */
static struct finding *told_section(struct binder *b, str message)
{
	for (size_t i = b->f->n; i-- > 0;)
		if (b->f->v[i].name == FINDING_UNKNOWN_WORD &&
		    str_starts(b->f->v[i].message, message))
			return &b->f->v[i];
	return NULL;
}

uint32_t section_find(struct binder *b, struct said t)
{
	struct model *m = b->model;
	str *names = arena_array(b->arena, m->nsections, sizeof *names), likely;
	str message = str_format(b->f->arena, "\"%.*s\" is not a section of shop.md",
	    STR_ARG(t.s));
	struct finding *d;
	bool again;

	for (uint32_t i = 0; i < m->nsections; i++) {
		names[i] = m->sections[i].name;
		if (words_same(names[i], t.s))
			return i;
	}
	d = b->f->n < TOLD_MOST ? told_section(b, message) : NULL;
	again = d != NULL;
	if (again)
		finding_relate(b->f, d, said_pos(t))->label = STR("named here too");
	else
		d = complain(b, FINDING_UNKNOWN_WORD, said_pos(t), "%.*s", STR_ARG(message));
	likely = again ? likely_word(t.s, names, m->nsections)
	    : offer_likely(b, d, t.s, names, m->nsections);
	for (uint32_t i = 0; likely.n && i < m->nsections; i++) {
		if (likely.p != names[i].p)
			continue;
		if (!again)
			d->message = str_format(b->f->arena, "%.*s; it is read as \"%.*s\"",
			    STR_ARG(message), STR_ARG(likely));
		return i;
	}
	if (again)
		return NONE;
	finding_repair(b->f, d, "write a heading \"## Section %.*s\" in shop.md, or the name of "
	    "one that it has", STR_ARG(t.s));
	finding_slip(b->f, d, d->pos, t.s, (str){ 0 });
	offer_guesses(b, d, t.s, names, m->nsections, ANY_DISTANCE);
	return NONE;
}

/* Kept as they are meant, for they are compared with the names of sections. */
static void fact_sections(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct model *m = b->model;
	struct said rest = said_all(in), part;
	struct buf meant = { .arena = b->arena };

	(void)row;
	while (said_next(&rest, ",;", &part)) {
		uint32_t i = section_find(b, part);

		buf_adds(&meant, meant.n ? ", " : "");
		buf_add(&meant, i == NONE ? part.s : m->sections[i].name);
	}
	m->stations[m->nstations - 1].sections = buf_str(&meant);
}

static void fact_diameters(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct quantity_list list;
	struct quantity_fault fault;

	(void)row;
	if (quantity_list_parse(b->arena, in->text, QUANTITY_LENGTH, METAL_NONE, &list,
	    &fault)) {
		complain_fault(b, said_all(in), &fault);
		return;
	}
	b->model->plungers = list.v;
	b->model->nplungers = list.n;
	b->model->plungers_pos = block_pos(in, 0);
}

#define FIELD(name, reader, text) \
	{ .key = { name, sizeof name - 1 }, .read = reader, .help = text }

static const struct field section_rows[] = {
	FIELD("Open", fact_open, "hours a week, as 16 h a week"),
};
static const struct field station_rows[] = {
	FIELD("Places", fact_places, "how many students can work there at once"),
	FIELD("Sections", fact_sections, "the sections that use it"),
};
static const struct field plunger_rows[] = {
	FIELD("Diameters", fact_diameters, "of the plungers of the bend test jig"),
};

/* A machine's keys are its own limits: any is kept. */
static void read_machine(struct binder *b, const struct block *v, size_t n)
{
	struct machine *s = &b->model->machines[b->model->nmachines - 1];

	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_FACT && v[i].level == 1)
			*ARENA_PUSH(b->arena, s->limits, s->nlimits, s->limits_cap) =
			    (struct plain_fact){ .key = v[i].key, .text = v[i].text,
				.pos = block_pos(&v[i], 0) };
		else
			complain_block(b, &v[i], "write a limit as \"- **Bed:** 10 ft\"");
}

static void read_lines(struct binder *b, const struct block *v, size_t n,
    struct plain_fact **list, size_t *count, size_t *cap)
{
	for (size_t i = 0; i < n; i++)
		if ((v[i].kind == BLOCK_FACT || v[i].kind == BLOCK_BULLET) &&
		    v[i].level == 1)
			*ARENA_PUSH(b->arena, *list, *count, *cap) = (struct plain_fact){
				.key = v[i].kind == BLOCK_FACT ? v[i].key : (str){ 0 },
				.text = v[i].text, .pos = block_pos(&v[i], 0) };
		else
			complain_block(b, &v[i], "write one bullet a thing");
}

static void read_gauges(struct binder *b, const struct block *v, size_t n)
{
	struct model *m = b->model;

	read_lines(b, v, n, &m->gauges, &m->ngauges, &m->gauges_cap);
}

static void read_stock(struct binder *b, const struct block *v, size_t n)
{
	struct model *m = b->model;

	read_lines(b, v, n, &m->stock, &m->nstock, &m->stock_cap);
}

static size_t count_sections(const struct model *m)
{
	return m->nsections;
}

static size_t count_stations(const struct model *m)
{
	return m->nstations;
}

static size_t count_machines(const struct model *m)
{
	return m->nmachines;
}

/* In the order in which they are read: stations name sections. */
static const struct shop_row {
	str name;                /* of the heading, or its first word */
	void (*add)(struct binder *b, str name, struct pos pos);
	size_t (*count)(const struct model *m);
	void (*read)(struct binder *b, const struct block *v, size_t n);
	struct field_table fields;
} rows[] = {
	{ { "Section", 7 }, add_section, count_sections, NULL, { section_rows, 1,
	    "a section" } },
	{ { "Station", 7 }, add_station, count_stations, NULL, { station_rows, 2,
	    "a station" } },
	{ { "Machine", 7 }, add_machine, count_machines, read_machine, { 0 } },
	{ { "Plungers", 8 }, NULL, NULL, NULL, { plunger_rows, 1, "the plungers" } },
	{ { "Gauges", 6 }, NULL, NULL, read_gauges, { 0 } },
	{ { "Stock", 5 }, NULL, NULL, read_stock, { 0 } },
};
enum { ROWS = sizeof rows / sizeof *rows };

static size_t row_of(str heading, str *name)
{
	for (size_t i = 0; i < ROWS; i++) {
		str rest = heading, first;

		*name = (str){ 0 };
		if (!rows[i].add && words_same(rows[i].name, heading))
			return i;
		if (!rows[i].add || !str_word(&rest, &first) ||
		    !str_eq_nocase(first, rows[i].name))
			continue;
		*name = str_trim(rest);
		if (str_starts(*name, STR(":")))
			*name = str_trim(str_sub(*name, 1, name->n));
		return i;
	}
	return ROWS;
}

/* The row that a misspelt heading most likely means, or ROWS; *name as in row_of. */
static size_t row_meant(str heading, str *name)
{
	str names[ROWS], rest = heading, first, likely;

	*name = (str){ 0 };
	if (!str_word(&rest, &first))
		return ROWS;
	for (size_t i = 0; i < ROWS; i++)
		names[i] = rows[i].name;
	likely = likely_word(first, names, ROWS);
	for (size_t i = 0; i < ROWS; i++)
		if (likely.n && likely.p == names[i].p) {
			*name = rows[i].add ? str_trim(rest) : (str){ 0 };
			return i;
		}
	return ROWS;
}

static void complain_heading(struct binder *b, const struct block *h)
{
	str name;
	size_t meant = row_meant(h->text, &name);
	struct finding *d;

	if (meant == ROWS) {
		d = complain(b, FINDING_UNKNOWN_SECTION, h->pos, "\"%.*s\" is not a heading "
		    "of shop.md; what stands under it is left out", STR_ARG(h->text));
		finding_repair(b->f, d, "write \"## Station booth\", \"## Machine shear\" or "
		    "another heading that shop.md has");
		finding_slip(b->f, d, h->pos, h->text, (str){ 0 });
		return;
	}
	d = complain(b, FINDING_UNKNOWN_SECTION, h->pos, "\"%.*s\" is not a heading of "
	    "shop.md; it is read as \"%.*s%s%.*s\"", STR_ARG(h->text),
	    STR_ARG(rows[meant].name), name.n ? " " : "", STR_ARG(name));
	finding_repair(b->f, d, "write \"## %.*s%s%.*s\" if that is what is meant",
	    STR_ARG(rows[meant].name), name.n ? " " : "", STR_ARG(name));
	finding_slip(b->f, d, h->pos, h->text, str_format(b->f->arena, "%.*s%s%.*s",
	    STR_ARG(rows[meant].name), name.n ? " " : "", STR_ARG(name)));
}

static bool is_repeat(struct binder *b, const struct record_file *file, uint32_t i,
    struct map *names)
{
	const struct block *h = &file->v[i];
	uint32_t first = map_add(names, h->text, i);

	if (first == i)
		return false;
	complain_same_name(b, h, file->v[first].pos);
	return true;
}

static bool is_full(struct binder *b, size_t have, const struct block *h)
{
	if (have < NAMES_MOST)
		return false;
	complain(b, FINDING_OVER_LIMIT, h->pos,
	    "there are more than %d of these; what stands "
	    "under this one is left out", NAMES_MOST);
	return true;
}

static void read_heading(struct binder *b, const struct shop_row *row, str name,
    const struct block *h, size_t n)
{
	const struct block *found[FIELDS_MOST] = { NULL };

	if (row->add && !name.n) {
		finding_repair(b->f, complain(b, FINDING_MISSING_FACT, h->pos,
		    "this %.*s has no name; it is left out", STR_ARG(row->name)),
		    "write a heading such as \"## %.*s booth\"", STR_ARG(row->name));
		return;
	}
	if (row->add && is_full(b, row->count(b->model), h))
		return;
	if (row->add)
		row->add(b, name, h->pos);
	if (row->read)
		row->read(b, h + 1, n);
	else
		fields_read(b, &row->fields, h + 1, n, found);
	if (row->fields.v == station_rows)
		b->model->stations[b->model->nstations - 1].unsaid = !found[0] &&
		    !(b->nearly & 1);
}

/* A shop may leave places out; one that gives them forgot those of the others. */
static void judge_places(struct binder *b)
{
	const struct model *m = b->model;
	bool any = false;

	for (size_t i = 0; i < m->nstations; i++)
		any |= m->stations[i].places > 0;
	for (size_t i = 0; any && i < m->nstations; i++)
		if (m->stations[i].unsaid) {
			struct finding *d = complain(b, FINDING_MISSING_FACT,
			    m->stations[i].pos, "%.*s does not say how many places it has, "
			    "so its hours are not judged", STR_ARG(m->stations[i].name));

			d->level = LEVEL_WARNING;
			finding_repair(b->f, d, "add \"- **Places:** 6\" or the like");
		}
}

static void read_round(struct binder *b, const struct record_file *file, size_t round,
    struct map *names)
{
	size_t end;

	for (size_t i = 1; i < file->n; i = end) {
		const struct block *h = &file->v[i];
		bool is_section = h->kind == BLOCK_HEADING && h->level == 2;
		size_t row, exact;
		str name;

		end = is_section ? blocks_until(file->v, file->n, i + 1, 6) : i + 1;
		exact = row = is_section ? row_of(h->text, &name) : ROWS;
		if (is_section && row == ROWS)
			row = row_meant(h->text, &name);
		if (row == round && row < ROWS && !is_repeat(b, file, (uint32_t)i, names))
			read_heading(b, &rows[row], name, h, end - i - 1);
		else if (round == ROWS && is_section && exact == ROWS)
			complain_heading(b, h);
		else if (round == ROWS && !is_section)
			complain_block(b, h, "write it under a heading such as "
			    "\"## Station booth\"");
	}
}

void shop_read(struct binder *b, const struct record_file *file)
{
	struct map *names = map_new(b->arena, true);

	b->aside = true;
	for (size_t round = 0; round <= ROWS; round++)
		read_round(b, file, round, names);
	judge_places(b);
	b->aside = false;
}
