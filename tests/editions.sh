#!/bin/sh
# Editions beside each other, from outside: which unit stands first on every page, and
# whether the list for the office tells the truth about files, pages, copies and paper.
set -u
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0
ok() { passed=$((passed + 1)); }
bad() { failed=$((failed + 1)); echo "editions.sh: $1"; }
is() { if [ "$2" = "$3" ]; then ok; else bad "$1: $2 is not $3"; fi; }
for tool in pdftotext pdfinfo; do
	command -v $tool > /dev/null || { echo "editions.sh: no $tool"; exit 77; }
done

us='(in|ft|lb|psi|psig|ksi|°F|cfh|in/min|lb/ft|lb/ft2|lb/in3|tons|tons/ft|ft3|in2|in²|kJ/in|lb/h|oz)'
si='(mm|m|cm|kPa|MPa|bar|°C|kg|g|L/min|L|mm/s|m/min|mm/min|kN|kN/m|mm2|mm²|kJ/mm|kg/m|kg/m2|kg/h)'

# Pairs with the units of $1 before a bracket of $2 in the text. What is reckoned in the
# open ("= 0.152 in² [98 mm²]") stays in its system.
pairs() { grep -oE "(= )?[0-9][0-9./-]* $1 [[(][^])]*[0-9] $2[])]" "$work/text" | grep -v '^= '; }

# The same by brackets alone, so that a pattern above that finds nothing is seen.
brackets() { grep -oE "$1 [[][^]]*[0-9] $2[]]" "$work/text" | wc -l; }

# order DIR FIRST SECOND
order() {
	n=0
	for pdf in "$1"/*/*.pdf; do
		pdftotext -raw "$pdf" - | tr '\n\f' '  ' > "$work/text"
		is "$(basename "$pdf"), which unit is first" "$(pairs "$3" "$2" | head -3 | tr '\n' ';')" ""
		n=$((n + $(brackets "$2" "$3")))
	done
	if [ "$n" -gt 5000 ]; then ok; else bad "$(basename "$1"): only $n pairs were seen"; fi
}

# The rows of the list in DIR: name, first and last page of a part or 0 0, pages, copies, sides.
rows() {
	pdftotext -raw "$1" - | tr '\n\f' '  ' |
	    grep -oE '[a-z0-9]+/[a-z.-]+\.pdf(, pages [0-9]+ to [0-9]+, quarter [0-9]+)? [0-9]+ ([0-9]+ )?(single|double)' |
	    awk '{ name = $1; from = to = copies = 0; at = 2
		if (sub(/,$/, "", name)) { from = $3; to = $5 + 0; at = 8 }
		if (NF > at + 1) copies = $(at + 1)
		print name, from, to, $at, copies, $NF }'
}

# listed DIR STUDENTS: STUDENTS is 1 where students' papers have their copies.
listed() {
	name=$(basename "$1")
	list=$(echo "$1"/instructor/print-list*.pdf)
	rows "$list" > "$work/rows"
	is "$name, files" "$(cut -d ' ' -f 1 "$work/rows" | sort -u | tr '\n' ' ')" \
	    "$(cd "$1" && find . -name '*.pdf' | sed 's|^\./||' | sort | tr '\n' ' ')"
	sum=0
	while read -r file from to pages copies sides; do
		real=$(pdfinfo "$1/$file" | awk '/^Pages/ { print $2 }')
		[ "$from" = 0 ] || real=$((to - from + 1))
		is "$name, pages of $file" "$pages" "$real"
		each=$real
		[ "$sides" = single ] || each=$(((real + 1) / 2))
		sum=$((sum + each * copies))
		# 13 and 10 students and 5 %: 13.65 and 10.5, rounded up. Nobody else is there now.
		case $file in
		*/chart* | instructor/*) want=1 ;;
		*.es.*) want=0 ;;
		q1/*) want=14 ;;
		q4/*) want=11 ;;
		shop/*) want=$copies ;;
		*) want=0 ;;
		esac
		case $file in */chart* | instructor/*) ;; *) [ "$2" = 1 ] || want=0 ;; esac
		is "$name, copies of $file" "$copies" "$want"
	done < "$work/rows"
	is "$name, sheets" "$(pdftotext -raw "$list" - | tr '\n\f' '  ' | grep -oE 'left out [0-9]+' | tr -dc 0-9)" "$sum"
	last=$(awk '/^shop\/labels/ && $1 !~ /\.es\./ { n = $3 } END { print n }' "$work/rows")
	is "$name, last page of the tags" "$last" \
	    "$(pdfinfo "$1"/shop/labels$3.pdf | awk '/^Pages/ { print $2 }')"
}

print() { build/fitup print -C curriculum --out "$work/$1" $2 > /dev/null; is "$1 printed" $? 0; }
print usual ""
print metric "--metric --paper a4"
print large "--large"
print large-metric "--large --metric --paper a4"
order "$work/usual" "$us" "$si"
order "$work/metric" "$si" "$us"
listed "$work/usual" 1 ""
listed "$work/metric" 1 .metric
listed "$work/large" 0 .large
listed "$work/large-metric" 0 .large.metric
echo "$passed passed, $failed failed"
[ $failed = 0 ]
