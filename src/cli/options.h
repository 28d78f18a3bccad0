/* cli/options.h - what the user asked for, in words of one run. */
#ifndef CLI_OPTIONS_H
#define CLI_OPTIONS_H

#include "model/when.h"
#include "sheets/choice.h"

#define VERSION "0.1.0"

enum { EXIT_CLEAN = 0, EXIT_FINDINGS = 1, EXIT_USAGE = 2, EXIT_SYSTEM = 3 };

struct options {
	const char *folder;      /* -C; null: where program.md is */
	const char *out;         /* --out */
	struct when date;        /* --date, for waivers; only when dated */
	bool dated, sarif, all;
	bool json, draft, help, version;
	struct edition_choice edition; /* --paper, --large, --metric */
	char **words;            /* what is left after command and options */
	int nwords;
};

struct command {
	const char *name;
	int (*run)(const struct options *o);
	const char *usage, *does;
};

extern const struct command commands[];
extern const int ncommands;

int cmd_inspect(const struct options *o);
int cmd_print(const struct options *o);
int cmd_reckon(const struct options *o);
int cmd_explain(const struct options *o);
int cmd_help(const struct options *o);

#endif
