/* Builds the document that outside readers judge: text in all faces, paths, links,
 * outline, labels, tags, a figure. pdf_driver FILE */
#include "out/pdf.h"

#include <stdio.h>

static const struct ink black = { .fill = true };
static const struct ink outline = { .stroke_pt = 1 };

static void paragraph(struct canvas *c, double y, enum face_id face, double size, str s)
{
	canvas_tag_begin(c, TAG_P, STR(""));
	canvas_text(c, (pt){ 90, y }, face, size, s);
	canvas_tag_end(c);
}

static void heading(struct canvas *c, str title, str name)
{
	canvas_tag_begin(c, TAG_H1, STR(""));
	canvas_dest(c, name, (pt){ 90, 60 });
	canvas_outline(c, 0, title, name);
	canvas_text(c, (pt){ 90, 90 }, FACE_SANS_BOLD, 20, title);
	canvas_tag_end(c);
}

static void header(struct canvas *c, str page)
{
	canvas_tag_begin(c, TAG_ARTIFACT, STR(""));
	canvas_text(c, (pt){ 90, 40 }, FACE_SANS, 10, page);
	canvas_line(c, (pt){ 90, 46 }, (pt){ 540, 46 }, 0.5);
	canvas_tag_end(c);
}

static void tee(struct canvas *c)
{
	canvas_tag_begin(c, TAG_FIGURE,
	    STR("Tee joint from the end: fillet \xe2\x85\x9c in"));
	canvas_rect(c, (rect){ 200, 400, 160, 24 }, &outline);
	canvas_rect(c, (rect){ 268, 300, 24, 100 }, &outline);
	canvas_polygon(c, (pt[]){ { 292, 400 }, { 292, 370 }, { 322, 400 } }, 3, &black);
	canvas_circle(c, (pt){ 340, 330 }, 20,
	    &(struct ink){ .stroke_pt = 0.75, .dash_on_pt = 3, .dash_off_pt = 2 });
	canvas_text(c, (pt){ 330, 390 }, FACE_SANS_ITALIC, 12, STR("\xe2\x85\x9c in"));
	canvas_tag_end(c);
}

static void table(struct canvas *c)
{
	canvas_tag_begin(c, TAG_TABLE, STR(""));
	for (int row = 0; row < 3; row++) {
		canvas_tag_begin(c, TAG_ROW, STR(""));
		for (int col = 0; col < 2; col++) {
			rect r = { 90 + 120 * col, 500 + 24 * row, 120, 24 };

			canvas_tag_begin(c, row == 0 ? TAG_HEAD_CELL : TAG_CELL, STR(""));
			canvas_rect(c, r, &outline);
			canvas_text(c, (pt){ r.x + 6, r.y + 16 },
			    row == 0 ? FACE_SANS_BOLD : FACE_MONO, 11,
			    row == 0 ? STR("Leg") : STR("5/16 in"));
			canvas_tag_end(c);
		}
		canvas_tag_end(c);
	}
	canvas_tag_end(c);
}

static void list(struct canvas *c)
{
	canvas_tag_begin(c, TAG_LIST, STR(""));
	for (int i = 0; i < 2; i++) {
		canvas_tag_begin(c, TAG_ITEM, STR(""));
		canvas_text(c, (pt){ 108, 120 + 18 * i }, FACE_SANS, 12,
		    i == 0 ? STR("Grind the mill scale 1 in back.") :
		    STR("Stop, fit-up (see page 1)."));
		canvas_link(c, (rect){ 108, 108 + 18 * i, 150, 14 }, STR("SM-04"));
		canvas_tag_end(c);
	}
	canvas_tag_end(c);
}

/* Five by three pixels in all shades; the script knows them. Shown twice. */
static void image(struct canvas *c)
{
	static const uint8_t gray[15] = { 0, 17, 34, 51, 68, 85, 102, 119, 136, 153, 170, 187,
		204, 221, 255 };
	static const struct pixels p = { .width = 5, .height = 3, .gray = gray,
		.digest = { 1 } };

	canvas_tag_begin(c, TAG_FIGURE, STR("Fifteen squares, from black to white"));
	canvas_image(c, (rect){ 100, 300, 250, 150 }, &p);
	canvas_tag_end(c);
	canvas_tag_begin(c, TAG_ARTIFACT, STR(""));
	canvas_image(c, (rect){ 400, 300, 50, 30 }, &p);
	canvas_tag_end(c);
}

static void draw(struct canvas *c)
{
	canvas_tag_begin(c, TAG_DOCUMENT, STR(""));
	canvas_label(c, LABEL_ROMAN, STR(""), 1);
	canvas_page_begin(c, 612, 792);
	header(c, STR("Packet, page i"));
	heading(c, STR("Tee fillet 2F \xe2\x80\x93 ma\xc3\xb1""ana"), STR("SM-04"));
	paragraph(c, 120, FACE_SANS, 12, STR("Leg \xc2\xbd in, gap 0 to \xe2\x85\x9c in, "
	    "70\xc2\xb0 \xc2\xb1 5\xc2\xb0, 3 \xc3\x97 8, \xc3\x98 2, "
	    "\xe2\x89\xa4 1, \xe2\x89\xa5 2"));
	paragraph(c, 140, FACE_SANS_BOLD, 12, STR("Bold (with brackets) and \\ slash"));
	paragraph(c, 160, FACE_SANS_ITALIC, 12,
	    STR("Italic \xe2\x80\x94 the welder\xe2\x80\x99s words"));
	paragraph(c, 180, FACE_SANS_BOLD_ITALIC, 12,
	    STR("Bold italic: caf\xc3\xa9 se\xc3\xb1or"));
	paragraph(c, 200, FACE_MONO, 12, STR("Mono 0123456789 A36 plate"));
	paragraph(c, 220, FACE_MONO_BOLD, 12, STR("Mono bold E7018"));
	tee(c);
	table(c);
	canvas_page_end(c);
	canvas_label(c, LABEL_DECIMAL, STR("Q1-"), 1);
	canvas_page_begin(c, 612, 792);
	header(c, STR("Packet, page 1"));
	heading(c, STR("Procedure"), STR("steps"));
	list(c);
	canvas_outline(c, 1, STR("Fit-up"), STR("steps"));
	canvas_outline(c, 2, STR("Deeper"), STR("SM-04"));
	canvas_page_end(c);
	canvas_page_begin(c, 792, 612);
	heading(c, STR("Last"), STR("last"));
	image(c);
	canvas_page_end(c);
	canvas_tag_end(c);
}

int main(int argc, char **argv)
{
	const struct pdf_meta meta = {
		.title = STR("Quarter 1 \xe2\x80\x93 caf\xc3\xa9 & more"),
		.language = STR("en-US"), .subject = STR("Test <sheet>") };
	struct arena *a = arena_new(NULL, NULL);
	struct pdf *p = pdf_new(a, faces_new(a), &meta);
	FILE *f = argc == 2 ? fopen(argv[1], "wb") : NULL;
	str bytes;
	int error;

	draw(pdf_canvas(p));
	error = pdf_finish(p, a, &bytes);
	if (error || !f || fwrite(bytes.p, 1, bytes.n, f) != bytes.n || fclose(f) != 0) {
		fprintf(stderr, "pdf_driver: error %#x\n", (unsigned)error);
		return 1;
	}
	arena_free(a);
	return 0;
}
