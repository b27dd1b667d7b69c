/** Words that cards, drawings and the command share, and the cautions by what the work is. */
import { describe, expect, test } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { cautionsFor, LEAST_BATCH } from "../../src/report/cautions.js";
import { didYouMean, nearestName, quoted } from "../../src/text/nearest-name.js";
import {
  holeName,
  holeNames,
  listNames,
  settingLetter,
  stationName,
  visible,
} from "../../src/text/plain-words.js";
import { PLAIN } from "./necks.js";

describe("names", () => {
  test("of holes: by fret, side, or end; those alike by their number too", () => {
    expect(holeName({ fret: 12, side: "centre" })).toBe("fret 12");
    expect(holeName({ fret: 12, side: "bass", path: "markers.1.frets.0.bass" })).toBe(
      "fret 12, bass",
    );
    const pair = ["nut", "end"].map((end) => ({
      fret: 5,
      side: "centre",
      path: `markers.0.frets.1.${end}`,
    }));
    expect(pair.map(holeName)).toEqual(["fret 5, nut side", "fret 5, body side"]);
    const three = [1, 2, 2].map((fret) => ({ fret, side: "centre" }));
    expect(holeNames(three)).toEqual(["fret 1", "fret 2 (hole 2)", "fret 2 (hole 3)"]);
  });

  test("in a row", () => {
    expect(listNames(["fret 3"])).toBe("fret 3");
    expect(listNames(["fret 3", "fret 5, nut side", "fret 12, bass"])).toBe(
      "frets 3, 5 nut side and 12 bass",
    );
    expect(listNames(["nut", "fret 1"])).toBe("nut and fret 1");
  });

  test("of stations and settings; a near one for one misspelt", () => {
    expect(["nut", "fret12", "end"].map(stationName)).toEqual(["nut", "fret 12", "end"]);
    expect([0, 25, 26].map(settingLetter)).toEqual(["A", "Z", "27"]);
    expect(nearestName("radus", ["width", "radius"])).toBe("radius");
    const long = "a".repeat(40);
    expect([nearestName(long, [long]), nearestName(`${long}a`, [`${long}a`])]).toEqual([
      long,
      undefined,
    ]);
    expect([didYouMean(undefined), didYouMean("x")]).toEqual(["", '; did you mean "x"?']);
    expect([quoted(["a"]), quoted(["a", "b", "c"], "or")]).toEqual(['"a"', '"a", "b" or "c"']);
  });

  test("what could steer a terminal is shown, a new line stays", () => {
    expect(visible("a\u001b[31mb\nc\u0007\u0085é指")).toBe("a\ufffd[31mb\nc\ufffd\ufffdé指");
  });
});

describe("cautions", () => {
  /** A word that each one has alone. */
  const TOPICS = {
    press: "Drill press",
    twist: "twist bit",
    router: "Router",
    saw: "Sawing slots",
    edge: "Drilling the edge",
    shell: "Dust of shell",
    glue: "Glue under",
    wet: "Uncured epoxy",
    cured: "cured through",
    flame: "flame",
    batch: "batch this small",
  };
  const topicsOf = (cautions: readonly string[]) =>
    Object.entries(TOPICS).flatMap(([topic, word]) =>
      cautions.some((said) => said.includes(word)) ? [topic] : [],
    );
  const about = (markers: Design["markers"], rest: Partial<Design> = {}) =>
    topicsOf(checkDesign({ ...PLAIN, markers, ...rest }).cautions);
  const dot = { frets: [3], diameter: 4 };
  const solid = { kind: "solid", thickness: 2 } as const;

  test("local codes and wood dust whatever the work", () => {
    const { cautions } = checkDesign({ ...PLAIN, markers: [] });
    expect(cautions).toHaveLength(2);
    expect(cautions[0]).toMatch(/local codes or licensed practice/);
    expect(cautions[1]).toMatch(/Wood dust/);
  });

  test("by what is drilled, routed, filled, and what is in the board already", () => {
    expect(about([dot])).toEqual(["press", "wet", "cured", "flame", "batch"]);
    expect(about([{ ...dot, fill: solid }])).toEqual(["press", "shell", "glue"]);
    expect(about([{ ...dot, bit: { kind: "twist" }, fill: solid }])).toContain("twist");
    const pocket = { frets: [3], shape: { kind: "rectangle", length: 4, width: 9 } } as const;
    expect(about([{ ...pocket, fill: solid }])).toEqual(["router", "shell", "glue"]);
    expect(about([{ ...dot, bit: { kind: "end-mill" }, fill: solid }])).toContain("router");
    const old = { ...dot, drilled: true, depth: 2 } as const;
    expect(about([old])).toEqual(["cured"]);
    expect(about([{ ...old, fill: solid }])).toEqual(["shell"]);
  });

  test("by slots, side dots, and how little is mixed", () => {
    expect(about([], { slot: { tang: 1.7 } })).toEqual(["saw"]);
    expect(about([], { sideDots: { diameter: 2 } })).toEqual(["edge"]);
    const groups = [
      { fill: { kind: "poured", keep: 1 }, bit: { kind: "end-mill" }, drilled: false },
    ] as const;
    expect(topicsOf(cautionsFor({ groups }, LEAST_BATCH))).not.toContain("batch");
    expect(topicsOf(cautionsFor({ groups }, LEAST_BATCH - 0.01))).toContain("batch");
  });

  test("each names its source, or says that it has none", () => {
    const sources = /OSHA|HSE|Eur Respir J|common practice, no source/;
    const all = checkDesign({
      ...PLAIN,
      slot: { tang: 1.7 },
      sideDots: { diameter: 2 },
    }).cautions.slice(1);
    for (const caution of all) expect(caution).toMatch(sources);
  });
});
