#include "out/report.h"

enum { COLUMNS = 80, RELATED_MOST = 12 };

static str path_of(const struct sources *s, struct pos p)
{
	return p.file == POS_NOWHERE || p.file >= s->n ? STR("program folder") : s->v[p.file].path;
}

static void add_place(struct buf *b, const struct sources *s, struct pos p, str prefix)
{
	if (p.file != POS_NOWHERE && p.file < s->n)
		buf_add(b, prefix);
	buf_add(b, path_of(s, p));
	if (p.line)
		buf_addf(b, ":%u:%u", p.line, p.col);
}

/* Takes the next word off *text, an empty one when none is left; its width. */
static size_t next_word(str *text, str *word)
{
	return str_word(text, word) ? str_chars(*word) : 0;
}

static void begin_line(struct buf *b, size_t indent)
{
	static const char blanks[] = "                ";

	buf_addc(b, '\n');
	for (size_t n = sizeof blanks - 1; indent; indent -= n)
		buf_add(b, (str){ blanks, n = indent < n ? indent : n });
}

/* Words that stand one blank apart, as nearly all do, are added by lines. */
void report_wrap(struct buf *b, str text, size_t *at, size_t indent)
{
	str word, run = { 0 };
	bool first = true;

	for (size_t w = next_word(&text, &word); word.n; w = next_word(&text, &word)) {
		bool apart = !first || *at > indent;

		if (*at > indent && *at + 1 + w > COLUMNS) {
			buf_add(b, run);
			begin_line(b, indent);
			*at = indent;
			run = word;
		} else if (run.n && word.p == run.p + run.n + 1 && word.p[-1] == ' ') {
			run.n += 1 + word.n;
			++*at;
		} else {
			buf_add(b, run);
			if (apart)
				buf_addc(b, ' ');
			*at += apart;
			run = word;
		}
		*at += w;
		first = false;
	}
	buf_add(b, run);
}

static void add_indented(struct buf *b, const char *head, str text)
{
	size_t at = 4 + str_of(head).n;

	if (!text.n)
		return;
	buf_addf(b, "    %s", head);
	report_wrap(b, text, &at, 8);
	buf_addc(b, '\n');
}

/* A place of the finding itself needs no second line, unless another finding stands there,
 * and what the cause says in the same words is not said again. A circle is told whole,
 * however long it is, and so is what a finding explains. */
static void add_related(struct buf *b, const struct finding *d, const struct sources *s,
    str prefix)
{
	size_t most = d->name == FINDING_NEEDS_LOOP ? d->nrelated : RELATED_MOST, left = 0;

	for (size_t i = 0; i < d->nrelated; i++) {
		const struct related *r = &d->related[i];
		bool said = r->label.n && str_find(d->cause, r->label, 0) < d->cause.n;
		size_t from = b->n, at;

		if (!r->listed && (i >= most || !pos_cmp(r->pos, d->pos))) {
			left += i >= most;
			continue;
		}
		buf_adds(b, "    also ");
		add_place(b, s, r->pos, prefix);
		buf_addc(b, ':');
		at = str_chars(str_sub(buf_str(b), from, b->n));
		report_wrap(b, r->label.n && (!said || !r->assignment.n) ? r->label
		    : r->assignment, &at, 8);
		buf_addc(b, '\n');
	}
	if (left)
		buf_addf(b, "    and %zu more places\n", left);
}

static void add_finding(struct buf *b, const struct finding *d, const struct sources *s,
    str prefix)
{
	size_t from = b->n, at;

	add_place(b, s, d->pos, prefix);
	buf_addf(b, ": %s:", level_word(d->level));
	at = str_chars(str_sub(buf_str(b), from, b->n));
	report_wrap(b, d->message, &at, 4);
	report_wrap(b, str_format(b->arena, "[%s]", finding_info(d->name)->name), &at, 4);
	buf_addc(b, '\n');
	add_indented(b, "cause:", d->cause);
	add_related(b, d, s, prefix);
	if (d->waived)
		add_indented(b, "waived:", str_format(b->arena, "%.*s; %.*s; until %.*s",
		    STR_ARG(d->waived->reason), STR_ARG(d->waived->role),
		    STR_ARG(d->waived->until)));
	else
		add_indented(b, "repair:", d->repair);
}

/* Findings are gone through twice: those that stand, then the waived ones. */
size_t report_entries(const struct findings *f)
{
	return findings_count_waived(f) ? 2 * f->n : f->n;
}

void report_text(struct buf *b, const struct findings *f, const struct sources *s,
    str prefix, size_t from, size_t to)
{
	for (size_t i = from; i < to; i++) {
		bool second = i >= f->n;
		const struct finding *d = &f->v[second ? i - f->n : i];

		if (i == f->n)
			buf_adds(b, "waived:\n");
		if ((d->waived != NULL) == second)
			add_finding(b, d, s, prefix);
	}
}

static void add_count(struct buf *b, const struct findings *f, enum finding_level level,
    const char *after)
{
	size_t n = findings_count(f, level);

	buf_addf(b, "%zu %s%s%s", n, level_word(level), n == 1 ? "" : "s", after);
}

void report_counts(struct buf *b, const struct findings *f)
{
	add_count(b, f, LEVEL_ERROR, ", ");
	add_count(b, f, LEVEL_WARNING, ", ");
	add_count(b, f, LEVEL_NOTE, "");
	if (findings_count_waived(f))
		buf_addf(b, ", %zu waived", findings_count_waived(f));
}

void json_string(struct buf *b, str s)
{
	buf_addc(b, '"');
	for (size_t i = 0; i < s.n; i++) {
		unsigned char c = (unsigned char)s.p[i];

		if (c == '"' || c == '\\') {
			buf_addc(b, '\\');
			buf_addc(b, (char)c);
		} else if (c < 0x20) {
			static const char hex[] = "0123456789abcdef";

			buf_addf(b, "\\u00%c%c", hex[c >> 4], hex[c & 15]);
		} else {
			buf_addc(b, (char)c);
		}
	}
	buf_addc(b, '"');
}

static void json_field(struct buf *b, const char *key, str value)
{
	buf_addf(b, ",\"%s\":", key);
	json_string(b, value);
}

static void json_place(struct buf *b, const struct sources *s, struct pos p)
{
	buf_adds(b, "\"file\":");
	json_string(b, p.file == POS_NOWHERE ? STR("") : path_of(s, p));
	buf_addf(b, ",\"line\":%u,\"column\":%u", p.line, p.col);
}

static void json_related(struct buf *b, const struct related *r, const struct sources *s)
{
	buf_addc(b, '{');
	json_place(b, s, r->pos);
	json_field(b, "assignment", r->assignment);
	json_field(b, "skill", r->skill);
	json_field(b, "label", r->label);
	if (r->listed)
		json_field(b, "name", str_of(finding_info(r->name)->name));
	buf_addc(b, '}');
}

static void json_finding(struct buf *b, const struct finding *d, const struct sources *s)
{
	buf_addf(b, "{\"name\":\"%s\",\"level\":\"%s\",", finding_info(d->name)->name,
	    level_word(d->level));
	json_place(b, s, d->pos);
	json_field(b, "assignment", d->assignment);
	json_field(b, "skill", d->skill);
	json_field(b, "message", d->message);
	json_field(b, "cause", d->cause);
	json_field(b, "repair", d->repair);
	buf_adds(b, ",\"related\":[");
	for (size_t i = 0; i < d->nrelated; i++) {
		buf_adds(b, i ? ",\n  " : "\n  ");
		json_related(b, &d->related[i], s);
	}
	buf_addc(b, ']');
	if (d->waived) {
		buf_adds(b, ",\"waived\":true");
		json_field(b, "reason", d->waived->reason);
		json_field(b, "role", d->waived->role);
		json_field(b, "until", d->waived->until);
	}
	buf_addc(b, '}');
}

void report_json(struct buf *b, const struct findings *f, const struct sources *s)
{
	buf_adds(b, "{\"fitup\":1,\"findings\":[");
	for (size_t i = 0; i < f->n; i++) {
		buf_adds(b, i ? ",\n " : "\n ");
		json_finding(b, &f->v[i], s);
	}
	buf_addf(b, "],\n\"counts\":{\"error\":%zu,\"warning\":%zu,\"note\":%zu",
	    findings_count(f, LEVEL_ERROR), findings_count(f, LEVEL_WARNING),
	    findings_count(f, LEVEL_NOTE));
	if (findings_count_waived(f))
		buf_addf(b, ",\"waived\":%zu", findings_count_waived(f));
	buf_adds(b, "}}\n");
}
