/** The template: everything lies on the paper at 1 : 1, and pages join where they say. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawTemplate } from "../../src/draw/index.js";
import { checkDesign, type Design, type Hole, type Report } from "../../src/index.js";
import { anyReport } from "./any-neck.js";
import { gallery, NECK, reportOf } from "./gallery.js";
import { boxesIn, classed, type Drawing, linesIn, read, runsOf, textsIn } from "./svg.js";

// ISO 216 (memory): A4 is 210 by 297; letter is 8.5 by 11 inches of 25.4 mm
const PAPERS = [
  ["a4", 210, 297],
  ["letter", 215.9, 279.4],
] as const;

/** Equal but for what three decimals leave out. */
const close = (a: readonly number[] = [], b: readonly number[] = []) =>
  a.length === b.length && a.every((value, i) => Math.abs(value - (b[i] ?? NaN)) < 0.002);

/** Where the board lies on a page: what to add to an offset and to an along, from its numbered slots. */
function originOf(page: Drawing, report: Report): readonly [number, number] {
  const axis = linesIn(page).find(({ pen }) => pen === "centre");
  const numbers = textsIn(page).filter(({ words }) => /^\d+$/.test(words));
  const slots = linesIn(page).filter(({ name }) => name === "slot");
  const downs = slots.flatMap(({ from, to }) => {
    const [x, y] = from[0] < to[0] ? from : to;
    const number = numbers.find(({ at }) => close(at, [x - 1.5, y + 0.36 * 2.5]));
    const edge = report.edges.find(({ station, side }) => {
      return station === `fret${number?.words}` && side !== "treble";
    });
    return edge ? [y - edge.along] : [];
  });
  const [down = NaN] = downs;
  for (const other of downs) expect(Math.abs(other - down)).toBeLessThan(0.002);
  return [axis?.from[0] ?? NaN, down];
}

/** The ringed crosses between a page and the next, by the number of the first. */
function ringsIn(page: Drawing, number: number): (readonly [number, number])[] {
  const labels = textsIn(page).filter(({ words }) => words === `${number} | ${number + 1}`);
  const rings = classed(page, "join").map(({ attributes: { cx, cy } }) => {
    return [Number(cx), Number(cy)] as const;
  });
  return rings.filter(([x, y]) => labels.some(({ at }) => close(at, [x, y + 6.5])));
}

/** Where the board lies on each page; on one without slots as its ringed crosses join it to the page before. */
function originsOf(pages: readonly Drawing[], report: Report): (readonly [number, number])[] {
  const origins: (readonly [number, number])[] = [];
  pages.forEach((page, i) => {
    const [right, down] = originOf(page, report);
    const [[, before = NaN] = [], [, after = NaN] = []] = [pages[i - 1], page].map((each) => {
      return each ? ringsIn(each, i)[0] : undefined;
    });
    const joined = (origins[i - 1]?.[1] ?? NaN) + after - before;
    origins.push([right, Number.isFinite(down) ? down : joined]);
  });
  return origins;
}

/** A page has the hole at that place, with a cross at its centre. */
function shows(page: Drawing, hole: Hole, [right, down]: readonly [number, number]): boolean {
  const { along, offset, diameter = 0, outline } = hole;
  const centre = [offset + right, along + down];
  const crosses = boxesIn(page, "middle");
  const isCrossed = crosses.some(({ left, top, ...box }) => {
    return close([(left + box.right) / 2, (top + box.bottom) / 2], centre);
  });
  const corners = outline?.flatMap((corner) => [corner.offset + right, corner.along + down]);
  const isDrawn = classed(page, "marker").some(({ tag, attributes: { cx, cy, r, d } }) => {
    return tag === "circle"
      ? close([cx, cy, r].map(Number), [...centre, diameter / 2])
      : close(
          runsOf(d ?? "")[0]
            ?.slice(0, -1)
            .flat(),
          corners,
        );
  });
  return isCrossed && isDrawn;
}

describe.each(PAPERS)("%s", (paper, width, height) => {
  const drawn = (report: Report) => drawTemplate(report, { paper }).map(read);

  test.each(gallery)(
    "$name: pages of its size, every hole at its place on some of them",
    ({ report }) => {
      const pages = drawn(report).map((page) => ({ page, origin: originOf(page, report) }));
      for (const { page } of pages) {
        expect(page.root).toMatchObject({ width: `${width}mm`, height: `${height}mm` });
        expect(page.root.viewBox).toBe(`0 0 ${width} ${height}`);
      }
      report.holes.forEach((hole, i) => {
        const own = pages.filter(({ page, origin }) => shows(page, hole, origin));
        expect(own.length).toBeGreaterThan(0);
        // its number stands on these pages, beside it and before its name
        for (const { page } of own) {
          const told = textsIn(page).filter(({ words }) =>
            new RegExp(`^${i + 1}( |$)`).test(words),
          );
          expect(told.length).toBeGreaterThanOrEqual(2);
        }
      });
    },
  );

  test.each(gallery)("$name: nothing lies where printers do not print", ({ report }) => {
    for (const page of drawn(report)) {
      const ends = linesIn(page).flatMap(({ from, to }) => [from, to]);
      const boxes = textsIn(page).map(({ box }) => box);
      const xs = [...ends.map(([x]) => x), ...boxes.flatMap(({ left, right }) => [left, right])];
      const ys = [...ends.map(([, y]) => y), ...boxes.flatMap(({ top, bottom }) => [top, bottom])];
      expect(Math.min(...xs, ...ys)).toBeGreaterThanOrEqual(9.99);
      expect(Math.max(...xs)).toBeLessThanOrEqual(width - 9.99);
      expect(Math.max(...ys)).toBeLessThanOrEqual(height - 9.99);
    }
  });

  test.each(["plain", "fanned"])("%s: ringed crosses of two pages are one place", (name) => {
    const report = reportOf(name);
    const pages = drawn(report);
    expect(pages.length).toBeGreaterThan(1);
    pages.slice(1).forEach((page, i) => {
      const joints = [pages[i] as Drawing, page].map((each) => {
        const [right, down] = originOf(each, report);
        return ringsIn(each, i + 1).flatMap(([x, y]) => [x - right, y - down]);
      });
      expect(joints[0]).toHaveLength(4);
      expect(close(joints[0], joints[1])).toBe(true);
    });
    const words = pages.flatMap((page) => textsIn(page).map((text) => text.words));
    const stations = report.edges.map(({ station }) => station.replace("fret", ""));
    expect(words).toEqual(expect.arrayContaining(stations.filter((station) => station !== "end")));
    expect(words).toContain(`page ${pages.length} of ${pages.length}`);
  });

  test("the outline is that of the edges, without a gap between pages", () => {
    const report = reportOf("fanned");
    const parts = drawn(report).flatMap((page) => {
      const [right, down] = originOf(page, report);
      return linesIn(page)
        .filter(({ name }) => name === "board")
        .map(({ from, to }) =>
          [from, to]
            .map(([x, y]) => [y - down, x - right])
            .sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0)),
        );
    });
    for (const { along, offset, side } of report.edges) {
      const aside = side === "treble" ? offset : -offset;
      const meets = parts.some(([a = [], b = []]) => {
        const [[s = NaN, x = NaN], [t = NaN, y = NaN]] = [a, b];
        const share = t > s ? (along - s) / (t - s) : 0;
        return share > -0.001 && share < 1.001 && Math.abs(x + share * (y - x) - aside) < 0.01;
      });
      expect(meets, `${along} ${side}`).toBe(true);
    }
  });

  test("each page has a ruler of 100 mm both ways, a tick every 10", () => {
    for (const page of drawn(reportOf("plain"))) {
      const boxes = boxesIn(page, "ruler");
      const sizes = boxes.map(({ left, right, top, bottom }) => [right - left, bottom - top]);
      expect(sizes).toEqual([
        [expect.closeTo(100, 9), expect.closeTo(3, 9)],
        [expect.closeTo(3, 9), expect.closeTo(100, 9)],
      ]);
      const [across] = classed(page, "ruler");
      const ticks = runsOf(across?.attributes.d ?? "").slice(1);
      expect(ticks.map(([spot]) => (spot?.[0] ?? NaN) - 10)).toEqual(
        Array.from({ length: 11 }, (_, i) => expect.closeTo(10 * i, 9)),
      );
    }
  });
});

test("each page says how it is printed, of several how they join, and what is drilled already", () => {
  const [pair, one] = NECK.markers;
  const markers = [{ ...pair, drilled: true as const, depth: 2 }, one] as Design["markers"];
  const pages = drawTemplate(checkDesign({ ...NECK, markers }), { paper: "a4" }).map(read);
  expect(pages.length).toBeGreaterThan(1);
  for (const page of pages) {
    const words = textsIn(page).map((text) => text.words);
    expect(
      words.filter((text) =>
        /^1 : 1, seen from above. Print at 100 %.* Lay the ringed crosses/.test(text),
      ),
    ).toHaveLength(1);
    // of the lines across the board the nut and the frets have names on it, the end has none
    expect(words).not.toContain("end");
    for (const text of words.filter((text) => / fret \d+/.test(text))) {
      expect(text).toMatch(
        / fret 12/.test(text) ? /^\d+ fret 12, (bass|treble)$/ : / \(drilled\)$/,
      );
    }
  }
  const short = { ...NECK, scale: { positions: [50, 90] }, markers: [{ frets: [2], diameter: 6 }] };
  const alone = drawTemplate(checkDesign({ ...short, board: { ...NECK.board, length: 120 } }), {
    paper: "a4",
  });
  expect(alone).toHaveLength(1);
  expect(textsIn(read(alone[0] ?? "")).map(({ words }) => words)).toContainEqual(
    expect.stringMatching(/^1 : 1, seen from above. Print at 100 %(?!.*Lay the ringed)/),
  );
});

// 160 from rim to rim would leave no room for names
test("a board that is too wide for the paper, and another paper, are refused", () => {
  const wide = checkDesign({
    ...NECK,
    board: { ...NECK.board, width: 160 },
    radius: "flat",
  });
  expect(() => drawTemplate(wide, { paper: "a4" })).toThrow(
    /^paper: expected paper for a board \d+ mm wide at most, with its markers; this one is 160 wide, received "a4"$/,
  );
  for (const options of [{ paper: "a3" }, {}, undefined, { paper: "constructor" }]) {
    const draw = () => drawTemplate(reportOf("plain"), options as never);
    expect(draw).toThrow(RangeError);
    expect(draw).toThrow(/^paper: expected "a4" or "letter", received /);
  }
});

test("a pocket that is longer than pages need overlap is whole on some page", () => {
  const places = Array.from({ length: 9 }, (_, i) => ({ along: 30 + 50 * i, offset: 0 }));
  const shape = { kind: "rectangle", length: 60, width: 4 } as const;
  const markers = [{ places, shape, bit: { kind: "end-mill" } as const }];
  const report = checkDesign({ ...NECK, markers });
  const pages = drawTemplate(report, { paper: "a4" }).map(read);
  for (const hole of report.holes) {
    expect(pages.some((page) => shows(page, hole, originOf(page, report)))).toBe(true);
  }
});

test("any neck: all of its holes are on the pages, or its board is refused as too wide", () => {
  let drawn = 0;
  const property = fc.property(anyReport, (report) => {
    let pages: Drawing[];
    try {
      pages = drawTemplate(report, { paper: "letter" }).map(read);
    } catch (error) {
      expect(String(error)).toMatch(/^RangeError: paper: expected paper for a board/);
      return;
    }
    const origins = originsOf(pages, report);
    for (const hole of report.holes) {
      const isShown = pages.some((page, i) => shows(page, hole, origins[i] ?? [NaN, NaN]));
      expect(isShown, hole.path).toBe(true);
    }
    drawn++;
  });
  fc.assert(property, { numRuns: 40, verbose: fc.VerbosityLevel.None });
  expect(drawn).toBeGreaterThan(20);
});
