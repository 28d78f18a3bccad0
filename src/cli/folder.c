#define _XOPEN_SOURCE 700
#include "cli/folder.h"

#include "base/buf.h"
#include "base/language.h"
#include "draw/face.h"
#include "read/lines.h"
#include "read/md.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { FILES_MOST = 200000 };

/* A file seen while listing; reports wait until all files have their numbers. */
struct listed {
	str path;                /* relative */
	enum file_role role;
	const char *fault;       /* why it is not read; null when it is */
	enum finding_name name;
	str text;
};

struct listing {
	struct arena *arena;
	const char *dir;
	char root[PATH_MAX];     /* dir with all links resolved */
	struct listed *v;
	size_t n, cap;
	bool full;
};

static const char *full_path(struct listing *l, str path)
{
	struct buf b = { .arena = l->arena };

	buf_addf(&b, "%s/%.*s", l->dir, STR_ARG(path));
	return buf_z(&b);
}

static bool inside(const struct listing *l, const char *path)
{
	char real[PATH_MAX];
	size_t n = strlen(l->root);

	if (!realpath(path, real))
		return true; /* Broken: opening it reports that. */
	return !strncmp(real, l->root, n) && (real[n] == '/' || !real[n] || n == 1);
}

/* Resolving every path costs more than reading it; only a link can lead out, since the
 * folder assignments has been looked at by itself. */
static bool is_link(const char *path)
{
	struct stat st;

	return !lstat(path, &st) && S_ISLNK(st.st_mode);
}

static void refuse(struct listed *e, enum finding_name name, const char *why)
{
	e->name = name;
	e->fault = why;
}

static void read_all(struct listing *l, struct listed *e, int fd, size_t size)
{
	char *p = arena_alloc(l->arena, size + 1);
	size_t n = 0;

	while (n < size) {
		ssize_t got = read(fd, p + n, size - n);

		if (got < 0 && errno == EINTR)
			continue;
		if (got < 0) {
			refuse(e, FINDING_UNREADABLE_FILE, strerror(errno));
			return;
		}
		if (!got)
			break;
		n += (size_t)got;
	}
	e->text = (str){ p, n };
	if (e->role != ROLE_PICTURE && str_starts(e->text, STR("\xEF\xBB\xBF")))
		e->text = str_sub(e->text, 3, n);
}

static void read_entry(struct listing *l, struct listed *e)
{
	const char *path = full_path(l, e->path);
	struct stat st;
	int fd;

	if (is_link(path) && !inside(l, path)) {
		refuse(e, FINDING_LINK_OUT, "it is a link that leads out of the program folder");
		return;
	}
	fd = open(path, O_RDONLY | O_NONBLOCK | O_CLOEXEC);
	if (fd < 0 || fstat(fd, &st)) {
		refuse(e, FINDING_UNREADABLE_FILE, strerror(errno));
	} else if (!S_ISREG(st.st_mode)) {
		refuse(e, FINDING_UNREADABLE_FILE, "it is not a plain file");
	} else if (st.st_size > MD_FILE_MOST + 3) {
		refuse(e, FINDING_OVER_LIMIT, "it is larger than 64 MiB");
	} else {
		read_all(l, e, fd, (size_t)st.st_size);
	}
	if (fd >= 0)
		close(fd);
}

static struct listed *add_entry(struct listing *l, str path)
{
	struct listed *e = ARENA_PUSH(l->arena, l->v, l->n, l->cap);

	e->path = path;
	return e;
}

/* Lists one folder; "" is the program folder itself. */
static bool list_folder(struct listing *l, const char *sub)
{
	DIR *d = opendir(*sub ? full_path(l, str_of(sub)) : l->dir);

	if (!d)
		return false;
	for (struct dirent *de; (de = readdir(d));) {
		str path = *sub ? str_format(l->arena, "%s/%s", sub, de->d_name)
		                : str_format(l->arena, "%s", de->d_name);
		enum file_role role;

		if (!file_role_of(path, &role))
			continue;
		if (l->n == FILES_MOST) {
			l->full = true;
			break;
		}
		add_entry(l, path)->role = role;
	}
	closedir(d);
	return true;
}

static int by_path(const void *x, const void *y)
{
	const struct listed *a = x, *b = y;

	return str_cmp(a->path, b->path);
}

static void report(struct listing *l, struct findings *f)
{
	for (size_t i = 0; i < l->n; i++) {
		const struct listed *e = &l->v[i];
		struct finding *d;

		if (!e->fault || e->role == ROLE_PICTURE)
			continue;
		d = finding_add(f, e->name, (struct pos){ (uint32_t)i, 0, 0 },
		    "this file was not read: %s", e->fault);
		finding_repair(f, d, "%s", e->name == FINDING_LINK_OUT
		    ? "copy the file into the folder in place of the link"
		    : e->name == FINDING_OVER_LIMIT ? "split it" : "make it readable, then run fitup again");
	}
	if (l->full)
		finding_add(f, FINDING_OVER_LIMIT, (struct pos){ POS_NOWHERE, 0, 0 },
		    "the folder holds more than 200,000 files; the rest was not read");
}

static void report_missing(const struct listing *l, struct findings *f)
{
	static const struct { enum file_role role; const char *name, *without; } owed[] = {
		{ ROLE_PROGRAM, "program.md", "there is no sequence" },
		{ ROLE_SKILLS, "skills.md", "no skill is known" },
	};

	for (size_t k = 0; k < sizeof owed / sizeof *owed; k++) {
		bool there = false;
		struct finding *d;

		for (size_t i = 0; i < l->n; i++)
			there |= l->v[i].role == owed[k].role;
		if (there)
			continue;
		d = finding_add(f, FINDING_MISSING_FILE, (struct pos){ POS_NOWHERE, 0, 0 },
		    "%s is not in the folder, so %s", owed[k].name, owed[k].without);
		d->scope = SCOPE_PROGRAM;
		finding_repair(f, d, "add %s", owed[k].name);
	}
}

/* A name as it can be shown and put in JSON: what is no UTF-8, or a control character
 * that could steer a terminal, as \xHH. */
static str shown_name(struct arena *a, str path)
{
	static const char hex[] = "0123456789ABCDEF";
	struct buf b = { .arena = a };

	while (path.n) {
		str rest = path;
		unsigned char c = (unsigned char)path.p[0];
		bool whole = lines_bad_byte(path) > 0;

		if (whole && c != '\t' && c != '\n' && c != '\r' && !lines_control(path, 0)) {
			utf8_next(&rest);
			buf_add(&b, (str){ path.p, path.n - rest.n });
		} else {
			rest = str_sub(path, 1, path.n);
			buf_addf(&b, "\\x%c%c", hex[c >> 4], hex[c & 15]);
		}
		path = rest;
	}
	return buf_str(&b);
}

static void number_files(struct listing *l, struct folder *out)
{
	out->sources.v = arena_array(l->arena, l->n, sizeof *out->sources.v);
	out->sources.n = l->n;
	out->roles = arena_array(l->arena, l->n, sizeof *out->roles);
	out->readable = arena_array(l->arena, l->n, sizeof *out->readable);
	out->faults = arena_array(l->arena, l->n, sizeof *out->faults);
	for (size_t i = 0; i < l->n; i++) {
		out->sources.v[i] = (struct source){ shown_name(l->arena, l->v[i].path),
			l->v[i].text };
		out->roles[i] = l->v[i].role;
		out->faults[i] = l->v[i].fault;
		out->readable[i] = !l->v[i].fault;
	}
}

/* Lists a folder in the program folder; one that is not there is no fault. */
static void list_inner(struct listing *l, const char *sub, struct findings *f)
{
	enum finding_name name = inside(l, full_path(l, str_of(sub)))
	    ? FINDING_UNREADABLE_FILE : FINDING_LINK_OUT;

	if (name == FINDING_LINK_OUT)
		finding_add(f, name, (struct pos){ POS_NOWHERE, 0, 0 }, "the folder %s is a "
		    "link out of the program folder; nothing in it was read", sub);
	else if (!list_folder(l, sub) && errno != ENOENT)
		finding_add(f, name, (struct pos){ POS_NOWHERE, 0, 0 },
		    "the folder %s was not read: %s", sub, strerror(errno));
}

bool folder_read(struct arena *a, const char *dir, struct folder *out, struct findings *f)
{
	struct listing *l = arena_alloc(a, sizeof *l);

	l->arena = a;
	l->dir = dir;
	if (!realpath(dir, l->root) || !list_folder(l, ""))
		return false;
	list_inner(l, "assignments", f);
	for (size_t i = 0; language_at(i); i++) {
		struct buf sub = { .arena = a };

		buf_addf(&sub, "assignments/%.*s", STR_ARG(language_code(language_at(i))));
		list_inner(l, buf_z(&sub), f);
	}
	list_inner(l, "standards", f);
	list_inner(l, "pictures", f);
	if (l->n)
		qsort(l->v, l->n, sizeof *l->v, by_path);
	for (size_t i = 0; i < l->n; i++)
		read_entry(l, &l->v[i]);
	report(l, f);
	report_missing(l, f);
	number_files(l, out);
	return true;
}

const char *folder_default(void)
{
	if (!access("program.md", F_OK))
		return ".";
	return access("curriculum/program.md", F_OK) ? NULL : "curriculum";
}
