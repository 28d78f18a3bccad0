#include "cli/say.h"

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

bool say_findings(int fd, const struct run *r)
{
	str dir = str_of(r->dir);
	struct buf b = { .arena = r->arena };
	str prefix = { 0 };
	size_t at = 0;
	bool more = true;

	while (dir.n > 1 && dir.p[dir.n - 1] == '/')
		dir.n--;
	if (!str_eq(dir, STR(".")))
		prefix = str_format(r->arena, "%.*s/", STR_ARG(dir));
	while (more) {
		b.n = 0;
		more = report_text(&b, r->findings, &r->folder.sources, prefix, &at);
		if (!say(fd, buf_str(&b)))
			return false;
	}
	return true;
}
