/** docs/batch.md's step of a distributed engine, run as the page has it, on this machine. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { blocksUnder, isThere, newProject, removeProject, run } from "./project.js";

/** Debian's own, since the packages are Debian's. */
const PYTHON = "/usr/bin/python3";
const hasDask = isThere(PYTHON, "-c", "import dask.bag, dask.distributed");
let project = "";

beforeAll(() => {
  project = newProject();
});

afterAll(() => removeProject(project));

const line = (i: number) =>
  JSON.stringify({
    // what some take for the end of a line
    name: `invented\u2028${i}`,
    scale: { length: 648, frets: 22 },
    board: { length: 482, width: { nut: 43, end: 57 }, thickness: 5 + i / 10 },
    radius: 254,
    markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
  });

test.skipIf(!hasDask)(
  `every line is checked once, in its order, as the command does it${hasDask ? "" : ": python3-dask is not installed"}`,
  () => {
    const shares = [0, 1, 2].map((share) => [0, 1, 2, 3].map((i) => line(4 * share + i)));
    shares[1]?.splice(2, 0, '{"name": "cut sho', "[]");
    shares.forEach((lines, i) => {
      writeFileSync(join(project, `necks-${i}.ndjson`), `${lines.join("\n")}\n`);
    });
    const [script] = blocksUnder("docs/batch.md", "On several machines");
    writeFileSync(join(project, "check.py"), script?.text ?? "");
    const { code, err } = run(project, PYTHON, "check.py");
    // what cannot be read is told by the command that came upon it
    const told = err.split("\n").filter((each) => /^-:\d+:\d+: /.test(each));
    expect([code, told.length], err).toEqual([0, 2]);
    const files = readdirSync(project).filter((file) => file.startsWith("reports-"));
    expect(files).toHaveLength(shares.length);
    for (const i of shares.keys()) {
      const words = ["-c", `npx marker-depth --json - < necks-${i}.ndjson`];
      const { out } = run(project, "bash", ...words);
      expect(out.split("\n").length).toBeGreaterThan(4);
      // the engine may leave out the last line's end
      expect(`${readFileSync(join(project, `reports-${i}.ndjson`), "utf8").trimEnd()}\n`).toBe(out);
    }
  },
);
