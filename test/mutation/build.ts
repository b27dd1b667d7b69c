/** Builds the command from the src that holds the mutants: once, as several runs share the copy that is broken. */
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";

export default function build(): void {
  const cwd = new URL("../../", import.meta.url).pathname;
  // the copy has no dist of its own at first
  if (existsSync(join(cwd, "dist/cli.js"))) return;
  execFileSync("npx", ["tsup", "--config", ".ci/tsup.config.ts", "--no-dts"], {
    cwd,
    stdio: "inherit",
  });
}
