#include "cli/options.h"

#include <errno.h>
#include <getopt.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>

const struct command commands[] = {
	{ "inspect", cmd_inspect, "inspect [--json|--sarif] [--date DATE]",
	    "read the program, check it, report what does not fit" },
	{ "print", cmd_print, "print [WHAT ...] [--out DIR] [--paper letter|a4] [--draft]",
	    "make the packets and all that goes with them, or what is named" },
	{ "reckon", cmd_reckon, "reckon [TOPIC KEY VALUE ...] [--json]",
	    "one piece of shop arithmetic; alone it lists the topics" },
	{ "explain", cmd_explain, "explain [NAME]",
	    "say what a finding, a custom, a fact or a section means" },
	{ "help", cmd_help, "help", "show this page" },
};
const int ncommands = sizeof commands / sizeof *commands;

static const struct command *find_command(const char *name)
{
	for (int i = 0; i < ncommands; i++)
		if (!strcmp(commands[i].name, name))
			return &commands[i];
	return NULL;
}

enum { OPT_OUT = 256, OPT_PAPER, OPT_LARGE, OPT_METRIC, OPT_DRAFT, OPT_JSON, OPT_SARIF, OPT_DATE, OPT_ALL,
	OPT_HELP, OPT_VERSION };

static const struct option long_options[] = {
	{ "out", required_argument, NULL, OPT_OUT },
	{ "paper", required_argument, NULL, OPT_PAPER },
	{ "large", no_argument, NULL, OPT_LARGE },
	{ "metric", no_argument, NULL, OPT_METRIC },
	{ "draft", no_argument, NULL, OPT_DRAFT },
	{ "json", no_argument, NULL, OPT_JSON },
	{ "sarif", no_argument, NULL, OPT_SARIF },
	{ "date", required_argument, NULL, OPT_DATE },
	{ "all", no_argument, NULL, OPT_ALL },
	{ "help", no_argument, NULL, OPT_HELP },
	{ "version", no_argument, NULL, OPT_VERSION },
	{ NULL, 0, NULL, 0 },
};

static bool take_paper(struct options *o, const char *word)
{
	o->edition.a4 = !strcmp(word, "a4") || !strcmp(word, "A4");
	if (o->edition.a4 || !strcmp(word, "letter"))
		return true;
	fprintf(stderr, "fitup: paper is letter or a4, not %s\n", word);
	return false;
}

static bool take_date(struct options *o, const char *word)
{
	o->dated = when_parse(str_of(word), &o->date);
	if (!o->dated)
		fprintf(stderr, "fitup: a date is written 2027-09-01 or fall-2027, not %s\n",
		    word);
	return o->dated;
}

static bool take_option(struct options *o, int c)
{
	switch (c) {
	case 'C':
		o->folder = optarg;
		return true;
	case OPT_OUT:
		o->out = optarg;
		return true;
	case OPT_PAPER:
		return take_paper(o, optarg);
	case OPT_LARGE:
		return o->edition.large = true;
	case OPT_METRIC:
		return o->edition.metric = true;
	case OPT_DRAFT:
		return o->draft = true;
	case OPT_JSON:
		return o->json = true;
	case OPT_SARIF:
		return o->sarif = true;
	case OPT_ALL:
		return o->all = true;
	case OPT_DATE:
		return take_date(o, optarg);
	case OPT_HELP:
		return o->help = true;
	case OPT_VERSION:
		return o->version = true;
	default: /* getopt has said what is wrong. */
		return false;
	}
}

/* A number below zero (-3 in) is a word, not an option: its minus is hidden from getopt
 * and put back after it. */
static void swap_minus(char **argv, char from, char to)
{
	for (; *argv; argv++)
		if ((*argv)[0] == from && strchr(".0123456789", (*argv)[1]) && (*argv)[1])
			(*argv)[0] = to;
}

static bool take_options(struct options *o, int argc, char **argv)
{
	const char hidden = '\1';

	swap_minus(argv, '-', hidden);
	for (int c; (c = getopt_long(argc, argv, "C:", long_options, NULL)) != -1;)
		if (!take_option(o, c))
			return false;
	swap_minus(argv, hidden, '-');
	o->words = argv + optind;
	o->nwords = argc - optind;
	return true;
}

static int use_help(void)
{
	fputs("Try `fitup help`.\n", stderr);
	return EXIT_USAGE;
}

/* What was put on stdout is out, or the user is told that it is not. */
static int end_stdout(void)
{
	if (!fflush(stdout) && !ferror(stdout))
		return EXIT_CLEAN;
	fprintf(stderr, "fitup: cannot write: %s\n", strerror(errno));
	return EXIT_SYSTEM;
}

int cmd_help(const struct options *o)
{
	(void)o;
	puts("fitup checks a welding program written in Markdown and prints its packets and\n"
	     "grading sheets.\n\nUse: fitup COMMAND [-C DIR] [OPTION ...]\n");
	for (int i = 0; i < ncommands; i++)
		printf("  %s\n        %s\n", commands[i].usage, commands[i].does);
	puts("\n  WHAT is Q3, ORW 130 or SM-20 and which of packets, grading, cards, chart; or keys,\n"
	     "  templates, labels, print-list of the whole program. Several may be named.\n"
	     "  Packets, grading sheets, cards and labels come in Spanish too (packet.es.pdf) where\n"
	     "  the folder assignments/es translates one of their assignments.\n\n"
	     "  -C DIR          the program folder; else the one that holds program.md, else\n"
	     "                  ./curriculum\n"
	     "  --out DIR       where PDFs go (build)\n"
	     "  --paper a4      A4 in place of Letter\n"
	     "  --large         large print, 18 pt, in files of its own (packet.large.pdf)\n"
	     "  --metric        metric first, US customary in brackets (packet.metric.pdf); keys\n"
	     "                  and reckon work their steps in metric\n"
	     "  --draft         print held-back documents too, DRAFT on every page\n"
	     "  --json          findings for other tools\n"
	     "  --sarif         the same in SARIF 2.1.0\n"
	     "  --date DATE     a day as 2027-09-01 or a term as fall-2027: waivers whose end has\n"
	     "                  passed by then lapse; without it none does\n"
	     "  --version       print the version\n\n"
	     "Exit status: 0 nothing of error level, 1 findings of error level, 2 wrong use,\n"
	     "3 the system failed (disk, memory, permission).");
	return end_stdout();
}

static int show_version(void)
{
	puts("fitup " VERSION);
	return end_stdout();
}

int main(int argc, char **argv)
{
	struct options o = { 0 };
	const struct command *c;

	signal(SIGPIPE, SIG_IGN); /* A closed pipe is a failed write, told as one. */
	if (!take_options(&o, argc, argv))
		return use_help();
	if (o.version)
		return show_version();
	if (o.help)
		return cmd_help(&o);
	if (!o.nwords) {
		fputs("fitup: say what to do\n", stderr);
		return use_help();
	}
	c = find_command(o.words[0]);
	if (!c) {
		fprintf(stderr, "fitup: no command is called %s\n", o.words[0]);
		return use_help();
	}
	o.words++;
	o.nwords--;
	return c->run(&o);
}
