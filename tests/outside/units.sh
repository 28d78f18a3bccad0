#!/bin/sh
# Conversions against GNU units, an independent judge. Exits 77 without it.
# Builds its driver with ${CC:-gcc}; run from anywhere.
set -u
cd "$(dirname "$0")/../.." || exit 2
command -v units >/dev/null 2>&1 || { echo "units is not installed"; exit 77; }
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT

${CC:-gcc} -std=c11 -D_POSIX_C_SOURCE=200809L -Isrc -o "$work/driver" \
    tests/outside/units_driver.c src/units/*.c src/base/*.c -lm || exit 1
"$work/driver" >"$work/ours" || exit 1

# Temperatures are functions in GNU units: tempC(100). One line in, one answer out.
awk '{ print ($2 ~ /^temp/) ? $2 "(" $1 ")" : $1 " " $2; print $3 }' "$work/ours" |
    LC_ALL=C units --quiet --terse -o '%.15g' >"$work/theirs" 2>/dev/null

paste -d' ' "$work/ours" "$work/theirs" | awk '
{
	got = $4 + 0
	want = $5 + 0
	size = want < 0 ? -want : want
	off = got - want
	if (off < 0)
		off = -off
	# Fifteen figures are compared; a temperature near zero by its own size of one.
	if (NF == 5 && off <= 4e-15 * (size > 1 ? size : ($2 ~ /^temp/ ? 100 : size)))
		passed++
	else {
		failed++
		print "failed: " $0
	}
}
END {
	printf "%d passed, %d failed\n", passed, failed
	exit failed > 0 || passed < 300
}'
