#!/bin/sh
# One slip, one finding. Each seed changes one line of the demo by a rule of the table
# below, and inspect tells exactly one finding, or none where the rule says "least 0"
# because the change may be right as well. A few seeds of each rule, evenly spaced; with an
# argument, every so many-th place where a rule applies (1: all of them, some minutes). Two
# slips at once are at least two findings: none hides in what another shows.
set -u
cd "$(dirname "$0")/.." || exit 2
each=3
every=${1:-0}
passed=0
failed=0
fitup=build/fitup
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
cp -r curriculum "$work/demo"

# places FILES SECTION LINE: "FILE NUMBER" of each line that matches in a section of that
# heading (an empty one: before the first).
places() {
	# The names are split on purpose.
	(cd curriculum && awk -v section="^($2)\$" -v line="$3" '
		FNR == 1 { at = ""; fence = 0 }
		/^```/ { fence = !fence }
		/^##+ / && !fence { at = $0; sub(/^#+ /, "", at) }
		!fence && at ~ section && $0 ~ line { print FILENAME, FNR }' $1)
}

# some N: those of the places that are tried.
some() {
	if [ "$every" -gt 0 ]; then
		awk -v every="$every" 'NR % every == 0'
	else
		awk -v n="$1" -v each="$each" 'int(NR * each / n + 0.5) != int((NR - 1) * each / n + 0.5)'
	fi
}

# found DIR: the findings that stand, one a line.
found() {
	"$fitup" inspect -C "$1" --json > "$work/report"
	[ $? -le 1 ] || echo ' {"name":"no-report","message":"fitup broke off"}'
	grep '^ {"name":' "$work/report" | grep -v '"waived":true'
}

# expect LEAST MOST WORDS: so many findings, or they are shown.
expect() {
	found "$work/demo" > "$work/found"
	n=$(wc -l < "$work/found")
	if [ "$n" -ge "$1" ] && [ "$n" -le "$2" ]; then
		passed=$((passed + 1))
		return 0
	fi
	failed=$((failed + 1))
	echo "$n findings, $3"
	sed 's/.*"name":"\([^"]*\)".*"message":"\(.*\)","cause".*/    \1: \2/' "$work/found"
	return 1
}

# slip FILE NUMBER CHANGE: made in the copy; false when the line stays as it is.
slip() {
	sed "$2{$3;}" "curriculum/$1" > "$work/demo/$1"
	! cmp -s "curriculum/$1" "$work/demo/$1"
}

# Those that are one finding are kept for pairs.
try_one() { # WORDS LEAST FILE NUMBER CHANGE
	slip "$3" "$4" "$5" &&
	    expect "$2" 1 "$1: $3:$4: $(sed -n "$4p" "curriculum/$3")" &&
	    [ "$n" = 1 ] && echo "$3;$4;$5" >> "$work/single"
	cp "curriculum/$3" "$work/demo/$3"
}

try_two() { # FILE NUMBER FILE NUMBER CHANGE CHANGE
	slip "$1" "$2" "$5"
	slip "$3" "$4" "$6"
	expect 2 9 "two slips: $1:$2 $5 and $3:$4 $6"
	cp "curriculum/$1" "$work/demo/$1"
	cp "curriculum/$3" "$work/demo/$3"
}

# WORDS; LEAST; FILES; SECTION; LINE; CHANGE of sed
while IFS=';' read -r words least files section line change; do
	[ -n "$words" ] || continue
	places "$files" "$section" "$line" > "$work/all"
	some "$(wc -l < "$work/all")" < "$work/all" > "$work/places"
	while read -r file number; do
		try_one "$words" "$least" "$file" "$number" "$change"
	done < "$work/places"
done <<'TABLE'
a line of program.md left out;1;program.md;.*;^[0-9]+\. ;d
a line of program.md optional;0;program.md;.*;^[0-9]+\. ;s/week [0-9]*/&, optional/
a line of program.md a week too far on;1;program.md;.*;^[0-9]+\. ;s/week [0-9]*/week 99/
an id of program.md misspelt;1;program.md;.*;^[0-9]+\. ;s/\([A-Z]\)\([A-Z]\)-/\2\1-/
hours of a course a digit longer;1;program.md;.*;Lab hours;s/\([0-9]\)$/\10/
a heading misspelt;1;assignments/*.md;.*;^## ;s/\(.\)\(.\)$/\2\1/
a heading left out;0;assignments/*.md;.*;^## ;d
a key misspelt;1;assignments/*.md;;^- \*\*;s/\*\*\(.\)\(.\)/**\2\1/
a fact left out;0;assignments/*.md;;^- \*\*;d
a process of two letters swapped;1;assignments/*.md;;^- \*\*Process;s/\*\* \(.\)\(.\)/** \2\1/
a position of letters swapped;1;assignments/*.md;;^- \*\*Position;s/\*\* \(.\)\(.\)/** \2\1/
a joint misspelt;1;assignments/*.md;;^- \*\*Joint;s/\*\* \(.\)\(.\)/** \2\1/
a filler misspelt;0;assignments/*.md;;^- \*\*Filler;s/\*\* \(..\)\(.\)\(.\)/** \1\3\2/
a need misspelt;1;assignments/*.md;Needs;^- ;s/- \(.\)\(.\)/- \2\1/
a need left out;0;assignments/*.md;Needs;^- ;d
a need asked further;0;assignments/*.md;Needs;^- ;s/introduced/practiced/;t;s/practiced/assessed/
what is taught misspelt;1;assignments/*.md;Teaches;^- ;s/- \(.\)\(.\)/- \2\1/
what is taught left out;0;assignments/*.md;Teaches;^- ;d
what is taught less far;0;assignments/*.md;Teaches;^- ;s/practiced.*/introduced/
evidence misspelt;1;assignments/*.md;Teaches; by ;s/ by \(.\)\(.\)/ by \2\1/
a skill left out;1;skills.md;.*;^- \*\*;d
a skill misspelt;1;skills.md;.*;^- \*\*;s/\*\*\(.\)\(.\)/**\2\1/
a line of Acceptance left out;0;assignments/*.md;Acceptance;^- ;d
a line of Grading left out;0;assignments/*.md;Grading;^- ;d
a piece left out;0;assignments/*.md;Pieces;^- ;d
a machine misspelt;1;assignments/*.md;;^- \*\*Machines;s/\*\* \(.\)\(.\)/** \2\1/
a machine of the shop left out;1;shop.md;.*;^## Machine;d
a line of the shop left out;0;shop.md;.*;^- \*\*;d
a step of a translation left out;1;assignments/es/*.md;.*;^[0-9]+\. ;d
a heading of other words;1;assignments/*.md;.*;^## ;s/^## .*/## Whatever else/
a key of another word;1;assignments/*.md;;^- \*\*;s/\*\*[^:]*:/**Whatever:/
a machine that nobody has;1;assignments/*.md;;^- \*\*Machines;s/\*\* [^,]*/** whatever/
what is taught in other words;1;assignments/*.md;Teaches;^- ;s/\.[a-z0-9.]*/.whatever/
a skill in other words;1;skills.md;.*;^- \*\*;s/\*\*[^:]*:/**whatever:/
a line of Acceptance misspelt;0;assignments/*.md;Acceptance;^- ;s/\*\*\(.\)\(.\)/**\2\1/
a line of Acceptance in other words;0;assignments/*.md;Acceptance;^- ;s/\*\*[^:]*:/**Whatever:/
a line of Grading misspelt;0;assignments/*.md;Grading;^- ;s/\*\*\(.\)\(.\)/**\2\1/
a line of Grading in other words;0;assignments/*.md;Grading;^- ;s/\*\*[^:]*:/**Whatever:/
an edition of other figures;0;assignments/*.md;Acceptance;-20;s/-20\(.\)\(.\)/-20\2\1/
a weld by another letter;1;assignments/*.md;Welds;^- ;s/\*\*[^:]*:/**Whatever:/
a piece misspelt;0;assignments/*.md;Pieces;^- ;s/- \(.\)\(.\)/- \2\1/
a material misspelt;1;assignments/*.md;;^- \*\*Material: \*\* A[0-9];s/A\([0-9]\)/\1A/
a heading of the shop in other words;1;shop.md;.*;^## ;s/^## .*/## Whatever else/
a heading of the shop misspelt;1;shop.md;.*;^## ;s/^## \(.\)\(.\)/## \2\1/
a limit of a machine misspelt;0;shop.md;Machine.*;^- \*\*;s/\*\*\(.\)\(.\)/**\2\1/
a limit in no unit;0;shop.md;Machine.*;[0-9] [a-z]*$;s/ [a-z]*$/ xn/
a fact of a cohort in other words;1;cohorts.md;.*;^- \*\*;s/\*\*[^:]*:/**Whatever:/
a fact of the program in other words;1;program.md;.*;^- \*\*;s/\*\*[^:]*:/**Whatever:/
a heading of the customs misspelt;1;customs.md;.*;^## ;s/^## \(.\)\(.\)/## \2\1/
a custom in other words;1;customs.md;Off;^- \*\*;s/\*\*[^:]*:/**whatever:/
a heading of a translation misspelt;1;assignments/es/[ST]*.md;.*;^## ;s/\(.\)\(.\)$/\2\1/
a heading of a translation in other words;1;assignments/es/[ST]*.md;.*;^## ;s/^## .*/## Whatever else/
a line of a translation in other words;1;assignments/es/[ST]*.md;Acceptance;^- ;s/\*\*[^:]*:/**Whatever:/
TABLE

# Each with one half the list further on, of another rule, where they stand in two files.
awk -F ';' '{ line[NR] = $0 }
	END { for (i = 1; i <= NR / 2; i++) print line[i] "\t" line[i + int(NR / 2)] }' "$work/single" > "$work/pairs"
while IFS='	' read -r one two; do
	other=${two#*;}
	file=${one%%;*}
	rest=${one#*;}
	[ "$file" = "${two%%;*}" ] ||
	    try_two "$file" "${rest%%;*}" "${two%%;*}" "${other%%;*}" "${rest#*;}" "${other#*;}"
done < "$work/pairs"

echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
