/* Outcomes, the skills under them, and what students bring. */
#include "model/parts.h"

static bool is_outcome_id(str s)
{
	for (size_t i = 0; i < s.n; i++) {
		char c = (char)(s.p[i] | 32);

		if (!(c >= 'a' && c <= 'z') && !(s.p[i] >= '0' && s.p[i] <= '9'))
			return false;
	}
	return s.n > 0;
}

static size_t id_length(str s)
{
	size_t n = 0;

	while (n < s.n && s.p[n] != ':' && s.p[n] != ' ')
		n++;
	return n;
}

static void complain_twice(struct binder *b, struct pos pos, str id, struct pos first)
{
	struct finding *d = complain(b, FINDING_DUPLICATE_ID, pos,
	    "\"%.*s\" is listed twice; this one is left out", STR_ARG(id));

	finding_relate(b->f, d, first)->label = STR("the first counts");
	finding_repair(b->f, d, "delete one of them, or give it an id of its own");
}

/* "PO4: Makes sound fillets". Skills under a bad heading are kept all the same, so
 * that one fault is not told once for each of them. */
static uint32_t read_outcome(struct binder *b, const struct block *h, struct map *ids)
{
	struct model *m = b->model;
	struct said heading = said_all(h), title;
	size_t used = id_length(h->text);
	str id = str_sub(h->text, 0, used);
	uint32_t first, fresh = (uint32_t)m->noutcomes;
	struct outcome *o;

	if (!is_outcome_id(id) || !title_after(heading, used, &title)) {
		finding_repair(b->f, complain(b, FINDING_BAD_ID, h->pos,
		    "\"%.*s\" does not begin with the id of an outcome",
		    STR_ARG(h->text)),
		    "write a heading such as \"## PO4: Makes sound stick fillets\"");
		id = title.s = h->text;
	}
	first = map_add(ids, id, fresh);
	if (first != fresh) {
		complain_twice(b, h->pos, id, m->outcomes[first].pos);
		return first;
	}
	o = ARENA_PUSH(b->arena, m->outcomes, m->noutcomes, m->outcomes_cap);
	*o = (struct outcome){ id, title.s, h->pos };
	return fresh;
}

static void read_skill(struct binder *b, const struct block *v, uint32_t outcome)
{
	struct model *m = b->model;
	str id = id_of_skill(b->arena, v->key);
	uint32_t fresh = (uint32_t)m->nskills, first;

	if (!id.n) {
		finding_repair(b->f, complain(b, FINDING_BAD_ID, block_key_pos(v),
		    "\"%.*s\" does not look like a skill; this line is left out",
		    STR_ARG(v->key)), "use letters, digits and dots, such as smaw.2f");
		return;
	}
	first = map_add(m->skill_by_id, id, fresh);
	if (first != fresh) {
		complain_twice(b, block_key_pos(v), id, m->skills[first].pos);
		return;
	}
	if (!v->text.n)
		complain(b, FINDING_MISSING_FACT, block_key_pos(v),
		    "\"%.*s\" says nothing of what the student can do", STR_ARG(id));
	*ARENA_PUSH(b->arena, m->skills, m->nskills, m->skills_cap) =
	    (struct skill){ id, v->text, outcome, block_key_pos(v) };
}

static void read_skills(struct binder *b, const struct block *h, const struct block *v,
    size_t n, struct map *ids)
{
	uint32_t outcome = read_outcome(b, h, ids);

	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_FACT && v[i].level == 1)
			read_skill(b, &v[i], outcome);
		else
			complain_block(b, &v[i],
			    "write \"- **smaw.2f:** Stick fillet 2F\"");
}

/* "meas.rule introduced" in bold, then why every student has it. */
static void read_entry_skill(struct binder *b, const struct block *v)
{
	struct model *m = b->model;
	struct said t = v->kind == BLOCK_FACT ? (struct said){ v, v->key } : said_all(v);
	struct skill_at at;

	if (!read_skill_at(b, &t, &at))
		return;
	if (v->kind == BLOCK_FACT)
		at.evidence = v->text;
	t = said_trim(t);
	if (t.s.n)
		finding_repair(b->f, complain(b, FINDING_NOT_UNDERSTOOD, said_pos(t),
		    "\"%.*s\" has no meaning here; it is left out", STR_ARG(t.s)),
		    "write \"- **meas.rule introduced:** why\"");
	*ARENA_PUSH(b->arena, m->entry_skills, m->nentry_skills,
	    m->entry_skills_cap) = at;
}

static void read_entry_skills(struct binder *b, const struct block *v, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if ((v[i].kind == BLOCK_FACT || v[i].kind == BLOCK_BULLET) &&
		    v[i].level == 1)
			read_entry_skill(b, &v[i]);
		else
			complain_block(b, &v[i],
			    "write \"- **meas.rule introduced:** why\"");
}

void complain_second_title(struct binder *b, const struct block *v)
{
	finding_repair(b->f, complain(b, FINDING_UNKNOWN_SECTION, v->pos,
	    "\"%.*s\" is a second title; what stands under it is left out",
	    STR_ARG(v->text)), "begin it with ## or give it a file of its own");
}

/* Entry skills name skills of any outcome, so they are read in a second round. */
static void read_round(struct binder *b, const struct record_file *file, bool entries,
    struct map *ids)
{
	size_t end;

	for (size_t i = 1; i < file->n; i = end) {
		const struct block *h = &file->v[i];
		bool entry = h->kind == BLOCK_HEADING && h->level == 2 &&
		    words_same(h->text, STR("Entry skills"));

		end = h->kind == BLOCK_HEADING ? blocks_until(file->v, file->n, i + 1,
		    h->level < 2 ? 1 : 2) : i + 1;
		if (entry && entries)
			read_entry_skills(b, h + 1, end - i - 1);
		else if (entry || entries)
			continue;
		else if (h->kind != BLOCK_HEADING || h->level > 2)
			complain_block(b, h,
			    "write it under a heading such as \"## PO4: title\"");
		else if (h->level < 2)
			complain_second_title(b, h);
		else
			read_skills(b, h, h + 1, end - i - 1, ids);
	}
}

void skills_read(struct binder *b, const struct record_file *file)
{
	struct map *ids = map_new(b->arena, true);
	struct model *m = b->model;

	m->skills = arena_array(b->arena, file->n, sizeof *m->skills);
	m->skills_cap = file->n;
	map_reserve(m->skill_by_id, file->n);
	read_round(b, file, false, ids);
	read_round(b, file, true, ids);
}
