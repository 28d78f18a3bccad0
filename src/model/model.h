/* model/model.h - the program as it is meant: quarters, courses, assignments,
 * skills, and what each asks for and gives.
 *
 * Built once by model_bind from the blocks of all files, then read-only. Arrays
 * are indexed by uint32_t; NONE marks "not
 * given" or "not known" (an unknown one was reported and is left out). Everything
 * that can be wrong carries its place. Lengths are mm, angles degrees, currents A,
 * hours h; a quantity also keeps how it was written. */
#ifndef MODEL_MODEL_H
#define MODEL_MODEL_H

#include "base/finding.h"
#include "base/map.h"
#include "base/pixels.h"
#include "base/text.h"
#include "units/quantity.h"

#define NONE UINT32_MAX

enum skill_level { SKILL_INTRODUCED = 1, SKILL_PRACTICED, SKILL_ASSESSED };

enum kind {
	KIND_SAFETY, KIND_WRITTEN, KIND_DRILL, KIND_COUPON, KIND_PRACTICE_TEST,
	KIND_QUALIFICATION_TEST, KIND_PROJECT, KIND_COUNT
};

enum process {
	PROCESS_SMAW, PROCESS_GMAW, PROCESS_GMAW_S, PROCESS_FCAW_G, PROCESS_FCAW_S,
	PROCESS_GTAW, PROCESS_OFC, PROCESS_OFW, PROCESS_PAC, PROCESS_CAC_A, PROCESS_TB,
	PROCESS_TS, PROCESS_COUNT
};

enum joint {
	JOINT_TEE, JOINT_LAP, JOINT_CORNER, JOINT_OPEN_CORNER, JOINT_EDGE,
	JOINT_SQUARE_BUTT, JOINT_SINGLE_V, JOINT_SINGLE_BEVEL, JOINT_FLARE_BEVEL,
	JOINT_U_GROOVE, JOINT_PIPE_BUTT, JOINT_BRANCH, JOINT_SURFACING, JOINT_CUT_EDGE,
	JOINT_BEVEL_CUT, JOINT_BUTT, JOINT_COUNT
};

enum position {
	POSITION_FLAT, POSITION_1F, POSITION_2F, POSITION_3F, POSITION_4F, POSITION_5F,
	POSITION_1G, POSITION_2G, POSITION_3G, POSITION_4G, POSITION_5G, POSITION_6G,
	POSITION_1G_ROLLED, POSITION_1F_ROLLED, POSITION_COUNT
};

enum progression { PROGRESS_NONE, PROGRESS_UP, PROGRESS_DOWN };

/* The screen and paper word of each: "qualification test", "GMAW-S", "single-V". */
str kind_word(enum kind k);
str process_word(enum process p);
str joint_word(enum joint j);
str position_word(enum position p);
str skill_level_word(enum skill_level l);

struct outcome {
	str id, title;
	struct pos pos;
};

struct skill {
	str id, title;
	uint32_t outcome;
	struct pos pos;
};

/* A skill at a level, as one line of a need or of Teaches says it. */
struct skill_at {
	uint32_t skill;          /* NONE: not in skills.md (reported) */
	str written;             /* the id as the author wrote it */
	enum skill_level level;  /* 0: missing (reported) */
	struct pos pos;          /* of the id */
	str evidence;            /* after "by"; may be empty */
};

struct need {
	struct pos pos;
	const struct skill_at *v; /* one, or the alternatives of "one of" */
	size_t n;
};

struct position_at {
	enum position position;
	enum progression progression;
	struct pos pos;
};

struct material {
	str text;                /* as written: "A36 plate", "NPS 6 pipe" */
	enum sheet_metal metal;  /* which gauge table and weight apply */
	struct pos pos;
};

struct filler {
	str class;               /* "E7018" */
	struct quantity dia;     /* kind none when not given */
	str where;               /* "root", "fill and cap"; may be empty */
	struct pos pos;
};

struct current {
	str polarity;            /* "DC+", "DC-", "AC" */
	struct quantity amps;
	struct pos pos;
};

/* A pipe size as "NPS 6 schedule 40", looked up. od_mm 0: not pipe; wall_mm 0: no
 * schedule given. */
struct pipe_size {
	str text;
	double od_mm, wall_mm;
};

/* One weld to be made. Without "## Welds": each joint in each position, cut edges
 * left out. What a weld does not say itself is filled in from the facts. */
struct weld {
	char letter;             /* 'A'.. ; 0 when it is the only one */
	enum joint joint;
	struct position_at at;   /* POSITION_COUNT: not given (reported) */
	enum process process;    /* PROCESS_COUNT: none named */
	double t1_mm, t2_mm;     /* members; t2 0 when the same */
	double leg_mm, length_mm; /* 0: not given */
	double leg2_mm;          /* on the second member; 0: as the one on the first */
	struct quantity t1, t2, leg, leg2, length;
	str material1, material2;
	struct pipe_size run, branch; /* run: of any pipe weld */
	bool unread;             /* a word of its line was left out (reported) */
	str text;                /* as written, for the sheet */
	struct pos pos;
};

struct pass {
	str name, text;
	struct pos pos;
};

enum { PIECE_DIMS = 4 };         /* "2 x 2 x 3/16 x 48 in" of an angle or a tube */

struct piece {
	str name;                /* "web" */
	uint32_t count;
	str size;                /* as written: "3/8 x 3 x 8 in" */
	struct quantity dims[PIECE_DIMS];
	uint32_t ndims;
	struct pipe_size pipe;   /* of a pipe ring; then dims[0] is its length */
	str material, made;      /* "A36 plate", "sawn" */
	struct pos pos;
	str shown_name;          /* of model_in: what is printed in place of the name */
};

/* Of the edges in a joint block; NONE: not given, the joint says it. */
enum preparation {
	PREPARATION_NONE, PREPARATION_SQUARE, PREPARATION_V, PREPARATION_BEVEL,
	PREPARATION_U, PREPARATION_J, PREPARATION_DOUBLE_V, PREPARATION_DOUBLE_BEVEL,
	PREPARATION_DOUBLE_U, PREPARATION_DOUBLE_J, PREPARATION_FLARE_V,
	PREPARATION_FLARE_BEVEL, PREPARATION_COUNT
};

/* Beads beside one another; back: laid from the other side. */
struct bead_layer { uint32_t beads; bool back; };

enum { SYMBOL_AWS, SYMBOL_ISO, SYMBOL_LEFT_OUT };
enum { CONTOUR_NONE, CONTOUR_FLUSH, CONTOUR_CONVEX, CONTOUR_CONCAVE };
enum { BACK_NOTHING, BACK_WELD, BACKING_WELD, BACK_MELT_THROUGH };
enum { HOLE_NONE, HOLE_PLUG, HOLE_SLOT, HOLE_SPOT };

/* What a joint block wants of its welding symbol; 0: not given, or no. */
struct symbol_marks {
	uint32_t standard;       /* SYMBOL_... */
	uint32_t contour, contour_back; /* CONTOUR_... */
	uint32_t finish, finish_back; /* the letter; 0 none */
	uint32_t field, all_around;
	uint32_t back;           /* BACK_... of a groove welded from one side */
	struct quantity melt;    /* height of the melt-through */
	struct quantity increment, pitch; /* of an intermittent weld */
	bool staggered;
	uint32_t hole;           /* HOLE_... of a lap */
	struct quantity hole_width, hole_length, spacing, fill;
	bool slots_across;       /* square to their row, not along it */
	uint32_t count;          /* of plugs, slots, spots or increments; 0 not told */
	str tail;
};

/* Where along a weld it stops and starts again; UNTOLD: words that name no place. */
enum restart_place { RESTART_UNTOLD, RESTART_MIDDLE, RESTART_FROM_LEFT, RESTART_FROM_RIGHT };

/* A joint block after the facts filled what it leaves out. A quantity of kind
 * QUANTITY_ANY (zeroed) is not given. */
struct joint_block {
	uint32_t weld;           /* index in welds, NONE when it names none */
	enum joint joint;        /* JOINT_COUNT: not given (reported) */
	struct quantity kerf;    /* of a cut */
	struct quantity angle_back, bevel_back, radius_back; /* of a double preparation; not
	                          * given: as in front */
	struct quantity leg2;    /* on the second member; not given: as leg */
	struct quantity t1, t2, leg, gap, land, angle, bevel, backing_t, backing_w,
	    overlap, reinforcement, length, depth, depth_back, width, radius;
	uint32_t preparation;    /* enum preparation */
	struct pipe_size pipe, branch;
	bool both_sides;
	bool ring;               /* the backing is a ring */
	const struct bead_layer *layers; /* as laid, root first; none: not told */
	size_t nlayers;
	uint32_t layer_beads;    /* of all layers */
	struct symbol_marks marks;
	uint32_t passes, beads;
	double overlap_percent;
	str restart;
	enum restart_place restart_place; /* as restart says it */
	double restart_mm;       /* FROM_LEFT, FROM_RIGHT: how far from that end */
	struct pos pos;
};

/* On which side of a line its kerf lies, as seen on the drawing; NONE: not said. */
enum kerf_side { KERF_NONE, KERF_ABOVE, KERF_BELOW, KERF_LEFT, KERF_RIGHT, KERF_MIDDLE };

struct plate_mark {
	enum plate_mark_kind { MARK_HOLE, MARK_SLOT, MARK_BEND_X, MARK_BEND_Y,
	    MARK_CUT } kind;
	struct quantity v[4];    /* as the manual orders them */
	uint32_t kerf;           /* enum kerf_side, of a cut */
	struct pos pos;
};

struct plate_block {
	struct quantity length, width, thickness;
	struct quantity kerf;    /* of its cuts; not given: they are no torch cuts, unless
	                          * one says on which side its kerf lies */
	const struct plate_mark *marks;
	size_t nmarks;
	bool chain;              /* places are told from one to the next */
	struct pos pos;
};

/* A file of the folder pictures. */
struct picture_file {
	str path;                /* "pictures/vise.png" */
	uint32_t file;           /* in the list of sources */
	uint32_t uses;           /* drawings that show it */
	const struct pixels *pixels; /* filled once for those that are used; null: not read */
};

struct pattern_block; /* model/pattern_block.h */
struct weldment;      /* model/weldment.h */

struct plain_fact; /* below */

struct drawing {
	enum drawing_kind { DRAWING_JOINT, DRAWING_PLATE, DRAWING_PATTERN,
	    DRAWING_PICTURE, DRAWING_WELDMENT } kind;
	struct prose caption;    /* paragraphs right above the block; may be empty */
	struct joint_block joint;
	struct plate_block plate;
	const struct pattern_block *pattern; /* of DRAWING_PATTERN only */
	const struct weldment *weldment; /* of DRAWING_WELDMENT */
	const struct picture_file *picture; /* of DRAWING_PICTURE; null: not there (reported) */
	str words, title;        /* of DRAWING_PICTURE; title may be empty */
	const struct plain_fact *legend; size_t nlegend; /* of model_in: what words that stand
	                          * in the picture mean, by the English */
	struct pos pos;
};

struct step {
	struct para para;        /* without the bold opening when it is a hold point */
	str hold;                /* "Stop, fit-up"; empty: not a hold point */
	struct pos pos;
};

struct standard; /* model/standard.h */

struct criterion {
	str name, text;
	str code;                /* "D1.1", "ASME IX"; empty when none is named */
	uint32_t edition;        /* 2020; 0 none */
	str loading;             /* "welder test", "static", "cyclic", "C"; may be empty */
	const struct standard *standard; /* the set that decides, or null */
	struct pos pos;
	str shown_name, shown_text; /* of model_in: what is printed in their place */
};

struct grade {
	str name;
	uint32_t weight;
	bool must_pass;
	bool english;            /* of model_in: a name without a translation */
	struct pos pos;
};

/* A fact kept as text: Gas, Purge, Preheat, Machines ... */
struct plain_fact {
	str key, text;
	struct pos pos;
	str shown;               /* of model_in: what is printed in place of the text */
};

/* Where the value of a fact stands; row as in fields_assignment. */
struct fact_place {
	uint32_t row;
	struct pos pos;
};

/* A line of Instructor only whose answer the key works out at each print: the words
 * behind "Reckon:", a call of `fitup reckon`. */
struct ask {
	str words;
	struct pos pos;
};

/* Parts of an assignment that are translated as a whole. */
enum said_part {
	SAID_TITLE, SAID_STEPS, SAID_ACCEPTANCE, SAID_BRING, SAID_CAUTIONS, SAID_IF_IT_FAILS,
	SAID_NOTES, SAID_DRAWING, SAID_PARTS
};

struct assignment {
	str id, title;           /* id in canonical capitals, suffix letter lowercase */
	struct pos pos;          /* of the heading text */
	enum kind kind;          /* KIND_COUNT: not given (reported) */
	double hours;
	uint32_t station;        /* in shop.stations, NONE */
	uint32_t attempts;       /* 3 when not given */
	enum process *processes; uint32_t nprocesses;
	enum joint *joints; uint32_t njoints;
	struct position_at *positions; uint32_t npositions;
	struct material *materials; uint32_t nmaterials;
	struct quantity *thicknesses; uint32_t nthicknesses;
	struct filler *fillers; uint32_t nfillers;
	struct current *currents; uint32_t ncurrents;
	struct plain_fact *facts; size_t nfacts, facts_cap;
	struct need *needs; size_t nneeds, needs_cap;
	struct skill_at *teaches; size_t nteaches, teaches_cap;
	struct weld *welds; size_t nwelds, welds_cap;
	struct pass *passes; size_t npasses, passes_cap;
	struct piece *pieces; size_t npieces, pieces_cap;
	struct drawing *drawings; size_t ndrawings, drawings_cap;
	struct step *steps; size_t nsteps, steps_cap;
	struct criterion *criteria; size_t ncriteria;
	struct grade *grades; size_t ngrades, grades_cap;
	uint32_t pass_mark;      /* 0: not given, or not understood */
	bool pass_mark_said;
	bool unread;             /* a word for kind, process, joint or position was left out or
	                          * is not there (reported), so that it may be any */
	struct fact_place *places; uint32_t nplaces;
	struct prose bring, cautions, if_it_fails, notes;
	struct prose instructor; /* never on a student sheet: see student_view */
	struct ask *asks; size_t nasks, asks_cap; /* nor are these */
	unsigned in_english;     /* of model_in: parts without a translation, bits by enum
	                          * said_part; all of them: there is none at all */
};

#define SAID_NOTHING ((1u << SAID_PARTS) - 1)

/* One line of a course in program.md. A "one of" line gives one slot a branch,
 * all with the same place and the same group. */
struct slot {
	uint32_t assignment;     /* NONE: unknown (reported) */
	uint32_t course;
	uint32_t week;
	uint32_t line;           /* sequence in program.md, equal within a group */
	bool optional;
	uint32_t group;          /* 1.. for "one of"; 0 alone */
	struct pos pos;
};

struct course {
	str id, title;           /* "ORW 130" */
	uint32_t quarter;        /* from 1 */
	double credits, lecture_hours, lab_hours;
	struct pos pos;
};

struct quarter {
	str starts;              /* ISO date as written; may be empty */
	struct pos starts_pos;
	struct pos pos;
};

struct entry {
	str text;                /* as written: "quarter 1 in Fall" */
	uint32_t *quarters;      /* the quarters in the order met, from 1 */
	size_t nquarters;
	struct skill_at *with;   /* skills that such a student brings */
	size_t nwith;
	struct pos pos;
};

struct section { str name; double open_hours_week; struct pos pos; };
struct station {
	str name;
	uint32_t places;         /* 0: not given */
	bool unsaid;             /* no line Places at all */
	str sections;            /* names, commas between; empty: all of them */
	struct pos pos;
};
struct machine { str name; struct plain_fact *limits; size_t nlimits,
    limits_cap; struct pos pos; };

/* customs.md: a habit of the trade that this program reverses. */
struct custom_off {
	str custom, reason;      /* the words of the rule row; why */
	struct pos pos;          /* of the custom */
};

/* customs.md: a finding accepted on purpose. */
struct waiver {
	enum finding_name name;
	str assignment, skill;   /* canonical id; either empty: any */
	str about;               /* course, quarter, station ... in place of them */
	struct pos place;        /* its heading; file POS_NOWHERE: none is named */
	str reason, role;
	str until;               /* as written: "fall-2027", "2027-09-01" */
	struct pos pos, until_pos;
	bool endless;            /* until is wrong or not there (reported at until_pos) */
};

/* cohorts.md: a group part-way through, as counts. */
struct cohort {
	str name;
	str entered;             /* an issue name: "fall-2025" */
	uint32_t entry_quarter;  /* the quarter they began with; 0: not given (reported) */
	uint32_t finished;       /* last quarter finished, 0 none */
	uint32_t students;       /* 0: not given (reported) */
	uint32_t section;        /* in sections, NONE: not given */
	bool astray;             /* names a section that shop.md lacks (reported) */
	struct pos pos;
};

struct model {
	struct arena *arena;
	const struct sources *sources;
	str title;               /* of program.md: "College: Program" */
	str catalog_year;
	uint32_t weeks;          /* in a quarter */
	str *terms; size_t nterms, terms_cap;
	str credit_rule;
	uint32_t hour_minutes;   /* 60 when not given */
	struct quarter *quarters; size_t nquarters, quarters_cap; /* [0] is quarter 1 */
	struct course *courses; size_t ncourses, courses_cap;
	struct slot *slots; size_t nslots, slots_cap;  /* in order of program.md */
	struct entry *entries; size_t nentries, entries_cap;
	struct plain_fact *credentials; size_t ncredentials, credentials_cap;
	struct outcome *outcomes; size_t noutcomes, outcomes_cap;
	struct skill *skills; size_t nskills, skills_cap;
	struct skill_at *entry_skills; size_t nentry_skills, entry_skills_cap;
	struct assignment *assignments; size_t nassignments, assignments_cap; /* by id */
	struct section *sections; size_t nsections, sections_cap;
	struct station *stations; size_t nstations, stations_cap;
	struct machine *machines; size_t nmachines, machines_cap;
	struct quantity *plungers; size_t nplungers; /* diameters of the bend test jig */
	struct pos plungers_pos;
	struct plain_fact *gauges; size_t ngauges, gauges_cap; /* key may be empty */
	struct plain_fact *stock; size_t nstock, stock_cap;    /* key may be empty */
	struct custom_off *customs_off; size_t ncustoms_off, customs_off_cap;
	struct waiver *waivers; size_t nwaivers, waivers_cap;
	struct cohort *cohorts; size_t ncohorts, cohorts_cap;
	struct picture_file *pictures; size_t npictures; /* by path */
	struct standard *standards; size_t nstandards; /* the program's own */
	struct standard *shipped; size_t nshipped;     /* filled where wanted */
	struct speech *speeches; size_t nspeeches; /* model/translation.h */
	struct map *assignment_by_id; /* id without case -> index */
	struct map *skill_by_id;
};

/* One file with its role, as bind takes it. */
enum file_role {
	ROLE_PROGRAM, ROLE_SKILLS, ROLE_SHOP, ROLE_ASSIGNMENTS, ROLE_STANDARD,
	ROLE_CUSTOMS, ROLE_COHORTS, ROLE_TRANSLATION, ROLE_PICTURE
};

struct record_file; /* read/record.h, for those who build models */

/* Makes the model from all record files. files[i] corresponds to sources->v
 * [files[i].file]; a file of assignments may come in parts, one after another. Every fault
 * is reported into f with its place and a stated recovery; the result is always usable. */
struct model *model_bind(struct arena *a, const struct sources *sources,
    const struct record_file *files, size_t nfiles, struct findings *f);

/* The same in steps, for those who have several threads: begun; its jobs, in any order
 * and at the same time, each with an arena and findings of its own, which join those of
 * the beginning in the order of the jobs; ended. What is made does not depend on the
 * threads. Between, the binding owns the model. */
struct binding;
struct binding *binding_begin(struct arena *a, const struct sources *sources,
    const struct record_file *files, size_t nfiles, struct findings *f);
size_t binding_jobs(const struct binding *x);
void binding_do(struct binding *x, size_t job, struct arena *a, struct findings *f);
struct model *binding_end(struct binding *x);

/* Where the value of a fact of a stands ("Thickness"), or its heading when it is not
 * written. */
struct pos assignment_fact_pos(const struct assignment *a, str key);

/* The kept text of a fact such as "Gas" or "Backing", or null. */
const struct plain_fact *assignment_fact(const struct assignment *a, str key);
/* Wall of a tube, pipe or angle, mm: of four sizes the least; else the thickness that the
 * facts pair with the material of the piece; 0 when neither tells. */
double piece_wall_mm(const struct assignment *a, const struct piece *p);

/* What is printed for a text: its translation, when there is one. */
static inline str said_or(str translated, str own)
{
	return translated.n ? translated : own;
}

/* The role that a path has by its name, or false for a file fitup does not read. */
bool file_role_of(str path, enum file_role *role);

#endif
