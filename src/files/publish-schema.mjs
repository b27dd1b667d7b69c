// Puts the JSON Schema beside the built files.
import { copyFileSync } from "node:fs";

const root = new URL("../../", import.meta.url);
copyFileSync(
  new URL("src/files/design.schema.json", root),
  new URL("dist/design.schema.json", root),
);
