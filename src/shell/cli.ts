#!/usr/bin/env node
/** The command `marker-depth`. */
import { main } from "./main.js";

main(process.argv.slice(2), process).then((code) => {
  process.exitCode = code;
});
