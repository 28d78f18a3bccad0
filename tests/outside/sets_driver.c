/* Asks the shipped sets. Each line in: set, test, weld (F, G), t, throat, width, root
 * width in mm (0: not known), open root (0, 1), name; tabs between. Each line out: form
 * (absent, twice, none, words, most, least), value in base units, what is said beside. */
#include "base/standards.h"
#include "cli/shipped.h"
#include "model/standard.h"
#include "read/md.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { COLUMNS = 9 };

/* All shipped sets, read whether anything names them or not. */
static struct model *sets_read(struct arena *a, struct sources *sources)
{
	struct findings *f = findings_new(a);
	struct record_file file;
	struct model *m;

	sources->v = arena_array(a, 1, sizeof *sources->v);
	sources->n = 1;
	sources->v[0] = (struct source){ STR("skills.md"), STR("# Skills\n") };
	file = md_read(a, &sources->v[0], 0, f);
	m = model_bind(a, sources, &file, 1, f);
	for (size_t i = 0; i < m->nshipped; i++)
		m->shipped[i].wanted = true;
	shipped_read(a, m, sources, f);
	return m;
}

static const struct standard *set_named(const struct model *m, const char *name)
{
	for (size_t i = 0; i < m->nshipped; i++)
		if (str_eq(m->shipped[i].name, str_of(name)))
			return &m->shipped[i];
	return NULL;
}

static enum standard_test test_of(const char *s)
{
	return strcmp(s, "macro") == 0 ? TEST_MACRO : strcmp(s, "bend") == 0 ? TEST_BEND :
	    strcmp(s, "break") == 0 ? TEST_FILLET_BREAK : TEST_VISUAL;
}

static void say(const struct standard_limit *l, const struct limit_sizes *z)
{
	static const char *const forms[] = { "most", "least", "within", "none", "words" };
	double value = 0;

	if (l->most.v && !limit_expr_value(&l->most, z, &value)) {
		printf("unknown\t0\t\n");
		return;
	}
	printf("%s\t%.12g\t%.*s %.*s\n", forms[l->form], value, STR_ARG(l->more),
	    STR_ARG(l->words));
}

static void answer(const struct model *m, char **v)
{
	struct limit_sizes z = { 0 };
	const struct standard *s = set_named(m, v[0]);
	const struct standard_limit *found = NULL;
	unsigned weld = v[2][0] == 'F' ? WELD_FILLET : WELD_GROOVE, n = 0;

	limit_size_set(&z, SIZE_T, strtod(v[3], NULL));
	limit_sizes_fillet(&z, strtod(v[4], NULL) * sqrt(2), 0);
	limit_size_set(&z, SIZE_WIDTH, strtod(v[5], NULL));
	limit_size_set(&z, SIZE_ROOT_WIDTH, strtod(v[6], NULL));
	z.known[SIZE_OPEN_ROOT] = true;
	z.v[SIZE_OPEN_ROOT] = v[7][0] == '1';
	for (size_t i = 0; s && i < s->n; i++) {
		const struct standard_limit *l = &s->v[i];
		double holds = 1;

		if (l->test != test_of(v[1]) || !(l->welds & weld) ||
		    !str_eq(l->name, str_of(v[8])) ||
		    (l->where.v && limit_expr_value(&l->where, &z, &holds) && !holds))
			continue;
		found = l;
		n++;
	}
	if (n != 1)
		printf("%s\t0\t\n", n ? "twice" : "absent");
	else
		say(found, &z);
}

int main(void)
{
	struct arena *a = arena_new(NULL, NULL);
	struct sources sources;
	const struct model *m = sets_read(a, &sources);
	char line[512], *v[COLUMNS];

	while (fgets(line, sizeof line, stdin)) {
		char *p = line;

		line[strcspn(line, "\n")] = 0;
		for (int i = 0; i < COLUMNS; i++) {
			v[i] = p;
			p += strcspn(p, "\t");
			if (*p)
				*p++ = 0;
		}
		answer(m, v);
	}
	arena_free(a);
	return 0;
}
