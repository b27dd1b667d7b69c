// Prints a drill card for every design in this folder, and one repair. The necks are invented, of one invented shop.
import { readdirSync, readFileSync } from "node:fs";
import { checkDesign, HALF_MILLIMETRES, repairHole, SIXTEENTHS } from "marker-depth";
import { drillCard, repairNote } from "marker-depth/card";

const here = new URL("./", import.meta.url);
const unit = process.argv.includes("--inches") ? "in" : "mm";
const designFrom = (file) => JSON.parse(readFileSync(new URL(file, here), "utf8"));

for (const file of readdirSync(here).sort()) {
  if (!file.endsWith(".json")) continue;
  const design = designFrom(file);
  console.log(drillCard(checkDesign(design), { unit, design }));
}

// a stray hole of the first neck: the bass dot at the twelfth fret, 0.4 mm off its mark
const rack = unit === "in" ? SIXTEENTHS : HALF_MILLIMETRES;
const stray = { fret: 12, side: "bass", error: 0.4 };
const design = designFrom("acacia-22.json");
console.log(repairNote(repairHole(design, stray, rack), { unit, design }));
