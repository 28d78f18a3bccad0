#include "out/sarif.h"

#include "out/report.h"

/* Section 3.11.5 of the standard: in a message, braces stand for themselves only when
 * they are doubled. */
static str message_text(struct arena *a, str s)
{
	struct buf b = { .arena = a };

	for (size_t i = 0; i < s.n; i++) {
		if (s.p[i] == '{' || s.p[i] == '}')
			buf_addc(&b, s.p[i]);
		buf_addc(&b, s.p[i]);
	}
	return buf_str(&b);
}

static void add_message(struct buf *b, const char *key, str text)
{
	buf_addf(b, "\"%s\":{\"text\":", key);
	json_string(b, message_text(b->arena, text));
	buf_addc(b, '}');
}

/* A path as a relative reference (RFC 3986): all but unreserved bytes and the slash
 * are written in hexadecimal. */
static str uri_of(struct arena *a, str path)
{
	static const char hex[] = "0123456789ABCDEF";
	static const str marks = { "-._~/", 5 };
	struct buf b = { .arena = a };

	for (size_t i = 0; i < path.n; i++) {
		unsigned char c = (unsigned char)path.p[i];
		bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');

		if (letter || (c >= '0' && c <= '9') ||
		    str_find_char(marks, (char)c, 0) < marks.n)
			buf_addc(&b, (char)c);
		else
			buf_addf(&b, "%%%c%c", hex[c >> 4], hex[c & 15]);
	}
	return buf_str(&b);
}

/* "physicalLocation"; nothing for a place in no file. A fault of a whole file has no
 * region. */
static bool add_physical(struct buf *b, const struct sources *s, struct pos p)
{
	if (p.file == POS_NOWHERE || p.file >= s->n)
		return false;
	buf_adds(b, "\"physicalLocation\":{\"artifactLocation\":{\"uri\":");
	json_string(b, uri_of(b->arena, s->v[p.file].path));
	buf_adds(b, ",\"uriBaseId\":\"PROGRAM\"}");
	if (p.line && p.col)
		buf_addf(b, ",\"region\":{\"startLine\":%u,\"startColumn\":%u}", p.line,
		    p.col);
	else if (p.line)
		buf_addf(b, ",\"region\":{\"startLine\":%u}", p.line);
	buf_addc(b, '}');
	return true;
}

static void add_logical(struct buf *b, str name, const char *kind, bool *any)
{
	if (!name.n)
		return;
	buf_adds(b, *any ? "," : "\"logicalLocations\":[");
	buf_adds(b, "{\"name\":");
	json_string(b, name);
	buf_addf(b, ",\"kind\":\"%s\"}", kind);
	*any = true;
}

/* Assignment and skill, which no file position says. */
static void add_subjects(struct buf *b, str assignment, str skill, bool after)
{
	bool any = false;

	if (after && (assignment.n || skill.n))
		buf_addc(b, ',');
	add_logical(b, assignment, "assignment", &any);
	add_logical(b, skill, "skill", &any);
	if (any)
		buf_addc(b, ']');
}

static void add_locations(struct buf *b, const struct finding *d, const struct sources *s)
{
	bool physical;

	buf_adds(b, ",\"locations\":[{");
	physical = add_physical(b, s, d->pos);
	add_subjects(b, d->assignment, d->skill, physical);
	buf_adds(b, "}]");
}

static void add_related(struct buf *b, const struct finding *d, const struct sources *s)
{
	if (!d->nrelated)
		return;
	buf_adds(b, ",\"relatedLocations\":[");
	for (size_t i = 0; i < d->nrelated; i++) {
		const struct related *r = &d->related[i];

		buf_addf(b, "%s{\"id\":%zu,", i ? ",\n   " : "\n   ", i + 1);
		add_message(b, "message", r->label.n ? r->label : r->assignment);
		buf_addc(b, ',');
		if (!add_physical(b, s, r->pos))
			b->n--;
		add_subjects(b, r->assignment, r->skill, true);
		buf_addc(b, '}');
	}
	buf_addc(b, ']');
}

static void add_suppression(struct buf *b, const struct waived *w)
{
	if (!w)
		return;
	buf_adds(b, ",\"suppressions\":[{\"kind\":\"external\",\"status\":\"accepted\","
	    "\"justification\":");
	json_string(b, str_format(b->arena, "%.*s; %.*s; until %.*s", STR_ARG(w->reason),
	    STR_ARG(w->role), STR_ARG(w->until)));
	buf_adds(b, "}]");
}

/* Cause and repair belong to what a reader sees, so they stand in the message too. */
static str whole_message(struct arena *a, const struct finding *d)
{
	struct buf b = { .arena = a };

	buf_add(&b, d->message);
	if (d->cause.n)
		buf_addf(&b, ". Cause: %.*s", STR_ARG(d->cause));
	if (d->repair.n)
		buf_addf(&b, ". Repair: %.*s", STR_ARG(d->repair));
	buf_addc(&b, '.');
	return buf_str(&b);
}

static void add_result(struct buf *b, const struct finding *d, const struct sources *s)
{
	buf_addf(b, "{\"ruleId\":\"%s\",\"ruleIndex\":%u,\"level\":\"%s\",",
	    finding_info(d->name)->name, (unsigned)d->name, level_word(d->level));
	add_message(b, "message", whole_message(b->arena, d));
	add_locations(b, d, s);
	add_related(b, d, s);
	add_suppression(b, d->waived);
	buf_addc(b, '}');
}

static void add_rule(struct buf *b, enum finding_name name)
{
	static const char *const classes[] = { [CLASS_SAFETY] = "safety",
		[CLASS_FIRM] = "firm", [CLASS_CUSTOM] = "custom" };
	const struct finding_info *info = finding_info(name);

	buf_addf(b, "{\"id\":\"%s\",", info->name);
	add_message(b, "shortDescription", str_of(info->help));
	if (info->example[0]) {
		buf_addc(b, ',');
		add_message(b, "help", str_of(info->example));
	}
	buf_addf(b, ",\"defaultConfiguration\":{\"level\":\"%s\"},"
	    "\"properties\":{\"class\":\"%s\"}}", level_word(info->level),
	    classes[info->class]);
}

void report_sarif(struct buf *b, const struct findings *f, const struct sources *s,
    str version)
{
	buf_adds(b, "{\"$schema\":\"https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/"
	    "schemas/sarif-schema-2.1.0.json\",\n\"version\":\"2.1.0\",\n\"runs\":[{\n"
	    "\"tool\":{\"driver\":{\"name\":\"fitup\",\"version\":");
	json_string(b, version);
	buf_adds(b, ",\"rules\":[");
	for (uint32_t k = 0; k < FINDING_COUNT; k++) {
		buf_adds(b, k ? ",\n " : "\n ");
		add_rule(b, k);
	}
	buf_adds(b, "]}},\n\"columnKind\":\"unicodeCodePoints\",\n\"originalUriBaseIds\":"
	    "{\"PROGRAM\":{\"description\":{\"text\":\"the program folder\"}}},\n"
	    "\"results\":[");
	for (size_t i = 0; i < f->n; i++) {
		buf_adds(b, i ? ",\n " : "\n ");
		add_result(b, &f->v[i], s);
	}
	buf_adds(b, "]}]}\n");
}
