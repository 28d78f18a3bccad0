#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "out/pdf.h"
#include "out/pdf_parts.h"

#include <math.h>
#include <pthread.h>
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

static const struct pdf_meta meta = {
	.title = { "Caf\xc3\xa9 & more", 12 }, .language = { "en-US", 5 },
	.subject = { "a (test)", 8 },
};

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

static void page(struct canvas *c, int number)
{
	canvas_page_begin(c, 612, 792);
	canvas_tag_begin(c, TAG_ARTIFACT, STR(""));
	canvas_line(c, (pt){ 72, 40 }, (pt){ 540, 40 }, 0.5);
	canvas_tag_end(c);
	canvas_tag_begin(c, TAG_H1, STR(""));
	canvas_text(c, (pt){ 72, 72 }, FACE_SANS_BOLD, 18,
	    STR("Tee fillet \xe2\x85\x9c in"));
	canvas_tag_end(c);
	canvas_tag_begin(c, TAG_P, STR(""));
	canvas_text(c, (pt){ 72, 100 }, FACE_SANS, 12, STR("a (b) \\ c"));
	canvas_text(c, (pt){ 72, 114.5 }, FACE_SANS, 12, STR("second line"));
	canvas_tag_end(c);
	if (number == 1)
		canvas_dest(c, STR("there"), (pt){ 72, 60 });
	else
		canvas_link(c, (rect){ 72, 90, 50, 12 }, STR("there"));
	canvas_page_end(c);
}

static void document(struct canvas *c)
{
	canvas_tag_begin(c, TAG_DOCUMENT, STR(""));
	canvas_label(c, LABEL_ROMAN, STR(""), 1);
	for (int i = 0; i < 3; i++)
		page(c, i);
	canvas_outline(c, 0, STR("Ma\xc3\xb1""ana"), STR("there"));
	canvas_outline(c, 1, STR("inner"), STR("there"));
	canvas_page_begin(c, 792, 612);
	canvas_tag_begin(c, TAG_FIGURE, STR("a circle"));
	canvas_circle(c, (pt){ 100, 100 }, 40, &(struct ink){ .stroke_pt = 1,
	    .fill = true, .fill_gray = 0.8, .dash_on_pt = 3, .dash_off_pt = 2 });
	canvas_text(c, (pt){ 100, 100 }, FACE_MONO, 12, STR("R 40"));
	canvas_tag_end(c);
	canvas_page_end(c);
	canvas_tag_end(c);
}

static str build(struct arena *a, void (*draw)(struct canvas *), int expected)
{
	struct pdf *p = pdf_new(a, faces_new(a), &meta);
	str bytes;

	draw(pdf_canvas(p));
	assert_int_equal(pdf_finish(p, a, &bytes), expected);
	return bytes;
}

static size_t count(str s, const char *needle)
{
	size_t n = 0, at = 0;
	str word = str_of(needle);

	while ((at = str_find(s, word, at)) < s.n) {
		n++;
		at += word.n;
	}
	return n;
}

static void file_has_its_parts(void **state)
{
	static const struct { const char *text; size_t times; } parts[] = {
		{ "%PDF-1.7\n", 1 }, { "/Type/Page/", 4 }, { "/Count 4/Kids[", 1 },
		{ "/Lang(en-US)", 1 }, { "/MarkInfo<</Marked true>>", 1 },
		{ "/DisplayDocTitle true", 1 }, { "/Title<FEFF00430061006600E90020", 1 },
		{ "/Subject(a \\(test\\))", 1 }, { "/Producer(fitup)", 1 },
		{ "/Author", 0 },
		{ "/S/GoTo/D(there)", 2 }, { "(there)[", 1 }, { "/Alt(a circle)", 1 },
		{ "/Title<FEFF004D006100F10061006E0061>", 1 }, { "/Title(inner)", 1 },
		{ "/PageLabels<</Nums[0<</S/r/St 1>>]>>", 1 }, { "/S/H1", 3 },
		{ "/S/P/", 3 },
		{ "/S/Figure", 1 }, { "/S/Document", 1 }, { "/Subtype/Type0", 3 },
		{ "/FontFile2", 3 }, { "/CIDToGIDMap/Identity", 3 }, { "/ToUnicode", 3 },
		{ "Caf\xc3\xa9 &amp; more", 1 }, { "/ID[<", 1 }, { "Date", 0 },
		{ "%%EOF", 1 },
	};
	str bytes = build(*state, document, 0);

	for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
		if (count(bytes, parts[i].text) != parts[i].times)
			print_message("%s\n", parts[i].text);
		assert_int_equal(count(bytes, parts[i].text), parts[i].times);
	}
}

static void two_builds_are_the_same(void **state)
{
	str one = build(*state, document, 0), two = build(*state, document, 0);

	assert_true(one.n > 10000);
	assert_true(str_eq(one, two));
}

struct job {
	struct arena *arena;
	const struct faces *faces;
	str bytes;
	int error;
};

static void *job_run(void *user)
{
	struct job *j = user;

	for (int i = 0; i < 20; i++) {
		struct pdf *p = pdf_new(j->arena, j->faces, &meta);

		document(pdf_canvas(p));
		j->error |= pdf_finish(p, j->arena, &j->bytes);
	}
	return NULL;
}

static void two_threads_at_once(void **state)
{
	struct job jobs[2] = { { .error = 0 }, { .error = 0 } };
	const struct faces *faces = faces_new(*state);
	pthread_t threads[2];

	for (int i = 0; i < 2; i++) {
		jobs[i].arena = arena_new(NULL, NULL);
		jobs[i].faces = faces;
		assert_int_equal(pthread_create(&threads[i], NULL, job_run, &jobs[i]), 0);
	}
	for (int i = 0; i < 2; i++) {
		assert_int_equal(pthread_join(threads[i], NULL), 0);
		assert_int_equal(jobs[i].error, 0);
	}
	assert_true(str_eq(jobs[0].bytes, jobs[1].bytes));
	assert_true(str_eq(jobs[0].bytes, build(*state, document, 0)));
	arena_free(jobs[0].arena);
	arena_free(jobs[1].arena);
}

/* The operators of a page, unpacked. */
static str page_operators(struct arena *a, const struct pdf *p, size_t page)
{
	str packed = p->pages[page].packed;
	uLongf n = 1 << 20;
	char *out = arena_alloc(a, n);

	assert_int_equal(uncompress((Bytef *)out, &n, (const Bytef *)packed.p,
	    (uLong)packed.n), Z_OK);
	return (str){ out, n };
}

static void draw_plain(struct canvas *c)
{
	canvas_page_begin(c, 100, 200);
	canvas_tag_begin(c, TAG_P, STR(""));
	canvas_text(c, (pt){ 10, 20 }, FACE_MONO, 12, STR("1"));
	canvas_text(c, (pt){ 10, 34.5 }, FACE_MONO, 12, STR("1"));
	canvas_tag_end(c);
	canvas_rect(c, (rect){ 1, 2, 3, 4 }, &(struct ink){ .fill = true,
	    .fill_gray = 0.25 });
	canvas_line(c, (pt){ -1e9, 0 }, (pt){ 1e9, 0.004 }, 0.5);
	canvas_page_end(c);
}

/* Worked out by hand: y counts from the bottom of 200; the glyphs of 1 and of a blank in
 * Mono are those that the face names. The blank parts the lines. */
static void operators_of_a_page(void **state)
{
	const struct faces *faces = faces_new(*state);
	struct pdf *p = pdf_new(*state, faces, &meta);
	uint16_t glyph = face_glyph(faces, FACE_MONO, '1');
	uint16_t blank = face_glyph(faces, FACE_MONO, ' ');
	struct buf want = { .arena = *state };
	str bytes;

	draw_plain(pdf_canvas(p));
	buf_adds(&want, "/P<</MCID 0>>BDC\nBT\n/F4 12 Tf\n10 180 Td(");
	buf_addf(&want, "%c%c)Tj\n(%c%c)Tj\n0 -14.5 Td(%c%c)Tj\nET\nEMC\n", glyph >> 8,
	    glyph & 255, blank >> 8, blank & 255, glyph >> 8, glyph & 255);
	buf_adds(&want, "/Artifact BMC\n.25 g\n1 198 m\n4 198 l\n4 194 l\n1 194 l\nh\nf\n"
	    ".5 w\n-32000 200 m\n32000 200 l\nS\nEMC\n");
	assert_true(str_eq(page_operators(*state, p, 0), buf_str(&want)));
	assert_int_equal(pdf_finish(p, *state, &bytes), 0);
}

static void draw_not_finite(struct canvas *c)
{
	canvas_page_begin(c, 100, 200);
	canvas_line(c, (pt){ NAN, 0 }, (pt){ 1, 1 }, 0.5);
	canvas_page_end(c);
}

static void draw_endless_text(struct canvas *c)
{
	canvas_page_begin(c, 100, 200);
	canvas_text(c, (pt){ 0, INFINITY }, FACE_SANS, 12, STR("x"));
	canvas_page_end(c);
}

static void numbers_that_are_none(void **state)
{
	assert_int_equal(build(*state, draw_not_finite, PDF_NOT_FINITE).n, 0);
	assert_int_equal(build(*state, draw_endless_text, PDF_NOT_FINITE).n, 0);
}

static void draw_nothing(struct canvas *c)
{
	canvas_page_begin(c, 100, 200);
	canvas_page_end(c);
}

static void empty_page(void **state)
{
	str bytes = build(*state, draw_nothing, 0);

	assert_int_equal(count(bytes, "/Type/Page/"), 1);
	assert_int_equal(count(bytes, "/StructParents"), 0);
}

static void draw_lost_link(struct canvas *c)
{
	canvas_page_begin(c, 100, 200);
	canvas_link(c, (rect){ 0, 0, 1, 1 }, STR("nowhere"));
	canvas_page_end(c);
}

static void draw_twice_named(struct canvas *c)
{
	canvas_page_begin(c, 100, 200);
	canvas_dest(c, STR("here"), (pt){ 0, 0 });
	canvas_dest(c, STR("here"), (pt){ 0, 9 });
	canvas_page_end(c);
}

static void draw_open_tag(struct canvas *c)
{
	canvas_tag_begin(c, TAG_P, STR(""));
}

static void draw_across_pages(struct canvas *c)
{
	canvas_page_begin(c, 100, 200);
	canvas_page_begin(c, 100, 200);
}

/* Our own mistakes stop the program at once. */
static void own_mistakes_are_caught(void **state)
{
	void (*const draw[])(struct canvas *) = { draw_lost_link, draw_twice_named,
		draw_open_tag, draw_across_pages };

	for (size_t i = 0; i < sizeof draw / sizeof draw[0]; i++) {
		int status = 0;
		pid_t child = fork();

		assert_true(child >= 0);
		if (child == 0) {
			close(2);
			build(*state, draw[i], 0);
			_exit(0);
		}
		assert_int_equal(waitpid(child, &status, 0), child);
		assert_true(WIFSIGNALED(status) && WTERMSIG(status) == SIGABRT);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(file_has_its_parts,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(two_builds_are_the_same,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(two_threads_at_once,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(operators_of_a_page,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(numbers_that_are_none,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(empty_page,
		    setup, teardown),
		cmocka_unit_test_setup_teardown(own_mistakes_are_caught,
		    setup, teardown),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
