#include "read/md.h"

#include "base/buf.h"
#include "read/inline.h"
#include "read/lines.h"
#include "read/plain.h"

/* Lists nested deeper than this have no meaning on any sheet. */
enum { DEPTH_MOST = 4 };

struct reader {
	struct arena *arena;
	struct lines lines;
	struct findings *f;
	struct block *v;
	size_t n, cap;
	bool begun;              /* a level-1 heading was seen */
	bool told_no_heading;
	size_t line0, line_end;  /* lines before and past the stretch that cmark reads */
	uint8_t *covered;        /* by line of that stretch: some block accounts for it */
	unsigned depth;          /* of lists around the current node */
	uint32_t numbers[DEPTH_MOST + 1]; /* of the current item, by depth */
};

static size_t line_of(const struct reader *r, cmark_node *n)
{
	int line = cmark_node_get_start_line(n);

	return r->line0 + (line > 0 ? (size_t)line : 1);
}

static size_t last_line_of(const struct reader *r, cmark_node *n)
{
	return r->line0 + (size_t)cmark_node_get_end_line(n);
}

static size_t column_byte(cmark_node *n)
{
	int col = cmark_node_get_start_column(n);

	return col > 0 ? (size_t)col - 1 : 0;
}

static struct pos node_pos(const struct reader *r, cmark_node *n)
{
	return lines_pos(&r->lines, line_of(r, n), column_byte(n));
}

static void cover(struct reader *r, cmark_node *n)
{
	size_t last = last_line_of(r, n);

	for (size_t line = line_of(r, n); line <= last && line < r->line_end; line++)
		r->covered[line - r->line0 - 1] = 1;
}

static void reject(struct reader *r, cmark_node *n, enum finding_name name, const char *what,
    const char *repair)
{
	struct finding *d;

	cover(r, n);
	d = finding_add(r->f, name, node_pos(r, n), "%s has no meaning here; it is left out", what);
	finding_repair(r->f, d, "%s", repair);
}

/* A new block, unless nothing says yet what the file is: then one finding. */
static struct block *push(struct reader *r, cmark_node *n, enum block_kind kind)
{
	struct block *b;

	cover(r, n);
	if (!r->begun) {
		if (!r->told_no_heading) {
			struct finding *d = finding_add(r->f, FINDING_NO_HEADING, node_pos(r, n),
			    "the file does not begin with a heading; what stands before the "
			    "first `# ` heading is left out");

			finding_repair(r->f, d, "begin the file with a line such as "
			    "`# SM-20: Title`");
		}
		r->told_no_heading = true;
		return NULL;
	}
	b = ARENA_PUSH(r->arena, r->v, r->n, r->cap);
	b->kind = kind;
	b->pos = node_pos(r, n);
	b->level = r->depth;
	return b;
}

static void add_line(struct reader *r, struct block_more *m, struct text_line *v,
    struct buf *joined, size_t line, size_t from)
{
	str s = lines_at(&r->lines, line);
	str part = str_trim(str_sub(s, from, s.n));

	if (!part.n)
		return;
	if (joined->n)
		buf_addc(joined, ' ');
	v[m->nlines++] = (struct text_line){ (uint32_t)joined->n,
		lines_pos(&r->lines, line, (size_t)(part.p - s.p)) };
	buf_add(joined, part);
}

/* The source text of a paragraph: a slice when it is one line, else joined. */
static str take_text(struct reader *r, cmark_node *n, struct block_more *m)
{
	size_t first = line_of(r, n), last = last_line_of(r, n);
	str s = lines_at(&r->lines, first), text;
	struct buf joined = { .arena = r->arena };
	struct text_line *v;

	if (last < first)
		last = first;
	if (last > r->lines.n)
		last = r->lines.n;
	v = arena_array(r->arena, last - first + 1, sizeof *v);
	m->lines = v;
	if (last == first) {
		text = str_trim(str_sub(s, column_byte(n), s.n));
		v[0].pos = lines_pos(&r->lines, first, (size_t)(text.p - s.p));
		m->nlines = text.n ? 1 : 0;
		return text;
	}
	add_line(r, m, v, &joined, first, column_byte(n));
	for (size_t line = first + 1; line <= last; line++)
		add_line(r, m, v, &joined, line, 0);
	return buf_str(&joined);
}

static void take_spans(struct reader *r, cmark_node *n, const struct block *b,
    struct block_more *m)
{
	struct spans s = inline_flatten(r->arena, n, b->text, b->pos, r->f).spans;

	m->spans = s.v;
	m->nspans = s.n;
}

/* Makes a bullet of several lines or styled words a fact: leaves in text only the
 * value, its places shifted along. */
static void keep_value(struct reader *r, struct block *b, struct block_more *m, str key,
    size_t from)
{
	struct text_line *v = arena_array(r->arena, m->nlines, sizeof *v);
	uint32_t kept = 0;

	b->kind = BLOCK_FACT;
	b->key = key;
	m->key_pos = block_pos(b, (size_t)(key.p - b->text.p));
	for (uint32_t i = 0; i < m->nlines; i++) {
		size_t next = i + 1 < m->nlines ? m->lines[i + 1].offset : b->text.n + 1;
		size_t at = m->lines[i].offset > from ? m->lines[i].offset : from;

		if (next <= from)
			continue;
		v[kept++] = (struct text_line){ (uint32_t)(at - from), block_pos(b, at) };
	}
	b->text = str_sub(b->text, from, b->text.n);
	m->lines = v;
	m->nlines = kept;
}

static bool is_table(str text)
{
	return str_starts(text, STR("|"));
}

/* The picture that a paragraph consists of, or null. */
static cmark_node *only_picture(cmark_node *paragraph)
{
	cmark_node *first = cmark_node_first_child(paragraph);

	return first && !cmark_node_next(first) &&
	    cmark_node_get_type(first) == CMARK_NODE_IMAGE ? first : NULL;
}

static void read_picture(struct reader *r, cmark_node *paragraph, cmark_node *picture)
{
	struct block *b = push(r, paragraph, BLOCK_PICTURE);
	struct text_line *one = arena_alloc(r->arena, sizeof *one);
	struct block_more *more = arena_alloc(r->arena, sizeof *more);
	const char *url = cmark_node_get_url(picture), *title = cmark_node_get_title(picture);
	struct span *span;

	if (!b)
		return;
	one->pos = more->key_pos = b->pos;
	more->lines = one;
	more->nlines = 1;
	b->more = more;
	b->key = str_copy(r->arena, str_of(url ? url : ""));
	b->text = inline_flatten(r->arena, picture, (str){ 0 }, b->pos, r->f).plain;
	if (!title || !*title)
		return;
	span = arena_alloc(r->arena, sizeof *span);
	span->text = str_copy(r->arena, str_of(title));
	more->spans = span;
	more->nspans = 1;
}

static void read_paragraph(struct reader *r, cmark_node *n)
{
	cmark_node *item = cmark_node_parent(n);
	bool lead = cmark_node_get_type(item) == CMARK_NODE_ITEM &&
	    cmark_node_first_child(item) == n;
	bool ordered = lead &&
	    cmark_node_get_list_type(cmark_node_parent(item)) == CMARK_ORDERED_LIST;
	struct block_more *m;
	struct block *b;
	size_t value;
	str key;

	if (is_table(str_sub(lines_at(&r->lines, line_of(r, n)), column_byte(n), SIZE_MAX))) {
		reject(r, n, FINDING_NOT_UNDERSTOOD, "a table", "write one bullet a row");
		return;
	}
	if (!lead && only_picture(n)) {
		read_picture(r, n, only_picture(n));
		return;
	}
	b = push(r, n, !lead ? BLOCK_PARA : ordered ? BLOCK_STEP : BLOCK_BULLET);
	if (!b)
		return;
	b->more = m = arena_alloc(r->arena, sizeof *m);
	b->text = take_text(r, n, m);
	b->number = ordered ? r->numbers[r->depth] : 0;
	take_spans(r, n, b, m);
	key = b->kind == BLOCK_BULLET ? fact_key(b->text, &value) : (str){ 0 };
	if (key.p)
		keep_value(r, b, m, key, value);
}

/* "## Title ##" and underlined titles; the text is what CommonMark makes of it. */
static void read_heading(struct reader *r, cmark_node *n)
{
	unsigned level = (unsigned)cmark_node_get_heading_level(n);
	size_t line = line_of(r, n), at = column_byte(n);
	str s = lines_at(&r->lines, line);
	struct text_line *one = arena_alloc(r->arena, sizeof *one);
	struct block_more *m = arena_alloc(r->arena, sizeof *m);
	struct block *b;
	struct flat flat;

	r->begun |= level == 1;
	b = push(r, n, BLOCK_HEADING);
	if (!b)
		return;
	while (at < s.n && (s.p[at] == '#' || s.p[at] == ' ' || s.p[at] == '\t'))
		at++;
	b->pos = lines_pos(&r->lines, line, at);
	b->level = level;
	flat = inline_flatten(r->arena, n, str_trim(str_sub(s, at, s.n)), b->pos, r->f);
	b->text = flat.plain;
	one->pos = b->pos;
	*m = (struct block_more){ .lines = one, .nlines = 1, .spans = flat.spans.v,
		.nspans = flat.spans.n };
	b->more = m;
}

static void read_fence(struct reader *r, cmark_node *n)
{
	struct block *b = push(r, n, BLOCK_FENCE);
	struct block_more *m;
	size_t line = line_of(r, n), at = column_byte(n);
	str raw = lines_at(&r->lines, line);
	const char *info = cmark_node_get_fence_info(n);
	bool fenced = at < raw.n && (raw.p[at] == '`' || raw.p[at] == '~');

	if (!b)
		return;
	b->key = str_trim(str_copy(r->arena, str_of(info ? info : "")));
	b->more = m = arena_alloc(r->arena, sizeof *m);
	m->key_pos = b->pos;
	b->text = str_copy(r->arena, str_of(cmark_node_get_literal(n)));
	if (str_ends(b->text, STR("\n")))
		b->text.n--;
	fence_lines(r->arena, &r->lines, b, m, line + fenced);
}

static void enter_list(struct reader *r, cmark_node *n)
{
	r->depth++;
	r->numbers[r->depth] = (uint32_t)cmark_node_get_list_start(n) - 1;
}

static void enter_item(struct reader *r, cmark_node *n)
{
	r->numbers[r->depth]++;
	if (!cmark_node_first_child(n))
		reject(r, n, FINDING_NOT_UNDERSTOOD, "an empty list item", "fill it in or delete it");
}

/* Handles one node; true: its children need not be visited. */
static bool enter_block(struct reader *r, cmark_node *n)
{
	switch (cmark_node_get_type(n)) {
	case CMARK_NODE_LIST:
		if (r->depth == DEPTH_MOST) {
			reject(r, n, FINDING_NOT_UNDERSTOOD, "a list nested this deep",
			    "use fewer levels");
			return true;
		}
		enter_list(r, n);
		return false;
	case CMARK_NODE_ITEM:
		enter_item(r, n);
		return false;
	case CMARK_NODE_PARAGRAPH:
		read_paragraph(r, n);
		return true;
	case CMARK_NODE_HEADING:
		read_heading(r, n);
		return true;
	case CMARK_NODE_CODE_BLOCK:
		read_fence(r, n);
		return true;
	case CMARK_NODE_HTML_BLOCK:
		reject(r, n, FINDING_RAW_HTML, "raw HTML", "say it in words");
		return true;
	case CMARK_NODE_BLOCK_QUOTE:
		reject(r, n, FINDING_NOT_UNDERSTOOD, "a quoted block", "write it without `>`");
		return true;
	case CMARK_NODE_THEMATIC_BREAK:
		cover(r, n);
		return true;
	default:
		return false;
	}
}

static void walk(struct reader *r, cmark_node *document)
{
	cmark_iter *it = cmark_iter_new(document);

	for (cmark_event_type ev; (ev = cmark_iter_next(it)) != CMARK_EVENT_DONE;) {
		cmark_node *n = cmark_iter_get_node(it);

		if (ev == CMARK_EVENT_EXIT) {
			if (cmark_node_get_type(n) == CMARK_NODE_LIST)
				r->depth--;
		} else if (enter_block(r, n) && cmark_node_first_child(n)) {
			cmark_iter_reset(it, n, CMARK_EVENT_EXIT);
		}
	}
	cmark_iter_free(it);
}

/* CommonMark swallows link definitions; nothing may vanish without a word. */
static void report_uncovered(struct reader *r)
{
	for (size_t line = r->line0 + 1; line < r->line_end; line++) {
		struct finding *d;

		if (r->covered[line - r->line0 - 1] || !str_trim(lines_at(&r->lines, line)).n)
			continue;
		d = finding_add(r->f, FINDING_NOT_UNDERSTOOD, lines_pos(&r->lines, line, 0),
		    "this line prints nothing; it is left out");
		finding_repair(r->f, d, "write the address where it is to be read, or delete it");
	}
}

static bool over_limit(const struct source *src, uint32_t file, struct findings *f)
{
	struct finding *d;

	if (src->text.n <= MD_FILE_MOST)
		return false;
	d = finding_add(f, FINDING_OVER_LIMIT, (struct pos){ file, 0, 0 },
	    "the file is larger than 64 MiB; nothing in it was read");
	finding_repair(f, d, "split it");
	return true;
}

static void report_empty(const struct lines *l, struct findings *f)
{
	struct finding *d = finding_add(f, FINDING_EMPTY_FILE,
	    (struct pos){ l->file, 1, 1 }, "the file holds nothing");

	finding_repair(f, d, "fill it in or delete it");
}

/* Lines [first, end). */
static void read_by_cmark(struct reader *r, size_t first, size_t end)
{
	const uint32_t *starts = r->lines.starts;
	cmark_node *document = cmark_parse_document(r->lines.text.p + starts[first - 1],
	    starts[end - 1] - starts[first - 1], CMARK_OPT_SOURCEPOS);

	r->line0 = first - 1;
	r->line_end = end;
	r->covered = arena_array(r->arena, end - first, 1);
	walk(r, document);
	cmark_node_free(document);
	report_uncovered(r);
}

/* Nothing counts before the level-1 heading; cmark's way reports that. */
static void read_stretch(struct reader *r, size_t first, size_t end)
{
	struct blocks plain = { r->arena, &r->lines, r->v, r->n, r->cap };
	bool begins = str_starts(lines_at(&r->lines, first), STR("# "));

	if ((r->begun || begins) && plain_read(&plain, first, end)) {
		r->v = plain.v;
		r->n = plain.n;
		r->cap = plain.cap;
		r->begun = true;
	} else if (first < end) {
		read_by_cmark(r, first, end);
	}
}

/* Stretch by stretch, each from its heading: the plain ones line by line, the others by
 * cmark. Lines [first, end), which hold the cuts [cut, last). */
static void read_stretches(struct reader *r, size_t first, size_t end, const uint32_t *cuts,
    size_t cut, size_t last)
{
	for (; cut < last; cut++) {
		read_stretch(r, first, cuts[cut]);
		first = cuts[cut];
	}
	read_stretch(r, first, end);
}

/* ---- a text and its parts ---- */

struct md_text {
	struct lines lines;      /* none: nothing in the text is read */
	bool cuttable;
	struct plain_cuts cuts;
	size_t *parts, nparts, parts_cap; /* index of each part's first cut; 0 begins the text */
};

static bool is_level_1(const struct lines *l, size_t line)
{
	return str_starts(lines_at(l, line), STR("# "));
}

static void find_parts(struct arena *a, struct md_text *t, size_t part)
{
	const uint32_t *starts = t->lines.starts;
	size_t from = 0;

	*ARENA_PUSH(a, t->parts, t->nparts, t->parts_cap) = 0;
	for (size_t i = 1; part && i < t->cuts.n; i++) {
		size_t at = starts[t->cuts.v[i] - 1];

		if (at - from < part || !is_level_1(&t->lines, t->cuts.v[i]))
			continue;
		*ARENA_PUSH(a, t->parts, t->nparts, t->parts_cap) = i;
		from = at;
	}
}

static struct md_text *open_text(struct arena *a, const struct source *src, uint32_t file,
    struct findings *f)
{
	struct md_text *t = arena_alloc(a, sizeof *t);

	t->lines.file = file;
	if (over_limit(src, file, f))
		return t;
	t->lines = lines_split(a, src->text, file);
	if (!lines_clean(a, &t->lines, f)) {
		t->lines = (struct lines){ .file = file };
	} else if (!str_trim(t->lines.text).n) {
		report_empty(&t->lines, f);
		t->lines = (struct lines){ .file = file };
	}
	return t;
}

struct md_text *md_open(struct arena *a, const struct source *src, uint32_t file,
    size_t part, struct findings *f)
{
	struct md_text *t = open_text(a, src, file, f);

	if (!t->lines.n)
		return t;
	t->cuttable = cuts_find(a, &t->lines, &t->cuts);
	find_parts(a, t, part);
	return t;
}

size_t md_parts(const struct md_text *t)
{
	return t->nparts;
}

static struct reader reader_for(struct arena *a, const struct lines *l, size_t first,
    size_t end, struct findings *f)
{
	struct reader r = { .arena = a, .lines = *l, .f = f };

	r.cap = lines_filled(l, first, end);
	r.v = arena_array(a, r.cap, sizeof *r.v);
	return r;
}

struct record_file md_read_part(struct arena *a, const struct md_text *t, size_t i,
    struct findings *f)
{
	const uint32_t *cuts = t->cuts.v;
	size_t from = t->parts[i], to = i + 1 < t->nparts ? t->parts[i + 1] : t->cuts.n;
	size_t first = i ? cuts[from] : 1, end = i + 1 < t->nparts ? cuts[to] : t->lines.n + 1;
	struct reader r = reader_for(a, &t->lines, first, end, f);

	if (t->cuttable)
		read_stretches(&r, first, end, cuts, from, to);
	else
		read_by_cmark(&r, first, end);
	return record_file_of(a, t->lines.file, r.v, r.n);
}

struct record_file md_read(struct arena *a, const struct source *src, uint32_t file,
    struct findings *f)
{
	const struct md_text *t = md_open(a, src, file, 0, f);

	return t->nparts ? md_read_part(a, t, 0, f) : (struct record_file){ .file = file };
}

struct record_file md_read_whole(struct arena *a, const struct source *src, uint32_t file,
    struct findings *f)
{
	const struct md_text *t = open_text(a, src, file, f);
	struct reader r;

	if (!t->lines.n)
		return (struct record_file){ .file = file };
	r = reader_for(a, &t->lines, 1, t->lines.n + 1, f);
	read_by_cmark(&r, 1, t->lines.n + 1);
	return record_file_of(a, file, r.v, r.n);
}
