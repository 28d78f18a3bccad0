/* A canvas for the tests of src/page: it writes down every text with its place and
 * counts what leaves the box that it was promised to stay in. */
#ifndef PAGE_PROBE_H
#define PAGE_PROBE_H

#include "base/arena.h"
#include "base/buf.h"
#include "draw/canvas.h"
#include "draw/face.h"

struct seen_text {
	unsigned page;
	double x, y, w, size_pt;
	enum face_id face;
	str text;
	bool artifact, fleeting;
};

enum { PROBE_PAGES = 512, PROBE_FOOT_PT = 64 };

struct probe {
	struct canvas canvas;
	struct arena *arena;
	const struct faces *faces;
	rect boxes[64];
	int nboxes;
	enum tag tags[64];
	int ntags, artifacts, fleetings;
	unsigned tag_count[TAG_ARTIFACT + 1];
	unsigned page;
	unsigned outside_box;    /* texts that leave the innermost box */
	unsigned outside_sheet;  /* texts that leave the rectangle below */
	unsigned missing;        /* texts with a character that their face lacks */
	double least_pt;         /* smallest type; 0: no text yet */
	rect sheet;              /* w 0: not watched */
	struct seen_text *texts;
	size_t ntexts, texts_cap;
	str dests[PROBE_PAGES];
	unsigned dest_pages[PROBE_PAGES];
	size_t ndests, nlinks;
	size_t npaths, nsegs;
	double low_pt[PROBE_PAGES]; /* lowest point of a path above the foot, by page */
};

static inline bool probe_inside(rect r, double left, double top, double right,
    double bottom)
{
	return left > r.x - 0.01 && right < r.x + r.w + 0.01 && top > r.y - 0.01 &&
	    bottom < r.y + r.h + 0.01;
}

static void probe_page_begin(void *self, double w, double h)
{
	struct probe *p = self;

	(void)w, (void)h;
	p->page++;
}

static void probe_text(void *self, pt at, enum face_id face, double size_pt, str s)
{
	struct probe *p = self;
	double w = face_width_pt(p->faces, face, size_pt, s);
	double top = at.y - face_ascent_pt(p->faces, face, size_pt);
	double bottom = at.y + face_descent_pt(p->faces, face, size_pt);

	if (p->nboxes && !probe_inside(p->boxes[p->nboxes - 1], at.x, top, at.x + w, bottom))
		p->outside_box++;
	if (p->sheet.w > 0 && !p->artifacts &&
	    !probe_inside(p->sheet, at.x, top, at.x + w, bottom))
		p->outside_sheet++;
	p->missing += face_missing(p->faces, face, s) < s.n;
	if (!p->least_pt || size_pt < p->least_pt)
		p->least_pt = size_pt;
	*ARENA_PUSH(p->arena, p->texts, p->ntexts, p->texts_cap) = (struct seen_text){
		p->page, at.x, at.y, w, size_pt, face, str_copy(p->arena, s), p->artifacts > 0,
		p->fleetings > 0
	};
}

static void probe_path(void *self, const struct seg *v, size_t n, const struct ink *ink)
{
	struct probe *p = self;

	(void)ink;
	p->npaths++;
	p->nsegs += n;
	for (size_t i = 0; i < n && p->page < PROBE_PAGES; i++)
		if (v[i].op != SEG_CLOSE && v[i].p[0].y > p->low_pt[p->page] &&
		    v[i].p[0].y < p->sheet.h - PROBE_FOOT_PT)
			p->low_pt[p->page] = v[i].p[0].y;
}

static void probe_box_begin(void *self, rect r, str name)
{
	struct probe *p = self;

	(void)name;
	p->boxes[p->nboxes++] = r;
}

static void probe_box_end(void *self)
{
	((struct probe *)self)->nboxes--;
}

static void probe_tag_begin(void *self, enum tag tag, str alt)
{
	struct probe *p = self;

	(void)alt;
	p->tags[p->ntags++] = tag;
	p->tag_count[tag]++;
	p->artifacts += tag == TAG_ARTIFACT;
}

static void probe_tag_end(void *self)
{
	struct probe *p = self;

	p->artifacts -= p->tags[--p->ntags] == TAG_ARTIFACT;
}

static void probe_fleeting_begin(void *self)
{
	((struct probe *)self)->fleetings++;
}

static void probe_fleeting_end(void *self)
{
	((struct probe *)self)->fleetings--;
}

static void probe_dest(void *self, str name, pt at)
{
	struct probe *p = self;

	(void)at;
	p->dests[p->ndests] = name;
	p->dest_pages[p->ndests++] = p->page;
}

static void probe_link(void *self, rect r, str name)
{
	(void)r, (void)name;
	((struct probe *)self)->nlinks++;
}

static const struct canvas_ops probe_ops = {
	.page_begin = probe_page_begin,
	.text = probe_text,
	.path = probe_path,
	.box_begin = probe_box_begin,
	.box_end = probe_box_end,
	.tag_begin = probe_tag_begin,
	.tag_end = probe_tag_end,
	.fleeting_begin = probe_fleeting_begin,
	.fleeting_end = probe_fleeting_end,
	.dest = probe_dest,
	.link = probe_link,
};

static inline struct probe *probe_new(struct arena *a, const struct faces *faces)
{
	struct probe *p = arena_alloc(a, sizeof *p);

	p->arena = a;
	p->faces = faces;
	p->canvas.ops = &probe_ops;
	p->canvas.self = p;
	return p;
}

/* Capitals, as a reader sees them; a hair is let go. */
static inline rect probe_ink(const struct probe *p, const struct seen_text *t)
{
	double h = face_cap_height_pt(p->faces, t->face, t->size_pt);

	return (rect){ t->x + 0.5, t->y - h + 0.5, t->w - 1, h - 1 };
}

/* How many texts lie over another one of their page. */
static inline unsigned probe_overlaps(const struct probe *p)
{
	unsigned n = 0;

	for (size_t i = 0; i < p->ntexts; i++) {
		rect a = probe_ink(p, &p->texts[i]);

		for (size_t k = i + 1; k < p->ntexts && p->texts[k].page == p->texts[i].page; k++) {
			rect b = probe_ink(p, &p->texts[k]);

			n += a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
		}
	}
	return n;
}

/* Finds a text from `from` on; ntexts when there is none. */
static inline size_t probe_find(const struct probe *p, const char *text, size_t from)
{
	while (from < p->ntexts && !str_eq(p->texts[from].text, str_of(text)))
		from++;
	return from;
}

/* A small generator of our own, so that every run sees the same numbers (xorshift;
 * G. Marsaglia, Journal of Statistical Software 8(14), 2003). */
struct dice { uint32_t x; };

static inline uint32_t dice_roll(struct dice *d, uint32_t sides)
{
	d->x ^= d->x << 13;
	d->x ^= d->x >> 17;
	d->x ^= d->x << 5;
	return d->x % sides;
}

/* Words of random length, some of them with hyphens, slashes, accents or no-break
 * spaces, now and then a huge one. */
static inline str dice_text(struct dice *d, struct arena *a, unsigned words)
{
	static const char *const parts[] = { "a", "e", "st", "root", "weld", "-", "/", "1/4",
		"mm", "ó", "\xc2\xa0", "W", "i", "bevel", "3", "ñ" };
	struct buf b = { .arena = a };

	for (unsigned i = 0; i < words; i++) {
		uint32_t n = 1 + dice_roll(d, dice_roll(d, 40) == 0 ? 60 : 4);

		if (i)
			buf_addc(&b, ' ');
		while (n-- > 0)
			buf_adds(&b, parts[dice_roll(d, 16)]);
	}
	return buf_str(&b);
}

#endif
