/** What is written on pictures, and what they tell those who cannot see them, as it is kept in test/golden/draw. */
import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { drawSection } from "../../src/draw/index.js";
import { golden } from "../golden/golden.js";
import { reportOf } from "./gallery.js";
import { type Picture, picturesOf, sandings, sweeps } from "./pictures.js";
import { read, wordsIn } from "./svg.js";

const NAMES = [
  "plain",
  "one setting does not do",
  "no window",
  "zeroed on the table",
  "drilled already",
  "blocks",
  "on a neck, under an old radius",
  "no holes",
];

const fileOf = (name: string) => `draw/${name.replaceAll(/[^a-z]+/g, "-")}.txt`;

function tell({ name, svg }: Picture): string {
  const spoken = read(svg).elements.find(({ tag }) => tag === "desc")?.text;
  // bare figures are held elsewhere, as data
  const words = wordsIn(svg).filter((text) => /[a-z]{3}/.test(text) && text !== "nut");
  return [`== ${name}`, ...new Set(words), "-- spoken", spoken, ""].join("\n");
}

test.each(NAMES)("%s", async (name) => {
  // the section at the first hole off the centre line
  const report = reportOf(name);
  const aside = report.holes.findIndex(({ offset }) => Math.abs(offset) > 1);
  const plan = picturesOf(name, report, 0);
  const section = aside < 0 ? [] : [{ name: "section", svg: drawSection(report, aside) }];
  await golden(fileOf(name), [...plan, ...section].map(tell).join("\n"));
});

test("sweeps", async () => {
  const told = sweeps().filter(({ name }) => !/as many|long/.test(name));
  await golden(fileOf("sweeps"), told.map(tell).join("\n"));
});

test("sanding", async () => {
  await golden(fileOf("sanding"), sandings().slice(0, 4).map(tell).join("\n"));
});

test("in inches", async () => {
  const [plan, windows, section] = picturesOf("inches", reportOf("plain"), 1, "in");
  await golden(
    fileOf("inches"),
    [plan, windows, section].map((each) => tell(each as Picture)).join("\n"),
  );
});

test("nothing is kept that is not held", () => {
  const kept = readdirSync(new URL("../golden/draw/", import.meta.url));
  expect(kept.map((file) => `draw/${file}`).sort()).toEqual(
    [...NAMES, "sweeps", "sanding", "inches"].map(fileOf).sort(),
  );
});
