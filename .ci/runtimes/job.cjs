// What every runtime is asked to do with the entries. The neck is invented.
const TEXT = `{
  "name": "tried on every runtime",
  "scale": { "length": "25.5 in", "frets": 24 },
  "board": { "length": 500, "width": { "nut": 43, "end": "57 mm" }, "thickness": "1/4 in" },
  "radius": { "nut": "10 in", "end": "16 in" },
  "markers": [
    { "frets": [3, 5, 7, 9], "diameter": 6.35 },
    { "frets": [12, 24], "diameter": 6.35, "arrangement": "double" }
  ],
  "slot": { "depth": 4, "tang": 1.8 },
  "bit": { "kind": "twist" }
}`;

function caught(work) {
  try {
    return work();
  } catch (error) {
    return error;
  }
}

/** Plain data, the same wherever it is computed. */
module.exports = function job({ core, card, units, files, draw, notebook, measured, chance }) {
  const design = files.readDesign(TEXT);
  const report = core.checkDesign(design);
  const refused = caught(() => files.readDesign(TEXT.replace('"1/4 in"', '"1/4 inn"')));
  const standard = files.designSchema["~standard"].validate({ ...design, radius: "flat" });
  return {
    names: [core, card, units, files, draw, notebook, measured, chance].map((entry) =>
      Object.keys(entry).filter(isName).sort(),
    ),
    lengths: [design.scale.length, design.board.thickness, units.length("1 1/2 in")],
    ok: report.ok,
    holes: report.holes.length,
    card: card.drillCard(report, { unit: "in" }),
    refused: [refused.name === "DesignError", refused.issues[0].line, refused.issues[0].path],
    again: caught(() => files.readDesign(files.writeDesign(design, { unit: "in" }))),
    gauge: measured.leastSanding(184, 305, 26),
    chance: chance.conformanceProbability(design).holds > 0,
    flat: standard.value.radius === Infinity,
    many: [...core.checkMany([design, design])].length,
    pictures: [draw.drawBoard(report), draw.drawWindows(report), draw.drawSection(report, 0)].map(
      (svg) => /^<(?:svg|\?xml)/.test(svg),
    ),
  };
};

/** What runtimes add to a module that was required or imported. */
function isName(key) {
  return !["default", "__esModule", "module.exports"].includes(key);
}
