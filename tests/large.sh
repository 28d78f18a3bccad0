#!/bin/sh
# Large programs: the memory of `inspect` grows with their size and no faster, and what is
# said of the small one is said of each. Half of the needs are not met in time, so findings
# count too.
set -u
cd "$(dirname "$0")/.." || exit 2
passed=0
failed=0
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT

# ok WORDS STATUS: counts one check.
ok() {
	if [ "$2" = 0 ]; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		echo "failed: $1"
	fi
}

# program N: N assignments of three needs each, in $work/N.
program() {
	mkdir -p "$work/$1/assignments"
	awk -v n="$1" 'BEGIN {
		for (i = 0; i < n; i++)
			print "p" i, "p" (i * 7) % n, "p" int(i / 2), "p" int(i / 3)
	}' | awk -v DIR="$work/$1" -f tests/bench/graph_corpus.awk
}

# peak N: KiB at most while the program of N is inspected.
peak() { build/outside/peak build/fitup inspect -C "$work/$1"; }

small=16000 large=64000
for n in $small $large; do
	program $n
	build/fitup inspect -C "$work/$n" > "$work/out"
	[ $? = 1 ] && tail -n 1 "$work/out" | grep -q "^$n assignments in"
	ok "$n assignments are inspected" $?
done
a=$(peak $small) b=$(peak $large)
awk -v a="$a" -v b="$b" 'BEGIN {
	printf "peak %.0f MiB and %.0f MiB: %.2f times for 4 times the size\n", a / 1024, b / 1024, b / a
	exit !(a > 0 && b > a && b <= 4.4 * a)
}'
ok "memory in proportion to the program" $?
echo "$passed passed, $failed failed"
[ $failed = 0 ]
