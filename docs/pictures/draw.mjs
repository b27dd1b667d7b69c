// Draws the pictures of this folder, or those of the folder that is named, from the example necks. All are invented.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { checkDesign, sweep } from "marker-depth";
import { drawBoard, drawSanding, drawSection, drawSweep, drawWindows } from "marker-depth/draw";
import { calibrateStop } from "marker-depth/measured";

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

// the neck of docs/measure.md half-way, and one whose block leaned on the bass side for too long
const acacia = designOf("acacia-22");
const trials = [4.31, 4.28, 4.33, 4.3, 4.28].map((tip) => ({ travel: 4.25, tip }));
const { correction, tolerance } = calibrateStop(trials, { resolution: 0.01, holes: 10 });
const measured = {
  ...acacia,
  stop: { ...acacia.stop, correction },
  tolerance: { stop: tolerance },
};
const drilled = { ...measured, travel: checkDesign(measured).stops.settings[0].travel };
const sanded = (...rows) =>
  drawSanding(
    drilled,
    rows.map(([along, centre, bass, treble]) => ({ along, centre, bass, treble })),
  );
const HALF_WAY = [
  ["nut", 6.16, 5.62, 5.52],
  ["fret12", 6.12, 5.28, 5.2],
  ["end", 6.1, 5.05, 4.98],
];
const TOO_FAR = [
  ["nut", 6.06, 5.2, 5.4],
  ["fret12", 5.7, 3.6, 4.9],
  ["end", 6.05, 4.6, 4.8],
];
write("acacia-22-sanding", sanded(...HALF_WAY));
write("acacia-22-sanding-too-far", sanded(...TOO_FAR));
