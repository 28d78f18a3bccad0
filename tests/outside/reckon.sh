#!/bin/sh
# `fitup reckon` from the terminal against published values, with the source beside each,
# and against bc; its JSON against jq. Exits 77 without jq or bc. Run after the build.
set -u
cd "$(dirname "$0")/../.." || exit 2
fitup=${FITUP:-build/fitup}
for tool in jq bc; do
	command -v $tool >/dev/null 2>&1 || { echo "$tool is not installed"; exit 77; }
done
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

good() { passed=$((passed + 1)); }
bad() { failed=$((failed + 1)); echo "failed: $*"; }

# value SIDE NAME TOPIC ...: the number of a result, SIDE us or metric.
value()
{
	side=$1 name=$2
	shift 2
	$fitup reckon "$@" --json 2>/dev/null |
	    jq -r --arg n "$name" ".results[] | select(.name == \$n) | .$side.value"
}

# near WANT WITHIN NAME TOPIC ...: the US figure lies within WITHIN of WANT.
near()
{
	want=$1 within=$2 name=$3
	shift 3
	got=$(value us "$name" "$@")
	if [ -n "$got" ] && awk -v g="$got" -v w="$want" -v t="$within" \
	    'BEGIN { d = g - w; if (d < 0) d = -d; exit !(d <= t) }'; then
		good
	else
		bad "$* $name: ${got:-nothing}, not $want"
	fi
}

# says WORDS NAME TOPIC ...: the text of a result.
says()
{
	want=$1 name=$2
	shift 2
	got=$($fitup reckon "$@" --json 2>/dev/null |
	    jq -r --arg n "$name" '.results[] | select(.name == $n) | .text')
	if [ "$got" = "$want" ]; then good; else bad "$* $name: '$got', not '$want'"; fi
}

# refused WORDS TOPIC ...: exit 2, nothing on stdout, the words and the usage on stderr.
refused()
{
	words=$1
	shift
	$fitup reckon "$@" >"$work/out" 2>"$work/err"
	status=$?
	if [ $status -eq 2 ] && [ ! -s "$work/out" ] && grep -qF -- "$words" "$work/err"; then
		good
	else
		bad "$*: exit $status, $(head -n 1 "$work/err")"
	fi
}

# 29 CFR 1910.133(a)(5): least shades; a shared end takes the darker row.
while read -r shade process key size; do
	# shellcheck disable=SC2086
	near "$shade" 0 "Least shade" shade process "$process" $key $size
done <<'ROWS'
7 SMAW amps 59 A
8 SMAW amps 60 A
8 SMAW amps 159 A
10 SMAW amps 160 A
10 SMAW amps 249 A
11 SMAW amps 250 A
11 SMAW amps 550 A
7 GMAW amps 59 A
10 GMAW amps 60 A
10 FCAW amps 160 A
10 FCAW amps 250 A
10 GMAW amps 500 A
8 GTAW amps 49 A
8 GTAW amps 50 A
10 GTAW amps 150 A
10 GTAW amps 500 A
10 CAC-A amps 499 A
11 CAC-A amps 500 A
6 PAW amps 19 A
8 PAW amps 20 A
10 PAW amps 100 A
11 PAW amps 400 A
8 PAC amps 299 A
9 PAC amps 300 A
10 PAC amps 400 A
4 OFW thickness 0.124 in
5 OFW thickness 1/8 in
6 OFW thickness 1/2 in
3 OFC thickness 0.99 in
4 OFC thickness 1 in
5 OFC thickness 6 in
3 TB
2 TS
14 CAW
ROWS

# ASME B36.10M plain-end weights as recalled from the table since 2000 (two places), and
# the same by bc; older shop charts print 7.58, 28.55 and 43.39.
near 7.58 0.005 "Weight a foot" pipe nps 3 schedule 40
near 28.58 0.005 "Weight a foot" pipe nps 8 schedule 40
near 43.43 0.005 "Weight a foot" pipe nps 8 schedule 80
near 7.58 0.005 "By older tables" pipe nps 3 schedule 40
near 28.55 0.005 "By older tables" pipe nps 8 schedule 40
near 43.39 0.005 "By older tables" pipe nps 8 schedule 80
near 18.97 0.005 "By older tables" pipe nps 6 schedule 40
while read -r nps schedule od wall; do
	near "$(echo "10.69 * ($od - $wall) * $wall" | bc -l)" 0.000001 "Weight a foot" \
	    pipe nps "$nps" schedule "$schedule"
	near "$(echo "4 * a(1) * ($od - $wall) * $wall" | bc -l)" 0.000001 "Metal area" \
	    pipe nps "$nps" schedule "$schedule"
	near "$(echo "$od - 2 * $wall" | bc -l)" 0.0000001 "Inside diameter" \
	    pipe nps "$nps" schedule "$schedule"
done <<'ROWS'
3 40 3.5 0.216
8 40 8.625 0.322
8 80 8.625 0.5
1-1/2 160 1.9 0.281
12 XS 12.75 0.5
ROWS

# Filler metal data book: efficiencies and stub rule.
near 59 0 "Efficiency" filler weight 1 lb electrode 12 in
near 93 0 "Efficiency" filler weight 1 lb process GMAW gas CO2
near "$(echo '62 * 14 / 12 * 10 / 14' | bc -l)" 0.000001 "Efficiency" \
    filler weight 1 lb electrode 14 in stub 4 in

# AWS D1.1 Table 7.7 (2020): least legs at each band's end.
while read -r leg thin; do
	near "$(echo "$leg" | bc -l)" 0.000001 "Least leg" fillet thinner "$thin" in
done <<'ROWS'
1/8 1/4
3/16 0.251
3/16 1/2
1/4 0.501
1/4 3/4
5/16 0.751
5/16 2
ROWS
near 0.125 0.000001 "Least leg" fillet thinner 1/8 in thicker 1 in hydrogen ordinary
near 0.1875 0.000001 "Least leg" fillet thinner 1/4 in loading cyclic
near 0.24 0.000001 Throat throat leg 0.3 in leg2 0.4 in

# AWS D1.1 Table 6.10 (2020) and ASME IX QW-461.9 (2010): positions.
says "F H V" "Grooves in plate" qualify code D1.1 edition 2020 test 3G thickness 3/8 in
# Table 6.10 (2020): plate tests give pipe only from 24 in, backed or back-gouged.
for test in 1G 2G 3G 4G 3G+4G; do
	if $fitup reckon qualify code D1.1 edition 2020 test $test thickness 3/8 in |
	    tr -s ' \n' ' ' | grep -q '24 in and over, with backing or back-gouging'; then
		good
	else
		bad "qualify $test: no note on pipe"
	fi
done
says "F V" "Grooves in plate" qualify code IX edition 2010 test 3G thickness 3/8 in
says "F OH" "Grooves in plate" qualify code D1.1 edition 2020 test 4G thickness 3/8 in
says "All" "Grooves in pipe" qualify code D1.1 edition 2020 test 3G+4G thickness 1 in
says "All" "Fillets" qualify code IX edition 2010 test 5G form pipe nps 6 schedule 80
# D1.1 Table 10.13 (2020): bends and thickness by diameter and wall; job-size pipes.
says "2 face bends and 2 root bends" Specimens qualify code D1.1 edition 2020 test 6G \
    form pipe nps 2 schedule 80
says "1/8 to 3/4 in [3.2 to 19.1 mm]" "Thickness qualified" qualify code D1.1 edition 2020 \
    test 6G form pipe nps 2 schedule 80
says "4 side bends" Specimens qualify code D1.1 edition 2020 test 6G form pipe nps 8 schedule 80
says "0.1875 in and up, no limit" "Thickness qualified" qualify code D1.1 edition 2020 \
    test 6G form pipe nps 8 schedule 80
# Code forum: 1/2 in plate qualifies to 1 in.
says "1/8 to 1 in [3.2 to 25.4 mm]" "Thickness qualified" qualify code D1.1 edition 2020 \
    test 1G thickness 1/2 in
# QW-452.1 (2010): 2 t, or no limit from 1/2 in in three layers; QW-452.3: diameters.
near 0.56 0.000001 "Weld metal qualified, to" qualify code IX edition 2010 test 6G form pipe \
    nps 6 schedule 40
says "the most to be welded" "Weld metal qualified" qualify code IX edition 2010 test 6G \
    form pipe nps 8 schedule 80 layers 3
near 1 0.000001 "Diameters qualified, from" qualify code IX edition 2010 test 6G form pipe \
    nps 2 schedule 80
near 2.875 0.000001 "Diameters qualified, from" qualify code IX edition 2010 test 6G \
    form pipe nps 6 schedule 40
# What was read in one edition only carries the dagger in another.
for edition in 2020:false 2015:true; do
	got=$($fitup reckon qualify code D1.1 edition ${edition%:*} test 3G thickness 1/2 in \
	    --json | jq -r '.results[0].confirm')
	if [ "$got" = "${edition#*:}" ]; then good; else bad "dagger in $edition: $got"; fi
done

# ASME IX QW-466.1 (2010), 3/8 in specimen; note b: 4 t gives 20 %.
near 1.5 0.000001 "Plunger A" bend thickness 3/8 in code IX edition 2010
near 2.375 0.000001 "Die opening C" bend thickness 3/8 in code IX edition 2010
near 20 0.000001 "Strain of the outer fiber" bend thickness 3/8 in code IX edition 2010

# Bend allowance: the FAA constants keep within 0.5 percent of the exact rule. The Navy's 0.0173 for
# pi/180 is itself 0.9 percent short, and so are its answers at the most.
for radius in 1/16 1/8 1/4 1/2; do
	exact=$(value us "Bend allowance" allowance radius $radius in thickness 1/8 in k 0.4469)
	near "$exact" "$(echo "$exact * 0.005" | bc -l)" "Bend allowance" \
	    allowance radius $radius in thickness 1/8 in rule faa
	near "$exact" "$(echo "$exact * 0.009" | bc -l)" "Bend allowance" \
	    allowance radius $radius in thickness 1/8 in rule navy
	near "$(echo "4 * a(1) / 2 * ($radius + 0.4469 / 8)" | bc -l)" 0.0000001 \
	    "Bend allowance" allowance radius $radius in thickness 1/8 in k 0.4469
done

# A 100 ton, 10 ft brake: 1/4 in over
# 2 in takes 575 / 16 / 2 tons a foot (bc), so 5.57 ft and not its whole bed.
near "$(echo '575 / 16 / 2 * 10' | bc -l)" 0.000001 Force brake thickness 1/4 in length 10 ft \
    owned 1/2, 1, 2, 3 in tons 100 bed 10 ft
near "$(echo '100 / (575 / 16 / 2) * 12' | bc -l)" 0.000001 "Longest such bend" \
    brake thickness 1/4 in length 10 ft owned 1/2, 1, 2, 3 in tons 100 bed 10 ft
says "2 in [50.8 mm]" "Die opening V" brake thickness 1/4 in length 10 ft \
    owned 1/2, 1, 2, 3 in tons 100
says "within it: 89.8 tons [799 kN], and it takes 100 tons [890 kN]" Verdict \
    brake thickness 1/8 in length 10 ft opening 1 in tons 100 bed 10 ft

# A 10 ft shear rated 1/4 in mild steel; factors from memory, hence daggers.
near 0.25 0.000001 "Thickest to cut" shear rated 1/4 in bed 10 ft material A36
near 0.1675 0.000001 "Thickest to cut" shear rated 1/4 in bed 10 ft material stainless
near 0.3125 0.000001 "Thickest to cut" shear rated 1/4 in bed 10 ft material aluminum
got=$($fitup reckon shear rated 1/4 in material stainless --json |
    jq -r '.results[0] | "\(.confirm) \(.text)"')
case $got in
"true "*", an estimate") good ;;
*) bad "shear of stainless: $got" ;;
esac

# Iowa DOT IM 569, 490 lb/ft3: 3/8 in plate weighs 15.3125 lb/ft2. Gauge page: 10 ga 5.625.
near "$(echo '490 / 12 * 0.375 * 32' | bc -l)" 0.000001 Weight plate thickness 3/8 in \
    width 48 in length 96 in
near 5.625 0.001 Weight gauge number 10
near 0.1345 0.000001 Thickness gauge number 10 material steel
near 0.1406 0.00005 Thickness gauge number 10 material stainless

# AWS D1.1 Table 5.8 (2020), prequalified preheat (three copies).
near 50 0 "Least preheat" preheat thickness 1 in steel A36
near 150 0 "Least preheat" preheat thickness 1 in steel A36 hydrogen ordinary
near 225 0 "Least preheat" preheat thickness 2 in category A
# 29 CFR 1910.253(a)(2): 15 psig. 34 CFR 600.2: 3 h a week for each credit, 10 weeks.
near 15 0 "Highest pressure" acetylene capacity 100 ft3
near 150 0 "Least work for the credits" credit-hours credits 5 lecture 2 h lab 6 h weeks 11
# Wrong input: a message with the input's name, exit 2, no number.
refused "schedule is missing" pipe nps 6
refused "no input called" fillet bogus 1
refused "reckon has no topic" nonsense
refused "perhaps heat-input" heatinput
refused "thinner" fillet thinner nan in
refused "thinner" fillet thinner inf in
refused "must be more than 0" fillet thinner 0 in
refused "must not be under 0" plate thickness 1/4 in width -3 in
refused "must not be under 0" heat-input volts -29 amps 325 speed 12.5 in/min
refused "the branch is larger than its run" saddle branch 8 in run 6 in
refused "perhaps in" fillet thinner 1/4
refused "Example: fitup reckon tube" tube shape square side 1 in wall 1/2 in

# The JSON of every topic's example is one object of the same shape; the list of topics
# too. The text holds each figure, the sources and the dagger words where one is owed.
if $fitup reckon --json | jq -e '.fitup == 1 and (.topics | length) >= 30' >/dev/null; then
	good
else
	bad "list of topics"
fi
$fitup reckon --json | jq -r '.topics[].example' >"$work/examples"
while read -r line; do
	# shellcheck disable=SC2086
	$fitup reckon $line --json >"$work/json" 2>"$work/err" </dev/null
	# shellcheck disable=SC2086
	$fitup reckon $line >"$work/text" </dev/null
	if jq -e '.fitup == 1 and (.topic | type) == "string" and (.inputs | length) > 0 and
	    ([.inputs[] | (.name | type) == "string" and (.text | length) > 0 and
	        (.assumed | type) == "boolean"] | all) and (.formula | length) > 0 and
	    (.steps | type) == "array" and (.results | length) > 0 and
	    ([.results[] | (.text | length) > 0 and (.confirm | type) == "boolean" and
	        ((.us // {value: 0}).value | type) == "number"] | all) and
	    (.sources | length) > 0 and ((.confirm | length) > 0) == ([.results[].confirm] | any)' \
	    "$work/json" >/dev/null; then
		good
	else
		bad "json of $line"
	fi
	owed=$(jq -r 'if (.confirm | length) > 0 then 1 else 0 end' "$work/json")
	seen=$(grep -c 'confirm against' "$work/text")
	if [ "$owed" = "$seen" ] && ! grep -qiE '[^a-z](nan|inf)[^a-z]' "$work/text" &&
	    [ "$(awk '{ n = gsub(/[^\200-\277]/, ""); if (n > 82) print }' "$work/text")" = "" ]
	then
		good
	else
		bad "text of $line"
	fi
done <"$work/examples"

# Random words under sanitizers: each line ends in a reason or in finite figures.
if ${CC:-gcc} -std=c11 -D_POSIX_C_SOURCE=200809L -Isrc -O1 -g -fsanitize=address,undefined \
    -fno-sanitize-recover=all -o "$work/fuzz" tests/outside/reckon_fuzz.c src/reckon/*.c \
    src/units/*.c src/base/*.c -lm && "$work/fuzz" 40000 >"$work/log" 2>&1 &&
    grep -q ' answers, ' "$work/log"; then
	good
else
	bad "random words: $(tail -n 3 "$work/log")"
fi

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 190 ]
