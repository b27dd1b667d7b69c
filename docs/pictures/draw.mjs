// Draws the pictures of this folder, or those of the folder that is named, from the example necks. All are invented.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { checkDesign, sweep } from "marker-depth";
import { drawBoard, drawSection, drawSweep, drawWindows } from "marker-depth/draw";

const here = fileURLToPath(new URL("./", import.meta.url));
const folder = resolve(process.argv[2] ?? here);

// the marker that tells most of each neck
const SECTIONS = {
  "acacia-22": { fret: 12, side: "bass" },
  "finch-20": { fret: 12, side: "bass" },
  "siskin-21": { fret: 12, side: "centre" },
  "larch-22": { fret: 12, side: "bass" },
  "alder-24": { fret: 24, side: "bass" },
  "heron-bass": { fret: 3, side: "centre" },
  "wren-tenor": { fret: 12, side: "bass" },
  "plover-fanned": { fret: 12, side: "centre" },
};

const designOf = (neck) =>
  JSON.parse(readFileSync(new URL(`../examples/${neck}.json`, import.meta.url), "utf8"));

mkdirSync(folder, { recursive: true });
const write = (name, svg) => writeFileSync(resolve(folder, `${name}.svg`), svg);

for (const [neck, { fret, side }] of Object.entries(SECTIONS)) {
  const report = checkDesign(designOf(neck));
  const hole = report.holes.findIndex((other) => other.fret === fret && other.side === side);
  write(`${neck}-board`, drawBoard(report));
  write(`${neck}-windows`, drawWindows(report));
  write(`${neck}-section`, drawSection(report, hole));
  if (neck === "larch-22") {
    write(`${neck}-section-true`, drawSection(report, hole, { exaggeration: 1 }));
  }
}

const rows = sweep(designOf("wren-tenor"), {
  radius: [150, 184, 203, 241, 254, 305, 356, 406, Infinity],
  "board.thickness.end": [2.6, 2.7, 2.8, 2.9, 3, 3.1, 3.2, 3.3],
});
write("wren-tenor-sweep", drawSweep(rows));
