#include "model/assignment.h"
#include "model/parts.h"
#include "model/translation.h"
#include "model/shop_word.h"
#include "model/twice.h"

#include <stdlib.h>

/* Right in the folder, with that ending in small or capital letters. */
static bool is_flat(str path, str folder, str ending)
{
	str rest = str_sub(path, folder.n, path.n);

	return str_starts(path, folder) && rest.n > ending.n &&
	    str_eq_nocase(str_sub(rest, rest.n - ending.n, rest.n), ending) &&
	    str_find_char(rest, '/', 0) == rest.n;
}

static bool is_flat_md(str path, str folder)
{
	return str_ends(path, STR(".md")) && is_flat(path, folder, STR(".md"));
}

bool file_role_of(str path, enum file_role *role)
{
	static const struct { str path; enum file_role role; } rows[] = {
		{ { "program.md", 10 }, ROLE_PROGRAM },
		{ { "skills.md", 9 }, ROLE_SKILLS },
		{ { "shop.md", 7 }, ROLE_SHOP },
		{ { "customs.md", 10 }, ROLE_CUSTOMS },
		{ { "cohorts.md", 10 }, ROLE_COHORTS },
	};

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		if (str_eq(path, rows[i].path)) {
			*role = rows[i].role;
			return true;
		}
	*role = ROLE_PICTURE;
	if (is_flat(path, STR("pictures/"), STR(".png")))
		return true;
	*role = ROLE_STANDARD;
	if (is_flat_md(path, STR("standards/")))
		return true;
	*role = ROLE_TRANSLATION;
	if (translation_folder(path))
		return true;
	*role = ROLE_ASSIGNMENTS;
	return is_flat_md(path, STR("assignments/"));
}

struct gathering {
	struct found *v;
	size_t n, cap;
};

static void gather_one(struct binder *b, struct gathering *g, const struct block *v,
    size_t n)
{
	size_t used;
	struct said title;
	str id = id_of_assignment(b->arena, v->text, &used);

	if (!id.n || !title_after(said_all(v), used, &title)) {
		finding_repair(b->f, complain(b, FINDING_BAD_ID, v->pos,
		    "\"%.*s\" does not begin with the id of an assignment; what stands "
		    "under it is left out", STR_ARG(v->text)),
		    "write a heading such as \"# SM-20: Title\"");
		return;
	}
	*ARENA_PUSH(b->arena, g->v, g->n, g->cap) = (struct found){ id, title.s, v, n, false };
}

static size_t count_titles(const struct record_file *file)
{
	size_t n = 0;

	for (size_t i = 0; i < file->n; i++)
		n += file->v[i].kind == BLOCK_HEADING && file->v[i].level == 1;
	return n;
}

static void gather_file(struct binder *b, struct gathering *g,
    const struct record_file *file)
{
	size_t end;

	g->v = arena_grow(b->arena, g->v, g->n, g->n + count_titles(file), &g->cap,
	    sizeof *g->v);
	for (size_t i = 0; i < file->n; i = end) {
		end = blocks_until(file->v, file->n, i + 1, 1);
		gather_one(b, g, &file->v[i], end - i);
	}
}

static void read_found(struct binder *b, const struct found *found)
{
	struct model *m = b->model;
	struct assignment *a = &m->assignments[m->nassignments];

	map_add(m->assignment_by_id, found->id, (uint32_t)m->nassignments++);
	a->id = found->id;
	a->title = found->title;
	a->pos = found->v->pos;
	assignment_read(b, a, found->v, found->n);
	if (a->title.n)
		return;
	b->a = a;
	finding_repair(b->f, complain(b, FINDING_MISSING_FACT, a->pos,
	    "%.*s has no title", STR_ARG(a->id)), "write \"# %.*s: title\"",
	    STR_ARG(a->id));
	b->a = NULL;
}

static void read_assignments(struct binder *b, const struct gathering *g,
    const struct record_file *program)
{
	struct model *m = b->model;

	if (g->n)
		qsort(g->v, g->n, sizeof *g->v, compare_found);
	twice_settle(b, g->v, g->n, program);
	m->assignments = arena_array(b->arena, g->n, sizeof *m->assignments);
	m->assignments_cap = g->n;
	map_reserve(m->assignment_by_id, g->n);
	for (size_t i = 0; i < g->n; i++)
		if (!g->v[i].left_out)
			read_found(b, &g->v[i]);
}

static void read_role(struct binder *b, const struct record_file *files, size_t n,
    enum file_role role, void (*read)(struct binder *, const struct record_file *))
{
	const struct sources *sources = b->model->sources;
	enum file_role is;

	for (size_t i = 0; i < n; i++)
		if (file_role_of(sources->v[files[i].file].path, &is) && is == role)
			read(b, &files[i]);
}

static size_t count_role(const struct sources *sources, const struct record_file *files,
    size_t n, enum file_role role)
{
	enum file_role is;
	size_t count = 0;

	for (size_t i = 0; i < n; i++)
		count += file_role_of(sources->v[files[i].file].path, &is) && is == role;
	return count;
}

/* Skills, shop and sets come first and the program last, so that each reference is looked
 * up once, where it stands. */
struct model *model_bind(struct arena *a, const struct sources *sources,
    const struct record_file *files, size_t nfiles, struct findings *f)
{
	struct model *m = arena_alloc(a, sizeof *m);
	struct binder b = { .arena = a, .model = m, .f = f };
	struct gathering g = { 0 };
	const struct record_file *program = NULL;
	enum file_role role;

	m->arena = a;
	m->sources = sources;
	m->hour_minutes = 60;
	m->assignment_by_id = map_new(a, true);
	m->skill_by_id = map_new(a, true);
	read_role(&b, files, nfiles, ROLE_SKILLS, skills_read);
	read_role(&b, files, nfiles, ROLE_SHOP, shop_read);
	standards_begin(&b, count_role(sources, files, nfiles, ROLE_STANDARD));
	read_role(&b, files, nfiles, ROLE_STANDARD, standard_read);
	for (size_t i = 0; i < nfiles; i++) {
		if (!file_role_of(sources->v[files[i].file].path, &role))
			continue;
		if (role == ROLE_ASSIGNMENTS)
			gather_file(&b, &g, &files[i]);
		else if (role == ROLE_PROGRAM)
			program = &files[i];
	}
	pictures_begin(&b);
	read_assignments(&b, &g, program);
	pictures_end(&b);
	shop_words_settle(&b);
	read_role(&b, files, nfiles, ROLE_TRANSLATION, translation_read);
	read_role(&b, files, nfiles, ROLE_PROGRAM, program_read);
	read_role(&b, files, nfiles, ROLE_CUSTOMS, customs_read);
	read_role(&b, files, nfiles, ROLE_COHORTS, cohorts_read);
	hollow_tell(&b);
	return m;
}
