#!/bin/sh
# Writes ready-broken lines for haru_floor and pdf_ours: pdf_lines.sh PAGES > FILE
# "P" begins a page; "T x y face size text" draws a line, y up from the bottom in points.
# The words come from a fixed sequence, so that every run writes the same file.
exec awk -v pages="${1:-240}" 'BEGIN {
	n = split("the weld fillet leg root plate grind stop fit-up square tack bead travel " \
	    "slag clean gap amps rod angle vertical flat joint bevel coupon test bend visual " \
	    "inspect record 3/8 5/16 1/4 in 110-140 A E7018 steel mill scale back from both " \
	    "pieces before welding keep hood down sleeves dry oven hold point instructor " \
	    "signs here measure throat porosity undercut crater arc length pass cap fill", w, " ")
	seed = 12345
	for (p = 0; p < pages; p++) {
		print "P"
		printf "T 72 740 1 16 Assignment %d, page %d\n", int(p / 2) + 1, p + 1
		for (l = 0; l < 50; l++) {
			face = l % 10 == 9 ? 4 : l % 10 == 5 ? 2 : l % 10 == 0 ? 1 : 0
			line = ""
			while (length(line) < 76) {
				seed = (seed * 16807) % 2147483647
				line = line (line == "" ? "" : " ") w[seed % n + 1]
			}
			printf "T 72 %.2f %d 12 %s\n", 716 - 13.5 * l, face, line
		}
	}
}'
