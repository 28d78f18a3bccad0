#!/bin/sh
# `inspect --sarif` against the schema that OASIS publishes for SARIF 2.1.0, and against
# what --json says of the same program. Exits 77 without Python's jsonschema.
set -u
cd "$(dirname "$0")/../.." || exit 2
python3 -c 'import jsonschema' 2>/dev/null || { echo "python3-jsonschema is not installed"; exit 77; }
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
set --
for dir in tests/cases/*/ curriculum/; do
	name=$(basename "$dir")
	words=
	[ -f "tests/cases/$name.args" ] && words=$(cat "tests/cases/$name.args")
	# The words are split on purpose.
	build/fitup inspect --sarif -C "$dir" $words > "$work/$name.sarif"
	build/fitup inspect --json -C "$dir" $words > "$work/$name.json"
	set -- "$@" "$dir" "$work/$name"
done

cat > "$work/judge.py" <<'END'
import json, os, sys, urllib.parse
import jsonschema

schema = json.load(open('tests/outside/sarif-2.1.0.json'))
jsonschema.Draft4Validator.check_schema(schema)
judge = jsonschema.Draft4Validator(schema)
passed = failed = 0

def say(good, words):
    global passed, failed
    if good:
        passed += 1
    else:
        failed += 1
        print('failed:', words)

def place(location, folder):
    """File, line and column of a location, and whether such a place exists."""
    physical = location.get('physicalLocation')
    if not physical:
        return '', 0, 0, True
    path = urllib.parse.unquote(physical['artifactLocation']['uri'])
    region = physical.get('region', {})
    line, column = region.get('startLine', 0), region.get('startColumn', 0)
    whole = os.path.join(folder, path)
    there = os.path.lexists(whole)
    if there and line and os.path.isfile(whole):
        text = open(whole, 'rb').read().decode('utf-8-sig', 'replace')
        lines = text.replace('\r\n', '\n').split('\n')
        there = line <= len(lines) and column <= len(lines[line - 1]) + 1
    return path, line, column, there

def plain(text):
    return text.replace('{{', '{').replace('}}', '}')

def compare(run, ours, folder, name):
    rules = run['tool']['driver']['rules']
    results = run['results']
    say(len({r['id'] for r in rules}) == len(rules), name + ': a rule id stands twice')
    say(len(results) == len(ours), name + ': as many results as findings')
    for r, d in zip(results, ours):
        where = '%s: %s %s:%d' % (name, d['name'], d['file'], d['line'])
        path, line, column, there = place(r['locations'][0], folder)
        good = (r['ruleId'] == d['name'] and rules[r['ruleIndex']]['id'] == d['name']
                and r['level'] == d['level'] and there
                and (path, line, column) == (d['file'], d['line'], d['column'])
                and plain(r['message']['text']).startswith(d['message'])
                and len(r.get('relatedLocations', [])) == len(d['related']))
        for a, b in zip(r.get('relatedLocations', []), d['related']):
            at = place(a, folder)
            good = good and at == (b['file'], b['line'], b['column'], True)
        kept = r.get('suppressions', [])
        good = good and bool(kept) == bool(d.get('waived'))
        if kept:
            good = good and kept[0]['justification'] == '; '.join(
                (d['reason'], d['role'], 'until ' + d['until']))
        say(good, where)

results = suppressed = 0
for folder, stem in zip(sys.argv[1::2], sys.argv[2::2]):
    name = os.path.basename(stem)
    log = json.load(open(stem + '.sarif'))
    faults = [str(e.message)[:200] for e in judge.iter_errors(log)]
    say(not faults, name + ': ' + '; '.join(faults[:3]))
    say(log['runs'][0]['columnKind'] == 'unicodeCodePoints', name + ': columns')
    compare(log['runs'][0], json.load(open(stem + '.json'))['findings'], folder, name)
    results += len(log['runs'][0]['results'])
    suppressed += sum('suppressions' in r for r in log['runs'][0]['results'])
    # The judge is awake: it refuses what the standard does not allow.
    for path, value in ((('version',), '2.0.0'), (('runs', 0, 'columnKind'), 'bytes'),
                        (('runs', 0, 'results'), [{'ruleId': 'x'}])):
        spoilt = json.loads(json.dumps(log))
        spot = spoilt
        for key in path[:-1]:
            spot = spot[key]
        spot[path[-1]] = value
        say(not judge.is_valid(spoilt), name + ': accepted a wrong ' + str(path[-1]))
say(results > 50, 'too few results to judge by')
say(suppressed > 0, 'no waived finding among the cases')
print('%d passed, %d failed' % (passed, failed))
sys.exit(failed > 0)
END
python3 "$work/judge.py" "$@"
