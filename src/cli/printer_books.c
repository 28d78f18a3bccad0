/* The documents of the whole program: keys, templates, labels, and the list of all. */
#include "cli/printer.h"

#include "cli/pool.h"
#include "sheets/keybook.h"
#include "sheets/label.h"
#include "sheets/print_list.h"
#include "sheets/template.h"

#include "base/finding.h"
#include "model/translation.h"

static const str book_files[BOOK_COUNT] = {
	[BOOK_KEYS] = STR("instructor/keys.pdf"),
	[BOOK_TEMPLATES] = STR("instructor/templates.pdf"),
	[BOOK_LABELS] = STR("shop/labels.pdf"),
	[BOOK_SAID_LABELS] = STR("shop/labels.pdf"),
	[BOOK_PRINT_LIST] = STR("instructor/print-list.pdf"),
};

void printer_keep(struct printer *p, const struct want *w, const struct bundle *b,
    const struct language *l)
{
	pthread_mutex_lock(&p->lock);
	for (size_t i = 0; i < w->n && !l; i++)
		p->marks[w->assignments[i]] = str_copy(p->run->arena, bundle_mark(b, i));
	for (int part = 0; part < BUNDLE_PARTS && w->quarter; part++)
		(l ? p->said_pages : p->quarter_pages)[w->quarter][part] = bundle_pages(
		    b, (enum bundle_part)part);
	pthread_mutex_unlock(&p->lock);
}

/* Marks of assignments whose sheets this print does not make: laid out for that alone. */
static void learn_marks(struct printer *p)
{
	const struct order *o = p->order;
	struct arena *a = run_scratch();
	struct want w = { .assignments = arena_array(
			      a, o->nwalk, sizeof *w.assignments) };
	struct bundle_spec spec;

	for (size_t i = 0; i < o->nwalk; i++)
		if (!p->marks[o->walk[i]].n)
			w.assignments[w.n++] = o->walk[i];
	spec = printer_bundle(p, &w, false);
	spec.front = false;
	if (w.n)
		printer_keep(p, &w, bundle_new(a, &spec), NULL);
	arena_free(a);
}

str printer_book_name(const struct printer *p, struct arena *a, enum book book)
{
	return printer_name_in(p, a, book_files[book],
	    book == BOOK_SAID_LABELS ? speech_language(p->run->model) : NULL);
}

static bool has_errors(const struct printer *p)
{
	return findings_count(p->run->findings, LEVEL_ERROR) > 0;
}

static str book_title(const struct printer *p, struct arena *a, const char *what)
{
	return str_format(a, "%.*s, %s", STR_ARG(p->run->model->title), what);
}

/* ---- the books; each lays out in a and says how to draw ---- */

static void emit_keys(const void *doc, struct canvas *c)
{
	keybook_emit(doc, c);
}

static struct document make_keys(struct printer *p, struct arena *a)
{
	const struct keybook_spec spec = { .model = p->run->model,
		.order = p->order,
		.faces = p->run->faces,
		.marks = p->marks,
		.edition = p->o->edition,
		.draft = has_errors(p) };
	struct keybook *k = keybook_new(a, &spec);

	return (struct document){ .title = book_title(p, a, "keys"),
		.pages = keybook_pages(k),
		.private = true,
		.emit = emit_keys,
		.doc = k };
}

static void emit_templates(const void *doc, struct canvas *c)
{
	template_emit(doc, c);
}

static struct document make_templates(struct printer *p, struct arena *a)
{
	str *marks = arena_array(a, p->order->nwalk, sizeof *marks);
	const struct template_spec spec = { .model = p->run->model,
		.faces = p->run->faces,
		.assignments = p->order->walk,
		.n = p->order->nwalk,
		.marks = marks,
		.edition = p->o->edition,
		.draft = has_errors(p) };
	struct template_doc *t;

	for (size_t i = 0; i < p->order->nwalk; i++)
		marks[i] = p->marks[p->order->walk[i]];
	t = template_new(a, &spec);
	return (struct document){ .title = book_title(p, a, "full-size templates"),
		.pages = template_pages(t),
		.private = true,
		.actual_size = true,
		.emit = emit_templates,
		.doc = t };
}

static void emit_labels(const void *doc, struct canvas *c)
{
	labels_emit(doc, c);
}

static struct document make_labels_in(struct printer *p, struct arena *a,
    const struct language *language)
{
	struct label_spec spec = { .model = p->run->model,
		.order = p->order,
		.faces = p->run->faces,
		.marks = p->marks,
		.edition = p->o->edition,
		.draft = has_errors(p) };
	struct labels *l;

	spec.edition.language = language;
	l = labels_new(a, &spec);
	return (struct document){ .title = str_format(a, "%.*s, %.*s",
		    STR_ARG(p->run->model->title), STR_ARG(labels_title(l))),
		.language = language,
		.pages = labels_pages(l),
		.emit = emit_labels,
		.doc = l };
}

static struct document make_labels(struct printer *p, struct arena *a)
{
	return make_labels_in(p, a, NULL);
}

/* Nothing in a folder without translations. */
static struct document make_said_labels(struct printer *p, struct arena *a)
{
	const struct language *l = speech_language(p->run->model);

	return l ? make_labels_in(p, a, l) : (struct document){ 0 };
}

/* ---- the list ---- */

static const struct {
	const char *binding, *paper;
	bool one_sided, once;
} part_ways[] = {
	[BUNDLE_PACKET] = { "punch and bind", "plain", false, false },
	[BUNDLE_GRADING] = { "staple each assignment", "plain", false, false },
	[BUNDLE_CARDS] = { "none; sleeve", "card", true, false },
	[BUNDLE_CHART] = { "none; to the wall", "card", true, true },
};

struct item_list {
	struct printer *p;
	struct arena *arena;
	struct print_item *v;
	size_t n, cap;
};

static struct want quarter_want(struct item_list *l, uint32_t quarter)
{
	const struct order *o = l->p->order;
	struct want w = { .quarter = quarter,
		.name = str_format(l->arena, "Quarter %u", quarter),
		.assignments = arena_array(l->arena, o->nwalk, sizeof *w.assignments) };

	for (size_t i = 0; i < o->nwalk; i++)
		if (o->places[o->walk[i]].quarter == quarter)
			w.assignments[w.n++] = o->walk[i];
	return w;
}

static void learn_quarter(struct printer *p, const struct want *w, const struct language *l)
{
	struct arena *a = run_scratch();
	struct bundle_spec spec = printer_bundle(p, w, false);
	struct bundle *b = bundle_new(a, &spec);

	printer_keep(p, w, b, NULL);
	if (l)
		printer_keep(p, w, printer_translate(p, a, w, bundle_marks(b, a), l), l);
	arena_free(a);
}

static void list_part(struct item_list *l, const struct want *w, int part, bool held,
    const struct language *language)
{
	struct printer *p = l->p;
	unsigned copies = print_list_copies(print_list_students(p->run->model, w->quarter));
	str file = str_format(l->arena, "q%u/%s", w->quarter, part_files[part]);

	/* How many read another language or large print is not known here: a blank. */
	*ARENA_PUSH(l->arena, l->v, l->n, l->cap) = (struct print_item){
		.file = printer_name_in(p, l->arena, file, language),
		.pages = (language ? p->said_pages : p->quarter_pages)[w->quarter][part],
		.copies = language ? 0 : part_ways[part].once ? 1
		    : p->o->edition.large ? 0 : copies,
		.one_sided = part_ways[part].one_sided &&
		    !(part == BUNDLE_CARDS && p->o->edition.large),
		.held = held,
		.binding = str_of(part_ways[part].binding),
		.paper = str_of(part_ways[part].paper)
	};
}

static void list_quarter(struct item_list *l, uint32_t quarter)
{
	struct printer *p = l->p;
	struct want w = quarter_want(l, quarter);
	const struct language *said;

	if (!w.n)
		return;
	for (size_t i = 0; !i || printer_language(p, &w, i); i++) {
		bool held;

		said = printer_language(p, &w, i);
		held = !printer_prints(p, &w, said);
		if (!(said ? p->said_pages : p->quarter_pages)[quarter][BUNDLE_PACKET] && !held)
			learn_quarter(p, &w, said);
		for (int part = 0; part < BUNDLE_PARTS; part++)
			if (bundle_has(&(struct edition_choice){ .language = said },
			    (enum bundle_part)part))
				list_part(l, &w, part, held, said);
	}
}

/* Tags are wanted by the students of a quarter, so each quarter is a line. */
static void list_labels(struct item_list *l, enum book book, const struct labels *labels)
{
	bool said = book == BOOK_SAID_LABELS;

	if (!labels)
		return;
	for (uint32_t q = 1; q <= l->p->run->model->nquarters; q++) {
		unsigned first, last;

		labels_quarter_pages(labels, q, &first, &last);
		if (!first)
			continue;
		*ARENA_PUSH(l->arena, l->v, l->n,
		    l->cap) = (struct print_item){ .file = printer_book_name(
			    l->p, l->arena, book),
			.pages = last - first + 1,
			.part = str_format(
			    l->arena, "pages %u to %u, quarter %u", first, last, q),
			.copies = said || l->p->o->edition.large ? 0 : print_list_copies(
			    print_list_students(l->p->run->model, q)),
			.one_sided = true,
			.binding = STR("cut apart"),
			.paper = STR("card") };
	}
}

static void list_once(struct item_list *l, enum book book, unsigned pages,
    const char *binding, bool one_sided)
{
	if (pages)
		*ARENA_PUSH(l->arena, l->v, l->n,
		    l->cap) = (struct print_item){ .file = printer_name(l->p, l->arena, book_files[book]),
			.pages = pages,
			.copies = 1,
			.one_sided = one_sided,
			.binding = str_of(binding),
			.paper = STR("plain") };
}

static void emit_print_list(const void *doc, struct canvas *c)
{
	print_list_emit(doc, c);
}

/* Of a book that this print made, or would make. */
static unsigned book_pages(struct printer *p, struct arena *a, enum book book)
{
	if (p->wants.books[book])
		return p->book_pages[book];
	return (book == BOOK_KEYS ? make_keys(p, a) : make_templates(p, a)).pages;
}

static struct document make_print_list(struct printer *p, struct arena *a)
{
	struct item_list l = { .p = p, .arena = a };
	struct print_list_spec spec = { .model = p->run->model,
		.faces = p->run->faces,
		.edition = p->o->edition,
		.draft = has_errors(p) };
	struct print_list *list;

	for (uint32_t q = 1; q <= p->run->model->nquarters; q++)
		list_quarter(&l, q);
	list_labels(&l, BOOK_LABELS, make_labels(p, a).doc);
	list_labels(&l, BOOK_SAID_LABELS, make_said_labels(p, a).doc);
	list_once(&l, BOOK_KEYS, book_pages(p, a, BOOK_KEYS), "punch and bind", false);
	list_once(&l, BOOK_TEMPLATES, book_pages(p, a, BOOK_TEMPLATES), "none; full size",
	    true);
	list_once(&l, BOOK_PRINT_LIST, 1, "none", false);
	spec.items = l.v;
	spec.n = l.n;
	list = print_list_new(a, &spec);
	l.v[l.n - 1].pages = print_list_pages(
	    list); /* Its own pages change no line's height. */
	list = print_list_new(a, &spec);
	return (struct document){ .title = book_title(p, a, "print list"),
		.pages = print_list_pages(list),
		.private = true,
		.emit = emit_print_list,
		.doc = list };
}

static struct document (*const makers[BOOK_COUNT])(struct printer *p, struct arena *a) = {
	[BOOK_KEYS] = make_keys,
	[BOOK_TEMPLATES] = make_templates,
	[BOOK_LABELS] = make_labels,
	[BOOK_SAID_LABELS] = make_said_labels,
	[BOOK_PRINT_LIST] = make_print_list,
};

struct book_jobs {
	struct printer *p;
	enum book books[BOOK_COUNT];
	bool ok[BOOK_COUNT];
	str told[BOOK_COUNT];
	size_t n;
};

/* Books cover the whole program: with an error anywhere they print DRAFT. */
static void make_book(void *user, unsigned thread, size_t i)
{
	struct book_jobs *j = user;
	struct desk k = printer_desk(j->p);
	struct document d = makers[j->books[i]](j->p, k.arena);

	(void)thread;
	d.name = printer_book_name(j->p, k.arena, j->books[i]);
	j->p->book_pages[j->books[i]] = d.pages; /* One job a book: nobody else's. */
	j->ok[i] = !d.pages || printer_save(&k, &d);
	j->told[i] = printer_leave(&k);
}

static bool print_books(struct printer *p, struct book_jobs *j)
{
	bool ok = true;

	pool_run(POOL_THREADS, j->n, make_book, j);
	for (size_t i = 0; i < j->n; i++) {
		buf_add(&p->told, j->told[i]);
		if (!p->book_pages[j->books[i]])
			ok = printer_drop(p, printer_book_name(p, p->run->arena, j->books[i])) && ok;
		ok = j->ok[i] && ok;
	}
	return ok;
}

/* The print list counts the pages of the others, so it comes last and alone. */
bool printer_books(struct printer *p)
{
	struct book_jobs most = { .p = p }, last = { .p = p };
	bool ok;

	for (int book = 0; book < BOOK_COUNT; book++) {
		struct book_jobs *j = book == BOOK_PRINT_LIST ? &last : &most;

		if (p->wants.books[book])
			j->books[j->n++] = (enum book)book;
	}
	if (!most.n && !last.n)
		return true;
	learn_marks(p);
	ok = print_books(p, &most);
	return print_books(p, &last) && ok;
}
