#include "model/assignment.h"
#include "model/parts.h"
#include "model/standard.h"
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

/* A run of assignments that one thread reads, and what it noted for all of them. */
struct part {
	size_t first, end;       /* in binding.v */
	struct binder b;
};

/* A model on the way. b reads what stands beside the assignments. */
struct binding {
	struct binder b;
	const struct record_file *files;
	enum file_role *roles;   /* of each file; ROLE_PICTURE: not to be read here */
	size_t nfiles;
	struct found *v; size_t n, cap; /* the assignments, by id */
	struct part *parts;
	size_t nparts;
	size_t told;             /* findings before those of the jobs */
	struct binder program;   /* reads program.md beside the parts */
};

/* The jobs: program.md, then each part. */
enum { JOB_PROGRAM, JOB_PARTS };

/* About so many parts, so that two threads end together; but none so small that handing
 * it out costs more than reading it. */
enum { PARTS_MOST = 16, PART_LEAST = 16 };

/* Looks at the title alone: its blocks are not fetched before they are read. */
static void gather_one(struct binding *x, const struct record_title *t,
    const struct block *v, size_t n)
{
	struct binder *b = &x->b;
	size_t used;
	struct said title;
	str id = id_of_assignment(b->arena, t->text, &used);

	if (!id.n || !title_after((struct said){ v, t->text }, used, &title)) {
		finding_repair(b->f, complain(b, FINDING_BAD_ID, t->pos,
		    "\"%.*s\" does not begin with the id of an assignment; what stands "
		    "under it is left out", STR_ARG(t->text)),
		    "write a heading such as \"# SM-20: Title\"");
		return;
	}
	*ARENA_PUSH(b->arena, x->v, x->n, x->cap) = 
	    (struct found){ id, title.s, t->pos, v, n, false };
}

static void gather_file(struct binding *x, const struct record_file *file)
{
	x->v = arena_grow(x->b.arena, x->v, x->n, x->n + file->ntitles, &x->cap, sizeof *x->v);
	for (size_t i = 0; i < file->ntitles; i++) {
		const struct record_title *t = &file->titles[i];
		size_t end = i + 1 < file->ntitles ? t[1].at : file->n;

		gather_one(x, t, &file->v[t->at], end - t->at);
	}
}

static void read_found(struct binder *b, struct assignment *a, const struct found *found)
{
	assignment_read(b, a, found->v, found->n);
	if (a->title.n)
		return;
	b->a = a;
	finding_repair(b->f, complain(b, FINDING_MISSING_FACT, a->pos,
	    "%.*s has no title", STR_ARG(a->id)), "write \"# %.*s: title\"",
	    STR_ARG(a->id));
	b->a = NULL;
}

static bool is_sorted(const struct found *v, size_t n)
{
	for (size_t i = 1; i < n; i++)
		if (compare_found(&v[i - 1], &v[i]) > 0)
			return false;
	return true;
}

/* Files mostly have their assignments in order. */
static void settle_ids(struct binding *x, const struct record_file *program)
{
	size_t kept = 0;

	if (!is_sorted(x->v, x->n))
		qsort(x->v, x->n, sizeof *x->v, compare_found);
	twice_settle(&x->b, x->v, x->n, program);
	for (size_t i = 0; i < x->n; i++)
		if (!x->v[i].left_out)
			x->v[kept++] = x->v[i];
	x->n = kept;
}

/* The assignments by name and place, which is all that other parts may ask of them. */
static void name_assignments(struct binding *x)
{
	struct model *m = x->b.model;

	m->assignments = arena_array(x->b.arena, x->n, sizeof *m->assignments);
	m->nassignments = m->assignments_cap = x->n;
	for (size_t i = 0; i < x->n; i++) {
		struct assignment *a = &m->assignments[i];

		a->id = x->v[i].id;
		a->title = x->v[i].title;
		a->pos = x->v[i].pos;
	}
}

static void cut_parts(struct binding *x)
{
	size_t size = x->n / PARTS_MOST + 1;

	if (size < PART_LEAST)
		size = PART_LEAST;
	x->parts = arena_array(x->b.arena, x->n / size + 1, sizeof *x->parts);
	for (size_t i = 0; i < x->n; i += size)
		x->parts[x->nparts++] =
		    (struct part){ i, x->n - i < size ? x->n : i + size, { 0 } };
}

static void note_roles(struct binding *x)
{
	const struct sources *sources = x->b.model->sources;

	x->roles = arena_array(x->b.arena, x->nfiles, sizeof *x->roles);
	for (size_t i = 0; i < x->nfiles; i++)
		if (!file_role_of(sources->v[x->files[i].file].path, &x->roles[i]))
			x->roles[i] = ROLE_PICTURE;
}

static void read_role(struct binding *x, struct binder *b, enum file_role role,
    void (*read)(struct binder *, const struct record_file *))
{
	for (size_t i = 0; i < x->nfiles; i++)
		if (x->roles[i] == role)
			read(b, &x->files[i]);
}

static size_t count_role(const struct binding *x, enum file_role role)
{
	size_t count = 0;

	for (size_t i = 0; i < x->nfiles; i++)
		count += x->roles[i] == role;
	return count;
}

/* One that reads beside others: with an arena and findings of its own, after all that is
 * told already. */
static struct binder binder_beside(const struct binder *b, struct arena *a,
    struct findings *f, size_t told)
{
	const struct model *m = b->model;

	return (struct binder){ .arena = a, .model = b->model, .f = f, .told = told,
		.picture_uses = arena_array(a, m->npictures, sizeof(uint32_t)),
		.sets_wanted = arena_array(a, m->nshipped, sizeof(bool)) };
}

/* Skills, shop and sets come first and the program last, so that each reference is looked
 * up once, where it stands. */
struct binding *binding_begin(struct arena *a, const struct sources *sources,
    const struct record_file *files, size_t nfiles, struct findings *f)
{
	struct binding *x = arena_alloc(a, sizeof *x);
	struct model *m = arena_alloc(a, sizeof *m);
	const struct record_file *program = NULL;

	m->arena = a;
	m->sources = sources;
	m->hour_minutes = 60;
	m->assignment_by_id = map_new(a, true);
	m->skill_by_id = map_new(a, true);
	*x = (struct binding){ .b = { .arena = a, .model = m, .f = f }, .files = files,
		.nfiles = nfiles };
	note_roles(x);
	read_role(x, &x->b, ROLE_SKILLS, skills_read);
	read_role(x, &x->b, ROLE_SHOP, shop_read);
	standards_begin(&x->b, count_role(x, ROLE_STANDARD));
	read_role(x, &x->b, ROLE_STANDARD, standard_read);
	pictures_begin(&x->b);
	for (size_t i = 0; i < nfiles; i++)
		if (x->roles[i] == ROLE_ASSIGNMENTS)
			gather_file(x, &files[i]);
		else if (x->roles[i] == ROLE_PROGRAM)
			program = &files[i];
	settle_ids(x, program);
	name_assignments(x);
	cut_parts(x);
	x->told = f->n;
	return x;
}

size_t binding_jobs(const struct binding *x)
{
	return JOB_PARTS + x->nparts;
}

static void bind_program(struct binding *x, struct arena *a, struct findings *f)
{
	struct model *m = x->b.model;

	for (uint32_t i = 0; i < m->nassignments; i++)
		map_add(m->assignment_by_id, m->assignments[i].id, i);
	x->program = binder_beside(&x->b, a, f, x->told);
	read_role(x, &x->program, ROLE_PROGRAM, program_read);
}

static void bind_part(struct binding *x, struct part *p, struct arena *a,
    struct findings *f)
{
	p->b = binder_beside(&x->b, a, f, x->told);
	for (size_t i = p->first; i < p->end; i++)
		read_found(&p->b, &x->b.model->assignments[i], &x->v[i]);
}

void binding_do(struct binding *x, size_t job, struct arena *a, struct findings *f)
{
	if (job == JOB_PROGRAM)
		bind_program(x, a, f);
	else
		bind_part(x, &x->parts[job - JOB_PARTS], a, f);
}

static void sum_uses(struct model *m, const struct binder *b)
{
	for (size_t i = 0; i < m->npictures; i++)
		m->pictures[i].uses += b->picture_uses[i];
	for (size_t i = 0; i < m->nshipped; i++)
		m->shipped[i].wanted |= b->sets_wanted[i];
}

struct model *binding_end(struct binding *x)
{
	struct binder *b = &x->b;
	struct model *m = b->model;
	const struct binder **parts = arena_array(b->arena, x->nparts, sizeof *parts);

	for (size_t i = 0; i < x->nparts; i++) {
		parts[i] = &x->parts[i].b;
		sum_uses(m, parts[i]);
	}
	pictures_end(b);
	shop_words_settle(b, parts, x->nparts);
	*b = binder_beside(b, b->arena, b->f, 0);
	read_role(x, b, ROLE_TRANSLATION, translation_read);
	sum_uses(m, b);
	read_role(x, b, ROLE_CUSTOMS, customs_read);
	read_role(x, b, ROLE_COHORTS, cohorts_read);
	hollow_tell(b);
	return m;
}

struct model *model_bind(struct arena *a, const struct sources *sources,
    const struct record_file *files, size_t nfiles, struct findings *f)
{
	struct binding *x = binding_begin(a, sources, files, nfiles, f);

	for (size_t i = 0; i < binding_jobs(x); i++) {
		struct findings *own = findings_new(a);

		binding_do(x, i, a, own);
		findings_join(f, own);
	}
	return binding_end(x);
}
