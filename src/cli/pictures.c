#include "cli/pictures.h"

#include "read/picture.h"

/* A file that could not be opened is a picture with a fault as well: it is told where it
 * is shown, and holds back that sheet alone. */
static const struct pixels *unreadable(struct arena *a, const char *why)
{
	struct pixels *p = arena_alloc(a, sizeof *p);

	p->fault = str_of(why);
	return p;
}

void pictures_read(struct arena *a, struct model *m, const struct model *before,
    const struct folder *folder)
{
	for (size_t i = 0; i < m->npictures; i++) {
		struct picture_file *p = &m->pictures[i];

		if (before)
			p->pixels = before->pictures[i].pixels;
		if (p->uses && !p->pixels)
			p->pixels = folder->readable[p->file]
			    ? picture_read(a, folder->sources.v[p->file].text)
			    : unreadable(a, folder->faults[p->file]);
	}
}
