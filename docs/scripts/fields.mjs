// Writes the table of a design's fields into docs/design-file.md, from the JSON Schema. With --print it only prints it.
import { readFileSync, writeFileSync } from "node:fs";

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

const rows = [...new Set(rowsOf(schema, ""))];
const table = ["| Field | What | Needed |", "|---|---|---|", ...rows].join("\n");
if (process.argv.includes("--print")) console.log(table);
else {
  const text = readFileSync(page, "utf8");
  const between = /(<!-- fields:begin -->\n)[\s\S]*?(<!-- fields:end -->)/;
  writeFileSync(
    page,
    text.replace(between, (_, begin, end) => `${begin}${table}\n${end}`),
  );
}
