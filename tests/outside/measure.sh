#!/bin/sh
# Sizes measured back from the demo's printed pages (tests/outside/measure.py): the 1:1
# templates of four editions, tile on tile, joint drawings and cut lines. Exits 77 without the
# readers.
set -u
cd "$(dirname "$0")/../.." || exit 2
for tool in python3 mutool pdftotext; do
	command -v $tool >/dev/null 2>&1 || { echo "skipped: no $tool"; exit 77; }
done
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT

build/fitup print -C curriculum --out "$work/out" >/dev/null || exit 1
# The same geometry on A4 and beside larger words.
for edition in "--paper a4" "--large" "--large --metric --paper a4"; do
	# shellcheck disable=SC2086
	build/fitup print -C curriculum --out "$work/t$(echo "$edition" | tr -d ' -')" $edition templates >/dev/null || exit 1
done
# What the demo does not have: legs of two sizes, a row of plugs.
cp -r curriculum "$work/more"
sed -i 's|^leg: 5/16 in|leg: 1/4 x 3/8 in|; s|Leg size:\*\* 5/16|Leg size:** 1/4 x 3/8|' \
    "$work/more/assignments/SM-04.md"
sed -i 's|^## Procedure|```joint\njoint: lap\nplug weld: 3/4 in\nspacing: 3 in\ncount: 3\nthickness: 3/8 in\nlength: 10 in\n```\n\n&|' \
    "$work/more/assignments/SM-04.md"
rm -r "$work/more/assignments/es"
build/fitup print --draft -C "$work/more" --out "$work/more-out" >/dev/null
# The first run's verdict is kept; the second, of a leg and a cone said wrongly, must fail.
python3 tests/outside/measure.py curriculum "$work/out" "$work"/t*/instructor/*.pdf >"$work/told"
sed -n '/^failed/p' "$work/told" | head -n 20
cp -r curriculum "$work/wrong"
sed -i 's|^leg: 1/4 in|leg: 9/32 in|; s|^base: 12 in|base: 11-7/8 in|; s|^bevel: 30 deg|bevel: 31 deg|' "$work"/wrong/assignments/*.md
last=$(tail -n 1 "$work/told")
if python3 tests/outside/measure.py "$work/wrong" "$work/out" >"$work/wrong.told"; then
	echo "failed: wrong sizes pass"
	echo "${last%% *} passed, 1 failed"
	exit 1
fi
failed=$(echo "$last" | sed 's/.*, \([0-9]*\) .*/\1/')
python3 tests/outside/measure.py "$work/more" "$work/more-out" joints >"$work/more.told" ||
	failed=$((failed + 1))
sed -n '/^failed/p' "$work/more.told" | head -n 20
echo "$((${last%% *} + 2)) passed, $failed failed"
[ "$failed" -eq 0 ]
