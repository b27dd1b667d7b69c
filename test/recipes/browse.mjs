// Serves a folder as any web server does, opens its check.html in a browser, presses the button on the design that
// stands there and on one with a slip in it, and prints what the page shows: { design, card, refused, errors }.
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { join } from "node:path";
import { chromium } from "playwright-core";

const [folder, executablePath] = process.argv.slice(2);
const TYPES = { html: "text/html", js: "text/javascript" };

const server = createServer((request, answer) => {
  const path = decodeURIComponent(new URL(request.url, "http://localhost").pathname);
  try {
    const body = readFileSync(join(folder, path));
    const type = TYPES[path.split(".").at(-1)] ?? "application/octet-stream";
    answer.writeHead(200, { "content-type": type }).end(body);
  } catch {
    // a browser asks for an icon by itself
    answer.writeHead(path === "/favicon.ico" ? 204 : 404).end();
  }
});
await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
const url = `http://127.0.0.1:${server.address().port}/`;
const args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"];
const browser = await chromium.launch({ executablePath, args });
try {
  const errors = [];
  const page = await browser.newPage();
  page.on("pageerror", (error) => errors.push(String(error)));
  page.on("request", (request) => {
    if (!request.url().startsWith(url)) errors.push(`asks for ${request.url()}`);
  });
  await page.goto(`${url}check.html`, { waitUntil: "networkidle" });
  const design = await page.inputValue("#design");
  const shown = async () => {
    await page.click("#check");
    return page.textContent("#card");
  };
  const card = await shown();
  await page.fill("#design", design.replace('"12 in"', '"12 inn"'));
  const refused = await shown();
  console.log(JSON.stringify({ design, card, refused, errors }));
} finally {
  await browser.close();
  server.close();
}
