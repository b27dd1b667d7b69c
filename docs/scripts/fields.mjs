// Writes the tables of a design's fields and of the defaults into docs/design-file.md, from the table of fields in
// src/design. With --print it only prints them.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const page = new URL("../design-file.md", import.meta.url);

const contents = 'export * from "./fields.js"; export * from "./defaults.js";';
const stdin = { contents, resolveDir: `${ROOT}src/design`, loader: "ts" };
const { outputFiles } = await build({ stdin, bundle: true, format: "esm", write: false });
const source = `data:text/javascript,${encodeURIComponent(outputFiles[0].text)}`;
const { DESIGN, DEFAULTS, LAW } = await import(source);

/** The rows of a form: its fields, and those of its cases, each with the case that it is of. */
function rowsOf(form, path, only = "") {
  const cases = (form.variants ?? []).flatMap(({ tag, optional, says, cases }) => {
    const names = Object.keys(cases);
    const words = names.map((name) => `\`"${name}"\``).join(", ");
    const own = tag
      ? [row(`${path}${tag}`, only, says, words, optional ? `\`"${names[0]}"\`` : "needed")]
      : [];
    const within = names.flatMap((name) =>
      rowsOf(cases[name], path, tag ? `${tag} \`"${name}"\`` : ""),
    );
    return [...own, ...within];
  });
  const own = Object.entries(form.fields).flatMap(([key, field]) =>
    fieldRows(field, `${path}${key}`, only),
  );
  return path === "" ? own : [...cases, ...own];
}

function fieldRows(field, path, only) {
  const inGroup = path.startsWith("markers.0.");
  const isShared = inGroup && Object.values(DESIGN.fields).includes(field);
  const top = path.split(".").at(-1);
  const says = isShared ? `${field.says} As \`${top}\`.` : field.says;
  const own = row(path, only, says, valuesOf(field), leftOut(field));
  if (isShared) return [own];
  if (field.kind === "object") return [own, ...rowsOf(field, `${path}.`)];
  const isList = field.kind === "list" && field.item.kind === "object";
  return isList ? [own, ...rowsOf(field.item, `${path}.0.`)] : [own];
}

function row(path, only, says, values, usual) {
  const where = only === "" ? "" : ` (${only})`;
  return `| \`${path}\`${where} | ${says} | ${values} | ${usual} |`.replaceAll("  ", " ");
}

/** What a field may hold, in a few words. */
function valuesOf(field) {
  switch (field.kind) {
    case "text":
      return "text";
    case "flag":
      return "`true`";
    case "word":
      return field.words.map((word) => `\`"${word}"\``).join(", ");
    case "list":
      return field.least === field.most
        ? `${field.most} ${field.many}`
        : `${field.many}, ${field.most} at most`;
    case "profile":
      return `profile, ${valuesOf(field.of)}`;
    case "tolerance":
      return `± ${valuesOf(field.of)}, or a law`;
    case "object":
      return field.or ? `object, \`"${field.or}"\`` : "object";
    default:
      return numbersOf(field);
  }
}

function numbersOf({ kind, unit, least, most, orZero, below, whole }) {
  if (kind === "radius") return 'more than 0 mm, `"flat"`';
  if (kind === "position") return "mm, either sign";
  if (unit === "mm") return orZero ? "0 mm or more" : "more than 0 mm";
  if (below) return `${least} or more, less than ${most}`;
  return `${whole ? "whole, " : ""}${least} to ${most}`;
}

function leftOut(field) {
  if (!field.optional) return "needed";
  if (field.kind === "word") return `\`"${field.words[0]}"\``;
  if (field.usual === undefined) return "";
  const numbers =
    field.kind === "list" ? Array(field.least).fill(field.usual).join(" : ") : field.usual;
  const kind = field.of ?? field.item ?? field;
  return kind.unit === "mm" ? `${numbers} mm` : `${numbers}`;
}

const law = LAW.variants[0].cases.normal.fields.coverage;
const laws = [
  row("limit", "", LAW.limit.says, "as the tolerance", "needed"),
  row(
    "shape",
    "",
    LAW.variants[0].says,
    Object.keys(LAW.variants[0].cases)
      .map((name) => `\`"${name}"\``)
      .join(", "),
    '`"rectangular"`',
  ),
  row("coverage", 'shape `"normal"`', law.says, numbersOf(law), law.usual),
  row(
    "per",
    "`tolerance.stop`",
    LAW.perHole.per.says,
    valuesOf(LAW.perHole.per),
    leftOut(LAW.perHole.per),
  ),
];
const head = ["| Field | What | May be | Left out |", "|---|---|---|---|"];
const defaults = [
  "| Default | Value |",
  "|---|--:|",
  ...Object.entries(DEFAULTS).map(([name, { value, unit }]) => `| ${name} | ${value} ${unit} |`),
].join("\n");
const parts = {
  fields: [...head, ...new Set(rowsOf(DESIGN, ""))].join("\n"),
  laws: [...head, ...laws].join("\n"),
  defaults,
};

if (process.argv.includes("--print")) console.log(JSON.stringify(parts));
else {
  let text = readFileSync(page, "utf8");
  for (const [name, part] of Object.entries(parts)) {
    const between = new RegExp(`(<!-- ${name}:begin -->\n)[\\s\\S]*?(<!-- ${name}:end -->)`);
    text = text.replace(between, (_, begin, end) => `${begin}${part}\n${end}`);
  }
  writeFileSync(page, text);
}
