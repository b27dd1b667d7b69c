/** The rooms of src: each imports from itself and from those before it alone, types included. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";

/** From left to right. `units` stands beside `files`: neither is before the other. */
const ROOMS = [
  "errors",
  "geometry",
  "text",
  "design",
  "board",
  "drilling",
  "report",
  "batch",
  "measured",
  "chance",
  "card",
  "units",
  "files",
  "draw",
  "notebook",
  "shell",
];

const SRC = new URL("../../src/", import.meta.url).pathname;
const files = readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter((file) =>
  file.endsWith(".ts"),
);
const roomOf = (file: string) => file.split("/")[0] as string;

/** What a file imports from src, as paths below src. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(SRC, file), "utf8");
  const named = [...text.matchAll(/(?:from|import|import\()\s*"(\.[^"]+)"/g)];
  return named.map(([, path = ""]) => join(dirname(file), path).replace(/\.js$/, ".ts"));
}

describe("the rooms of src", () => {
  it("hold every file but the entry", () => {
    const outside = files.filter((file) => !ROOMS.includes(roomOf(file)));
    expect(outside).toEqual(["index.ts"]);
  });

  it("import to the left alone", () => {
    const imports = files
      .filter((file) => file !== "index.ts")
      .flatMap((file) => importsOf(file).map((path) => ({ file, path })));
    const back = imports.filter(
      ({ file, path }) => ROOMS.indexOf(roomOf(path)) > ROOMS.indexOf(roomOf(file)),
    );
    expect(back).toEqual([]);
    expect(imports.length).toBeGreaterThan(200);
  });
});
