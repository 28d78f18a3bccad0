#include "sheets/bundle.h"

#include "draw/look.h"
#include "draw/mark.h"
#include "model/translation.h"
#include "sheets/band.h"
#include "sheets/sheet.h"
#include "sheets/metric_words.h"

struct part_doc {
	struct bundle *bundle;
	enum bundle_part part;
	struct flow *flow;
	uint32_t *sections;      /* by index in spec.assignments */
	uint32_t front, index;   /* sections, SECTION_NONE */
};

struct bundle {
	struct arena *arena;
	struct bundle_spec spec;
	struct model said;       /* spec.model in the language of the edition */
	struct model student;    /* that without what students must not see */
	struct setter setter;
	struct edition edition;
	struct teachers teachers;
	struct weldment_made *weldments;
	struct part_doc docs[BUNDLE_PARTS];
	char (*marks)[MARK_CHARS + 1]; /* in another language those of the translation */
	char front_mark[MARK_CHARS + 1];
	struct map *by_id;       /* section id to index in spec.assignments */
};

/* What differs between the parts. */
static const struct part_kind {
	void (*fill)(struct sheet *sh, uint32_t assignment);
	enum flow_start start;
	bool student;            /* drawn without what students must not see */
	bool one_sided;
	double id_pt;            /* size of the id in the band; 0: as usual */
} parts[BUNDLE_PARTS] = {
	[BUNDLE_PACKET] = { sheet_student, START_RIGHT, .student = true },
	[BUNDLE_GRADING] = { sheet_grading, START_RIGHT },
	[BUNDLE_CARDS] = { sheet_card, START_PAGE, true, true, CARD_ID_PT },
	[BUNDLE_CHART] = { NULL, START_PAGE, true, true },
};

/* What students see: the same program without any field for the instructor. */
static struct model student_view(struct arena *a, const struct model *m)
{
	struct model v = *m;

	v.assignments = arena_array(a, m->nassignments, sizeof *v.assignments);
	for (size_t i = 0; i < m->nassignments; i++) {
		v.assignments[i] = m->assignments[i];
		v.assignments[i].instructor = (struct prose){ 0 };
		v.assignments[i].nasks = 0;
	}
	return v;
}

static void furniture(void *user, struct canvas *c, const struct page_place *p)
{
	const struct part_doc *d = user;
	const struct bundle *b = d->bundle;
	uint32_t i = p->section_id.n ? map_find(b->by_id, p->section_id) : MAP_NONE;
	struct band band = { .big = b->spec.name, .line = bundle_title(b, d->part),
		.mark = str_of(d->part == BUNDLE_PACKET ? b->front_mark : ""),
		.foot = b->spec.model->title, .big_pt = parts[d->part].id_pt,
		.draft = b->spec.draft[d->part] };

	if (i != MAP_NONE) {
		band.big = b->spec.model->assignments[b->spec.assignments[i]].id;
		band.line = band_facts(b->arena, &b->edition, b->spec.model, b->spec.order,
		    b->spec.assignments[i]);
		band.mark = bundle_mark(b, i);
		band.said_mark = bundle_said_mark(b, i);
	}
	band_draw(&b->setter, &b->edition, c, p, &band);
}

/* ---- layout ---- */

static void start_doc(struct bundle *b, enum bundle_part part)
{
	struct flow_spec spec = band_flow_spec(&b->edition);
	struct part_doc *d = &b->docs[part];

	d->bundle = b;
	d->part = part;
	spec.furniture = furniture;
	spec.user = d;
	spec.blank_note = word(edition_language(&b->edition),
	    "This page is left blank on purpose");
	spec.one_sided = parts[part].one_sided;
	spec.top_pt += band_drop_pt(&b->edition, parts[part].id_pt);
	d->flow = flow_new(&b->setter, &spec);
	d->sections = arena_array(b->arena, b->spec.n, sizeof *d->sections);
	d->front = d->index = SECTION_NONE;
	flow_label(d->flow, LABEL_DECIMAL, (str){ 0 }, 1);
}

static struct sheet sheet_for(struct bundle *b, enum bundle_part part)
{
	struct sheet sh = { .s = b->setter, .arena = b->arena, .o = b->spec.order,
		.e = &b->edition,
		.m = parts[part].student ? &b->student : &b->said,
		.teachers = &b->teachers, .flow = b->docs[part].flow,
		.weldments = &b->weldments };

	sh.width_pt = flow_width_pt(sh.flow);
	return sh;
}

/* A card of large print has two sides: its front is a right-hand page. */
static enum flow_start start_of(const struct bundle *b, enum bundle_part part)
{
	bool two_sided = part == BUNDLE_CARDS && b->edition.choice.large;

	return two_sided ? START_RIGHT : parts[part].start;
}

static void fill_sections(struct bundle *b, enum bundle_part part)
{
	struct sheet sh = sheet_for(b, part);
	struct part_doc *d = &b->docs[part];

	for (size_t i = 0; i < b->spec.n; i++) {
		uint32_t id = b->spec.assignments[i];
		const struct assignment *x = &sh.m->assignments[id];

		d->sections[i] = flow_section(d->flow, x->id, start_of(b, part));
		flow_mark(d->flow, str_format(b->arena, "at %.*s", STR_ARG(x->id)),
		    assignment_name(b->arena, x), 0);
		parts[part].fill(&sh, id);
	}
}

static void fill_packet(struct bundle *b)
{
	const struct packet_cover cover = { b->spec.name, b->spec.quarter, b->spec.assignments,
		b->spec.n };
	struct part_doc *d = &b->docs[BUNDLE_PACKET];
	struct sheet sh = sheet_for(b, BUNDLE_PACKET);

	if (b->spec.front) {
		d->front = flow_section(d->flow, STR("front pages"), START_HERE);
		flow_mark(d->flow, STR("at front"), bundle_title(b, BUNDLE_PACKET), 0);
		sheet_front(&sh, &cover);
	}
	fill_sections(b, BUNDLE_PACKET);
	if (b->spec.front) {
		d->index = flow_section(d->flow, STR("index pages"), START_RIGHT);
		flow_mark(d->flow, STR("at index"), sh_word(&sh, "Index"), 0);
		sheet_index(&sh, &cover);
	}
}

/* ---- marks ---- */

static void digest_section(const struct part_doc *d, uint32_t section, struct sha256 *h)
{
	struct look look;

	look_begin(&look);
	flow_emit_section(d->flow, section, &look.canvas);
	look_end(&look, h);
}

static void add_word(struct sha256 *h, str s)
{
	sha256_add(h, s.p, s.n);
	sha256_add(h, "", 1);
}

/* What the band says of the assignment itself belongs to its content. */
static void mark_assignment(struct bundle *b, size_t i)
{
	const struct assignment *x = &b->spec.model->assignments[b->spec.assignments[i]];
	uint8_t digest[SHA256_BYTES];
	struct sha256 h;

	sha256_init(&h);
	add_word(&h, x->id);
	add_word(&h, x->kind < KIND_COUNT ? kind_word(x->kind) : STR(""));
	add_word(&h, hours_text(b->arena, &b->edition, x->hours));
	if (b->spec.originals)
		add_word(&h, bundle_mark(b, i));
	for (int part = 0; part < BUNDLE_MARKED; part++)
		digest_section(&b->docs[part], b->docs[part].sections[i], &h);
	sha256_end(&h, digest);
	mark_write(digest, b->marks[i]);
}

static void mark_front(struct bundle *b)
{
	const struct part_doc *d = &b->docs[BUNDLE_PACKET];
	uint8_t digest[SHA256_BYTES];
	struct sha256 h;

	if (d->front == SECTION_NONE)
		return;
	sha256_init(&h);
	digest_section(d, d->front, &h);
	digest_section(d, d->index, &h);
	sha256_end(&h, digest);
	mark_write(digest, b->front_mark);
}

/* After the marks, which the sign-off sheets print. */
static void fill_chart(struct bundle *b)
{
	struct sheet sh = sheet_for(b, BUNDLE_CHART);
	str *marks = arena_array(b->arena, b->spec.n, sizeof *marks);

	const struct model said = model_in(b->arena, b->spec.model, b->spec.beside);
	const struct beside beside = { b->spec.beside, &said };
	const struct chart_spec spec = { b->spec.name, b->spec.assignments, marks, b->spec.n,
		b->spec.beside ? &beside : NULL };

	for (size_t i = 0; i < b->spec.n; i++)
		marks[i] = str_of(b->marks[i]);
	sheet_chart(&sh, &spec);
	flow_end(sh.flow);
}

bool bundle_has(const struct edition_choice *edition, enum bundle_part part)
{
	return !edition->language || part != BUNDLE_CHART;
}

static struct bundle *begin(struct arena *a, const struct bundle_spec *spec)
{
	struct bundle *b = arena_alloc(a, sizeof *b);

	b->arena = a;
	b->spec = *spec;
	b->edition = edition_new(&spec->edition);
	if (spec->quarter && spec->edition.language)
		b->spec.name = word_format(a, spec->edition.language, "Quarter %u",
		    spec->quarter);
	b->said = model_in(a, spec->model, spec->edition.language);
	b->said = units_view(a, &b->edition, &b->said);
	b->student = student_view(a, &b->said);
	b->setter = setter_new(a, spec->faces);
	b->teachers = teachers_new(a, spec->model);
	b->marks = arena_array(a, spec->n, sizeof *b->marks);
	b->by_id = map_new(a, false);
	for (size_t i = 0; i < spec->n; i++)
		map_add(b->by_id, spec->model->assignments[spec->assignments[i]].id, (uint32_t)i);
	return b;
}

struct bundle *bundle_new(struct arena *a, const struct bundle_spec *spec)
{
	struct bundle *b = begin(a, spec);

	for (int part = 0; part < BUNDLE_PARTS; part++)
		start_doc(b, (enum bundle_part)part);
	fill_packet(b);
	fill_sections(b, BUNDLE_GRADING);
	fill_sections(b, BUNDLE_CARDS);
	for (int part = 0; part < BUNDLE_MARKED; part++)
		flow_end(b->docs[part].flow);
	for (size_t i = 0; i < spec->n; i++)
		mark_assignment(b, i);
	mark_front(b);
	if (bundle_has(&spec->edition, BUNDLE_CHART))
		fill_chart(b);
	return b;
}

unsigned bundle_pages(const struct bundle *b, enum bundle_part part)
{
	return flow_pages(b->docs[part].flow);
}

unsigned bundle_overfull(const struct bundle *b, enum bundle_part part)
{
	return flow_overfull(b->docs[part].flow);
}

str bundle_title(const struct bundle *b, enum bundle_part part)
{
	const struct language *l = edition_language(&b->edition);

	if (part == BUNDLE_PACKET)
		return word_format(b->arena, l, "%.*s student packet", STR_ARG(b->spec.name));
	if (part == BUNDLE_CARDS)
		return word_format(b->arena, l, "%.*s booth cards", STR_ARG(b->spec.name));
	if (part == BUNDLE_GRADING)
		return word_format(b->arena, l, "%.*s grading sheets", STR_ARG(b->spec.name));
	return str_format(b->arena, "%.*s wall chart and sign-off sheets",
	    STR_ARG(b->spec.name));
}

str bundle_mark(const struct bundle *b, size_t i)
{
	return b->spec.originals ? b->spec.originals[i] : str_of(b->marks[i]);
}

const str *bundle_marks(const struct bundle *b, struct arena *a)
{
	str *v = arena_array(a, b->spec.n, sizeof *v);

	for (size_t i = 0; i < b->spec.n; i++)
		v[i] = str_copy(a, bundle_mark(b, i));
	return v;
}

str bundle_said_mark(const struct bundle *b, size_t i)
{
	return b->spec.originals ? str_format(b->arena, "%.*s %s",
	    STR_ARG(language_code(b->spec.edition.language)), b->marks[i]) : (str){ 0 };
}

void bundle_emit(const struct bundle *b, enum bundle_part part, struct canvas *c)
{
	flow_emit(b->docs[part].flow, c);
}
