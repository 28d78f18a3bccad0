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

/* Files that a thread reads in one turn. */
enum { FILES_MOST = 200000, TURN = 4 };

/* A file seen while listing; reports wait until all files have their numbers. */
struct listed {
	str path;                /* relative, a zero byte behind it */
	enum file_role role;
	const char *fault;       /* why it is not read; null when it is */
	int error;               /* of the system, when that is why */
	enum finding_name name;
	str text;
};

struct listing {
	struct arena *arena, *const *own;
	const char *dir;
	char root[PATH_MAX];     /* dir with all links resolved */
	int fd;                  /* dir open */
	struct listed *v;
	size_t n, cap;
	bool full;
};

static const char *full_path(struct arena *a, const char *dir, str path)
{
	struct buf b = { .arena = a };

	buf_addf(&b, "%s/%.*s", dir, STR_ARG(path));
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

static void refuse(struct listed *e, enum finding_name name, const char *why)
{
	e->name = name;
	e->fault = why;
}

/* Its words are found later: threads may not ask for them. */
static void refuse_error(struct listed *e)
{
	e->name = FINDING_UNREADABLE_FILE;
	e->error = errno;
}

static void read_all(struct arena *a, struct listed *e, int fd, size_t size)
{
	char *p = arena_alloc(a, size + 1);
	size_t n = 0;

	while (n < size) {
		ssize_t got = read(fd, p + n, size - n);

		if (got < 0 && errno == EINTR)
			continue;
		if (got < 0)
			refuse_error(e);
		if (got <= 0)
			break;
		n += (size_t)got;
	}
	e->text = (str){ p, n };
	if (e->role != ROLE_PICTURE && str_starts(e->text, STR("\xEF\xBB\xBF")))
		e->text = str_sub(e->text, 3, n);
}

/* Resolving every path costs more than reading it; only a link can lead out, since the
 * folder assignments has been looked at by itself. -1: refused. */
static int open_entry(const struct listing *l, struct arena *a, struct listed *e)
{
	const int how = O_RDONLY | O_NONBLOCK | O_CLOEXEC;
	int fd = openat(l->fd, e->path.p, how | O_NOFOLLOW);

	if (fd < 0 && errno == ELOOP) {
		if (!inside(l, full_path(a, l->dir, e->path))) {
			refuse(e, FINDING_LINK_OUT, "it is a link that leads out of the program folder");
			return -1;
		}
		fd = openat(l->fd, e->path.p, how);
	}
	if (fd < 0)
		refuse_error(e);
	return fd;
}

static void read_entry(const struct listing *l, struct arena *a, struct listed *e)
{
	int fd = open_entry(l, a, e);
	struct stat st;

	if (fd < 0)
		return;
	if (fstat(fd, &st))
		refuse_error(e);
	else if (!S_ISREG(st.st_mode))
		refuse(e, FINDING_UNREADABLE_FILE, "it is not a plain file");
	else if (st.st_size > MD_FILE_MOST + 3)
		refuse(e, FINDING_OVER_LIMIT, "it is larger than 64 MiB");
	else
		read_all(a, e, fd, (size_t)st.st_size);
	close(fd);
}

/* A run of files. */
static void read_some(void *user, unsigned thread, size_t i)
{
	struct listing *l = user;

	for (size_t k = i * TURN; k < l->n && k < (i + 1) * TURN; k++)
		read_entry(l, l->own[thread], &l->v[k]);
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
	DIR *d = opendir(*sub ? full_path(l->arena, l->dir, str_of(sub)) : l->dir);

	if (!d)
		return false;
	for (struct dirent *de; (de = readdir(d));) {
		struct buf b = { .arena = l->arena };
		enum file_role role;
		str path;

		buf_adds(&b, sub);
		buf_adds(&b, *sub ? "/" : "");
		buf_adds(&b, de->d_name);
		path = (str){ buf_z(&b), b.n };

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
	enum finding_name name = inside(l, full_path(l->arena, l->dir, str_of(sub)))
	    ? FINDING_UNREADABLE_FILE : FINDING_LINK_OUT;

	if (name == FINDING_LINK_OUT)
		finding_add(f, name, (struct pos){ POS_NOWHERE, 0, 0 }, "the folder %s is a "
		    "link out of the program folder; nothing in it was read", sub);
	else if (!list_folder(l, sub) && errno != ENOENT)
		finding_add(f, name, (struct pos){ POS_NOWHERE, 0, 0 },
		    "the folder %s was not read: %s", sub, strerror(errno));
}

static void list_all(struct listing *l, struct findings *f)
{
	list_inner(l, "assignments", f);
	for (size_t i = 0; language_at(i); i++) {
		struct buf sub = { .arena = l->arena };

		buf_addf(&sub, "assignments/%.*s", STR_ARG(language_code(language_at(i))));
		list_inner(l, buf_z(&sub), f);
	}
	list_inner(l, "standards", f);
	list_inner(l, "pictures", f);
	if (l->n)
		qsort(l->v, l->n, sizeof *l->v, by_path);
}

static void read_listed(struct listing *l)
{
	pool_run(POOL_THREADS, (l->n + TURN - 1) / TURN, read_some, l);
	for (size_t i = 0; i < l->n; i++)
		if (l->v[i].error)
			l->v[i].fault = strerror(l->v[i].error);
}

bool folder_read(struct arena *a, struct arena *const own[POOL_THREADS], const char *dir,
    struct folder *out, struct findings *f)
{
	struct listing *l = arena_alloc(a, sizeof *l);

	l->arena = a;
	l->own = own;
	l->dir = dir;
	if (!realpath(dir, l->root) || !list_folder(l, "") ||
	    (l->fd = open(dir, O_RDONLY | O_DIRECTORY | O_CLOEXEC)) < 0)
		return false;
	list_all(l, f);
	read_listed(l);
	close(l->fd);
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
