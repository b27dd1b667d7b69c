/** Words that cards, drawings and the command share. */
import { expect, test } from "vitest";
import { prepare } from "../../src/drilling/neck.js";
import type { Design } from "../../src/index.js";
import { cautionsFor } from "../../src/report/cautions.js";
import { nearestName } from "../../src/text/nearest-name.js";
import { holeName, settingLetter, stationName, visible } from "../../src/text/plain-words.js";
import { SQUARED } from "./necks.js";

test("a hole is called by its fret, and by its side where it has one", () => {
  expect(holeName({ fret: 12, side: "centre" })).toBe("fret 12");
  expect(holeName({ fret: 12, side: "bass" })).toBe("fret 12, bass");
});

test("a station is called by its fret", () => {
  expect(["nut", "fret1", "fret12", "end"].map(stationName)).toEqual([
    "nut",
    "fret 1",
    "fret 12",
    "end",
  ]);
});

test("settings are told apart by letters, and by numbers where these do not suffice", () => {
  expect([0, 1, 25, 26, 27].map(settingLetter)).toEqual(["A", "B", "Z", "27", "28"]);
});

test("what could steer a terminal is shown, a new line stays", () => {
  expect(visible("a\u001b[31mb\nc\u0007\u0085é指")).toBe("a\ufffd[31mb\nc\ufffd\ufffdé指");
});

test("cautions by what is used anywhere, and by how little is mixed", () => {
  const about = (markers: Design["markers"], volume?: number) => {
    const said = cautionsFor(prepare({ ...SQUARED, markers }).spec, volume).join("\n");
    const topics = {
      press: "Drill press",
      twist: "wist",
      epoxy: "Uncured epoxy",
      shell: "shell",
      batch: "batch",
    };
    return Object.entries(topics).flatMap(([topic, word]) => (said.includes(word) ? [topic] : []));
  };
  const [poured, solid, twist] = [
    { frets: [2], diameter: 4 },
    { frets: [3], diameter: 4, fill: { kind: "solid", thickness: 2 } },
    { frets: [4], diameter: 4, bit: { kind: "twist" } },
  ] as const;
  expect(about([])).toEqual([]);
  expect(about([poured])).toEqual(["press", "epoxy"]);
  expect(about([solid])).toEqual(["press", "shell"]);
  expect(about([poured, solid, twist])).toEqual(["press", "twist", "epoxy", "shell"]);
  expect(about([poured], 10)).toEqual(["press", "epoxy"]);
  expect(about([poured], 9.99)).toEqual(["press", "epoxy", "batch"]);
});

test("a near name is looked for among names of up to 40 letters", () => {
  const long = "a".repeat(40);
  expect(nearestName(long, [long])).toBe(long);
  expect(nearestName(`${long}a`, [`${long}a`])).toBeUndefined();
});
