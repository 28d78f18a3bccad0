#!/bin/sh
# The numbers of the tool, each as whole-process wall time in turn with a baseline that
# runs beside it, so that a slow machine slows both. Medians of RUNS pairs (7).
set -eu
cd "$(dirname "$0")/../.."
runs=${RUNS:-7}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

ms() { # ms COMMAND ...: one run, milliseconds on stdout
	start=$(date +%s%N)
	"$@" > "$work/out" 2>&1 || true
	end=$(date +%s%N)
	awk -v a="$start" -v b="$end" 'BEGIN { printf "%.2f\n", (b - a) / 1e6 }'
}

median() { sort -n "$1" | awk '{ v[NR] = $1 } END { print v[int((NR + 1) / 2)] }'; }

# pair NAME WISH -- OURS ... -- FLOOR ...
pair() {
	name=$1
	wish=$2
	shift 3
	ours=
	while [ "$1" != -- ]; do ours="$ours $1"; shift; done
	shift
	: > "$work/a"
	: > "$work/b"
	i=0
	while [ $i -le "$runs" ]; do
		a=$(ms $ours)
		b=$(ms "$@")
		[ $i = 0 ] || { echo "$a" >> "$work/a"; echo "$b" >> "$work/b"; }
		i=$((i + 1))
	done
	awk -v n="$name" -v w="$wish" -v a="$(median "$work/a")" -v b="$(median "$work/b")" \
	    'BEGIN { printf "%-46s %8.1f ms   floor %8.1f ms   ratio %5.2f   reach: %s\n", n, a, b, a / b, w }'
}

corpus() { # corpus N: a folder of N made-up assignments
	mkdir -p "$work/c$1/assignments"
	awk -v N="$1" -v DIR="$work/c$1" -f tests/bench/corpus.awk
	build/bench/dump_lines "$work/c$1" > "$work/c$1.lines"
	echo "corpus of $1: $(grep -c '^P$' "$work/c$1.lines") pages"
}

corpus 120
corpus 1200
build/bench/dump_lines curriculum > "$work/demo.lines"
echo "demo: $(grep -c '^P$' "$work/demo.lines") pages"

pair "120 assignments, read to fsynced PDF" "3 x the floor, then 1.5 x" -- \
    build/fitup print -C "$work/c120" --out "$work/o120" -- \
    build/bench/haru_floor "$work/c120.lines" "$work/f.pdf"
pair "1,200 assignments, read to fsynced PDF" "10 x the time of 120" -- \
    build/fitup print -C "$work/c1200" --out "$work/o1200" -- \
    build/bench/haru_floor "$work/c1200.lines" "$work/f.pdf"
pair "demo, everything printed" "under 400 ms, then 300" -- \
    build/fitup print -C curriculum --out "$work/demo" -- \
    build/bench/haru_floor "$work/demo.lines" "$work/f.pdf"
printf '%-46s %8.1f MiB   reach: 30\n' "demo, everything printed, most memory held" \
    "$(build/outside/peak build/fitup print -C curriculum --out "$work/demo" | awk '{ print $1 / 1024 }')"
build/bench/split curriculum "$work/split" "$runs"
pair "demo, inspected" "under 15 ms" -- build/fitup inspect -C curriculum -- \
    build/bench/cmark_floor curriculum/*.md curriculum/assignments/*.md

# A real graph: this machine's package lists as one program of few files.
if command -v apt-cache > /dev/null && apt-cache dumpavail > "$work/avail" 2> /dev/null && [ -s "$work/avail" ]; then
	awk -f tests/outside/packages.awk "$work/avail" "$work/avail" > "$work/graph"
	mkdir -p "$work/graph_program/assignments"
	awk -v DIR="$work/graph_program" -f tests/bench/graph_corpus.awk "$work/graph"
	awk '{ print $1, $1; for (i = 2; i <= NF; i++) print $i, $1 }' "$work/graph" > "$work/pairs"
	echo "real graph: $(wc -l < "$work/graph") assignments, $(awk '{ n += NF - 1 } END { print n }' "$work/graph") needs"
	pair "real graph, inspected, whole process" "the time of tsort, then 200 ms" -- \
	    build/fitup inspect -C "$work/graph_program" -- tsort "$work/pairs"
	printf '%-46s %8.0f MiB\n' "real graph, most memory held" \
	    "$(build/outside/peak build/fitup inspect -C "$work/graph_program" | awk '{ print $1 / 1024 }')"
fi
