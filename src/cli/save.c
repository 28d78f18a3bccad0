#include "cli/save.h"

#include "base/buf.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
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

static const char *folder_of(struct arena *a, const char *path)
{
	const char *slash = strrchr(path, '/');

	return slash == path ? "/" : arena_copy(a, path, (size_t)(slash - path));
}

/* A rename is lasting only once its folder is on the disk. */
static bool sync_folder(struct arena *a, const char *path)
{
	int fd = open(folder_of(a, path), O_RDONLY | O_CLOEXEC);
	bool ok;

	if (fd < 0)
		return false;
	ok = !fsync(fd) || errno == EINVAL;
	close(fd);
	return ok;
}

/* "packet.pdf.4711.part" for "packet.pdf", whose process 4711 is there no more. */
static bool is_left_over(str entry, str base)
{
	uint32_t pid;

	if (!str_starts(entry, base) || !str_ends(entry, STR(".part")) ||
	    entry.n < base.n + 7 || entry.p[base.n] != '.')
		return false;
	return str_to_u32(str_sub(entry, base.n + 1, entry.n - 5), &pid) && pid &&
	    pid <= INT32_MAX && kill((pid_t)pid, 0) && errno == ESRCH;
}

/* Removes the temporary files of prints of path that were killed. */
static void sweep(struct arena *a, const char *path)
{
	DIR *d = opendir(folder_of(a, path));

	if (!d)
		return;
	for (struct dirent *de; (de = readdir(d));)
		if (is_left_over(str_of(de->d_name), str_of(strrchr(path, '/') + 1)))
			unlinkat(dirfd(d), de->d_name, 0);
	closedir(d);
}

bool save_file(struct arena *a, const char *dir, str name, str bytes, unsigned mode)
{
	const char *path = join(a, dir, name);
	struct buf b = { .arena = a };
	const char *temp;
	int fd;
	bool ok;

	if (!make_folders(a, path))
		return false;
	sweep(a, path);
	buf_addf(&b, "%s.%u.part", path, (unsigned)getpid());
	temp = buf_z(&b);
	fd = open(temp, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, (mode_t)mode);
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
	int fd = open(join(a, dir, STR(LIST_NAME)), O_RDONLY | O_NONBLOCK | O_CLOEXEC);
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

bool printed_foreign(struct arena *a, const char *dir, const struct printed *p, str name)
{
	struct stat st;

	return !printed_has(p, name) && !lstat(join(a, dir, name), &st);
}

void printed_add(struct arena *a, struct printed *p, str name)
{
	if (!printed_has(p, name))
		*ARENA_PUSH(a, p->v, p->n, p->cap) = name;
}

static void forget(struct printed *p, str name)
{
	size_t kept = 0;

	for (size_t i = 0; i < p->n; i++)
		if (!str_eq(p->v[i], name))
			p->v[kept++] = p->v[i];
	p->n = kept;
}

bool printed_drop(struct arena *a, const char *dir, struct printed *p, str name)
{
	const char *path = join(a, dir, name);

	if (!printed_has(p, name))
		return true;
	if (unlink(path) && errno != ENOENT && errno != ENOTDIR)
		return false;
	forget(p, name);
	sweep(a, path);
	if (str_find_char(name, '/', 0) < name.n)
		rmdir(folder_of(a, path)); /* Fails unless empty. */
	return true;
}

bool printed_write(struct arena *a, const char *dir, const struct printed *p)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < p->n; i++)
		buf_addf(&b, "%.*s\n", STR_ARG(p->v[i]));
	return save_file(a, dir, STR(LIST_NAME), buf_str(&b), 0666);
}
