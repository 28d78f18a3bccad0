/* The floor: the bare PDF library writing ready-broken lines by its stock calls, with
 * TrueType fonts loaded from files. haru_floor LINES OUT.pdf [RUNS]
 * Prints the best time of RUNS whole documents, in milliseconds, and the size. */
#include "bench_lines.h"

#include <hpdf.h>

static const char *const files[6] = {
	"templates/fonts/IBMPlexSans_400Regular.ttf",
	"templates/fonts/IBMPlexSans_700Bold.ttf",
	"templates/fonts/IBMPlexSans_400Regular_Italic.ttf",
	"templates/fonts/IBMPlexSans_700Bold_Italic.ttf",
	"templates/fonts/IBMPlexMono_400Regular.ttf",
	"templates/fonts/IBMPlexMono_700Bold.ttf",
};

static void on_error(HPDF_STATUS code, HPDF_STATUS detail, void *user)
{
	(void)user;
	fprintf(stderr, "haru_floor: %#lx %lu\n", code, detail);
	exit(1);
}

static HPDF_Font font_load(HPDF_Doc doc, int face)
{
	return HPDF_GetFont(doc, HPDF_LoadTTFontFromFile(doc, files[face], HPDF_TRUE),
	    "UTF-8");
}

static void lines_draw(HPDF_Doc doc, const struct bench_line *v, size_t n)
{
	HPDF_Font fonts[6] = { NULL };
	HPDF_Page page = NULL;

	for (size_t i = 0; i < n; i++) {
		if (v[i].page) {
			page = HPDF_AddPage(doc);
			HPDF_Page_SetWidth(page, 612);
			HPDF_Page_SetHeight(page, 792);
			continue;
		}
		if (!fonts[v[i].face])
			fonts[v[i].face] = font_load(doc, v[i].face);
		HPDF_Page_BeginText(page);
		HPDF_Page_SetFontAndSize(page, fonts[v[i].face], (HPDF_REAL)v[i].size);
		HPDF_Page_TextOut(page, (HPDF_REAL)v[i].x, (HPDF_REAL)v[i].y, v[i].text);
		HPDF_Page_EndText(page);
	}
}

static double run(const struct bench_line *v, size_t n, const char *out)
{
	double start = bench_seconds();
	HPDF_Doc doc = HPDF_New(on_error, NULL);

	HPDF_SetCompressionMode(doc, HPDF_COMP_ALL);
	HPDF_UseUTFEncodings(doc);
	lines_draw(doc, v, n);
	HPDF_SaveToFile(doc, out);
	HPDF_Free(doc);
	return bench_seconds() - start;
}

int main(int argc, char **argv)
{
	double best = 1e9, t;
	struct bench_line *v;
	size_t n;

	if (argc < 3)
		return 2;
	v = bench_lines(argv[1], &n);
	for (int i = argc > 3 ? atoi(argv[3]) : 1; i > 0; i--)
		if ((t = run(v, n, argv[2])) < best)
			best = t;
	printf("floor %.2f ms\n", best * 1e3);
	return 0;
}
