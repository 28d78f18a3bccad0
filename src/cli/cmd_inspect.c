#include "cli/options.h"
#include "cli/run.h"
#include "cli/say.h"
#include "out/sarif.h"

#include <stdio.h>

static void add_number(struct buf *b, size_t n, const char *what, const char *after)
{
	buf_addf(b, "%zu %s%s%s", n, what, n == 1 ? "" : "s", after);
}

static void add_clean_line(struct buf *b, const struct model *m)
{
	add_number(b, m->nassignments, "assignment", " in ");
	add_number(b, m->ncourses, "course", " and ");
	add_number(b, m->nquarters, "quarter", ": ");
}

int cmd_inspect(const struct options *o)
{
	struct run r;
	int status = run_begin(&r, o);

	if (!status && o->nwords) {
		fprintf(stderr, "fitup: inspect takes no further words (%s)\n", o->words[0]);
		status = EXIT_USAGE;
	}
	if (!status) {
		struct buf b = { .arena = r.arena };
		bool said = true;

		if (o->sarif) {
			report_sarif(&b, r.findings, &r.folder.sources, STR(VERSION));
		} else if (o->json) {
			report_json(&b, r.findings, &r.folder.sources);
		} else {
			said = say_findings(1, &r);
			add_clean_line(&b, r.model);
			report_counts(&b, r.findings);
			buf_addc(&b, '\n');
		}
		status = said && say(1, buf_str(&b)) ? EXIT_CLEAN : EXIT_SYSTEM;
		if (!status && findings_count(r.findings, LEVEL_ERROR))
			status = EXIT_FINDINGS;
	}
	run_end(&r);
	return status;
}
