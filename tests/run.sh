#!/bin/sh
# Runs every test that `make check` has built and sums them up. Unit tests are cmocka
# programs; the others are scripts that end with a line "N passed, N failed" and exit
# with 77 when a tool that they compare with is not there. Closing line: the sums.
set -u
cd "$(dirname "$0")/.."
passed=0
failed=0
log=build/check.log
: > $log

# add NAME PASSED FAILED
add() {
	passed=$((passed + $2))
	failed=$((failed + $3))
	printf '%-34s %5d passed, %d failed\n' "$1" "$2" "$3"
}

run_unit() {
	name=$(basename "$1")
	out=$("$1" 2>&1)
	status=$?
	printf '== %s\n%s\n' "$name" "$out" >> $log
	good=$(printf '%s\n' "$out" | sed -n 's/^\[  PASSED  \] \([0-9]*\) test.*/\1/p' | awk '{ s += $1 } END { print s + 0 }')
	bad=$(printf '%s\n' "$out" | sed -n 's/^ *\([0-9]*\) FAILED TEST.*/\1/p' | awk '{ s += $1 } END { print s + 0 }')
	if [ "$good" = 0 ] && [ "$bad" = 0 ] || { [ $status != 0 ] && [ "$bad" = 0 ]; }; then
		bad=$((bad + 1))
		echo "$name ended without a good summary (exit $status)"
	fi
	[ "$bad" = 0 ] || printf '%s\n' "$out" | grep -E 'FAILED|error|ERROR|LINE' | head -40
	add "$name" "$good" "$bad"
}

run_script() {
	name=$(basename "$1")
	out=$(sh "$1" 2>&1)
	status=$?
	printf '== %s\n%s\n' "$name" "$out" >> $log
	printf '%s\n' "$out" | sed -n "s/^skipped: /$name: skipped: /p"
	last=$(printf '%s\n' "$out" | grep -E '^[0-9]+ passed, [0-9]+ failed$' | tail -n 1)
	if [ $status = 77 ]; then
		echo "$name: skipped, a tool is missing"
		return
	fi
	good=${last%% *}
	bad=$(printf '%s\n' "$last" | sed -n 's/.*, \([0-9]*\) failed/\1/p')
	if [ -z "$last" ] || { [ $status != 0 ] && [ "${bad:-0}" = 0 ]; }; then
		bad=$((${bad:-0} + 1))
		echo "$name ended without a good summary (exit $status)"
	fi
	[ "$bad" = 0 ] || printf '%s\n' "$out" | tail -n 40
	add "$name" "${good:-0}" "$bad"
}

run_script src/tools/layers.sh
for t in build/tests/test_*; do
	case $t in *.d) continue ;; esac
	run_unit "$t"
done
for t in tests/*.sh tests/outside/*.sh; do
	case $t in tests/run.sh | tests/long.sh | tests/fuzz_seed.sh) continue ;; esac
	run_script "$t"
done
echo "$passed passed, $failed failed"
[ $failed = 0 ]
