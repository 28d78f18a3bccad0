#include "cli/options.h"
#include "cli/pool.h"
#include "cli/printer.h"
#include "cli/say.h"
#include "out/pdf.h"
#include "model/translation.h"
#include "sheets/hold.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

const char *const part_files[BUNDLE_PARTS] = { "packet.pdf", "grading.pdf", "cards.pdf",
	"chart.pdf" };

str printer_name_in(const struct printer *p, struct arena *a, str file,
    const struct language *l)
{
	struct edition_choice choice = p->o->edition;
	str tag;

	choice.language = l;
	tag = edition_tag(a, &choice);
	return str_format(a, "%.*s%.*s.pdf", STR_ARG(str_sub(file, 0, file.n - 4)), STR_ARG(tag));
}

str printer_name(const struct printer *p, struct arena *a, str file)
{
	return printer_name_in(p, a, file, NULL);
}

static str file_name(const struct printer *p, struct arena *a, const struct want *w, int part,
    const struct language *l)
{
	return printer_name_in(p, a,
	    str_format(a, "%.*s/%s", STR_ARG(w->folder), part_files[part]), l);
}

/* Languages of which the folder has something for one of the assignments, English first. */
static bool is_said(const struct printer *p, const struct want *w, const struct language *l)
{
	const struct speech *s = speech_of(p->run->model, l);

	for (size_t i = 0; i < w->n && s; i++)
		if (speech_find(s, w->assignments[i]))
			return true;
	return !l;
}

const struct language *printer_language(const struct printer *p, const struct want *w, size_t i)
{
	const struct language *l;

	for (size_t k = 0; i && (l = language_at(k)); k++)
		if (is_said(p, w, l) && !--i)
			return l;
	return NULL;
}

static size_t languages_of(const struct printer *p, const struct want *w)
{
	size_t n = 1;

	while (printer_language(p, w, n))
		n++;
	return n;
}

/* Whether a want has that part, or any, in a language. */
static bool is_wanted(const struct want *w, int part, const struct language *l)
{
	const struct edition_choice choice = { .language = l };

	return w->parts[part] && bundle_has(&choice, (enum bundle_part)part);
}

static bool is_wanted_in(const struct want *w, const struct language *l)
{
	for (int part = 0; part < BUNDLE_PARTS; part++)
		if (is_wanted(w, part, l))
			return true;
	return false;
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
	const struct pdf_meta meta = { .title = d->title, .language = language_tag(d->language),
		.other = language_tag(d->language ? NULL : language_at(0)),
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

static bool save_part(struct desk *k, const struct want *w, const struct bundle *b, int part,
    const struct language *l)
{
	const struct part_of x = { b, (enum bundle_part)part };
	const struct document d = { .name = file_name(k->p, k->arena, w, part, l),
		.language = l,
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

static bool tell_held(struct printer *p, const struct want *w, const struct finding *why,
    const struct language *l)
{
	const struct sources *s = &p->run->folder.sources;
	bool ok = true;

	for (int part = 0; part < BUNDLE_PARTS; part++) {
		str name = file_name(p, p->run->arena, w, part, l);

		if (!is_wanted(w, part, l))
			continue;
		ok = printer_drop(p, name) && ok;
		buf_addf(&p->held, "held back %s/%.*s: %.*s", p->out, STR_ARG(name),
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
		ok = (!w->parts[part] ||
		    printer_drop(p, file_name(p, p->run->arena, w, part, NULL))) && ok;
	buf_addf(&p->told, "nothing to print in %.*s: no assignment stands in it\n",
	    STR_ARG(w->name));
	return ok;
}

const struct finding *printer_why(const struct printer *p, const struct want *w,
    const struct language *l)
{
	return hold_find(p->run->model, p->run->findings, w->assignments, w->n, w->quarter, l);
}

bool printer_prints(const struct printer *p, const struct want *w, const struct language *l)
{
	return w->n && (p->o->draft || !printer_why(p, w, l));
}

struct bundle_spec printer_bundle(const struct printer *p, const struct want *w, bool draft)
{
	struct bundle_spec spec = {
		.model = p->run->model, .order = p->order, .faces = p->run->faces,
		.assignments = w->assignments, .n = w->n, .name = w->name, .quarter = w->quarter,
		.front = w->quarter || w->n > 1, .edition = p->o->edition,
		.beside = printer_language(p, w, 1),
	};

	for (int part = 0; part < BUNDLE_PARTS; part++)
		spec.draft[part] = draft;
	return spec;
}

struct bundle *printer_translate(const struct printer *p, struct arena *a, const struct want *w,
    const str *originals, const struct language *l)
{
	struct bundle_spec spec = printer_bundle(p, w, printer_why(p, w, l) != NULL);

	spec.edition.language = l;
	spec.originals = originals;
	return bundle_new(a, &spec);
}

/* Wants that print, each with what its job has to say. */
struct jobs {
	struct printer *p;
	const struct want **wants;
	bool *ok;
	str *told;
	size_t n;
};

static bool save_parts(struct desk *k, const struct want *w, const struct bundle *b,
    const struct language *l)
{
	bool ok = true;

	for (int part = 0; part < BUNDLE_PARTS && ok; part++)
		if (is_wanted(w, part, l))
			ok = save_part(k, w, b, part, l);
	return ok;
}

/* In English when l is null. The bundle is gone afterwards: two of them beside each other
 * are the most memory of a print. Returns its marks. */
static const str *make_bundle(struct desk *k, const struct want *w, const struct language *l,
    const str *originals)
{
	struct printer *p = k->p;
	struct arena *a = run_scratch();
	struct bundle_spec spec = printer_bundle(p, w, printer_why(p, w, NULL) != NULL);
	struct bundle *b = l ? printer_translate(p, a, w, originals, l) : bundle_new(a, &spec);
	const str *marks = bundle_marks(b, k->arena);

	printer_keep(p, w, b, l);
	k->ok = save_parts(k, w, b, l);
	arena_free(a);
	return marks;
}

static void make_want(void *user, unsigned thread, size_t i)
{
	struct jobs *j = user;
	const struct want *w = j->wants[i];
	struct desk k = printer_desk(j->p);
	const str *marks = make_bundle(&k, w, NULL, NULL);

	(void)thread;
	for (size_t n = 1; n < languages_of(j->p, w) && k.ok; n++) {
		const struct language *l = printer_language(j->p, w, n);

		if (printer_prints(j->p, w, l) && is_wanted_in(w, l))
			make_bundle(&k, w, l, marks);
	}
	j->ok[i] = k.ok;
	j->told[i] = printer_leave(&k);
}

static struct jobs jobs_new(struct printer *p)
{
	struct arena *a = p->run->arena;

	return (struct jobs){ .p = p,
		.wants = arena_array(a, p->wants.n, sizeof(const struct want *)),
		.ok = arena_array(a, p->wants.n, sizeof(bool)),
		.told = arena_array(a, p->wants.n, sizeof(str)) };
}

/* What is empty or held back is settled at once; the rest becomes jobs. What holds the
 * English papers back holds all others back too. */
static bool sort_wants(struct printer *p, struct jobs *j)
{
	bool ok = true;

	for (size_t i = 0; i < p->wants.n; i++) {
		const struct want *w = &p->wants.v[i];

		if (!w->n)
			ok = tell_empty(p, w) && ok;
		for (size_t n = 0; w->n && n < languages_of(p, w); n++) {
			const struct language *l = printer_language(p, w, n);

			if (!printer_prints(p, w, l))
				ok = tell_held(p, w, printer_why(p, w, l), l) && ok;
		}
		if (printer_prints(p, w, NULL))
			j->wants[j->n++] = w;
	}
	return ok;
}

static bool print_wants(struct printer *p)
{
	struct jobs j = jobs_new(p);
	bool ok = sort_wants(p, &j);

	pool_run(POOL_THREADS, j.n, make_want, &j);
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

/* Adds the names of the files that a want makes, in every language. Returns how many. */
static size_t names_of_want(struct printer *p, const struct want *w, struct printed *names)
{
	size_t n = 0;

	for (size_t i = 0; i < languages_of(p, w); i++) {
		const struct language *l = printer_language(p, w, i);

		for (int part = 0; part < BUNDLE_PARTS && printer_prints(p, w, l); part++) {
			if (!is_wanted(w, part, l))
				continue;
			n++;
			if (names)
				printed_add(p->run->arena, names, file_name(p, p->run->arena, w, part, l));
		}
	}
	return n;
}

static bool print_all(struct printer *p)
{
	bool ok;

	for (int book = 0; book < BOOK_COUNT; book++)
		p->total += p->wants.books[book];
	for (size_t i = 0; i < p->wants.n; i++)
		p->total += names_of_want(p, &p->wants.v[i], NULL);
	ok = print_wants(p);
	return printer_books(p) && ok;
}

/* The names that this print writes. */
static struct printed names_to_write(struct printer *p)
{
	struct printed names = { 0 };
	struct arena *a = p->run->arena;

	for (size_t i = 0; i < p->wants.n; i++)
		names_of_want(p, &p->wants.v[i], &names);
	for (int book = 0; book < BOOK_COUNT; book++)
		if (p->wants.books[book])
			printed_add(a, &names, printer_book_name(p, a, (enum book)book));
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

/* Whether a file is of the edition of this print, in whatever language: what follows the
 * first dot of its name says which. */
static bool is_of_edition(const struct printer *p, str name)
{
	size_t dot = name.n;
	str ending;

	while (dot && name.p[dot - 1] != '/')
		dot--;
	ending = str_sub(name, str_find_char(name, '.', dot), name.n);
	if (str_eq(ending, printer_name(p, p->run->arena, STR(".pdf"))))
		return true;
	for (size_t i = 0; language_at(i); i++)
		if (str_eq(ending, printer_name_in(p, p->run->arena, STR(".pdf"), language_at(i))))
			return true;
	return false;
}

/* A file of this edition that this print has nothing to do with. A paper that is held
 * back has been dropped already. */
static bool is_stale(struct printer *p, const struct printed *names, str name)
{
	return is_of_edition(p, name) && !printed_has(names, name);
}

/* A whole print takes away what earlier ones of its edition left and this one does not
 * make. */
static bool drop_stale(struct printer *p, const struct printed *names, bool whole)
{
	bool ok = true;

	for (size_t i = p->printed.n; whole && i--;)
		if (is_stale(p, names, p->printed.v[i]))
			ok = printer_drop(p, p->printed.v[i]) && ok;
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
	ok = drop_stale(p, &names, !p->o->nwords) && ok;
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
		p.said_pages = arena_array(r.arena, r.model->nquarters + 1,
		    sizeof *p.said_pages);
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
