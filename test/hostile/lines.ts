/** Hostile lines and files: sound designs, broken ones, any JSON, any bytes. */
import fc from "fast-check";
import { WHOLE } from "../files/whole.js";

export const utf8 = new TextEncoder();
/** The text of a sound design. */
export const whole = fc.constantFrom(
  ...WHOLE.map((design) => JSON.stringify({ ...design, radius: 254 })),
);
/** The same with something cut out or put in. */
export const broken = fc
  .tuple(
    whole,
    fc.nat(),
    fc.nat(9),
    fc.constantFrom('"', "{", "[", "\u0000", "1e999", "\u001B[2J", ""),
  )
  .map(([text, at, cut, other]) => {
    const start = at % text.length;
    return text.slice(0, start) + other + text.slice(start + cut);
  });
/** The bytes of a line. */
export const line = fc.oneof(
  whole.map((text) => utf8.encode(text)),
  broken.map((text) => utf8.encode(text)),
  fc.json().map((text) => utf8.encode(text)),
  fc.uint8Array({ maxLength: 40 }),
  fc.constantFrom(
    ...[
      '{"__proto__":{"polluted":1}}',
      "[".repeat(50_000),
      `"${"\\u0000".repeat(50)}"`,
      "\uFEFF{}",
      "",
    ].map((text) => utf8.encode(text)),
  ),
);
