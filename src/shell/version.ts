/** The version of the package, read when it is asked for. */
import { readFileSync } from "node:fs";

/** As it stands in package.json, which lies one folder above the built command. */
export function version(): string {
  const text = readFileSync(new URL("../package.json", import.meta.url), "utf8");
  return String(JSON.parse(text).version);
}
