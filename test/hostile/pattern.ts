/**
 * Whether a regular expression takes time in proportion to its text, by its structure. What is proved here:
 *
 * 1. without a quantifier that has no upper end, each start takes a bounded number of steps;
 * 2. such a quantifier on one character, which cannot be what comes next, leaves no choice: where it ends is certain;
 * 3. a single such quantifier after ^ leaves one choice for each character, of a single start;
 * 4. without ^, a run is walked from one start only if no match can begin inside of it, or if it ends the match.
 *
 * Everything else is ambiguous: two such quantifiers that may take the same characters, or one around a group.
 */

interface Piece {
  /** A character's pattern, or the alternatives of a group; look-arounds and back-references are not known here. */
  readonly atom: string | readonly (readonly Piece[])[];
  readonly least: number;
  readonly most: number;
}

/** An end or an edge of a word: something that must be there, and takes nothing. */
const PLACE: Piece = { atom: "(?!)", least: 1, most: 1 };

/** Why a pattern may take longer; nothing where it is linear. */
export function whyNotLinear(source: string, flags: string): string | undefined {
  const isAnchored = source.startsWith("^") && !flags.includes("m");
  const alternatives = parsed(source);
  const runs = alternatives.flatMap(runsIn);
  if (runs.length === 0) return undefined;
  if (runs.some(({ atom }) => typeof atom !== "string")) return "an endless quantifier on a group";
  if (isAnchored && runs.length === 1 && alternatives.length === 1) return undefined;
  const setOf = setsWith(flags);
  const clash = alternatives.map((pieces) => clashIn(pieces, [], setOf)).find(Boolean);
  if (clash) return clash;
  if (isAnchored && alternatives.length === 1) return undefined;
  const ends = alternatives.map((pieces) => pieces.at(-1));
  const starts = firstOf(alternatives.flatMap((pieces) => pieces.slice(0, 1)));
  const walked = runs.filter((run) => !ends.includes(run));
  const again = walked.find(({ atom }) =>
    starts.some((start) => meet(setOf(start), setOf(atom as string))),
  );
  return again && `a match may begin anywhere within ${again.atom}`;
}

/** Pieces with a quantifier without an upper end. */
function runsIn(pieces: readonly Piece[]): Piece[] {
  return pieces.flatMap((piece) => [
    ...(piece.most === Infinity ? [piece] : []),
    ...(typeof piece.atom === "string" ? [] : piece.atom.flatMap(runsIn)),
  ]);
}

type Sets = (atom: string) => ReadonlySet<number>;

/** A run that may take the character that comes after it. */
function clashIn(
  pieces: readonly Piece[],
  after: readonly Piece[],
  setOf: Sets,
): string | undefined {
  for (const [i, piece] of pieces.entries()) {
    const rest = [...pieces.slice(i + 1), ...after];
    if (typeof piece.atom !== "string") {
      const inner = piece.atom.map((each) => clashIn(each, rest, setOf)).find(Boolean);
      if (inner) return inner;
    } else if (piece.most === Infinity) {
      const taken = setOf(piece.atom);
      const next = firstOf(rest).find((atom) => meet(taken, setOf(atom)));
      if (next) return `${piece.atom} may take what ${next} is for`;
    }
  }
  return undefined;
}

/** The characters' patterns that may come first. */
function firstOf(pieces: readonly Piece[]): string[] {
  const first: string[] = [];
  for (const { atom, least } of pieces) {
    const isNothing =
      typeof atom !== "string" && atom.some((each) => each.every((p) => p.least === 0));
    if (typeof atom === "string") first.push(atom);
    else first.push(...atom.flatMap(firstOf));
    if (least > 0 && !isNothing) break;
  }
  return first;
}

function meet(a: ReadonlySet<number>, b: ReadonlySet<number>): boolean {
  for (const code of a) if (b.has(code)) return true;
  return false;
}

/** What a character's pattern takes, found by trying every one of the first plane. */
function setsWith(flags: string): Sets {
  const known = new Map<string, ReadonlySet<number>>();
  return (atom) => {
    const found =
      known.get(atom) ?? taking(new RegExp(`^(?:${atom})$`, flags.replace(/[gmy]/g, "")));
    known.set(atom, found);
    return found;
  };
}

function taking(pattern: RegExp): ReadonlySet<number> {
  const codes = Array.from({ length: 0x10000 }, (_, code) => code);
  return new Set(codes.filter((code) => pattern.test(String.fromCharCode(code))));
}

const ATOM =
  /^(?:\\[pP]\{\w+\}|\\u[0-9a-fA-F]{4}|\\x[0-9a-fA-F]{2}|\\[^ux1-9k]|[^\\()[\]{}|*+?^$])/u;
const QUANTIFIER = /^(?:([*+?])|\{(\d+)(,?)(\d*)\})\??/;

/** The alternatives of a pattern. */
function parsed(source: string): Piece[][] {
  const cursor = { rest: source };
  const alternatives = alternativesAt(cursor);
  if (cursor.rest !== "") throw new Error(`not understood: ${cursor.rest} of ${source}`);
  return alternatives;
}

function alternativesAt(cursor: { rest: string }): Piece[][] {
  const alternatives: Piece[][] = [[]];
  while (cursor.rest !== "" && !cursor.rest.startsWith(")")) {
    if (take(cursor, /^\^/)) continue;
    if (take(cursor, /^\|/)) alternatives.push([]);
    else if (take(cursor, /^\$|^\\b/i)) alternatives.at(-1)?.push(PLACE);
    else alternatives.at(-1)?.push(pieceAt(cursor));
  }
  return alternatives;
}

function pieceAt(cursor: { rest: string }): Piece {
  const atom = atomAt(cursor);
  const quantifier = QUANTIFIER.exec(cursor.rest);
  cursor.rest = cursor.rest.slice(quantifier?.[0].length ?? 0);
  const [, sign, low, comma, high] = quantifier ?? [];
  if (sign === "?") return { atom, least: 0, most: 1 };
  if (sign !== undefined) return { atom, least: sign === "*" ? 0 : 1, most: Infinity };
  if (low === undefined) return { atom, least: 1, most: 1 };
  const most = comma === "" ? Number(low) : high === "" ? Infinity : Number(high);
  return { atom, least: Number(low), most };
}

function atomAt(cursor: { rest: string }): Piece["atom"] {
  if (take(cursor, /^\((?:\?:|(?!\?))/)) {
    const alternatives = alternativesAt(cursor);
    if (!take(cursor, /^\)/)) throw new Error("a group without an end");
    return alternatives;
  }
  const atom = take(cursor, /^\[(?:\\.|[^\]\\])+\]/su) ?? take(cursor, ATOM);
  if (atom === undefined) throw new Error(`not understood: ${cursor.rest}`);
  return atom;
}

function take(cursor: { rest: string }, pattern: RegExp): string | undefined {
  const found = pattern.exec(cursor.rest)?.[0];
  if (found !== undefined) cursor.rest = cursor.rest.slice(found.length);
  return found;
}
