/** The readings that `--sanding` names: thicknesses of a board in JSON, against a design. */
import type { Design } from "../design/design.js";
import { readNeck } from "../drilling/work.js";
import { DesignError, type DesignIssue, makeIssue } from "../errors/errors.js";
import { isObject } from "../errors/unknown.js";
import { readJson } from "../files/json.js";
import { lengthIn } from "../files/length.js";
import { type FileIssue, type Place, pathPlaces, placed } from "../files/places.js";
import { assessProgress, type SandingProgress } from "../measured/sanding-progress.js";
import { readReadings } from "../measured/sanding-readings.js";

/** How far the sanding has come. Throws a `DesignError` whose issues have their places in the text. */
export function sandingIn(text: string, design: Design): SandingProgress {
  const json = readJson(text);
  const ofText = json.issues.map((issue) => told(issue, issue, issue.value));
  if (!json.isJson) throw new DesignError(ofText);
  const neck = readNeck(design);
  const issues: DesignIssue[] = [];
  const written = new Map<string, string>();
  const readings = readReadings(neck.board, inMm(json.value, written, issues), issues);
  const placeOf = pathPlaces(text);
  const found = [
    ...ofText,
    // of two issues at one path the first says more
    ...issues
      .filter(({ path }, i) => issues.findIndex((other) => other.path === path) === i)
      .map(({ path, value, expected }) => {
        const inText = path.replace(/^readings\.?/, "");
        return told({ path: inText, expected }, placeOf(inText), written.get(path) ?? value);
      }),
  ].sort((a, b) => a.line - b.line || a.column - b.column);
  if (found.length > 0) throw new DesignError(found);
  return assessProgress(neck, readings);
}

/** An issue of the text, by its path from the readings. */
function told(
  { path, expected }: Pick<DesignIssue, "path" | "expected">,
  place: Place,
  value: unknown,
): FileIssue {
  return placed(makeIssue(path === "" ? "readings" : `readings.${path}`, value, expected), place);
}

const LENGTHS = ["along", "centre", "bass", "treble"];

/** The readings with their texts as mm, which stand in `written` by their paths; a text that is no length stays. */
function inMm(value: unknown, written: Map<string, string>, issues: DesignIssue[]): unknown {
  if (!Array.isArray(value)) return value;
  return value.map((item, i) => {
    if (!isObject(item)) return item;
    const fields = Object.entries(item).map(([key, stated]) => {
      if (typeof stated !== "string" || !LENGTHS.includes(key)) return [key, stated];
      const path = `readings.${i}.${key}`;
      written.set(path, stated);
      const mm = lengthIn(stated);
      if (typeof mm === "number") return [key, mm];
      // a place may be a station, and is told of as a place
      if (key !== "along") issues.push(makeIssue(path, stated, mm));
      return [key, stated];
    });
    return Object.fromEntries(fields);
  });
}
