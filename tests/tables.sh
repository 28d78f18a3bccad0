#!/bin/sh
# The rows of C that hold the tables are those that src/tools/inc.awk makes from
# templates/tables, byte for byte. Run from the project root.
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
	LC_ALL=C awk -f src/tools/inc.awk "templates/tables/$1.csv" >"$made" &&
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
	! printf '%s\n' "$@" | awk -f src/tools/inc.awk - >/dev/null 2>&1
}
check eval "printf '%s\\n' '#inc b:number' 'a,b' '1,2' | awk -f src/tools/inc.awk - |
    grep -q '{ 2 },'"
check refuses '#inc a:number' 'a,b' '1,2,3'
check refuses '#inc c:number' 'a,b' '1,2'

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 8 ]
