#!/bin/sh
# The rows of C that hold the tables are those that src/tools/inc.awk makes from
# templates/tables, byte for byte; the words of other languages are all that the sources
# look up and no more. Run from the project root.
set -u
cd "$(dirname "$0")/.." || exit 2
passed=0
failed=0
made=$(mktemp) || exit 2
trap 'rm -f "$made"' EXIT

check()
{
	if "$@"; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		echo "failed: $*"
	fi
}

same()
{
	LC_ALL=C awk -f src/tools/csv.awk -f src/tools/inc.awk "templates/tables/$1.csv" >"$made" &&
	    cmp -s "$made" "$2"
}

narrow()
{
	expand "$1" | awk 'length > 90 { exit 1 }'
}

for inc in src/*/*.inc; do
	name=$(basename "$inc" .inc)
	[ -f "templates/tables/$name.csv" ] || continue
	check same "$name" "$inc"
	check narrow "$inc"
done

# A row with a field too many is refused, and so is a column that is not there.
refuses()
{
	! printf '%s\n' "$@" | awk -f src/tools/csv.awk -f src/tools/inc.awk - >/dev/null 2>&1
}
check eval "printf '%s\\n' '#inc b:number' 'a,b' '1,2' | awk -f src/tools/csv.awk -f src/tools/inc.awk - |
    grep -q '{ 2 },'"
check refuses '#inc a:number' 'a,b' '1,2,3'
check refuses '#inc c:number' 'a,b' '1,2'

# ---- words ----

# told FILE: true when it is empty, else says what is in it.
told()
{
	[ ! -s "$2" ] || { awk -v head="$1" '{ print head ": " $0 }' "$2"; false; }
}

dir=$(mktemp -d) || exit 2
trap 'rm -rf "$made" "$dir"' EXIT
LC_ALL=C awk -f src/tools/words.awk src/model/prose.c src/draw/*.[ch] src/sheets/*.[ch] \
    >"$dir/found"
cut -f 2 "$dir/found" | grep . | LC_ALL=C sort -u >"$dir/sources"
awk -F'\t' '$2 == ""' "$dir/found" >"$dir/odd"
check told 'looks up what is no literal' "$dir/odd"

for csv in templates/words/*.csv; do
	code=$(basename "$csv" .csv)
	LC_ALL=C awk -f src/tools/csv.awk -f src/tools/inc.awk "$csv" >"$made"
	check cmp -s "$made" "src/base/$code.inc"
	check narrow "src/base/$code.inc"
	LC_ALL=C awk -v dir="$dir" -f src/tools/csv.awk -f src/tools/words_csv.awk "$csv" >"$dir/unlike"
	check told "$csv: other places for values" "$dir/unlike"
	for from in source model standard program; do
		LC_ALL=C sort "$dir/$from" >"$dir/$from.sorted"
	done
	LC_ALL=C comm -23 "$dir/sources" "$dir/source.sorted" >"$dir/missing"
	check told "$csv has no row for" "$dir/missing"
	LC_ALL=C comm -13 "$dir/sources" "$dir/source.sorted" >"$dir/stale"
	check told "$csv has a row that no source looks up" "$dir/stale"
	while IFS= read -r text; do
		grep -qF "\"$text\"" src/model/*.c || echo "$text"
	done <"$dir/model" >"$dir/stale"
	check told "$csv has a row that src/model does not say" "$dir/stale"
	while IFS= read -r text; do
		grep -qF "$text" templates/standards/*.md || echo "$text"
	done <"$dir/standard" >"$dir/stale"
	check told "$csv has a row that no standard says" "$dir/stale"
	while IFS= read -r text; do
		grep -qF "**$text:**" curriculum/assignments/*.md || echo "$text"
	done <"$dir/program" >"$dir/stale"
	check told "$csv has a row that no demo sheet says" "$dir/stale"
done

# The lister sees literals in pieces, in tables and behind other calls, not comments.
cat >"$dir/one.c" <<'END'
/* word(l, "no") */
static const str v[] = { WORD("Week"), WORD("Hours") };
char c = '"'; x = word_format(a, of(e, "no"), "%u of "
    "%u", f(1, 2)); y = sh_word(sh, "Say \"Stop\"");
z = word_str(l, STR("no")); q = word(l, name);
END
LC_ALL=C awk -f src/tools/words.awk "$dir/one.c" | cut -f 2 >"$dir/listed"
printf '%s\n' Week Hours '%u of %u' 'Say "Stop"' '' >"$dir/wanted"
check cmp -s "$dir/listed" "$dir/wanted"

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 8 ]
