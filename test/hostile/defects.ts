/**
 * What the fuzzer has found and is yet to be mended. Each has its smallest reproduction, which a test expects to
 * fail: once it is mended that test turns red, and the entry goes.
 */
import { expect } from "vitest";
import { drawSweep } from "../../src/draw/index.js";
import * as core from "../../src/index.js";
import * as units from "../../src/units/index.js";

export interface Defect {
  readonly what: string;
  /** The functions that have it, and the problems that it shows itself by. */
  readonly of: RegExp;
  readonly sign: RegExp;
  /** Passes where the defect is gone. */
  readonly mended: () => void;
}

const SMALL: core.Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: 50, thickness: 6 },
  radius: 254,
  markers: [{ frets: [5], diameter: 6 }],
};

const revoked = (): never => {
  const { proxy, revoke } = Proxy.revocable({}, {});
  revoke();
  return proxy as never;
};

/** A refusal in this package's own words. */
function expectRefusal(call: () => unknown): void {
  expect(call).toThrow(/: expected .+, received .+/);
  expect(call).toThrow(RangeError);
}

export const DEFECTS: readonly Defect[] = [
  {
    what: 'text is taken for a number: diagonalCrossing(450, "44", "56") is 4.44 along, not 198',
    of: /^core\.(sagitta|radiusFromSagitta|diagonalCrossing|stopSettings|sweep\(\)\..*)$/,
    sign: /^took for a number/,
    mended: () => {
      expectRefusal(() => core.sagitta("254" as never, 20));
      expectRefusal(() => core.radiusFromSagitta(8, "6" as never));
      expectRefusal(() => core.diagonalCrossing(450, "44" as never, 56));
      expectRefusal(() => core.stopSettings([{ min: 1, max: 2 }], { step: "0.1" as never }));
      expectRefusal(() => core.sweep(SMALL, { radius: [254] }).valuesAt("0" as never));
    },
  },
  {
    what: "a symbol, a big integer, an object: an error of the language's own, or no value in the message",
    of: /^core\.(sagitta|radiusFromSagitta|diagonalCrossing|stopSettings|sweep\(\)\..*)$/,
    sign: /not promised|^no (?:value|path)/,
    mended: () => {
      expectRefusal(() => core.sagitta(Symbol("a") as never, 20));
      expectRefusal(() => core.sagitta(254n as never, 20));
      expectRefusal(() => core.sagitta("" as never, 20));
      expectRefusal(() => core.radiusFromSagitta(Object.create(null), 6));
      expectRefusal(() => core.diagonalCrossing(revoked(), 44, 56));
      expectRefusal(() => core.stopSettings(undefined as never));
      expectRefusal(() => core.stopSettings([undefined as never]));
      expectRefusal(() => core.stopSettings([{ min: Symbol("a") as never, max: 2 }]));
      expectRefusal(() => core.sweep(SMALL, { radius: [254] }).at(Symbol("a") as never));
    },
  },
  {
    what: "checkMany: its RangeError is not in its docstring, and names no value; a revoked proxy is a TypeError",
    of: /^core\.checkMany$/,
    sign: /RangeError is not promised: designs|no value|revoked/,
    mended: () => {
      expectRefusal(() => core.checkMany(1 as never));
      expectRefusal(() => core.checkMany(revoked()));
    },
  },
  {
    what: "holeWindow: beyond the finished surface a RangeError that is not in its docstring, with no value",
    of: /^core\.holeWindow$/,
    sign: /RangeError is not promised|no value/,
    mended: () =>
      expectRefusal(() => core.holeWindow(SMALL, { along: 9, offset: 300, diameter: 6 })),
  },
  {
    what: "profileAt: a getter of the design that throws is not told as an issue",
    of: /^core\.profileAt$/,
    sign: /not to be touched|revoked/,
    mended: () => expectRefusal(() => core.profileAt(43, 0, revoked())),
  },
  {
    what: "sweep: what an untouchable part of the design throws comes through, options of null too",
    of: /^core\.sweep$/,
    sign: /not to be touched|revoked|TypeError|no value|not promised/,
    mended: () => {
      const board = revoked();
      expectRefusal(() => core.sweep({ ...SMALL, board }, { "board.width": [50] }));
      expectRefusal(() => core.sweep(SMALL, { radius: [254] }, null as never));
    },
  },
  {
    what: "formatLength: options of null, or untouchable ones, are a TypeError",
    of: /^units\.formatLength$/,
    sign: /TypeError|not to be touched/,
    mended: () => {
      expectRefusal(() => units.formatLength(6, null as never));
      expectRefusal(() => units.formatLength(6, revoked()));
    },
  },
  {
    what: "mathFunctions: what an untouchable argument throws comes through",
    of: /^units\.mathFunctions\./,
    sign: /not to be touched|revoked|TypeError/,
    mended: () => expectRefusal(() => units.mathFunctions.sagitta(revoked(), 20)),
  },
  {
    what: "drawSweep: untouchable options throw their own error; a held path that is none names no value",
    of: /^draw\.drawSweep$/,
    sign: /not to be touched|revoked|no value/,
    mended: () => {
      const rows = core.sweep(SMALL, { radius: [184, 254] });
      expectRefusal(() => drawSweep(rows, revoked()));
      expectRefusal(() => drawSweep(rows, { held: { web: 0 } }));
    },
  },
  {
    what: "sweep: copies a list of the design before its length is looked at (tried by no test)",
    of: /^no function$/,
    sign: /^no problem$/,
    mended: () =>
      expect.unreachable(
        'sweep({ ...SMALL, markers: Object.assign([], { length: 2 ** 32 - 1 }) }, { "markers.0.diameter": [6] })',
      ),
  },
  {
    what: "frontier: a sweep whose axis was changed by hand to a text is halved for ever (tried by no test)",
    of: /^no function$/,
    sign: /^no problem$/,
    mended: () =>
      expect.unreachable('frontier({ ...rows, axes: [{ path, values: [1, "x"] }] }, path)'),
  },
  {
    what: "stopSettings: a sparse list of 2^32 − 1 windows is walked (tried by no test)",
    of: /^no function$/,
    sign: /^no problem$/,
    mended: () => expect.unreachable("stopSettings(Object.assign([], { length: 2 ** 32 - 1 }))"),
  },
];

/** Whether a problem is one of these. */
export function isKnown(name: string, problem: string): boolean {
  return DEFECTS.some(({ of, sign }) => of.test(name) && sign.test(problem));
}
