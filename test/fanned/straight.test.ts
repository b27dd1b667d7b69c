/** Two equal scale lengths are one: the whole report is that of the straight board, to 1e-12. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { checkDesign, type Design, fretLines, type Report } from "../../src/index.js";
import { counter, dots, fannedNeck, pockets } from "./fan.js";

const neck = fannedNeck({
  bentEdges: true,
  markers: (frets) => fc.oneof(dots(frets), pockets(frets)),
});

/** A fanned neck, and how a straight one states it. */
const twins = fc
  .tuple(neck, fc.record({ diameter: fc.constant(2), depth: fc.constant(3) }), fc.boolean())
  .map(([design, sideDots, dotted]): [Design, Design] => {
    if (!("bass" in design.scale)) throw new Error("a fanned scale is drawn");
    const { bass, perpendicular, frets } = design.scale;
    const same: Design = dotted ? { ...design, sideDots } : design;
    return [
      { ...same, scale: { bass, treble: bass, perpendicular, frets } },
      { ...same, scale: { length: bass, frets } },
    ];
  });

/** A report as plain data; what stands once for each edge on a fanned board stands once. */
function plain(report: Report): unknown {
  const { edges, findings, ...rest } = report;
  const once = findings.flatMap(
    ({ code, severity, fret, side, station, hole, value, limit, maxBy }) =>
      station !== undefined && side === "treble"
        ? []
        : [
            {
              code,
              severity,
              fret,
              side: station === undefined ? side : undefined,
              station,
              hole,
              value,
              limit,
              maxBy,
            },
          ],
  );
  const both = edges.filter(({ side }) => side !== "treble").map(({ side: _, ...edge }) => edge);
  return { ...rest, edges: both, findings: once, stops: stopsOf(report) };
}

/** The stop plan, with a governing hole told by its window: two holes alike may be named in each other's place. */
function stopsOf({ stops: { common, settings }, holes }: Report): unknown {
  const told = ({ minHole, maxHole, ...plan }: { minHole: number; maxHole: number }) => {
    return { ...plan, minBy: holes[minHole]?.window.min, maxBy: holes[maxHole]?.window.max };
  };
  return { common: common && told(common), settings: settings.map(told) };
}

/** Every number and word of two values, side by side. */
function sameTo(found: unknown, wanted: unknown, path: string, seen: () => void): void {
  if (typeof found === "number" && typeof wanted === "number" && Number.isFinite(wanted)) {
    seen();
    const off = Math.abs(found - wanted) / Math.max(1, Math.abs(wanted));
    if (!(off <= 1e-12)) expect.fail(`${path}: ${found}, not ${wanted}`);
  } else if (typeof wanted === "object" && wanted !== null) {
    const [a, b] = [namedOf(found), namedOf(wanted)];
    expect([...a.keys()], path).toEqual([...b.keys()]);
    for (const [key, value] of b) sameTo(a.get(key), value, `${path}.${key}`, seen);
  } else if (!Object.is(found, wanted)) expect.fail(`${path}: ${found}, not ${wanted}`);
}

function namedOf(value: unknown): Map<string, unknown> {
  return new Map(Object.entries(value ?? {}).sort(([a], [b]) => (a < b ? -1 : 1)));
}

it("equal lengths give the straight board, whatever fret is perpendicular", () => {
  const cases = counter();
  fc.assert(
    fc.property(twins, ([fanned, straight]) => {
      const [found, wanted] = [fanned, straight].map(tried);
      if (wanted === undefined || found === undefined) {
        expect(found === wanted).toBe(true);
        return;
      }
      sameTo(plain(found), plain(wanted), "report", () => cases.add("number"));
      cases.add("neck");
      for (const { code } of found.findings) cases.add(code);
      for (const { outline } of found.holes) cases.add(outline ? "pocket" : "dot");
      // both edges are there, and alike
      for (const side of ["bass", "treble"]) {
        const edges = found.edges.filter((edge) => edge.side === side || edge.station === "end");
        sameTo(
          edges.map(({ side: _, ...edge }) => edge),
          wanted.edges,
          "edges",
          () => cases.add("edge"),
        );
      }
      sameTo(fretLines(fanned), fretLines(straight), "lines", () => cases.add("line"));
    }),
    { numRuns: 150 },
  );
  expect(cases.of("neck")).toBeGreaterThan(100);
  expect(cases.of("number")).toBeGreaterThan(10_000);
  for (const what of ["pocket", "dot", "edge", "line"]) expect(cases.of(what)).toBeGreaterThan(100);
  for (const code of ["no-depth", "near-slot", "slot-too-shallow"]) {
    expect(cases.of(code), code).toBeGreaterThan(10);
  }
});

/** The report; undefined where the design is refused. */
function tried(design: Design): Report | undefined {
  try {
    return checkDesign(design);
  } catch {
    return undefined;
  }
}
