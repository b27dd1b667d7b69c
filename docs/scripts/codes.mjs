// Writes the table of finding codes into docs/findings.md, from the built package. With --print it only prints it.
import { readFileSync, writeFileSync } from "node:fs";
import { FINDING_CODES } from "marker-depth";

const page = new URL("../findings.md", import.meta.url);
const rows = Object.entries(FINDING_CODES).map(([code, says]) => `| \`${code}\` | ${says} |`);
const table = ["| Code | What it means |", "|---|---|", ...rows].join("\n");

if (process.argv.includes("--print")) console.log(table);
else {
  const between = /(<!-- codes:begin -->\n)[\s\S]*?(<!-- codes:end -->)/;
  const text = readFileSync(page, "utf8");
  writeFileSync(
    page,
    text.replace(between, (_, begin, end) => `${begin}${table}\n${end}`),
  );
}
