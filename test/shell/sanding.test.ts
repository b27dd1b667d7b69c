/** `--sanding`: how far the sanding has come, as transcripts; what cannot be read, by its line and column. */
import { afterAll, expect, test } from "vitest";
import { sandingNote } from "../../src/card/index.js";
import { sandingProgress } from "../../src/measured/index.js";
import { golden } from "../golden/golden.js";
import { command, folderWith, GOOD, linesOf, removeFolders, shell } from "./command.js";

afterAll(removeFolders);

function dialogue(cwd: string, lines: readonly string[]): string {
  return lines
    .map((line) => {
      const { code, out, err } = shell(`$MD ${line}`, { cwd });
      return `$ marker-depth ${line}\n${out}${err}exit ${code}\n`;
    })
    .join("\n");
}

/** Invented readings of `GOOD`, a board 6 thick: half way; at the end one edge alone. */
const HALF_WAY = [
  { along: "nut", centre: 5.92, bass: 5.31, treble: 5.29 },
  { along: "fret12", centre: "5.93 mm", bass: "0.199 in", treble: 5.05 },
  { along: "18 1/2 in", centre: 5.97, treble: 4.7 },
];
/** Past the finished surface at an edge, and past the markers' keep. */
const PAST = [{ along: 314, centre: 5.7, bass: 2.4, treble: 4.3 }];
const DESIGN = { ...GOOD, depth: 2.6 };
const FILES = {
  "a.json": DESIGN,
  "unnamed.json": { ...DESIGN, name: undefined, markers: [] },
  "half-way.json": HALF_WAY,
  "past.json": PAST,
  "centre.json": [{ along: 314, centre: 5.8 }],
};

test("notes: what is to go, what is left, findings; exit 1 where a marker is below its keep", async () => {
  const cwd = folderWith(FILES);
  const lines = [
    "--sanding half-way.json a.json",
    "--sanding past.json --inches a.json",
    "--sanding centre.json a.json | head -16",
    "--sanding half-way.json unnamed.json a.json | grep SANDING",
    "--sanding <(cat past.json) - < <(cat a.json; echo; cat a.json) | grep STOP",
  ];
  await golden("command/sanding.txt", dialogue(cwd, lines));
  const codes = ["half-way", "past"].map((name) =>
    command(["--sanding", `${name}.json`, "a.json"], { cwd }),
  );
  expect(codes.map(({ code }) => code)).toEqual([0, 1]);
  // texts are read as in design files: 0.199 in is 5.0546 mm
  const read = [
    HALF_WAY[0],
    { along: 324, centre: 5.93, bass: 5.0546, treble: 5.05 },
    { ...HALF_WAY[2], along: 469.9 },
  ] as Parameters<typeof sandingProgress>[1];
  const note = sandingNote(sandingProgress(DESIGN, read));
  expect(codes[0]?.out).toBe(`${note}\nFrom: a.json\n\n`);
  for (const line of linesOf(note)) expect(line.length).toBeLessThanOrEqual(100);
  expect(() => sandingNote(sandingProgress(DESIGN, read), { unit: "cm" as never })).toThrow(
    /^unit: expected "mm" or "in"/,
  );
});

test("what cannot be read is told with the readings' file, path, line and column: exit 2", async () => {
  const cwd = folderWith({
    ...FILES,
    "bad.json":
      '[\n { "along": "fret30", "centre": "5 kg", "base": 5 },\n { "along": 1, "along": 2, "centre": "-5 mm" },\n 7\n]',
    "broken.json": "[{]",
    "none.json": "[]",
    "object.json": "{}",
    "bad-design.json": { ...GOOD, web: -1 },
  });
  const readings = ["bad", "broken", "none", "object", "missing"];
  const lines = [
    ...readings.map((name) => `--sanding ${name}.json a.json`),
    "--sanding past.json bad-design.json",
    ...["--json", "--csv", "--svg x", "--repair 12=1", "--no-remedies"].map(
      (word) => `--sanding past.json ${word} a.json`,
    ),
    "--sanding= a.json",
  ];
  await golden("command/sanding-unread.txt", dialogue(cwd, lines));
  for (const line of lines)
    expect(shell(`$MD ${line}`, { cwd })).toMatchObject({ code: 2, out: "" });
});
