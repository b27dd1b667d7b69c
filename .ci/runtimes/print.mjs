// Prints a template of the packed tarball with a real browser, and measures its ruler in the PDF.
import assert from "node:assert/strict";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { inflateSync } from "node:zlib";

/** 1 mm in a PDF's units of 1/72 in (ISO 32000-1, 8.3.2.3; memory). */
const POINTS = 72 / 25.4;

const PAPERS = { a4: [210, 297], letter: [215.9, 279.4] };

/** Prints with a browser's page; returns a few words. */
export async function printTemplate(page, project) {
  const require = createRequire(pathToFileURL(join(project, "package.json")));
  const { checkDesign } = require("marker-depth");
  const { drawTemplate } = require("marker-depth/draw");
  const design = {
    scale: { length: 648, frets: 22 },
    board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
    radius: 254,
    markers: [{ frets: [3, 5, 7, 9], diameter: 6.35 }],
  };
  const told = [];
  for (const [paper, [width, height]] of Object.entries(PAPERS)) {
    const pages = drawTemplate(checkDesign(design), { paper });
    await page.setContent(pageOf(pages, width, height));
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const printed = pagesIn(pdf);
    assert.equal(printed.length, pages.length, `${paper}: one sheet for each page`);
    for (const { size, lines } of printed) {
      // a browser rounds its sheets to its own pixels of 1/96 in
      const isSheet = Math.abs(size[0] - width) < 0.3 && Math.abs(size[1] - height) < 0.3;
      assert.ok(isSheet, `${paper}: a sheet of ${size} mm`);
      // nothing else on the page is as long in either direction
      const across = lines.filter(([dx, dy]) => near(dx, 100) && near(dy, 0));
      const upright = lines.filter(([dx, dy]) => near(dx, 0) && near(dy, 100));
      assert.ok(
        across.length === 1 && upright.length === 1,
        `${paper}: a ruler of 100 mm both ways`,
      );
      told.push(...across.map(([dx]) => dx), ...upright.map(([, dy]) => dy));
    }
  }
  const off = Math.max(...told.map((length) => Math.abs(length - 100)));
  return `template printed: ${told.length} rulers of 100 mm, off by ${off.toFixed(3)} mm at most`;
}

function pageOf(pages, width, height) {
  const style = `@page{size:${width}mm ${height}mm;margin:0}body{margin:0}svg{display:block}svg + svg{break-before:page}`;
  return `<!doctype html><meta charset="utf-8"><style>${style}</style>${pages.join("")}`;
}

const near = (mm, wanted) => Math.abs(mm - wanted) < 0.1;

/** Each page of a PDF: its size, and the extent of each straight line on it, mm. */
function pagesIn(pdf) {
  const text = pdf.toString("latin1");
  const objects = new Map(
    [...text.matchAll(/(?:^|\n)(\d+) 0 obj\b([\s\S]*?)\nendobj/g)].map(([, id, body]) => [
      id,
      body,
    ]),
  );
  return [...objects.values()]
    .filter((body) => /\/Type\s*\/Page\b/.test(body))
    .map((body) => {
      const [, box] = /\/MediaBox\s*\[([^\]]+)\]/.exec(body);
      const [left, bottom, right, top] = box.trim().split(/\s+/).map(Number);
      const [, id] = /\/Contents\s+(\d+) 0 R/.exec(body);
      const size = [(right - left) / POINTS, (top - bottom) / POINTS];
      return { size, lines: linesIn(streamOf(objects.get(id))) };
    });
}

function streamOf(body) {
  const start = body.indexOf("stream") + "stream".length;
  const data = body.slice(
    body[start] === "\r" ? start + 2 : start + 1,
    body.lastIndexOf("endstream"),
  );
  const bytes = Buffer.from(data, "latin1");
  return /\/FlateDecode/.test(body) ? inflateSync(bytes).toString("latin1") : data;
}

/** Follows the drawing operators: q and Q keep and restore the matrix, cm changes it, m and l draw. */
function linesIn(content) {
  const lines = [];
  let [matrix, kept, operands, at] = [[1, 0, 0, 1, 0, 0], [], [], [0, 0]];
  const place = ([a, b, c, d, e, f], [x, y]) => [a * x + c * y + e, b * x + d * y + f];
  for (const token of content.split(/\s+/)) {
    if (/^[-+.\d]/.test(token)) {
      operands.push(Number(token));
      continue;
    }
    if (token === "q") kept.push(matrix);
    if (token === "Q") matrix = kept.pop() ?? matrix;
    if (token === "cm") {
      const [a, b, c, d, e, f] = operands.slice(-6);
      const [x, y] = [
        place([...matrix.slice(0, 4), 0, 0], [a, b]),
        place([...matrix.slice(0, 4), 0, 0], [c, d]),
      ];
      matrix = [...x, ...y, ...place(matrix, [e, f])];
    }
    if (token === "m" || token === "l") {
      const to = place(matrix, operands.slice(-2));
      if (token === "l") lines.push(to.map((value, i) => Math.abs(value - at[i]) / POINTS));
      at = to;
    }
    operands = [];
  }
  return lines;
}
