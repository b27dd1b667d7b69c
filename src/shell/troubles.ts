/** What could not be read, for standard error: one line for each problem, in the form that editors follow. */
import { visible } from "../text/plain-words.js";
import type { Outcome } from "./outcome.js";

/** `file:line:column: path: expected …` */
export function troubleLines({ file, line, issues = [] }: Outcome): string {
  const lines = issues.map((issue) => {
    // a file's name may hold what would end the line
    const name = file.replaceAll("\n", "\uFFFD");
    const place = [name, issue.line ?? line, issue.column].filter((part) => part !== undefined);
    return `${place.join(":")}: ${issue.message}\n`;
  });
  return visible(lines.join(""));
}
