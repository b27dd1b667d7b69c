/**
 * Single changes to a design that may cure a finding, each a path in the design, the value there now, and how far
 * it may go. Values in the unit of their path.
 */

import type { Marker } from "../board/markers.js";
import { LIMITS } from "../design/design.js";
import type { GroupSpec, ProfileSpec, Spec } from "../design/spec.js";
import type { Examined } from "../drilling/examine.js";
import { elementAt } from "../geometry/element-at.js";
import type { FindingCode, FindingFacts } from "./findings.js";

/** One change: `far` is the last value worth trying. */
export interface Change {
  readonly path: string;
  readonly from: number;
  readonly far: number;
  readonly apply: (value: number) => Spec;
}

type Maker = (spec: Spec, markers: readonly Marker[]) => Change[];

/** The changes worth trying for a finding; `markers` are those that it is about. */
export function changesFor({ code }: FindingFacts, { neck }: Examined, markers: readonly Marker[]) {
  const changes = CHANGES[code].flatMap((make) => make(neck.spec, markers));
  // groups that share a path share its change
  return changes.filter(({ path }, i) => changes.findIndex((other) => other.path === path) === i);
}

const thickerBlank: Maker = (spec) =>
  profileChanges(spec.thickness, "board.thickness", (from) => 3 * from).map((change) => ({
    ...change,
    apply: (value) => ({ ...spec, thickness: change.put(value) }),
  }));

const flatterRadius: Maker = (spec) =>
  profileChanges(spec.radius, "radius", (from) => 1e4 * from)
    .filter(({ from }) => from < Infinity)
    .map((change) => ({
      ...change,
      apply: (value) => ({ ...spec, radius: change.put(value) }),
    }));

const smallerDot: Maker = (spec, markers) =>
  groupsOf(markers)
    .filter(({ shape }) => shape === undefined)
    .map((group) => ({
      path: `${group.path.group}.diameter`,
      from: group.diameter,
      far: group.diameter / 20,
      apply: (diameter) => withGroups(spec, group.path.group, "group", { diameter }),
    }));

const closerPair: Maker = (spec, markers) =>
  groupsOf(markers)
    .filter(({ arrangement }) => arrangement === "double")
    .map((group) => {
      const pair = markers.filter((marker) => marker.group === group);
      const from = group.spread ?? 2 * Math.max(...pair.map(({ offset }) => Math.abs(offset)));
      // the holes of a group are of one size
      const far = elementAt(pair, 0).diameter;
      return {
        path: `${group.path.group}.spread`,
        from,
        far,
        apply: (spread) => withGroups(spec, group.path.group, "group", { spread }),
      };
    });

const widerPair: Maker = (spec, markers) =>
  closerPair(spec, markers).map((change) => ({ ...change, far: 2 * change.far + change.from }));

/** A shorter point, or a blunter cone. */
const shorterPoint: Maker = (spec, markers) =>
  groupsOf(markers).flatMap((group): Change[] => {
    const { bit, path } = group;
    if (bit.kind === "end-mill") return [];
    if (bit.kind === "twist") {
      return [
        {
          path: `${path.bit}.angle`,
          from: bit.angle,
          far: LIMITS.mostAngle.value,
          apply: (angle) => withGroups(spec, path.bit, "bit", { bit: { ...bit, angle } }),
        },
      ];
    }
    return [
      {
        path: `${path.bit}.point`,
        from: bit.point,
        far: 0,
        apply: (point) => withGroups(spec, path.bit, "bit", { bit: { ...bit, point } }),
      },
    ];
  });

const thinnerKeep: Maker = (spec, markers) =>
  groupsOf(markers).map(({ fill, path }) => ({
    path: `${path.fill}.keep`,
    from: fill.keep,
    far: 0,
    apply: (keep) => withGroups(spec, path.fill, "fill", { fill: { ...fill, keep } }),
  }));

const thickerDot: Maker = (spec, markers) =>
  groupsOf(markers).flatMap(({ fill, path }) =>
    fill.kind === "poured"
      ? []
      : [
          {
            path: `${path.fill}.thickness`,
            from: fill.thickness,
            far: 10 * fill.thickness,
            apply: (thickness: number) =>
              withGroups(spec, path.fill, "fill", { fill: { ...fill, thickness } }),
          },
        ],
  );

/** A length that is all but nothing, as a part of what stands. */
const HARDLY_ANY = 1 / 1000;

/** Another depth for all, and a setting of its own for the group. */
function otherDepth(farOf: (depth: number, spec: Spec) => number): Maker {
  return (spec, markers) =>
    groupsOf(markers).flatMap(({ depth, path }): Change[] => {
      if (depth === undefined) return [];
      const far = farOf(depth, spec);
      return [
        {
          path: path.depth,
          from: depth,
          far,
          apply: (value) => withGroups(spec, path.depth, "depth", { depth: value }),
        },
        {
          path: `${path.group}.depth`,
          from: depth,
          far,
          apply: (value) => withGroups(spec, path.group, "group", { depth: value }),
        },
      ];
    });
}

/** The blank at its thickest, mm: no hole needs to be deeper. */
function thickestOf({ thickness }: Spec): number {
  return typeof thickness === "number" ? thickness : Math.max(...thickness.map(([, mm]) => mm));
}

const deeper = otherDepth((depth, spec) => depth + thickestOf(spec));
const shallower = otherDepth((depth) => HARDLY_ANY * depth);

const thinnerWeb: Maker = (spec) => [
  { path: "web", from: spec.web, far: 0, apply: (web) => ({ ...spec, web }) },
];

const shallowerChannel: Maker = (spec) => {
  const { channel } = spec;
  if (channel === undefined) return [];
  const { depth } = channel;
  return [
    {
      path: "board.channel.depth",
      from: depth,
      far: HARDLY_ANY * depth,
      apply: (value) => ({ ...spec, channel: { ...channel, depth: value } }),
    },
  ];
};

/** How far a number of the slot may go, as a part of what stands. */
const SLOT_FAR = { depth: HARDLY_ANY, tang: HARDLY_ANY, clearance: 0, web: 0 };

function slotChange(key: keyof typeof SLOT_FAR, part = SLOT_FAR[key]): Maker {
  return (spec) => {
    const { slot } = spec;
    if (slot === undefined) return [];
    const from = slot[key];
    return [
      {
        path: `slot.${key}`,
        from,
        far: part * from,
        apply: (value) => ({ ...spec, slot: { ...slot, [key]: value } }),
      },
    ];
  };
}

function sideDotChange(key: "diameter" | "margin" | "depth"): Maker {
  return (spec) => {
    const { sideDots } = spec;
    if (sideDots === undefined) return [];
    const from = sideDots[key];
    return [
      {
        path: `sideDots.${key}`,
        from,
        far: key === "margin" ? 0 : from / 20,
        apply: (value) => ({ ...spec, sideDots: { ...sideDots, [key]: value } }),
      },
    ];
  };
}

const forRoom = [
  thickerBlank,
  flatterRadius,
  smallerDot,
  closerPair,
  shorterPoint,
  thinnerWeb,
  thinnerKeep,
  shallowerChannel,
  thickerDot,
];
const forKeep = [deeper, flatterRadius, smallerDot, closerPair, thinnerKeep];
const forWeb = [shallower, thickerBlank, shorterPoint, smallerDot, thinnerWeb, shallowerChannel];
const forSlotDepth = [thickerBlank, flatterRadius];

/** Which changes are worth trying for which finding. */
const CHANGES: Readonly<Record<FindingCode, readonly Maker[]>> = {
  "nothing-left": forKeep,
  "below-keep": forKeep,
  "breaks-through": forWeb,
  "below-web": forWeb,
  "below-surface": [shallower, thickerDot],
  "no-depth": forRoom,
  "several-settings": forRoom,
  "several-travels": [],
  "cuts-slot": [smallerDot],
  "near-slot": [smallerDot],
  "past-edge": [smallerDot, closerPair],
  "dots-overlap": [smallerDot, widerPair],
  "thin-edge": [thickerBlank, flatterRadius, thinnerWeb],
  "no-slot-depth": [
    ...forSlotDepth,
    slotChange("tang"),
    slotChange("clearance"),
    slotChange("web"),
    shallowerChannel,
  ],
  "slot-too-shallow": [
    slotChange("depth", 10),
    flatterRadius,
    slotChange("tang"),
    slotChange("clearance"),
  ],
  "slot-too-deep": [slotChange("depth"), thickerBlank, slotChange("web"), shallowerChannel],
  "side-dot-tight": [
    thickerBlank,
    flatterRadius,
    sideDotChange("diameter"),
    sideDotChange("margin"),
  ],
  "side-dot-meets-hole": [
    thickerBlank,
    shallower,
    closerPair,
    sideDotChange("depth"),
    sideDotChange("diameter"),
  ],
  "side-dot-meets-slot": [thickerBlank, slotChange("depth"), sideDotChange("diameter")],
};

function groupsOf(markers: readonly Marker[]): GroupSpec[] {
  return [...new Set(markers.map(({ group }) => group))];
}

/** The specification with something changed in every group whose `key` stands at `path`. */
function withGroups(
  spec: Spec,
  path: string,
  key: keyof GroupSpec["path"],
  change: Partial<GroupSpec>,
): Spec {
  const groups = spec.groups.map((group) =>
    group.path[key] === path ? { ...group, ...change } : group,
  );
  return { ...spec, groups };
}

/** A profile's single numbers: the one, or each station's. */
function profileChanges(profile: ProfileSpec, path: string, farOf: (from: number) => number) {
  if (typeof profile === "number") {
    return [
      { path, from: profile, far: farOf(profile), put: (value: number): ProfileSpec => value },
    ];
  }
  return profile.map(([station, from], i) => ({
    path: `${path}.${station}`,
    from,
    far: farOf(from),
    put: (value: number): ProfileSpec =>
      profile.map((knot, j) => (j === i ? ([station, value] as const) : knot)),
  }));
}
