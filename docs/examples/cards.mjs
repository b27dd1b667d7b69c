// Prints a drill card for every design in this folder. All four necks are invented, of one invented shop.
import { readdirSync, readFileSync } from "node:fs";
import { checkDesign } from "marker-depth";
import { drillCard } from "marker-depth/card";

const here = new URL("./", import.meta.url);
const unit = process.argv.includes("--inches") ? "in" : "mm";

for (const file of readdirSync(here).sort()) {
  if (!file.endsWith(".json")) continue;
  const design = JSON.parse(readFileSync(new URL(file, here), "utf8"));
  console.log(drillCard(checkDesign(design), { unit }));
}
