#include "reckon/topic.h"

/* Short names, so that an input stays on its line. */
#define OWED(key, kind, hint) { key, INPUT_##kind, NEED_OWED, NULL, hint, false, false }
#define MAY(key, kind, hint) { key, INPUT_##kind, NEED_MAY, NULL, hint, false, false }
#define ZERO(key, kind, hint) { key, INPUT_##kind, NEED_MAY, NULL, hint, true, false }
#define ELSE(key, kind, value, hint) \
	{ key, INPUT_##kind, NEED_MAY, value, hint, false, false }
#define ZELSE(key, kind, value, hint) \
	{ key, INPUT_##kind, NEED_MAY, value, hint, true, false }

#define METAL ELSE("material", WORDS, "mild steel", "A36, 304, 6061-T6, ...")
#define PIECES MAY("count", COUNT, "pieces of that length")
#define SHEET MAY("material", WORDS, "metal of a thickness in gauge")

static const struct topic rows[] = {
	{ "fillet", "least leg of a fillet weld, by thickness",
	    "fillet thinner 1/4 in thicker 3/4 in hydrogen low", work_fillet, {
	    OWED("thinner", LENGTH, "the thinner part"),
	    MAY("thicker", LENGTH, "the thicker part; as thick unless said"),
	    ELSE("hydrogen", CHOICE, "low", "low|ordinary"),
	    ELSE("loading", CHOICE, "static", "static|cyclic") } },
	{ "lap-edge", "largest leg along the edge of a lap", "lap-edge edge 3/8 in",
	    work_lap_edge, {
	    OWED("edge", LENGTH, "thickness of the edge") } },
	{ "throat", "throat of a fillet: equal, unequal or skewed legs",
	    "throat leg 1/4 in angle 60 deg", work_throat, {
	    OWED("leg", LENGTH, "leg along the plate"),
	    MAY("leg2", LENGTH, "the other leg, if unequal"),
	    ELSE("angle", ANGLE, "90 deg", "between the parts") } },
	{ "leg", "leg that gives a throat, square or skewed",
	    "leg throat 0.25 in angle 120 deg", work_leg, {
	    OWED("throat", LENGTH, "throat wanted"),
	    ELSE("angle", ANGLE, "90 deg", "between the parts") } },
	{ "groove", "area of a groove weld with its reinforcement",
	    "groove shape v thickness 1/2 in gap 1/8 in included 60 deg", work_groove, {
	    OWED("shape", CHOICE,
	        "square|v|bevel|u|j|double-v|double-bevel|double-u|double-j"),
	    OWED("thickness", LENGTH, "of the part"),
	    ZELSE("gap", LENGTH, "0 in", "root opening"),
	    ZELSE("land", LENGTH, "0 in", "root face"),
	    MAY("included", ANGLE, "angle between the faces; of a bevel or J its one "
	    "side"),
	    MAY("radius", LENGTH, "of a U or J"),
	    MAY("front", LENGTH, "depth from the front of a double groove; half unless "
	    "said"),
	    MAY("cap-height", LENGTH, "reinforcement of each face"),
	    MAY("cap-width", LENGTH, "its width; the groove's own unless said"),
	    MAY("root-height", LENGTH, "reinforcement at the root"),
	    MAY("root-width", LENGTH, "its width"),
	    ELSE("backing", CHOICE, "no", "no|yes") } },
	{ "weld-metal", "weld metal in a fillet", "weld-metal leg 1/4 in length 20 ft",
	    work_weld_metal, {
	    OWED("leg", LENGTH, "leg"),
	    MAY("leg2", LENGTH, "the other leg, if unequal"),
	    OWED("length", LENGTH, "of all welds together"),
	    ELSE("overweld", NUMBER, "1", "factor for welds larger than drawn"),
	    MAY("efficiency", PERCENT, "weld metal from filler, for the filler to buy"),
	    ELSE("metal", CHOICE, "steel", "steel|stainless|aluminum") } },
	{ "filler", "filler to buy for a weight of weld metal",
	    "filler weight 2.12 lb process SMAW electrode 14 in stub 2 in", work_filler, {
	    OWED("weight", WEIGHT, "weld metal"),
	    ELSE("process", WORDS, "SMAW", "SMAW, GMAW, FCAW-G, FCAW-S, SAW, GTAW"),
	    MAY("gas", WORDS, "of GMAW: CO2, 75Ar-25CO2, 98Ar-2O2"),
	    MAY("electrode", LENGTH, "length of a stick; 14 in unless said"),
	    MAY("stub", LENGTH, "thrown away; the table holds 2 in"),
	    ZELSE("spatter", PERCENT, "0 %", "loss beyond the table's"),
	    MAY("efficiency", PERCENT, "in place of the table's") } },
	{ "arc-time", "arc and clock time of a weld",
	    "arc-time weight 3.4 lb rate 10.2 lb/h operating 45 %", work_arc_time, {
	    MAY("weight", WEIGHT, "weld metal"),
	    MAY("rate", RATE, "deposition rate"),
	    MAY("length", LENGTH, "of the weld"),
	    MAY("speed", SPEED, "travel speed"),
	    ELSE("passes", COUNT, "1", "passes at that speed"),
	    MAY("operating", PERCENT, "share of the clock that the arc burns") } },
	{ "gas", "shielding gas used", "gas flow 35 cfh arc 2 h cylinder 300 ft3",
	    work_gas, {
	    OWED("flow", FLOW, "flow"),
	    OWED("arc", HOURS, "arc time"),
	    MAY("cylinder", VOLUME, "gas in one cylinder") } },
	{ "purge", "time to purge a pipe before the root",
	    "purge bore 6.065 in length 3 ft flow 20 cfh", work_purge, {
	    OWED("bore", LENGTH, "inside diameter"),
	    OWED("length", LENGTH, "between the dams"),
	    OWED("flow", FLOW, "purge flow"),
	    ELSE("changes", NUMBER, "6", "volumes of gas to pass") } },
	{ "heat-input", "heat input of the arc", "heat-input volts 29 amps 325 speed "
	    "12.5 in/min",
	    work_heat_input, {
	    OWED("volts", VOLTS, "at the arc"),
	    OWED("amps", AMPS, "welding current"),
	    OWED("speed", SPEED, "travel speed"),
	    ELSE("efficiency", PERCENT, "100 %", "of the arc, where a code asks for "
	    "it") } },
	{ "preheat", "least preheat by thickness and steel",
	    "preheat thickness 1 in steel A36",
	    work_preheat, {
	    OWED("thickness", LENGTH, "the thickest part at the weld"),
	    MAY("steel", WORDS, "A36, A53 B, A106 B, A572-50, A572-60, A572-65"),
	    ELSE("hydrogen", CHOICE, "low", "low|ordinary"),
	    MAY("category", CHOICE, "A|B|C|D") } },
	{ "interpass", "interpass temperature by metal", "interpass material 304",
	    work_interpass, {
	    OWED("material", WORDS, "A36, 304, ...") } },
	{ "carbon", "carbon equivalent of a steel",
	    "carbon c 0.15 mn 1.2 cr 0.1 mo 0.05 v 0.02 ni 0.5 cu 0.2", work_carbon, {
	    OWED("c", NUMBER, "percent"),
	    OWED("mn", NUMBER, "percent"),
	    ZERO("cr", NUMBER, "percent"),
	    ZERO("mo", NUMBER, "percent"),
	    ZERO("v", NUMBER, "percent"),
	    ZERO("ni", NUMBER, "percent"),
	    ZERO("cu", NUMBER, "percent") } },
	{ "bend", "guided bend: plunger, die and strain",
	    "bend thickness 3/8 in code IX edition 2010 plunger 1-1/2 in", work_bend, {
	    OWED("thickness", LENGTH, "of the specimen"),
	    MAY("code", WORDS, "D1.1, D1.2, IX or 1104"),
	    MAY("edition", COUNT, "year of the code"),
	    MAY("yield", STRENGTH, "yield strength, for D1.1"),
	    MAY("material", WORDS, "in place of yield; for D1.2 and IX the alloy"),
	    MAY("filler", WORDS, "class of filler of aluminum, as ER4043"),
	    MAY("group", CHOICE, "others|P23|P11|P51|P52"),
	    MAY("plunger", LENGTH, "the one that you own") } },
	{ "strips", "bend strips on a plate or pipe coupon", "strips length 8 in count 2",
	    work_strips, {
	    ELSE("form", CHOICE, "plate", "plate|pipe"),
	    OWED("count", COUNT, "strips"),
	    MAY("length", LENGTH, "of the weld in a plate"),
	    MAY("od", LENGTH, "outside diameter of a pipe"),
	    ELSE("cut", CHOICE, "face-root", "face-root|side"),
	    MAY("width", LENGTH, "of a strip; by the figure unless said"),
	    ZELSE("discard", LENGTH, "1 in", "at each end of a plate"),
	    ZELSE("kerf", LENGTH, "1/8 in", "width of a cut"),
	    ZELSE("first", ANGLE, "45 deg", "first strip of a pipe, from the top") } },
	{ "qualify", "what a welder test qualifies, by code and edition",
	    "qualify code D1.1 edition 2020 test 3G thickness 3/8 in", work_qualify, {
	    OWED("code", WORDS, "D1.1 or IX"),
	    OWED("edition", COUNT, "year of the code"),
	    OWED("test", WORDS, "position, as 3G or 3G+4G"),
	    ELSE("form", CHOICE, "plate", "plate|pipe"),
	    ELSE("weld", CHOICE, "groove", "groove|fillet"),
	    MAY("thickness", LENGTH, "plate or wall; for IX the weld metal"),
	    MAY("od", LENGTH, "outside diameter of a pipe"),
	    MAY("nps", WORDS, "pipe size, with schedule"),
	    MAY("schedule", WORDS, "40, 80, XXS ..."),
	    ELSE("layers", COUNT, "1", "layers of weld metal"),
	    MAY("backing", CHOICE, "yes|no"),
	    MAY("progression", CHOICE, "up|down") } },
	{ "pipe", "pipe by size and schedule: wall, area, weight",
	    "pipe nps 6 schedule 40",
	    work_pipe, {
	    OWED("nps", WORDS, "nominal size, as 6 or 1-1/2"),
	    OWED("schedule", WORDS, "40, 80, STD, XXS ..."),
	    MAY("length", LENGTH, "of the pipe"), PIECES } },
	{ "plate", "weight of plate or sheet",
	    "plate thickness 3/8 in width 48 in length 96 in", work_plate, {
	    OWED("thickness", LENGTH, "of the plate"),
	    OWED("width", LENGTH, "of the plate"),
	    MAY("length", LENGTH, "of the plate"), PIECES, METAL } },
	{ "bar", "weight of bar", "bar shape flat size 2 in thickness 1/4 in length 20 "
	    "ft",
	    work_bar, {
	    OWED("shape", CHOICE, "round|square|hex|flat"),
	    OWED("size", LENGTH, "diameter, side, across flats, or width"),
	    MAY("thickness", LENGTH, "of a flat"),
	    MAY("length", LENGTH, "of the bar"), PIECES, METAL } },
	{ "tube", "weight of tube", "tube shape square side 2 in wall 1/8 in length 24 "
	    "ft",
	    work_tube, {
	    OWED("shape", CHOICE, "round|square|rectangle"),
	    OWED("side", LENGTH, "outside diameter or side"),
	    MAY("side2", LENGTH, "other side of a rectangle"),
	    OWED("wall", LENGTH, "thickness"),
	    MAY("length", LENGTH, "of the tube"), PIECES, METAL } },
	{ "angle", "weight of angle", "angle leg 2 in thickness 1/4 in length 20 ft",
	    work_angle, {
	    OWED("leg", LENGTH, "outside leg"),
	    MAY("leg2", LENGTH, "the other leg, if unequal"),
	    OWED("thickness", LENGTH, "of the legs"),
	    MAY("length", LENGTH, "of the angle"), PIECES, METAL } },
	{ "gauge", "thickness and weight of a sheet gauge",
	    "gauge number 10 material stainless",
	    work_gauge, {
	    OWED("number", COUNT, "gauge number"), METAL } },
	{ "brake", "press brake: opening, force, radius, flange",
	    "brake thickness 1/8 in length 4 ft opening 1 in", work_brake, {
	    OWED("thickness", LENGTH, "of the sheet"),
	    OWED("length", LENGTH, "of the bend"), METAL,
	    MAY("opening", LENGTH, "of the die"),
	    MAY("owned", LENGTHS, "openings to choose from: 1/2, 1, 2 in"),
	    MAY("tons", TONS, "what the machine gives"),
	    MAY("bed", LENGTH, "of the machine") } },
	{ "shear", "thickest sheet that a shear cuts",
	    "shear rated 1/4 in material stainless",
	    work_shear, {
	    OWED("rated", LENGTH, "thickness on the machine's plate"),
	    ELSE("rated-for", WORDS, "mild steel", "metal of that rating"), METAL,
	    MAY("thickness", LENGTH, "of the sheet to cut"),
	    MAY("length", LENGTH, "of the cut"),
	    MAY("bed", LENGTH, "of the machine") } },
	{ "punch", "force to punch a hole", "punch diameter 13/16 in thickness 3/8 in "
	    "tons 50",
	    work_punch, {
	    MAY("diameter", LENGTH, "of a round hole"),
	    MAY("edge", LENGTH, "length cut, of any hole"),
	    OWED("thickness", LENGTH, "of the plate"), METAL,
	    MAY("strength", STRENGTH, "shear strength, in place of the table's"),
	    MAY("tons", TONS, "what the machine gives") } },
	{ "roll", "thickest plate that a roll takes",
	    "roll rated 1/4 in bed 4 ft material 304 width 4 ft", work_roll, {
	    OWED("rated", LENGTH, "thickness on the machine's plate, mild steel"),
	    OWED("bed", LENGTH, "width of that rating"), METAL,
	    MAY("width", LENGTH, "of the plate to roll"),
	    MAY("thickness", LENGTH, "of the plate to roll"),
	    MAY("top-roll", LENGTH, "diameter of the top roll") } },
	{ "allowance", "bend allowance", "allowance radius 1/8 in thickness 1/8 in k "
	    "0.407",
	    work_allowance, {
	    OWED("radius", LENGTH, "inside radius"),
	    OWED("thickness", LENGTH, "of the sheet"), SHEET,
	    ELSE("angle", ANGLE, "90 deg", "bent through"),
	    MAY("k", NUMBER, "neutral line over thickness; by radius unless said"),
	    ELSE("rule", CHOICE, "exact", "exact|navy|faa") } },
	{ "setback", "setback of a bend", "setback radius 0.16 in thickness 0.04 in",
	    work_setback, {
	    OWED("radius", LENGTH, "inside radius"),
	    OWED("thickness", LENGTH, "of the sheet"), SHEET,
	    ELSE("angle", ANGLE, "90 deg", "bent through") } },
	{ "blank", "blank length of a braked part",
	    "blank flanges 1, 2, 1 in radius 0.16 in thickness 0.04 in k 0.447",
	    work_blank, {
	    OWED("flanges", LENGTHS, "outside sizes in order"),
	    OWED("radius", LENGTH, "inside radius"),
	    OWED("thickness", LENGTH, "of the sheet"), SHEET,
	    ELSE("angle", ANGLE, "90 deg", "each bent through"),
	    ELSE("measured", CHOICE, "outside", "outside|inside"),
	    MAY("k", NUMBER, "neutral line over thickness; by radius unless said") } },
	{ "cylinder", "stretch-out of a rolled shell",
	    "cylinder diameter 24 in height 36 in thickness 1/4 in", work_cylinder, {
	    OWED("diameter", LENGTH, "outside if a thickness is given"),
	    OWED("height", LENGTH, "of the shell"),
	    MAY("thickness", LENGTH, "of the plate"), SHEET } },
	{ "elbow", "ordinates of a mitered elbow",
	    "elbow diameter 6.625 in angle 45 pieces 2 height 6 in", work_elbow, {
	    OWED("diameter", LENGTH, "outside"),
	    ELSE("angle", ANGLE, "90 deg", "turned in all"),
	    ELSE("pieces", COUNT, "2", "pieces"),
	    ZERO("radius", LENGTH, "of the center line"),
	    ZERO("height", LENGTH, "of an end piece on the center line"),
	    ELSE("divisions", COUNT, "12", "of the circle") } },
	{ "saddle", "ordinates of a branch on a run",
	    "saddle branch 4.5 in run 6.625 in height 12 in", work_saddle, {
	    OWED("branch", LENGTH, "diameter: outside for set-on"),
	    OWED("run", LENGTH, "outside diameter"),
	    ELSE("angle", ANGLE, "90 deg", "between the center lines"),
	    ZERO("height", LENGTH, "of the branch from the center line of the run"),
	    ELSE("divisions", COUNT, "24", "of the circle") } },
	{ "cone", "flat pattern of a cone", "cone base 8 in top 5 in height 4 in",
	    work_cone, {
	    OWED("base", LENGTH, "diameter at the base"),
	    ZERO("top", LENGTH, "diameter at the top; a point unless said"),
	    OWED("height", LENGTH, "upright"),
	    MAY("thickness", LENGTH, "of the sheet; then sizes are outside"), SHEET } },
	{ "box", "faces of a tapered box", "box base 12 in top 6 in height 8 in",
	    work_box, {
	    OWED("base", LENGTH, "across the flats at the base"),
	    ZERO("top", LENGTH, "across the flats at the top"),
	    OWED("height", LENGTH, "upright"),
	    ELSE("sides", COUNT, "4", "sides"),
	    MAY("thickness", LENGTH, "of the sheet; then sizes are outside"), SHEET } },
	{ "square-round", "true lengths of a square to round",
	    "square-round base 12 in round 6 in height 8 in", work_square_round, {
	    OWED("base", LENGTH, "side of the square"),
	    MAY("base2", LENGTH, "other side, if oblong"),
	    OWED("round", LENGTH, "diameter of the round"),
	    OWED("height", LENGTH, "upright"),
	    MAY("thickness", LENGTH, "of the sheet; then sizes are outside"), SHEET } },
	{ "torch", "starting setting for oxy-acetylene cutting", "torch thickness 1/2 in",
	    work_torch, {
	    OWED("thickness", LENGTH, "of carbon steel") } },
	{ "shade", "least filter shade", "shade process SMAW amps 110-140", work_shade, {
	    OWED("process", WORDS, "SMAW, GMAW, GTAW, OFC, TB ..."),
	    { "amps", INPUT_AMPS, NEED_MAY, NULL, "highest current", false, true },
	    MAY("thickness", LENGTH, "of plate, for OFW and OFC") } },
	{ "acetylene", "how fast acetylene may be drawn",
	    "acetylene capacity 145 ft3 flow 25 cfh", work_acetylene, {
	    OWED("capacity", VOLUME, "of one full cylinder"),
	    MAY("flow", FLOW, "what the torch takes"),
	    ELSE("use", CHOICE, "pauses", "pauses|continuous") } },
	{ "credit-hours", "hours of work behind credits",
	    "credit-hours credits 5 lecture 2 h lab 6 h outside 7 h weeks 11",
	    work_credit_hours, {
	    OWED("credits", NUMBER, "of the course"),
	    ZERO("lecture", HOURS, "a week"),
	    ZERO("lab", HOURS, "a week"),
	    ZERO("outside", HOURS, "student's own work a week"),
	    OWED("weeks", COUNT, "of the term"),
	    ELSE("calendar", CHOICE, "quarter", "quarter|semester") } },
};

const struct topic *topic_rows(size_t *n)
{
	*n = sizeof rows / sizeof *rows;
	return rows;
}
