#include "cli/options.h"
#include "cli/say.h"
#include "out/explain.h"

#include <stdio.h>

/* The words after the command, as one name. */
static str join_words(struct arena *a, const struct options *o)
{
	struct buf b = { .arena = a };

	for (int i = 0; i < o->nwords; i++)
		buf_addf(&b, "%s%s", i ? " " : "", o->words[i]);
	return str_trim(buf_str(&b));
}

static int unknown_name(struct arena *a, str name)
{
	str likely = explain_likely(a, name);

	fprintf(stderr, "fitup: nothing is called %.*s", STR_ARG(name));
	if (likely.n)
		fprintf(stderr, "; perhaps %.*s is meant", STR_ARG(likely));
	fputs("\n`fitup explain` lists all names.\n", stderr);
	return EXIT_USAGE;
}

int cmd_explain(const struct options *o)
{
	struct arena *a = run_scratch();
	struct buf b = { .arena = a };
	str name = join_words(a, o);
	int status = EXIT_CLEAN;

	if (o->all)
		explain_manual(&b);
	else if (!name.n)
		explain_list(&b);
	else if (!explain_name(&b, name))
		status = unknown_name(a, name);
	if (!status && !say(1, buf_str(&b)))
		status = EXIT_SYSTEM;
	arena_free(a);
	return status;
}
