/** Walking JSON values by their dotted paths. */

/** An object of JSON. */
export type Box = Record<string, unknown>;

/** Whether a value is an object or a list. */
export function isBox(value: unknown): value is Box {
  return typeof value === "object" && value !== null;
}

/** Every dotted path of a value, those of objects and lists included. */
export function pathsOf(value: unknown, path = ""): string[] {
  if (!isBox(value)) return [path];
  const inner = Object.entries(value).flatMap(([key, at]) =>
    pathsOf(at, path === "" ? key : `${path}.${key}`),
  );
  return path === "" ? inner : [path, ...inner];
}

/** A copy with the value at a path replaced; `undefined` removes it. What is not there stays away. */
export function withValue(value: unknown, path: string, other: unknown): unknown {
  const copy = structuredClone(value);
  const keys = path.split(".");
  const last = keys.pop() ?? "";
  const box = keys.length === 0 ? copy : valueAt(copy, keys.join("."));
  if (!isBox(box)) return copy;
  if (other === undefined && Array.isArray(box)) box.splice(Number(last), 1);
  else if (other === undefined) delete box[last];
  else Object.defineProperty(box, last, { value: other, ...OPEN });
  return copy;
}

const OPEN = { configurable: true, enumerable: true, writable: true } as const;

/** A copy with every number that is a length made into something else. */
export function withLengths(value: unknown, write: (mm: number) => unknown, path = ""): unknown {
  if (typeof value === "number") return isLength(path) ? write(value) : value;
  if (Array.isArray(value)) return value.map((item, i) => withLengths(item, write, `${path}.${i}`));
  if (!isBox(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, at]) => [key, withLengths(at, write, `${path}.${key}`)]),
  );
}

/** Counts, places between frets, angles, fractions and ratios are no lengths. */
function isLength(path: string): boolean {
  if (path === ".tolerance.radius") return false;
  return !/\.(frets|perpendicular|angle|waste|ratio)(\.\d+)?$/.test(path);
}

/** The dotted path of every number that is a length. */
export function lengthPathsOf(value: unknown): string[] {
  return pathsOf(withLengths(value, () => "length")).filter(
    (path) =>
      valueAt(
        withLengths(value, () => "length"),
        path,
      ) === "length",
  );
}

function valueAt(value: unknown, path: string): unknown {
  return path
    .split(".")
    .reduce<unknown>(
      (at, key) => (isBox(at) && Object.hasOwn(at, key) ? at[key] : undefined),
      value,
    );
}
