/* From a pattern block to a part that can be worked out. */
#include "sheets/pattern_sheet.h"

#include "sheets/sheet.h"

static const enum pattern_shape shapes[SHAPE_COUNT] = {
	[SHAPE_BRAKE] = PATTERN_BRAKE, [SHAPE_CYLINDER] = PATTERN_CYLINDER,
	[SHAPE_ELBOW] = PATTERN_ELBOW, [SHAPE_SADDLE] = PATTERN_SADDLE,
	[SHAPE_CONE] = PATTERN_CONE, [SHAPE_BOX] = PATTERN_BOX,
	[SHAPE_SQUARE] = PATTERN_SQUARE,
};

static const enum pattern_line lines[] = {
	[SIDE_NONE] = LINE_AS_GIVEN, [SIDE_OUTSIDE] = LINE_OUTSIDE,
	    [SIDE_MEAN] = LINE_MEAN,
	[SIDE_INSIDE] = LINE_INSIDE, [SIDE_MOLD] = LINE_AS_GIVEN,
};

static double middle(const struct quantity *q)
{
	return given(q) ? (q->lo + q->hi) / 2 : 0;
}

/* Sheet is rolled on its middle; a wrap for pipe goes round the outside. */
static enum pattern_line default_wrap(const struct pattern_block *b)
{
	if (b->shape == SHAPE_SADDLE || b->pipe)
		return LINE_OUTSIDE;
	return middle(&b->thickness) > 0 ? LINE_MEAN : LINE_AS_GIVEN;
}

static void take_bends(const struct pattern_block *b, struct pattern_part *p)
{
	p->nflanges = b->nflanges;
	for (uint32_t i = 0; i < b->nflanges && i < PATTERN_FLANGES; i++)
		p->flange_mm[i] = middle(&b->flanges[i]);
	for (uint32_t i = 0; i < b->nbends && i < PATTERN_FLANGES; i++)
		p->bend_deg[i] = middle(&b->bends[i]);
}

struct pattern_part pattern_part_of(const struct pattern_block *b)
{
	struct pattern_part p = {
		.shape = shapes[b->shape], .thickness_mm = middle(&b->thickness),
		.given = lines[b->sizes], .line = lines[b->line],
		.wrap = b->stretch == SIDE_NONE ? default_wrap(b) : lines[b->stretch],
		.radius_mm = middle(&b->radius), .k = b->k,
		.allowance_mm = middle(&b->allowance), .width_mm = middle(&b->width),
		.diameter_mm = middle(&b->diameter), .height_mm = middle(&b->height),
		.angle_deg = middle(&b->angle), .pieces = b->pieces,
		.base_mm = middle(&b->base), .base2_mm = middle(&b->base2),
		.top_mm = middle(&b->top), .offset_x_mm = middle(&b->offset_x),
		.offset_y_mm = middle(&b->offset_y), .sides = b->sides,
		.divisions = b->divisions,
	};

	if (!(p.thickness_mm > 0))
		p.thickness_mm = b->branch.wall_mm;
	if (b->shape == SHAPE_SADDLE) {
		p.diameter_mm = b->branch.od_mm;
		p.run_mm = b->run.od_mm;
		if (!given(&b->angle))
			p.angle_deg = 90;
	}
	if (b->shape == SHAPE_ELBOW && !b->pieces)
		p.pieces = 2;
	take_bends(b, &p);
	return p;
}

struct pattern *pattern_of(struct arena *a, const struct pattern_block *b)
{
	struct pattern_part p = pattern_part_of(b);

	return pattern_reckon(a, &p);
}
