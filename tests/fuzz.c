/* The whole of fitup but its files, fed with broken programs.
 *
 * One input stands for a folder: a line "=== path" begins each file. It is read, bound,
 * checked, reviewed, laid out as quarters, single assignments, keys and templates, and
 * drawn on the trace and into PDF. Built with libFuzzer by `make fuzz`; with -DREPLAY it is a program
 * that runs the files named on its command line once each. */
#include "base/buf.h"
#include "check/check.h"
#include "check/remedy.h"
#include "check/settle.h"
#include "check/waive.h"
#include "cli/shipped.h"
#include "draw/trace.h"
#include "out/pdf.h"
#include "out/report.h"
#include "out/sarif.h"
#include "read/md.h"
#include "read/picture.h"
#include "model/translation.h"
#include "sheets/bundle.h"
#include "sheets/hold.h"
#include "sheets/keybook.h"
#include "sheets/label.h"
#include "sheets/review.h"
#include "sheets/template.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* A folder of 20 KB has no business with more memory than this. */
enum { INPUT_MOST = 20 * 1024, FILES_MOST = 32, ARENA_MOST = 192 << 20 };
/* More documents of one kind show nothing new and cost runs. */
enum { QUARTERS_MOST = 2, SINGLES_MOST = 1, TRIED_MOST = 2 };

struct run {
	struct arena *arena;
	struct sources sources;
	struct source own[FILES_MOST]; /* what run_free frees */
	size_t nown;
	struct record_file files[FILES_MOST];
	enum file_role roles[FILES_MOST];
	struct findings *findings;
	struct model *model;
	const struct order *order;
	const struct faces *faces;
	struct buf out;          /* all that was made, to compare two runs */
	bool a4;
};

static void over_memory(void *user)
{
	(void)user;
	fputs("an arena went beyond its limit\n", stderr);
	abort();
}

static void require(bool ok, const char *what)
{
	if (ok)
		return;
	fprintf(stderr, "broken promise: %s\n", what);
	abort();
}

static bool has_path(const struct sources *s, str path)
{
	for (size_t i = 0; i < s->n; i++)
		if (str_eq(s->v[i].path, path))
			return true;
	return false;
}

static int by_path(const void *x, const void *y)
{
	const struct source *a = x, *b = y;

	return str_cmp(a->path, b->path);
}

/* No character is cut in two: each byte that begins one has its followers. */
static bool is_whole_utf8(str s)
{
	for (size_t i = 0; i < s.n;) {
		unsigned char c = (unsigned char)s.p[i++];
		int more = c < 0x80 ? 0 : c < 0xC2 ? -1 : c < 0xE0 ? 1 : c < 0xF0 ? 2 : 3;

		if (more < 0)
			return false;
		for (; more > 0; more--)
			if (i == s.n || ((unsigned char)s.p[i++] & 0xC0) != 0x80)
				return false;
	}
	return true;
}

/* Each file gets bytes of its own, so that a read past its end is seen. Names
 * that are not UTF-8 never come this far: cli/folder.c spells them out. */
static void add_file(struct run *r, str path, str text)
{
	enum file_role role;
	char *own;

	if (r->sources.n == FILES_MOST || !file_role_of(path, &role) ||
	    !is_whole_utf8(path) || has_path(&r->sources, path))
		return;
	own = malloc(text.n + !text.n);
	require(own, "memory for the input");
	if (text.n)
		memcpy(own, text.p, text.n);
	r->own[r->nown++] = (struct source){ path, { own, text.n } };
	r->sources.n = r->nown;
}

static void split_files(struct run *r, str input)
{
	str rest = input, line, path = { 0 };
	size_t from = 0;

	r->sources.v = r->own;
	while (str_next(&rest, '\n', &line)) {
		size_t at = (size_t)(line.p - input.p);

		if (!str_starts(line, STR("=== ")))
			continue;
		add_file(r, path, str_sub(input, from, at));
		path = str_copy(r->arena, str_trim(str_sub(line, 4, line.n)));
		from = at + line.n + (at + line.n < input.n);
	}
	add_file(r, path, str_sub(input, from, input.n));
	qsort(r->own, r->nown, sizeof *r->own, by_path);
}

/* Blocks, model and findings of some texts, which are those of the run or edited. */
static struct model *read_and_check(struct run *r, struct sources *s,
    struct record_file *files, struct findings *f)
{
	struct arena *scratch = arena_new(over_memory, NULL);
	size_t n = s->n;
	struct model *m;

	arena_limit(scratch, ARENA_MOST);
	for (size_t i = 0; i < n; i++) {
		enum file_role role = ROLE_PROGRAM;

		file_role_of(s->v[i].path, &role);
		files[i].file = (uint32_t)i;
		if (role != ROLE_PICTURE)
			files[i] = md_read(r->arena, &s->v[i], (uint32_t)i, f);
	}
	m = model_bind(r->arena, s, files, n, f);
	for (size_t i = 0; i < m->npictures; i++)
		m->pictures[i].pixels = picture_read(r->arena, s->v[m->pictures[i].file].text);
	shipped_read(r->arena, m, s, f);
	check_program(scratch, m, f);
	r->faces = faces_new(r->arena);
	sheets_review(r->arena, m, r->faces, sheets_told(r->arena, m, f), f);
	pictures_review(m, f);
	findings_settle(scratch, m, f);
	waive_apply(scratch, m, NULL, f);
	arena_free(scratch);
	findings_sort(f);
	return m;
}

/* The program with the edits of a remedy, and what it mends. */
static void try_remedy(struct run *r, struct remedy *m)
{
	struct record_file *files = arena_array(r->arena, r->nown, sizeof *files);
	struct edited *texts = arena_array(r->arena, r->nown, sizeof *texts);
	struct sources *s = arena_alloc(r->arena, sizeof *s);
	struct findings *f = findings_new(r->arena);

	s->v = arena_array_of(r->arena, r->own, r->nown, sizeof *s->v);
	s->n = r->nown;
	for (uint32_t i = 0; i < r->nown; i++) {
		texts[i] = edits_apply(r->arena, &r->own[i], i, m->edits, m->nedits);
		s->v[i].text = texts[i].text;
	}
	read_and_check(r, s, files, f);
	remedy_judge(r->arena, m, r->findings, f, texts, r->nown);
}

static void read_all(struct run *r)
{
	struct remedies *all;

	r->model = read_and_check(r, &r->sources, r->files, r->findings);
	all = remedies_find(r->arena, r->model, r->findings);
	for (size_t i = 0; i < all->ntries && i < TRIED_MOST; i++)
		try_remedy(r, all->tries[i * (all->ntries - 1) / TRIED_MOST]);
	remedies_settle(all, r->findings);
	r->order = order_of_program(r->arena, r->model);
	report_text(&r->out, r->findings, &r->sources, STR("folder/"), 0,
	    report_entries(r->findings));
	report_counts(&r->out, r->findings);
	report_json(&r->out, r->findings, &r->sources);
	report_sarif(&r->out, r->findings, &r->sources, STR("0"));
}

/* Every finding has its place in a file that was there, and can be shown. */
static void check_places(const struct run *r)
{
	require(is_whole_utf8(buf_str(&r->out)), "reports are UTF-8");
	for (size_t i = 0; i < r->findings->n; i++) {
		struct pos p = r->findings->v[i].pos;

		require(p.file == POS_NOWHERE || p.file < r->sources.n, "a finding in a file");
		require(r->findings->v[i].message.n, "a finding says something");
	}
}

/* A canvas that watches whether text stays on its page. */
struct edges {
	struct canvas canvas;
	const struct faces *faces;
	double w, h;
};

static void edges_page(void *self, double w, double h)
{
	struct edges *e = self;

	e->w = w;
	e->h = h;
}

static void edges_text(void *self, pt at, enum face_id face, double size_pt, str s)
{
	const struct edges *e = self;

	require(is_whole_utf8(s), "drawn text is UTF-8");
	double right = at.x + face_width_pt(e->faces, face, size_pt, s);

	if (at.x > -0.5 && right < e->w + 0.5 && at.y > 0 && at.y < e->h)
		return;
	fprintf(stderr, "at %.1f to %.1f, %.1f: %.*s\n", at.x, right, at.y, STR_ARG(s));
	require(false, "text stays on its page");
}

static const struct canvas_ops edges_ops = { .page_begin = edges_page, .text = edges_text };

/* A document as cli/printer.h has it: how to draw it, and what. */
struct document {
	void (*draw)(const void *doc, struct canvas *c);
	const void *doc;
	str title;
};

static void emit(struct run *r, const struct document *d)
{
	const struct pdf_meta meta = { .title = d->title, .language = STR("en-US") };
	struct edges edges = { .canvas = { .ops = &edges_ops, .self = &edges }, .faces = r->faces };
	struct trace t;
	struct pdf *pdf;
	str bytes;

	d->draw(d->doc, &edges.canvas);
	trace_init(&t, &r->out);
	d->draw(d->doc, &t.canvas);
	pdf = pdf_new(r->arena, r->faces, &meta);
	d->draw(d->doc, pdf_canvas(pdf));
	require(pdf_finish(pdf, r->arena, &bytes) == PDF_OK, "a PDF of each document");
	require(str_starts(bytes, STR("%PDF-1.7")), "a PDF begins as one");
	buf_add(&r->out, bytes);
}

static void draw_packet(const void *doc, struct canvas *c)
{
	bundle_emit(doc, BUNDLE_PACKET, c);
}

static void draw_grading(const void *doc, struct canvas *c)
{
	bundle_emit(doc, BUNDLE_GRADING, c);
}

static void draw_cards(const void *doc, struct canvas *c)
{
	bundle_emit(doc, BUNDLE_CARDS, c);
}

static void draw_chart(const void *doc, struct canvas *c)
{
	bundle_emit(doc, BUNDLE_CHART, c);
}

static void draw_labels(const void *doc, struct canvas *c)
{
	labels_emit(doc, c);
}

static void draw_keys(const void *doc, struct canvas *c)
{
	keybook_emit(doc, c);
}

static void draw_templates(const void *doc, struct canvas *c)
{
	template_emit(doc, c);
}

static void print(struct run *r, struct bundle_spec *spec)
{
	struct bundle *b;

	spec->model = r->model;
	spec->order = r->order;
	spec->faces = r->faces;
	spec->edition.a4 = r->a4;
	for (int part = 0; part < BUNDLE_PARTS; part++)
		spec->draft[part] = hold_find(r->model, r->findings, spec->assignments,
		    spec->n, spec->quarter, spec->edition.language) != NULL;
	b = bundle_new(r->arena, spec);
	emit(r, &(struct document){ draw_packet, b, bundle_title(b, BUNDLE_PACKET) });
	emit(r, &(struct document){ draw_grading, b, bundle_title(b, BUNDLE_GRADING) });
	emit(r, &(struct document){ draw_cards, b, bundle_title(b, BUNDLE_CARDS) });
	if (bundle_pages(b, BUNDLE_CHART))
		emit(r, &(struct document){ draw_chart, b, bundle_title(b, BUNDLE_CHART) });
	spec->edition.language = language_find(STR("es"));
	spec->originals = bundle_marks(b, r->arena);
	if (!speech_of(r->model, spec->edition.language))
		return;
	b = bundle_new(r->arena, spec);
	emit(r, &(struct document){ draw_packet, b, bundle_title(b, BUNDLE_PACKET) });
	emit(r, &(struct document){ draw_cards, b, bundle_title(b, BUNDLE_CARDS) });
}

static void print_quarter(struct run *r, uint32_t quarter)
{
	uint32_t *v = arena_array(r->arena, r->order->nwalk, sizeof *v);
	struct bundle_spec spec = { .assignments = v, .quarter = quarter, .front = true,
		.name = str_format(r->arena, "Quarter %u", quarter) };

	for (size_t i = 0; i < r->order->nwalk; i++)
		if (r->order->places[r->order->walk[i]].quarter == quarter)
			v[spec.n++] = r->order->walk[i];
	print(r, &spec);
}

static void print_books(struct run *r)
{
	str *marks = arena_array(r->arena, r->model->nassignments, sizeof *marks);
	const struct keybook_spec keys = { .model = r->model, .order = r->order,
		.faces = r->faces, .marks = marks, .edition = { .a4 = r->a4 }, .draft = true };
	const struct template_spec templates = { .model = r->model, .faces = r->faces,
		.assignments = r->order->walk, .n = r->order->nwalk, .marks = marks, .edition = { .a4 = r->a4 } };
	const struct label_spec tags = { .model = r->model, .order = r->order,
		.faces = r->faces, .marks = marks, .edition = { .a4 = r->a4 } };
	struct labels *l = labels_new(r->arena, &tags);
	struct keybook *k = keybook_new(r->arena, &keys);
	struct template_doc *t = template_new(r->arena, &templates);

	if (keybook_pages(k))
		emit(r, &(struct document){ draw_keys, k, STR("keys") });
	if (labels_pages(l))
		emit(r, &(struct document){ draw_labels, l, STR("labels") });
	if (template_pages(t))
		emit(r, &(struct document){ draw_templates, t, STR("templates") });
}

static void print_all(struct run *r)
{
	for (uint32_t q = 1; q <= r->model->nquarters && q <= QUARTERS_MOST; q++)
		print_quarter(r, q);
	for (uint32_t i = 0; i < r->model->nassignments && i < SINGLES_MOST; i++) {
		struct bundle_spec spec = { .assignments = &i, .n = 1,
			.name = r->model->assignments[i].id };

		print(r, &spec);
	}
	print_books(r);
}

static struct run *run_new(str input, bool a4)
{
	struct arena *arena = arena_new(over_memory, NULL);
	struct run *r;

	arena_limit(arena, ARENA_MOST);
	r = arena_alloc(arena, sizeof *r);
	r->arena = r->out.arena = arena;
	r->a4 = a4;
	r->findings = findings_new(arena);
	split_files(r, input);
	read_all(r);
	check_places(r);
	print_all(r);
	return r;
}

static void run_free(struct run *r)
{
	for (size_t i = 0; i < r->nown; i++)
		free((char *)r->own[i].text.p);
	arena_free(r->arena);
}

/* One input in sixteen runs twice: the same bytes must come out. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	str input = { (const char *)data, size };
	unsigned sum = 0;
	struct run *first, *second;

	if (size > INPUT_MOST)
		return 0;
	for (size_t i = 0; i < size; i++)
		sum += data[i];
	first = run_new(input, sum % 2);
	if (sum % 16 < 1) {
		second = run_new(input, sum % 2);
		require(str_eq(buf_str(&first->out), buf_str(&second->out)),
		    "the same bytes twice");
		run_free(second);
	}
	run_free(first);
	return 0;
}

#ifndef REPLAY
/* ---- changes that keep the form: lines and numbers ---- */

size_t LLVMFuzzerMutate(uint8_t *data, size_t size, size_t most);
size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t most, unsigned seed);

struct dice { uint64_t state; };

static size_t roll(struct dice *d, size_t sides)
{
	d->state = d->state * 6364136223846793005u + 1442695040888963407u;
	return sides ? (size_t)(d->state >> 33) % sides : 0;
}

/* A line of the input at random, with its end. */
static str pick_line(struct dice *d, str all)
{
	size_t from = roll(d, all.n), to;

	while (from && all.p[from - 1] != '\n')
		from--;
	to = str_find_char(all, '\n', from);
	return str_sub(all, from, to + 1);
}

/* Puts `with` in place of the bytes [at, at + gone). */
static size_t splice(uint8_t *data, size_t size, size_t most, size_t at, size_t gone, str with)
{
	if (size - gone + with.n > most)
		return size;
	memmove(data + at + with.n, data + at + gone, size - at - gone);
	if (with.n)
		memcpy(data + at, with.p, with.n);
	return size - gone + with.n;
}

static size_t change_number(struct dice *d, uint8_t *data, size_t size, size_t most)
{
	static const char *const numbers[] = {
		"0", "1", "2", "3", "7", "12", "45", "90", "179", "180", "360", "1000", "65535",
		"99999", "4294967295", "4294967296", "99999999999999999999", "0.001", "0.0000001",
		"1/64", "1/0", "0/1", "3/8", "15/16", "1-1/2", "12-1/2", "1e9", "-1", "1.5", "1/16",
		"5/8", "26", "100", "1000000", "NPS 6 schedule 40", "11 ga", "1/8 to 1/4", "3-4",
	};
	str all = { (const char *)data, size };
	size_t at = roll(d, size), n = 0;

	while (at < size && (data[at] < '0' || data[at] > '9'))
		at++;
	while (at + n < size && data[at + n] >= '0' && data[at + n] <= '9')
		n++;
	return n ? splice(data, size, most, at, n,
	    str_of(numbers[roll(d, sizeof numbers / sizeof *numbers)])) : all.n;
}

/* After the colon of one line comes what stands after that of another. */
static size_t swap_value(struct dice *d, uint8_t *data, size_t size, size_t most)
{
	str all = { (const char *)data, size };
	str to = pick_line(d, all), from = pick_line(d, all);
	size_t colon = str_find_char(to, ':', 0), other = str_find_char(from, ':', 0);
	char value[256];
	str taken;

	if (colon == to.n || other == from.n || from.n - other > sizeof value)
		return size;
	taken = (str){ value, from.n - other };
	memcpy(value, from.p + other, taken.n);
	return splice(data, size, most, (size_t)(to.p - all.p) + colon, to.n - colon, taken);
}

static size_t copy_line(struct dice *d, uint8_t *data, size_t size, size_t most)
{
	str all = { (const char *)data, size };
	str to = pick_line(d, all), from = pick_line(d, all);
	char line[512];

	if (from.n > sizeof line)
		return size;
	memcpy(line, from.p, from.n);
	return splice(data, size, most, (size_t)(to.p - all.p), 0, (str){ line, from.n });
}

/* A line's word, many times over, in its place: long enough to fill a page. */
static size_t stretch_word(struct dice *d, uint8_t *data, size_t size, size_t most)
{
	static const size_t lengths[] = { 60, 200, 1000, 6000 };
	str all = { (const char *)data, size };
	str line = pick_line(d, all), word, next;
	char text[6000];
	size_t n = 0, wanted = lengths[roll(d, 4)], skip = roll(d, 6), blank = roll(d, 2);

	if (!str_word(&line, &word))
		return size;
	while (skip-- && str_word(&line, &next))
		word = next;
	while (word.n + 1 < 200 && n + word.n + 1 < wanted) {
		memcpy(text + n, word.p, word.n);
		n += word.n;
		if (blank)
			text[n++] = ' ';
	}
	return splice(data, size, most, (size_t)(word.p - all.p), word.n, (str){ text, n });
}

static size_t drop_line(struct dice *d, uint8_t *data, size_t size, size_t most)
{
	str all = { (const char *)data, size };
	str line = pick_line(d, all);

	return splice(data, size, most, (size_t)(line.p - all.p), line.n, (str){ 0 });
}

size_t LLVMFuzzerCustomMutator(uint8_t *data, size_t size, size_t most, unsigned seed)
{
	struct dice d = { seed };
	size_t times = 1 + roll(&d, 4);

	if (!size || !roll(&d, 3))
		return LLVMFuzzerMutate(data, size, most);
	while (times-- && size) {
		switch (roll(&d, 8)) {
		case 0:
			size = copy_line(&d, data, size, most);
			break;
		case 7:
			size = stretch_word(&d, data, size, most);
			break;
		case 1:
			size = drop_line(&d, data, size, most);
			break;
		case 2:
		case 3:
			size = swap_value(&d, data, size, most);
			break;
		default:
			size = change_number(&d, data, size, most);
			break;
		}
	}
	return size ? size : 1;
}
#else
static bool replay(const char *path)
{
	static uint8_t bytes[INPUT_MOST];
	FILE *in = fopen(path, "rb");
	size_t n;

	if (!in) {
		perror(path);
		return false;
	}
	n = fread(bytes, 1, sizeof bytes, in);
	fclose(in);
	printf("%s\n", path);
	fflush(stdout);
	LLVMFuzzerTestOneInput(bytes, n);
	return true;
}

int main(int argc, char **argv)
{
	bool ok = argc > 1;

	for (int i = 1; i < argc; i++)
		ok = replay(argv[i]) && ok;
	return !ok;
}
#endif
