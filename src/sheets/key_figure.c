#include "sheets/key_figure.h"

#include "draw/fig.h"
#include "draw/list.h"
#include "sheets/figure.h"
#include "sheets/limits.h"

#define PICTURE_SHARE 0.62 /* of the width; the rest has the answers */
#define COLUMN_GAP_PT 12.0
/* Heights tried for a section, up by a tenth. */
#define LEAST_PT 130.0
#define MOST_PT 300.0
enum { ANSWERS_MOST = 12 };

struct key_picture {
	const struct faces *faces;
	struct fig_joint joint;
	struct list *drawn;
	bool fits;
};

static void try_picture(void *user, struct canvas *c, rect area)
{
	struct key_picture *p = user;

	p->fits = fig_joint_draw(c, p->faces, area, &p->joint);
}

static void draw_picture_again(void *user, struct canvas *c, rect area)
{
	list_replay_content(((struct key_picture *)user)->drawn, 0, c, area.x, area.y);
}

/* The least height with room for the section; 0 when there is none. */
static double record(struct sheet *sh, struct key_picture *p, double width)
{
	struct fig_tries tries = { 0 };

	p->joint.tries = &tries;
	for (double h = LEAST_PT; h <= MOST_PT; h *= 1.1) {
		struct canvas *c;

		p->drawn = list_new(sh->arena);
		c = list_canvas(p->drawn);
		canvas_page_begin(c, width, h);
		sheet_figure_draw(sh, try_picture, p, c, (rect){ 0, 0, width, h });
		canvas_page_end(c);
		if (p->fits) {
			p->joint.tries = NULL;
			return h;
		}
	}
	p->joint.tries = NULL;
	return 0;
}

/* "Least throat", without the letter of its weld. */
static str short_name(str name)
{
	return str_sub(name, 0, str_find(name, STR(", weld "), 0));
}

static struct block *answer_block(struct sheet *sh, const struct worked *w, double width)
{
	struct span *v = arena_array(sh->arena, 2, sizeof *v);

	v[0].text = str_format(sh->arena, "%.*s: ", STR_ARG(short_name(w->name)));
	v[1] = (struct span){ str_format(sh->arena, "%.*s%s", STR_ARG(w->result),
	    w->dagger ? DAGGER : ""), SPAN_BOLD };
	return block_text(&sh->s, v, 2, &sh->e->body, TAG_P, width);
}

static size_t answers_of(struct sheet *sh, const struct workings *w, uint32_t drawing,
    double width, struct block **v, str *at_weld)
{
	size_t n = 0;

	for (size_t i = 0; i < w->n && n < ANSWERS_MOST; i++) {
		if (w->v[i].drawing != drawing || !w->v[i].at_drawing)
			continue;
		if (!n)
			*at_weld = str_format(sh->arena, "%.*s %.*s",
			    STR_ARG(short_name(w->v[i].name)), STR_ARG(w->v[i].result));
		v[n] = answer_block(sh, &w->v[i], width);
		v[n]->before_pt = n ? 3 : 0;
		n++;
	}
	return n;
}

static void add_drawing(struct sheet *sh, const struct assignment *x, const struct workings *w,
    uint32_t drawing)
{
	double left = (sh->width_pt - COLUMN_GAP_PT) * PICTURE_SHARE;
	double right = sh->width_pt - COLUMN_GAP_PT - left, height;
	struct block **answers = arena_array(sh->arena, ANSWERS_MOST, sizeof *answers);
	struct block **picture = arena_alloc(sh->arena, sizeof *picture);
	struct key_picture *p = arena_alloc(sh->arena, sizeof *p);
	struct block_column columns[2];
	str at_weld = { 0 };
	size_t n = answers_of(sh, w, drawing, right, answers, &at_weld);

	*p = (struct key_picture){ .faces = sh->s.faces };
	figure_joint(sh->arena, sh->e, x, &x->drawings[drawing].joint, &p->joint);
	if (!n || !fig_can_draw(p->joint.shape))
		return;
	p->joint.label_answer = at_weld;
	p->joint.nlayers = 0; /* a key is about sizes */
	height = record(sh, p, left);
	if (!(height > 0))
		return;
	picture[0] = block_picture(&sh->s, draw_picture_again, p,
	    fig_joint_words(sh->arena, &p->joint), height, left);
	columns[0] = (struct block_column){ picture, 1, left };
	columns[1] = (struct block_column){ answers, n, right };
	if (p->joint.letter.n)
		sheet_bold(sh, str_format(sh->arena, "Weld %.*s", STR_ARG(p->joint.letter)));
	sheet_add(sh, block_columns(&sh->s, columns, 2, COLUMN_GAP_PT), 4, 6);
}

void sheet_key_figures(struct sheet *sh, const struct assignment *x, const struct workings *w)
{
	for (size_t i = 0; i < x->ndrawings; i++)
		if (x->drawings[i].kind == DRAWING_JOINT)
			add_drawing(sh, x, w, (uint32_t)i);
}
