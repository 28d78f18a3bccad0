#!/bin/sh
# Every row of worked_examples.psv: the answer printed in a handbook, a guide or a course,
# or worked out apart, against what `fitup reckon` says. Exits 77 without jq.
set -u
cd "$(dirname "$0")/../.." || exit 2
fitup=${FITUP:-build/fitup}
command -v jq >/dev/null 2>&1 || { echo "jq is not installed"; exit 77; }
passed=0
failed=0
names='def us($n): .results[] | select(.name == $n) | .us.value;
def metric($n): .results[] | select(.name == $n) | .metric.value;'

rows=$(grep -v '^#' tests/outside/worked_examples.psv)
while IFS='|' read -r topic figure want unit within source seen; do
	# shellcheck disable=SC2086
	got=$($fitup reckon $topic --json 2>/dev/null </dev/null | jq "$names $figure" 2>/dev/null)
	if awk -v g="$got" -v w="$want" -v t="$within" \
	    'BEGIN { d = g - w; if (d < 0) d = -d; exit !(g != "" && d <= t) }'; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		echo "failed: $topic: ${got:-nothing}, not $want $unit ($source, $seen)"
	fi
done <<ROWS
$rows
ROWS
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -ge 77 ]
