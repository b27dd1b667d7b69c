// Writes the steps of the first example's card into docs/start.md, from the built package. With --print it only prints.
import { readFileSync, writeFileSync } from "node:fs";
import { checkDesign } from "marker-depth";
import { drillCard } from "marker-depth/card";

const page = new URL("../start.md", import.meta.url);
const design = JSON.parse(readFileSync(new URL("../examples/acacia-22.json", import.meta.url)));
const [steps] = drillCard(checkDesign(design), { design }).split("\n\nHOLES");
const block = `\`\`\`text\n${steps}\n\`\`\``;

if (process.argv.includes("--print")) console.log(block);
else {
  const between = /(<!-- card:begin -->\n)[\s\S]*?(<!-- card:end -->)/;
  const text = readFileSync(page, "utf8");
  writeFileSync(
    page,
    text.replace(between, (_, begin, end) => `${begin}${block}\n${end}`),
  );
}
