/** The sweep: each cell says what the check says of the design whose numbers stand at its row and column. */
import { describe, expect, test } from "vitest";
import { drawSweep } from "../../src/draw/index.js";
import { checkDesign, DesignError, type Sweep, sweep } from "../../src/index.js";
import { PLAIN } from "../check/necks.js";
import {
  classed,
  type Drawing,
  linesOf,
  paperOf,
  read,
  runsOf,
  textsOf,
  writingOf,
} from "./svg.js";
import { sweeps } from "./sweeps.js";

type Spot = readonly [number, number];

/** What stands in a cell and where. */
interface Seen {
  readonly says: string;
  readonly at: Spot;
}

const VERDICTS = ["one", "several", "none", "unread"];

/** Every cell that says something, by its mark's middle. */
function cellsOf(drawing: Drawing): Seen[] {
  return VERDICTS.flatMap((says) =>
    classed(drawing, "cell")
      .filter(({ attributes }) => attributes.class === `cell ${says}`)
      .map(({ tag, attributes: { cx, cy, x, y, d } }) => {
        if (tag === "circle") return { says, at: [Number(cx), Number(cy)] as const };
        // a figure's base line lies below its middle
        if (tag === "text") return { says, at: [Number(x), Number(y) - 1.26] as const };
        return { says, at: middleOf(runsOf(d ?? "").flat()) };
      }),
  );
}

function middleOf(spots: readonly Spot[]): Spot {
  const [xs, ys] = [0, 1].map((k) => spots.map((spot) => spot[k] ?? Number.NaN));
  const middle = (all: number[] = []) => (Math.min(...all) + Math.max(...all)) / 2;
  return [middle(xs), middle(ys)];
}

function frameOf(drawing: Drawing) {
  const corners = runsOf(classed(drawing, "frame")[0]?.attributes.d ?? "").flat();
  const [xs, ys] = [0, 1].map((k) => corners.map((corner) => corner[k] ?? Number.NaN));
  return { width: Math.max(...(xs ?? [])), height: Math.max(...(ys ?? [])) };
}

/** What the full check says of a design with these numbers, without a look at the sweep's columns. */
function saidOf(sweep: Sweep, i: number): string {
  try {
    const { stops, holes } = checkDesign(sweep.at(i));
    if (holes.length === 0) return "unread";
    if (holes.some(({ window }) => window.min > window.max)) return "none";
    return stops.settings.length === 1 ? "one" : "several";
  } catch (error) {
    if (error instanceof DesignError) return "unread";
    throw error;
  }
}

describe.each(sweeps)("$name", ({ sweep, options = {} }) => {
  // drawn in each test: what is worked out while the tests are gathered meets no mutant
  const drawn = () => {
    const drawing = read(drawSweep(sweep, options));
    return { drawing, ...frameOf(drawing) };
  };
  const [first, second] = sweep.axes.map(({ path }) => path);
  const [xPath, yPath] = [options.x ?? first, options.y ?? second];
  const rising = (path: string | undefined) => {
    const values = sweep.axes.find((axis) => axis.path === path)?.values ?? [0];
    return [...values].sort((a, b) => (a < b ? -1 : 1));
  };
  const [xs, ys] = [rising(xPath), rising(yPath)];

  test("each combination has its cell, and it says what the check says", () => {
    const { drawing, width, height } = drawn();
    const seen = new Map<string, string>();
    for (const { says, at } of cellsOf(drawing)) {
      const column = Math.floor((at[0] / width) * xs.length);
      const row = Math.floor((1 - at[1] / height) * ys.length);
      seen.set(`${xs[column]} ${yPath ? ys[row] : ""}`, says);
    }
    let compared = 0;
    const step = sweep.size > 2000 ? 37 : 1;
    for (let i = 0; i < sweep.size; i += step) {
      const values = sweep.valuesAt(i);
      const valueAt = (path: string) => values[sweep.axes.findIndex((axis) => axis.path === path)];
      const isHeld = sweep.axes.every(({ path, values: all }, axis) => {
        if (path === xPath || path === yPath) return true;
        const held = Object.entries(options.held ?? {}).find(([name]) => name === path)?.[1] ?? 0;
        return all[held] === values[axis];
      });
      if (!isHeld) continue;
      const key = `${valueAt(xPath ?? "")} ${yPath ? valueAt(yPath) : ""}`;
      expect(seen.get(key), key).toBe(saidOf(sweep, i));
      compared++;
    }
    const whole = xs.length * ys.length;
    if (sweep.size > 2000) expect(compared).toBeGreaterThan(200);
    else expect([whole, sweep.size]).toContain(compared);
    if (sweep.size <= 2000) expect(seen.size).toBe(compared);
  });

  test("the wide line goes around the cells where one setting does, and around no other", () => {
    const { drawing, width, height } = drawn();
    const cells = cellsOf(drawing);
    const at = (x: number, y: number) =>
      cells.some(({ says, at: [cx, cy] }) => {
        return says === "one" && Math.abs(cx - x) < 0.01 && Math.abs(cy - y) < 0.01;
      });
    const [w, h] = [width / xs.length, height / ys.length];
    const sides = linesOf(drawing).filter(({ name }) => name === "frontier");
    if (xs.length * ys.length > 2000) return expect(sides.length).toBeGreaterThan(20);
    let length = 0;
    for (const { from, to } of sides) length += Math.hypot(to[0] - from[0], to[1] - from[1]);
    // the sum over all borders between neighbours that differ
    let border = 0;
    for (let column = -1; column <= xs.length; column++) {
      for (let row = -1; row <= ys.length; row++) {
        const [x, y] = [(column + 0.5) * w, (row + 0.5) * h];
        if (at(x, y) !== at(x + w, y)) border += h;
        if (at(x, y) !== at(x, y + h)) border += w;
      }
    }
    expect(length).toBeCloseTo(border, 1);
  });

  test("a figure says how many settings are needed", () => {
    const { drawing } = drawn();
    const figures = textsOf(drawing).filter(({ words }) => /^\d$/.test(words));
    const shown = classed(drawing, "several").filter(({ tag }) => tag === "text");
    for (const { text } of shown) {
      expect(Number(text)).toBeGreaterThan(1);
      expect([...sweep.settings]).toContain(Number(text));
    }
    expect(figures.length).toBeGreaterThanOrEqual(shown.length);
  });
});

describe("the sweeps", () => {
  const drawnAll = () => sweeps.map(({ sweep, options }) => read(drawSweep(sweep, options)));

  test("show every verdict", () => {
    const all = drawnAll();
    for (const verdict of VERDICTS) {
      const count = all.flatMap((drawing) => classed(drawing, verdict)).length;
      expect(count, verdict).toBeGreaterThan(5);
    }
  });

  test("say in words what they count", () => {
    const all = drawnAll();
    const words = all.flatMap((drawing) => textsOf(drawing).map((text) => text.words));
    const counted = words.filter((line) => /^One stop setting suits all holes in/.test(line));
    expect(counted).toHaveLength(sweeps.length);
    all.forEach((drawing, i) => {
      const count = cellsOf(drawing).filter(({ says }) => says === "one").length;
      expect(counted[i]).toContain(` in ${count} of `);
    });
    expect(words).toContain("Held: fill.keep, mm: 0.6 (one of 2 values).");
    expect(words).toContain("bit.angle, degrees");
    expect(words).toContain("tolerance.radius, a fraction");
    expect(words).toContain("flat");
  });

  test("values of an axis stand in rising order, each at its column or row", () => {
    const drawing = read(drawSweep(sweeps[0]?.sweep as Sweep, sweeps[0]?.options));
    const { width, height } = frameOf(drawing);
    const middleOfText = (value: string) => {
      const found = textsOf(drawing).filter(({ words }) => words === value);
      expect(found, value).toHaveLength(1);
      const { left, right, top, bottom } = found[0]?.box ?? paperOf(drawing);
      return [(left + right) / 2, (top + bottom) / 2] as const;
    };
    ["150", "184", "203", "241", "254", "305", "flat"].forEach((value, column) => {
      expect(middleOfText(value)[0]).toBeCloseTo(((column + 0.5) * width) / 7, 2);
    });
    ["2.6", "2.7", "2.8", "2.9", "3", "3.1", "3.2", "3.3"].forEach((value, row) => {
      const y = (1 - (row + 0.5) / 8) * height;
      expect(Math.abs(middleOfText(value)[1] - y)).toBeLessThan(0.5);
    });
  });
});

test("the description tells each row", () => {
  const row = sweeps.find(({ name }) => name === "sweep: one axis");
  const desc = writingOf(drawSweep(row?.sweep as Sweep)).description;
  expect(desc).toBe(
    "One stop setting suits all holes in 2 of 3 combinations. This tells of stop settings alone: a report may find more that is wrong. one setting suits all holes at radius 150 to 254; cannot be made, or has no hole at radius 20.",
  );
});

test("one combination is one", () => {
  const rows = sweep(PLAIN, { radius: [254] });
  const desc = writingOf(drawSweep(rows)).description;
  expect(desc).toMatch(/^One stop setting suits all holes in 1 of 1 combination\. /);
  const part = sweep(PLAIN, { radius: [254, 300] }, { to: 1 });
  const some = writingOf(drawSweep(part)).description;
  expect(some).toMatch(/ in 1 of 1 combination worked out\. /);
});

describe("what does not suit is refused", () => {
  const rows = sweeps[0]?.sweep as Sweep;
  const wrong: readonly (readonly [string, unknown, RegExp])[] = [
    ["an axis that is not there", { x: "crown" }, /^x: expected an axis of the sweep \(radius, /],
    ["one axis twice", { x: "radius", y: "radius" }, /^y: expected another axis than x/],
    ["a held axis that is drawn", { held: { radius: 0 } }, /^held\.radius: expected an axis/],
    ["a held axis that is not there", { held: { crown: 0 } }, /^held\.crown: expected an axis/],
    ["no such value", { held: { "fill.keep": 2 } }, /from 0 to 1, received 2/],
    ["no number", { held: { "fill.keep": Number.NaN } }, /from 0 to 1, received NaN/],
    ["half a place", { held: { "fill.keep": 0.5 } }, /from 0 to 1, received 0.5/],
  ];
  test.each(wrong)("%s", (_, options, message) => {
    expect(() => drawSweep(rows, options as object)).toThrow(RangeError);
    expect(() => drawSweep(rows, options as object)).toThrow(message);
  });

  test("an axis with too many values, and no axis at all", () => {
    const long = { ...rows, axes: [{ path: "radius" as const, values: Array(101).fill(254) }] };
    expect(() => drawSweep(long)).toThrow(/^x: .*100 values at most, received radius with 101$/);
    expect(() => drawSweep({ ...rows, axes: [] })).toThrow(/an axis or more/);
  });
});
