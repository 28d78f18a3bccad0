/* In which language pdf.js, a reader that shares nothing with ours, would read each part of
 * a document aloud: the /Lang of its element, else that of what it stands in, else the
 * document's. node languages.cjs PDFJS FILE; prints "LANGUAGE<tab>TEXT", one an element. */
'use strict';
const fs = require('fs');
const path = require('path');

const say = (s) => process.stdout.write(s);
console.warn = console.log = () => {}; /* pdf.js misses a canvas that only drawing needs */
const [pdfjs, file] = process.argv.slice(2);
const pdf = require(path.resolve(pdfjs));

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
				text.set(id, (text.get(id) || '') + item.str +
				    (item.hasEOL ? ' ' : ''));
		}
	}
	return text;
}

function walk(node, text, language)
{
	const here = node.lang || language;

	if (node.type === 'content' && (text.get(node.id) || '').trim())
		say(here + '\t' + text.get(node.id).trim() + '\n');
	if (node.alt)
		say(here + '\t' + node.alt + '\n');
	for (const child of node.children || [])
		walk(child, text, here);
}

async function main()
{
	const doc = await pdf.getDocument({ data: new Uint8Array(fs.readFileSync(file)),
		verbosity: 0 }).promise;
	const { info } = await doc.getMetadata();

	for (let n = 1; n <= doc.numPages; n++) {
		const page = await doc.getPage(n);
		const tree = await page.getStructTree();

		if (tree)
			walk(tree, await pieces(page), info.Language || '');
	}
}

main().catch((e) => { say('failed: ' + e.message + '\n'); process.exitCode = 1; });
