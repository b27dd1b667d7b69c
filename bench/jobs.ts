/** What the command checks in a second, with one thread and with two. Wants a tree that is built. */
import { spawnSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { necksOf, randomNecks } from "./necks.js";
import { interleaved, type Rival, type Timed } from "./timing.js";

/** The same designs from a file, one a line, as reports in JSON; by the clock on the wall, since threads work beside each other. */
export function measureJobs(rounds: number, designs: number): Timed[] {
  const folder = mkdtempSync(join(tmpdir(), "marker-depth-bench-"));
  const file = join(folder, "necks.ndjson");
  try {
    const lines = necksOf(randomNecks(designs, 7)).map((design) => JSON.stringify(design));
    writeFileSync(file, `${lines.join("\n")}\n`);
    const rivals = [1, 2].map((jobs): Rival => {
      return { name: `\`--jobs ${jobs}\``, run: () => runCommand(jobs, file, designs) };
    });
    return interleaved(rivals, rounds, "wall");
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Throws where the command did not end well, or said so; a design that fails is no matter. */
function runCommand(jobs: number, file: string, designs: number): number {
  const input = openSync(file, "r");
  const words = ["dist/cli.js", "--json", "--jobs", String(jobs), "-"];
  const { status, stderr } = spawnSync(process.execPath, words, {
    stdio: [input, "ignore", "pipe"],
    encoding: "utf8",
  });
  closeSync(input);
  if ((status !== 0 && status !== 1) || stderr !== "") throw new Error(`exit ${status}: ${stderr}`);
  return designs;
}
