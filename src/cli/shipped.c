#include "cli/shipped.h"

#include "base/standards.h"
#include "model/standard.h"
#include "read/md.h"

static size_t count_wanted(const struct model *m)
{
	size_t n = 0;

	for (size_t i = 0; i < m->nshipped; i++)
		n += m->shipped[i].wanted;
	return n;
}

void shipped_read(struct arena *a, struct model *m, struct sources *s, struct findings *f)
{
	struct source *v = arena_array(a, s->n + count_wanted(m), sizeof *v);

	for (size_t i = 0; i < s->n; i++)
		v[i] = s->v[i];
	s->v = v;
	for (size_t i = 0; i < m->nshipped; i++) {
		struct record_file file;

		if (!m->shipped[i].wanted)
			continue;
		v[s->n] = standard_shipped(i);
		file = md_read(a, &v[s->n], (uint32_t)s->n, f);
		s->n++;
		standard_fill(a, m, &m->shipped[i], &file, f);
	}
	standard_judge(a, m, f);
}
