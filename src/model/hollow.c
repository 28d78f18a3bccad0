/* Files that much else refers to and that give nothing: told once, whole, in place of each
 * word that would have stood there. */
#include "model/parts.h"

/* What is missing, and for whom. */
struct hollow {
	enum file_role role;
	enum finding_name name;  /* where nothing else is wrong with the file */
	enum finding_level level;
	str message, repair;
};

/* Index of the first file of a role, or POS_NOWHERE. */
static uint32_t file_of(const struct sources *s, enum file_role role)
{
	enum file_role is;

	for (size_t i = 0; i < s->n; i++)
		if (file_role_of(s->v[i].path, &is) && is == role)
			return (uint32_t)i;
	return POS_NOWHERE;
}

/* What is wrong with the file already stands in the list and is the cause: it takes the
 * consequence along, at its level. */
static bool told_before(struct binder *b, uint32_t file, const struct hollow *h)
{
	for (size_t i = 0; i < b->f->n; i++) {
		struct finding *d = &b->f->v[i];

		if (d->pos.file != file)
			continue;
		if (d->level < h->level)
			d->level = h->level;
		d->scope = h->level == LEVEL_ERROR ? SCOPE_PROGRAM : d->scope;
		if (!d->cause.n)
			finding_cause(b->f, d, "%.*s", STR_ARG(h->message));
		return true;
	}
	return false;
}

static void tell(struct binder *b, const struct hollow *h)
{
	uint32_t file = file_of(b->model->sources, h->role);
	struct finding *d;

	if (file == POS_NOWHERE || told_before(b, file, h))
		return;
	d = complain(b, h->name, (struct pos){ file, 1, 1 }, "%.*s", STR_ARG(h->message));
	d->level = h->level;
	d->scope = h->level == LEVEL_ERROR ? SCOPE_PROGRAM : SCOPE_ASSIGNMENTS;
	finding_repair(b->f, d, "%.*s", STR_ARG(h->repair));
}

static unsigned count_skill_words(const struct model *m)
{
	size_t n = m->nentry_skills;

	for (size_t i = 0; i < m->nassignments; i++)
		n += m->assignments[i].nneeds + m->assignments[i].nteaches;
	return (unsigned)n;
}

bool shop_is_hollow(const struct model *m)
{
	return !m->nstations && !m->nmachines && !m->nsections;
}

/* Lines that name a station, machines or a section of shop.md. */
static unsigned count_shop_words(const struct model *m)
{
	size_t n = m->ncohorts;

	for (size_t i = 0; i < m->nassignments; i++)
		n += assignment_fact(&m->assignments[i], STR("Station")) ||
		    assignment_fact(&m->assignments[i], STR("Machines"));
	return (unsigned)n;
}

static void tell_shop(struct binder *b)
{
	unsigned n = count_shop_words(b->model);
	struct finding *d;

	if (!n)
		return;
	if (file_of(b->model->sources, ROLE_SHOP) != POS_NOWHERE) {
		tell(b, &(struct hollow){ ROLE_SHOP, FINDING_MISSING_FACT, LEVEL_WARNING,
		    str_format(b->arena, "shop.md has no section, station or machine, so "
		    "no load and no limit is judged (sheets and groups that name one: %u)", n),
		    STR("add \"## Section day\", \"## Station booth\", \"## Machine shear\" "
		    "and what the shop has") });
		return;
	}
	/* Sheets without a sequence are no program yet and owe no shop. */
	if (file_of(b->model->sources, ROLE_PROGRAM) == POS_NOWHERE)
		return;
	d = complain(b, FINDING_MISSING_FILE, (struct pos){ POS_NOWHERE, 0, 0 },
	    "shop.md is not in the folder, so no load and no limit is judged (sheets and "
	    "groups that name a station, machine or section: %u)", n);
	d->level = LEVEL_WARNING;
	d->scope = SCOPE_ASSIGNMENTS;
	finding_repair(b->f, d, "add shop.md");
}

void hollow_tell(struct binder *b)
{
	const struct model *m = b->model;
	unsigned skills = m->nskills ? 0 : count_skill_words(m);

	if (skills)
		tell(b, &(struct hollow){ ROLE_SKILLS, FINDING_UNKNOWN_SKILL, LEVEL_ERROR,
		    str_format(b->arena, "skills.md lists no skill, and %u lines of the "
		    "program name one", skills),
		    STR("list the skills under their outcomes: \"- **smaw.2f:** Stick "
		    "fillet 2F\"") });
	if (!m->nslots && m->nassignments)
		tell(b, &(struct hollow){ ROLE_PROGRAM, FINDING_NOT_LISTED, LEVEL_ERROR,
		    str_format(b->arena, "program.md lists no assignment in a course, so "
		    "nobody is given any of the %u that there are",
		    (unsigned)m->nassignments),
		    STR("add quarters, courses and lines such as \"1. SM-20, week 1\"") });
	if (shop_is_hollow(m))
		tell_shop(b);
}
