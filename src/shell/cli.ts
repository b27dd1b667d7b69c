#!/usr/bin/env node
/** The command `marker-depth`; in a thread that it began, its worker. */
import { fileURLToPath } from "node:url";
import { isMainThread } from "node:worker_threads";
import { main } from "./main.js";

if (isMainThread) {
  main(process.argv.slice(2), process, fileURLToPath(import.meta.url)).then((code) => {
    process.exitCode = code;
  });
} else {
  import("./pool.js").then(({ serve }) => serve());
}
