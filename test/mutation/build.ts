/** Builds the command from the src that holds the mutants: once, as several runs share the copy that is broken. */
import { execFileSync } from "node:child_process";
import { chmodSync, existsSync } from "node:fs";
import { join } from "node:path";

export default function build(): void {
  const cwd = new URL("../../", import.meta.url).pathname;
  // one test runs the command as a user who owns nothing, and the copy is its maker's alone at first
  chmodSync(cwd, 0o755);
  // the copy has no dist of its own at first
  if (existsSync(join(cwd, "dist/cli.js"))) return;
  execFileSync("npx", ["tsup", "--config", ".ci/tsup.config.ts", "--no-dts"], {
    cwd,
    stdio: "inherit",
  });
}
