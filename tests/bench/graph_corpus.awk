# Turns a graph (one line a node: its name, then the names it needs) into one welding
# program of few files: each node is an assignment that teaches one skill and needs the
# skills of its successors. awk -v DIR=/tmp/x -f graph_corpus.awk GRAPH; DIR exists with
# its subfolder assignments.
function id(k) { return sprintf("%c%c%c-%04d", 65 + int(k / 6760000) % 26, 65 + int(k / 260000) % 26,
	65 + int(k / 10000) % 26, k % 10000) }

{ number[$1] = NR - 1; line[NR - 1] = $0 }

END {
	p = DIR "/program.md"; s = DIR "/skills.md"; a = DIR "/assignments/all.md"
	print "# Orehollow Valley Community College: A large graph\n\n- **Weeks in a quarter:** 11\n" > p
	print "# Skills\n\n## PO1: Does the work\n" > s
	for (k = 0; k < NR; k++) {
		if (k % 10000 == 0) printf "\n## Quarter %d\n", ++quarter > p
		if (k % 1000 == 0) printf "\n### ORW %d: Course\n\n- **Credits:** 5\n- **Lecture hours:** 11\n- **Lab hours:** 90000\n\n", 100 + k / 1000 > p
		printf "1. %s, week %d\n", id(k), int(k % 1000 / 100) + 1 > p
		printf "- **s%d:** Skill number %d\n", k, k > s
		printf "# %s: Work number %d\n\n- **Kind:** drill\n- **Hours:** 4\n\n", id(k), k > a
		n = split(line[k], part, " ")
		if (n > 1) print "## Needs\n" > a
		for (i = 2; i <= n; i++) printf "- s%d practiced\n", number[part[i]] > a
		if (n > 1) print "" > a
		printf "## Teaches\n\n- s%d assessed by Look\n\n## Acceptance\n\n- **Look:** even\n\n", k > a
	}
}
