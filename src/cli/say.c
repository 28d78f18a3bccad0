#include "cli/say.h"

#include "cli/pool.h"
#include "cli/save.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

bool say(int fd, str text)
{
	if (save_all(fd, text))
		return true;
	fprintf(stderr, "fitup: cannot write: %s\n", strerror(errno));
	return false;
}

/* A long report is made piece by piece, several at a time, and not held whole. */
enum { PIECES = 16, PIECE = 128 };

struct saying {
	const struct run *run;
	str prefix;
	size_t from, end;        /* entries of the report, from the first piece on */
	struct buf v[PIECES];
};

static void make_piece(void *user, unsigned thread, size_t i)
{
	struct saying *s = user;
	size_t from = s->from + i * PIECE, left = s->end - from;

	(void)thread;
	s->v[i].n = 0;
	report_text(&s->v[i], s->run->findings, &s->run->folder.sources, s->prefix, from,
	    from + (left < PIECE ? left : PIECE));
}

static bool say_pieces(int fd, struct saying *s)
{
	size_t n = (s->end - s->from + PIECE - 1) / PIECE;

	n = n < PIECES ? n : PIECES;
	pool_run(POOL_THREADS, n, make_piece, s);
	for (size_t i = 0; i < n; i++)
		if (!say(fd, buf_str(&s->v[i])))
			return false;
	s->from += n * PIECE;
	return true;
}

bool say_findings(int fd, const struct run *r)
{
	str dir = str_of(r->dir);
	struct saying s = { .run = r, .end = report_entries(r->findings) };
	bool ok = true;

	while (dir.n > 1 && dir.p[dir.n - 1] == '/')
		dir.n--;
	if (!str_eq(dir, STR(".")))
		s.prefix = str_format(r->arena, "%.*s/", STR_ARG(dir));
	for (size_t i = 0; i < PIECES; i++)
		s.v[i].arena = arena_beside(r->arena);
	while (ok && s.from < s.end)
		ok = say_pieces(fd, &s);
	for (size_t i = 0; i < PIECES; i++)
		arena_free(s.v[i].arena);
	return ok;
}
