/* Writes the pages that `fitup print` would make as ready-broken lines for haru_floor:
 * dump_lines FOLDER > FILE. "P" begins a page, "T x y face size text" is one text, y up
 * from the bottom in points. Rules and drawings are left out, to the floor's favor. */
#include "base/buf.h"
#include "cli/run.h"
#include "page/flow.h"
#include "sheets/bundle.h"

#include <stdio.h>

static void on_page(void *self, double width_pt, double height_pt)
{
	(void)width_pt;
	*(double *)self = height_pt;
	puts("P");
}

static void on_text(void *self, pt at, enum face_id face, double size_pt, str s)
{
	printf("T %.2f %.2f %d %g %.*s\n", at.x, *(double *)self - at.y, face, size_pt, STR_ARG(s));
}

static const struct canvas_ops ops = { .page_begin = on_page, .text = on_text };

static void dump_quarter(const struct run *r, const struct order *o, uint32_t quarter)
{
	struct arena *a = run_scratch();
	uint32_t *v = arena_array(a, o->nwalk, sizeof *v);
	struct bundle_spec spec = { .model = r->model, .order = o, .faces = r->faces,
		.assignments = v, .name = str_format(a, "Quarter %u", quarter), .quarter = quarter,
		.front = true };
	double height_pt = LETTER_HEIGHT_PT; /* set again by each page */
	struct canvas c = { .ops = &ops, .self = &height_pt };
	struct bundle *b;

	for (size_t i = 0; i < o->nwalk; i++)
		if (o->places[o->walk[i]].quarter == quarter)
			v[spec.n++] = o->walk[i];
	b = bundle_new(a, &spec);
	bundle_emit(b, BUNDLE_PACKET, &c);
	bundle_emit(b, BUNDLE_GRADING, &c);
	arena_free(a);
}

int main(int argc, char **argv)
{
	const struct options o = { .folder = argc > 1 ? argv[1] : "curriculum" };
	struct run r;

	if (run_begin(&r, &o))
		return 1;
	for (uint32_t q = 1; q <= r.model->nquarters; q++)
		dump_quarter(&r, order_of_program(r.arena, r.model), q);
	run_end(&r);
	return 0;
}
