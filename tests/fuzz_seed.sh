#!/bin/sh
# Makes what the fuzzer begins with: build/fuzz/seed, small programs in the form that
# tests/fuzz.c reads, and build/fuzz/words, the words of the format. Run from anywhere.
set -eu
cd "$(dirname "$0")/.."
seed=build/fuzz/seed
rm -rf $seed
mkdir -p $seed

# One program an assignment file: the file, its skills, one course that lists it.
for file in curriculum/assignments/*.md; do
	name=$(basename "$file" .md)
	ids=$(sed -n 's/^# \([A-Za-z]*-[0-9a-z]*\).*/\1/p' "$file")
	{
		echo "=== assignments/$name.md"
		cat "$file"
		echo "=== program.md"
		printf '# Program\n\n- **Weeks in a quarter:** 11\n- **Entry:** quarter 1 in Fall\n'
		printf -- '- **Terms:** Fall\n\n## Quarter 1\n\n- **Starts:** 2026-09-21\n\n'
		printf '### ORW 101: Course\n\n- **Credits:** 3\n- **Lab hours:** 44\n\n'
		for id in $ids; do echo "1. $id, week 2"; done
		for other in shop customs cohorts; do
			[ ! -f curriculum/$other.md ] || { echo "=== $other.md"; cat curriculum/$other.md; }
		done
		printf '=== skills.md\n# Skills\n\n## PO1: Outcome\n\n'
		grep -ohE '\b[a-z]+(\.[a-z0-9]+)+ (introduced|practiced|assessed)' "$file" |
			cut -d' ' -f1 | sort -u | sed 's/.*/- **&:** Skill/'
	} | head -c 20000 > "$seed/$name.txt"
done
# The translated ones with their translation.
for file in curriculum/assignments/es/*-*.md; do
	name=$(basename "$file" .md)
	{
		printf '=== program.md\n# Program\n\n- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n'
		printf '### ORW 101: Course\n\n1. %s\n=== assignments/%s.md\n' "$name" "$name"
		head -c 9000 "curriculum/assignments/$name.md"
		printf '\n=== assignments/es/%s.md\n' "$name"
		head -c 9000 "$file"
		printf '\n=== assignments/es/words.md\n# Words\n\n- **web:** alma\n- **Fit-up:** Ajuste\n'
	} > "$seed/es-$name.txt"
done
# Sets of limits of the user's own, each with a test that names it.
for file in templates/standards/*.md; do
	name=$(basename "$file" .md)
	{
		printf '=== program.md\n# Program\n\n- **Weeks in a quarter:** 11\n\n## Quarter 1\n\n'
		printf '### ORW 101: Course\n\n1. AA-01\n=== assignments/a.md\n# AA-01: Test\n\n'
		printf -- '- **Kind:** coupon\n- **Hours:** 2\n- **Process:** SMAW\n- **Joint:** tee\n'
		printf -- '- **Material:** A36 plate\n- **Thickness:** 3/8 in\n- **Position:** 2F\n\n'
		printf '## Acceptance\n\n'
		sed -n 's/^# \(.*\)/- **Visual:** \1/p' "$file"
		echo "=== standards/$name.md"
		cat "$file"
	} | head -c 20000 > "$seed/standard-$name.txt"
done
for file in tests/crash/*.txt; do
	[ ! -f "$file" ] || cp "$file" $seed/
done

# libFuzzer's dictionary: "word" a line, with quotes and backslashes escaped.
{
	grep -ohE '\*\*[A-Za-z -]+:\*\*' -r curriculum src/manual/format.md
	grep -ohE '^ *#+ [A-Za-z]+.*' src/manual/format.md
	grep -ohE '^[a-z]+( [a-z0-9]+)?:' -r curriculum
	awk -F'|' '/^\| [A-Z]/ { print $2; n = split($3, w, ", "); for (i = 1; i <= n; i++) print w[i] }' \
		src/manual/format.md
	grep -ohE '[0-9]+(/[0-9]+)? (in|mm|deg|ga|A|V|h|cfh)\b|NPS [0-9]+ schedule [0-9]+' -r curriculum
	printf '%s\n' 'one of: ' 'one of ' ', optional' ', week ' '=== program.md' \
		'=== skills.md' '=== shop.md' '=== assignments/a.md' '~~~joint' '~~~plate' '~~~' \
		'- **' ':** ' '### ' '## ' '> ' '<b>' '![' '](' '**Stop, ' 'SM-01' 'SM-02' '99999999' \
		'=== assignments/es/a.md' '# Words' '-1' '0' '1e9' '0.0000001' 'hole: ' 'slot: ' 'bend: ' 'cut: ' ' to ' ' x '
} | tr '~' '`' | sed 's/^ *//; s/ *$//; s/[\\"]/\\&/g' | awk 'length && length < 60' |
	LC_ALL=C sort -u | LC_ALL=C grep -av '[^ -~]' | sed 's/.*/"&"/' > build/fuzz/words
