#!/bin/sh
# What must not change what `inspect` finds: the names of ids and skills, which file an
# assignment stands in, the order of files. And what must: a move that a finding proposes
# is made in program.md, and the finding is gone. The programs are the demo with faults
# put in, and cases of tests/cases.
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

# edit FILE SCRIPT: sed, and an error when nothing changes, so that no fault is lost.
edit() {
	sed "$2" "$1" > "$work/edited"
	if cmp -s "$1" "$work/edited"; then
		ok "$1 has what $2 changes" 1
	fi
	cp "$work/edited" "$1"
}

# inspect DIR: as JSON; notes a run that does not end as it should.
inspect() {
	"$fitup" inspect -C "$1" --json
	[ $? -le 1 ] || echo "$1" >> "$work/broken"
}

# found DIR: the findings of a program, one a line with all it concerns, without places.
found() {
	inspect "$1" |
	    awk '/^ \{"name"/ { if (l) print l; l = $0; next }
		/^  \{"file"/ { l = l $0 }
		END { print l }' |
	    sed -e 's/"file":"[^"]*","line":[0-9]*,"column":[0-9]*,//g' \
		-e 's/[a-z]*\/[A-Za-z0-9-]*\.md:[0-9]*:[0-9]*/PLACE/g' \
		-e 's/}\],$/}/' -e 's/},$/}/' | sort
}

# Faults of every sort in the demo: order, rules, sizes, words, hours, waivers.
faulty=$work/faulty
cp -r curriculum "$faulty"
# Translations are held against the words of their sheets, which change here.
rm -rf "$faulty/assignments/es"
a=$faulty/assignments
edit "$a/SM-23.md" '/^## Needs/a\
- gmaw.short practiced'
edit "$a/SM-20.md" 's/E7018, 1.8 in/E7024, 1\/8 in/'
edit "$a/SM-04.md" 's/^leg: 5.16 in/leg: 1\/4 in/'
edit "$a/GP-06.md" 's/Position:\*\* 3G up/Position:** 2G/'
edit "$a/SM-22.md" 's/^# SM-22: .*/# SM-22: Tee and lap fillets 3F upward/'
edit "$a/GT-04.md" 's/ER308L/ER70S-6/'
edit "$a/SF-04.md" 's/Machines:\*\* /Machines:** shear, /'
edit "$a/PP-24.md" 's/Side bend:\*\* 4/Side bend:** 2/'
edit "$a/FB-03.md" 's/x 118 in/x 125 in/'
edit "$a/SM-03.md" 's/^- fit.tack practiced/&\
- smaw.2f assessed/'
edit "$a/GP-07.md" 's/smaw.4g practiced/smaw.4gg practiced/'
edit "$faulty/program.md" 's/SM-24, week 9/SM-24, week 9, optional/'
edit "$faulty/program.md" 's/quarter 1 in Spring/quarter 1, then 2, 3, 4, 6, 5/'
edit "$faulty/cohorts.md" 's/Students:\*\* 10/Students:** 14/'
ok 'the faults are found' "$([ "$(found "$faulty" | wc -l)" -ge 15 ]; echo $?)"

# Slips that show in several places each, and are told once: by trying what mends them.
slips=$work/slips
cp -r curriculum "$slips"
rm -rf "$slips/assignments/es"
a=$slips/assignments
edit "$a/SM-04.md" 's/smaw.2f assessed/smaw.2ff assessed/'
edit "$a/GM-01.md" 's/^## Teaches/## Teach/'
edit "$a/GP-07.md" 's/smaw.4g practiced/smaw.4gg practiced/'
edit "$a/FB-03.md" 's/^- \*\*Machines:/- **Machine:/'
edit "$a/SM-22.md" 's/^# SM-22: .*/# SM-22: Tee and lap fillets 3F upward/'
edit "$slips/program.md" '/^1. PP-01,/d'
edit "$slips/program.md" 's/SM-24, week 9/SM-24, week 9, optional/'
ok 'seven slips are told once each, beside what is waived' \
    "$([ "$(found "$slips" | wc -l)" = 8 ]; echo $?)"
ok 'with what they show elsewhere' \
    "$([ "$(inspect "$slips" | grep -c '^  {.*"name":')" -ge 5 ]; echo $?)"

# same WORDS DIR DIR [SED]: two programs say the same, after SED on the second.
same() {
	found "$2" > "$work/one"
	found "$3" | sed "${4:-}" | sort > "$work/two"
	cmp -s "$work/one" "$work/two"
	ok "$1" $?
	cmp -s "$work/one" "$work/two" || diff "$work/one" "$work/two" | head -n 6
}

# copy NAME DIR: a fresh copy to change.
copy() {
	rm -rf "${work:?}/$1"
	cp -r "$2" "$work/$1"
	printf '%s' "$work/$1"
}

# split DIR: one file an assignment, named so that files are read in another order.
split() {
	for f in "$1"/assignments/*.md; do
		awk -v dir="$1/assignments" '
			/^```/ { inside = !inside }
			/^# / && !inside { file = sprintf("%s/%02d-%s.md", dir, 99 - n++, substr($2, 1, 5)) }
			{ print > file }' "$f"
		rm "$f"
	done
}

# merge DIR ORDER: all assignments in one file; sort -r for the other end first.
merge() {
	ls "$1"/assignments/*.md | sort $2 | while read -r f; do
		cat "$f"
		echo
	done > "$work/merged"
	rm "$1"/assignments/*.md
	cp "$work/merged" "$1/assignments/all.md"
}

for from in "$faulty" "$slips" tests/cases/trade tests/cases/time; do
	name=$(basename "$from")
	d=$(copy other "$from")
	merge "$d" ''
	same "$name: all in one file" "$from" "$d"
	split "$d"
	same "$name: one file an assignment, read backward" "$from" "$d"
	d=$(copy other "$from")
	merge "$d" -r
	same "$name: one file, backward" "$from" "$d"
done

# Each id gets a letter in front, in all files; what is found gets it taken off again. So
# do skills, by the list of skills.md: "smaw.2f" to "wsmaw.2f".
ids='s/\<\([A-Z][A-Z]-[0-9][0-9]\)\>/Q\1/g'
sed -n 's/^- \*\*\([a-z0-9]*\)\.[a-z0-9.]*:\*\*.*/\1/p' curriculum/skills.md | sort -u > "$work/stems"
sed 's/.*/s,\\<&\\.\\([a-z0-9]\\),w&.\\1,g/' "$work/stems" > "$work/there"
sed 's/.*/s,\\<w&\\.\\([a-z0-9]\\),&.\\1,g/' "$work/stems" > "$work/back"
for from in "$faulty" "$slips"; do
	name=$(basename "$from")
	d=$(copy other "$from")
	for f in "$d"/*.md "$d"/assignments/*.md; do
		sed "$ids" "$f" > "$work/edited" && cp "$work/edited" "$f"
	done
	same "$name: other ids" "$from" "$d" 's/\<Q\([A-Z][A-Z]-[0-9][0-9]\)\>/\1/g'
	grep -q QSM-23 "$d/program.md"
	ok "$name: ids were changed" $?
	d=$(copy other "$from")
	for f in "$d"/*.md "$d"/assignments/*.md; do
		sed -f "$work/there" "$f" > "$work/edited" && cp "$work/edited" "$f"
	done
	same "$name: other skills" "$from" "$d" "$(cat "$work/back")"
done

# move PROGRAM ID QUARTER WEEK [COURSE]: the line goes behind those of that week in the
# course, or in the last of the quarter.
move() {
	awk -v id="$2," -v q="$3" -v w="$4" -v c="${5:-}" '
		/^## Quarter/ { quarter = $3 }
		/^### / { course = substr($0, 5); sub(/:.*/, "", course) }
		/^### / && quarter == q { last = course }
		$2 == id && /^[0-9]+\. / { next }
		{ line[++n] = $0; place[n] = quarter " " course }
		END {
			c = q " " (c == "" ? last : c)
			for (i = n; i; i--)
				if (place[i] == c && line[i] ~ /^[0-9]+\. /) {
					first = i
					week = line[i]
					sub(/.*week /, "", week)
					if (!at && week + 0 <= w)
						at = i
				}
			if (!at)
				at = first - 1
			for (i = 1; i <= n; i++) {
				print line[i]
				if (i == at)
					printf "99. %s week %d\n", id, w
			}
		}' "$1"
}

# list REPORT: "NAME WHAT|QUARTER|REPAIR" of each finding that stands by itself and is not
# waived; WHAT it concerns is an assignment and a skill, or a course.
list() {
	awk '
		function of(key) {
			if (!match($0, "\"" key "\":\"[^\"]*\""))
				return ""
			return substr($0, RSTART + length(key) + 4, RLENGTH - length(key) - 5)
		}
		/^ \{"name"/ && !/"waived":/ {
			said = of("message")
			what = of("assignment") " " of("skill")
			if (what == " " && match(said, /ORW [0-9]+/))
				what = substr(said, RSTART, RLENGTH)
			quarter = match(said, /\(quarter [0-9]+/) ? substr(said, RSTART + 9, RLENGTH - 9) : ""
			print of("name") " " what "|" quarter "|" of("repair")
		}' "$1"
}

# unmet REPORT: "ASSIGNMENT SKILL" of each need that is told as untaught or lies on a circle,
# those that another finding lists too.
unmet() {
	awk '/^ \{"name"/ { on = /"name":"(untaught-skill|needs-loop)"/ }
		(on || /"name":"untaught-skill"/) && match($0, /"assignment":"[^"]*","skill":"[^"]*"/) {
			split(substr($0, RSTART, RLENGTH), part, "\"")
			print part[4], part[8]
		}' "$1" | sort -u
}

# ways QUARTER REPAIR: "ID QUARTER WEEK COURSE" of each move that it proposes; a week
# without a quarter is in that of its finding.
ways() {
	printf '%s\n' "$2" | sed "s/to the end of week/to quarter ${1:-0}, week/g" |
	    grep -oE 'move [A-Za-z0-9-]+ to (the end of )?quarter [0-9]+, week [0-9]+(, in [A-Z]+ [0-9]+)?' |
	    sed 's/the end of //; s/move //; s/to quarter //; s/week //; s/in //; s/,//g'
}

quarter_of() {
	awk -v id="$1," '/^## Quarter/ { q = $3 } $2 == id { print q; exit }' curriculum/program.md
}

# Each assignment is put where it cannot stand, in the demo and in one without needs, where
# the rules of order alone mind; each move that any finding proposes is made. It clears
# its finding and makes no other, and clears none that is told by itself: that would be
# the same fault.
moves=0
wrong=0
cascades=0
seed=0
: > "$work/kinds"
needy=$(copy needy curriculum)
rm -rf "$needy/assignments/es"
free=$(copy free "$needy")
for f in "$free"/assignments/*.md; do
	# The card of gouging is known by the needs of one.
	case $f in */TC-04.md) continue ;; esac
	awk '/^## / { off = $0 == "## Needs" } !off' "$f" > "$work/edited"
	cp "$work/edited" "$f"
done
for id in $(sed -n 's/^[0-9]*\. \([A-Z0-9-]*\),.*/\1/p' curriculum/program.md); do
	seed=$((seed + 1))
	d=$needy
	[ $((seed % 2)) = 0 ] || d=$free
	case $((seed % 5)) in
	0) to='6 11' ;;
	1) to='1 1' ;;
	2) to='3 5' ;;
	# Within the quarter it is the rules of order that mind, more than needs.
	3) to="$(quarter_of "$id") 1" ;;
	*) to="$(quarter_of "$id") 11" ;;
	esac
	# The words are split on purpose.
	move curriculum/program.md "$id" $to > "$work/seeded"
	cp "$work/seeded" "$d/program.md"
	inspect "$d" > "$work/report"
	list "$work/report" > "$work/before"
	unmet "$work/report" > "$work/unmet_before"
	head -n 6 "$work/before" > "$work/told"
	while IFS='|' read -r what quarter repair; do
		ways "$quarter" "$repair" > "$work/ways"
		while read -r who to_quarter week course; do
			move "$work/seeded" "$who" "$to_quarter" "$week" "$course" > "$d/program.md"
			inspect "$d" > "$work/report"
			list "$work/report" | cut -d '|' -f 1 | sort > "$work/after"
			unmet "$work/report" > "$work/unmet_after"
			moves=$((moves + 1))
			echo "${what%% *}" >> "$work/kinds"
			# Gone, and no need that was met is unmet now.
			if grep -qxF "$what" "$work/after" ||
			    [ -n "$(comm -13 "$work/unmet_before" "$work/unmet_after")" ]; then
				wrong=$((wrong + 1))
				echo "$id at $to: $what: $repair"
				comm -13 "$work/unmet_before" "$work/unmet_after"
			fi
			if cut -d '|' -f 1 "$work/before" | grep -vxF "$what" | sort | comm -23 - "$work/after" |
			    grep . > "$work/cleared"; then
				cascades=$((cascades + 1))
				echo "$id at $to: $what: $who to quarter $to_quarter, week $week $course clears as well"
				cat "$work/cleared"
			fi
		done < "$work/ways"
	done < "$work/told"
done
ok "moves of many kinds of findings: $(sort -u "$work/kinds" | wc -l)" \
    "$([ "$(sort -u "$work/kinds" | wc -l)" -ge 6 ]; echo $?)"
ok "moves that rules of order propose: $(grep -vc untaught-skill "$work/kinds")" \
    "$([ "$(grep -vc untaught-skill "$work/kinds")" -ge 6 ]; echo $?)"
ok 'every run ends as it should' "$([ ! -e "$work/broken" ]; echo $?)"
ok "moves were proposed: $moves" "$([ "$moves" -ge 40 ]; echo $?)"
ok "each of $moves moves clears its finding and makes no other: $wrong do not" "$wrong"
ok "each of $moves moves clears but one finding: $cascades clear more" "$cascades"

echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
