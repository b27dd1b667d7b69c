/** Builds the command from the src that holds the mutants. */
import { execFileSync } from "node:child_process";

export default function build(): void {
  const cwd = new URL("../../", import.meta.url).pathname;
  execFileSync("npx", ["tsup", "--no-dts", "--format", "esm"], { cwd, stdio: "inherit" });
}
