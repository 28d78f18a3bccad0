#!/bin/sh
# Flat patterns against the part in space, worked out by pattern_judge.py over some
# hundred random parts. Exits 77 without python3.
# Builds its driver with ${CC:-gcc}; run from anywhere.
set -u
cd "$(dirname "$0")/../.." || exit 2
command -v python3 >/dev/null 2>&1 || { echo "python3 is not installed"; exit 77; }
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT

${CC:-gcc} -std=c11 -D_POSIX_C_SOURCE=200809L -O1 -Isrc -o "$work/driver" \
    tests/outside/pattern_driver.c src/reckon/pattern*.c src/base/arena.c src/base/str.c \
    src/base/buf.c -lm || exit 1
python3 -B tests/outside/pattern_judge.py "$work/driver"
