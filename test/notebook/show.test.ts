/** A report that shows itself is the core's report in all else. */
import { deepStrictEqual } from "node:assert/strict";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { drillCard, sandingNote } from "../../src/card/index.js";
import { drawSanding, drawSweep } from "../../src/draw/index.js";
import { checkDesign as check, type Design, DesignError, sweep } from "../../src/index.js";
import { sandingProgress } from "../../src/measured/index.js";
import { checkDesign, html, type MimeBundle, show } from "../../src/notebook/index.js";

const DISPLAY = Symbol.for("Jupyter.display");

const NECKS = ["larch-22", "alder-24", "heron-bass", "wren-tenor", "plover-fanned"];

function design(neck: string): Design {
  return JSON.parse(
    readFileSync(new URL(`../../docs/examples/${neck}.json`, import.meta.url), "utf8"),
  );
}

/** What a kernel does with a value: it asks by the symbol, and waits for the answer. */
async function displayed(value: unknown): Promise<MimeBundle> {
  const holder = value as Record<symbol, () => unknown>;
  expect(holder[DISPLAY]).toBeTypeOf("function");
  return (await holder[DISPLAY]?.()) as MimeBundle;
}

describe.each(NECKS)("%s", (neck) => {
  const shown = checkDesign(design(neck));
  const plain = check(design(neck));

  test("is equal to the core's report, and so are its JSON text, its keys and its copies", () => {
    deepStrictEqual(shown, plain);
    expect(shown).toStrictEqual(plain);
    expect(JSON.stringify(shown)).toBe(JSON.stringify(plain));
    expect(Reflect.ownKeys({ ...shown })).toEqual(Reflect.ownKeys(plain));
    expect(Object.getOwnPropertySymbols({ ...shown })).toEqual([]);
    expect(structuredClone(shown)).toStrictEqual(structuredClone(plain));
  });

  test("shows itself: the page's fragment, and the drill card in plain text", async () => {
    const bundle = await displayed(shown);
    expect(Object.keys(bundle)).toEqual(["text/html", "text/plain"]);
    const options = { design: design(neck) };
    expect(bundle["text/html"]).toBe(html(plain, options));
    expect(bundle["text/plain"]).toBe(drillCard(plain, options));
    // a bundle travels as JSON
    expect(JSON.parse(JSON.stringify(bundle))).toEqual(bundle);
  });

  test("a report made elsewhere is shown alike", async () => {
    const own = show(plain, { design: design(neck) });
    expect(await displayed(own)).toEqual(await displayed(shown));
    const sent = JSON.parse(JSON.stringify(plain));
    expect((await displayed(show(sent)))["text/html"]).toBe(html(plain));
  });
});

test("a sweep's report is shown", async () => {
  const rows = sweep(design("larch-22"), { radius: [254, 305] });
  expect((await displayed(show(rows.report(0))))["text/plain"]).toContain("Larch 22");
});

describe("shown besides:", () => {
  const rows = sweep(design("larch-22"), { radius: [254, 305], "board.thickness": [5, 6] });
  const readings = [{ along: "fret12", centre: 6, bass: 5.6 }] as const;
  const progress = sandingProgress(design("larch-22"), readings);

  test("a sweep, as its picture, and in plain text what the picture tells", async () => {
    const bundle = await displayed(show(rows, { unit: "in" }));
    expect(bundle["text/html"]).toBe(drawSweep(rows, { unit: "in" }));
    expect(bundle["text/plain"]).toMatch(
      /^Stop settings: Larch 22 \(invented example\)\nEach cell/,
    );
  });

  test("how far the sanding has come, as its note", async () => {
    const bundle = await displayed(show(progress));
    expect(bundle["text/plain"]).toBe(sandingNote(progress));
    expect(bundle["text/html"].startsWith("<pre>SANDING: Larch 22")).toBe(true);
  });

  test("drawings, and several one below the other", async () => {
    const named = { ...design("larch-22"), name: `"A" & <B>` };
    const picture = drawSanding(named, readings);
    const both = await displayed(show([picture, progress]));
    expect(both["text/html"].startsWith(`${picture}\n<pre>SANDING: Larch 22`)).toBe(true);
    expect(both["text/plain"].startsWith(`Sanding: "A" & <B>\n`)).toBe(true);
  });

  test.each([undefined, null, 5, "text", "<b>svg</b>", {}, [{}]])("%j is refused", (value) => {
    expect(() => show(value as never)).toThrow(/^value: expected a report, a sweep/);
  });
});

test("a frozen report is shown", async () => {
  const report = Object.freeze(check(design("larch-22")));
  expect((await displayed(show(report)))["text/html"]).toBe(html(report));
});

test("what cannot be read is refused as by the core", () => {
  const wrong = { ...design("larch-22"), radius: -1 };
  expect(() => checkDesign(wrong)).toThrow(DesignError);
});
