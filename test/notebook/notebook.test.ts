/** The notebook of the docs: clean, and complete. CI executes it: see .ci/notebook.py. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

interface Output {
  readonly output_type: string;
  readonly execution_count?: number;
  readonly text?: readonly string[];
  readonly data?: Readonly<Record<string, readonly string[] | string>>;
  readonly metadata?: object;
}

interface Cell {
  readonly cell_type: string;
  readonly execution_count?: number;
  readonly metadata: object;
  readonly source: readonly string[];
  readonly outputs?: readonly Output[];
}

const text = readFileSync(new URL("../../docs/notebook.ipynb", import.meta.url), "utf8");
const notebook = JSON.parse(text);
const cells = notebook.cells as Cell[];
const codes = cells.filter(({ cell_type }) => cell_type === "code");

test("its cells are numbered in order, without times or other marks of a run", () => {
  expect(codes.length).toBeGreaterThanOrEqual(8);
  expect(codes.map(({ execution_count }) => execution_count)).toEqual(codes.map((_, i) => i + 1));
  for (const { metadata } of cells) expect(metadata).toEqual({});
  for (const { output_type, execution_count, metadata } of codes.flatMap((c) => c.outputs ?? [])) {
    expect(["execute_result", "stream"]).toContain(output_type);
    if (output_type === "execute_result") expect(execution_count).toBeGreaterThan(0);
    expect(metadata ?? {}).toEqual({});
  }
  expect(Object.keys(notebook.metadata)).toEqual(["kernelspec", "language_info"]);
  expect(notebook.metadata.kernelspec.name).toBe("deno");
});

test("it names no place on a machine", () => {
  expect(text).not.toMatch(/file:\/\/|\/(?:home|root|tmp|usr|work|Users)\/|[A-Z]:\\\\/);
  expect(text).not.toMatch(/stderr|Traceback|\\u001b/);
});

// some kernels lose lines that come after they have said that they are idle
test("what a cell prints it prints in one piece", () => {
  for (const { source } of codes) {
    const code = source.join("");
    expect(code.match(/console\.log/g)?.length ?? 0).toBeLessThanOrEqual(1);
    expect(code).not.toMatch(/\b(?:for|while) \(|forEach/);
  }
});

test("it walks from a sweep to the last reading, each step with what it shows", () => {
  const shown = codes.flatMap(({ outputs = [] }) => outputs);
  const page = shown.map(({ data }) => [data?.["text/html"] ?? []].flat().join(""));
  const printed = shown.map(({ text: lines }) => (lines ?? []).join("")).join("\n");
  expect(page.filter((html) => html.includes("Stop settings: Rowan 24"))).toHaveLength(1);
  expect(page.filter((html) => html.includes("marker-depth-report"))).toHaveLength(2);
  expect(page.filter((html) => html.includes("Plan: Rowan 24"))).toHaveLength(1);
  expect(printed).toMatch(/^radius 254: at least \d\.\d\d thick$/m);
  expect(printed).toMatch(/^DRILL CARD: Rowan 24 \(invented\)$/m);
  expect(printed).toContain("\nCAUTIONS\n");
  expect(printed).toMatch(/^All twelve holes stay within 0\.\d{3}, at a chance of 95 %\.$/m);
  expect(page.filter((html) => html.includes("Sanding: Rowan 24"))).toHaveLength(1);
  expect(printed).toContain("\nPast the finished surface: nowhere\n");
});
