import { elementAt } from "../geometry/element-at.js";

/**
 * The known name nearest to a misspelt one, or undefined where none is near.
 * Nearness is the count of single-letter edits (Levenshtein), at most a third of the name.
 */
export function nearestName(name: string, known: readonly string[]): string | undefined {
  if (name.length > 40) return undefined;
  let nearest: string | undefined;
  let fewest = Math.max(1, Math.floor(name.length / 3)) + 1;
  for (const candidate of known) {
    // names take at least as many edits as their lengths differ
    if (!(Math.abs(candidate.length - name.length) < fewest)) continue;
    const edits = editDistance(name.toLowerCase(), candidate.toLowerCase());
    if (edits < fewest) {
      fewest = edits;
      nearest = candidate;
    }
  }
  return nearest;
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = elementAt(row, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, elementAt(row, j) + 1, elementAt(next, j - 1) + 1));
    }
    row = next;
  }
  return elementAt(row, b.length);
}

/** The end of a sentence that offers a near name, or nothing. */
export function didYouMean(near: string | undefined): string {
  return near === undefined ? "" : `; did you mean "${near}"?`;
}

/** “"a", "b" and "c"”. */
export function quoted(words: readonly string[], last: "and" | "or" = "and"): string {
  const all = words.map((word) => `"${word}"`);
  if (all.length < 2) return String(all);
  return `${all.slice(0, -1).join(", ")} ${last} ${all[all.length - 1]}`;
}
