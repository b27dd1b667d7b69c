/** What each entry exports, pinned: a name that comes or goes is a change for users. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import * as card from "../../src/card/index.js";
import * as chance from "../../src/chance/index.js";
import * as draw from "../../src/draw/index.js";
import * as files from "../../src/files/index.js";
import * as core from "../../src/index.js";
import * as measured from "../../src/measured/index.js";
import * as notebook from "../../src/notebook/index.js";
import * as units from "../../src/units/index.js";

const PACKAGE = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));

test("the entries, and the command", () => {
  expect(Object.keys(PACKAGE.exports)).toEqual([
    ".",
    "./card",
    "./units",
    "./files",
    "./draw",
    "./notebook",
    "./measured",
    "./chance",
    "./design.schema.json",
    "./package.json",
  ]);
  expect(PACKAGE.bin).toEqual({ "marker-depth": "./dist/cli.js" });
});

test("the core", () => {
  expect(Object.keys(core).sort()).toEqual([
    "DEFAULTS",
    "DesignError",
    "FINDING_CODES",
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
    "remediesFor",
    "remedyPairFor",
    "removalAt",
    "repairHole",
    "sagitta",
    "stopSettings",
    "sweep",
  ]);
});

test("the card", () => {
  expect(Object.keys(card).sort()).toEqual(["drillCard", "repairNote", "sandingNote"]);
});

test("the units", () => {
  expect(Object.keys(units).sort()).toEqual(["formatLength", "length", "mathFunctions"]);
});

test("the design files", () => {
  expect(Object.keys(files).sort()).toEqual([
    "FILE_LIMITS",
    "designSchema",
    "readDesign",
    "writeDesign",
  ]);
});

test("the pictures", () => {
  expect(Object.keys(draw).sort()).toEqual([
    "drawBoard",
    "drawChance",
    "drawSanding",
    "drawSection",
    "drawSweep",
    "drawTemplate",
    "drawWindows",
  ]);
});

test("the notebook", () => {
  expect(Object.keys(notebook).sort()).toEqual(["checkDesign", "html", "show"]);
});

test("what is measured", () => {
  expect(Object.keys(measured).sort()).toEqual([
    "calibrateStop",
    "dimensionalChange",
    "equilibriumMoisture",
    "fitCompound",
    "fitRadius",
    "leastSanding",
    "radiusFromGauge",
    "sandingProgress",
  ]);
});

test("how likely all goes well", () => {
  expect(Object.keys(chance).sort()).toEqual([
    "bestTravel",
    "conformanceProbability",
    "failingOverTravel",
    "summarizeChance",
  ]);
});
