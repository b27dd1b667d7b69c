/** SVG as text: numbers and escapes. */

/** A number for an attribute: at most three decimals, never a minus before nothing. */
export function plain(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a coordinate is ${value}`);
  return String(Number(value.toFixed(3)));
}

const ESCAPES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** What XML 1.0 does not allow, even escaped: most control characters, lone surrogates, two noncharacters. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to find
const REFUSED = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu;

/** A text made safe for an element or an attribute. */
export function escaped(text: string): string {
  return text
    .replace(REFUSED, "\ufffd")
    .replace(/[&<>"']/g, (character) => ESCAPES[character] ?? character);
}

/** Attributes by name; those undefined are left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Attributes in the order given, each after a space. */
export function written(attributes: Attributes): string {
  const pairs = Object.entries(attributes).filter(([, value]) => value !== undefined);
  const write = (value: unknown) => (typeof value === "number" ? plain(value) : String(value));
  return pairs.map(([name, value]) => ` ${name}="${escaped(write(value))}"`).join("");
}

/** An element with words in it, or with nothing. */
export function element(tag: string, attributes: Attributes, words?: string): string {
  const start = `<${tag}${written(attributes)}`;
  return words === undefined ? `${start}/>` : `${start}>${escaped(words)}</${tag}>`;
}
