/** What the fuzzer has found, each with its smallest reproduction, so that it stays mended. */
import { expect } from "vitest";
import { drillCard } from "../../src/card/index.js";
import { drawSweep } from "../../src/draw/index.js";
import * as core from "../../src/index.js";
import * as units from "../../src/units/index.js";

export interface Mended {
  /** How it was. */
  readonly what: string;
  /** Passes where the defect is gone. */
  readonly holds: () => void;
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

export const MENDED: readonly Mended[] = [
  {
    what: 'text is taken for a number: diagonalCrossing(450, "44", "56") is 4.44 along, not 198',
    holds: () => {
      expectRefusal(() => core.sagitta("254" as never, 20));
      expectRefusal(() => core.radiusFromSagitta(8, "6" as never));
      expectRefusal(() => core.diagonalCrossing(450, "44" as never, 56));
      expectRefusal(() => core.stopSettings([{ min: 1, max: 2 }], { step: "0.1" as never }));
      expectRefusal(() => core.sweep(SMALL, { radius: [254] }).valuesAt("0" as never));
    },
  },
  {
    what: "a symbol, a big integer, an object: an error of the language's own, or no value in the message",
    holds: () => {
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
    holds: () => {
      expectRefusal(() => core.checkMany(1 as never));
      expectRefusal(() => core.checkMany(revoked()));
    },
  },
  {
    what: "holeWindow: beyond the finished surface a RangeError that is not in its docstring, with no value",
    holds: () =>
      expectRefusal(() => core.holeWindow(SMALL, { along: 9, offset: 300, diameter: 6 })),
  },
  {
    what: "profileAt: a getter of the design that throws is not told as an issue",
    holds: () => expectRefusal(() => core.profileAt(43, 0, revoked())),
  },
  {
    what: "sweep: what an untouchable part of the design throws comes through, options of null too",
    holds: () => {
      const board = revoked();
      expectRefusal(() => core.sweep({ ...SMALL, board }, { "board.width": [50] }));
      expectRefusal(() => core.sweep(SMALL, { radius: [254] }, null as never));
    },
  },
  {
    what: "formatLength: options of null, or untouchable ones, are a TypeError",
    holds: () => {
      expectRefusal(() => units.formatLength(6, null as never));
      expectRefusal(() => units.formatLength(6, revoked()));
    },
  },
  {
    what: "mathFunctions: what an untouchable argument throws comes through",
    holds: () => expectRefusal(() => units.mathFunctions.sagitta(revoked(), 20)),
  },
  {
    what: "drawSweep: untouchable options throw their own error; a held path that is none names no value",
    holds: () => {
      const rows = core.sweep(SMALL, { radius: [184, 254] });
      expectRefusal(() => drawSweep(rows, revoked()));
      expectRefusal(() => drawSweep(rows, { held: { web: 0 } }));
    },
  },
  {
    what: "sweep: copies a list of the design before its length is looked at",
    holds: () => {
      const markers = Object.assign([], { length: 2 ** 32 - 1 });
      expectRefusal(() => core.sweep({ ...SMALL, markers }, { "markers.0.diameter": [6] }));
    },
  },
  {
    what: "frontier: a sweep whose axis was changed by hand to a text is halved for ever",
    holds: () => {
      const rows = core.sweep(SMALL, { radius: [184, 254] });
      const axes = [{ path: "radius" as const, values: [184, "x" as never] }];
      expectRefusal(() => core.frontier({ ...rows, axes }, "radius"));
    },
  },
  {
    what: "stopSettings: a sparse list of 2^32 − 1 windows is walked",
    holds: () => expectRefusal(() => core.stopSettings(Object.assign([], { length: 2 ** 32 - 1 }))),
  },
  {
    what: "drillCard: sought what cures each of 999 findings on 500 holes, for minutes",
    holds: () => {
      const positions = Array.from({ length: 250 }, (_, i) => 2 * (i + 1));
      const frets = positions.map((_, i) => i + 1);
      const design: core.Design = {
        scale: { positions },
        board: { length: 502, width: 50, thickness: 6 },
        radius: 254,
        markers: [{ frets, diameter: 6, arrangement: "double" }],
      };
      expect(drillCard(core.checkDesign(design))).toContain("cures: not sought");
    },
  },
];
