// Writes the tables of a design's fields and of the defaults into docs/design-file.md, from the JSON Schema and the
// built package. With --print it only prints them.
import { readFileSync, writeFileSync } from "node:fs";
import { DEFAULTS } from "marker-depth";

const schema = JSON.parse(
  readFileSync(new URL("../../src/files/design.schema.json", import.meta.url), "utf8"),
);
const page = new URL("../design-file.md", import.meta.url);

const resolved = (part) => (part.$ref ? schema.$defs[part.$ref.replace("#/$defs/", "")] : part);

/** The rows of an object's fields and, below each, of its own. */
function rowsOf(part, path) {
  const whole = resolved(part);
  const kinds = whole.anyOf ?? whole.oneOf;
  if (kinds) return kinds.flatMap((kind) => rowsOf(kind, path));
  if (whole.type === "array" && !Array.isArray(whole.items)) {
    return whole.items ? rowsOf(whole.items, `${path}.0`) : [];
  }
  if (!whole.properties || path.endsWith("Profile")) return [];
  return Object.entries(whole.properties)
    .filter(([key]) => key !== "$schema")
    .flatMap(([key, field]) => fieldRows(whole, key, field, path));
}

function fieldRows(whole, key, field, path) {
  const here = path === "" ? key : `${path}.${key}`;
  const needed = whole.required?.includes(key) ? "yes" : "";
  const isProfile = /Profile$/.test(field.$ref ?? "");
  const words = (field.enum ?? (field.const === undefined ? [] : [field.const])).map(
    (word) => `\`"${word}"\``,
  );
  const value = words.length > 0 ? ` ${words.join(" or ")}.` : "";
  // a group's own fill and bit have the fields of the shared ones
  const isShared = path === "markers.0" && (key === "fill" || key === "bit");
  const what = `${field.description ?? ""}${isProfile ? " A profile." : ""}${isShared ? ` As \`${key}\`.` : ""}${value}`;
  const row = `| \`${here}\` | ${what.replaceAll("|", "\\|")} | ${needed} |`;
  return isProfile || isShared ? [row] : [row, ...rowsOf(field, here)];
}

const defaults = [
  "| Default | Value |",
  "|---|--:|",
  ...Object.entries(DEFAULTS).map(([name, { value, unit }]) => `| ${name} | ${value} ${unit} |`),
].join("\n");

const rows = [...new Set(rowsOf(schema, ""))];
const table = ["| Field | What | Needed |", "|---|---|---|", ...rows].join("\n");
const parts = { fields: table, defaults };
if (process.argv.includes("--print")) console.log(JSON.stringify(parts));
else {
  let text = readFileSync(page, "utf8");
  for (const [name, part] of Object.entries(parts)) {
    const between = new RegExp(`(<!-- ${name}:begin -->\n)[\\s\\S]*?(<!-- ${name}:end -->)`);
    text = text.replace(between, (_, begin, end) => `${begin}${part}\n${end}`);
  }
  writeFileSync(page, text);
}
