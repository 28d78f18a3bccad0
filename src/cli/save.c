#include "cli/save.h"

#include "base/buf.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* The list of printed files; hidden, since it is no document. */
#define LIST_NAME ".fitup-printed"

static const char *join(struct arena *a, const char *dir, str name)
{
	struct buf b = { .arena = a };

	buf_addf(&b, "%s/%.*s", dir, STR_ARG(name));
	return buf_z(&b);
}

bool save_all(int fd, str bytes)
{
	while (bytes.n) {
		ssize_t n = write(fd, bytes.p, bytes.n);

		if (n < 0 && errno == EINTR)
			continue;
		if (n < 0)
			return false;
		bytes = str_sub(bytes, (size_t)n, bytes.n);
	}
	return true;
}

/* Makes every folder on the way to path's last part. */
static bool make_folders(struct arena *a, const char *path)
{
	char *p = arena_copy(a, path, strlen(path));

	for (char *s = p + 1; (s = strchr(s, '/')); s++) {
		*s = 0;
		if (mkdir(p, 0777) && errno != EEXIST)
			return false;
		*s = '/';
	}
	return true;
}

/* A rename is lasting only once its folder is on the disk. */
static bool sync_folder(struct arena *a, const char *path)
{
	const char *slash = strrchr(path, '/');
	const char *dir = arena_copy(a, path, (size_t)(slash - path));
	int fd = open(*dir ? dir : "/", O_RDONLY | O_CLOEXEC);
	bool ok;

	if (fd < 0)
		return false;
	ok = !fsync(fd) || errno == EINVAL;
	close(fd);
	return ok;
}

bool save_file(struct arena *a, const char *dir, str name, str bytes)
{
	const char *path = join(a, dir, name);
	struct buf b = { .arena = a };
	const char *temp;
	int fd;
	bool ok;

	if (!make_folders(a, path))
		return false;
	buf_addf(&b, "%s.%u.part", path, (unsigned)getpid());
	temp = buf_z(&b);
	fd = open(temp, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666);
	if (fd < 0)
		return false;
	ok = save_all(fd, bytes) && !fsync(fd);
	ok = !close(fd) && ok;
	ok = ok && !rename(temp, path);
	if (!ok) {
		int why = errno;

		unlink(temp);
		errno = why;
	}
	return ok && sync_folder(a, path);
}

void printed_read(struct arena *a, const char *dir, struct printed *p)
{
	int fd = open(join(a, dir, STR(LIST_NAME)), O_RDONLY | O_CLOEXEC);
	struct buf b = { .arena = a };
	char chunk[4096];
	str rest, line;
	ssize_t n;

	*p = (struct printed){ 0 };
	if (fd < 0)
		return;
	while ((n = read(fd, chunk, sizeof chunk)) > 0)
		buf_add(&b, (str){ chunk, (size_t)n });
	close(fd);
	for (rest = buf_str(&b); str_next(&rest, '\n', &line);)
		if (line.n && line.p[0] != '/' && str_find(line, STR(".."), 0) == line.n)
			printed_add(a, p, line);
}

bool printed_has(const struct printed *p, str name)
{
	for (size_t i = 0; i < p->n; i++)
		if (str_eq(p->v[i], name))
			return true;
	return false;
}

void printed_add(struct arena *a, struct printed *p, str name)
{
	if (!printed_has(p, name))
		*ARENA_PUSH(a, p->v, p->n, p->cap) = name;
}

void printed_drop(struct arena *a, const char *dir, struct printed *p, str name)
{
	size_t kept = 0;
	const char *path = join(a, dir, name);
	const char *slash = strrchr(path, '/');

	for (size_t i = 0; i < p->n; i++)
		if (!str_eq(p->v[i], name))
			p->v[kept++] = p->v[i];
	if (kept == p->n)
		return;
	p->n = kept;
	unlink(path);
	if (slash > path + strlen(dir))
		rmdir(arena_copy(a, path, (size_t)(slash - path))); /* Fails unless empty. */
}

bool printed_write(struct arena *a, const char *dir, const struct printed *p)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < p->n; i++)
		buf_addf(&b, "%.*s\n", STR_ARG(p->v[i]));
	return save_file(a, dir, STR(LIST_NAME), buf_str(&b));
}
