#include "cli/options.h"
#include "cli/pool.h"
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

str printer_name(const struct printer *p, struct arena *a, str file)
{
	str tag = edition_tag(&p->o->edition);

	return str_format(a, "%.*s%.*s.pdf", STR_ARG(str_sub(file, 0, file.n - 4)), STR_ARG(tag));
}

static str file_name(const struct printer *p, struct arena *a, const struct want *w, int part)
{
	return printer_name(p, a,
	    str_format(a, "%.*s/%s", STR_ARG(w->folder), part_files[part]));
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
	pthread_mutex_lock(&p->lock);
	p->done++;
	if (p->progress && seconds_since(&p->start) > 0.5)
		fprintf(stderr, "\rprinted %zu of %zu documents%s", p->done, p->total,
		    p->done == p->total ? "\n" : "");
	pthread_mutex_unlock(&p->lock);
}

struct desk printer_desk(struct printer *p)
{
	struct desk k = { .p = p, .arena = run_scratch(), .ok = true };

	k.told.arena = k.arena;
	return k;
}

str printer_leave(struct desk *k)
{
	str told;

	pthread_mutex_lock(&k->p->lock);
	told = str_copy(k->p->run->arena, buf_str(&k->told));
	pthread_mutex_unlock(&k->p->lock);
	arena_free(k->arena);
	return told;
}

/* The file in memory and on the disk; a has both and is of no use afterwards. */
static bool write_document(const struct desk *k, struct arena *a, const struct document *d)
{
	const struct pdf_meta meta = { .title = d->title, .language = STR("en-US"),
		.actual_size = d->actual_size };
	struct pdf *pdf = pdf_new(a, k->p->run->faces, &meta);
	str bytes;
	int error;

	d->emit(d->doc, pdf_canvas(pdf));
	error = pdf_finish(pdf, a, &bytes);
	if (error) {
		fprintf(stderr, "fitup: %.*s: the PDF library failed (0x%x)\n", STR_ARG(d->name),
		    (unsigned)error);
		return false;
	}
	if (!save_file(a, k->p->out, d->name, bytes, d->private ? 0600 : 0666)) {
		fprintf(stderr, "fitup: cannot write %s/%.*s: %s\n", k->p->out, STR_ARG(d->name),
		    strerror(errno));
		return false;
	}
	return true;
}

bool printer_save(struct desk *k, const struct document *d)
{
	struct arena *a = run_scratch();
	bool ok = write_document(k, a, d);

	arena_free(a);
	if (!ok)
		return false;
	buf_addf(&k->told, "wrote %s/%.*s (%u page%s)\n", k->p->out, STR_ARG(d->name), d->pages,
	    d->pages == 1 ? "" : "s");
	show_progress(k->p);
	return true;
}

struct part_of { const struct bundle *bundle; enum bundle_part part; };

static void emit_part(const void *doc, struct canvas *c)
{
	const struct part_of *x = doc;

	bundle_emit(x->bundle, x->part, c);
}

static bool save_part(struct desk *k, const struct want *w, const struct bundle *b, int part)
{
	const struct part_of x = { b, (enum bundle_part)part };
	const struct document d = { .name = file_name(k->p, k->arena, w, part),
		.title = str_format(k->arena, "%.*s, %.*s", STR_ARG(k->p->run->model->title),
		    STR_ARG(bundle_title(b, x.part))),
		.pages = bundle_pages(b, x.part), .emit = emit_part, .doc = &x };

	return printer_save(k, &d);
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
		ok = printer_drop(p, file_name(p, p->run->arena, w, part)) && ok;
		buf_addf(&p->held, "held back %s/%.*s: %.*s", p->out, STR_ARG(file_name(p, p->run->arena, w, part)),
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
		ok = (!w->parts[part] || printer_drop(p, file_name(p, p->run->arena, w, part))) && ok;
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
		.front = w->quarter || w->n > 1, .edition = p->o->edition,
	};

	for (int part = 0; part < BUNDLE_PARTS; part++)
		spec.draft[part] = draft;
	return spec;
}

/* Wants that print, each with what its job has to say. */
struct jobs {
	struct printer *p;
	const struct want **wants;
	bool *draft, *ok;
	str *told;
	size_t n;
};

static void make_want(void *user, size_t i)
{
	struct jobs *j = user;
	struct desk k = printer_desk(j->p);
	struct bundle_spec spec = printer_bundle(j->p, j->wants[i], j->draft[i]);
	struct bundle *b = bundle_new(k.arena, &spec);

	printer_keep(j->p, j->wants[i], b);
	for (int part = 0; part < BUNDLE_PARTS && k.ok; part++)
		if (j->wants[i]->parts[part])
			k.ok = save_part(&k, j->wants[i], b, part);
	j->ok[i] = k.ok;
	j->told[i] = printer_leave(&k);
}

static struct jobs jobs_new(struct printer *p)
{
	struct arena *a = p->run->arena;

	return (struct jobs){ .p = p,
		.wants = arena_array(a, p->wants.n, sizeof(const struct want *)),
		.draft = arena_array(a, p->wants.n, sizeof(bool)),
		.ok = arena_array(a, p->wants.n, sizeof(bool)),
		.told = arena_array(a, p->wants.n, sizeof(str)) };
}

/* What is empty or held back is settled at once; the rest becomes jobs. */
static bool sort_wants(struct printer *p, struct jobs *j)
{
	bool ok = true;

	for (size_t i = 0; i < p->wants.n; i++) {
		const struct want *w = &p->wants.v[i];
		const struct finding *why = printer_why(p, w);

		if (!w->n) {
			ok = tell_empty(p, w) && ok;
		} else if (why && !p->o->draft) {
			ok = tell_held(p, w, why) && ok;
		} else {
			j->wants[j->n] = w;
			j->draft[j->n++] = why != NULL;
		}
	}
	return ok;
}

static bool print_wants(struct printer *p)
{
	struct jobs j = jobs_new(p);
	bool ok = sort_wants(p, &j);

	pool_run(j.n, make_want, &j);
	for (size_t i = 0; i < j.n; i++) {
		buf_add(&p->told, j.told[i]);
		ok = j.ok[i] && ok;
	}
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
	bool ok;

	for (int book = 0; book < BOOK_COUNT; book++)
		p->total += p->wants.books[book];
	for (size_t i = 0; i < p->wants.n; i++)
		for (int part = 0; part < BUNDLE_PARTS; part++)
			p->total += p->wants.v[i].parts[part];
	ok = print_wants(p);
	return printer_books(p) && ok;
}

/* The names that this print writes. */
static struct printed names_to_write(struct printer *p)
{
	struct printed names = { 0 };
	struct arena *a = p->run->arena;

	for (size_t i = 0; i < p->wants.n; i++) {
		const struct want *w = &p->wants.v[i];
		bool made = w->n && (p->o->draft || !printer_why(p, w));

		for (int part = 0; part < BUNDLE_PARTS; part++)
			if (made && w->parts[part])
				printed_add(a, &names, file_name(p, a, w, part));
	}
	for (int book = 0; book < BOOK_COUNT; book++)
		if (p->wants.books[book])
			printed_add(a, &names, printer_name(p, a, book_files[book]));
	return names;
}

/* What somebody else put under one of these names stays; then nothing is written at all. */
static bool tell_foreign(const struct printer *p, const struct printed *names)
{
	size_t n = 0;

	for (size_t i = 0; i < names->n; i++)
		if (printed_foreign(p->run->arena, p->out, &p->printed, names->v[i]) && !n++)
			fprintf(stderr, "fitup: %s/%.*s is there already and no print of fitup wrote it\n",
			    p->out, STR_ARG(names->v[i]));
	if (n > 1)
		fprintf(stderr, "fitup: the same goes for %zu more\n", n - 1);
	if (n)
		fputs("fitup: nothing was written; move what is yours, or print elsewhere with --out\n",
		    stderr);
	return n > 0;
}

/* The list is on the disk before the first file, so that a run that is killed leaves
 * nothing behind that a later one does not know for its own. */
static bool list_first(struct printer *p, const struct printed *names)
{
	size_t before = p->printed.n;

	for (size_t i = 0; i < names->n; i++)
		printed_add(p->run->arena, &p->printed, names->v[i]);
	return p->printed.n == before || write_list(p);
}

/* Whether a file is of the edition of this print: what follows the first dot of its name
 * says which. */
static bool is_of_edition(const struct printer *p, str name)
{
	str mine = printer_name(p, p->run->arena, STR(".pdf"));
	size_t dot = name.n;

	while (dot && name.p[dot - 1] != '/')
		dot--;
	return str_eq(str_sub(name, str_find_char(name, '.', dot), name.n), mine);
}

/* A whole print takes away what earlier ones of its edition left and this one does not
 * make. */
static bool drop_stale(struct printer *p, bool whole)
{
	bool ok = true;

	for (size_t i = p->printed.n; whole && i--;) {
		str name = p->printed.v[i];
		bool wanted = !is_of_edition(p, name);

		for (int book = 0; book < BOOK_COUNT; book++)
			wanted |= str_eq(name, printer_name(p, p->run->arena, book_files[book]));
		for (size_t w = 0; w < p->wants.n; w++)
			for (int part = 0; part < BUNDLE_PARTS; part++)
				wanted |= str_eq(name, file_name(p, p->run->arena, &p->wants.v[w], part));
		if (!wanted)
			ok = printer_drop(p, name) && ok;
	}
	return ok;
}

static int run_printer(struct printer *p)
{
	struct printed names;
	size_t listed;
	bool ok;

	printed_read(p->run->arena, p->out, &p->printed);
	if (!want_read(p->run, p->o, p->order, &p->wants))
		return EXIT_USAGE;
	names = names_to_write(p);
	if (tell_foreign(p, &names))
		return EXIT_USAGE;
	if (!list_first(p, &names))
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
		pthread_mutex_init(&p.lock, NULL);
		p.progress = isatty(2);
		p.told.arena = p.held.arena = r.arena;
		p.order = order_of_program(r.arena, r.model);
		p.marks = arena_array(r.arena, r.model->nassignments, sizeof *p.marks);
		p.quarter_pages = arena_array(r.arena, r.model->nquarters + 1,
		    sizeof *p.quarter_pages);
		status = run_printer(&p);
		buf_add(&b, buf_str(&p.told));
		buf_add(&b, buf_str(&p.held));
		if (status != EXIT_USAGE && !(say_findings(1, &r) && say(1, buf_str(&b))))
			status = EXIT_SYSTEM;
		if (!status && findings_count(r.findings, LEVEL_ERROR))
			status = EXIT_FINDINGS;
	}
	run_end(&r);
	return status;
}
