/* split FOLDER OUT [RUNS]: where the time of `fitup print` goes, on one thread: reading and
 * inspecting; layout and drawing; writing the PDF, in memory; the disk. Each is the least
 * of RUNS (5), of processor time but for the disk. The print list is left out. Drawing is
 * drawing into a canvas that does nothing; what more a PDF takes is writing it. */
#include "bench_lines.h"

#include "cli/run.h"
#include "cli/save.h"
#include "out/pdf.h"
#include "sheets/bundle.h"
#include "sheets/keybook.h"
#include "sheets/label.h"
#include "sheets/template.h"

enum phase { READ, LAYOUT, DRAWING, WRITING, DISK, PHASES };

struct split {
	const struct run *run;
	const struct order *order;
	const char *out;
	str *marks;              /* by assignment */
	double s[PHASES];        /* seconds */
	unsigned documents;
};

static double processor_seconds(void)
{
	struct timespec t;

	clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
	return (double)t.tv_sec + (double)t.tv_nsec * 1e-9;
}

static const struct canvas_ops nothing = { 0 };

/* A document of that name, laid out already. */
static void document_time(struct split *x, str name,
    void (*emit)(const void *doc, struct canvas *c), const void *doc)
{
	const struct pdf_meta meta = { .title = name, .language = STR("en-US") };
	struct canvas blind = { .ops = &nothing };
	struct arena *a = run_scratch();
	double start = processor_seconds(), drawn, written;
	struct pdf *pdf;
	str bytes;

	emit(doc, &blind);
	drawn = processor_seconds() - start;
	start = processor_seconds();
	pdf = pdf_new(a, x->run->faces, &meta);
	emit(doc, pdf_canvas(pdf));
	if (pdf_finish(pdf, a, &bytes))
		exit(1);
	written = processor_seconds() - start - drawn;
	start = bench_seconds();
	if (!save_file(a, x->out, name, bytes, 0666))
		exit(1);
	x->s[DRAWING] += drawn;
	x->s[WRITING] += written;
	x->s[DISK] += bench_seconds() - start;
	x->documents++;
	arena_free(a);
}

struct part { const struct bundle *b; enum bundle_part part; };

static void emit_part(const void *doc, struct canvas *c)
{
	const struct part *p = doc;

	bundle_emit(p->b, p->part, c);
}

static void emit_keys(const void *doc, struct canvas *c)
{
	keybook_emit(doc, c);
}

static void emit_templates(const void *doc, struct canvas *c)
{
	template_emit(doc, c);
}

static void emit_labels(const void *doc, struct canvas *c)
{
	labels_emit(doc, c);
}

static void quarter_time(struct split *x, uint32_t quarter)
{
	const struct order *o = x->order;
	struct arena *a = run_scratch();
	uint32_t *v = arena_array(a, o->nwalk, sizeof *v);
	struct bundle_spec spec = { .model = x->run->model, .order = o,
		.faces = x->run->faces, .assignments = v, .quarter = quarter, .front = true,
		.name = str_format(a, "Quarter %u", quarter) };
	double start = processor_seconds();
	struct bundle *b;

	for (size_t i = 0; i < o->nwalk; i++)
		if (o->places[o->walk[i]].quarter == quarter)
			v[spec.n++] = o->walk[i];
	b = bundle_new(a, &spec);
	x->s[LAYOUT] += processor_seconds() - start;
	for (size_t i = 0; i < spec.n; i++)
		x->marks[v[i]] = str_copy(x->run->arena, bundle_mark(b, i));
	for (int part = 0; part < BUNDLE_PARTS; part++) {
		const struct part p = { b, (enum bundle_part)part };

		document_time(x, str_format(a, "q%u/%d.pdf", quarter, part), emit_part, &p);
	}
	arena_free(a);
}

static void books_time(struct split *x)
{
	const struct run *r = x->run;
	struct arena *a = run_scratch();
	str *walked = arena_array(a, x->order->nwalk, sizeof *walked);
	const struct keybook_spec keys = { .model = r->model, .order = x->order,
		.faces = r->faces, .marks = x->marks };
	const struct label_spec tags = { .model = r->model, .order = x->order,
		.faces = r->faces, .marks = x->marks };
	const struct template_spec tiles = { .model = r->model, .faces = r->faces,
		.assignments = x->order->walk, .n = x->order->nwalk, .marks = walked };
	double start = processor_seconds();
	struct keybook *k;
	struct labels *l;
	struct template_doc *t;

	for (size_t i = 0; i < x->order->nwalk; i++)
		walked[i] = x->marks[x->order->walk[i]];
	k = keybook_new(a, &keys);
	l = labels_new(a, &tags);
	t = template_new(a, &tiles);
	x->s[LAYOUT] += processor_seconds() - start;
	document_time(x, STR("keys.pdf"), emit_keys, k);
	if (labels_pages(l))
		document_time(x, STR("labels.pdf"), emit_labels, l);
	if (template_pages(t))
		document_time(x, STR("templates.pdf"), emit_templates, t);
	arena_free(a);
}

static void print_time(struct split *x, const char *folder)
{
	const struct options o = { .folder = folder };
	double start = processor_seconds();
	struct run r;

	if (run_begin(&r, &o))
		exit(1);
	x->run = &r;
	x->order = order_of_program(r.arena, r.model);
	x->marks = arena_array(r.arena, r.model->nassignments, sizeof *x->marks);
	x->s[READ] = processor_seconds() - start;
	for (uint32_t q = 1; q <= r.model->nquarters; q++)
		quarter_time(x, q);
	books_time(x);
	run_end(&r);
}

int main(int argc, char **argv)
{
	double least[PHASES], ours;
	unsigned documents = 0;

	if (argc < 3)
		return 2;
	for (int i = 0; i < (argc > 3 ? atoi(argv[3]) : 5); i++) {
		struct split x = { .out = argv[2] };

		print_time(&x, argv[1]);
		documents = x.documents;
		for (int p = 0; p < PHASES; p++)
			least[p] = i && least[p] < x.s[p] ? least[p] : x.s[p];
	}
	ours = least[LAYOUT] + least[DRAWING];
	printf("%u documents on one thread: read and inspect %.0f ms, layout and drawing "
	    "%.0f ms, PDF %.0f ms, disk %.0f ms\n", documents, least[READ] * 1e3, ours * 1e3,
	    least[WRITING] * 1e3, least[DISK] * 1e3);
	printf("layout and drawing to PDF, ratio %.2f   reach: under 1\n",
	    ours / least[WRITING]);
	return 0;
}
