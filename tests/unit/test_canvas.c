#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/buf.h"
#include "draw/bounds.h"
#include "draw/list.h"
#include "draw/look.h"
#include "draw/trace.h"
#include "draw/zoom.h"

#include <string.h>

static int setup(void **state)
{
	*state = arena_new(NULL, NULL);
	return 0;
}

static int teardown(void **state)
{
	arena_free(*state);
	return 0;
}

static void page(struct canvas *c, str text, str number)
{
	canvas_page_begin(c, 612, 792);
	canvas_tag_begin(c, TAG_P, STR(""));
	canvas_box_begin(c, (rect){ 72, 80, 200, 14 }, STR("body"));
	canvas_text(c, (pt){ 72, 90.5 }, FACE_SANS, 12, text);
	canvas_box_end(c);
	canvas_tag_end(c);
	canvas_fleeting_begin(c);
	canvas_text(c, (pt){ 500, 760 }, FACE_MONO_BOLD, 10, number);
	canvas_fleeting_end(c);
	canvas_page_end(c);
}

static void figure(struct canvas *c, str alt)
{
	canvas_tag_begin(c, TAG_FIGURE, alt);
	canvas_path(c, (struct seg[]){ { SEG_MOVE, { { 1, 2 } } },
	    { SEG_CURVE, { { 1, 1 }, { 2, 2 }, { 3.005, -3 } } },
	    { .op = SEG_CLOSE } }, 3,
	    &(struct ink){ .stroke_pt = 0.75, .dash_on_pt = 4, .dash_off_pt = 2,
	    .fill = true, .fill_gray = 0.5 });
	canvas_line(c, (pt){ 10, 10 }, (pt){ 20, 10 }, 1);
	canvas_tag_end(c);
}

static void everything(struct canvas *c)
{
	canvas_tag_begin(c, TAG_DOCUMENT, STR(""));
	canvas_label(c, LABEL_ROMAN, STR("Q1-"), 1);
	page(c, STR("one\nline\\"), STR("1 of 2"));
	canvas_page_begin(c, 792, 612);
	canvas_dest(c, STR("SM-04"), (pt){ 72, 80 });
	canvas_outline(c, 1, STR("SM-04 Tee"), STR("SM-04"));
	figure(c, STR("tee joint"));
	canvas_link(c, (rect){ 1, 2, 3, 4 }, STR("SM-04"));
	canvas_page_end(c);
	canvas_tag_end(c);
}

static const char golden[] =
    "tag document\n"
    "label roman 1 Q1-\n"
    "page 612.00 792.00\n"
    "tag p\n"
    "box 72.00 80.00 200.00 14.00 body\n"
    "text 72.00 90.50 sans 12.00 one\\nline\\x5c\n"
    "end box\n"
    "end tag\n"
    "fleeting\n"
    "text 500.00 760.00 mono-bold 10.00 1 of 2\n"
    "end fleeting\n"
    "end page\n"
    "page 792.00 612.00\n"
    "dest 72.00 80.00 SM-04\n"
    "outline 1 SM-04 Tee -> SM-04\n"
    "tag figure tee joint\n"
    "path fill 0.50 stroke 0.75 gray 0.00 dash 4.00 2.00 M 1.00 2.00"
    " C 1.00 1.00 2.00 2.00 3.01 -3.00 Z\n"
    "path stroke 1.00 gray 0.00 M 10.00 10.00 L 20.00 10.00\n"
    "end tag\n"
    "link 1.00 2.00 3.00 4.00 SM-04\n"
    "end page\n"
    "end tag\n";

static void trace_is_golden(void **state)
{
	struct buf out = { .arena = *state };
	struct trace t;

	trace_init(&t, &out);
	everything(&t.canvas);
	assert_string_equal(buf_z(&out), golden);
}

static void nothing_is_drawn_without_ink(void **state)
{
	struct buf out = { .arena = *state };
	struct trace t;

	trace_init(&t, &out);
	canvas_page_begin(&t.canvas, 1, 1);
	canvas_text(&t.canvas, (pt){ 0, 0 }, FACE_SANS, 12, STR(""));
	canvas_rect(&t.canvas, (rect){ 0, 0, 1, 1 }, &(struct ink){ 0 });
	canvas_polygon(&t.canvas, NULL, 0, &(struct ink){ .fill = true });
	canvas_page_end(&t.canvas);
	assert_string_equal(buf_z(&out), "page 1.00 1.00\nend page\n");
}

static void device_without_operations(void **state)
{
	static const struct canvas_ops none = { 0 };
	struct canvas c = { .ops = &none };

	(void)state;
	everything(&c);
	assert_int_equal(c.pages + c.boxes + c.tags + c.fleeting, 0);
}

static bool near(double a, double b)
{
	return a - b < 1e-9 && b - a < 1e-9;
}

static void bounds_of_strokes_and_curves(void **state)
{
	struct bounds b;
	rect r;

	bounds_init(&b, faces_new(*state));
	r = bounds_rect(&b);
	assert_true(r.w == 0 && r.h == 0 && !b.any);
	canvas_page_begin(&b.canvas, 100, 100);
	canvas_circle(&b.canvas, (pt){ 50, 40 }, 10, &(struct ink){ .stroke_pt = 2 });
	r = bounds_rect(&b);
	assert_true(near(r.x, 39) && near(r.y, 29) && near(r.w, 22) && near(r.h, 22));
	canvas_rect(&b.canvas, (rect){ 10, 20, 5, 60 }, &(struct ink){ .fill = true });
	canvas_page_end(&b.canvas);
	r = bounds_rect(&b);
	assert_true(near(r.x, 10) && near(r.y, 20) && near(r.w, 51) && near(r.h, 60));
}

/* Ten digits of 600 thousandths, ascent 1025 and descent 275 thousandths (test_face). */
static void bounds_of_text(void **state)
{
	struct bounds b;
	rect r;

	bounds_init(&b, faces_new(*state));
	canvas_page_begin(&b.canvas, 612, 792);
	canvas_text(&b.canvas, (pt){ 100, 200 }, FACE_MONO, 10, STR("0123456789"));
	canvas_page_end(&b.canvas);
	r = bounds_rect(&b);
	assert_true(near(r.x, 100) && near(r.w, 60));
	assert_true(near(r.y, 200 - 10.25) && near(r.h, 13));
}

static struct list *recorded(struct arena *a)
{
	struct list *l = list_new(a);

	everything(list_canvas(l));
	return l;
}

static void replay_is_what_was_drawn(void **state)
{
	struct list *l = recorded(*state);
	struct buf whole = { .arena = *state }, paged = { .arena = *state };
	struct trace t;

	trace_init(&t, &whole);
	list_replay(l, &t.canvas, 0, 0);
	assert_string_equal(buf_z(&whole), golden);
	trace_init(&t, &paged);
	assert_int_equal(list_pages(l), 2);
	assert_true(list_page_size(l, 1).w == 792);
	list_replay_page(l, 0, &t.canvas, 0, 0);
	assert_true(str_ends(buf_str(&paged), STR("end fleeting\nend page\n")));
	list_replay_page(l, 1, &t.canvas, 0, 0);
	assert_string_equal(buf_z(&paged), golden);
}

static void replay_shifted_on_an_open_page(void **state)
{
	struct list *l = list_new(*state);
	struct buf out = { .arena = *state };
	struct trace t;

	canvas_page_begin(list_canvas(l), 100, 100);
	canvas_line(list_canvas(l), (pt){ 1, 2 }, (pt){ 3, 4 }, 1);
	canvas_text(list_canvas(l), (pt){ 5, 6 }, FACE_SANS, 12, STR("x"));
	canvas_link(list_canvas(l), (rect){ 1, 2, 3, 4 }, STR("y"));
	canvas_page_end(list_canvas(l));
	trace_init(&t, &out);
	canvas_page_begin(&t.canvas, 500, 500);
	list_replay_content(l, 0, &t.canvas, 10, 20);
	canvas_page_end(&t.canvas);
	assert_string_equal(buf_z(&out),
	    "page 500.00 500.00\n"
	    "path stroke 1.00 gray 0.00 M 11.00 22.00 L 13.00 24.00\n"
	    "text 15.00 26.00 sans 12.00 x\n"
	    "link 11.00 22.00 3.00 4.00 y\n"
	    "end page\n");
}

/* Recording crosses the edges of its blocks at every page length. */
static void long_recordings(void **state)
{
	for (int per_page = 120; per_page < 135; per_page++) {
		struct list *l = list_new(*state);
		struct buf direct = { .arena = *state }, paged = { .arena = *state };
		struct trace t;

		trace_init(&t, &direct);
		for (int i = 0; i < 5; i++) {
			struct canvas *to[2] = { list_canvas(l), &t.canvas };

			for (int c = 0; c < 2; c++) {
				canvas_page_begin(to[c], 100, i);
				for (int k = 0; k < per_page; k++)
					canvas_line(to[c], (pt){ k, i }, (pt){ 0, 0 }, 1);
				canvas_page_end(to[c]);
			}
		}
		trace_init(&t, &paged);
		for (size_t i = 0; i < list_pages(l); i++)
			list_replay_page(l, i, &t.canvas, 0, 0);
		assert_string_equal(buf_z(&direct), buf_z(&paged));
	}
}

/* Two by one pixels; the digests are made up, that of a picture is told by its reader. */
static const uint8_t pixels[2] = { 0, 255 };
static const struct pixels dots = { 2, 1, pixels, { 0x1f, 0x0e, 0x2d, 0x3c }, 0.5, 0, { 0 } };
static const struct pixels others = { 2, 1, pixels, { 0x1f, 0x0e, 0x2d, 0x3d }, 0.5, 0, { 0 } };

static void image_is_drawn_measured_and_replayed(void **state)
{
	struct list *l = list_new(*state);
	struct buf out = { .arena = *state };
	struct bounds b;
	struct trace t;
	rect r;

	canvas_page_begin(list_canvas(l), 100, 100);
	canvas_image(list_canvas(l), (rect){ 10, 20, 30, 15 }, &dots);
	canvas_image(list_canvas(l), (rect){ 0, 0, 1, 1 }, &(struct pixels){ 0 });
	canvas_page_end(list_canvas(l));
	trace_init(&t, &out);
	list_replay(l, &t.canvas, 1, 2);
	assert_string_equal(buf_z(&out), "page 100.00 100.00\n"
	    "image 11.00 22.00 30.00 15.00 2x1 1f0e2d3c\nend page\n");
	bounds_init(&b, faces_new(*state));
	list_replay(l, &b.canvas, 0, 0);
	r = bounds_rect(&b);
	assert_true(near(r.x, 10) && near(r.y, 20) && near(r.w, 30) && near(r.h, 15));
}

typedef void draw_function(struct canvas *c);

static void draw_image(struct canvas *c, rect r, const struct pixels *p)
{
	canvas_page_begin(c, 612, 792);
	canvas_image(c, r, p);
	canvas_page_end(c);
}

static void draw_dots(struct canvas *c) { draw_image(c, (rect){ 1, 2, 3, 4 }, &dots); }
static void draw_others(struct canvas *c) { draw_image(c, (rect){ 1, 2, 3, 4 }, &others); }
static void draw_larger(struct canvas *c) { draw_image(c, (rect){ 1, 2, 6, 8 }, &dots); }


static void draw_first(struct canvas *c) { page(c, STR("text"), STR("1 of 2")); }
static void draw_number(struct canvas *c) { page(c, STR("text"), STR("7 of 9")); }
static void draw_word(struct canvas *c) { page(c, STR("test"), STR("1 of 2")); }

static void draw_figure(struct canvas *c)
{
	canvas_page_begin(c, 612, 792);
	figure(c, STR("tee joint"));
	canvas_page_end(c);
}

static void draw_linked(struct canvas *c)
{
	canvas_tag_begin(c, TAG_SECTION, STR(""));
	canvas_label(c, LABEL_DECIMAL, STR("x"), 4);
	canvas_page_begin(c, 612, 792);
	canvas_dest(c, STR("here"), (pt){ 1, 1 });
	canvas_box_begin(c, (rect){ 0, 0, 1, 1 }, STR("b"));
	figure(c, STR("tee joint"));
	canvas_box_end(c);
	canvas_link(c, (rect){ 0, 0, 1, 1 }, STR("here"));
	canvas_outline(c, 0, STR("t"), STR("here"));
	canvas_page_end(c);
	canvas_tag_end(c);
}

static void draw_other_alt(struct canvas *c)
{
	canvas_page_begin(c, 612, 792);
	figure(c, STR("lap joint"));
	canvas_page_end(c);
}

static bool same_digest(draw_function *x, draw_function *y)
{
	draw_function *const draw[2] = { x, y };
	uint8_t digest[2][SHA256_BYTES];

	for (int i = 0; i < 2; i++) {
		struct look l;
		struct sha256 h;

		look_begin(&l);
		draw[i](&l.canvas);
		sha256_init(&h);
		look_end(&l, &h);
		sha256_end(&h, digest[i]);
	}
	return memcmp(digest[0], digest[1], SHA256_BYTES) == 0;
}

static void digest_is_of_what_stays(void **state)
{
	(void)state;
	assert_true(same_digest(draw_first, draw_number));
	assert_false(same_digest(draw_first, draw_word));
	assert_true(same_digest(draw_figure, draw_linked));
	assert_false(same_digest(draw_figure, draw_other_alt));
	assert_true(same_digest(draw_dots, draw_dots));
	assert_false(same_digest(draw_dots, draw_others));
	assert_false(same_digest(draw_dots, draw_larger));
}

/* Everything of `figure` and of a labelled box, twice as large from the corner. */
static void zoom_doubles(void **state)
{
	struct buf b = { .arena = *state };
	struct trace t;
	struct zoom z;

	trace_init(&t, &b);
	canvas_page_begin(&t.canvas, 612, 792);
	zoom_init(&z, &t.canvas, 2, *state);
	assert_true(canvas_zoom(&t.canvas) == 1 && canvas_zoom(&z.canvas) == 2);
	figure(&z.canvas, STR("a curve"));
	canvas_box_begin(&z.canvas, (rect){ 5, 6, 7, 8 }, STR("label"));
	canvas_text(&z.canvas, (pt){ 5, 14 }, FACE_SANS, 9, STR("A"));
	canvas_box_end(&z.canvas);
	canvas_link(&z.canvas, (rect){ 1, 2, 3, 4 }, STR("SM-04"));
	canvas_page_end(&t.canvas);
	assert_true(str_eq(buf_str(&b), STR("page 612.00 792.00\n"
	    "tag figure a curve\n"
	    "path fill 0.50 stroke 1.50 gray 0.00 dash 8.00 4.00 M 2.00 4.00 "
	    "C 2.00 2.00 4.00 4.00 6.01 -6.00 Z\n"
	    "path stroke 2.00 gray 0.00 M 20.00 20.00 L 40.00 20.00\n"
	    "end tag\n"
	    "box 10.00 12.00 14.00 16.00 label\n"
	    "text 10.00 28.00 sans 18.00 A\n"
	    "end box\n"
	    "link 2.00 4.00 6.00 8.00 SM-04\n"
	    "end page\n")));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(trace_is_golden,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(nothing_is_drawn_without_ink,
		    setup, teardown),
		cmocka_unit_test(device_without_operations),
		cmocka_unit_test_setup_teardown(bounds_of_strokes_and_curves,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(bounds_of_text,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(replay_is_what_was_drawn,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(replay_shifted_on_an_open_page,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(long_recordings,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(image_is_drawn_measured_and_replayed,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(digest_is_of_what_stays,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(zoom_doubles,
		    setup, teardown),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
