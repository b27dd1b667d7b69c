/** The example necks: what docs/examples/README.md tells of each is what the check finds. */
import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { checkDesign, type Design, type Hole, type Report } from "../../src/index.js";
import { fileText } from "./blocks.js";

const FILES = readdirSync(new URL("../../docs/examples/", import.meta.url)).filter((name) =>
  name.endsWith(".json"),
);
const designOf = (neck: string): Design => JSON.parse(fileText(`docs/examples/${neck}.json`));

/** The holes that govern the one setting: which sets the least, and which the most. */
function governing({ holes, stops: { common } }: Report): readonly [Hole, Hole] {
  const [least, most] = [common?.minHole, common?.maxHole].map((i) => holes[i ?? -1]);
  if (least === undefined || most === undefined) throw new Error("no common travel");
  return [least, most];
}

describe.each(FILES)("%s", (file) => {
  const neck = file.replace(".json", "");
  const report = checkDesign(designOf(neck));

  test("says that it is invented, has its story, and no error", () => {
    expect(report.name).toMatch(/^[A-Z][a-z]+ .*\(invented example\)$/);
    expect(fileText("docs/examples/README.md")).toContain(`## ${report.name?.split(" (")[0]}\n`);
    expect(report.ok).toBe(true);
  });

  test("says how its stop is zeroed, and the length of its point", () => {
    expect(report.findings.filter(({ code }) => code.startsWith("assumed-"))).toEqual([]);
    expect(Object.keys(report.assumed).filter((path) => path.includes("stop.from"))).toEqual([]);
  });

  test("takes one setting, and the thin tapered one two", () => {
    expect(report.stops.settings).toHaveLength(neck === "wren-tenor" ? 2 : 1);
  });
});

test("Acacia: the twelfth sets the least, a single dot over the channel the most", () => {
  const [least, most] = governing(checkDesign(designOf("acacia-22")));
  expect([least.fret, most.side, most.window.maxBy]).toEqual([12, "centre", "channel"]);
});

test("Alder: the twenty-fourth governs, and one step of the stop lies in the window", () => {
  const report = checkDesign(designOf("alder-24"));
  const { min = NaN, max = NaN } = report.stops.common ?? {};
  expect(governing(report)[0].fret).toBe(24);
  expect([
    Math.floor(max / 0.1 + 1e-9) - Math.ceil(min / 0.1 - 1e-9) + 1,
    max - min < 0.06,
  ]).toEqual([1, true]);
});

test("Finch: every old dot outlasts the new radius; 0.8 mm of sanding just reaches it", () => {
  const design = designOf("finch-20");
  const old = checkDesign(design).holes.filter(({ drilled }) => drilled);
  expect(old).toHaveLength(8);
  for (const { planned } of old) expect(planned?.markerLeft).toBeGreaterThanOrEqual(0.5);
  const reaches = (sanding: number) => checkDesign({ ...design, sanding }).ok;
  expect([0.79, 0.8].map(reaches)).toEqual([false, true]);
});

test("Siskin: the last dot sets the least, the pair over the rod the most", () => {
  const [least, most] = governing(checkDesign(designOf("siskin-21")));
  expect([least.fret, most.fret, most.window.maxBy]).toEqual([21, 12, "channel"]);
});

test("Wren: zeroed once, no depth suits the pair, and the same wood is left under every tip", () => {
  const { findings, holes } = checkDesign({
    ...designOf("wren-tenor"),
    stop: { from: "table", zero: 0 },
  });
  expect(findings.map(({ code, fret }) => [code, fret])).toEqual([
    ["no-depth", 12],
    ["no-depth", 12],
  ]);
  const wood = holes.flatMap(({ recommended }) => recommended?.woodLeft ?? []);
  expect(wood).toHaveLength(4);
  for (const left of wood) expect(left).toBeCloseTo(wood[0] ?? NaN, 9);
});
