/** Whole fragments, each figure worked out by hand on an invented flat board of 8 mm; the drawings are held elsewhere. */
import { describe, expect, test } from "vitest";
import { drawSection } from "../../src/draw/index.js";
import { checkDesign, type Report } from "../../src/index.js";
import { html } from "../../src/notebook/index.js";
import { SQUARED } from "../check/necks.js";

const reportOn = (change: object): Report => checkDesign({ ...SQUARED, ...change });
const shown = (report: Report) => html(report).replace(/<svg[\s\S]*?<\/svg>\n/g, "<svg/>");

/** The fragment as far as the cautions, and these by themselves. */
function partsOf(report: Report): [string, string] {
  const [before = "", after = ""] = shown(report).split("<h4>Cautions</h4>\n");
  return [before, after];
}

const HEAD =
  '<th scope="col">hole</th><th scope="col">from the nut</th><th scope="col">off the centre</th><th scope="col">size</th><th scope="col">removed</th><th scope="col">least</th><th scope="col">most</th><th scope="col">most set by</th>';

describe("whole fragments", () => {
  // 0.5 + 1 at least, 8 − 1 − 1 at most, the middle and a point of 1
  test("one dot, nothing wrong", () => {
    const report = reportOn({ name: "Small board (invented)" });
    const [before, cautions] = partsOf(report);
    expect(before).toBe(`<section class="marker-depth-report">
<h3>Marker depths: Small board (invented)</h3>
<p>Nothing is wrong.</p>
<div style="overflow-x:auto">
<table style="white-space:nowrap;text-align:right">
<caption>Lengths in mm; depths of the floor from the top</caption>
<thead><tr>${HEAD}<th scope="col">depth</th><th scope="col">travel</th></tr></thead>
<tbody>
<tr><th scope="row">fret 2</th><td>48.00</td><td>0.00</td><td>8.00</td><td>0.50</td><td>1.50</td><td>6.00</td><td>web under the bit</td><td>3.75</td><td>4.75</td></tr>
</tbody>
</table>
</div>
<svg/>
<svg/>
`);
    const safe = (words: string) => words.replaceAll("'", "&#39;").replaceAll('"', "&quot;");
    const items = report.cautions.map((words) => `<li>${safe(words)}</li>`);
    expect(cautions).toBe(`<ul>\n${items.join("\n")}\n</ul>\n</section>\n`);
  });

  // the second keeps too little of itself: 1 − 0.5 of 1; the third has no planned depth
  test("a planned depth beside none; one error", () => {
    const markers = [
      { frets: [2], diameter: 8, depth: 1 },
      { frets: [3], diameter: 8 },
    ];
    const [before] = partsOf(reportOn({ markers }));
    expect(before).toContain(`<h3>Marker depths</h3>
<p>1 error, 0 warnings:</p>
<ul>
<li>error: As little as 0.50 mm of the marker at fret 2 could remain after the radius; keep 1.00 mm.</li>
</ul>
<div`);
    expect(before).toContain(
      '<th scope="col">travel</th><th scope="col">planned</th><th scope="col">marker left</th><th scope="col">wood left</th></tr></thead>\n',
    );
    const rows = before.split("\n").filter((line) => line.includes('"row"'));
    expect(rows.map((row) => row.split("</td><td>").slice(-3).join(" "))).toEqual([
      "1.00 0.50 6.00</td></tr>",
      "– – –</td></tr>",
    ]);
  });

  test("two errors and a warning are counted apart", () => {
    // 31.5 lies 0.25 from the slots
    const markers = [
      { frets: [2], diameter: 8, depth: 1 },
      { frets: [3], diameter: 31.5, depth: 1 },
    ];
    const [before] = partsOf(reportOn({ markers }));
    expect(before).toContain("<p>2 errors, 1 warning:</p>\n<ul>\n<li>error: ");
    expect(before.match(/<li>error: /g)).toHaveLength(2);
    expect(before.match(/<li>warning: /g)).toHaveLength(1);
  });

  test("no holes: neither a table nor a drawing", () => {
    const [before, cautions] = partsOf(reportOn({ markers: [] }));
    expect(before).toBe(`<section class="marker-depth-report">
<h3>Marker depths</h3>
<p>Nothing is wrong.</p>
`);
    expect(cautions.endsWith("</ul>\n</section>\n")).toBe(true);
  });
});

describe("the hole whose section is shown", () => {
  const shows = (report: Report) =>
    report.holes.flatMap((_, i) => (html(report).includes(drawSection(report, i)) ? [i] : []));
  const planned = (...depths: number[]) =>
    reportOn({ markers: depths.map((depth, i) => ({ frets: [i + 1], diameter: 8, depth })) });

  // from 1.5 to 6 suit
  test("of planned depths the nearest to a limit, whether the least or the most", () => {
    expect(shows(planned(2, 3, 4))).toEqual([0]);
    expect(shows(planned(3, 5.75, 2))).toEqual([1]);
    expect(shows(planned(3, 1.25, 5.75))).toEqual([1]);
    expect(shows(planned(3, 1.25, 6.5))).toEqual([2]);
  });

  test("of holes that no depth suits the one whose limits clash most", () => {
    const keeps = (...keep: number[]) =>
      reportOn({
        board: { ...SQUARED.board, thickness: 2 },
        markers: keep.map((mm, i) => ({
          frets: [i + 1],
          diameter: 8,
          fill: { kind: "poured", keep: mm },
        })),
      });
    // at most 0 everywhere; at least 0.5 more than the keep
    expect(shows(keeps(1, 3, 2))).toEqual([1]);
    expect(shows(keeps(4, 3, 2))).toEqual([0]);
  });
});
