// Imports every entry, as an ES module.
import * as core from "marker-depth";
import * as card from "marker-depth/card";
import * as chance from "marker-depth/chance";
import * as draw from "marker-depth/draw";
import * as files from "marker-depth/files";
import * as measured from "marker-depth/measured";
import * as notebook from "marker-depth/notebook";
import * as units from "marker-depth/units";
import job from "./job.cjs";
import { runtime } from "./runtime.mjs";

const entries = { core, card, units, files, draw, notebook, measured, chance };
const result = { runtime: runtime(), ...job(entries) };
if (typeof document === "undefined") console.log(JSON.stringify(result));
else globalThis.result = JSON.stringify(result);
