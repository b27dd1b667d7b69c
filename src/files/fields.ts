/** The schemas of a design's fields: lengths as numbers or text, profiles, and numbers that are no lengths. */
import * as v from "valibot";
import { LIMITS, type Station } from "../design/design.js";
import {
  ANGLE,
  type Bound,
  didYouMean,
  FRACTION,
  PART,
  RADIUS,
  SHARE,
  SIZE,
  SIZE_OR_ZERO,
  wholeUpTo,
} from "../design/read-fields.js";
import { nearestName } from "../text/nearest-name.js";
import { LONGEST } from "../units/scan.js";
import { choice, expecting, isObject, optional, strict } from "./choice.js";
import { LENGTH_PATTERN, lengthIn } from "./length.js";

const LEAST = LIMITS.leastLength.value;
const MOST = LIMITS.mostLength.value;
const FRETS = LIMITS.frets.value;
const AS_TEXT = 'or a text with its unit, as "1/4 in"';

/** A kind of length: its bound, the words for it, and how an editor is told of it. */
interface LengthKind {
  readonly bound: Bound;
  readonly what: string;
  readonly range: NumberRange;
  readonly examples: readonly string[];
  /** A word for an infinite one. */
  readonly infinite?: string;
}

const MORE_THAN_ZERO: LengthKind = {
  bound: SIZE,
  what: `${SIZE.what}, ${AS_TEXT}`,
  range: { minimum: LEAST, maximum: MOST },
  examples: ["1/4 in", "6.35 mm"],
};
const ZERO_OR_MORE: LengthKind = {
  bound: SIZE_OR_ZERO,
  what: `${SIZE_OR_ZERO.what}, ${AS_TEXT}`,
  range: {
    minimum: 0,
    maximum: MOST,
    not: { type: "number", exclusiveMinimum: 0, exclusiveMaximum: LEAST },
  },
  examples: ["1/32 in", "0.8 mm"],
};
const FINISHED: LengthKind = {
  bound: RADIUS,
  what: `${SIZE.what.replace("a length", "a radius")}, ${AS_TEXT}, or "flat"`,
  range: { minimum: LEAST, maximum: MOST },
  examples: ["flat", "12 in", "305 mm"],
  infinite: "flat",
};

const sizeForms = formsOf(MORE_THAN_ZERO);
const sizeOrZeroForms = formsOf(ZERO_OR_MORE);
const radiusForms = formsOf(FINISHED);

/** A length of more than 0. */
export const size = length(sizeForms);
/** A length of 0 or more. */
export const sizeOrZero = length(sizeOrZeroForms);
/** A radius, or "flat". */
export const radius = length(radiusForms);

/** A length of more than 0 along the board. */
export const sizes = profile(sizeForms, stations(size));
/** A length of 0 or more along the board. */
export const sizesOrZero = profile(sizeOrZeroForms, stations(sizeOrZero));
/** A radius along the board. */
export const radii = profile(
  radiusForms,
  v.pipe(
    stations(radius),
    v.check(
      (values) => isFlatThroughoutOrNowhere(values),
      expecting('a radius that is "flat" at every station or at none'),
    ),
  ),
);

/** A fraction that stays below the whole. */
export const fraction = numberWithin(FRACTION, { minimum: 0, exclusiveMaximum: 1 });
/** A fraction that may exceed the whole. */
export const share = numberWithin(SHARE, { minimum: 0, maximum: 1000 });
/** A part of a ratio. */
export const part = numberWithin(PART, { minimum: 0.001, maximum: 1000 });
/** The included angle of a bit's point. */
export const angle = numberWithin(ANGLE, {
  minimum: LIMITS.leastAngle.value,
  maximum: LIMITS.mostAngle.value,
});
/** A fret's number, or how many there are. */
export const fret = numberWithin(wholeUpTo(FRETS), { type: "integer", minimum: 1, maximum: FRETS });
/** A place between frets; 0 is the nut. */
export const fretPlace = numberWithin(
  {
    what: `a fret from 0 (the nut) to ${FRETS}, fractions allowed`,
    accepts: (place) => place >= 0 && place <= FRETS,
  },
  { minimum: 0, maximum: FRETS },
);
/** Any text. */
export const text = v.string(expecting("a text"));

/** What JSON Schema says of a number's bound. */
export interface NumberRange {
  readonly type?: "integer";
  readonly minimum: number;
  readonly maximum?: number;
  readonly exclusiveMaximum?: number;
  readonly not?: NotBetween;
}

export interface NotBetween {
  readonly type: "number";
  readonly exclusiveMinimum: number;
  readonly exclusiveMaximum: number;
}

function numberWithin({ what, accepts }: Bound, range: NumberRange) {
  const message = expecting(what);
  return v.pipe(v.number(message), v.check(accepts, message), v.metadata({ ...range }));
}

/** A length as a number and as text. */
function formsOf(kind: LengthKind) {
  const { bound, what, range } = kind;
  return { number: numberWithin({ what, accepts: bound.accepts }, range), text: lengthText(kind) };
}

type LengthForms = ReturnType<typeof formsOf>;

function length(forms: LengthForms) {
  return choice([forms.number, forms.text], (input) => formOf(input, forms));
}

/** A length that holds throughout, or values at stations. */
function profile<Stations extends v.GenericSchema>(forms: LengthForms, atStations: Stations) {
  return choice([forms.number, forms.text, atStations], (input) =>
    isObject(input) ? atStations : formOf(input, forms),
  );
}

function formOf(input: unknown, { number, text }: LengthForms) {
  return typeof input === "string" ? text : number;
}

/** Text that is read as a length in mm. */
function lengthText({ bound, what, examples, infinite }: LengthKind) {
  const pattern = infinite === undefined ? LENGTH_PATTERN : `^${infinite}$|${LENGTH_PATTERN}`;
  return v.pipe(
    v.string(),
    v.metadata({ pattern, maxLength: LONGEST, examples: [...examples] }),
    v.rawTransform<string, number>(({ dataset, addIssue, NEVER }) => {
      if (dataset.value === infinite) return Infinity;
      const mm = lengthIn(dataset.value);
      if (typeof mm === "number" && bound.accepts(mm)) return mm;
      const wanted = typeof mm === "number" ? what : mm + alternative(infinite, dataset.value);
      addIssue({ message: expecting(wanted) });
      return NEVER;
    }),
  );
}

function alternative(word: string | undefined, input: string): string {
  return word === undefined ? "" : `, or "${word}"${didYouMean(nearestName(input, [word]))}`;
}

/** Values at one station or more. */
function stations<Value extends v.GenericSchema>(value: Value) {
  const atFret = optional(value, "At this fret, mm.");
  const frets = Array.from({ length: FRETS }, (_, i) => [`fret${i + 1}`, atFret] as const);
  const entries: Record<Station, typeof atFret> = {
    nut: optional(value, "At the nut, mm."),
    end: optional(value, "At the body end, mm."),
    ...Object.fromEntries(frets),
  };
  const names = Object.keys(entries);
  const unknown = (name: string) =>
    `a station: "nut", "end", "fret1" to "fret${FRETS}"${didYouMean(nearestName(name, names))}`;
  return v.pipe(
    strict(entries, unknown),
    v.minEntries(1, expecting("a value at one station or more")),
  );
}

function isFlatThroughoutOrNowhere(values: object): boolean {
  const flat = Object.values(values).map((value) => value === Infinity);
  return flat.every((each) => each === flat[0]);
}
