/* The page of a packet that shows what leads to what. */
#include "sheets/quarter_map.h"
#include "sheets/sheet.h"

#include <math.h>

#define PAD_PT 4.0
#define HEAD_PT 7.0 /* length of an arrowhead */
#define LEAST_PT 300.0 /* height of a map worth drawing */

struct map_page {
	struct setter setter;
	const struct edition *e;
	const struct model *m;
	const uint32_t *v; /* assignments, by box */
	size_t n;
	const struct quarter_map *map;
	str *titles;
};

/* One page of it. */
struct map_part {
	const struct map_page *p;
	size_t page; /* from 0 */
	double height_pt;
};

/* ---- what leads to what ---- */

struct ties {
	struct map_line *v; /* within the packet */
	size_t n, cap;
	uint32_t (*earlier)[2]; /* assignment, and what it needs from before */
	size_t nearlier, earlier_cap;
};

static void add_tie(
    struct sheet *sh, struct ties *t, const uint32_t *box_of, uint32_t from, uint32_t to)
{
	struct map_line l = { box_of[from], box_of[to] };

	if (l.from == NONE || l.from >= l.to) {
		for (size_t i = 0; i < t->nearlier; i++)
			if (t->earlier[i][0] == to && t->earlier[i][1] == from)
				return;
		t->earlier = arena_grow(sh->arena, t->earlier, t->nearlier,
		    t->nearlier + 1, &t->earlier_cap, sizeof *t->earlier);
		t->earlier[t->nearlier][0] = to;
		t->earlier[t->nearlier++][1] = from;
		return;
	}
	for (size_t i = 0; i < t->n; i++)
		if (t->v[i].from == l.from && t->v[i].to == l.to)
			return;
	*ARENA_PUSH(sh->arena, t->v, t->n, t->cap) = l;
}

/* A need is met by the first that teaches one of its alternatives far enough. */
static uint32_t first_for(const struct sheet *sh, const struct need *need, uint32_t self)
{
	uint32_t best = NONE;

	for (size_t i = 0; i < need->n; i++) {
		uint32_t from = need->v[i].skill == NONE
		    ? NONE
		    : first_teacher(sh, &need->v[i], self);

		if (from != NONE &&
		    (best == NONE ||
			place_cmp(&sh->o->places[from], &sh->o->places[best]) < 0))
			best = from;
	}
	return best;
}

static struct ties find_ties(struct sheet *sh, const struct packet_cover *c)
{
	uint32_t *box_of = arena_array(sh->arena, sh->m->nassignments, sizeof *box_of);
	struct ties t = { 0 };

	for (size_t i = 0; i < sh->m->nassignments; i++)
		box_of[i] = NONE;
	for (size_t i = 0; i < c->n; i++)
		box_of[c->v[i]] = (uint32_t)i;
	for (size_t i = 0; i < c->n; i++) {
		const struct assignment *x = &sh->m->assignments[c->v[i]];

		for (size_t k = 0; k < x->nneeds; k++) {
			uint32_t from = first_for(sh, &x->needs[k], c->v[i]);

			if (from != NONE)
				add_tie(sh, &t, box_of, from, c->v[i]);
		}
	}
	return t;
}

/* ---- drawing ---- */

/* The title up to where it goes into detail; tests say that they are. */
static str short_title(struct sheet *sh, const struct assignment *x)
{
	bool test = x->kind == KIND_PRACTICE_TEST || x->kind == KIND_QUALIFICATION_TEST;
	size_t end = x->title.n;
	str s;

	for (size_t i = 4; i < end; i++)
		if (x->title.p[i] == ',' || x->title.p[i] == ':' ||
		    x->title.p[i] == ';' || x->title.p[i] == '(')
			end = i;
	s = str_trim(str_sub(x->title, 0, end));
	if (!test || str_find(s, sh_word(sh, "test"), 0) < s.n)
		return s;
	return x->kind == KIND_PRACTICE_TEST ? sh_format(sh, "Practice: %.*s", STR_ARG(s))
	                                     : sh_format(sh, "Test: %.*s", STR_ARG(s));
}

/* The title in at most `most` lines; one that is longer ends early with three dots. */
static const struct lines *title_lines(
    const struct map_page *p, str title, double wide_pt, size_t most)
{
	const struct lines *l = para_break_plain(&p->setter, title, &p->e->body, wide_pt);
	size_t end = title.n;

	while (l->n > most && end) {
		while (end && title.p[end - 1] != ' ')
			end--;
		end -= end > 0;
		l = para_break_plain(&p->setter,
		    str_format(
			p->setter.arena, "%.*s...", STR_ARG(str_sub(title, 0, end))),
		    &p->e->body, wide_pt);
	}
	return l;
}

static void draw_box(const struct map_page *p, struct canvas *c, size_t i, rect r)
{
	const struct assignment *x = &p->m->assignments[p->v[i]];
	bool test = x->kind == KIND_PRACTICE_TEST || x->kind == KIND_QUALIFICATION_TEST;
	const struct ink border = { .stroke_pt = test ? 2.5 : RULE_PT };
	double lead = para_lead_pt(&p->setter, &p->e->body), wide = r.w - 2 * PAD_PT;
	size_t most = (size_t)((r.h - PAD_PT - lead) / lead);
	const struct lines *l = title_lines(p, p->titles[i], wide, most);
	const struct pen pen = { .canvas = c };

	canvas_rect(c, r, &border);
	canvas_box_begin(c, r, STR("box"));
	plain_draw(&p->setter, c, plain_cut(&p->setter, x->id, &p->e->bold, wide),
	    &p->e->bold, (pt){ r.x + PAD_PT, r.y + PAD_PT / 2 + p->e->bold.size_pt });
	para_draw_part(l, &pen, (pt){ r.x + PAD_PT, r.y + PAD_PT / 2 + lead }, 0,
	    l->n < most ? l->n : most);
	canvas_box_end(c);
	canvas_link(c, r, x->id);
}

static void draw_curve(struct canvas *c, const struct map_curve *k, pt corner)
{
	const struct ink line = { .stroke_pt = RULE_PT }, solid = { .fill = true };
	pt a = pt_add(k->p[0], corner), d = pt_add(k->p[3], corner);
	pt u = pt_unit(pt_sub(k->p[3], k->p[2])), side = { -u.y, u.x };
	pt end = k->head ? pt_sub(d, pt_mul(u, HEAD_PT - 1)) : d,
	   root = pt_sub(d, pt_mul(u, HEAD_PT));
	const struct seg v[] = { { SEG_MOVE, { a } },
		{ SEG_CURVE,
		    { pt_add(k->p[1], corner), pt_add(k->p[2], corner), end } } };
	const pt head[3] = { d, pt_add(root, pt_mul(side, 3.2)),
		pt_sub(root, pt_mul(side, 3.2)) };

	canvas_path(c, v, 2, &line);
	if (k->head)
		canvas_polygon(c, head, 3, &solid);
}

static void draw_week(
    const struct map_page *p, struct canvas *c, const struct map_rank *r, pt corner)
{
	struct arena *a = p->setter.arena;
	str words = r->first_week == r->last_week
	    ? word_format(a, edition_language(p->e), "week %u", r->first_week)
	    : word_format(a, edition_language(p->e), "week %u-%u", r->first_week, r->last_week);
	double y = p->map->downward ? r->label.y + r->label.h / 2 + 4 : r->label.y + 13;

	plain_draw(&p->setter, c, plain_cut(&p->setter, words, &p->e->body, r->label.w),
	    &p->e->body, (pt){ corner.x + r->label.x, corner.y + y });
}

/* Whether something at that height is on the page. */
static bool is_on(const struct map_part *k, double y)
{
	return y >= (double)k->page * k->height_pt &&
	    (y < (double)(k->page + 1) * k->height_pt || k->page + 1 == k->p->map->pages);
}

static void draw_map(void *user, struct canvas *c, rect area)
{
	const struct map_part *k = user;
	const struct quarter_map *m = k->p->map;
	pt corner = { area.x, area.y - (double)k->page * k->height_pt };

	for (size_t i = 0; i < m->ncurves; i++)
		if (is_on(k, (m->curves[i].p[0].y + m->curves[i].p[3].y) / 2))
			draw_curve(c, &m->curves[i], corner);
	for (size_t i = 0; i < k->p->n; i++) {
		rect r = m->boxes[i];

		if (!is_on(k, r.y))
			continue;
		r.x += corner.x;
		r.y += corner.y;
		draw_box(k->p, c, i, r);
	}
	for (size_t r = 0; r < m->nranks; r++)
		if (is_on(k, m->ranks[r].label.y))
			draw_week(k->p, c, &m->ranks[r], corner);
}

/* The lines that start on that page. */
static str map_words(struct sheet *sh, const struct map_part *k)
{
	const struct map_page *p = k->p;
	struct buf b = { .arena = sh->arena };

	buf_add(&b, sh_word(sh, "Map of what leads to what."));
	for (size_t i = 0; i < p->map->nlines; i++)
		if (is_on(k, p->map->boxes[p->map->lines[i].from].y))
			word_addf(&b, edition_language(p->e), " %.*s leads to %.*s.",
			    STR_ARG(p->m->assignments[p->v[p->map->lines[i].from]].id),
			    STR_ARG(p->m->assignments[p->v[p->map->lines[i].to]].id));
	return buf_str(&b);
}

/* ---- notes ---- */

/* "SM-20 needs SM-04, SM-06; SM-21 needs SM-04." */
static str earlier_words(struct sheet *sh, const struct ties *t)
{
	struct buf b = { .arena = sh->arena };

	for (size_t i = 0; i < t->nearlier; i++) {
		const struct assignment *x = &sh->m->assignments[t->earlier[i][0]];
		const struct assignment *y = &sh->m->assignments[t->earlier[i][1]];

		if (i && t->earlier[i - 1][0] == t->earlier[i][0])
			buf_addf(&b, ", %.*s", STR_ARG(y->id));
		else
			buf_addf(&b, "%s%.*s", i ? "; " : "",
			    STR_ARG(sh_format(sh, "%.*s needs %.*s", STR_ARG(x->id),
			        STR_ARG(y->id))));
	}
	return sh_format(sh, "From before: %.*s.", STR_ARG(buf_str(&b)));
}

static str note_words(struct sheet *sh, bool thinned)
{
	return thinned ? sh_word(sh, "An arrow goes from what teaches to what needs it; arrows that "
	        "others imply are left out. A heavy box is a test.")
	    : sh_word(sh, "An arrow goes from what teaches to what needs it. A heavy box is a "
	        "test.");
}

static struct block *text(struct sheet *sh, str s)
{
	struct block *b = block_plain(&sh->s, s, &sh->e->body, TAG_P, sh->width_pt);

	b->before_pt = b->after_pt = 3;
	return b;
}

static struct quarter_map *map_of(struct sheet *sh, const struct packet_cover *c,
    const struct ties *t, double height_pt)
{
	uint32_t *weeks = arena_array(sh->arena, c->n, sizeof *weeks);
	struct quarter_map_spec spec = { weeks, c->n, t->v, t->n, sh->width_pt, height_pt,
		.zoom = sh->e->zoom, .paged = sh->e->choice.large };
	struct quarter_map *map;

	for (size_t i = 0; i < c->n; i++)
		weeks[i] = sh->o->places[c->v[i]].week;
	map = quarter_map_new(sh->arena, &spec);
	if (map->fits)
		return map;
	spec.paged = true;
	return quarter_map_new(sh->arena, &spec);
}

/* In words, where there is no room for a map: "SM-04 leads to SM-06, SM-07". */
static void add_map_list(struct sheet *sh, const struct packet_cover *c, const struct ties *t)
{
	if (!t->n)
		flow_add(sh->flow, text(sh, sh_word(sh, "Nothing in this quarter needs another "
		    "assignment of it first.")));
	for (uint32_t i = 0; i < c->n; i++) {
		struct buf b = { .arena = sh->arena };
		str line;

		for (size_t k = 0; k < t->n; k++)
			if (t->v[k].from == i)
				buf_addf(&b, "%s%.*s", b.n ? ", " : "",
				    STR_ARG(sh->m->assignments[c->v[t->v[k].to]].id));
		if (!b.n)
			continue;
		line = str_format(sh->arena, "%.*s leads to %.*s",
		    STR_ARG(sh->m->assignments[c->v[i]].id), STR_ARG(buf_str(&b)));
		sheet_bullets(sh, &line, 1);
	}
}

static struct map_page *new_page(struct sheet *sh, const struct packet_cover *c,
    const struct ties *t, double height_pt)
{
	struct map_page *p = arena_alloc(sh->arena, sizeof *p);

	*p = (struct map_page){ .setter = sh->s, .e = sh->e, .m = sh->m, .v = c->v, .n = c->n,
		.map = map_of(sh, c, t, height_pt),
		.titles = arena_array(sh->arena, c->n, sizeof *p->titles) };
	for (size_t i = 0; i < c->n; i++)
		p->titles[i] = short_title(sh, &sh->m->assignments[c->v[i]]);
	return p;
}

/* Of the last page only down to its lowest box: notes go below. */
static double part_high_pt(const struct map_part *k)
{
	double low = 0;

	if (k->p->map->pages == 1 || k->page + 1 < k->p->map->pages)
		return k->height_pt;
	for (size_t i = 0; i < k->p->n; i++)
		low = fmax(low, k->p->map->boxes[i].y + k->p->map->boxes[i].h);
	return low - (double)k->page * k->height_pt + 2;
}

/* A picture a page; the first stands under the heading. */
static void add_map(struct sheet *sh, const struct map_page *p, double height_pt)
{
	for (size_t i = 0; i < p->map->pages; i++) {
		struct map_part *k = arena_alloc(sh->arena, sizeof *k);

		*k = (struct map_part){ p, i, height_pt };
		if (i)
			flow_break(sh->flow, START_PAGE);
		sheet_add(sh, block_picture(&sh->s, draw_map, k, map_words(sh, k),
		    part_high_pt(k), sh->width_pt), 0, 6);
	}
}

void sheet_quarter_map(struct sheet *sh, const struct packet_cover *c)
{
	struct ties t = find_ties(sh, c);
	struct block *head = block_plain(&sh->s,
	    sh_format(sh, "%.*s, what leads to what", STR_ARG(c->name)), &sh->e->h1,
	    TAG_H1, sh->width_pt);
	struct block *note = text(sh, note_words(sh, true)),
		     *earlier = text(sh, earlier_words(sh, &t));
	double height_pt = flow_height_pt(sh->flow) - head->height_pt - note->height_pt -
	    24;
	const struct map_page *p;

	if (t.nearlier && height_pt - earlier->height_pt < LEAST_PT)
		earlier = text(sh, sh_word(sh, "Each sheet names what it needs from before."));
	height_pt -= t.nearlier ? earlier->height_pt : 0;
	/* Over several pages the notes stand under the last. */
	if (sh->e->choice.large)
		height_pt = flow_height_pt(sh->flow) - head->height_pt - 8;
	p = new_page(sh, c, &t, height_pt);
	flow_break(sh->flow, START_PAGE);
	sheet_add(sh, head, 0, 6);
	if (!p->map->fits)
		add_map_list(sh, c, &t);
	else
		add_map(sh, p, height_pt);
	if (p->map->fits)
		flow_add(sh->flow, text(sh, note_words(sh, p->map->thinned)));
	if (t.nearlier)
		flow_add(sh->flow, p->map->fits ? earlier : text(sh, earlier_words(sh, &t)));
}
