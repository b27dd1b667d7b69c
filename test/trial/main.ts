/** Runs the trials of a folder. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type Row, rowsOf } from "./measure.js";
import { readTrial, TrialError } from "./read.js";
import { summaryOf, tableOf } from "./table.js";

/** What a run came to: 0 all pass, 1 some do not, 2 something could not be read. */
export interface Ran {
  readonly code: 0 | 1 | 2;
  readonly out: string;
  readonly err: string;
}

/** Tries every .json file of a folder, by name. */
export function tryFolder(folder: string): Ran {
  const rows: Row[] = [];
  const errors: string[] = [];
  let trials = 0;
  for (const file of filesIn(folder, errors)) {
    try {
      rows.push(...rowsOf(readTrial(file, readFileSync(file, "utf8"))));
      trials++;
    } catch (error) {
      errors.push(error instanceof TrialError ? error.message : `${file}: ${String(error)}`);
    }
  }
  if (trials + errors.length === 0) errors.push(`${folder}: no .json file in this folder`);
  const code = errors.length > 0 ? 2 : rows.every(({ passes }) => passes) ? 0 : 1;
  const out = `${tableOf(rows)}${summaryOf(trials, rows, errors.length)}`;
  return { code, out, err: errors.map((error) => `${error}\n`).join("") };
}

function filesIn(folder: string, errors: string[]): string[] {
  try {
    const names = readdirSync(folder).filter((name) => name.endsWith(".json"));
    return names.sort().map((name) => join(folder, name));
  } catch {
    errors.push(`${folder}: no such folder`);
    return [];
  }
}
