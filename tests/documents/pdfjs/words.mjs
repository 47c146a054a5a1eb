// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
//
// words.mjs LIBRARY FILE: the text of a PDF file as pdf.js finds it, a form feed after each page. LIBRARY is pdf.mjs.
// pdf.js gives pieces with their places, a space as a piece of its own and the ends of lines; but where the next
// piece lies to the left on the same line, it gives neither. Pieces that do not touch are set apart here.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [library, file] = process.argv.slice(2);
const { getDocument } = await import(pathToFileURL(library));
const data = new Uint8Array(readFileSync(file));
const pdf = await getDocument({ data, verbosity: 0, isEvalSupported: false, useSystemFonts: false }).promise;

function textOf(items) {
    let text = "", end = null;
    for (const { str, transform, width, height, hasEOL } of items) {
        const [x, y] = transform.slice(4);
        const touches = end === null || Math.abs(x - end.x) < 0.05 * height && Math.abs(y - end.y) < 0.05 * height;
        text += (touches ? "" : " ") + str + (hasEOL ? "\n" : "");
        if (str !== "") end = { x: x + width, y };
    }
    return text;
}

let text = "";
for (let number = 1; number <= pdf.numPages; ++number) {
    const page = await pdf.getPage(number);
    text += textOf((await page.getTextContent({ disableNormalization: true })).items) + "\f";
}
process.stdout.write(text);
