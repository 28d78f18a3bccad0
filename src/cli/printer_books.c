/* The documents for the instructor alone: keys and full-size templates. */
#include "cli/printer.h"
#include "sheets/keybook.h"
#include "sheets/template.h"

#include "base/finding.h"

void printer_keep_marks(struct printer *p, const struct want *w, const struct bundle *b)
{
	for (size_t i = 0; i < w->n; i++)
		p->marks[w->assignments[i]] = str_copy(p->run->arena, bundle_mark(b, i));
}

/* Marks of assignments whose sheets this print does not make: laid out for that alone. */
static void learn_marks(struct printer *p)
{
	const struct order *o = p->order;
	struct arena *a = run_scratch();
	struct want w = { .assignments = arena_array(a, o->nwalk, sizeof *w.assignments) };
	struct bundle_spec spec = { .model = p->run->model, .order = o, .faces = p->run->faces,
		.a4 = p->o->a4 };

	for (size_t i = 0; i < o->nwalk; i++)
		if (!p->marks[o->walk[i]].n)
			w.assignments[w.n++] = o->walk[i];
	spec.assignments = w.assignments;
	spec.n = w.n;
	if (w.n)
		printer_keep_marks(p, &w, bundle_new(a, &spec));
	arena_free(a);
}

static void emit_keys(const void *doc, struct canvas *c)
{
	keybook_emit(doc, c);
}

static void emit_templates(const void *doc, struct canvas *c)
{
	template_emit(doc, c);
}

static bool has_errors(const struct printer *p)
{
	return findings_count(p->run->findings, LEVEL_ERROR) > 0;
}

static str book_title(struct printer *p, const char *what)
{
	return str_format(p->run->arena, "%.*s, %s", STR_ARG(p->run->model->title), what);
}

/* Keys cover the whole program: with an error anywhere they print DRAFT. */
static bool print_keys(struct printer *p)
{
	struct arena *a = run_scratch();
	const struct keybook_spec spec = { .model = p->run->model, .order = p->order,
		.faces = p->run->faces, .marks = p->marks, .a4 = p->o->a4, .draft = has_errors(p) };
	struct keybook *k = keybook_new(a, &spec);
	const struct document d = { .name = STR(KEYS_FILE), .title = book_title(p, "keys"),
		.pages = keybook_pages(k), .private = true, .emit = emit_keys, .doc = k };
	bool ok = d.pages ? printer_save(p, a, &d) : printer_drop(p, d.name);

	arena_free(a);
	return ok;
}

static bool print_templates(struct printer *p)
{
	struct arena *a = run_scratch();
	str *marks = arena_array(a, p->order->nwalk, sizeof *marks);
	const struct template_spec spec = { .model = p->run->model, .faces = p->run->faces,
		.assignments = p->order->walk, .n = p->order->nwalk, .marks = marks,
		.a4 = p->o->a4, .draft = has_errors(p) };
	struct template_doc *t;
	bool ok;

	for (size_t i = 0; i < p->order->nwalk; i++)
		marks[i] = p->marks[p->order->walk[i]];
	t = template_new(a, &spec);
	const struct document d = { .name = STR(TEMPLATES_FILE),
		.title = book_title(p, "full-size templates"), .pages = template_pages(t),
		.private = true, .actual_size = true, .emit = emit_templates, .doc = t };
	ok = d.pages ? printer_save(p, a, &d) : printer_drop(p, d.name);
	arena_free(a);
	return ok;
}

bool printer_books(struct printer *p)
{
	bool ok = true;

	if (!p->wants.keys && !p->wants.templates)
		return true;
	learn_marks(p);
	if (p->wants.keys)
		ok = print_keys(p);
	if (p->wants.templates)
		ok = print_templates(p) && ok;
	return ok;
}
