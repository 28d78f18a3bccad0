#include "sheets/bundle.h"

#include "draw/list.h"
#include "draw/mark.h"
#include "sheets/sheet.h"

/* Furniture: the band on top holds two lines, the foot one. What stands at the right
 * of the band, a mark or "page 1234 of 5678", is less than RIGHT_PT wide. */
enum { BAND_PT = 74, FOOT_PT = 54, TOP_PT = 30, RIGHT_PT = 125 };

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
	struct model student;    /* spec.model without what students must not see */
	struct setter setter;
	struct teachers teachers;
	struct part_doc docs[BUNDLE_PARTS];
	char (*marks)[MARK_CHARS + 1];
	char front_mark[MARK_CHARS + 1];
	struct map *by_id;       /* section id to index in spec.assignments */
};

/* What students see: the same program without any field for the instructor. */
static struct model student_view(struct arena *a, const struct model *m)
{
	struct model v = *m;

	v.assignments = arena_array(a, m->nassignments, sizeof *v.assignments);
	for (size_t i = 0; i < m->nassignments; i++) {
		v.assignments[i] = m->assignments[i];
		v.assignments[i].instructor = (struct prose){ 0 };
	}
	return v;
}

/* ---- furniture ---- */

static void band_left(const struct part_doc *d, struct canvas *c, const struct page_place *p,
    str big, str line)
{
	const struct type id = { .size_pt = 24, .style = SPAN_BOLD };
	const struct setter *s = &d->bundle->setter;
	double y = p->sheet.y + TOP_PT, width_pt = p->body.w - RIGHT_PT;

	plain_draw(s, c, plain_cut(s, big, &id, width_pt), &id, (pt){ p->body.x, y + 22 });
	plain_draw(s, c, plain_cut(s, line, &TYPE_BODY, width_pt), &TYPE_BODY,
	    (pt){ p->body.x, y + 40 });
}

static void band_right(const struct part_doc *d, struct canvas *c, const struct page_place *p,
    const char *mark)
{
	const struct type right = { .size_pt = 12, .align = ALIGN_RIGHT };
	const struct type mono = { .size_pt = 13, .style = SPAN_BOLD | SPAN_CODE, .align = ALIGN_RIGHT };
	const struct setter *s = &d->bundle->setter;
	double x = p->body.x + p->body.w, y = p->sheet.y + TOP_PT;

	if (*mark)
		plain_draw(s, c, str_of(mark), &mono, (pt){ x, y + 12 });
	plain_draw(s, c, str_format(d->bundle->arena, "page %u of %u", p->page, p->pages), &right,
	    (pt){ x, y + 40 });
}

static void draft_words(const struct part_doc *d, struct canvas *c, const struct page_place *p)
{
	const struct type big = { .size_pt = 24, .style = SPAN_BOLD, .align = ALIGN_CENTER };

	plain_draw(&d->bundle->setter, c, STR("DRAFT"), &big,
	    (pt){ p->body.x + p->body.w / 2, p->sheet.y + TOP_PT + 22 });
}

/* "ORW 115, quarter 1, week 7. Coupon, 16 hours" */
static str facts_line(const struct bundle *b, uint32_t assignment)
{
	const struct assignment *x = &b->spec.model->assignments[assignment];
	uint32_t slot = b->spec.order->places[assignment].slot;
	struct buf t = { .arena = b->arena };

	if (slot != NONE)
		buf_addf(&t, "%.*s, ", STR_ARG(b->spec.model->courses[b->spec.model->slots[slot].course].id));
	buf_add(&t, place_text(b->arena, b->spec.order, assignment));
	if (x->kind < KIND_COUNT)
		buf_addf(&t, "; %.*s", STR_ARG(kind_word(x->kind)));
	buf_addf(&t, "; %.*s", STR_ARG(hours_text(b->arena, x->hours)));
	if (slot != NONE && b->spec.model->slots[slot].optional)
		buf_adds(&t, "; optional");
	return buf_str(&t);
}

static void foot(const struct part_doc *d, struct canvas *c, const struct page_place *p)
{
	const struct bundle *b = d->bundle;
	double y = p->sheet.y + p->sheet.h - FOOT_PT + 14;

	canvas_line(c, (pt){ p->body.x, y }, (pt){ p->body.x + p->body.w, y }, 0.75);
	plain_draw(&b->setter, c, plain_cut(&b->setter, b->spec.model->title, &TYPE_BODY, p->body.w),
	    &TYPE_BODY, (pt){ p->body.x, y + 15 });
}

static void furniture(void *user, struct canvas *c, const struct page_place *p)
{
	const struct part_doc *d = user;
	const struct bundle *b = d->bundle;
	uint32_t i = p->section_id.n ? map_find(b->by_id, p->section_id) : MAP_NONE;
	double rule_y = p->sheet.y + TOP_PT + BAND_PT - 28;

	if (i == MAP_NONE)
		band_left(d, c, p, b->spec.name, bundle_title(b, d->part));
	else
		band_left(d, c, p, b->spec.model->assignments[b->spec.assignments[i]].id,
		    facts_line(b, b->spec.assignments[i]));
	band_right(d, c, p, i == MAP_NONE ? b->front_mark : b->marks[i]);
	canvas_line(c, (pt){ p->body.x, rule_y }, (pt){ p->body.x + p->body.w, rule_y }, 1.5);
	if (b->spec.draft[d->part])
		draft_words(d, c, p);
	foot(d, c, p);
}

/* ---- layout ---- */

static void start_doc(struct bundle *b, enum bundle_part part)
{
	const struct flow_spec spec = {
		.page_width_pt = b->spec.a4 ? A4_WIDTH_PT : LETTER_WIDTH_PT,
		.page_height_pt = b->spec.a4 ? A4_HEIGHT_PT : LETTER_HEIGHT_PT,
		.top_pt = TOP_PT + BAND_PT - 16, .bottom_pt = FOOT_PT + 8,
		.inner_pt = MM_PT(25), .outer_pt = MM_PT(13),
		.furniture = furniture, .user = &b->docs[part],
	};
	struct part_doc *d = &b->docs[part];

	d->bundle = b;
	d->part = part;
	d->flow = flow_new(&b->setter, &spec);
	d->sections = arena_array(b->arena, b->spec.n, sizeof *d->sections);
	d->front = d->index = SECTION_NONE;
	flow_label(d->flow, LABEL_DECIMAL, (str){ 0 }, 1);
}

static struct sheet sheet_for(struct bundle *b, enum bundle_part part)
{
	struct sheet sh = { .s = b->setter, .arena = b->arena, .o = b->spec.order,
		.m = part == BUNDLE_PACKET ? &b->student : b->spec.model,
		.teachers = &b->teachers, .flow = b->docs[part].flow };

	sh.width_pt = flow_width_pt(sh.flow);
	return sh;
}

static void fill_sections(struct bundle *b, enum bundle_part part)
{
	struct sheet sh = sheet_for(b, part);
	struct part_doc *d = &b->docs[part];

	for (size_t i = 0; i < b->spec.n; i++) {
		uint32_t id = b->spec.assignments[i];
		const struct assignment *x = &sh.m->assignments[id];

		d->sections[i] = flow_section(d->flow, x->id, START_RIGHT);
		flow_mark(d->flow, str_format(b->arena, "at %.*s", STR_ARG(x->id)),
		    assignment_name(b->arena, x), 0);
		(part == BUNDLE_PACKET ? sheet_student : sheet_grading)(&sh, id);
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
		flow_mark(d->flow, STR("at index"), STR("Index"), 0);
		sheet_index(&sh, &cover);
	}
}

/* ---- marks ---- */

static void digest_section(const struct part_doc *d, uint32_t section, struct sha256 *h)
{
	struct arena *scratch = arena_new(NULL, NULL);
	struct list *l = list_new(scratch);

	flow_emit_section(d->flow, section, list_canvas(l));
	list_digest(l, h);
	arena_free(scratch);
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
	add_word(&h, hours_text(b->arena, x->hours));
	for (int part = 0; part < BUNDLE_PARTS; part++)
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

struct bundle *bundle_new(struct arena *a, const struct bundle_spec *spec)
{
	struct bundle *b = arena_alloc(a, sizeof *b);

	b->arena = a;
	b->spec = *spec;
	b->student = student_view(a, spec->model);
	b->setter = setter_new(a, spec->faces);
	b->teachers = teachers_new(a, spec->model);
	b->marks = arena_array(a, spec->n, sizeof *b->marks);
	b->by_id = map_new(a, false);
	for (size_t i = 0; i < spec->n; i++)
		map_add(b->by_id, spec->model->assignments[spec->assignments[i]].id, (uint32_t)i);
	for (int part = 0; part < BUNDLE_PARTS; part++)
		start_doc(b, (enum bundle_part)part);
	fill_packet(b);
	fill_sections(b, BUNDLE_GRADING);
	for (int part = 0; part < BUNDLE_PARTS; part++)
		flow_end(b->docs[part].flow);
	for (size_t i = 0; i < spec->n; i++)
		mark_assignment(b, i);
	mark_front(b);
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
	return str_format(b->arena, "%.*s %s", STR_ARG(b->spec.name),
	    part == BUNDLE_PACKET ? "student packet" : "grading sheets");
}

str bundle_mark(const struct bundle *b, size_t i)
{
	return str_of(b->marks[i]);
}

void bundle_emit(const struct bundle *b, enum bundle_part part, struct canvas *c)
{
	flow_emit(b->docs[part].flow, c);
}
