#!/bin/sh
# `fitup explain`: each name of the lists, the nearest word for a wrong one, and the page
# of the manual that is made from the same lists.
set -u
cd "$(dirname "$0")/.." || exit 2
passed=0
failed=0
fitup=build/fitup
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

# The names on screen are the first words in quotes that hold no blank.
sed -n 's/^\(FINDING\|RULE\)([A-Z0-9_]*,[^"]*"\([a-z0-9-]*\)".*/\2/p' \
    src/base/finding.def src/base/rule.def > "$work/names"
"$fitup" explain > "$work/list"
ok "many names" "$([ "$(wc -l < "$work/names")" -gt 50 ]; echo $?)"
ok "rows and names are as many" "$([ "$(grep -c '^\(FINDING\|RULE\)(' src/base/finding.def src/base/rule.def |
    awk -F: '{ n += $2 } END { print n }')" = "$(wc -l < "$work/names")" ]; echo $?)"
while read -r name; do
	"$fitup" explain "$name" > "$work/one"
	ok "$name has a status of 0" $?
	grep -q "^$name: \(error\|warning\|note\)$" "$work/one" && grep -q '^  Example: .' "$work/one" &&
	    grep -q '^  Repair: .' "$work/one" && grep -q '^  \(Silence\|Accept\)' "$work/one"
	ok "$name says what, example, repair and how to silence it" $?
	grep -qx "\(error\|warning\|note\)  *$name" "$work/list"
	ok "$name is listed with its level" $?
	# Only a line to be copied as it stands may be long.
	grep -v '^    - \*\*' "$work/one" | awk 'length > 80 { exit 1 }'
	ok "$name keeps to 80 columns" $?
done < "$work/names"

# is WORDS EXPECTED NAME...: the first line of an explanation.
is() {
	words=$1
	want=$2
	shift 2
	ok "$words" "$([ "$("$fitup" explain "$@" | head -n 1)" = "$want" ]; echo $?)"
}
is 'case and blanks play no part' 'untaught-skill: error' Untaught Skill
is 'a fact' 'Thickness: a fact of an assignment' thickness
is 'a fact of two words' 'Wire feed: a fact of an assignment' wire feed
is 'a fact of a cohort' 'Entered: a fact of a cohort' entered
is 'a section' 'Teaches: a section of an assignment' teaches
"$fitup" explain kind | grep -q 'practice test'
ok 'the words of a fact are listed' $?

sed -n 's/^RULE([A-Z0-9_]*, [A-Z]*, CUSTOM, "\([a-z0-9-]*\)", "\([^"]*\)".*/\1:\2/p' \
    src/base/rule.def > "$work/customs"
while IFS=: read -r name custom; do
	# Words are split on purpose: they are joined again.
	"$fitup" explain $custom | grep -q "^$name: "
	ok "the custom \"$custom\" explains $name" $?
	"$fitup" explain "$name" | grep -qF -e "- **$custom:**"
	ok "$name says how to switch it off" $?
done < "$work/customs"
"$fitup" explain no-fume-caution | grep -q 'guards against harm'
ok 'a safety finding cannot be silenced' $?
"$fitup" explain idle-waiver | grep -q 'about customs.md itself'
ok 'what is wrong in customs.md cannot be waived' $?

"$fitup" explain untaugth-skill > "$work/out" 2> "$work/err"
ok 'a wrong name is wrong use' "$([ $? = 2 ]; echo $?)"
grep -q 'perhaps untaught-skill is meant' "$work/err" && [ ! -s "$work/out" ]
ok 'the likely name is offered on stderr' $?
"$fitup" explain xyzzy-plugh 2> "$work/err"
ok 'a name like no other is wrong use' "$([ $? = 2 ]; echo $?)"
grep -q perhaps "$work/err"
ok 'nothing is offered for it' "$([ $? = 1 ]; echo $?)"

"$fitup" explain --all > "$work/findings.md"
cmp -s "$work/findings.md" src/manual/findings.md
ok 'src/manual/findings.md is what the lists say: run make manual' $?

echo "$passed passed, $failed failed"
[ $failed = 0 ]
