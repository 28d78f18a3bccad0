# Writes a welding program of N assignments into the folder DIR, which exists with its
# subfolder assignments: awk -v N=120 -v DIR=/tmp/x -f corpus.awk. Everything follows
# from N, so two runs write the same bytes. Each assignment needs what the one before
# it in its chain teaches, and prints about two pages in the packet.
function pick(list, k,   v, n) { n = split(list, v, "|"); return v[k % n + 1] }

function id(k) { return sprintf("%s%s-%02d", pick("A|B|C|D|E|F|G|H|J|K", int(k / 100) % 10),
	pick("A|B|C|D|E|F|G|H|J|K|L|M|N|P|R|S|T|U|V|W", int(k / 1000)), k % 100) }

function step(k, s) {
	return pick("Brush both pieces bright an inch back from the joint.|Clamp the pieces square on the table and check with the square.|" \
	    "Tack both ends, then look at the gap from both sides.|Run the first pass with a short arc and a steady travel.|" \
	    "Chip and brush before the next pass, every time.|Run the cap in one go and fill the crater.|" \
	    "Let the piece cool in still air and mark it with number and attempt.", k + s)
}

function assignment(k,   f, i, joint) {
	f = DIR "/assignments/" id(k) ".md"
	joint = pick("tee|lap|tee|single-V", k)
	printf "# %s: %s number %d\n\n", id(k), pick("Tee and lap practice|Plate joint|Bench coupon|Position drill", k), k > f
	printf "- **Kind:** %s\n- **Hours:** %d\n- **Station:** booth\n- **Process:** SMAW\n", k ? pick("drill|coupon|coupon|practice test", k) : "safety", 4 + k % 9 > f
	printf "- **Joint:** %s\n- **Material:** A36 plate\n- **Thickness:** 3/8 in\n- **Position:** %s\n", joint, joint == "single-V" ? "1G" : "2F" > f
	printf "- **Filler:** E7018, 1/8 in\n- **Current:** DC+, 110-140 A\n\n" > f
	if (k % 20)
		printf "## Needs\n\n- s%d.t%d practiced\n\n", int((k - 1) / 20), k - 1 > f
	printf "## Teaches\n\n- s%d.t%d assessed by Visual\n\n", int(k / 20), k > f
	printf "## Pieces\n\n- web: 1 of 3/8 x 3 x 8 in A36 plate, sawn\n- base: 1 of 3/8 x 4 x 8 in A36 plate, sawn\n\n" > f
	printf "## Drawing\n\n```joint\njoint: %s\n%s```\n\n## Procedure\n\n", joint,
	    joint == "single-V" ? "gap: 1/4 in\nangle: 45 deg\nbacking: 1/4 x 1 in\n" : joint == "lap" ? "leg: 5/16 in\noverlap: 1-1/2 in\n" : "leg: 5/16 in\ngap: 0 to 1/16 in\n" > f
	for (i = 1; i <= 7; i++)
		printf "%d. %s%s\n", i, i == 3 ? "**Stop, fit-up:** " : "", step(k, i) > f
	printf "\n## Acceptance\n\n- **Visual:** D1.1-2020 welder test\n\n## Grading\n\n- **Fit-up:** 40\n- **Visual:** 60, must pass\n- **Pass mark:** 70\n" > f
	close(f)
}

BEGIN {
	p = DIR "/program.md"
	quarters = 6
	courses = int((N + 19) / 20)
	printf "# Orehollow Valley Community College: Corpus of %d\n\n- **Weeks in a quarter:** 11\n", N > p
	for (c = 0; c < courses; c++) {
		q = int(c * quarters / courses) + 1
		if (q != last) printf "\n## Quarter %d\n", q > p
		last = q
		printf "\n### ORW %d: Course %d\n\n- **Credits:** 5\n- **Lecture hours:** 11\n- **Lab hours:** 200\n\n", 100 + c, c + 1 > p
		for (i = c * 20; i < c * 20 + 20 && i < N; i++)
			printf "1. %s, week %d\n", id(i), int((i % 20) / 2) + 1 > p
	}
	close(p)
	s = DIR "/skills.md"
	printf "# Skills\n" > s
	for (c = 0; c < courses; c++) {
		printf "\n## PO%d: Makes the joints of course %d\n\n", c + 1, c + 1 > s
		for (i = c * 20; i < c * 20 + 20 && i < N; i++)
			printf "- **s%d.t%d:** Joint practice %d\n", c, i, i > s
	}
	close(s)
	printf "# Shop\n\n## Section day\n\n- **Open:** 16 h a week\n\n## Station booth\n\n- **Places:** 18\n- **Sections:** day\n" > (DIR "/shop.md")
	for (k = 0; k < N; k++)
		assignment(k)
}
