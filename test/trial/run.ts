/** The script `trial`: tries docs/trials, or the folder that is named. */
import { tryFolder } from "./main.js";

const { code, out, err } = tryFolder(process.argv[2] ?? "docs/trials");
process.stdout.write(out);
process.stderr.write(err);
process.exitCode = code;
