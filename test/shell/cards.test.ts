/** The command as it is typed: what it prints and how it ends, kept as transcripts, and the data in it. */
import { readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { drillCard } from "../../src/card/index.js";
import { summarizeChance } from "../../src/chance/index.js";
import { checkDesign, type Design } from "../../src/index.js";
import { golden } from "../golden/golden.js";
import {
  COMMAND,
  command,
  FAILS,
  folderWith,
  GOOD,
  linesOf,
  ROOT,
  removeFolders,
  shell,
} from "./command.js";

afterAll(removeFolders);

/** Each line as it is typed, what it prints and its exit code; of a card the head alone. */
function dialogue(cwd: string, lines: readonly string[]): string {
  return lines
    .map((line) => {
      const { code, out, err } = shell(`$MD ${line}`, { cwd });
      const heads = out.replace(
        /(DRILL CARD: .*\n=+\n.*\n)[\s\S]*?\n(?=DRILL CARD|\d+ designs? checked)/g,
        "$1…\n",
      );
      return `$ marker-depth ${line}\n${heads}${err}exit ${code}\n`;
    })
    .join("\n");
}

const cardOf = (design: Design, unit: "mm" | "in" = "mm") =>
  drillCard(checkDesign(design), { unit, design });

test("cards: of files, a folder, standard input; an unnamed design bears its file's name", async () => {
  const { name: _, ...unnamed } = GOOD;
  const cwd = folderWith({
    "C.JSON": { ...GOOD, name: "red \u001b[31m \u0007\u009b2J" },
    "a.json": GOOD,
    "b.json": unnamed,
    "fails.json": FAILS,
    "notes.txt": "no design",
    "--dash.json": GOOD,
  });
  const lines = [
    "a.json",
    "--inches a.json fails.json",
    ".",
    "- < b.json",
    "-- --dash.json",
    "--version | wc -l",
  ];
  const many = "--no-remedies - < <(for i in {1..12}; do cat fails.json; echo; done) | tail -1";
  await golden("command/cards.txt", dialogue(cwd, [...lines, many]));
  expect(command(["a.json"], { cwd }).out).toBe(
    `${cardOf(GOOD)}\nFrom: a.json\n\n1 design checked, 1 passes, 0 fail\n`,
  );
  const inches = command(["--inches", "fails.json"], { cwd }).out;
  expect(inches).toContain(cardOf(FAILS, "in"));
  expect(inches).toContain("remedies:");
  expect(command(["--no-remedies", "fails.json"], { cwd }).out).not.toContain("remedies:");
});

test("how likely all goes well, where it is asked for", () => {
  const cwd = folderWith({ "a.json": GOOD });
  const chance = summarizeChance(GOOD);
  const card = drillCard(checkDesign(GOOD), { design: GOOD, chance });
  expect(card).toContain("\nCHANCE ");
  expect(command(["--chance", "a.json"], { cwd }).out).toContain(card);
  expect(command(["a.json"], { cwd }).out).not.toContain("CHANCE");
});

test("lengths may be texts, as in any design file", () => {
  const cwd = folderWith({
    "a.json": { ...GOOD, scale: { length: "25.5 in", frets: 22 }, radius: "flat" },
  });
  const read: Design = { ...GOOD, scale: { length: 647.7, frets: 22 }, radius: Infinity };
  expect(command(["a.json"], { cwd }).out).toContain(cardOf(read));
});

test("repairs: half millimetres, sixteenths with --inches, or a rack; exit 1 where no bit does", async () => {
  const cwd = folderWith({ "a.json": GOOD, "none.json": { ...GOOD, markers: [] } });
  const lines = [
    "--repair 12:bass=0.4 a.json",
    "--repair 12:bass=0.4 --inches a.json | head -3",
    "--repair 'markers.0.frets.0.bass=1/64 in' --rack 7,9,8 a.json | head -3",
    "--repair 12:bass=0.4 --rack '6,1/4 in' a.json",
    "--repair 12=0.4 a.json",
    "--repair 12:bass=0.4 none.json a.json | tail -2",
  ];
  await golden("command/repair.txt", dialogue(cwd, lines));
  const bits = lines.slice(0, 3).map((line) => linesOf(shell(`$MD ${line}`, { cwd }).out)[2]);
  // 6 + 2 · (0.4 + 0.25) = 7.3 mm; 5/16 in is 7.94 mm
  expect(bits).toEqual(
    ["7.50 mm", "5/16 (.313) in", "8.00 mm"].map((bit) => `Drill again with a bit of ${bit}.`),
  );
  expect(command(["--repair", "12:bass=0.4", "--rack", "6,7", "a.json"], { cwd }).code).toBe(1);
});

test("what cannot be read is told with path, line and column, and the others are checked: exit 2", async () => {
  const cwd = folderWith({
    "broken.json": '{\n  "web": 1,,\n}',
    "bad.json": JSON.stringify({ ...GOOD, web: "6 kg", depth: [] }, null, 1),
    "fails.json": FAILS,
    "utf-16.json": Buffer.from("\uFEFF{}", "utf16le"),
    "bom.json": "\uFEFF{}",
    "long.json": " ".repeat(1_000_001),
    "longer.json": "x".repeat(4_000_000),
    "empty.json": "",
  });
  symlinkSync("nowhere", join(cwd, "link.json"));
  const files = "broken none bad utf-16 bom long longer empty"
    .split(" ")
    .map((name) => `${name}.json`);
  const lines = [
    `--no-remedies ${files.join(" ")} fails.json`,
    "--no-remedies . | tail -1",
    "/dev/zero",
    "/dev/null",
    "/proc/self",
  ];
  await golden("command/unread.txt", dialogue(cwd, lines));
  expect(command([...files, "fails.json"], { cwd }).code).toBe(2);
});

describe("the command line", () => {
  test("--help and --version; the built file runs by itself", async () => {
    const { out } = command(["--help"]);
    await golden("command/help.txt", out);
    for (const line of linesOf(out)) expect(line.length).toBeLessThanOrEqual(80);
    const { version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
    expect(shell(`${COMMAND} --version`)).toEqual({ code: 0, out: `${version}\n`, err: "" });
  });

  test("mistakes: told, where to find help, exit 2", async () => {
    const mistakes = [
      ...["", "--jsn x", "-x", "--svg", "--svg= x", "--json=yes x", "- -"],
      ...[
        "--json --csv x",
        "--json --inches x",
        "--remedies x",
        "--no-remedies --json x",
        "--chance --csv x",
      ],
      ...["--findings x", "--findings --json x", "--jobs 0 x", "--jobs=-1 x", "--jobs 257 x"],
      ...["--jobs 1e1 x", "--jobs x", "--jobs= x", "--jobs 2 --sanding y x", "--recursive=no x"],
      ...[
        "--template= x",
        "--paper a4 x",
        "--template t --paper a3 x",
        "--template t --repair 12=1 x",
      ],
      ...["--rack 6 x", "--repair 12=1 --csv x", "--repair twelve=1 x", "--repair 12= x"],
      ...["--repair 12=1 --rack '6;7' x"],
    ];
    await golden("command/mistakes.txt", dialogue(ROOT, mistakes));
    for (const line of mistakes) expect(shell(`$MD ${line}`)).toMatchObject({ code: 2, out: "" });
  });
});
