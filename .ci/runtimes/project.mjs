// The packed tarball, installed in an empty project.
import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const HERE = fileURLToPath(new URL("./", import.meta.url));
export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** Runs a command to its end; what it printed. Throws with all of that where it fails. */
export function run(command, words, { cwd = ROOT, env = {} } = {}) {
  try {
    const options = { cwd, env: { ...process.env, ...env }, encoding: "utf8", stdio: "pipe" };
    return execFileSync(command, words, { ...options, maxBuffer: 1e8 });
  } catch (error) {
    const told = `${error.stdout}\n${error.stderr}`.trim() || error.message;
    throw new Error(`${command} ${words.join(" ")}\n${told.slice(-4000)}`);
  }
}

/** Packs the tree as it is built, and installs the tarball where nothing else is. */
export function packedProject() {
  const folder = mkdtempSync(join(tmpdir(), "marker-depth-runtimes-"));
  const listing = run("npm", ["pack", "--json", "--ignore-scripts", "--pack-destination", folder]);
  const [{ filename }] = Object.values(JSON.parse(listing));
  const tarball = join(folder, filename);
  const project = join(folder, "project");
  cpSync(HERE, project, {
    recursive: true,
    filter: (path) => /runtimes\/?$|(?:consumer|job|runtime)\.\w+$/.test(path),
  });
  writeFileSync(join(project, "package.json"), '{ "name": "empty", "private": true }\n');
  run("npm", ["install", "--no-audit", "--no-fund", tarball], { cwd: project });
  return { folder, project, tarball };
}
