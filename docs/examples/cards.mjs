// Prints a drill card for every design in this folder, and one repair. The necks are invented, of one invented shop.
import { readdirSync, readFileSync } from "node:fs";
import { checkDesign, repairHole, SIXTEENTHS, WHOLE_MILLIMETRES } from "marker-depth";
import { drillCard, repairNote } from "marker-depth/card";

const here = new URL("./", import.meta.url);
const unit = process.argv.includes("--inches") ? "in" : "mm";
const designFrom = (file) => JSON.parse(readFileSync(new URL(file, here), "utf8"));

for (const file of readdirSync(here).sort()) {
  if (file.endsWith(".json")) console.log(drillCard(checkDesign(designFrom(file)), { unit }));
}

// a stray hole of the first neck: the bass dot at the twelfth fret, 0.4 mm off its mark
const rack = unit === "in" ? SIXTEENTHS : WHOLE_MILLIMETRES;
const stray = { fret: 12, side: "bass", error: 0.4 };
console.log(repairNote(repairHole(designFrom("larch-22.json"), stray, rack), { unit }));
