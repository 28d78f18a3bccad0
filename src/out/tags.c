#include "out/tags.h"

#include "out/pdf_text.h"

#include <assert.h>

/* Structure types of our own use beside those of enum tag: a list item holds its
 * content in a body; a link is an element without a tag. */
enum { TYPE_BODY = TAG_ARTIFACT + 1, TYPE_LINK, TYPE_COUNT };

static const char *const types[TYPE_COUNT] = {
	[TAG_DOCUMENT] = "Document", [TAG_SECTION] = "Sect", [TAG_H1] = "H1",
	[TAG_H2] = "H2", [TAG_H3] = "H3", [TAG_P] = "P", [TAG_LIST] = "L",
	[TAG_ITEM] = "LI", [TAG_TABLE] = "Table", [TAG_ROW] = "TR",
	[TAG_HEAD_CELL] = "TH", [TAG_CELL] = "TD", [TAG_FIGURE] = "Figure",
	[TAG_SPAN] = "Span", [TAG_ARTIFACT] = "Artifact", [TYPE_BODY] = "LBody", [TYPE_LINK] = "Link",
};

/* The element that all others are in, told of or not. */
enum { TOP = 0 };

enum kid_kind { KID_ELEM, KID_PIECE, KID_LINK };

struct kid {
	enum kid_kind kind;
	uint32_t value;          /* element, piece number on its page, annotation */
	uint32_t page;           /* of a piece or annotation */
	uint32_t next;           /* kid of the same element, TAGS_NONE at the end */
};

struct elem {
	int type;
	uint32_t parent;         /* TAGS_NONE: the root */
	uint32_t first, last;    /* kids */
	str alt;
	bool other;              /* in the other language */
};

struct page_pieces {
	uint32_t first;          /* in pieces */
};

struct tags {
	struct arena *arena;
	str other;               /* "en-US" in a document in Spanish */
	struct elem root;
	struct elem *elems;
	size_t nelems, elems_cap;
	struct kid *kids;
	size_t nkids, kids_cap;
	uint32_t *stack;         /* open elements */
	size_t depth, stack_cap;
	int furniture;           /* open tags from the first TAG_ARTIFACT on */
	struct page_pieces *pages;
	size_t npages, pages_cap;
	uint32_t *pieces;        /* element of each piece, page after page */
	size_t npieces, pieces_cap;
	uint32_t *links;         /* element of each annotation, or TAGS_NONE */
	size_t nlinks, links_cap;
};

static struct elem *elem_at(struct tags *t, uint32_t i)
{
	return i == TAGS_NONE ? &t->root : &t->elems[i];
}

static void kid_add(struct tags *t, uint32_t parent, enum kid_kind kind, uint32_t value)
{
	struct elem *e = elem_at(t, parent);
	struct kid *k = ARENA_PUSH(t->arena, t->kids, t->nkids, t->kids_cap);
	uint32_t id = (uint32_t)(t->nkids - 1);

	*k = (struct kid){ .kind = kind, .value = value, .next = TAGS_NONE,
		.page = t->npages > 0 ? (uint32_t)(t->npages - 1) : 0 };
	if (e->last == TAGS_NONE)
		e->first = id;
	else
		t->kids[e->last].next = id;
	e->last = id;
}

static uint32_t elem_add(struct tags *t, int type, str alt)
{
	uint32_t id = (uint32_t)t->nelems, above = tags_current(t);
	uint32_t parent = above == TAGS_NONE && id > TOP ? TOP : above;
	struct elem *e = ARENA_PUSH(t->arena, t->elems, t->nelems, t->elems_cap);

	*e = (struct elem){ .type = type, .parent = parent, .first = TAGS_NONE,
		.last = TAGS_NONE };
	if (alt.n > 0)
		e->alt = str_copy(t->arena, alt);
	kid_add(t, parent, KID_ELEM, id);
	return id;
}

struct tags *tags_new(struct arena *a, str other)
{
	struct tags *t = arena_alloc(a, sizeof *t);

	t->arena = a;
	t->other = str_copy(a, other);
	t->root = (struct elem){ .parent = TAGS_NONE, .first = TAGS_NONE,
	    .last = TAGS_NONE };
	/* The tree of a tagged PDF has one element at its top (14.8.4.2). */
	elem_add(t, TAG_DOCUMENT, (str){ 0 });
	return t;
}

static void elem_open(struct tags *t, int type, str alt)
{
	uint32_t id = elem_add(t, type, alt);

	*ARENA_PUSH(t->arena, t->stack, t->depth, t->stack_cap) = id;
}

void tags_begin(struct tags *t, enum tag tag, str alt)
{
	if (tag == TAG_ARTIFACT || t->furniture > 0) {
		t->furniture++;
		return;
	}
	if (tag == TAG_DOCUMENT)
		*ARENA_PUSH(t->arena, t->stack, t->depth, t->stack_cap) = TOP;
	else
		elem_open(t, (int)tag, alt);
	if (tag == TAG_ITEM)
		elem_open(t, TYPE_BODY, (str){ 0 });
}

void tags_end(struct tags *t)
{
	if (t->furniture > 0) {
		t->furniture--;
		return;
	}
	assert(t->depth > 0);
	if (t->elems[t->stack[t->depth - 1]].type == TYPE_BODY)
		t->depth--;
	t->depth--;
}

void tags_other(struct tags *t)
{
	uint32_t depth = (uint32_t)t->depth;

	if (t->furniture > 0 || !depth)
		return;
	if (t->elems[t->stack[depth - 1]].type == TYPE_BODY)
		depth--;
	t->elems[t->stack[depth - 1]].other = true;
}

uint32_t tags_current(const struct tags *t)
{
	return t->furniture > 0 || t->depth == 0 ? TAGS_NONE : t->stack[t->depth - 1];
}

const char *tags_type(const struct tags *t, uint32_t elem)
{
	return types[t->elems[elem].type];
}

void tags_page_begin(struct tags *t)
{
	struct page_pieces *page;

	page = ARENA_PUSH(t->arena, t->pages, t->npages, t->pages_cap);
	page->first = (uint32_t)t->npieces;
}

unsigned tags_mark(struct tags *t, uint32_t elem)
{
	uint32_t mcid = (uint32_t)t->npieces - t->pages[t->npages - 1].first;

	*ARENA_PUSH(t->arena, t->pieces, t->npieces, t->pieces_cap) = elem;
	kid_add(t, elem, KID_PIECE, mcid);
	return mcid;
}

bool tags_link(struct tags *t, uint32_t link)
{
	uint32_t elem = TAGS_NONE;

	if (tags_current(t) != TAGS_NONE) {
		elem = elem_add(t, TYPE_LINK, (str){ 0 });
		kid_add(t, elem, KID_LINK, link);
	}
	*ARENA_PUSH(t->arena, t->links, t->nlinks, t->links_cap) = elem;
	return elem != TAGS_NONE;
}

uint32_t tags_count(const struct tags *t)
{
	return (uint32_t)t->nelems;
}

static uint32_t page_end(const struct tags *t, size_t page)
{
	return page + 1 < t->npages ? t->pages[page + 1].first : (uint32_t)t->npieces;
}

bool tags_page_marked(const struct tags *t, uint32_t page)
{
	return page_end(t, page) > t->pages[page].first;
}

static uint32_t page_id(const struct tag_ids *ids, uint32_t page)
{
	return ids->first_page + page * ids->page_step;
}

static void kid_write(const struct kid *k, uint32_t page, const struct tag_ids *ids,
    struct buf *b)
{
	if (k->kind == KID_ELEM)
		text_ref(b, ids->first_elem + k->value);
	else if (k->kind == KID_LINK)
		buf_addf(b, "<</Type/OBJR/Pg %u 0 R/Obj %u 0 R>>", page_id(ids, k->page),
		    ids->first_link + k->value);
	else if (k->page == page)
		text_uint(b, k->value);
	else
		buf_addf(b, "<</Type/MCR/Pg %u 0 R/MCID %u>>", page_id(ids, k->page),
		    k->value);
}

/* /K: one kid bare, more in an array. page: that of /Pg, which its pieces leave out. */
static void kids_write(const struct tags *t, const struct elem *e, uint32_t page,
    const struct tag_ids *ids, struct buf *b)
{
	bool many = e->first != e->last;

	if (e->first == TAGS_NONE)
		return;
	buf_adds(b, many ? "/K[" : "/K ");
	for (uint32_t i = e->first; i != TAGS_NONE; i = t->kids[i].next) {
		kid_write(&t->kids[i], page, ids, b);
		if (many && t->kids[i].next != TAGS_NONE)
			buf_addc(b, ' ');
	}
	if (many)
		buf_addc(b, ']');
}

static uint32_t first_piece_page(const struct tags *t, const struct elem *e)
{
	for (uint32_t i = e->first; i != TAGS_NONE; i = t->kids[i].next)
		if (t->kids[i].kind == KID_PIECE)
			return t->kids[i].page;
	return TAGS_NONE;
}

void tags_write_elem(const struct tags *t, uint32_t i, const struct tag_ids *ids,
    struct buf *b)
{
	const struct elem *e = &t->elems[i];
	uint32_t page = first_piece_page(t, e);

	buf_adds(b, "/S/");
	buf_adds(b, types[e->type]);
	buf_adds(b, "/P ");
	text_ref(b, e->parent == TAGS_NONE ? ids->root : ids->first_elem + e->parent);
	if (page != TAGS_NONE) {
		buf_adds(b, "/Pg ");
		text_ref(b, page_id(ids, page));
	}
	if (e->type == TAG_HEAD_CELL)
		buf_adds(b, "/A<</O/Table/Scope/Column>>");
	if (e->other && t->other.n)
		buf_addf(b, "/Lang(%.*s)", STR_ARG(t->other));
	if (e->alt.n > 0) {
		buf_adds(b, "/Alt");
		text_string(b, e->alt);
	}
	kids_write(t, e, page, ids, b);
	buf_addc(b, '\n');
}

void tags_write_root(const struct tags *t, const struct tag_ids *ids, struct buf *b)
{
	buf_adds(b, "/Type/StructTreeRoot");
	kids_write(t, &t->root, TAGS_NONE, ids, b);
	buf_addf(b, "/ParentTreeNextKey %zu\n", t->npages + t->nlinks);
}

void tags_write_parents(const struct tags *t, const struct tag_ids *ids, struct buf *b)
{
	buf_adds(b, "/Nums[");
	for (size_t page = 0; page < t->npages; page++) {
		uint32_t end = page_end(t, page);

		if (end == t->pages[page].first)
			continue;
		text_uint(b, (uint32_t)page);
		buf_addc(b, '[');
		for (uint32_t i = t->pages[page].first; i < end; i++) {
			text_ref(b, ids->first_elem + t->pieces[i]);
			buf_addc(b, i + 1 < end ? ' ' : ']');
		}
		buf_addc(b, '\n');
	}
	for (size_t i = 0; i < t->nlinks; i++)
		if (t->links[i] != TAGS_NONE)
			buf_addf(b, "%zu %u 0 R\n", t->npages + i,
			    ids->first_elem + t->links[i]);
	buf_adds(b, "]\n");
}
