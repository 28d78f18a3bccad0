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

void say_findings(struct buf *b, const struct run *r)
{
	str dir = str_of(r->dir);
	str prefix = { 0 };

	while (dir.n > 1 && dir.p[dir.n - 1] == '/')
		dir.n--;
	if (!str_eq(dir, STR(".")))
		prefix = str_format(r->arena, "%.*s/", STR_ARG(dir));
	report_text(b, r->findings, &r->folder.sources, prefix);
}
