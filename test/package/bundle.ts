/** An entry as a page bundles it. */
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { expect } from "vitest";
import { withoutSentences } from "../../.ci/tsup.config.js";

const root = new URL("../../", import.meta.url).pathname;

/** Its size, the files that it was made of, and those of them that something is left of. Some of its names, or all. */
export async function bundle(entry: string, names = "*") {
  const contents = `export ${names} from "./src/${entry}";`;
  const result = await build({
    stdin: { contents, resolveDir: root, loader: "ts" },
    plugins: entry === "index.ts" ? [withoutSentences] : [],
    absWorkingDir: root,
    bundle: true,
    minify: true,
    format: "esm",
    platform: "browser",
    // of the command's files; none of the entries asks for any
    external: ["node:*", "child_process", "os", "worker_threads"],
    target: "es2022",
    metafile: true,
    write: false,
  });
  const text = result.outputFiles[0]?.text ?? "";
  expect(text.length).toBeGreaterThan(1000);
  const parts = Object.values(result.metafile.outputs)[0]?.inputs ?? {};
  const isFile = (name: string) => name !== "<stdin>";
  const used = Object.keys(parts).filter(
    (name) => isFile(name) && (parts[name]?.bytesInOutput ?? 0) > 0,
  );
  const inputs = Object.keys(result.metafile.inputs).filter(isFile);
  return { gzipped: gzipSync(text, { level: 9 }).length, inputs, used };
}

/** The packages that these files come from. */
export function packagesOf(files: readonly string[]): string[] {
  const names = files.flatMap(
    (name) => name.match(/node_modules\/((?:@[^/]+\/)?[^/]+)/)?.[1] ?? [],
  );
  return [...new Set(names)].sort();
}
