/** What could not be read, for standard error: one line for each problem, in the form that editors follow. */
import type { Outcome } from "./outcome.js";

/** `file:line:column: path: expected …` */
export function troubleLines({ file, line, issues = [] }: Outcome): string {
  return issues
    .map((issue) => {
      const place = [file, issue.line ?? line, issue.column].filter((part) => part !== undefined);
      return `${place.join(":")}: ${issue.message}\n`;
    })
    .join("");
}
