#include "out/pdf_font.h"

#include "base/fonts.h"
#include "out/pdf_text.h"

#include <hpdf.h>
#include <hpdf_fontdef.h>
#include <hpdf_streams.h>

#include <string.h>

/* Names as in the files' own name tables; flags and stem widths only help viewers that
 * have to replace a font, which an embedded one never needs (ISO 32000-1, table 123). */
static const struct {
	const char *name;
	int flags, angle, stem;
} faces_info[FACE_COUNT] = {
	[FACE_SANS] = { "FITUPA+IBMPlexSans", 32, 0, 80 },
	[FACE_SANS_BOLD] = { "FITUPB+IBMPlexSans-Bold", 32, 0, 140 },
	[FACE_SANS_ITALIC] = { "FITUPC+IBMPlexSans-Italic", 96, -12, 80 },
	[FACE_SANS_BOLD_ITALIC] = { "FITUPD+IBMPlexSans-BoldItalic", 96, -12, 140 },
	[FACE_MONO] = { "FITUPE+IBMPlexMono", 33, 0, 80 },
	[FACE_MONO_BOLD] = { "FITUPF+IBMPlexMono-Bold", 33, 0, 140 },
};

/* A font file in memory as the library reads it. */
struct reader {
	struct font_bytes bytes;
	size_t at;
};

static HPDF_STATUS reader_read(HPDF_Stream stream, HPDF_BYTE *p, HPDF_UINT *n)
{
	struct reader *r = stream->attr;
	size_t left = r->bytes.n - r->at, want = *n;

	if (want > left)
		want = left;
	memcpy(p, r->bytes.p + r->at, want);
	r->at += want;
	if (want < *n) {
		*n = (HPDF_UINT)want;
		return HPDF_STREAM_EOF;
	}
	return HPDF_OK;
}

static HPDF_STATUS reader_seek(HPDF_Stream stream, HPDF_INT pos, HPDF_WhenceMode mode)
{
	struct reader *r = stream->attr;
	long base = mode == HPDF_SEEK_SET ? 0 :
	    mode == HPDF_SEEK_CUR ? (long)r->at : (long)r->bytes.n;
	long to = base + pos;

	r->at = to < 0 ? 0 : (size_t)to > r->bytes.n ? r->bytes.n : (size_t)to;
	return HPDF_OK;
}

static HPDF_INT32 reader_tell(HPDF_Stream stream)
{
	return (HPDF_INT32)((struct reader *)stream->attr)->at;
}

static HPDF_UINT32 reader_size(HPDF_Stream stream)
{
	return (HPDF_UINT32)((struct reader *)stream->attr)->bytes.n;
}

static HPDF_STATUS buf_write(HPDF_Stream stream, const HPDF_BYTE *p, HPDF_UINT n)
{
	buf_add(stream->attr, (str){ (const char *)p, n });
	return HPDF_OK;
}

/* The library marks a glyph, and the parts it is made of, when its width is asked for. */
static void glyphs_choose(HPDF_FontDef def, const struct font_use *use)
{
	for (size_t g = 0; g < use->nglyphs; g++)
		if (use->code_point[g] > 0 && use->code_point[g] < 0x10000)
			HPDF_TTFontDef_GetCharWidth(def, (HPDF_UINT16)use->code_point[g]);
}

/* Lets the library write the glyphs that were drawn. */
static void subset_save(struct pdf *p, HPDF_FontDef def, HPDF_Stream to,
    struct pdf_font *f)
{
	char tag[HPDF_TTF_FONT_TAG_LEN + 1] = { 0 };

	memcpy(tag, faces_info[f->face].name, HPDF_TTF_FONT_TAG_LEN);
	HPDF_TTFontDef_SetTagName(def, tag);
	glyphs_choose(def, &p->content.fonts[f->face]);
	HPDF_TTFontDef_SaveFontData(def, to);
	f->box[0] = (int)def->font_bbox.left;
	f->box[1] = (int)def->font_bbox.bottom;
	f->box[2] = (int)def->font_bbox.right;
	f->box[3] = (int)def->font_bbox.top;
}

static void subset_make(struct pdf *p, HPDF_MMgr mmgr, struct pdf_font *f)
{
	struct reader r = { .bytes = font_bytes(f->face) };
	struct buf subset = { .arena = p->arena };
	HPDF_Stream in = HPDF_CallbackReader_New(mmgr, reader_read, reader_seek,
	    reader_tell, reader_size, &r);
	/* From here on `in` belongs to the font definition, also when loading fails. */
	HPDF_FontDef def = in ? HPDF_TTFontDef_Load(mmgr, in, HPDF_TRUE) : NULL;
	HPDF_Stream out = HPDF_CallbackWriter_New(mmgr, buf_write, &subset);

	if (def && out)
		subset_save(p, def, out, f);
	else
		pdf_fail(p, HPDF_FAILD_TO_ALLOC_MEM);
	if (def)
		HPDF_FontDef_Free(def);
	if (out)
		HPDF_Stream_Free(out);
	f->file_bytes = subset.n;
	f->file = pdf_pack(p, subset.p, subset.n);
}

/* ISO 32000-1, 9.10.3: at most 100 pairs in one block. */
static void unicode_write(const struct font_use *use, struct buf *b)
{
	size_t left = 0, in_block = 0;

	buf_adds(b, "/CIDInit/ProcSet findresource begin\n12 dict begin\nbegincmap\n"
	    "/CIDSystemInfo<</Registry(Adobe)/Ordering(UCS)/Supplement 0>>def\n"
	    "/CMapName/Adobe-Identity-UCS def\n/CMapType 2 def\n"
	    "1 begincodespacerange\n<0000><FFFF>\nendcodespacerange\n");
	for (size_t g = 0; g < use->nglyphs; g++)
		left += use->code_point[g] > 0;
	for (size_t g = 0; g < use->nglyphs; g++) {
		if (use->code_point[g] == 0)
			continue;
		if (in_block == 0) {
			in_block = left < 100 ? left : 100;
			left -= in_block;
			buf_addf(b, "%zu beginbfchar\n", in_block);
		}
		buf_addc(b, '<');
		text_hex16(b, (unsigned)g);
		buf_adds(b, "><");
		text_utf16(b, use->code_point[g]);
		buf_adds(b, ">\n");
		if (--in_block == 0)
			buf_adds(b, "endbfchar\n");
	}
	buf_adds(b, "endcmap\nCMapName currentdict/CMap defineresource pop\nend\nend\n");
}

void font_prepare(struct pdf *p, HPDF_MMgr mmgr, struct pdf_font *f)
{
	struct buf map = { .arena = p->arena };

	subset_make(p, mmgr, f);
	unicode_write(&p->content.fonts[f->face], &map);
	f->unicode = pdf_pack(p, map.p, map.n);
}

/* Widths of the glyphs drawn: /W[first[w w w]first[w]...]. */
static void widths_write(const struct pdf *p, enum face_id face, struct buf *b)
{
	const struct font_use *use = &p->content.fonts[face];
	bool open = false;

	buf_adds(b, "/DW 1000/W[");
	for (size_t g = 0; g < use->nglyphs; g++) {
		bool used = use->code_point[g] > 0;

		if (used) {
			if (!open)
				text_uint(b, (uint32_t)g);
			buf_addc(b, open ? ' ' : '[');
			text_uint(b, face_advance(p->content.faces, face, (uint16_t)g));
		} else if (open) {
			buf_addc(b, ']');
		}
		open = used;
	}
	buf_adds(b, open ? "]]\n" : "]\n");
}

static void descriptor_write(const struct pdf *p, const struct pdf_font *f, struct buf *b)
{
	const struct faces *faces = p->content.faces;

	buf_addf(b, "/Type/FontDescriptor/FontName/%s/Flags %d/FontBBox[%d %d %d %d]\n",
	    faces_info[f->face].name, faces_info[f->face].flags, f->box[0],
	    f->box[1], f->box[2], f->box[3]);
	buf_addf(b, "/ItalicAngle %d/Ascent %d/Descent %d/CapHeight %d/StemV %d"
	    "/FontFile2 %u 0 R\n", faces_info[f->face].angle,
	    (int)face_ascent_pt(faces, f->face, 1000),
	    -(int)face_descent_pt(faces, f->face, 1000),
	    (int)face_cap_height_pt(faces, f->face, 1000), faces_info[f->face].stem,
	    f->first_id + FONT_FILE);
}

void font_write(const struct pdf *p, const struct pdf_font *f, enum font_object which,
    struct buf *b)
{
	const char *name = faces_info[f->face].name;

	switch (which) {
	case FONT_TYPE0:
		buf_addf(b, "/Type/Font/Subtype/Type0/BaseFont/%s/Encoding/Identity-H"
		    "/DescendantFonts[%u 0 R]/ToUnicode %u 0 R\n", name,
		    f->first_id + FONT_CID, f->first_id + FONT_UNICODE);
		break;
	case FONT_CID:
		buf_addf(b, "/Type/Font/Subtype/CIDFontType2/BaseFont/%s/CIDSystemInfo"
		    "<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>"
		    "/CIDToGIDMap/Identity/FontDescriptor %u 0 R\n", name,
		    f->first_id + FONT_DESCRIPTOR);
		widths_write(p, f->face, b);
		break;
	case FONT_DESCRIPTOR:
		descriptor_write(p, f, b);
		break;
	case FONT_FILE:
		buf_addf(b, "/Filter/FlateDecode/Length1 %zu", f->file_bytes);
		break;
	case FONT_UNICODE:
		buf_adds(b, "/Filter/FlateDecode");
		break;
	case FONT_OBJECTS:
		break;
	}
}

str font_stream(const struct pdf_font *f, enum font_object which)
{
	if (which == FONT_FILE)
		return f->file;
	return which == FONT_UNICODE ? f->unicode : (str){ 0 };
}
