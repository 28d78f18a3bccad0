/* The same lines as haru_floor through our canvas and PDF writer.
 * pdf_ours LINES OUT.pdf [RUNS [DOCUMENTS]]
 * Prints the best time of RUNS, in milliseconds. Fonts are read anew in each run; with
 * DOCUMENTS over 1 the lines are dealt out over that many documents sharing the faces.
 * Each line is a paragraph of its own in the structure tree, which the floor has not. */
#include "bench_lines.h"

#include "out/pdf.h"

static void lines_draw(struct canvas *c, const struct bench_line *v, size_t n)
{
	int open = 0;

	for (size_t i = 0; i < n; i++) {
		if (v[i].page) {
			if (open)
				canvas_page_end(c);
			canvas_page_begin(c, 612, 792);
			open = 1;
			continue;
		}
		canvas_tag_begin(c, TAG_P, (str){ 0 });
		canvas_text(c, (pt){ v[i].x, 792 - v[i].y }, (enum face_id)v[i].face,
		    v[i].size, (str){ v[i].text, v[i].n });
		canvas_tag_end(c);
	}
	if (open)
		canvas_page_end(c);
}

static void document_write(const struct faces *faces, const struct bench_line *v,
    size_t n, const char *path)
{
	struct pdf_meta meta = { .title = STR("Bench"), .language = STR("en-US") };
	struct arena *a = arena_new(NULL, NULL);
	struct pdf *p = pdf_new(a, faces, &meta);
	FILE *f = fopen(path, "wb");
	str bytes;

	lines_draw(pdf_canvas(p), v, n);
	if (pdf_finish(p, a, &bytes) != 0 || !f ||
	    fwrite(bytes.p, 1, bytes.n, f) != bytes.n || fclose(f) != 0) {
		fprintf(stderr, "pdf_ours: cannot write %s\n", path);
		exit(1);
	}
	arena_free(a);
}

/* Pages are dealt out in runs of whole pages. */
static void run(const struct bench_line *v, size_t n, const char *out, size_t documents)
{
	struct arena *a = arena_new(NULL, NULL);
	const struct faces *faces = faces_new(a);
	size_t from = 0;

	for (size_t d = 1; d <= documents; d++) {
		size_t to = n * d / documents;

		while (to < n && !v[to].page)
			to++;
		document_write(faces, v + from, to - from, out);
		from = to;
	}
	arena_free(a);
}

int main(int argc, char **argv)
{
	double best = 1e9, start, t;
	struct bench_line *v;
	size_t n, documents = argc > 4 ? (size_t)atoi(argv[4]) : 1;

	if (argc < 3 || documents == 0)
		return 2;
	v = bench_lines(argv[1], &n);
	for (int i = argc > 3 ? atoi(argv[3]) : 1; i > 0; i--) {
		start = bench_seconds();
		run(v, n, argv[2], documents);
		if ((t = bench_seconds() - start) < best)
			best = t;
	}
	printf("ours %.2f ms\n", best * 1e3);
	return 0;
}
