#include "sheets/picture.h"

#include "sheets/band.h"

/* Fewer dots an inch show as steps (common practice, no source). */
#define DOTS_AN_INCH_LEAST 150.0
/* Line drawings are below a tenth of both; a second copy fills large dark or gray parts
 * (common practice, no source). */
#define DARK_MOST 0.5
#define TINT_MOST 0.5

const struct pixels *picture_of(const struct drawing *d)
{
	const struct pixels *p = d->picture ? d->picture->pixels : NULL;

	return p && p->width ? p : NULL;
}

/* Size of p within w x h. */
static rect fit(const struct pixels *p, double w, double h)
{
	double scale = w / p->width;

	if (scale * p->height > h)
		scale = h / p->height;
	return (rect){ 0, 0, scale * p->width, scale * p->height };
}

void picture_draw(struct canvas *c, const struct pixels *p, rect area)
{
	rect r = fit(p, area.w, area.h);

	r.x = area.x + (area.w - r.w) / 2;
	r.y = area.y + (area.h - r.h) / 2;
	canvas_image(c, r, p);
}

static void draw_pixels(void *user, struct canvas *c, rect area)
{
	const struct pixels *const *p = user;

	picture_draw(c, *p, area);
}

static void draw_empty(void *user, struct canvas *c, rect area)
{
	(void)user;
	canvas_rect(c, area, &(struct ink){ .stroke_pt = RULE_PT });
}

/* A picture keeps its own words; a translation may tell what they mean. */
static void add_legend(struct sheet *sh, const struct drawing *d)
{
	str *keys = arena_array(sh->arena, d->nlegend, sizeof *keys);
	struct buf b = { .arena = sh->arena };

	for (size_t i = 0; i < d->nlegend; i++) {
		keys[i] = d->legend[i].key;
		buf_addf(&b, "%s%.*s = %.*s", i ? "; " : "", STR_ARG(keys[i]),
		    STR_ARG(d->legend[i].text));
	}
	sheet_text_other(sh, sh_format(sh, "In the picture: %.*s.", STR_ARG(buf_str(&b))), keys,
	    d->nlegend);
}

void sheet_picture(struct sheet *sh, const struct drawing *d, unsigned style)
{
	const struct type bold = styled(sh->e->bold, style);
	str head = d->title;
	struct block *b;
	const struct pixels **p = arena_alloc(sh->arena, sizeof *p);
	double most = flow_height_pt(sh->flow) * PICTURE_SHARE;
	double height = most;

	*p = picture_of(d);
	if (*p)
		height = fit(*p, sh->width_pt, most).h;
	if (!head.n && !*p)
		head = d->words;
	if (head.n) {
		b = block_plain(&sh->s, head, &bold, TAG_P, sh->width_pt);
		b->keep_next = true;
		sheet_add(sh, b, 3, 3);
	}
	b = block_picture(&sh->s, *p ? draw_pixels : draw_empty, p, d->words, height,
	    sh->width_pt);
	b->other = style & SPAN_OTHER;
	b->keep_next = d->nlegend > 0;
	sheet_add(sh, b, 2, 6);
	if (d->nlegend)
		add_legend(sh, d);
}

static void report_fault(struct findings *f, const struct assignment *x,
    const struct drawing *d, str fault)
{
	struct finding *n = finding_add(f, FINDING_BAD_PICTURE, d->pos,
	    "%.*s cannot be shown: %.*s", STR_ARG(d->picture->path), STR_ARG(fault));
	struct related *r = finding_relate(f, n, (struct pos){ d->picture->file, 0, 0 });

	n->assignment = x->id;
	r->label = STR("the file");
	finding_repair(f, n, "save the picture again as PNG, at most 8,000 pixels each way and "
	    "25 million in all");
}

static void report_coarse(struct findings *f, const struct assignment *x,
    const struct drawing *d, double dots)
{
	struct finding *n = finding_add(f, FINDING_COARSE_PICTURE, d->pos,
	    "%.*s prints with %u dots an inch; lines show as steps",
	    STR_ARG(d->picture->path), (unsigned)dots);

	n->assignment = x->id;
	finding_repair(f, n, "make it at least %u pixels wide",
	    (unsigned)(d->picture->pixels->width * DOTS_AN_INCH_LEAST / dots + 0.999));
}

static void report_dark(struct findings *f, const struct assignment *x,
    const struct drawing *d)
{
	const struct pixels *p = d->picture->pixels;
	bool dark = p->dark > DARK_MOST;
	struct finding *n = finding_add(f, FINDING_DARK_PICTURE, d->pos,
	    "%.*s is %s over %u %% of its area; a second photocopy loses what is in there",
	    STR_ARG(d->picture->path), dark ? "dark" : "gray",
	    (unsigned)(100 * (dark ? p->dark : p->tint)));

	n->assignment = x->id;
	finding_repair(f, n, "draw it in black lines on white, or take it lighter");
}

void picture_review(struct findings *f, const struct assignment *x, const struct drawing *d)
{
	const struct edition usual = edition_new(&(struct edition_choice){ .large = false });
	const struct flow_spec s = band_flow_spec(&usual);
	double width = s.page_width_pt - s.inner_pt - s.outer_pt;
	double height = (s.page_height_pt - s.top_pt - s.bottom_pt) * PICTURE_SHARE;
	const struct pixels *p = picture_of(d);
	double dots;

	if (d->picture && d->picture->pixels && d->picture->pixels->fault.n)
		report_fault(f, x, d, d->picture->pixels->fault);
	if (!p)
		return;
	dots = p->width / (fit(p, width, height).w / 72);
	if (dots < DOTS_AN_INCH_LEAST)
		report_coarse(f, x, d, dots);
	if (p->dark > DARK_MOST || p->tint > TINT_MOST)
		report_dark(f, x, d);
}
