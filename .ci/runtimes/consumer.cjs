// Requires every entry, as CommonJS.
const job = require("./job.cjs");

const entries = {
  core: require("marker-depth"),
  card: require("marker-depth/card"),
  draw: require("marker-depth/draw"),
  files: require("marker-depth/files"),
  measured: require("marker-depth/measured"),
  chance: require("marker-depth/chance"),
  notebook: require("marker-depth/notebook"),
  units: require("marker-depth/units"),
};
import("./runtime.mjs").then(({ runtime }) => {
  console.log(JSON.stringify({ runtime: runtime(), ...job(entries) }));
});
