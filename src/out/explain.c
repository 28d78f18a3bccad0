#include "out/explain.h"

#include "check/waive.h"
#include "model/fields.h"
#include "out/report.h"

/* Room for all facts and sections besides the findings and their customs. */
enum { NAMES_MOST = 2 * FINDING_COUNT + 200 };

static const struct field_table *const tables[] = { &fields_assignment, &fields_cohort };
enum { TABLES = sizeof tables / sizeof *tables };

static void add_line(struct buf *b, const char *head, str text)
{
	size_t at = 2 + str_of(head).n;

	if (!text.n)
		return;
	buf_addf(b, "  %s", head);
	report_wrap(b, text, &at, *head ? 4 : 2);
	buf_addc(b, '\n');
}

static bool is_rule(const struct finding_info *info)
{
	return !info->repair[0];
}

static str repair_of(const struct finding_info *info)
{
	return str_of(is_rule(info) ? "each finding says what would mend it"
	    : info->repair);
}

static void add_silencing(struct buf *b, uint32_t name)
{
	const struct finding_info *info = finding_info(name);

	if (info->class == CLASS_SAFETY) {
		add_line(b, "Silence:", STR("not possible: it guards against harm, so it is "
		    "neither waived nor switched off"));
		return;
	}
	if (!waiver_may_cover(name)) {
		add_line(b, "Silence:", STR("not possible: it is about customs.md itself"));
		return;
	}
	if (info->class == CLASS_CUSTOM) {
		add_line(b, "Switch off", STR("for the whole program, under ## Off in "
		    "customs.md:"));
		buf_addf(b, "    - **%s:** why this program does otherwise\n",
		    info->custom);
	}
	add_line(b, "Accept", STR("one case, under ## Waivers in customs.md, with the "
	    "assignment and skill that the finding names, or its course, quarter or "
	    "station:"));
	buf_addf(b, "    - **%s, SM-25:** reason; role responsible; until fall-2027\n",
	    info->name);
}

static void add_finding(struct buf *b, uint32_t name)
{
	const struct finding_info *info = finding_info(name);

	buf_addf(b, "%s: %s\n", info->name, level_word(info->level));
	add_line(b, "", str_of(info->help));
	if (info->custom[0])
		add_line(b, "Custom:", str_of(info->custom));
	add_line(b, "Example:", str_of(info->example));
	add_line(b, "Repair:", repair_of(info));
	add_silencing(b, name);
}

static void add_field(struct buf *b, const struct field_table *t, const struct field *row)
{
	buf_addf(b, "%.*s: a fact of %s\n", STR_ARG(row->key), t->where);
	add_line(b, "", str_of(row->help));
	if (row->words)
		add_line(b, "One of:", words_list(b->arena, row->words));
	buf_addf(b, "  Written as a bullet: - **%.*s:** value\n", STR_ARG(row->key));
}

static void add_section(struct buf *b, const struct section_row *row)
{
	buf_addf(b, "%.*s: a section of an assignment\n", STR_ARG(row->name));
	add_line(b, "", str_of(row->help));
	buf_addf(b, "  Written as a heading: ## %.*s\n", STR_ARG(row->name));
}

/* A blank line between two meanings of one name. */
static void part(struct buf *b, bool *any)
{
	if (*any)
		buf_addc(b, '\n');
	*any = true;
}

bool explain_name(struct buf *b, str name)
{
	bool any = false;

	for (uint32_t k = 0; k < FINDING_COUNT; k++) {
		const struct finding_info *info = finding_info(k);

		if (words_same(str_of(info->name), name) ||
		    (info->custom[0] && words_same(str_of(info->custom), name))) {
			part(b, &any);
			add_finding(b, k);
		}
	}
	for (size_t t = 0; t < TABLES; t++) {
		uint32_t row = fields_find(tables[t], name);

		if (row != NONE) {
			part(b, &any);
			add_field(b, tables[t], &tables[t]->v[row]);
		}
	}
	for (size_t i = 0; i < nsections_assignment; i++)
		if (words_same(sections_assignment[i].name, name)) {
			part(b, &any);
			add_section(b, &sections_assignment[i]);
		}
	return any;
}

/* Every name once, in the order of the lists; returns how many. */
static size_t names_of(str *v)
{
	size_t n = 0;

	for (uint32_t k = 0; k < FINDING_COUNT; k++) {
		v[n++] = str_of(finding_info(k)->name);
		if (finding_info(k)->custom[0])
			v[n++] = str_of(finding_info(k)->custom);
	}
	for (size_t t = 0; t < TABLES; t++)
		for (size_t i = 0; i < tables[t]->n && n < NAMES_MOST; i++)
			v[n++] = tables[t]->v[i].key;
	for (size_t i = 0; i < nsections_assignment && n < NAMES_MOST; i++)
		v[n++] = sections_assignment[i].name;
	return n;
}

str explain_likely(struct arena *a, str wrong)
{
	str *v = arena_array(a, NAMES_MOST, sizeof *v);

	return likely_word(wrong, v, names_of(v));
}

static void add_words(struct buf *b, const char *head, const str *v, size_t n)
{
	struct buf list = { .arena = b->arena };

	for (size_t i = 0; i < n; i++)
		buf_addf(&list, "%s%.*s", i ? ", " : "", STR_ARG(v[i]));
	buf_addf(b, "\n%s\n", head);
	add_line(b, "", buf_str(&list));
}

void explain_list(struct buf *b)
{
	str *v = arena_array(b->arena, NAMES_MOST, sizeof *v);
	size_t n = 0;

	for (uint32_t k = 0; k < FINDING_COUNT; k++) {
		const struct finding_info *info = finding_info(k);

		buf_addf(b, "%s%s%s\n", level_word(info->level),
		    info->level == LEVEL_WARNING ? "  " : info->level == LEVEL_ERROR
		    ? "    " : "     ", info->name);
		if (info->custom[0])
			buf_addf(b, "         custom: %s\n", info->custom);
	}
	for (size_t t = 0; t < TABLES; t++) {
		n = 0;
		for (size_t i = 0; i < tables[t]->n; i++)
			v[n++] = tables[t]->v[i].key;
		add_words(b, str_format(b->arena, "Facts of %s", tables[t]->where).p, v, n);
	}
	n = 0;
	for (size_t i = 0; i < nsections_assignment; i++)
		v[n++] = sections_assignment[i].name;
	add_words(b, "Sections of an assignment", v, n);
}

static const char *silencing_words(uint32_t name)
{
	const struct finding_info *info = finding_info(name);

	if (info->class == CLASS_SAFETY)
		return "safety: neither waived nor switched off";
	if (!waiver_may_cover(name))
		return "about customs.md itself: not waived";
	return info->class == CLASS_CUSTOM ? "may be waived or switched off"
	    : "may be waived";
}

static void add_manual(struct buf *b, uint32_t name)
{
	const struct finding_info *info = finding_info(name);

	buf_addf(b, "\n### %s\n\n%s; %s.\n\n%s\n", info->name, level_word(info->level),
	    silencing_words(name), info->help);
	if (info->custom[0])
		buf_addf(b, "\n- **Custom:** %s\n", info->custom);
	buf_addf(b, "%s- **Example:** %s\n", info->custom[0] ? "" : "\n", info->example);
	if (!is_rule(info))
		buf_addf(b, "- **Repair:** %s.\n", info->repair);
}

void explain_manual(struct buf *b)
{
	buf_adds(b, "# What fitup finds\n\n"
	    "Made by `fitup explain --all` from the lists in src/base; do not edit. "
	    "`fitup explain NAME` says the same of one name.\n\n"
	    "An error keeps what it concerns from being printed, a warning does not, a note "
	    "only tells. One case of a finding is accepted by a waiver in customs.md, with "
	    "reason, role responsible and end; a custom is switched off there by its words. "
	    "Safety findings are always mended.\n\n## The source\n");
	for (uint32_t k = 0; k < FINDING_COUNT; k++)
		if (!is_rule(finding_info(k)))
			add_manual(b, k);
	buf_adds(b, "\n## The rules of the trade\n");
	for (uint32_t k = 0; k < FINDING_COUNT; k++)
		if (is_rule(finding_info(k)))
			add_manual(b, k);
}
