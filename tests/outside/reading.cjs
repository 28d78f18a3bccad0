/* What pdf.js, a reader that shares nothing with ours, hears when it reads a packet aloud
 * by its tags, judged against the Markdown that the packet was made from.
 * node reading.cjs PDFJS PROGRAM QUARTER PACKET; ends with "N passed, N failed". */
'use strict';
const fs = require('fs');
const path = require('path');

console.warn = console.log = () => {}; /* pdf.js misses a canvas that only drawing needs */
const [pdfjs, program, quarter, packet] = process.argv.slice(2);
const pdf = require(path.resolve(pdfjs));

let passed = 0;
const failures = [];
function check(good, words)
{
	if (good)
		passed++;
	else
		failures.push(words);
}

/* Letters and digits alone: line breaks, hyphens and spaces are the layout's. */
function bare(text)
{
	return text.normalize('NFKD').toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}

/* Text of each marked piece of a page, by its id. */
async function pieces(page)
{
	const content = await page.getTextContent({ includeMarkedContent: true });
	const text = new Map();
	const open = [];

	for (const item of content.items) {
		if (item.type && item.type.startsWith('begin'))
			open.push(item.id || null);
		else if (item.type === 'endMarkedContent')
			open.pop();
		else {
			const id = open.filter(Boolean).pop();
			if (id)
				text.set(id, (text.get(id) || '') + item.str);
		}
	}
	return text;
}

/* The tree in order, as { role, text, alt }. */
function walk(node, text, role, out)
{
	if (node.type === 'content') {
		out.push({ role, text: text.get(node.id) || '' });
		return;
	}
	if (node.role === 'Figure')
		out.push({ role: 'Figure+', text: '', alt: node.alt || '' });
	if (node.role === 'TH' || node.role === 'Table')
		out.push({ role: node.role + '+', text: '' });
	for (const child of node.children || [])
		walk(child, text, node.role === 'Span' || node.role === 'Link' ? role :
		    node.role, out);
}

async function heard(file)
{
	const doc = await pdf.getDocument({ data: new Uint8Array(fs.readFileSync(file)),
		verbosity: 0 }).promise;
	const out = [];

	for (let n = 1; n <= doc.numPages; n++) {
		const page = await doc.getPage(n);
		const tree = await page.getStructTree();
		if (tree)
			walk(tree, await pieces(page), '', out);
	}
	return out;
}

/* Ids of one quarter by week, then by line of program.md. */
function ids()
{
	const text = fs.readFileSync(path.join(program, 'program.md'), 'utf8');
	const part = text.split(/^## Quarter /m).find((p) => p.startsWith(quarter + '\n'));

	const lines = [...part.matchAll(/^\d+\. ([A-Z]+-\d+[a-z]?), week (\d+)/gm)];

	return lines.sort((a, b) => a[2] - b[2]).map((m) => m[1]);
}

/* Steps and cautions of an assignment, each item one text. */
function source(id)
{
	const text = fs.readFileSync(path.join(program, 'assignments', id + '.md'), 'utf8');
	const section = (name) => {
		const part = text.split(/^## /m).find((p) => p.startsWith(name + '\n'));
		return part ? [...part.matchAll(/^(?:\d+\.|[-*+]) (.*)$/gm)].map((m) => m[1]) : [];
	};

	return { title: text.split('\n')[0].replace(/^# [^:]*: */, ''),
		steps: section('Procedure'), cautions: section('Cautions') };
}

/* Finds texts one after another from `at`; tells each that is not there. */
function follow(all, at, texts, words)
{
	for (const t of texts) {
		const found = all.indexOf(bare(t.replace(/\*\*/g, '')), at);
		check(found >= 0, words + ': "' + t.slice(0, 50) + '"');
		if (found >= 0)
			at = found;
	}
	return at;
}

async function main()
{
	const out = await heard(packet);
	const heads = [];
	let all = '';

	for (const o of out) {
		if (o.role === 'H1')
			heads.push({ at: all.length, text: bare(o.text) });
		all += bare(o.text);
	}
	const starts = ids().map((id) => {
		const h = heads.find((x) => x.text.includes(bare(id + source(id).title)));
		check(h, id + ': no heading of level 1');
		return { id, at: h ? h.at : -1 };
	});
	starts.forEach((s, i) => {
		const next = i + 1 < starts.length ? starts[i + 1].at : all.length;
		const part = all.slice(s.at, next);
		const from = source(s.id);
		check(i === 0 || s.at > starts[i - 1].at, s.id + ': out of order');
		follow(part, 0, from.steps, s.id + ', steps');
		follow(part, 0, from.cautions, s.id + ', cautions');
	});
	const figures = out.filter((o) => o.role === 'Figure+');
	check(figures.length > 0 && figures.every((f) => f.alt.length > 20),
	    'a figure without words');
	const tables = out.filter((o) => o.role === 'Table+').length;
	const headers = out.filter((o) => o.role === 'TH+').length;
	check(tables > 0 && headers >= tables, 'tables without header cells');
	check(!/page\d+of\d+/.test(all), 'furniture is read aloud');
}

main().catch((e) => failures.push(String(e))).finally(() => {
	for (const f of failures)
		process.stdout.write('failed: ' + f + '\n');
	process.stdout.write(passed + ' passed, ' + failures.length + ' failed\n');
	process.exit(failures.length ? 1 : 0);
});
