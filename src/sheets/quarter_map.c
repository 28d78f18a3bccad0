#include "sheets/quarter_map.h"

#include <math.h>
#include <string.h>

/* Sizes along the ranks' direction and across it, for both ways to lay a map out. Four
 * lines of 12 points and their padding are 66, three 51, two 36. */
struct way {
	double box_along, least_along, box_across, least_across;
	double channel; /* least distance of two ranks, for the lines */
	double label_across; /* kept free for the names of the weeks */
};

static const struct way rightward = { 124, 60, 66, 51, 26, 20 };
static const struct way downward = { 51, 36, 122, 80, 23, 62 };

#define LANE_PT 4.0
#define LANE_GAP_PT 8.0
#define BOX_GAP_PT 12.0
enum { SWEEPS = 16, SETTLINGS = 10 };

/* A box, or the lane of a box's lines through a rank. */
struct item {
	uint32_t box; /* the box, or whose lines they are */
	bool lane;
	double size, at; /* across; at: its middle */
	double want;
};

struct rank {
	struct item *v;
	size_t n;
	uint32_t first, last; /* boxes [first, last] */
};

struct plan {
	struct arena *arena;
	const struct quarter_map_spec *spec;
	const struct way *way;
	struct quarter_map *map;
	struct rank *rank;
	size_t nranks;
	uint32_t rank_of[MAP_BOXES], reach[MAP_BOXES]; /* last rank that lines go to */
	double along, across; /* room for ranks and in one */
	double box_along, box_across, pitch, zoom;
	size_t most; /* boxes in a rank */
};

/* ---- which lines ---- */

/* Leaves out each line whose ends other lines join anyway. */
static void thin(struct quarter_map *m, size_t nboxes)
{
	uint64_t before[MAP_BOXES] = { 0 }; /* all boxes on the way to a box */
	size_t kept = 0;

	for (size_t j = 0; j < nboxes; j++)
		for (size_t k = 0; k < m->nlines; k++)
			if (m->lines[k].to == j)
				before[j] |= before[m->lines[k].from] |
				    (uint64_t)1 << m->lines[k].from;
	for (size_t k = 0; k < m->nlines; k++) {
		struct map_line l = m->lines[k];
		bool implied = false;

		for (size_t o = 0; o < m->nlines; o++)
			implied |= m->lines[o].to == l.to && m->lines[o].from != l.from &&
			    before[m->lines[o].from] >> l.from & 1;
		if (!implied)
			m->lines[kept++] = l;
	}
	m->nlines = kept;
}

/* More lines than boxes and a quarter are hard to follow (common practice, no source). */
static void choose_lines(struct plan *p)
{
	struct quarter_map *m = p->map;
	size_t all = p->spec->nlines;

	m->lines = arena_array(p->arena, all, sizeof *m->lines);
	if (all)
		memcpy(m->lines, p->spec->lines, all * sizeof *m->lines);
	m->nlines = all;
	if (all <= p->spec->n + p->spec->n / 4)
		return;
	thin(m, p->spec->n);
	m->thinned = m->nlines < all;
}

/* ---- ranks ---- */

static bool joined(const struct plan *p, uint32_t first, uint32_t box)
{
	for (size_t k = 0; k < p->spec->nlines; k++)
		if (p->spec->lines[k].to == box && p->spec->lines[k].from >= first)
			return true;
	return false;
}

/* Boxes in order; a rank ends before a box that another in it leads to, or when full. */
static void make_ranks(struct plan *p)
{
	p->nranks = 0;
	p->rank = arena_array(p->arena, p->spec->n, sizeof *p->rank);
	for (uint32_t i = 0; i < p->spec->n; i++) {
		struct rank *r = p->nranks ? &p->rank[p->nranks - 1] : NULL;

		if (!r || i - r->first >= p->most || joined(p, r->first, i)) {
			r = &p->rank[p->nranks++];
			r->first = i;
		}
		r->last = i;
		p->rank_of[i] = (uint32_t)(p->nranks - 1);
	}
}

static void fill_ranks(struct plan *p)
{
	for (uint32_t i = 0; i < p->spec->n; i++)
		p->reach[i] = p->rank_of[i];
	for (size_t k = 0; k < p->map->nlines; k++) {
		struct map_line l = p->map->lines[k];

		if (p->rank_of[l.to] > p->reach[l.from])
			p->reach[l.from] = p->rank_of[l.to];
	}
	for (uint32_t r = 0; r < p->nranks; r++) {
		struct rank *k = &p->rank[r];

		k->v = arena_array(p->arena, p->spec->n, sizeof *k->v);
		k->n = 0;
		for (uint32_t i = 0; i <= k->last; i++)
			if (i >= k->first || p->reach[i] > r)
				k->v[k->n++] = (struct item){ .box = i,
					.lane = i < k->first };
	}
}

static double gap(const struct item *a, const struct item *b)
{
	return a->lane || b->lane ? LANE_GAP_PT : BOX_GAP_PT;
}

/* Makes boxes as large as the fullest rank and the page allow. False: too small. */
static bool size_boxes(struct plan *p)
{
	p->box_along = fmin(p->way->box_along * p->zoom, p->pitch - p->way->channel * p->zoom);
	p->box_across = p->way->box_across * p->zoom;
	for (size_t r = 0; r < p->nranks; r++) {
		const struct rank *k = &p->rank[r];
		double room = p->across;
		size_t boxes = k->last - k->first + 1;

		for (size_t i = 0; i < k->n; i++)
			room -= (k->v[i].lane ? LANE_PT : 0) + (i ? BOX_GAP_PT : 0);
		p->box_across = fmin(p->box_across, room / (double)boxes);
	}
	for (size_t r = 0; r < p->nranks; r++)
		for (size_t i = 0; i < p->rank[r].n; i++)
			p->rank[r].v[i].size = p->rank[r].v[i].lane ? LANE_PT
								    : p->box_across;
	return p->box_along >= p->way->least_along * p->zoom &&
	    p->box_across >= p->way->least_across * p->zoom;
}

/* ---- order within a rank ---- */

static struct item *find_item(const struct plan *p, size_t rank, uint32_t box)
{
	struct rank *k = &p->rank[rank];

	for (size_t i = 0; i < k->n; i++)
		if (k->v[i].box == box)
			return &k->v[i];
	return NULL;
}

/* Whether lines of `from`, an item of rank r, go on to `to`, an item of the next. */
static bool leads(const struct plan *p, const struct item *from, const struct item *to)
{
	if (to->lane)
		return to->box == from->box;
	for (size_t k = 0; k < p->map->nlines; k++)
		if (p->map->lines[k].to == to->box && p->map->lines[k].from == from->box)
			return true;
	return false;
}

/* The mean place of an item's neighbors in rank `other`; its own without any. */
static bool pulled(const struct plan *p, const struct item *x, size_t rank, size_t other,
    double *sum, double *n)
{
	const struct rank *k;
	double before = *n;

	if (other >= p->nranks)
		return false;
	k = &p->rank[other];
	for (size_t i = 0; i < k->n; i++) {
		bool tied = other < rank ? leads(p, &k->v[i], x) : leads(p, x, &k->v[i]);

		*sum += tied ? k->v[i].at : 0;
		*n += tied ? 1 : 0;
	}
	return *n > before;
}

/* Places items one after another from the middle of the room, as an order has them. */
static void center(struct plan *p, struct rank *k)
{
	double length = 0, at;

	for (size_t i = 0; i < k->n; i++)
		length += k->v[i].size + (i ? gap(&k->v[i - 1], &k->v[i]) : 0);
	at = (p->across - length) / 2;
	for (size_t i = 0; i < k->n; i++) {
		at += i ? gap(&k->v[i - 1], &k->v[i]) : 0;
		k->v[i].at = at + k->v[i].size / 2;
		at += k->v[i].size;
	}
}

static void sort_rank(struct rank *k)
{
	for (size_t i = 1; i < k->n; i++) {
		struct item x = k->v[i];
		size_t j = i;

		for (; j && k->v[j - 1].want > x.want; j--)
			k->v[j] = k->v[j - 1];
		k->v[j] = x;
	}
}

static void sweep(struct plan *p, bool forward)
{
	for (size_t i = 0; i < p->nranks; i++) {
		size_t r = forward ? i : p->nranks - 1 - i;
		struct rank *k = &p->rank[r];

		for (size_t j = 0; j < k->n; j++) {
			double sum = 0, n = 0;

			pulled(p, &k->v[j], r, forward ? r - 1 : r + 1, &sum, &n);
			k->v[j].want = n > 0 ? sum / n : k->v[j].at;
		}
		sort_rank(k);
		center(p, k);
	}
}

/* Pairs of line pieces that cross between two ranks. */
static size_t crossings(const struct plan *p)
{
	size_t n = 0;

	for (size_t r = 0; r + 1 < p->nranks; r++) {
		const struct rank *a = &p->rank[r], *b = &p->rank[r + 1];
		size_t seen[MAP_BOXES] = { 0 }; /* pieces so far that end at b's items */

		for (size_t i = 0; i < a->n; i++) {
			size_t sum = 0;

			for (size_t j = b->n; j--;) {
				bool tied = leads(p, &a->v[i], &b->v[j]);

				n += tied ? sum : 0;
				sum += seen[j];
			}
			for (size_t j = 0; j < b->n; j++)
				seen[j] += leads(p, &a->v[i], &b->v[j]);
		}
	}
	return n;
}

static void copy_order(const struct plan *p, struct item *to, bool back)
{
	size_t at = 0;

	for (size_t r = 0; r < p->nranks; r++) {
		struct rank *k = &p->rank[r];

		if (back)
			memcpy(k->v, to + at, k->n * sizeof *to);
		else
			memcpy(to + at, k->v, k->n * sizeof *to);
		at += k->n;
	}
}

/* Sweeps over the ranks, keeping the order with the fewest crossings. */
static void order_items(struct plan *p)
{
	size_t n = 0, best;
	struct item *kept;

	for (size_t r = 0; r < p->nranks; r++) {
		center(p, &p->rank[r]);
		n += p->rank[r].n;
	}
	kept = arena_array(p->arena, n, sizeof *kept);
	best = crossings(p);
	copy_order(p, kept, false);
	for (int i = 0; i < SWEEPS && best; i++) {
		size_t now;

		sweep(p, i % 2 == 0);
		now = crossings(p);
		if (now >= best)
			continue;
		best = now;
		copy_order(p, kept, false);
	}
	copy_order(p, kept, true);
}

/* ---- places within a rank ---- */

static double apart(const struct item *a, const struct item *b)
{
	return (a->size + b->size) / 2 + gap(a, b);
}

static void push_up(const struct rank *k, double *at, double room)
{
	double limit = room;

	for (size_t i = k->n; i--;) {
		double most = i + 1 < k->n ? at[i + 1] - apart(&k->v[i], &k->v[i + 1])
					   : limit - k->v[i].size / 2;

		at[i] = fmin(at[i], most);
	}
}

static void push_down(const struct rank *k, double *at)
{
	for (size_t i = 0; i < k->n; i++) {
		double least = i ? at[i - 1] + apart(&k->v[i - 1], &k->v[i])
				 : k->v[i].size / 2;

		at[i] = fmax(at[i], least);
	}
}

/* As near as can be to what each wants: the mean of two ways to push them apart, both of
 * which stay in the room when what stands in it has room. */
static void place_rank(struct plan *p, struct rank *k)
{
	double a[MAP_BOXES], b[MAP_BOXES];

	for (size_t i = 0; i < k->n; i++)
		a[i] = b[i] = k->v[i].want;
	push_down(k, a);
	push_up(k, a, p->across);
	push_up(k, b, p->across);
	push_down(k, b);
	for (size_t i = 0; i < k->n; i++)
		k->v[i].at = (a[i] + b[i]) / 2;
}

static void settle(struct plan *p)
{
	for (int turn = 0; turn < SETTLINGS; turn++)
		for (size_t i = 0; i < p->nranks; i++) {
			size_t r = turn % 2 ? p->nranks - 1 - i : i;
			struct rank *k = &p->rank[r];

			for (size_t j = 0; j < k->n; j++) {
				double sum = 0, n = 0;

				pulled(p, &k->v[j], r, r - 1, &sum, &n);
				pulled(p, &k->v[j], r, r + 1, &sum, &n);
				k->v[j].want = n > 0 ? sum / n : k->v[j].at;
			}
			place_rank(p, k);
		}
}

/* ---- onto the page ---- */

static pt turn(const struct plan *p, double along, double across)
{
	double free = p->way->label_across * p->zoom;

	return p->map->downward ? (pt){ across + free, along } : (pt){ along, across + free };
}

static double rank_start(const struct plan *p, size_t r)
{
	return (double)r * p->pitch + (p->pitch - p->box_along) / 2;
}

/* Up to 12 points between arrows at one box. */
static double port(
    const struct plan *p, size_t rank, const struct item *box, const struct item *from)
{
	const struct rank *before = &p->rank[rank - 1];
	double step, n = 0, mine = 0;

	for (size_t i = 0; i < before->n; i++) {
		if (&before->v[i] == from)
			mine = n;
		n += leads(p, &before->v[i], box);
	}
	step = fmin(12, (box->size - 16) / n);
	return box->at + (mine - (n - 1) / 2) * step;
}

static void push_curve(struct plan *p, struct map_curve k)
{
	*ARENA_PUSH(p->arena, p->map->curves, p->map->ncurves, p->map->curves_cap) = k;
}

/* A curve in two where a page ends: that is always its middle (de Casteljau). */
static void push_halves(struct plan *p, const struct map_curve *k)
{
	pt a = pt_between(k->p[0], k->p[1], 0.5), m = pt_between(k->p[1], k->p[2], 0.5);
	pt d = pt_between(k->p[2], k->p[3], 0.5), am = pt_between(a, m, 0.5);
	pt md = pt_between(m, d, 0.5), middle = pt_between(am, md, 0.5);

	push_curve(p, (struct map_curve){ { k->p[0], a, am, middle }, false });
	push_curve(p, (struct map_curve){ { middle, md, d, k->p[3] }, k->head });
}

static void add_curve(struct plan *p, double along0, double across0, double along1,
    double across1, bool head)
{
	double middle = (along0 + along1) / 2, page = p->spec->height_pt;
	const struct map_curve k = { { turn(p, along0, across0), turn(p, middle, across0),
		turn(p, middle, across1), turn(p, along1, across1) }, head };

	if (p->map->pages > 1 && floor(along0 / page) < floor(along1 / page))
		push_halves(p, &k);
	else
		push_curve(p, k);
}

/* From every item of rank r - 1 that leads to one of rank r; lanes go on straight. */
static void add_curves(struct plan *p, size_t r)
{
	const struct rank *a = &p->rank[r - 1], *b = &p->rank[r];
	double from = rank_start(p, r - 1) + p->box_along, to = rank_start(p, r);

	for (size_t j = 0; j < b->n; j++) {
		const struct item *x = &b->v[j];

		for (size_t i = 0; i < a->n; i++)
			if (leads(p, &a->v[i], x))
				add_curve(p, from, a->v[i].at, to,
				    x->lane ? x->at : port(p, r, x, &a->v[i]), !x->lane);
		if (x->lane)
			add_curve(p, to, x->at, to + p->box_along, x->at, false);
	}
}

static rect span_of(pt a, pt b)
{
	return rect_grow(rect_at(a), b);
}

static void put_boxes(struct plan *p)
{
	struct quarter_map *m = p->map;

	for (uint32_t i = 0; i < p->spec->n; i++) {
		const struct item *x = find_item(p, p->rank_of[i], i);
		double start = rank_start(p, p->rank_of[i]);

		m->boxes[i] = span_of(turn(p, start, x->at - x->size / 2),
		    turn(p, start + p->box_along, x->at + x->size / 2));
	}
	for (size_t r = 0; r < p->nranks; r++) {
		double start = rank_start(p, r), free = p->way->label_across * p->zoom;

		m->ranks[r] = (struct map_rank){
			p->spec->weeks[p->rank[r].first], p->spec->weeks[p->rank[r].last],
			span_of(turn(p, start, -free), turn(p, start + p->box_along, -4))
		};
	}
}

static void set_way(struct plan *p, bool down)
{
	p->way = down ? &downward : &rightward;
	p->map->downward = down;
	p->along = down ? p->spec->height_pt : p->spec->width_pt;
	p->across = (down ? p->spec->width_pt : p->spec->height_pt) -
	    p->way->label_across * p->zoom;
	p->most = (size_t)((p->across + BOX_GAP_PT) /
	    (p->way->least_across * p->zoom + BOX_GAP_PT));
}

/* One way to lay it out on a page; false: it does not fit. */
static bool lay_out(struct plan *p, bool down)
{
	set_way(p, down);
	make_ranks(p);
	fill_ranks(p);
	p->pitch = p->along / (double)p->nranks;
	p->map->pages = 1;
	return p->nranks && size_boxes(p);
}

/* From the top down, boxes at full size, as many ranks a page as go; boxes beside one
 * another as many as leave the lanes their room. */
static bool lay_out_pages(struct plan *p)
{
	size_t each;

	set_way(p, true);
	each = (size_t)(p->along / ((p->way->box_along + p->way->channel) * p->zoom));
	for (; each && p->most; p->most--) {
		make_ranks(p);
		fill_ranks(p);
		p->pitch = p->along / (double)each;
		p->map->pages = (p->nranks + each - 1) / each;
		if (size_boxes(p))
			return true;
	}
	return false;
}

struct quarter_map *quarter_map_new(struct arena *a, const struct quarter_map_spec *spec)
{
	struct quarter_map *m = arena_alloc(a, sizeof *m);
	struct plan p = { .arena = a, .spec = spec, .map = m,
		.zoom = spec->zoom > 0 ? spec->zoom : 1 };

	if (!spec->n || spec->n > MAP_BOXES)
		return m;
	choose_lines(&p);
	m->fits = spec->paged ? lay_out_pages(&p) : lay_out(&p, false) || lay_out(&p, true);
	if (!m->fits)
		return m;
	order_items(&p);
	settle(&p);
	m->boxes = arena_array(a, spec->n, sizeof *m->boxes);
	m->ranks = arena_array(a, p.nranks, sizeof *m->ranks);
	m->nranks = p.nranks;
	put_boxes(&p);
	for (size_t r = 1; r < p.nranks; r++)
		add_curves(&p, r);
	return m;
}
