#!/bin/sh
# Habits of the trade (common practice, no source) as check values: what shops commonly
# do must pass in silence on the demo program, and its opposite must be told.
set -u
cd "$(dirname "$0")/../.." || exit 2
fitup=${FITUP:-build/fitup}
command -v jq >/dev/null 2>&1 || { echo "jq is not installed"; exit 77; }
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

good() { passed=$((passed + 1)); }
bad() { failed=$((failed + 1)); echo "failed: $*"; }

# A fresh copy of the demo; edit FILE EXPRESSION changes it and must find what it changes.
fresh() { rm -rf "$work/p" && cp -r curriculum "$work/p"; }
edit()
{
	sed "$2" "$work/p/$1" >"$work/new"
	! cmp -s "$work/new" "$work/p/$1" || bad "$1: nothing changed by $2"
	cp "$work/new" "$work/p/$1"
}

# NAME FILE of each finding that is not waived.
found() { $fitup inspect -C "$work/p" --json | jq -r '.findings[] | select(.waived | not) | "\(.name) \(.file)"'; }

# silent WHAT: nothing is found. told WHAT FINDING: that one alone.
silent()
{
	out=$(found)
	if [ -z "$out" ]; then good; else bad "$1: $(echo "$out" | head -n 5)"; fi
}
told()
{
	out=$(found)
	if [ "$out" = "$2" ]; then good; else bad "$1: told '$out', not '$2'"; fi
}

# The usual pipes: 3 in schedule 40, 8 in schedule 40, 8 in schedule 80. ASME B36.10M.
while read -r nps schedule od wall; do
	got=$($fitup reckon pipe nps "$nps" schedule "$schedule" --json |
	    jq -c '[.results[] | select(.name == "Outside diameter" or .name == "Wall") | .us.value]')
	if [ "$got" = "[$od,$wall]" ]; then good; else bad "NPS $nps schedule $schedule: $got"; fi
done <<'ROWS'
3 40 3.5 0.216
8 40 8.625 0.322
8 80 8.625 0.5
ROWS

# A 10 ft shear rated 1/4 in mild steel: 1/4 in is cut, 5/16 in is not.
fresh
silent "the demo"
edit assignments/FB-01.md 's|2 of 1/4 x 6 x 6 in|2 of 1/4 x 6 x 120 in|'
silent "1/4 in over the whole bed"
edit assignments/FB-01.md 's|2 of 1/4 x 6 x 120 in|2 of 5/16 x 6 x 120 in|'
told '5/16 in' 'shear-too-small assignments/FB-01.md'
fresh
edit assignments/FB-01.md 's|2 of 1/4 x 6 x 6 in|2 of 1/4 x 6 x 121 in|'
told '121 in' 'shear-too-small assignments/FB-01.md'

# A 100 ton, 10 ft press brake does all that the demo's smaller one does.
fresh
edit shop.md 's|^- \*\*Bed:\*\* 96 in|- **Bed:** 10 ft|; s|60 ton|100 ton|'
silent "a 100 ton, 10 ft brake"

# A practice test precedes the actual test: the other way round the test lacks its skill.
fresh
edit program.md 's/^3\. FC-03, week 8.*/3. FC-04, week 8/; t
s/^4\. FC-04, week 10.*/4. FC-03, week 10/'
told 'test before practice' 'untaught-skill assignments/FC-04.md'
# With the skill from elsewhere it still lacks the practice test.
edit assignments/FC-04.md 's/^- fcaw.3g practiced/- fcaw.fillet practiced/'
told 'test before practice test' 'no-practice-test assignments/FC-04.md
assessed-too-early assignments/FC-04.md'

# Aluminum 1/8 and 1/4 in, tee, lap and corner: visual and destructive must be passed.
aluminum()
{
	cat >"$work/p/assignments/AL-$1.md" <<SHEET
# AL-$1: Aluminum tee, lap and corner, $2

- **Kind:** coupon
- **Hours:** $3
- **Station:** gtaw
- **Process:** GTAW
- **Joint:** tee, lap, open corner
- **Material:** 5052-H32 sheet
- **Thickness:** $2
- **Position:** 1F, 2F
- **Filler:** ER5356, 3/32 in
- **Current:** AC, 130-165 A
- **Tungsten:** EWCe-2, 3/32 in
- **Gas:** argon 20 cfh
- **Place:** booth
- **Attempts:** 3

## Needs

- gtaw.al introduced

## Teaches

- al.$1 assessed by Visual, Fillet break

## Welds

- **A:** tee, 2F, leg $2, 5052-H32 sheet $2, 8 in long
- **B:** lap, 2F, leg $4, 5052-H32 sheet $2, 8 in long
- **C:** open corner, 1F, 5052-H32 sheet $2, 8 in long

## Pieces

- strip: 6 of $2 x 3 x 8 in 5052-H32 sheet, sawn

## Drawing

\`\`\`joint A
joint: tee
leg: $2
gap: 0 to 1/64 in
sides: one
passes: 1
restart: near mid-length
\`\`\`

\`\`\`joint B
joint: lap
leg: $4
overlap: 1-1/4 in
gap: 0 to 1/64 in
sides: one
passes: 1
restart: near mid-length
\`\`\`

\`\`\`joint C
joint: open corner
gap: 0 to 1/32 in
passes: 1
\`\`\`

## Procedure

1. Clean, brush one way, fit and tack all three joints.
2. **Stop, fit-up:** gaps, overlap and squareness.
3. Weld A, B and C, with a stop and restart in A and B.
4. **Stop, before breaking:** visual signed; then A and B are sawn to 6 in and broken.

## Acceptance

- **Visual:** D1.2-2014 static
- **Fillet break:** 1 of A and 1 of B; fused to the corner from end to end

## Grading

- **Visual:** 50, must pass
- **Fillet break:** 50, must pass
- **Pass mark:** 100

## Cautions

- Aluminum does not glow before it melts: HOT in chalk, pliers always.
- Extraction on, sleeves down, curtain shut.
SHEET
	edit program.md "s|^6\. GT-06, week 9.*|&\\
7. AL-$1, week 10|"
	edit skills.md "s|^- \*\*gtaw.al:.*|&\\
- **al.$1:** Aluminum joints, $2|"
}

# Hours are taken from a sheet of the same course, so that the sums stay.
fresh
edit assignments/GT-06.md 's/^- \*\*Hours:\*\* 14/- **Hours:** 12/'
aluminum 1 '1/8 in' 1 '1/8 in'
silent 'aluminum 1/8 in'
aluminum 2 '1/4 in' 1 '3/16 in'
silent 'aluminum 1/4 in'

# Cored wire vertical and overhead on plate come before 8 in schedule 80 with a ring.
cored_pipe()
{
	fresh
	cat >"$work/p/assignments/FC-90.md" <<SHEET
# FC-90: Cored wire on 8 in pipe with a ring

- **Kind:** coupon
- **Hours:** 4
- **Station:** pipe
- **Process:** FCAW-G
- **Joint:** pipe butt
- **Material:** A106 pipe
- **Thickness:** NPS 8 schedule 80
- **Position:** 5G up
- **Filler:** E71T-1, 0.045 in
- **Current:** DC+, 160-190 A
- **Volts:** 24-26 V
- **Gas:** 75/25 argon/CO2 35 cfh
- **Backing:** ring
- **Attempts:** 3

## Needs

- fcaw.fillet introduced

## Teaches

- fcaw.fillet practiced

## Pieces

- ring: 2 of NPS 8 schedule 80 x 5 in A106 pipe, sawn

## Procedure

1. Fit the rings on the backing ring and tack.
2. **Stop, fit-up:** gap and hi-lo.
3. Weld the joint upward on both sides.
SHEET
	edit program.md "s|^$1\. FC-0$1, .*|&\\
9. FC-90|"
}
cored_pipe 1
if found | grep -q '^pipe-before-plate assignments/FC-90.md$'; then good; else bad "pipe before plate"; fi
cored_pipe 4
if found | grep -q '^pipe-before-plate'; then bad "pipe after plate: $(found)"; else good; fi

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -ge 14 ]
