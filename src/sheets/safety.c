#include "sheets/safety.h"

#include "base/buf.h"
#include "reckon/shade.h"
#include "sheets/metric_words.h"
#include "sheets/sheet.h"

enum { ARC = 1, FLAME = 2, CUT = 4, GOUGE = 8 };

/* What each process brings with it, by enum process. */
static const unsigned hazards[PROCESS_COUNT] = {
	[PROCESS_SMAW] = ARC, [PROCESS_GMAW] = ARC, [PROCESS_GMAW_S] = ARC,
	[PROCESS_FCAW_G] = ARC, [PROCESS_FCAW_S] = ARC, [PROCESS_GTAW] = ARC,
	[PROCESS_OFC] = FLAME | CUT, [PROCESS_OFW] = FLAME, [PROCESS_PAC] = ARC | CUT,
	[PROCESS_CAC_A] = ARC | CUT | GOUGE, [PROCESS_TB] = FLAME, [PROCESS_TS] = FLAME,
};

/* Common practice, no source, but for the figures named in the line. */
static const struct { unsigned hazard; str line, card; } lines[] = {
	{ ARC, WORD("Arc rays burn eyes and skin: hood down before the arc, curtain closed, no bare skin. "
	    "Dry gloves; never touch electrode and work together."),
	    WORD("Hood down, curtain closed, no bare skin, gloves dry.") },
	{ ARC | FLAME, WORD("Fume: extraction on and close, head out of the plume. Hot metal stays hot: "
	    "mark it, use tongs."),
	    WORD("Extraction on, head out of the plume. HOT on hot metal.") },
	{ FLAME, WORD("Oxy-fuel: acetylene never over 15 psig [103 kPa] (29 CFR 1910.253); "
	    "cylinders chained; no oil near oxygen; leak test before lighting; flashback arrestors in place."),
	    WORD("Cylinders chained, leak test, acetylene never over 15 psig [103 kPa].") },
	{ CUT, WORD("Sparks travel: clear what burns, cover what cannot be moved, extinguisher at hand, "
	    "fire watch for at least half an hour after hot work where conditions call for one (29 CFR "
	    "1910.252), longer where the shop or local code says so."),
	    WORD("Clear what burns, extinguisher at hand, fire watch where called for.") },
	{ GOUGE, WORD("Gouging is loud and throws metal: ear protection, screens up, air on before "
	    "the arc."),
	    WORD("Ear protection on, screens up, air before arc.") },
};

str safety_deference(const struct edition *e)
{
	return word(edition_language(e), "Local codes, the named code edition, the maker's plate "
	    "and a licensed or "
	    "certified person decide. Where they differ from this sheet, they win.");
}

str safety_record_line(const struct edition *e, const struct assignment *x)
{
	const struct language *l = edition_language(e);

	if (x->kind == KIND_QUALIFICATION_TEST)
		return word(l, "A coupon is a training record. It counts as a qualification only when "
		    "the witness signs the record that the named code edition asks for.");
	return word(l, "A coupon is a training record, not a qualification.");
}

/* The highest amperes that the sheet names for process p, or for all of it. */
static double highest_amps(const struct assignment *x, uint32_t i)
{
	double most = 0;

	for (uint32_t c = 0; c < x->ncurrents; c++)
		if (x->currents[c].amps.hi > most && (x->ncurrents != x->nprocesses || c == i))
			most = x->currents[c].amps.hi;
	return most;
}

static double thickest_mm(const struct assignment *x)
{
	double most = 0;

	for (uint32_t i = 0; i < x->nthicknesses; i++)
		if (x->thicknesses[i].hi > most)
			most = x->thicknesses[i].hi;
	return most;
}

/* The last number of a suggestion such as "4-5". */
static unsigned suggested_shade(const struct shade *s)
{
	unsigned n = 0;
	uint32_t v;
	str rest = str_of(s->suggested), part;

	while (str_next(&rest, '-', &part))
		if (str_to_u32(str_trim(part), &v))
			n = v;
	return n;
}

/* Worded for the eye at the booth: a floor, a safe start, and the way between. The
 * start is a comfort shade from memory; only the floor is regulation. */
static bool shade_line(struct arena *a, const struct edition *e, const struct assignment *x,
    uint32_t i, str *out)
{
	str process = process_word(x->processes[i]);
	double amps = highest_amps(x, i);
	const struct shade *s = shade_is_by_thickness(process)
	    ? shade_by_thickness(process, thickest_mm(x))
	    : amps > 0 ? shade_by_current(process, amps) : NULL;
	unsigned start;

	if (!s)
		return false;
	start = suggested_shade(s);
	if (start < (unsigned)s->least)
		start = (unsigned)s->least + 2;
	*out = word_format(a, edition_language(e), "Shade for %.*s: never lighter than %d (29 CFR "
	    "1910.133); start at %u or darker and lighten only until the weld is clear.",
	    STR_ARG(process), s->least, start);
	return true;
}

static const str stainless_lines[2] = {
	WORD("Stainless fume carries hexavalent chromium (29 CFR 1910.1026): "
	    "local extraction always, no exceptions."),
	WORD("Stainless: local extraction always.") };
static const str coated_lines[2] = {
	WORD("Coated metal: know the coating, remove it back from the weld, extraction on."),
	WORD("Coated: coating off back from the weld, extraction on.") };
static const str machine_lines[2] = {
	WORD("Machines: only after your sign-off, guards in place, hands clear of the "
	    "pinch point, lock out before reaching in."),
	WORD("Only after your sign-off. Guards in place, hands clear.") };

static size_t add_material_lines(const struct edition *e, const struct assignment *x, bool card,
    str *out, size_t n)
{
	bool stainless = false, coated = fact_text(x, STR("Coating")).n > 0;

	for (uint32_t i = 0; i < x->nmaterials; i++) {
		stainless |= x->materials[i].metal == METAL_STAINLESS;
		coated |= x->materials[i].metal == METAL_GALVANIZED;
	}
	if (stainless && x->nprocesses)
		out[n++] = edition_word(e, stainless_lines[card]);
	if (coated && x->nprocesses)
		out[n++] = edition_word(e, coated_lines[card]);
	return n;
}

static size_t write_lines(struct arena *a, const struct edition *e, const struct assignment *x,
    bool card, str *out)
{
	unsigned hazard = 0;
	size_t n = 0;

	for (uint32_t i = 0; i < x->nprocesses && n < 4; i++) {
		hazard |= hazards[x->processes[i]];
		n += shade_line(a, e, x, i, &out[n]);
	}
	for (size_t i = 0; i < sizeof lines / sizeof *lines; i++)
		if (lines[i].hazard & hazard)
			out[n++] = units_text(a, e,
			    edition_word(e, card ? lines[i].card : lines[i].line));
	n = add_material_lines(e, x, card, out, n);
	if (!hazard && fact_text(x, STR("Machines")).n)
		out[n++] = edition_word(e, machine_lines[card]);
	return n;
}

/* The first two cautions of the work in a few words of that language. */
static str short_cautions(struct arena *a, const struct language *l,
    const struct assignment *x)
{
	struct buf b = { .arena = a };
	unsigned hazard = 0, n = 0;

	for (uint32_t i = 0; i < x->nprocesses; i++)
		hazard |= hazards[x->processes[i]];
	for (size_t i = 0; i < sizeof lines / sizeof *lines && n < 2; i++)
		if (lines[i].hazard & hazard)
			buf_addf(&b, "%s%.*s", n++ ? " " : "",
			    STR_ARG(word_str(l, lines[i].card)));
	if (!hazard && fact_text(x, STR("Machines")).n)
		buf_add(&b, word_str(l, machine_lines[1]));
	return buf_str(&b);
}

size_t safety_other_lines(struct arena *a, const struct edition *e,
    const struct assignment *x, str *out)
{
	const struct language *own = edition_language(e), *l = NULL;
	size_t n = 0;

	for (size_t i = 0; i <= 1 || l; i++) {
		str words;

		/* English first, which is no row of the table. */
		l = i ? language_at(i - 1) : NULL;
		if ((i && !l) || l == own || n == SAFETY_LINES_MOST)
			continue;
		words = short_cautions(a, l, x);
		if (words.n)
			out[n++] = units_text(a, e, str_format(a, "%.*s: %.*s",
			    STR_ARG(language_own_name(l)), STR_ARG(words)));
	}
	return n;
}

size_t safety_lines(struct arena *a, const struct edition *e, const struct assignment *x,
    str *out)
{
	return write_lines(a, e, x, false, out);
}

size_t safety_card_lines(struct arena *a, const struct edition *e, const struct assignment *x,
    str *out)
{
	return write_lines(a, e, x, true, out);
}

const str safety_page[] = {
	WORD("No arc, flame or machine before the sign-off for it is dated and initialed."),
	WORD("Eyes: safety glasses with side shields from the door on; hood or goggles of the shade on "
	    "the sheet for any arc or flame. A flash burn hurts hours later: report it at once."),
	WORD("Skin: cotton, wool or leather, cuffs down over boots, no synthetics, no bare forearms. "
	    "Gloves dry and whole."),
	WORD("Air: extraction on before the arc. Stop and say so when you taste metal, feel dizzy or "
	    "see a coating you do not know. No welding in a confined place in this shop: that takes a "
	    "permit, an oxygen meter and an attendant."),
	WORD("Electricity: inspect cables and stinger each day; no repairs by students; stand dry; "
	    "machine off to change polarity."),
	WORD("Gas: cylinders upright and chained, caps on when moved, oxygen away from oil and fuel "
	    "gas. Leak test with a solution made for oxygen, never oil or a flame."),
	WORD("Fire: know the nearest extinguisher and the way out. Fill in the hot-work permit for "
	    "any work outside the booths and keep the fire watch that it names."),
	WORD("Machines: guards on, long hair and strings tied back, no gloves at drill or grinder "
	    "spindles, lock out before clearing a jam. Look each wheel over for cracks and check its speed "
	    "rating and date before it goes on."),
	WORD("Noise and lifting: ear protection for grinding and gouging; two people or the hoist for "
	    "anything you would not carry to your car."),
	WORD("Hot metal looks cold. Write HOT and the time on it. Quench nothing that goes to a test."),
};
const size_t safety_page_lines = sizeof safety_page / sizeof *safety_page;
