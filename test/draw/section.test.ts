/** The section: what is drawn lies where the geometry says, read back at the scale that the picture states. */
import { describe, expect, test } from "vitest";
import { drawSection } from "../../src/draw/index.js";
import { type Bit, checkDesign, type Design, type Report } from "../../src/index.js";
import { gallery, NECK, reportOf } from "./gallery.js";
import { classed, type Drawing, linesIn, read, type Spot, spotsIn, textsIn } from "./svg.js";

/** mm on paper for each mm of the board, as the picture says. */
function scalesIn(drawing: Drawing): { across: number; upright: number } {
  const words = textsIn(drawing)
    .map((text) => text.words)
    .join("\n");
  const [, up = "", over = ""] = /Scale (\d+(?:\.\d+)?) : (\d+(?:\.\d+)?)/.exec(words) ?? [];
  const [, times = "1"] = /Vertical scale ×([\d.]+)\./.exec(words) ?? [];
  const across = Number(up) / Number(over);
  return { across, upright: across * Number(times) };
}

/** The spots of a path of one class, in mm of the board: offset, depth. */
function placesIn(svg: string, name: string): Spot[] {
  const drawing = read(svg);
  const { across, upright } = scalesIn(drawing);
  const spots = spotsIn(drawing, name);
  expect(spots.length).toBeGreaterThan(1);
  return spots.map(([x, y]) => [x / across, y / upright]);
}

const depthsIn = (svg: string, name: string) => placesIn(svg, name).map(([, depth]) => depth);
const wordsIn = (svg: string) => textsIn(read(svg)).map(({ words }) => words);
const findHole = (report: Report, fret: number, side = "centre") =>
  report.holes.findIndex((hole) => hole.fret === fret && hole.side === side);

const EXACT = { stop: 0, point: 0, layout: 0, thickness: 0, sanding: 0, crest: 0, fill: 0 };

/** A parallel board with one dot on the centre line, without tolerances, nothing off along the centre line. */
function plank(width: number, radius: number, thickness: number, more: object = {}): Report {
  return checkDesign({
    scale: { length: 600, frets: 12 },
    board: { length: 320, width, thickness },
    radius,
    sanding: 0,
    tolerance: EXACT,
    markers: [{ frets: [5], diameter: 2 }],
    ...more,
  } as Design);
}

describe("the finished arc", () => {
  // Machinery's Handbook, 31st ed., p. 79 (seen): chord 16, h = 6: r = 8 1/3
  test("chord 16, height 6: radius 8 1/3", () => {
    const svg = drawSection(plank(16, 8 + 1 / 3, 8), 0);
    const arc = placesIn(svg, "finished");
    expect(arc[0]?.[0]).toBeCloseTo(-8, 3);
    expect(arc[0]?.[1]).toBeCloseTo(6, 3);
    expect(arc.at(-1)?.[1]).toBeCloseTo(6, 3);
    expect(Math.min(...arc.map(([, depth]) => depth))).toBeCloseTo(0, 3);
    // what is left at the edges of a blank 8 thick, its width, its radius
    for (const words of ["2.00", "16.00", "R 8.33"]) expect(wordsIn(svg)).toContain(words);
  });

  // intersecting chords: x² = h(2R − h)
  test.each([1, 4, 9])("a circle, heights ×%d", (exaggeration) => {
    const arc = placesIn(drawSection(plank(50, 254, 6), 0, { exaggeration }), "finished");
    expect(arc.length).toBeGreaterThan(40);
    for (const [x, h] of arc) expect(h * (2 * 254 - h)).toBeCloseTo(x * x, 0);
  });

  test("a flat board", () => {
    const svg = drawSection(reportOf("flat"), 0);
    expect(new Set(depthsIn(svg, "finished"))).toEqual(new Set([0]));
    expect(wordsIn(svg)).toContain("flat");
  });

  // a cone: (1 + K)h² − 2Rh + x² = 0, K = −m², R linear between its stations
  test("a compound radius is drawn as the circle there, which differs by nothing that a drawing shows", () => {
    const report = plank(60, 0, 12, { radius: { nut: 100, end: 260 } });
    const m = (260 - 100) / 320;
    const radius = 100 + m * (report.holes[0]?.along ?? 0);
    for (const [x, h] of placesIn(drawSection(report, 0), "finished")) {
      const cone = (x * x) / (radius + Math.sqrt(radius * radius - (1 - m * m) * x * x));
      expect(Math.abs(h - cone)).toBeLessThan(0.025);
    }
  });
});

describe("the top as it is", () => {
  // the sagitta of 184 at 26: 184 − √(184² − 26²) = 1.846
  test("an old radius is found in the report, and shown above the new one", () => {
    const report = plank(52, 305, 8, { existing: { radius: 184 }, sanding: 0.8 });
    const svg = drawSection(report, 0);
    const edge = 184 - Math.sqrt(184 * 184 - 26 * 26);
    const top = placesIn(svg, "blank").slice(1, -1);
    expect(top[0]?.[0]).toBeCloseTo(-26, 3);
    expect(top[0]?.[1]).toBeCloseTo(edge, 2);
    expect(Math.min(...top.map(([, depth]) => depth))).toBeCloseTo(0, 3);
    expect(wordsIn(svg)).toContain("0.00 crest of the top");
  });

  test("a hole's depths count from the top there", () => {
    const markers = [{ frets: [5], diameter: 4, arrangement: "double", spread: 30 }];
    const report = plank(52, 305, 8, {
      existing: { radius: 184 },
      sanding: 0.8,
      markers,
      depth: 2,
    });
    const svg = drawSection(report, 0);
    const start = 184 - Math.sqrt(184 * 184 - 15 * 15);
    expect(placesIn(svg, "bit")[0]?.[1]).toBeCloseTo(start, 2);
    // a Forstner's point of 1 (the default)
    expect(Math.max(...depthsIn(svg, "bit"))).toBeCloseTo(start + 2 + 1, 2);
  });

  test("a blank is flat", () => {
    const svg = drawSection(reportOf("plain"), 0);
    expect(Math.min(...depthsIn(svg, "blank"))).toBe(0);
    expect(placesIn(svg, "blank")).toHaveLength(4);
    expect(wordsIn(svg)).toContain("0.00 flat top");
  });
});

describe("the hole", () => {
  // handbook table (memory): a 118° point is .3004 of its diameter high
  test("a twist bit's cone", () => {
    const report = reportOf("twist bit");
    const svg = drawSection(report, findHole(report, 3));
    expect(Math.max(...depthsIn(svg, "bit"))).toBeCloseTo(2.9 + 0.3004 * 7, 3);
    expect(Math.max(...placesIn(svg, "bit").map(([x]) => x))).toBeCloseTo(3.5, 3);
    expect(wordsIn(svg)).toContain("Ø 7.00");
  });

  const withBit = (bit: Bit) =>
    drawSection(plank(40, 300, 9, { bit, depth: 3, markers: [{ frets: [5], diameter: 8 }] }), 0);
  const floorAt = (svg: string, from: number, to: number) => {
    const within = placesIn(svg, "bit").filter(([x]) => Math.abs(x) >= from && Math.abs(x) <= to);
    return Math.max(...within.map(([, depth]) => depth));
  };

  test("a Forstner's point on its axis, its rim at the wall, its floor between", () => {
    const svg = withBit({ kind: "forstner", point: 1.2, spur: 0.4 });
    expect(floorAt(svg, 0, 0.1)).toBeCloseTo(4.2, 3);
    expect(floorAt(svg, 3.99, 4.01)).toBeCloseTo(3.4, 3);
    expect(floorAt(svg, 0.5, 3.6)).toBeCloseTo(3, 3);
  });

  test("an end mill's floor is level", () => {
    expect(new Set(depthsIn(withBit({ kind: "end-mill" }), "bit"))).toEqual(new Set([0, 3]));
  });

  test("it goes down to the planned depth, else to its setting's, else to the least", () => {
    const deepest = (report: Report, i: number) => {
      const bit = report.holes[i]?.lead ?? Number.NaN;
      return Math.max(...depthsIn(drawSection(report, i), "bit")) - bit;
    };
    expect(deepest(reportOf("plain"), 0)).toBeCloseTo(2.4, 3);
    const served = reportOf("zeroed on the table");
    served.holes.forEach((hole, i) => {
      expect(deepest(served, i)).toBeCloseTo(hole.recommended?.depth ?? Number.NaN, 2);
    });
    const none = reportOf("no window");
    expect(deepest(none, 0)).toBeCloseTo(none.holes[0]?.window.min ?? Number.NaN, 3);
    expect(wordsIn(drawSection(none, 0))).toContain(
      "Drawn to the least depth, as no setting serves this hole.",
    );
  });

  test("a double shows both dots where the cut goes through both, else one", () => {
    const count = (report: Report, i: number) =>
      classed(read(drawSection(report, i)), "marker").length;
    const plain = reportOf("plain");
    expect([count(plain, findHole(plain, 12, "bass")), count(plain, 0)]).toEqual([2, 1]);
    // fanned: the other is cut beside its middle, a chord 2√(r² − d²)
    const fan = reportOf("fanned");
    const i = findHole(fan, 12, "bass");
    const [bass, treble] = [fan.holes[i], fan.holes[findHole(fan, 12, "treble")]];
    const apart = (treble?.along ?? 0) - (bass?.along ?? 0);
    const svg = drawSection(fan, i);
    const widths = classed(read(svg), "bit").map(({ attributes }) => {
      const xs = (attributes.d ?? "")
        .split(/[ML]/)
        .flatMap((spot) => (spot ? [Number(spot.split(" ")[0])] : []));
      return (Math.max(...xs) - Math.min(...xs)) / scalesIn(read(svg)).across;
    });
    const chord = 2 * Math.sqrt(9 - apart * apart);
    expect(Math.abs(apart)).toBeGreaterThan(0.1);
    expect(widths.sort((a, b) => a - b)).toEqual([expect.closeTo(chord, 2), expect.closeTo(6, 2)]);
  });

  test("a poured filling runs from the surface to the tip, a solid one from where it is glued to the floor", () => {
    const markers = [{ frets: [5], diameter: 8 }];
    const ends = (more: object) => {
      const depths = depthsIn(
        drawSection(plank(40, 300, 9, { markers, depth: 3, ...more }), 0),
        "marker",
      );
      return [Math.min(...depths), Math.max(...depths)];
    };
    expect(ends({ bit: { kind: "twist", angle: 90 } })).toEqual([0, expect.closeTo(3 + 4, 3)]);
    expect(ends({ fill: { kind: "solid", thickness: 1.5 } })).toEqual([1.5, 3]);
    // proud of the board: sanded level with it
    expect(ends({ fill: { kind: "solid", thickness: 5 } })).toEqual([0, 3]);
  });

  test("past the edge nothing fills it", () => {
    const markers = [{ places: [{ along: 100, offset: 24 }], diameter: 4 }];
    const svg = drawSection(plank(40, 300, 9, { markers }), 0);
    expect(classed(read(svg), "marker")).toEqual([]);
    expect(classed(read(svg), "bit")).toHaveLength(1);
  });
});

test("walls are upright, and the radius' arrow touches the arc", () => {
  const svg = drawSection(reportOf("plain"), 0);
  const board = placesIn(svg, "board").filter(([, depth]) => depth < 5);
  for (const wall of [-6.35 / 2, 6.35 / 2]) {
    const depths = board.filter(([x]) => Math.abs(x - wall) < 0.001).map(([, depth]) => depth);
    expect(Math.max(...depths) - Math.min(...depths)).toBeCloseTo(2.4 + 0.5 - 0.17, 1);
  }
  const arrows = linesIn(read(svg)).filter(
    ({ pen, from, to }) => pen === "solid" && from[0] !== to[0],
  );
  const arc = spotsIn(read(svg), "finished");
  const gaps = arrows.flatMap(({ from }) =>
    arc.map((spot) => Math.hypot(spot[0] - from[0], spot[1] - from[1])),
  );
  expect(Math.min(...gaps)).toBeLessThan(0.5);
});

describe("the wood below", () => {
  test("is cut off at the underside, which the bit may pass", () => {
    const svg = drawSection(reportOf("breaks through"), 0);
    expect(Math.max(...depthsIn(svg, "board"))).toBeCloseTo(4, 3);
    expect(Math.max(...depthsIn(svg, "bit"))).toBeCloseTo(5.5, 3);
  });

  test("of a neck, and the channel through it, where a report tells of them", () => {
    const report = reportOf("on a neck, under an old radius");
    const svg = drawSection(report, 0);
    const board = placesIn(svg, "board");
    expect(Math.max(...board.map(([, depth]) => depth))).toBeCloseTo(18, 3);
    const roof = board.filter(([x, depth]) => Math.abs(x) < 2.9 && depth > 4);
    expect(new Set(roof.map(([, depth]) => depth))).toEqual(new Set([5]));
    for (const words of [
      "5.00 roof of the channel",
      "6.00 underside of the board",
      "18.00 underside of the neck",
    ]) {
      expect(wordsIn(svg)).toContain(words);
    }
    expect(wordsIn(drawSection(reportOf("plain"), 0))).toContain("6.00 underside");
  });
});

describe.each(gallery.filter(({ report }) => report.holes.length > 0))("$name", ({ report }) => {
  test("says what the report says, each label at its depth", () => {
    report.holes.slice(0, 5).forEach((hole, i) => {
      const svg = drawSection(report, i);
      const words = wordsIn(svg);
      const says = (value: number | undefined, after: string) => {
        if (value === undefined) return;
        const label = words.find((other) => other.endsWith(after) || other.includes(after));
        expect(Number(label?.split(" ")[0]?.replace("−", "-")), `${after} ${label}`).toBeCloseTo(
          value,
          1.7,
        );
      };
      says(hole.window.min, " least depth");
      says(hole.window.max, " most depth");
      says(hole.removal.outer, " removed at the outer wall");
      says(hole.thickness, " underside");
      says(hole.planned?.depth, hole.drilled ? " drilled" : " planned depth");
      says(hole.recommended?.depth, "setting");
      const { travel } = hole.recommended ?? {};
      if (travel !== undefined) expect(words.join("\n")).toContain(`travel ${travel.toFixed(2)}`);
      const { walls } = wallsIn(svg);
      if (!hole.outline) expect(walls).toBeCloseTo(hole.diameter ?? Number.NaN, 2);
    });
  });
});

/** The width between the extension lines of the dimension above the board. */
function wallsIn(svg: string): { walls: number } {
  const drawing = read(svg);
  const label = textsIn(drawing).find(({ words }) => words.startsWith("Ø "));
  const upright = linesIn(drawing).filter(
    ({ pen, from, to }) => pen === "narrow" && from[0] === to[0],
  );
  const high = Math.min(...upright.map(({ to }) => to[1]));
  const xs = upright.filter(({ to }) => to[1] === high).map(({ to }) => to[0]);
  expect(label === undefined || Number(label.words.slice(2)) > 0).toBe(true);
  return { walls: (Math.max(...xs) - Math.min(...xs)) / scalesIn(drawing).across };
}

test("heights are four times as large as widths unless asked for otherwise", () => {
  const report = reportOf("plain");
  expect(scalesIn(read(drawSection(report, 0)))).toEqual({ across: 2.5, upright: 10 });
  expect(scalesIn(read(drawSection(report, 0, { exaggeration: 1 })))).toEqual({
    across: 2.5,
    upright: 2.5,
  });
  expect(drawSection(report, 0, { exaggeration: 4 })).toBe(drawSection(report, 0));
});

test.each([0.99, 0, -4, 100.5, Number.NaN, Infinity])("×%d is refused", (exaggeration) => {
  expect(() => drawSection(reportOf("plain"), 0, { exaggeration })).toThrow(
    /^exaggeration: expected a number from 1 to 100, received /,
  );
});

test.each([-1, 10, 0.5, Number.NaN])("there is no hole %d", (index) => {
  const draw = () => drawSection(checkDesign(NECK), index);
  expect(draw).toThrow(RangeError);
  expect(draw).toThrow(/^holeIndex: expected an index into the report's 10 holes, received /);
});

// a keep of 1 on a flat board without tolerances; 1.004 would read as 1.00 as well
test("a planned depth and the limit beside it never read alike", () => {
  const fill = { kind: "poured", keep: 1 };
  const svg = drawSection(plank(40, Infinity, 8, { fill, depth: 1.004 }), 0);
  const told = (what: RegExp) =>
    wordsIn(svg)
      .find((words) => what.test(words))
      ?.split(" ")[0];
  expect(told(/least depth$/)).toBe("1.000");
  expect(told(/planned depth/)).toBe("1.00");
});
