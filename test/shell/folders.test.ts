/** Folders on the command line: searched on request, and whatever they may hold. */
import { mkdirSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { command, FAILS, folderWith, GOOD, linesOf, removeFolders, shell } from "./command.js";

afterAll(removeFolders);

const filesIn = (out: string) => linesOf(out).map((line) => JSON.parse(line).file);

describe("--recursive", () => {
  const cwd = folderWith({
    "necks/b.json": GOOD,
    "necks/a/z.json": GOOD,
    "necks/a/deep/er/c.JSON": FAILS,
    "necks/a.json": GOOD,
    "necks/node_modules/x.json": GOOD,
    "necks/.old/y.json": GOOD,
    "necks/.hidden.json": GOOD,
    "necks/a/notes.txt": "no design",
    "none/below/notes.txt": "no design",
  });
  symlinkSync("..", join(cwd, "necks/a/up.json"));
  symlinkSync("../a/z.json", join(cwd, "necks/a/link.json"));

  test("without it the folder alone; with it all below, by name, each named with its folders", () => {
    expect(filesIn(command(["--json", "necks"], { cwd }).out)).toEqual([
      "necks/.hidden.json",
      "necks/a.json",
      "necks/b.json",
    ]);
    const { code, out, err } = command(["--json", "--recursive", "necks"], { cwd });
    const deep = ["deep/er/c.JSON", "link.json", "up.json", "z.json"].map((n) => `necks/a/${n}`);
    expect(filesIn(out)).toEqual(["necks/.hidden.json", ...deep, "necks/a.json", "necks/b.json"]);
    expect([code, err]).toEqual([2, "necks/a/up.json: not a file\n"]);
  });

  test("the files' names stay with cards, rows, lines, and the summary", () => {
    const words = ["--recursive", "necks/a/deep", "necks/b.json"];
    const cards = command(["--no-remedies", ...words], { cwd }).out;
    expect(cards.match(/^From: .*$/gm)).toEqual([
      "From: necks/a/deep/er/c.JSON",
      "From: necks/b.json",
    ]);
    expect(cards).toContain("1 fails (necks/a/deep/er/c.JSON)");
    for (const table of [["--csv"], ["--csv", "--findings"]]) {
      const [, first] = command([...table, ...words], { cwd }).out.split("\r\n");
      expect(first).toMatch(/^necks\/a\/deep\/er\/c\.JSON,/);
    }
  });

  test("nothing in it, or nothing below: told, exit 2", () => {
    const told = (words: string[]) => command([...words, "none"], { cwd });
    expect(told([])).toMatchObject({ code: 2, err: "none: no .json file in this folder\n" });
    expect(told(["--recursive"]).err).toBe("none: no .json file in this folder or below it\n");
  });
});

describe("whatever a folder holds", () => {
  test("pipes, devices, loops, links to nowhere, folders that are named as files: told, and the rest is checked", () => {
    const cwd = folderWith({ "f/good.json": GOOD, "f/sub/good.json": GOOD });
    shell("mkfifo f/pipe.json f/sub/pipe.json", { cwd });
    mkdirSync(join(cwd, "f/folder.json"));
    symlinkSync("loop.json", join(cwd, "f/loop.json"));
    symlinkSync("nowhere", join(cwd, "f/nowhere.json"));
    symlinkSync("/dev/zero", join(cwd, "f/zero.json"));
    for (const jobs of ["1", "2"]) {
      const words = ["--json", "--recursive", "--jobs", jobs, "f"];
      const { code, out, err } = command(words, { cwd });
      expect(linesOf(err)).toEqual([
        "f/loop.json: too many symbolic links encountered",
        "f/nowhere.json: no such file or directory",
        "f/pipe.json: not a file",
        "f/sub/pipe.json: not a file",
        "f/zero.json: not a file",
      ]);
      const good = linesOf(out).filter((line) => JSON.parse(line).ok);
      expect([code, good.length]).toEqual([2, 2]);
    }
    expect(command(["f"], { cwd }).err).toContain("f/folder.json: not a file\n");
  });

  test("odd names: found, opened, and no line or terminal is led astray by them", async () => {
    const names = [
      "\n",
      "a\nb",
      "\u001b[31mred",
      "‮left",
      "-",
      "--help",
      " ",
      "*",
      "é",
      "a:1:2",
      "$(x)",
    ];
    const files = names.map((name) => [`f/${name}.json`, "{"]);
    const cwd = folderWith({ ...Object.fromEntries(files), "f/'\"\\ok,.json": FAILS });
    shell("cp f/*.json . ; cp f/é.json $'f/\\xff.json'", { cwd });
    const { code, out, err } = command(["--no-remedies", "f"], { cwd });
    expect(linesOf(err)).toHaveLength(names.length + 1);
    for (const line of linesOf(err)) expect(line).toMatch(/^f\/.*\.json(?::1:2)?: \S/u);
    expect(err + out).not.toMatch(/[^\P{Cc}\n]/u);
    expect(linesOf(out).at(-1)).toMatch(/1 fails \(f\/'"\\ok,\.json\), 12 could not be read$/);
    expect(code).toBe(2);
    const json = linesOf(command(["--json", "f"], { cwd }).out).map((line) => JSON.parse(line));
    expect(json.map(({ file }) => file)).toEqual(expect.arrayContaining(files.map(([f]) => f)));
  });

  test("what must not be read: told, and the rest is checked", () => {
    const cwd = folderWith({ "f/a.json": GOOD, "f/b.json": GOOD, "f/shut/c.json": GOOD });
    // the superuser may read everything, and so becomes nobody for this
    const isSuper = process.getuid?.() === 0;
    const nobody = isSuper ? "setpriv --reuid=65534 --regid=65534 --clear-groups " : "";
    const line = `chmod 755 . && chmod 0 f/a.json f/shut && ${nobody}$MD --json --recursive f`;
    const { code, out, err } = shell(line, { cwd });
    shell("chmod 755 f/shut", { cwd });
    expect(linesOf(err)).toEqual(["f/a.json: permission denied", "f/shut: permission denied"]);
    expect([code, linesOf(out).length]).toEqual([2, 3]);
  });

  test("a hundred folders deep, and as many files as a folder may hold by mistake", () => {
    const deep = `${"d/".repeat(100)}neck.json`;
    const cwd = folderWith({ [deep]: GOOD, "many/good.json": GOOD });
    expect(filesIn(command(["--json", "--recursive", "d"], { cwd }).out)).toEqual([deep]);
    const line =
      "cd many && seq -f 'n%.0f.json' 3000 | xargs touch && cd .. && $MD --json many | wc -l";
    expect(shell(line, { cwd }).out.trim()).toBe("3001");
  });
});
