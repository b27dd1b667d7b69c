/** Single numbers of a design that a builder can still change, each with values worth trying. */
import { accepts } from "../design/bounds.js";
import type { Design, MarkerGroup, Station } from "../design/design.js";
import { DESIGN } from "../design/fields.js";
import { type Field, type Form, listFields, type NumberKind } from "../design/kinds.js";
import type { GroupSpec, Spec } from "../design/spec.js";
import type { Neck } from "../drilling/work.js";

/** One number: where it stands, what it is now, and what may be tried in its place. */
export interface Change {
  readonly path: string;
  readonly kind: NumberKind;
  readonly from: number;
  /** Rising, `from` among them. */
  readonly tries: readonly number[];
}

/** What is settled once the board lies on the bench: scale, outline, what is measured, and how far things may be off. */
const SETTLED = ["name", "scale", "board.length", "board.width", "existing", "tolerance", "pour"];

/** What the changes of a finding are sought among. */
export interface Scope {
  /** Groups of the design that it is about, by index. */
  readonly groups: readonly number[];
  /** Stations worth a value of their own, beside those that are stated. */
  readonly stations: readonly Station[];
  /** Values that the finding itself suggests. */
  readonly hints: readonly number[];
  /** A group's own stop is left alone: another stop is no cure for what one stop cannot do. */
  readonly oneStop: boolean;
}

/** Every number of the design that a builder can still change and that may matter. */
export function listChanges(design: Design, { spec, holes }: Neck, scope: Scope): Change[] {
  const whole = { ...design, markers: design.markers.map((group) => inheriting(group, design)) };
  return numbersIn(DESIGN, whole, "", scope).flatMap(({ path, kind, stated }) => {
    if (scope.oneStop && /^markers\.\d+\.stop\./.test(path)) return [];
    const from = stated ?? spec.assumed[path] ?? fallbackFor(path, spec, holes);
    if (typeof from !== "number") return [];
    return [{ path, kind, from, tries: triesFor(kind, from, scope.hints) }];
  });
}

/** A group with what it takes over from the design. */
function inheriting(group: MarkerGroup, { fill, bit, stop }: Design): MarkerGroup {
  const own = "shape" in group ? { kind: "end-mill" as const } : bit;
  return { ...(fill && { fill }), ...(own && { bit: own }), ...(stop && { stop }), ...group };
}

interface Numbered {
  readonly path: string;
  readonly kind: NumberKind;
  readonly stated: number | undefined;
}

/** The numbers under a form, stated or assumed, where an object stands or is assumed. */
function numbersIn(form: Form, place: unknown, before: string, scope: Scope): Numbered[] {
  const stated = (typeof place === "object" && place !== null ? place : {}) as Record<
    string,
    unknown
  >;
  const keys = new Map<string, Field>();
  for (const [key, field] of listFields(form)) {
    if (!keys.has(key) && isInCase(form, stated, key)) keys.set(key, field);
  }
  return [...keys].flatMap(([key, field]) => {
    const path = before + key;
    if (SETTLED.includes(path)) return [];
    return listNumbers(field, stated[key], path, scope);
  });
}

/** Of a form that comes in cases, the key is one that the stated case has. */
function isInCase(form: Form, stated: Record<string, unknown>, key: string): boolean {
  if (Object.hasOwn(form.fields, key)) return true;
  return (form.variants ?? []).some(({ tag, cases }) => {
    const names = Object.keys(cases);
    const name =
      tag === undefined
        ? names.find((each) =>
            Object.keys(cases[each]?.fields ?? {}).some((own) => stated[own] !== undefined),
          )
        : ((stated[tag] as string | undefined) ?? names[0]);
    const picked = name === undefined ? undefined : cases[name];
    return picked !== undefined && isInCase(picked, stated, key);
  });
}

function listNumbers(field: Field, stated: unknown, path: string, scope: Scope): Numbered[] {
  switch (field.kind) {
    case "object": {
      // an object that may be left out and is: only what is assumed of it can be changed
      const isOpen =
        stated === undefined && !["fill", "bit", "stop"].includes(path.split(".").at(-1) ?? "");
      return isOpen || typeof stated === "string"
        ? []
        : numbersIn(field, stated, `${path}.`, scope);
    }
    case "list":
      return Array.isArray(stated) && field.item.kind === "object"
        ? listed(field.item, stated, path, scope)
        : [];
    case "profile":
      return listStations(field.of, stated ?? field.usual, path, scope);
    case "text":
    case "word":
    case "flag":
    case "tolerance":
      return [];
    default:
      return [{ path, kind: field, stated: typeof stated === "number" ? stated : undefined }];
  }
}

function listed(item: Form, stated: readonly unknown[], path: string, scope: Scope): Numbered[] {
  return stated.flatMap((each, i) => {
    const isOther = path === "markers" && !scope.groups.includes(i);
    return isOther ? [] : numbersIn(item, each, `${path}.${i}.`, scope);
  });
}

function listStations(kind: NumberKind, stated: unknown, path: string, scope: Scope): Numbered[] {
  if (stated === undefined) return [];
  if (typeof stated !== "object" || stated === null) {
    const constant = stated === "flat" ? Infinity : (stated as number);
    const own = scope.stations.map((station) => ({
      path: `${path}.${station}`,
      kind,
      stated: constant,
    }));
    return constant === Infinity ? [] : [{ path, kind, stated: constant }, ...own];
  }
  const values = stated as Partial<Record<Station, number | "flat">>;
  const stations = Object.keys(values) as Station[];
  return stations.flatMap((station) => {
    const value = values[station];
    return typeof value === "number" && value < Infinity
      ? [{ path: `${path}.${station}`, kind, stated: value }]
      : [];
  });
}

/** What stands for a number that is neither stated nor assumed by its own path. */
function fallbackFor(path: string, spec: Spec, holes: Neck["holes"]): number | undefined {
  const [, index, ...rest] = path.split(".");
  const key = rest.join(".");
  const group = path.startsWith("markers.")
    ? spec.groups.find(({ path: place }) => place.group === `markers.${index}`)
    : undefined;
  if (/(^|\.)stop\.correction$/.test(path)) return 0;
  if (group === undefined) return undefined;
  const [part, name = ""] = key.split(".");
  if (part === "spread") return measureSpread(group, holes);
  // a depth of its own, or a travel, stands in for what the design plans for all
  if (part === "depth" || part === "travel")
    return group.drilled ? undefined : findPlanned(part, group, holes);
  if (part === "fill" || part === "bit" || part === "stop") {
    const value = (group[part] as unknown as Record<string, unknown>)[name];
    return typeof value === "number" ? value : undefined;
  }
  return undefined;
}

/** The depth or the travel that is planned for a group's first hole. */
function findPlanned(part: "depth" | "travel", { path }: GroupSpec, holes: Neck["holes"]) {
  const first = holes.find(({ marker }) => marker.group.path.group === path.group);
  if (first?.planned === undefined) return undefined;
  return part === "depth" ? first.planned : first.planned + first.toTravel;
}

/** How far apart the two holes of a group's pairs lie at the most. */
function measureSpread({ path }: GroupSpec, holes: Neck["holes"]): number {
  const offsets = holes.flatMap(({ marker }) =>
    marker.group.path.group === path.group ? [Math.abs(marker.offset)] : [],
  );
  return 2 * Math.max(...offsets);
}

/** How many times what stands is tried, either way. */
const FACTORS = [0.001, 0.05, 0.3, 0.6, 0.8, 0.9, 0.97, 1.03, 1.1, 1.25, 1.5, 2, 3, 6, 20, 1e3];
/** What is tried where nothing stands, or beside it where it may lie on either side of 0, mm. */
const STEPS = [0.02, 0.1, 0.3, 1, 3, 10, 30, 100, 300];

function triesFor(kind: NumberKind, from: number, hints: readonly number[]): number[] {
  const scaled = FACTORS.map((factor) => factor * from);
  const shifted =
    kind.kind === "position" || from === 0
      ? STEPS.flatMap((step) => [from - step, from + step])
      : [];
  const ends = [kind.orZero ? 0 : Number.NaN, kind.kind === "angle" ? kind.most : Number.NaN];
  const values = [from, ...scaled, ...shifted, ...hints, ...ends].filter((value) =>
    accepts(kind, value),
  );
  return [...new Set(values)].sort((a, b) => a - b);
}
