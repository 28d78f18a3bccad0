#!/bin/sh
# Golden cases: each folder tests/cases/NAME is a program; NAME.findings beside it is
# what `inspect` must print, byte for byte, with its exit status on the last line.
# NAME.args, where there is one, holds further words for the command line.
# `cases.sh golden` rewrites them.
set -u
cd "$(dirname "$0")/.."
passed=0
failed=0
for dir in tests/cases/*/; do
	name=$(basename "$dir")
	want=tests/cases/$name.findings
	got=build/$name.findings
	args=
	[ -f "tests/cases/$name.args" ] && args=$(cat "tests/cases/$name.args")
	# The words are split on purpose.
	build/fitup inspect -C "tests/cases/$name" $args > "$got" 2>&1
	echo "exit $?" >> "$got"
	if [ "${1:-}" = golden ]; then
		cp "$got" "$want"
	fi
	if cmp -s "$want" "$got"; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		echo "case $name:"
		diff -u "$want" "$got" | head -n 40
	fi
done
echo "$passed passed, $failed failed"
[ $failed = 0 ]
