#!/bin/sh
# The packets of the demo read aloud by pdf.js, by their tags, against the Markdown they
# are made from (tests/outside/reading.cjs). Exits 77 without node or pdf.js.
set -u
cd "$(dirname "$0")/../.." || exit 2
pdfjs=build/npm/node_modules/pdfjs-dist/legacy/build/pdf.js
command -v node >/dev/null 2>&1 || { echo "skipped: no node"; exit 77; }
[ -f $pdfjs ] || { echo "skipped: no pdf.js in build/npm"; exit 77; }
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

build/fitup print packets -C curriculum --out "$work/out" >/dev/null || exit 1
for quarter in 1 2 3 4 5 6; do
	node tests/outside/reading.cjs $pdfjs curriculum $quarter \
	    "$work/out/q$quarter/packet.pdf" >"$work/told" 2>&1
	sed -n '/^failed/p' "$work/told" | head -n 10
	last=$(tail -n 1 "$work/told")
	passed=$((passed + ${last%% *}))
	failed=$((failed + $(echo "$last" | sed 's/.*, \([0-9]*\) .*/\1/')))
done

# Each part of a paper in the language that it is in: small words of one language never
# under the other's mark. Drawings and the map have words of both.
build/fitup print Q1 -C curriculum --out "$work/both" >/dev/null || exit 1
english='\b(the|and|with|from|each|are|is)\b'
spanish='\b(el|la|los|las|del|con|para|por|que)\b'
for pdf in packet.es grading.es cards.es chart; do
	node tests/outside/languages.cjs $pdfjs "$work/both/q1/$pdf.pdf" >"$work/spoken" 2>&1
	for pair in "en-US:$spanish" "es-US:$english"; do
		wrong=$(grep "^${pair%%:*}" "$work/spoken" | grep -v 'SF-01 .*SF-02 ' |
		    grep -iE "${pair#*:}" | head -n 3)
		if [ -z "$wrong" ] && [ "$(grep -c "^${pair%%:*}" "$work/spoken")" -gt 10 ]; then
			passed=$((passed + 1))
		else
			failed=$((failed + 1))
			echo "failed: $pdf says under ${pair%%:*}: $wrong"
		fi
	done
done
node tests/outside/languages.cjs $pdfjs "$work/both/q1/packet.es.pdf" >"$work/spoken"
for words in 'Clamp the bevel guide on an H strip' 'Sawhorse pair' 'Machinery.s Handbook'; do
	if grep -q "^en-US.*$words" "$work/spoken"; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		echo "failed: \"$words\" is not under en-US"
	fi
done

# A judge that cannot fail is none: another quarter's source must not be heard.
if node tests/outside/reading.cjs $pdfjs curriculum 1 "$work/out/q2/packet.pdf" >/dev/null 2>&1
then
	failed=$((failed + 1))
	echo "failed: quarter 2 was taken for quarter 1"
else
	passed=$((passed + 1))
fi
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 1000 ]
