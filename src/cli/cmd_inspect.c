#include "cli/options.h"
#include "cli/run.h"
#include "cli/say.h"
#include "out/sarif.h"

#include <stdio.h>

static void add_clean_line(struct buf *b, const struct model *m)
{
	buf_addf(b, "%zu assignments in %zu courses and %zu quarters: ", m->nassignments,
	    m->ncourses, m->nquarters);
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

		if (o->sarif) {
			report_sarif(&b, r.findings, &r.folder.sources, STR(VERSION));
		} else if (o->json) {
			report_json(&b, r.findings, &r.folder.sources);
		} else {
			say_findings(&b, &r);
			add_clean_line(&b, r.model);
			report_counts(&b, r.findings);
			buf_addc(&b, '\n');
		}
		status = say(1, buf_str(&b)) ? EXIT_CLEAN : EXIT_SYSTEM;
		if (!status && findings_count(r.findings, LEVEL_ERROR))
			status = EXIT_FINDINGS;
	}
	run_end(&r);
	return status;
}
