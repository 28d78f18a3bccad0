/* Pictures: which files the folder has, and which of them a drawing shows. */
#include "model/drawing.h"

#include "base/buf.h"
#include "model/parts.h"

void pictures_begin(struct binder *b)
{
	struct model *m = b->model;
	const struct sources *s = m->sources;
	enum file_role role;
	size_t cap = 0;

	for (size_t i = 0; i < s->n; i++)
		if (file_role_of(s->v[i].path, &role) && role == ROLE_PICTURE)
			*ARENA_PUSH(b->arena, m->pictures, m->npictures, cap) =
			    (struct picture_file){ s->v[i].path, (uint32_t)i, 0, NULL };
}

void pictures_end(struct binder *b)
{
	const struct model *m = b->model;

	for (size_t i = 0; i < m->npictures; i++) {
		const struct picture_file *p = &m->pictures[i];

		if (!p->uses && m->nassignments)
			finding_repair(b->f, finding_add(b->f, FINDING_UNUSED_PICTURE,
			    (struct pos){ p->file, 0, 0 }, "no assignment shows this picture"),
			    "name it under ## Drawing with ![what it shows](../%.*s), or delete it",
			    STR_ARG(p->path));
	}
}

static int hex_value(char c)
{
	if (c >= '0' && c <= '9')
		return c - '0';
	if (c >= 'a' && c <= 'f')
		return c - 'a' + 10;
	return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

/* "%20" in an address stands for a blank. */
static str unescape(struct arena *a, str s)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < s.n; i++) {
		int hi = i + 2 < s.n && s.p[i] == '%' ? hex_value(s.p[i + 1]) : -1;
		int lo = hi < 0 ? -1 : hex_value(s.p[i + 2]);

		if (lo < 0 || hi * 16 + lo < ' ') {
			buf_addc(&b, s.p[i]);
			continue;
		}
		buf_addc(&b, (char)(hi * 16 + lo));
		i += 2;
	}
	return buf_str(&b);
}

/* The path from the program folder that an address in a file means; false when it leads
 * out of the folder. */
static bool resolve(struct arena *a, str from, str address, str *path)
{
	struct buf b = { .arena = a };
	size_t slash = from.n;
	str part;

	if (str_starts(address, STR("/")) || str_starts(address, STR("\\")) ||
	    str_find_char(address, ':', 0) < address.n)
		return false;
	while (slash > 0 && from.p[slash - 1] != '/')
		slash--;
	buf_add(&b, str_sub(from, 0, slash));
	while (str_next(&address, '/', &part)) {
		if (!part.n || str_eq(part, STR(".")))
			continue;
		if (!str_eq(part, STR(".."))) {
			buf_addf(&b, "%.*s/", STR_ARG(part));
			continue;
		}
		if (!b.n)
			return false;
		for (b.n--; b.n > 0 && b.p[b.n - 1] != '/';)
			b.n--;
	}
	*path = str_sub(buf_str(&b), 0, b.n ? b.n - 1 : 0);
	return true;
}

static struct picture_file *find_picture(const struct model *m, str path)
{
	for (size_t i = 0; i < m->npictures; i++)
		if (str_eq(m->pictures[i].path, path))
			return &m->pictures[i];
	return NULL;
}

static str file_name(str path)
{
	size_t slash = path.n;

	while (slash > 0 && path.p[slash - 1] != '/')
		slash--;
	return str_sub(path, slash, path.n);
}

static void complain_missing(struct binder *b, const struct block *v, str path)
{
	const struct model *m = b->model;
	str *names = arena_array(b->arena, m->npictures, sizeof *names);
	struct finding *d = complain(b, FINDING_MISSING_PICTURE, v->pos,
	    "there is no picture %.*s in the program folder; the sheet leaves room for a sketch",
	    STR_ARG(path));
	str likely;

	for (size_t i = 0; i < m->npictures; i++)
		names[i] = file_name(m->pictures[i].path);
	likely = likely_word(file_name(path), names, m->npictures);
	if (likely.n) {
		finding_repair(b->f, d, "write ../pictures/%.*s if that is what is meant",
		    STR_ARG(likely));
		finding_slip(b->f, d, d->pos, file_name(path), likely);
	} else if (path.n < 4 ||
	    !str_eq_nocase(str_sub(path, path.n - 4, path.n), STR(".png"))) {
		finding_repair(b->f, d, "save it as a PNG file in the folder pictures");
	} else {
		finding_repair(b->f, d, "put it into the folder pictures and write "
		    "../pictures/ before its name");
	}
}

/* Two words at least: a file name says nothing to one who cannot see the picture. */
static void check_words(struct binder *b, const struct block *v)
{
	str rest = v->text, word;

	if (str_word(&rest, &word) && str_word(&rest, &word))
		return;
	finding_repair(b->f, complain(b, FINDING_PICTURE_WITHOUT_WORDS, v->pos,
	    "this picture does not say in words what it shows"),
	    "write ![what it shows, in a sentence](%.*s)", STR_ARG(v->key));
}

void read_picture_block(struct binder *b, const struct block *v, struct drawing *out)
{
	str path, address = unescape(b->arena, v->key);
	str from = b->model->sources->v[v->pos.file].path;
	struct picture_file *p;

	out->kind = DRAWING_PICTURE;
	out->pos = v->pos;
	out->words = v->text;
	if (v->more->nspans)
		out->title = v->more->spans[0].text;
	check_words(b, v);
	if (!resolve(b->arena, from, address, &path)) {
		finding_repair(b->f, complain(b, FINDING_LINK_OUT, v->pos,
		    "\"%.*s\" leads out of the program folder; the sheet leaves room for a sketch",
		    STR_ARG(v->key)), "put the picture into the folder pictures and write "
		    "../pictures/ before its name");
		return;
	}
	p = find_picture(b->model, path);
	if (!p) {
		complain_missing(b, v, path);
		return;
	}
	b->picture_uses[p - b->model->pictures]++;
	out->picture = p;
}
