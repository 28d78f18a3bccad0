#!/bin/sh
# Knots and orders against outside judges: the strongly connected components of igraph
# and the verdict of coreutils tsort, on random graphs and on the package lists of
# this machine. Runs after `make`; LIB names the objects to link. Exit 77: a judge is
# missing.
cd "$(dirname "$0")/../.." || exit 3
work=$(mktemp -d) || exit 3
trap 'rm -rf "$work"' EXIT
passed=0 failed=0
here=tests/outside
LIB=${LIB:-build/libfitup.a}
CC=${CC:-gcc}

for tool in "$CC" tsort awk; do
	command -v "$tool" >/dev/null || { echo "no $tool"; exit 77; }
done
$CC -std=c11 -D_POSIX_C_SOURCE=200809L -O2 -o "$work/judge" $here/graph_igraph.c \
    $(pkg-config --cflags --libs igraph 2>/dev/null) 2>"$work/log" || { echo "no igraph"; exit 77; }
$CC -std=c11 -D_POSIX_C_SOURCE=200809L -Isrc -O2 -o "$work/check" $here/graph_check.c \
    $LIB -lcmark -lm || exit 3

pass() { passed=$((passed + 1)); }
fail() { failed=$((failed + 1)); echo "FAILED: $*"; }

same_knots() {
	"$work/check" "$work/graph" >"$work/ours"
	"$work/judge" "$work/graph" >"$work/theirs"
	if cmp -s "$work/ours" "$work/theirs"; then pass; else fail "knots of $1"; fi
}

# An order that tsort gives must have no unmet need and no loop; when tsort sees a
# circle, so must the check.
same_order() {
	awk '{ print $1, $1; for (i = 2; i <= NF; i++) print $i, $1 }' "$work/graph" \
	    >"$work/pairs"
	if tsort "$work/pairs" >"$work/order" 2>/dev/null; then
		want="0 loops 0 untaught"
		[ "$("$work/check" -u "$work/graph" "$work/order")" = "$want" ]
	else
		case $("$work/check" -u "$work/graph") in "0 loops"*) false ;; *) true ;; esac
	fi
	if [ $? -eq 0 ]; then pass; else fail "order of $1"; fi
}

seed=0
while [ $seed -lt 120 ]; do
	seed=$((seed + 1))
	nodes=$((5 + seed * seed % 197))
	edges=$((nodes * (seed % 7 + 2) / 4))
	awk -v seed=$seed -v nodes=$nodes -v edges=$edges -f $here/graph_random.awk \
	    >"$work/graph"
	same_knots "random graph $seed"
	same_order "random graph $seed"
done
if command -v apt-cache >/dev/null && apt-cache dumpavail >"$work/avail" 2>/dev/null &&
    [ -s "$work/avail" ]; then
	awk -f $here/packages.awk "$work/avail" "$work/avail" >"$work/graph"
	same_knots "the package lists"
	same_order "the package lists"
	"$work/check" -t "$work/graph"
	"$work/check" -t "$work/graph" "$work/order"
else
	echo "no package lists: that part is skipped"
fi
echo "$passed passed, $failed failed"
[ $failed -eq 0 ]
