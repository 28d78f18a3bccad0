#!/bin/sh
# The main job on the real demo, seen from outside: every PDF is sound, every assignment
# is in its packet and its grading sheets under one mark, and a moved course brings the
# right findings and holds back only what they concern.
set -u
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0
ok() { passed=$((passed + 1)); }
bad() { failed=$((failed + 1)); echo "print.sh: $1"; }
is() { if [ "$2" = "$3" ]; then ok; else bad "$1: $2 is not $3"; fi; }
has() { if grep -q "$2" "$3"; then ok; else bad "$1: no \"$2\""; fi; }
lacks() { if grep -q "$2" "$3"; then bad "$1: \"$2\""; else ok; fi; }
for tool in qpdf pdftotext pdffonts pdfimages pdfinfo jq; do
	command -v $tool > /dev/null || { echo "print.sh: no $tool"; exit 77; }
done

# The whole demo: clean, and everything printed.
build/fitup inspect -C curriculum > "$work/inspect"
is "demo inspected" $? 0
has "demo is clean" ': 0 errors, 0 warnings, 0 notes\(, [0-9]* waived\)\{0,1\}$' "$work/inspect"
build/fitup print -C curriculum --out "$work/out" > "$work/told"
is "demo printed" $? 0
lacks "nothing held back" '^held back' "$work/told"
is "documents" "$(find "$work/out" -name '*.pdf' | wc -l)" 32
is "instructor files are private" "$(stat -c %a "$work"/out/instructor/*.pdf | sort -u)" 600

for pdf in "$work"/out/*/*.pdf; do
	name=${pdf#"$work"/out/}
	qpdf --check "$pdf" > "$work/q" 2>&1
	is "$name, qpdf" $? 0
	pdftotext -layout "$pdf" - 2> "$work/err" | tr '\f' '\n' > "$work/$(echo "$name" | tr / -).txt"
	is "$name, pdftotext is silent" "$(wc -c < "$work/err")" 0
	pdffonts "$pdf" | awk 'NR > 2 && !/ yes yes yes +[0-9]+ +[0-9]+$/' > "$work/fonts"
	is "$name, fonts embedded" "$(wc -l < "$work/fonts")" 0
	pdfinfo "$pdf" > "$work/info"
	has "$name, tagged" '^Tagged: *yes' "$work/info"
	has "$name, title" '^Title: *Orehollow' "$work/info"
	has "$name, size" '^Page size: *612 x 792 pts (letter)' "$work/info"
	has "$name, version" '^PDF version: *1.7' "$work/info"
	qpdf --json "$pdf" 2> /dev/null > "$work/json"
	case $name in *.es.pdf) language=es-US ;; *) language=en-US ;; esac
	has "$name, language" "\"/Lang\": \"\(u:\)\{0,1\}$language\"" "$work/json"
	has "$name, outline" '"/Outlines"' "$work/json"
	has "$name, page labels" '"/PageLabels"' "$work/json"
	is "$name, every figure is told in words" "$(grep -c '"/S": "/Figure"' "$work/json")" \
	    "$(grep -c '"/Alt": "u:.' "$work/json")"
	is "$name, every head cell says of what" "$(grep -c '"/S": "/TH"' "$work/json")" \
	    "$(grep -c '"/Scope": "/\(Column\|Row\)"' "$work/json")"
	is "$name, no heading below one that is missing" "$(pdfinfo -struct "$pdf" 2> /dev/null |
	    awk '/^ *Sect/ { top = 0 } /^ *H1/ { top = 1 } /^ *H[2-6]/ && !top { n++ } END { print n + 0 }')" 0
done
# One element holds the whole document; the reader warns of a tree that has several.
is "one element at the top" "$(pdfinfo -struct "$work/out/q1/packet.pdf" 2>&1 | grep -v "^  ")" Document
# The boxes of a verdict stand with what they are evidence for.
is "verdicts that stand alone" "$(pdftotext "$work/out/q1/grading.pdf" - | awk '
	BEGIN { RS = "\f" } /Not passed/ && !/What this paper is evidence for/ { n++ }
	END { print n + 0 }')" 0
# Words on both sides of a line's end stay apart for what reads the structure aloud.
pdfinfo -struct-text "$work/out/q1/packet.pdf" 2> /dev/null > "$work/struct"
has "lines are parted" 'large word at the top left of every page; the same id is on the' "$work/struct"

# Each id of program.md: in its quarter's packet and grading sheets, with one mark on
# every page of both. The mark is the ten characters on the line of the id.
quarter=0
sed -n 's/^## Quarter \([0-9]*\)$/Q \1/p; s/^[0-9]*\. \([A-Z]*-[0-9]*[a-z]*\),.*/\1/p' \
    curriculum/program.md > "$work/ids"
is "assignments of the demo" "$(grep -vc '^Q' "$work/ids")" 74
while read -r id number; do
	if [ "$id" = Q ]; then
		quarter=$number
		continue
	fi
	for part in packet grading; do
		grep -E "^ *$id +[2-9A-HJKMNP-Z]{10}$" "$work/q$quarter-$part.pdf.txt" |
		    awk '{ print $2 }' | sort -u > "$work/$part.marks"
	done
	grep -A 4 -E "^ *$id$" "$work/q$quarter-cards.pdf.txt" |
	    grep -oE '[2-9A-HJKMNP-Z]{10}$' | sort -u > "$work/cards.marks"
	if [ -s "$work/packet.marks" ] && cmp -s "$work/packet.marks" "$work/grading.marks" &&
	    cmp -s "$work/packet.marks" "$work/cards.marks" &&
	    [ "$(wc -l < "$work/packet.marks")" = 1 ]; then
		ok
	else
		bad "$id: marks of packet, grading sheet and card: $(cat "$work/packet.marks" "$work/grading.marks" "$work/cards.marks" | tr '\n' ' ')"
	fi
done < "$work/ids"

# The Spanish papers of quarter 1: whole, under the marks of their originals, and on the
# sheets that are translated no English word of fitup's own.
for pdf in packet grading cards; do
	is "Spanish $pdf, pages" "$(pdfinfo "$work/out/q1/$pdf.es.pdf" | awk '/^Title/ { print $2, $3 }')" \
	    "Orehollow Valley"
	pdftotext -layout "$work/out/q1/$pdf.es.pdf" - > "$work/es"
	case $pdf in grading) says='Qué demuestra esta hoja' ;; *) says='Deciden los códigos locales' ;; esac
	has "Spanish $pdf, words" "$says" "$work/es"
	has "Spanish $pdf, stops" 'Alto, raíz' "$work/es"
	case $pdf in packet) has "Spanish packet, hazards in English too" 'English: Hood down' "$work/es" ;; esac
	for file in curriculum/assignments/es/*-*.md; do
		id=$(basename "$file" .md)
		awk -v id="$id" 'BEGIN { RS = "\f" } { split($0, w); if (w[1] == id) print }' \
		    "$work/es" > "$work/sheet"
		mark=$(grep -oE "^ *$id +[2-9A-HJKMNP-Z]{10}\$" "$work/q1-grading.pdf.txt" | awk '{ print $2; exit }')
		has "$id, Spanish $pdf under the mark of the grading sheet" "$mark" "$work/sheet"
		cat "$work/sheet" >> "$work/translated"
		grep -oE 'es [2-9A-HJKMNP-Z]{10}$' "$work/sheet" | sort -u >> "$work/said.$id"
	done
done
for said in "$work"/said.*; do
	is "${said#"$work"/said.}, one mark of the translation on packet, grading sheet and card" "$(sort -u "$said" | wc -l)" 1
done
# Words of more than one letter run, as they stand on paper; sources of figures keep their
# English titles, and so do the names of sets; the legend of a picture names its words.
awk 'function take(    t) {
		match($0, /^"[^"]*"|^[^,]*/)
		t = substr($0, 1, RLENGTH)
		$0 = substr($0, RLENGTH + 2)
		gsub(/"/, "", t)
		return t
	}
	/^#/ || /%/ || !/,/ { next }
	{ english = take(); other = take() }
	english != other && english ~ /[a-z][a-z ][a-z ][a-z]/ && length(english) > 4 { print english }' \
    templates/words/es.csv | grep -vxE 'english|Handbook|Table |Tables | part | item |Preheat' > "$work/english"
is "English words looked for" "$([ "$(wc -l < "$work/english")" -gt 200 ] && echo many)" many
tr -s ' \n' '  ' < "$work/translated" | sed "s/English: [^:]*Deciden los códigos/Deciden los códigos/g; s/English: [^:]*\.//g; s/Machinery's Handbook[^.]*\.//g; s/AWS D1[^.]*preheat\.//g; s/En el dibujo:[^.]*\.//g" > "$work/flat"
grep -owF -f "$work/english" "$work/flat" | sort | uniq -c > "$work/left"
is "English left on translated sheets" "$(cat "$work/left")" ""
has "the title of a picture" 'Plano del taller, sin escala' "$work/q1-packet.es.pdf.txt"
has "the words in a picture" 'En el dibujo: classroom = salón' "$work/q1-packet.es.pdf.txt"
has "the sheet without a translation says so" 'Esta hoja aún no está traducida' "$work/q1-packet.es.pdf.txt"
# What stays English in them says so in the structure; of an English packet only the hazards
# are said in both languages.
languages() { qpdf --json "$1" 2> /dev/null | grep -o '"/Lang": "[^"]*"' | sort | uniq -c | awk '{ print $1 $3 }' | tr -d '"\n' | sed 's/u://g'; }
for pdf in packet grading cards; do
	languages "$work/out/q1/$pdf.es.pdf" > "$work/languages"
	if grep -qE '^[1-9][0-9]+en-US1es-US$' "$work/languages"; then ok; else
		bad "languages of $pdf.es.pdf: $(cat "$work/languages")"; fi
	case $pdf in packet) both='[1-9][0-9]*es-US' ;; *) both= ;; esac
	if languages "$work/out/q1/$pdf.pdf" | grep -qE "^1en-US$both\$"; then ok; else
		bad "languages of $pdf.pdf: $(languages "$work/out/q1/$pdf.pdf")"; fi
done
if languages "$work/out/q1/chart.pdf" | grep -qE '^1en-US[1-9][0-9]*es-US$'; then ok; else
	bad "languages of chart.pdf: $(languages "$work/out/q1/chart.pdf")"; fi

# Tags and bench labels of that quarter alone, under the marks of the English ones; the one
# wall chart and the one sign-off sheet of a shop say it in both languages.
has "Spanish tags" 'Intento 1 de [1-6] .*Intento 2 de' "$work/shop-labels.es.pdf.txt"
has "Spanish bench labels" 'Juego para un intento' "$work/shop-labels.es.pdf.txt"
has "no other quarter's" 'Trimestre 1' "$work/shop-labels.es.pdf.txt"
lacks "no other quarter's" 'Trimestre [2-9]\|FB-0' "$work/shop-labels.es.pdf.txt"
grep -oE '\b[2-9A-HJKMNP-Z]{10}\b' "$work/shop-labels.es.pdf.txt" | sort -u > "$work/marks.es"
grep -oE '\b[2-9A-HJKMNP-Z]{10}\b' "$work/shop-labels.pdf.txt" | sort -u > "$work/marks.en"
is "marks of the Spanish tags" "$(comm -23 "$work/marks.es" "$work/marks.en")" ""
is "their list" "$(grep -c 'labels.es.pdf' "$work/instructor-print-list.pdf.txt")" 1
has "sign-off in English" 'Each line says: read in the version named' "$work/q1-chart.pdf.txt"
has "and in Spanish" 'Tarjeta de seguridad de arco, humos' "$work/q1-chart.pdf.txt"
lacks "not where nothing is translated" 'Quién ha pasado' "$work/q2-chart.pdf.txt"
is "and no other quarter has one" "$(find "$work/out" -name '*.es.pdf' | wc -l)" 4

# A translation that says another figure holds back the Spanish papers alone.
cp -r curriculum "$work/said"
sed -i 's/Ponga 130 A en desperdicio y/Ponga 150 A en desperdicio y/' "$work/said/assignments/es/SM-04.md"
build/fitup print -C "$work/said" --out "$work/saidout" Q1 > "$work/told"
is "another figure" $? 1
has "is told" 'says 150 A where the original says 130 A' "$work/told"
is "the Spanish papers wait" "$(grep -c '^held back .*\.es\.pdf' "$work/told") $(grep -c '^held back' "$work/told")" "3 3"
cmp -s "$work/saidout/q1/packet.pdf" "$work/out/q1/packet.pdf"
is "the English ones do not" $? 0
rm -r "$work/said/assignments/es"
build/fitup print -C "$work/said" --out "$work/saidout" > "$work/told"
is "without translations" "$? $(find "$work/saidout" -name '*.es.pdf' | wc -l)" "0 0"
for pdf in q1/packet.pdf q1/grading.pdf q1/cards.pdf instructor/keys.pdf; do
	cmp -s "$work/saidout/$pdf" "$work/out/$pdf"
	is "$pdf is the same without translations" $? 0
done

# What the instructor alone may read is on no sheet: the first words of each such text.
awk 'FNR == 1 { on = 0 } /^#/ { on = /^## Instructor only/; next } on && NF > 5 {
	print $1, $2, $3, $4, $5; on = 0 }' curriculum/assignments/*.md > "$work/secrets"
cat "$work"/q*.pdf.txt | tr -s ' \n' '  ' > "$work/all"
is "instructor texts looked for" "$([ "$(wc -l < "$work/secrets")" -gt 60 ] && echo many)" many
tr -s ' \n' '  ' < "$work/instructor-keys.pdf.txt" > "$work/keys"
is "instructor texts in the keys" "$(grep -oFf "$work/secrets" "$work/keys" | sort -u | wc -l)" \
    "$(sort -u "$work/secrets" | wc -l)"
while read -r secret; do
	if grep -qF "$secret" "$work/all"; then bad "a student could read: $secret"; else ok; fi
done < "$work/secrets"

# One quarter, one course, one assignment, one part, another paper.
build/fitup print -C curriculum --out "$work/some" Q3 orw130 SM-20 > "$work/told"
is "some printed" $? 0
is "their files" "$(cd "$work/some" && find . -name '*.pdf' | sort | tr '\n' ' ')" \
    "$(for f in orw-130 q3 sm-20; do for g in cards chart grading packet; do
	[ $f/$g = sm-20/chart ] || echo ./$f/$g.pdf; done; done | tr '\n' ' ')"
build/fitup print -C curriculum --out "$work/a4" ORW 120 grading --paper a4 > /dev/null
is "grading sheets alone" "$(cd "$work/a4" && find . -name '*.pdf')" ./orw-120/grading.pdf
pdfinfo "$work/a4/orw-120/grading.pdf" > "$work/info"
has "A4" '^Page size: *595.* x 841.* pts (A4)' "$work/info"
build/fitup print -C curriculum --out "$work/some" Q9 > /dev/null 2>&1
is "no such quarter" $? 2

# Editions stand side by side, and all three combine: no word off the paper, none broken in
# two, not many more pages.
words() { pdftotext "$1" - 2> /dev/null | tr -s ' \n\f' '\n' | LC_ALL=C sort -u; }
off_paper() { pdftotext -bbox "$1" - 2> /dev/null | tr '"' ' ' | awk '/<page/ { w = $3; h = $5 }
    /<word/ { if ($3 < 20 || $5 < 20 || $7 > w - 20 || $9 > h - 15) n++ } END { print n + 0 }'; }
build/fitup print -C curriculum --out "$work/out" --large --metric --paper a4 > "$work/told"
is "large metric A4" $? 0
is "editions side by side" "$(find "$work/out" -name '*.pdf' | wc -l)" 64
for pdf in "$work"/out/*/*.large.metric.pdf; do
	name=${pdf#"$work"/out/}
	pdfinfo "$pdf" > "$work/info"
	has "$name, size" '(A4)$' "$work/info"
	is "$name, words off the paper" "$(off_paper "$pdf")" 0
	usual=$(pdfinfo "${pdf%.large.metric.pdf}.pdf" | awk '/^Pages/ { print $2 }')
	pages=$(awk '/^Pages/ { print $2 }' "$work/info")
	if [ "$pages" -le $((usual * 4)) ]; then ok; else bad "$name: $pages pages for $usual"; fi
done
for part in packet grading; do
	words "$work/out/q1/$part.large.metric.pdf" | grep -E '^[[:alpha:]]{1,4}$' > "$work/short"
	for pdf in "$work"/out/*/*.pdf; do case $pdf in *.large*) ;; *) words "$pdf" ;; esac; done |
	    LC_ALL=C sort -u | LC_ALL=C comm -13 - "$work/short" | grep -vE '^([a-z]|kPa|kg|mm)$' > "$work/broken"
	is "$part.large.metric.pdf, no word is broken" "$(tr '\n' ' ' < "$work/broken")" ""
done
pdftotext "$work/out/q1/packet.large.metric.pdf" "$work/metric.txt"
has "metric first" '[0-9] mm \[[0-9]*/[0-9]* in\]' "$work/metric.txt"
rm -f "$work"/out/*/*.large.metric.pdf

# What fitup did not write stays: under a name that it would write it stops the print,
# anywhere else it is let alone, also when a whole print clears away what is stale.
mkdir -p "$work/mine/q1"
echo mine > "$work/mine/q1/packet.pdf"
build/fitup print -C curriculum --out "$work/mine" Q1 > "$work/told" 2> "$work/err"
is "a foreign packet.pdf" $? 2
has "its name" 'q1/packet.pdf is there already' "$work/err"
is "it stays, and nothing else came" "$(cd "$work/mine" && find . -type f) $(cat "$work/mine/q1/packet.pdf")" \
    "./q1/packet.pdf mine"
mv "$work/mine/q1/packet.pdf" "$work/mine/q1/notes.pdf"
build/fitup print -C curriculum --out "$work/mine" Q1 SM-20 > /dev/null
is "elsewhere it is in nobody's way" $? 0
build/fitup print -C curriculum --out "$work/mine" Q1 > /dev/null
is "a second print knows its own" $? 0
build/fitup print -C curriculum --out "$work/mine" > /dev/null
is "stale files go, others stay" "$(ls -d "$work/mine/sm-20" 2> /dev/null)$(cat "$work/mine/q1/notes.pdf")" mine

# A weld that restarts is not shown along its length when that is not told.
cp -r curriculum "$work/lengthless"
sed -i '/^length: 8 in$/d' "$work/lengthless/assignments/SM-04.md"
build/fitup print -C "$work/lengthless" --out "$work/lengthless.out" SM-04 > /dev/null
is "no figure says that it is none" "$(pdftotext "$work/lengthless.out/sm-04/packet.pdf" - |
    grep -c 'Sizes\|no drawing\|Along the weld')" 1

# Pictures: in the file once, with their words; other pixels are another mark, of that sheet
# alone.
is "pictures of quarter 1" "$(pdfimages -list "$work/out/q1/packet.pdf" | awk 'NR > 2' | wc -l)" 1
qpdf --json "$work/out/q1/packet.pdf" 2> /dev/null > "$work/json"
has "words of the picture" '"/Alt": "u:Floor plan of the shop' "$work/json"
has "words of the weldment" '"/Alt": "u:Weldment seen from the front, the right and above' "$work/json"
cp -r curriculum "$work/repainted"
cp tests/cases/every-finding/pictures/bench.png "$work/repainted/pictures/floor-plan.png"
build/fitup print -C "$work/repainted" --out "$work/repainted.out" SF-01 SM-06 > "$work/told"
is "another picture prints" $? 0
for id in SF-01 SM-06; do
	new=$(pdftotext -layout "$work/repainted.out/$(echo $id | tr SFM sfm)/packet.pdf" - |
	    grep -oE "^ *$id +[2-9A-HJKMNP-Z]{10}$" | awk '{ print $2; exit }')
	old=$(grep -oE "^ *$id +[2-9A-HJKMNP-Z]{10}$" "$work/q1-packet.pdf.txt" | awk '{ print $2; exit }')
	is "$id, same mark" "$([ "$new" = "$old" ] && echo yes)" "$([ $id = SF-01 ] || echo yes)"
	is "$id, a mark" "${#new}" 10
done

# Cards, charts, tags and the list for the office.
is "a card a page" "$(pdfinfo "$work/out/q1/cards.pdf" | awk '/^Pages/ { print $2 }')" 14
grep -c 'Attempt [1-6] of [1-6]' "$work/shop-labels.pdf.txt" > "$work/n"
has "coupon tags" '^[1-9][0-9]' "$work/n"
# 13 students of quarter 1 and 5 % are 13.65, so 14; 10 of quarter 4 are 10.5, so 11.
for line in 'q1/packet.pdf .* 14 ' 'q1/cards.pdf .* 14 ' 'q4/packet.pdf .* 11 ' 'Sheets of paper in all' \
    'papers in Spanish as many as are asked for' 'q1/packet.pdf .* double *punch and bind' \
    'q1/grading.pdf .* double *staple each' 'q1/cards.pdf .* single *none; sleeve *card' \
    'q1/chart.pdf .* single *none; to the wall' 'keys.pdf .* double *punch and bind' \
    'templates.pdf .* single *none; full size' 'print-list.pdf .* double *none'; do
	has "print list" "$line" "$work/instructor-print-list.pdf.txt"
done
for pdf in "$work"/out/*/*.pdf; do
	name=${pdf#"$work"/out/}
	pages=$(pdfinfo "$pdf" | awk '/^Pages/ { print $2 }')
	case $name in shop/labels*.pdf) continue ;; esac
	if tr -s ' \n' '  ' < "$work/instructor-print-list.pdf.txt" | grep -q "$name $pages \|${name#*/} $pages "; then
		ok
	else
		bad "print list: $name has $pages pages"
	fi
done
build/fitup print -C curriculum --out "$work/one" cards Q2 > /dev/null
is "cards alone" "$(cd "$work/one" && find . -name '*.pdf')" ./q2/cards.pdf
build/fitup print -C curriculum --out "$work/list" print-list > /dev/null
cmp -s "$work/list/instructor/print-list.pdf" "$work/out/instructor/print-list.pdf"
is "the list alone is the same list" $? 0

# ORW 121 moved to quarter 3.
cp -r curriculum "$work/moved"
awk '/^### ORW 121/ { on = 1 } /^##/ && !/^### ORW 121/ { on = 0 } on' curriculum/program.md > "$work/course"
awk -v course="$work/course" '/^## Quarter 4/ { while ((getline line < course) > 0) print line }
    /^### ORW 121/ { on = 1 } /^##/ && !/^### ORW 121/ { on = 0 } !on' curriculum/program.md > "$work/moved/program.md"
build/fitup inspect -C "$work/moved" --json > "$work/json"
is "a moved course is an error" $? 1
is "names" "$(jq -r '.findings[] | select(.waived | not) | .name' "$work/json" | sort | uniq -c | tr -s ' \n' '  ')" " 1 quarter-over 2 untaught-skill "
is "first need" "$(jq -r '.findings[] | select(.skill == "print.symbol") | .assignment + " " + .file' "$work/json")" \
    "FB-04 assignments/FB-04.md"
is "the other with its companion" "$(jq -r '.findings[] | select(.skill == "fab.plan") | [.assignment, .related[].assignment] | join(" ")' "$work/json")" \
    "FB-04 SM-25"
is "counts" "$(jq -c '[.counts.error, .counts.warning, .counts.note]' "$work/json")" '[3,0,0]'
build/fitup print -C "$work/moved" --out "$work/out" > "$work/told"
is "printing goes on" $? 1
is "held back" "$(grep -c '^held back' "$work/told")" 4
has "which" '^held back .*/q2/packet.pdf: .*FB-04' "$work/told"
is "left of the first print" "$(find "$work/out" -name '*.pdf' | wc -l)" 28
build/fitup print -C "$work/moved" --out "$work/draft" --draft Q2 > /dev/null
pdftotext "$work/draft/q2/packet.pdf" - | grep -c '^DRAFT$' > "$work/n"
is "DRAFT on every page" "$(cat "$work/n")" \
    "$(pdfinfo "$work/draft/q2/packet.pdf" | awk '/^Pages/ { print $2 }')"

echo "$passed passed, $failed failed"
[ $failed = 0 ]
