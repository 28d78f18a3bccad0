#!/bin/sh
# Broken and hostile input, failing disks and killed runs: fitup tells what is wrong,
# never hangs, and leaves no file half written. Every run has ten seconds. A line
# "skipped: ..." names what this machine cannot show. Run from anywhere.
set -u
cd "$(dirname "$0")/.." || exit 2
root=$PWD
work=$(mktemp -d) || exit 2
trap 'cleanup' EXIT
chmod 755 "$work"
cp build/fitup "$work/fitup"
fitup=$work/fitup
passed=0
failed=0
limit=${HOSTILE_SECONDS:-10}
out=$work/out.txt
err=$work/err.txt
tab=$(printf '\t')

cleanup() {
	umount "$work/full" 2>/dev/null
	rm -rf "$work"
}

ok() { passed=$((passed + 1)); }

bad() {
	failed=$((failed + 1))
	echo "failed: $1"
}

# check NAME COMMAND ...: the command succeeds.
check() {
	name=$1
	shift
	if "$@"; then ok; else bad "$name"; fi
}

run() {
	timeout "$limit" "$fitup" "$@" >"$out" 2>"$err" </dev/null
	status=$?
}

# ended NAME STATUS [TEXT ...]: the last run ended so, and stdout or stderr has each TEXT.
ended() {
	name=$1
	if [ "$status" != "$2" ]; then
		bad "$name: exit $status, not $2"
		sed 's/^/    /' "$out" "$err" | head -n 8
		return
	fi
	shift 2
	for text in "$@"; do
		if ! cat "$out" "$err" | tr -s '\n ' ' ' | grep -qF -e "$text"; then
			bad "$name: does not say \"$text\""
			sed 's/^/    /' "$out" "$err" | head -n 8
			return
		fi
	done
	ok
}

# A small program without any finding, in $work/NAME, which becomes the current folder.
program() {
	mkdir -p "$work/$1/assignments" && cd "$work/$1" || exit 2
	cat >program.md <<'END'
# Orehollow: Bench work

- **Weeks in a quarter:** 11
- **Terms:** Fall
- **Entry:** quarter 1 in Fall

## Quarter 1

### ORW 101: Foundations

- **Credits:** 3
- **Lab hours:** 4

1. AA-01, week 1 (First)
2. AA-02, week 2 (Second)
END
	cat >skills.md <<'END'
# Skills

## PO1: Works at the bench

- **bench.file:** Files to a line
END
	printf '# Shop\n\n## Station bench\n\n- **Places:** 10\n' >shop.md
	cat >assignments/AA-01.md <<'END'
# AA-01: First

- **Kind:** written
- **Hours:** 2

## Teaches

- bench.file introduced

## Procedure

1. Read the rules.
END
	cat >assignments/AA-02.md <<'END'
# AA-02: Second

- **Kind:** written
- **Hours:** 2

## Needs

- bench.file introduced

## Teaches

- bench.file assessed by Line

## Procedure

1. File to the line.

## Acceptance

- **Line:** within 1/64 in

## Grading

- **Line:** 100, must pass
- **Pass mark:** 70
END
}

# inspected NAME STATUS [TEXT ...]: inspects the current folder.
inspected() {
	run inspect -C .
	ended "$@"
}

# repeat COUNT TEXT: the text so many times, without line ends.
repeat() {
	awk -v n="$1" -v text="$2" 'BEGIN { while (n--) printf "%s", text }'
}

# As a user who is not root: setpriv when we are root, else ourselves.
as_user() {
	if [ "$(id -u)" = 0 ]; then
		setpriv --reuid=65534 --regid=65534 --clear-groups "$@"
	else
		"$@"
	fi
}

skip() { echo "skipped: $1"; }

# ---- the plain cases, to know that the rest means something ----

program sound
inspected 'a sound program' 0 '0 errors, 0 warnings, 0 notes'
run print -C . --out "$work/sound.out"
ended 'prints' 0 'packet.pdf' 'grading.pdf'
check 'a complete PDF' qpdf --check "$work/sound.out/q1/packet.pdf" >/dev/null

# ---- bytes ----

program latin
printf '# AA-01: First\n\n- **Kind:** written\n- **Hours:** 2\n\n## Notes\n\ncaf\351 here\n' \
	>assignments/AA-01.md
inspected 'not UTF-8: place, cure' 1 'assignments/AA-01.md:8:4: error:' '[not-utf8]' \
	'save it again with the encoding UTF-8'
printf '# AA-01: First\n\n\303\251\303' >assignments/AA-01.md
inspected 'cut UTF-8 at the end' 1 'assignments/AA-01.md:3:2: error:' '[not-utf8]'
printf '# AA-01: First\n\nx\355\240\200' >assignments/AA-01.md
inspected 'a surrogate' 1 'AA-01.md:3:2: error:' '[not-utf8]'
printf '# AA-01: First\n\n\300\257' >assignments/AA-01.md
inspected 'an overlong slash' 1 'AA-01.md:3:1: error:' '[not-utf8]'

program control
printf '\n## Notes\n\nbell \007 here\nzero \000 here\n' >>assignments/AA-01.md
inspected 'control characters' 1 'AA-01.md:16:6: error: a control character (code 7)' \
	'AA-01.md:17:6: error: a control character (code 0)' '[control-character]'
printf '\nsteer \302\233 here\n' >>assignments/AA-01.md
inspected 'a control character above ASCII' 1 \
	'AA-01.md:19:7: error: a control character (code 155)'
repeat 5000 "$(printf '\001')" >>assignments/AA-01.md
inspected 'many control characters are cut short' 1 'further ones are not listed'
check 'and do not bury the rest' test "$(wc -l <"$out")" -lt 100

program ends
for f in program.md skills.md assignments/*.md; do
	tr '\n' '\r' <"$f" >"$work/cr" && cp "$work/cr" "$f"
done
inspected 'CR alone ends lines' 0 '2 assignments in 1 course' '0 errors, 0 warnings'
program crlf
for f in program.md skills.md assignments/*.md; do
	{ printf '\357\273\277'; sed "s/\$/$(printf '\r')/" "$f"; } >"$work/cr" && cp "$work/cr" "$f"
done
inspected 'CR LF and BOM' 0 '2 assignments in 1 course' '0 errors, 0 warnings'
printf '\357\273\277' >assignments/AA-02.md
inspected 'a BOM and nothing else' 1 'AA-02.md:1:1: error: the file holds nothing' \
	'also program.md:15:4: no file defines AA-02' 'delete it and its line in program.md'

program long
{ printf '\n## Notes\n\n'; repeat 70000 x; printf '\nshort\n'; } >>assignments/AA-01.md
inspected 'a line over 64 KiB' 1 'AA-01.md:16:1: error:' 'longer than 64 KiB' '[over-limit]'
program longest
{ printf '\n## Notes\n\n'; repeat 10922 'steel '; printf '\n'; } >>assignments/AA-01.md
inspected 'a line just below 64 KiB' 0 '0 errors'
run print -C . --out "$work/longest.out" AA-01
ended 'and prints' 0 'aa-01/packet.pdf'
program huge
truncate -s 67108869 assignments/big.md
inspected 'a file over 64 MiB' 1 'assignments/big.md: error:' 'larger than 64 MiB' \
	'[over-limit]'
program empty
: >assignments/none.md
printf '\n\n  \n' >assignments/blank.md
inspected 'empty files' 0 'none.md:1:1: warning: the file holds nothing' 'blank.md:1:1: warning:'
program headless
printf -- '- **Kind:** written\n' >assignments/AA-03.md
inspected 'a file without heading' 1 'AA-03.md:1' '[no-heading]'

# ---- what is no file ----

program kinds
mkdir assignments/dir.md
mkfifo assignments/pipe.md
ln -s nowhere.md assignments/broken.md
ln -s loop.md assignments/loop.md
inspected 'folder, pipe, broken and looping link' 1 \
	'assignments/dir.md: error: this file was not read: it is not a plain file' \
	'assignments/pipe.md: error: this file was not read: it is not a plain file' \
	'assignments/broken.md: error: this file was not read: No such file' \
	'assignments/loop.md: error: this file was not read:' '[unreadable-file]' \
	'2 assignments in 1 course'
ln -s /dev/zero assignments/zero.md
inspected 'a link to a device' 1 'assignments/zero.md: error:' '[link-out]'

program links
cp assignments/AA-02.md "$work/outside.md"
rm assignments/AA-02.md
ln -s "$work/outside.md" assignments/AA-02.md
inspected 'a link out of the folder' 1 'assignments/AA-02.md: error:' '[link-out]' \
	'copy the file into the folder'
ln -sf ../links.d/AA-02.md assignments/AA-02.md
mkdir links.d && cp "$work/outside.md" links.d/AA-02.md
inspected 'a link inside the folder is read' 0 '2 assignments in 1 course' '0 errors'
mkdir "$work/links-more" && cp "$work/outside.md" "$work/links-more/AA-02.md"
ln -sf ../../links-more/AA-02.md assignments/AA-02.md
inspected 'a folder whose name begins alike is outside' 1 '[link-out]'
mv assignments "$work/away" && ln -s "$work/away" assignments
inspected 'a linked folder outside' 1 'the folder assignments is a link out of' '[link-out]'
rm assignments && mv "$work/away" real && ln -s real assignments && rm real/AA-02.md &&
	cp "$work/outside.md" real/AA-02.md
inspected 'a linked folder inside is read' 0 '2 assignments in 1 course' '0 errors'

program secret
chmod 000 assignments/AA-02.md
if as_user true 2>/dev/null; then
	as_user timeout "$limit" "$fitup" inspect -C . >"$out" 2>"$err"
	status=$?
	ended 'an unreadable file' 1 'assignments/AA-02.md: error: this file was not read: Permission'
	chmod 644 assignments/AA-02.md && chmod 000 assignments
	as_user timeout "$limit" "$fitup" inspect -C . >"$out" 2>"$err"
	status=$?
	ended 'an unreadable folder' 1 'the folder assignments was not read: Permission'
	chmod 755 assignments
else
	skip 'unreadable files: this machine lets no other user run'
fi

program missing
rm skills.md
inspected 'no skills.md' 1 'skills.md' '[missing-file]'
rm program.md
inspected 'nor program.md' 1 'program.md' 'skills.md' '[missing-file]'
rm -r assignments
inspected 'nor assignments' 1 '[missing-file]'
run inspect -C "$work/nowhere"
ended '-C on nothing' 2 "cannot read the folder $work/nowhere: No such file"
run inspect -C shop.md
ended '-C on a file' 2 'cannot read the folder shop.md: Not a directory'
run inspect -C ''
ended '-C on an empty name' 2 'cannot read the folder'

# ---- pictures ----

program pictures
mkdir pictures
cat >>assignments/AA-01.md <<'END'

## Drawing

![A line that rises to the right](../pictures/a.png)
END
# png WIDTH HEIGHT ROWS: a gray picture of 8 bits in a.png, rows all white but the first.
png() {
	python3 - "$@" <<'END'
import struct, sys, zlib
w, h, rows = map(int, sys.argv[1:])
c = lambda n, d: struct.pack('>I', len(d)) + n + d + struct.pack('>I', zlib.crc32(n + d))
raw = b'\0' + b'\0' * w + (b'\0' + b'\xff' * w) * (rows - 1)
open('pictures/a.png', 'wb').write(b'\x89PNG\r\n\x1a\n' +
    c(b'IHDR', struct.pack('>IIBBBBB', w, h, 8, 0, 0, 0, 0)) +
    c(b'zTXt', b'x\0\0' + zlib.compress(b'a' * 50000000, 9)) +
    c(b'IDAT', zlib.compress(raw, 9)) + c(b'IEND', b''))
END
}
if command -v python3 >/dev/null; then
	png 1200 600 600
	inspected 'a picture with a text of 50 MB packed in it' 0 '0 errors, 0 warnings, 0 notes'
	run print -C . --out "$work/pictures.out"
	ended 'is printed' 0 'packet.pdf'
	check 'a complete PDF with a picture' qpdf --check "$work/pictures.out/q1/packet.pdf" >/dev/null
	cp pictures/a.png "$work/whole.png"
	png 8000 3125 3125
	inspected 'the largest picture' 0 '0 errors'
	run print -C . --out "$work/pictures.big"
	ended 'is printed too' 0 'packet.pdf'
	png 1000000 1000000 1
	inspected 'a bomb of a picture' 1 'AA-01.md:16:1: error: pictures/a.png cannot be shown:' \
		'more than 8,000 pixels' '[bad-picture]'
	png 8000 3125 10
	inspected 'a picture with few of its rows' 1 'a.png cannot be shown: it is damaged' '[bad-picture]'
	run print -C . --out "$work/pictures.out"
	ended 'holds its sheet back' 1 'held back' 'it is damaged'
	check 'the old packet is gone' test ! -e "$work/pictures.out/q1/packet.pdf"
	run print -C . --out "$work/pictures.out" --draft
	ended 'but not a draft' 1 'packet.pdf'
	size=$(wc -c <"$work/whole.png")
	hurt=0
	for i in $(seq 60); do
		at=$((i * 7919 % size))
		if [ $((i % 3)) = 0 ]; then
			head -c "$at" "$work/whole.png" >pictures/a.png
		else
			{ head -c "$at" "$work/whole.png"; printf '\245'; tail -c +$((at + 2)) "$work/whole.png"
			} >pictures/a.png
		fi
		run inspect -C .
		[ "$status" -le 1 ] || hurt=$((hurt + 1))
	done
	check "60 broken pictures end in time ($hurt did not)" test $hurt = 0
else
	skip 'broken pictures: no python3 to make them'
fi
printf '\377\330\377\340\000\020JFIF' >pictures/a.png
inspected 'a JPEG renamed' 1 'it is a JPEG photograph' '[bad-picture]'
: >pictures/a.png
inspected 'an empty picture' 1 'the file is empty' '[bad-picture]'
truncate -s 67108870 pictures/a.png
inspected 'a picture over 64 MiB' 1 'a.png cannot be shown: it is larger than 64 MiB' '[bad-picture]'
rm pictures/a.png && mkdir pictures/a.png
inspected 'a folder for a picture' 1 'it is not a plain file' '[bad-picture]'
rmdir pictures/a.png && mkfifo pictures/a.png
inspected 'a pipe for a picture' 1 'it is not a plain file' '[bad-picture]'
rm pictures/a.png && ln -s /dev/zero pictures/a.png
inspected 'a device for a picture' 1 'a link that leads out of the program folder' '[bad-picture]'
ln -sf "$work/outside.md" pictures/a.png
inspected 'a picture outside' 1 'a link that leads out of the program folder' '[bad-picture]'
rm -r pictures && mkdir "$work/gallery" && ln -s "$work/gallery" pictures
inspected 'a linked folder of pictures outside' 1 'the folder pictures is a link out of' '[link-out]'

# ---- deep, wide, long ----

program deep
{ printf '\n## Notes\n\n'; repeat 50000 '> '; printf 'x\n'; } >>assignments/AA-01.md
inspected 'nested quotes on a line' 1 'AA-01.md:16:1: error:' '[over-limit]'
program deep2
{ printf '\n## Notes\n\n'; repeat 30000 '>'; printf ' x\n'; } >>assignments/AA-01.md
inspected '30,000 nested quotes' 1 'AA-01.md:16:1: error: this line begins with more than 100' \
	'[over-limit]'
program deep7
{ printf '\n## Notes\n\n'; repeat 90 '>'; printf ' x\n'; } >>assignments/AA-01.md
inspected '90 nested quotes' 1 'AA-01.md:16:1: error:' '[not-understood]'
program deep3
{ printf '\n## Notes\n\n'; repeat 50000 '['; printf '\n\n'; repeat 50000 '!['; printf '\n\n'
	repeat 60000 '*'; printf 'a'; repeat 5000 '_'; printf '\n\n'; repeat 20000 '`a'
	printf '\n\n'; repeat 20000 '[a]('; printf '\n'; } >>assignments/AA-01.md
run inspect -C .
check 'brackets, stars and ticks end in time' test "$status" -le 1
program deep4
{ printf '\n## Notes\n\n'; repeat 32000 '- '; printf 'x\n'; } >>assignments/AA-01.md
awk 'BEGIN { for (i = 0; i < 200000; i++) print ""; print "y" }' >>assignments/AA-01.md
inspected 'lists in lists and many empty lines' 1 'AA-01.md:16:1: error: this line begins' \
	'[over-limit]'
program deep5
{ printf '\n## Notes\n\n'
	awk 'BEGIN { for (i = 0; i < 300; i++) printf "%*s- x\n", 2 * i, "" }'
} >>assignments/AA-01.md
inspected 'lists 300 deep, a line each' 1 'AA-01.md' '[not-understood]' '[over-limit]' \
	'further ones are not listed'
program brackets
{ printf '\n## Notes\n\n'; repeat 160000 '![[]()' | fold -w 60000; printf '\n\nAnd 1 in [25 mm].\n'
} >>assignments/AA-01.md
inspected 'brackets over many lines' 1 'AA-01.md:16:1: error: more than 1,000 square brackets' \
	'[over-limit]' '1 error, 0 warnings'
program deep6
{ printf '\n## Notes\n\n'; repeat 50000 '*a **b '; printf '\n'; } | fold -w 60000 \
	>>assignments/AA-01.md
run print -C . --out "$work/deep6.out"
check 'emphasis that never ends' test "$status" -le 1

program table
printf '\n## Notes\n\n| a | b |\n|---|---|\n| 1 | 2 |\n\n<script>x</script>\n\na <b>c</b>\n' \
	>>assignments/AA-01.md
inspected 'a table and raw HTML' 1 'AA-01.md:16:1: error: a table has no meaning here' \
	'AA-01.md:20:1: error: raw HTML has no meaning here' 'AA-01.md:22:' '[raw-html]'

program slots
{ sed '/^1\. /,$d' program.md
	awk 'BEGIN { for (i = 0; i < 100000; i++)
		printf "1. %c%c-%04d, week %d\n", 65 + i % 26, 65 + i / 10000, i % 10000, i % 11 + 1 }'
} >"$work/slots.md" && cp "$work/slots.md" program.md
inspected '100,000 slots' 1 'no file defines AA-0000' '[unknown-assignment]' '100000 errors, '
program twice
{ cat program.md; awk 'BEGIN { for (i = 0; i < 100000; i++) print "1. AA-01, week 1" }'
} >"$work/slots.md" && cp "$work/slots.md" program.md
inspected '100,000 times the same slot' 1 '100000 errors' '[listed-twice]'

program wide
word=$(repeat 800 Weldment)
sed -i "s/First/$word/" assignments/AA-01.md program.md
sed -i "s/Read the rules/$word and **$word** and \`$word\`/; s/bench work/$word/" assignments/AA-01.md
sed -i "s/Foundations/$word/; s/Bench work/$word/" program.md
sed -i "s/Files to a line/$word/" skills.md
sed -i "s/\\*\\*Line:/**$word:/; s/by Line/by $word/" assignments/AA-02.md
run print -C . --draft --out "$work/wide.out"
ended 'very long words print' 0 'q1/packet.pdf' 'q1/grading.pdf'
# outside BOXES PAGE_WIDTH: words of pdftotext -bbox that leave their page.
outside() {
	pdftotext -bbox "$1" - | awk -F'"' '/<page / { w = $2; h = $4 }
		/<word / && ($2 < -1 || $4 < -1 || $6 > w + 1 || $8 > h + 1) { n++ } END { exit n > 0 }'
}
for part in packet grading; do
	check "long words stay on the page: $part" outside "$work/wide.out/q1/$part.pdf"
	check "long words: complete $part" qpdf --check "$work/wide.out/q1/$part.pdf" >/dev/null
done

# ---- wrong use ----

cd "$work/sound" || exit 2
run weld
ended 'an unknown command' 2 'no command is called weld'
run
ended 'no command' 2 'say what to do'
run inspect --frobnicate
ended 'an unknown option' 2 'frobnicate'
run print --paper foolscap --out "$work/none"
ended 'an unknown paper' 2 'paper is letter or a4, not foolscap'
run print Q9 --out "$work/none"
ended 'a quarter that is not there' 2 'nothing to print is called Q9'
run print AA-01 nonsense --out "$work/none"
ended 'an unknown word' 2 'nothing to print is called nonsense'
run print '' --out "$work/none"
ended 'an empty word' 2 'nothing to print is called'
run inspect more
ended 'a word too many' 2 'inspect takes no further words'
run print --out
ended 'an option without its value' 2 'out'
check 'wrong use writes nothing' test ! -e "$work/none"
mkdir "$work/bare" && cd "$work/bare" || exit 2
run inspect
ended 'no program here' 2 'no program.md here and none in ./curriculum'

# ---- levels, and one run for all ----

program warn
printf '\n- **bench.saw:** Saws\n' >>skills.md
inspected 'warnings alone' 0 '[never-taught]' '0 errors, 1 warning'

program many
printf '# AA-01: Again\n\n- **Kind:** written\n- **Hours:** 1\n' >assignments/ZZ-09.md
printf 'caf\351\n' >assignments/BB-01.md
printf '# BB-02: Odd\n\n- **Knid:** written\n- **Hours:** soon\n\n## Nedes\n\n- bench.fiel introduced\n' \
	>assignments/BB-02.md
printf '# BB-03: Deep\n\n- **Kind:** written\n- **Hours:** 1\n\n## Needs\n\n- bench.file assessed\n' \
	>assignments/BB-03.md
sed -i 's/week 2/week 12/; /^1[.]/i 0. BB-03, week 1
	$a 3. CC-01, week 3' program.md
inspected 'everything wrong in one run' 1 'ZZ-09.md:1:3: error:' '[duplicate-id]' \
	'BB-01.md:1:4: error:' '[not-utf8]' 'BB-02.md:3:5: error:' '[unknown-key]' 'BB-02.md:4:' \
	'BB-02.md:6:' '[unknown-section]' 'program.md:16:' '[week-outside]' \
	'read as CC-01, which program.md lists and no file' 'BB-03.md' '[untaught-skill]' '[not-listed]'

program odd
printf '# AA-03: "Quoted" \\\\ back é ⅜ title\n\n- **Ki"n\\\\d é:** a"b\\\\c\n- **Hours:** "\\\\\n%s\n' \
	"$(printf -- '- **Kind:** x\001\037y\177')" >assignments/AA-03.md
cp assignments/AA-03.md 'assignments/q"uo\te é.md'
mv 'assignments/q"uo\te é.md' "assignments/q\"uo\\te${tab}é.md"
run inspect -C . --json
ended 'odd characters in JSON' 1 'Ki\"n'
check 'JSON is JSON' jq -e '.fitup == 1 and (.findings | length) > 5 and
	.counts.error == ([.findings[] | select(.level == "error")] | length) and
	any(.findings[]; .file == "assignments/q\"uo\\te\\x09é.md")' "$out" >/dev/null
program names
for name in "$(printf 'bad\377.md')" "$(printf 'esc\033[31m.md')" "$(printf 'two\nlines.md')" \
	"$(printf 'csi\302\233.md')"; do
	: >"assignments/$name" 2>/dev/null || skip "a file name of odd bytes: this disk refuses it"
done
inspected 'odd names are spelled out' 0 'assignments/bad\xFF.md:1:1: warning:' \
	'assignments/esc\x1B[31m.md:1:1: warning:' 'assignments/two\x0Alines.md:1:1: warning:' \
	'assignments/csi\xC2\x9B.md:1:1: warning:' '4 warnings'
run inspect -C . --json
check 'and JSON stays JSON' jq -e '.counts.warning == 4' "$out" >/dev/null
check 'no control character reaches the terminal' test -z "$(tr -d '\12\40-\176' <"$out")"
run inspect -C "$work/slots" --json
check 'JSON of 100,000 findings' jq -e '.counts.error == 100000' "$out" >/dev/null

# ---- writing ----

# parts DIR: temporary files left in it.
parts() { find "$1" -name '*.part' | wc -l; }

# same_files A B: B has each PDF of A with the same bytes.
same_files() {
	(cd "$1" && find . -name '*.pdf') | while read -r f; do
		cmp -s "$1/$f" "$2/$f" || exit 1
	done
}

program writes
mkdir "$work/locked" "$work/locked/q1"
chmod 555 "$work/locked" "$work/locked/q1"
if as_user true 2>/dev/null; then
	as_user timeout "$limit" "$fitup" print -C . --out "$work/locked" >"$out" 2>"$err"
	status=$?
	ended 'a read-only folder' 3 'fitup: cannot write' 'Permission denied'
	check 'nothing in the read-only folder' test -z "$(find "$work/locked" -type f)"
	as_user timeout "$limit" "$fitup" print -C . --out "$work/locked/below" >"$out" 2>"$err"
	status=$?
	ended 'a folder that cannot be made' 3 'Permission denied'
	run print -C . --out "$work/owned"
	chmod 777 "$work/owned" && chmod 555 "$work/owned/q1"
	sed -i 's/week 2/week 12/' program.md
	as_user timeout "$limit" "$fitup" print -C . --out "$work/owned" >"$out" 2>"$err"
	status=$?
	ended 'an old file that cannot go' 3 'cannot remove the old' 'Permission denied'
	check 'stays on the list' grep -q 'q1/packet.pdf' "$work/owned/.fitup-printed"
else
	skip 'a read-only folder: this machine lets no other user run'
fi

program disk
mkdir "$work/full"
if mount -t tmpfs -o size=96k tmpfs "$work/full" 2>/dev/null; then
	run print -C . --out "$work/full"
	ended 'a full disk' 3 'fitup: cannot write' 'No space left'
	check 'no part is left on the full disk' test "$(parts "$work/full")" = 0
	for f in $(find "$work/full" -name '*.pdf'); do
		check 'what is on the full disk is whole' qpdf --check "$f" >/dev/null
	done
	umount "$work/full"
else
	skip 'a full disk: this machine lets nobody mount one'
fi
run print -C . --out "$work/before"
cp -r "$work/before" "$work/small"
sed -i 's/First/Firstly/' assignments/AA-01.md program.md
(
	trap '' XFSZ
	ulimit -f 16
	timeout "$limit" "$fitup" print -C . --out "$work/small" >"$out" 2>"$err"
)
status=$?
ended 'a file that may not grow' 3 'fitup: cannot write' 'File too large'
check 'no part is left' test "$(parts "$work/small")" = 0
check 'the old files stand' same_files "$work/before" "$work/small"
run print -C . --out /dev/null/x
ended 'a folder below a file' 3 'Not a directory'
run print -C . --out "$work/disk/program.md"
ended 'a file for a folder' 3 'Not a directory'

for command in "inspect -C ." "inspect -C . --json" "print -C . --out $work/told" help --version; do
	timeout "$limit" "$fitup" $command >/dev/full 2>"$err"
	check "stdout is full: $command" test $? = 3
	timeout "$limit" "$fitup" $command >&- 2>"$err"
	check "stdout is closed: $command" test $? = 3
	check "and that is told: $command" grep -q '^fitup: cannot write' "$err"
done
timeout "$limit" "$fitup" print -C . --out "$work/told2" <&- >&- 2>&-
check 'all three closed' test $? = 3
check 'and the file is whole' same_files "$work/told" "$work/told2"
timeout "$limit" "$fitup" inspect -C "$work/slots" 2>"$err" | head -n 1 >"$out"
check 'a pipe that ends early is told' grep -q '^fitup: cannot write' "$err"

# Four prints into one folder at once: none disturbs another.
for i in 1 2 3 4; do
	timeout "$limit" "$fitup" print -C . --out "$work/shared" >"$work/shared.$i" 2>&1 &
done
wait
check 'four prints at once' same_files "$work/told" "$work/shared"
check 'leave no part' test "$(parts "$work/shared")" = 0
check 'and say nothing bad' test -z "$(cat "$work"/shared.? | grep -v '^wrote')"

if nm -D "$fitup" | grep -q __asan_init; then
	skip 'little memory: the sanitizers need much'
else
	(
		ulimit -v 60000
		timeout "$limit" "$fitup" print -C "$work/slots" --out "$work/poor" >"$out" 2>"$err"
	)
	status=$?
	ended 'little memory' 3 'fitup: out of memory'
	check 'little memory, nothing written' test ! -e "$work/poor"
fi

# ---- killed at any moment ----

cd "$root" || exit 2
began=$(date +%s%N)
run print -C curriculum --draft --out "$work/whole"
spent=$((($(date +%s%N) - began) / 1000))
check 'the demo prints' test "$status" -le 1
for f in "$work"/whole/*/*.pdf; do
	check "a complete PDF: ${f#"$work"/}" qpdf --check "$f" >/dev/null
done
torn=0
seen=0
for i in $(seq 30); do
	# Each run lives a little longer than the one before, the last as long as a print
	# and a half took; every tenth begins a new folder.
	[ $((i % 10)) = 1 ] && dir=$work/killed.$i
	"$fitup" print -C curriculum --draft --out "$dir" >/dev/null 2>&1 &
	pid=$!
	sleep "$(awk -v us="$spent" -v i="$i" 'BEGIN { printf "%.4f", us / 1e6 * i / 20 }')"
	kill -9 $pid 2>/dev/null
	wait $pid 2>/dev/null
	(cd "$dir" 2>/dev/null && find . -name '*.pdf') >"$out"
	while read -r f; do
		seen=$((seen + 1))
		cmp -s "$work/whole/$f" "$dir/$f" || torn=$((torn + 1))
		grep -qxF "${f#./}" "$dir/.fitup-printed" || torn=$((torn + 1))
	done <"$out"
done 2>/dev/null
check "no file torn or unlisted in 30 killed runs ($torn of $seen)" test $torn = 0
check 'killed runs did write' test $seen -gt 10
for dir in "$work"/killed.*; do
	mkdir -p "$dir/q1"
	: >"$dir/q1/packet.pdf.999999999.part"
	: >"$dir/q1/packet.pdf.mine.part"
	"$fitup" print -C curriculum --draft --out "$dir" >/dev/null 2>&1
	check 'the next print is whole' same_files "$work/whole" "$dir"
	check 'and sweeps what the killed one left, nothing else' test "$(parts "$dir")" = 1
done

# ---- foreign files, files no longer made ----

program foreign
mkdir -p "$work/mixed/q1" "$work/mixed/q7"
for f in notes.txt q1/notes.pdf q7/packet.pdf; do echo mine >"$work/mixed/$f"; done
run print -C . --out "$work/mixed"
ended 'prints among foreign files' 0 'q1/packet.pdf'
run print -C . --out "$work/mixed" AA-01
check 'one assignment' test -f "$work/mixed/aa-01/packet.pdf"
sed -i 's/week 2/week 12/' program.md
run print -C . --out "$work/mixed"
ended 'held back' 1 'held back' 'q1/packet.pdf' 'week 12 is not within the quarter'
check 'the held-back packet is gone' test ! -e "$work/mixed/q1/packet.pdf"
check 'so is what a whole print does not make' test ! -e "$work/mixed/aa-01"
for f in notes.txt q1/notes.pdf q7/packet.pdf; do
	check "a foreign file stays: $f" grep -qx mine "$work/mixed/$f"
done
printf '../sound/program.md\n/etc/hostname\nq7/../q7/packet.pdf\n' >"$work/mixed/.fitup-printed"
run print -C . --out "$work/mixed"
check 'a forged list removes nothing outside' test -f "$work/sound/program.md"
check 'nor by a way round' test -f "$work/mixed/q7/packet.pdf"

# The demo with ORW 121 moved to quarter 3, as README tells.
cp -r "$root/curriculum" "$work/moved" && cd "$work/moved" || exit 2
run print -C . --out "$work/moved.out"
cp -r "$work/moved.out" "$work/moved.before"
awk '/^##+ / { moving = /^### ORW 121/ } moving { course = course $0 "\n"; next }
	{ print } /^## Quarter 3/ { in3 = 1 } END { exit !in3 }' program.md >"$work/rest.md"
awk '/^##+ / { moving = /^### ORW 121/ } moving' program.md >"$work/course.md"
awk -v course="$work/course.md" '/^## Quarter 4/ { while ((getline line < course) > 0) print line }
	{ print }' "$work/rest.md" >program.md
run print -C . --out "$work/moved.out"
ended 'ORW 121 in quarter 3' 1 '[untaught-skill]' 'held back'
grep '^held back' "$out" | sed "s|held back $work/moved.out/\\([^:]*\\):.*|\\1|" >"$work/held"
check 'some documents are held back' test -s "$work/held"
while read -r f; do
	check "held back and gone: $f" test ! -e "$work/moved.out/$f"
done <"$work/held"
(cd "$work/moved.out" && find . -name '*.pdf' | sed 's|^\./||') | sort >"$work/there"
grep '^wrote' "$out" | sed "s|wrote $work/moved.out/\\([^ ]*\\) .*|\\1|" | sort >"$work/wrote"
check 'what is there is what it wrote' cmp -s "$work/there" "$work/wrote"

# ---- the same bytes ----

cd "$root" || exit 2
run print -C curriculum --draft --out "$work/again"
check 'twice the same' same_files "$work/whole" "$work/again"
cd "$work" || exit 2
(
	umask 077
	TZ=Pacific/Chatham LANG=de_DE.UTF-8 LC_ALL=tr_TR.UTF-8 HOME=/nowhere \
		timeout "$limit" "$fitup" print --draft --out again2 -C "$root/curriculum/" >"$out" 2>&1
)
check 'the same from another folder, zone, language, mask' same_files "$work/whole" "$work/again2"
# Another day: a clock that is forty years on, put in front of the C library's own.
cat >clock.c <<'END'
#include <sys/time.h>
#include <time.h>
#include <unistd.h>
#include <sys/syscall.h>
enum { FORTY_YEARS = 1262304000 };
int clock_gettime(clockid_t c, struct timespec *t)
{
	int r = (int)syscall(SYS_clock_gettime, c, t);
	t->tv_sec += FORTY_YEARS;
	return r;
}
time_t time(time_t *t)
{
	struct timespec now;
	clock_gettime(CLOCK_REALTIME, &now);
	return t ? *t = now.tv_sec : now.tv_sec;
}
int gettimeofday(struct timeval *restrict t, void *restrict zone)
{
	(void)zone;
	t->tv_sec = time(0);
	t->tv_usec = 7;
	return 0;
}
END
if cc -shared -fPIC -D_GNU_SOURCE -o clock.so clock.c 2>"$err" &&
	test "$(LD_PRELOAD=$work/clock.so date +%Y)" -gt $(($(date +%Y) + 30)) &&
	! nm -D "$fitup" | grep -q __asan_init; then
	LD_PRELOAD=$work/clock.so timeout "$limit" "$fitup" print --draft --out again3 \
		-C "$root/curriculum" >"$out" 2>&1
	check 'the same on another day' same_files "$work/whole" "$work/again3"
else
	skip 'the same bytes on another day: the clock cannot be changed here'
fi

# ---- inputs that once did harm, through every output ----

cd "$root" || exit 2
for file in tests/crash/*.txt; do
	check "$file" timeout "$limit" build/tests/replay "$file" >/dev/null
done

echo "$passed passed, $failed failed"
[ "$failed" = 0 ] && [ "$passed" -gt 120 ]
