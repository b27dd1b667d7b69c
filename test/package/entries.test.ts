/** What each entry exports, pinned: a name that comes or goes is a change for users. */
import { expect, test } from "vitest";
import * as card from "../../src/card.js";
import * as core from "../../src/index.js";

test("the core", () => {
  expect(Object.keys(core).sort()).toEqual([
    "DEFAULTS",
    "DesignError",
    "HALF_MILLIMETRES",
    "LIMITS",
    "SIXTEENTHS",
    "WHOLE_MILLIMETRES",
    "checkDesign",
    "checkMany",
    "diagonalCrossing",
    "fretLines",
    "fretPositions",
    "frontier",
    "holeWindow",
    "profileAt",
    "radiusFromSagitta",
    "removalAt",
    "repairHole",
    "sagitta",
    "stopSettings",
    "sweep",
  ]);
});

test("the card", () => {
  expect(Object.keys(card)).toEqual(["drillCard", "repairNote"]);
});
