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
