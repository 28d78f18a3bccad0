#include "cli/options.h"
#include "cli/printer.h"
#include "cli/say.h"
#include "out/pdf.h"
#include "sheets/hold.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

const char *const part_files[BUNDLE_PARTS] = { "packet.pdf", "grading.pdf", "cards.pdf",
	"chart.pdf" };

static str file_name(struct printer *p, const struct want *w, int part)
{
	return str_format(p->run->arena, "%.*s/%s", STR_ARG(w->folder), part_files[part]);
}

static double seconds_since(const struct timespec *t)
{
	struct timespec now;

	clock_gettime(CLOCK_MONOTONIC, &now);
	return (double)(now.tv_sec - t->tv_sec) + (double)(now.tv_nsec - t->tv_nsec) * 1e-9;
}

/* Silence for short work and when nobody watches. */
static void show_progress(struct printer *p)
{
	p->done++;
	if (p->progress && seconds_since(&p->start) > 0.5)
		fprintf(stderr, "\rprinted %zu of %zu documents%s", p->done, p->total,
		    p->done == p->total ? "\n" : "");
}

bool printer_save(struct printer *p, struct arena *a, const struct document *d)
{
	const struct pdf_meta meta = { .title = d->title, .language = STR("en-US"),
		.actual_size = d->actual_size };
	struct pdf *pdf = pdf_new(a, p->run->faces, &meta);
	str bytes;
	int error;

	d->emit(d->doc, pdf_canvas(pdf));
	error = pdf_finish(pdf, a, &bytes);
	if (error) {
		fprintf(stderr, "fitup: %.*s: the PDF library failed (0x%x)\n", STR_ARG(d->name),
		    (unsigned)error);
		return false;
	}
	if (!save_file(p->run->arena, p->out, d->name, bytes, d->private ? 0600 : 0666)) {
		fprintf(stderr, "fitup: cannot write %s/%.*s: %s\n", p->out, STR_ARG(d->name),
		    strerror(errno));
		return false;
	}
	buf_addf(&p->told, "wrote %s/%.*s (%u pages)\n", p->out, STR_ARG(d->name), d->pages);
	show_progress(p);
	return true;
}

struct part_of { const struct bundle *bundle; enum bundle_part part; };

static void emit_part(const void *doc, struct canvas *c)
{
	const struct part_of *x = doc;

	bundle_emit(x->bundle, x->part, c);
}

static bool save_part(struct printer *p, struct arena *a, const struct want *w,
    const struct bundle *b, int part)
{
	const struct part_of x = { b, (enum bundle_part)part };
	const struct document d = { .name = file_name(p, w, part),
		.title = str_format(p->run->arena, "%.*s, %.*s", STR_ARG(p->run->model->title),
		    STR_ARG(bundle_title(b, x.part))),
		.pages = bundle_pages(b, x.part), .emit = emit_part, .doc = &x };

	return printer_save(p, a, &d);
}

bool printer_drop(struct printer *p, str name)
{
	if (printed_drop(p->run->arena, p->out, &p->printed, name))
		return true;
	fprintf(stderr, "fitup: cannot remove the old %s/%.*s: %s\n", p->out, STR_ARG(name),
	    strerror(errno));
	return false;
}

static bool tell_held(struct printer *p, const struct want *w, const struct finding *why)
{
	const struct sources *s = &p->run->folder.sources;
	bool ok = true;

	for (int part = 0; part < BUNDLE_PARTS; part++) {
		if (!w->parts[part])
			continue;
		ok = printer_drop(p, file_name(p, w, part)) && ok;
		buf_addf(&p->held, "held back %s/%.*s: %.*s", p->out, STR_ARG(file_name(p, w, part)),
		    STR_ARG(why->message));
		if (why->pos.file != POS_NOWHERE)
			buf_addf(&p->held, " (%.*s:%u:%u)", STR_ARG(s->v[why->pos.file].path),
			    why->pos.line, why->pos.col);
		buf_addc(&p->held, '\n');
	}
	return ok;
}

static bool tell_empty(struct printer *p, const struct want *w)
{
	bool ok = true;

	for (int part = 0; part < BUNDLE_PARTS; part++)
		ok = (!w->parts[part] || printer_drop(p, file_name(p, w, part))) && ok;
	buf_addf(&p->told, "nothing to print in %.*s: no assignment stands in it\n",
	    STR_ARG(w->name));
	return ok;
}

const struct finding *printer_why(const struct printer *p, const struct want *w)
{
	return hold_find(p->run->model, p->run->findings, w->assignments, w->n, w->quarter);
}

struct bundle_spec printer_bundle(const struct printer *p, const struct want *w, bool draft)
{
	struct bundle_spec spec = {
		.model = p->run->model, .order = p->order, .faces = p->run->faces,
		.assignments = w->assignments, .n = w->n, .name = w->name, .quarter = w->quarter,
		.front = w->quarter || w->n > 1, .a4 = p->o->a4,
	};

	for (int part = 0; part < BUNDLE_PARTS; part++)
		spec.draft[part] = draft;
	return spec;
}

static bool print_want(struct printer *p, const struct want *w)
{
	const struct finding *why = printer_why(p, w);
	struct bundle_spec spec = printer_bundle(p, w, why != NULL);
	struct arena *a;
	struct bundle *b;
	bool ok = true;

	if (!w->n)
		return tell_empty(p, w);
	if (why && !p->o->draft)
		return tell_held(p, w, why);
	a = run_scratch();
	b = bundle_new(a, &spec);
	printer_keep(p, w, b);
	for (int part = 0; part < BUNDLE_PARTS && ok; part++) {
		if (!w->parts[part])
			continue;
		ok = save_part(p, a, w, b, part);
	}
	arena_free(a);
	return ok;
}

static bool write_list(struct printer *p)
{
	if (printed_write(p->run->arena, p->out, &p->printed))
		return true;
	fprintf(stderr, "fitup: cannot write the list of printed files in %s: %s\n", p->out,
	    strerror(errno));
	return false;
}

static bool print_all(struct printer *p)
{
	bool ok = true;

	for (int book = 0; book < BOOK_COUNT; book++)
		p->total += p->wants.books[book];
	for (size_t i = 0; i < p->wants.n; i++)
		for (int part = 0; part < BUNDLE_PARTS; part++)
			p->total += p->wants.v[i].parts[part];
	for (size_t i = 0; i < p->wants.n; i++)
		ok = print_want(p, &p->wants.v[i]) && ok;
	return printer_books(p) && ok;
}

/* The list is on the disk before the first file, so that a run that is killed leaves
 * nothing behind that a later one does not know for its own. */
static bool list_first(struct printer *p)
{
	size_t before = p->printed.n;

	for (size_t i = 0; i < p->wants.n; i++) {
		const struct want *w = &p->wants.v[i];
		bool made = w->n && (p->o->draft || !printer_why(p, w));

		for (int part = 0; part < BUNDLE_PARTS; part++)
			if (made && w->parts[part])
				printed_add(p->run->arena, &p->printed, file_name(p, w, part));
	}
	for (int book = 0; book < BOOK_COUNT; book++)
		if (p->wants.books[book])
			printed_add(p->run->arena, &p->printed, book_files[book]);
	return p->printed.n == before || write_list(p);
}

/* A whole print takes away what earlier ones left and this one does not make. */
static bool drop_stale(struct printer *p, bool whole)
{
	bool ok = true;

	for (size_t i = p->printed.n; whole && i--;) {
		str name = p->printed.v[i];
		bool wanted = false;

		for (int book = 0; book < BOOK_COUNT; book++)
			wanted |= str_eq(name, book_files[book]);
		for (size_t w = 0; w < p->wants.n; w++)
			for (int part = 0; part < BUNDLE_PARTS; part++)
				wanted |= str_eq(name, file_name(p, &p->wants.v[w], part));
		if (!wanted)
			ok = printer_drop(p, name) && ok;
	}
	return ok;
}

static int run_printer(struct printer *p)
{
	size_t listed;
	bool ok;

	printed_read(p->run->arena, p->out, &p->printed);
	if (!want_read(p->run, p->o, p->order, &p->wants))
		return EXIT_USAGE;
	if (!list_first(p))
		return EXIT_SYSTEM;
	listed = p->printed.n;
	ok = print_all(p);
	ok = drop_stale(p, !p->o->nwords) && ok;
	if (p->printed.n != listed)
		ok = write_list(p) && ok;
	return ok ? EXIT_CLEAN : EXIT_SYSTEM;
}

int cmd_print(const struct options *o)
{
	struct run r;
	struct printer p = { .run = &r, .o = o, .out = o->out ? o->out : "build" };
	int status = run_begin(&r, o);

	if (!status) {
		struct buf b = { .arena = r.arena };

		clock_gettime(CLOCK_MONOTONIC, &p.start);
		p.progress = isatty(2);
		p.told.arena = p.held.arena = r.arena;
		p.order = order_of_program(r.arena, r.model);
		p.marks = arena_array(r.arena, r.model->nassignments, sizeof *p.marks);
		p.quarter_pages = arena_array(r.arena, r.model->nquarters + 1,
		    sizeof *p.quarter_pages);
		status = run_printer(&p);
		say_findings(&b, &r);
		buf_add(&b, buf_str(&p.told));
		buf_add(&b, buf_str(&p.held));
		if (status != EXIT_USAGE && !say(1, buf_str(&b)))
			status = EXIT_SYSTEM;
		if (!status && findings_count(r.findings, LEVEL_ERROR))
			status = EXIT_FINDINGS;
	}
	run_end(&r);
	return status;
}
