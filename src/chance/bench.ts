/**
 * Each hole on the bench, with all that does not hang on its errors: its ground, its bit, its stop, its rules as functions
 * of the true state of the board. Every rule is told as a limit of the tip's error u and of what is shared, beyond which
 * it is broken:
 *
 *   keep     u − p − σ < K    K = deepest(F) − B + keep + lead
 *   flush    u − p − σ > k    k = dot + shallowest(F) − B + lead
 *   web      u − τ > U        U = the least of T − B − web under each part of the bit, less how far it lies below the tip
 *   channel  u − τ > U        the same over the rod channel
 *
 * u is the error of stop and seat, p of the point, σ of the sanding, τ of the thickness; B the drop of what the stop bears
 * on. All count downward from the touch, less the travel and its correction. Lengths in mm.
 */
import type { Finish, RodChannel } from "../board/board.js";
import type { Marker } from "../board/markers.js";
import type { Spec } from "../design/spec.js";
import { measureLead, measureSpur } from "../drilling/bits.js";
import { leastWithin, outlineChannel } from "../drilling/over-channel.js";
import { below, buildTouches, dropAt, placeFoot, type Touch } from "../drilling/touches.js";
import type { Neck } from "../drilling/work.js";
import { gapBetween, type Polygon } from "../geometry/polygon.js";
import type { Surface } from "../geometry/surface.js";
import {
  constantTrack,
  flooredAtZero,
  isConstant,
  leastOver,
  scaled,
  shifted,
  valueAt,
} from "../geometry/track.js";
import {
  deepestOver,
  type Ground,
  isLevelSheet,
  type Sheet,
  seekLeast,
  shallowestOver,
  splitSheets,
} from "./sheets.js";
import type { Field } from "./spread.js";

/** What the whole board shares: radii as parts of the nominal ones, where the crest lies, and more that is sanded off. */
export interface State {
  readonly radius: number;
  readonly existing: number;
  readonly crest: number;
  /** Only where it counts by itself; else it is among the errors that add up. */
  readonly sanding: number;
}

/** A hole on the bench. */
export interface Bench {
  readonly marker: Marker;
  /** It is drilled already: its depth is measured, and neither stop nor point is off. */
  readonly drilled: boolean;
  readonly bears: Touch["bears"];
  readonly lead: number;
  /** Deepest of F − B + keep + lead. */
  readonly keep: (state: State) => Field;
  /** A solid dot's thickness + shallowest of F − B + lead; none for epoxy, and for what is drilled. */
  readonly flush: ((state: State) => Field) | undefined;
  /** Wood under the bit, a point longer than stated by p. */
  readonly web: (state: State, p: number) => Field;
  /** The same over the rod channel; none where no part of the bit can lie there. */
  readonly channel: ((state: State, p: number) => Field) | undefined;
  /** Whether the old surface may show under a state. */
  readonly isOldShowing: (state: State) => boolean;
}

/** Every hole of a neck; none lies farther than `reach` from its marked place. */
export function buildBenches({ board, spec, holes }: Neck, reach: number): Bench[] {
  const touches = buildTouches(board, spec, []);
  return holes.map(({ marker }) => {
    const touch = touches.get(marker.group.path.group) as Touch;
    return buildBench(board.nominal, spec, touch, marker, reach);
  });
}

function buildBench(
  nominal: Finish,
  spec: Spec,
  touch: Touch,
  marker: Marker,
  reach: number,
): Bench {
  const { group, outline, width } = marker;
  const { bit, drilled, fill } = group;
  const lead = drilled || outline ? 0 : measureLead(bit, width);
  const plate = measurePlate(nominal, touch, marker, reach);
  const { bearing, kinks, isBearingLevel } = findBearing(nominal, touch, marker);
  const isLevel = (fresh: readonly Sheet[], old: readonly Sheet[] | undefined) =>
    isBearingLevel && isLevelAll(fresh) && (old === undefined || isLevelAll(old));
  const more = fill.keep + lead;
  const keep = (state: State): Field => {
    const { fresh, old } = plate(state);
    const drop = bearing(state);
    const at = (along: number, across: number) => {
      const ground = groundAt(marker, along, across);
      const deepest = Math.max(
        deepestOver(fresh, ground),
        old === undefined ? -Infinity : deepestOver(old, ground),
      );
      return deepest + more - drop(along, across);
    };
    return { at, isLevel: isLevel(fresh, old), kinks: [state.crest - marker.offset, ...kinks] };
  };
  const flush = (state: State): Field => {
    const { fresh, old } = plate(state);
    const drop = bearing(state);
    const dot = fill.kind === "solid" ? fill.thickness : Infinity;
    const at = (along: number, across: number) =>
      dot +
      lead +
      shallowestOver(fresh, old, groundAt(marker, along, across)) -
      drop(along, across);
    const rims = [-width / 2, width / 2].map((r) => state.crest + r - marker.offset);
    return { at, isLevel: isLevel(fresh, old), kinks: [...rims, ...kinks] };
  };
  const underBit = (room: Room, more: readonly number[], isEven: boolean) => {
    return (state: State, p: number): Field => {
      const drop = bearing(state);
      return {
        at: (along, across) => room(along, across, p) - drop(along, across),
        isLevel: isEven && isBearingLevel,
        isBroken: more.length > 0,
        kinks: [...more, ...kinks],
      };
    };
  };
  const over = channelRoom(spec, touch, marker, lead);
  const isEven = isConstant(touch.whole);
  const isChannelNear = over !== undefined && isWithin(touch, spec, marker, reach);
  return {
    marker,
    drilled,
    bears: touch.bears,
    lead,
    keep,
    flush: fill.kind === "poured" || drilled ? undefined : flush,
    web: underBit(webRoom(spec, touch, marker, lead), [], isEven),
    channel: isChannelNear
      ? underBit(over, channelKinks(spec, touch, marker), isChannelEven(touch, spec, marker, reach))
      : undefined,
    isOldShowing: (state) => isOldAbove(plate(state), marker, reach),
  };
}

/** The part of the board that a hole may cover, wherever its true place. */
function findStretch(marker: Marker, reach: number): readonly [number, number] {
  const alongs = marker.outline?.map(({ along }) => along) ?? [
    marker.along - marker.width / 2,
    marker.along + marker.width / 2,
  ];
  return [Math.min(...alongs) - reach, Math.max(...alongs) + reach];
}

/** The same across the board. */
function spanAcross(marker: Marker, reach: number): readonly [number, number] {
  const offsets = marker.outline?.map(({ offset }) => offset) ?? [
    marker.offset - marker.width / 2,
    marker.offset + marker.width / 2,
  ];
  return [Math.min(...offsets) - reach, Math.max(...offsets) + reach];
}

function groundAt({ along, offset, width, outline }: Marker, s: number, x: number): Ground {
  if (outline === undefined) return { along: along + s, offset: offset + x, reach: width / 2 };
  return {
    outline: outline.map((corner) => ({ along: corner.along + s, offset: corner.offset + x })),
  };
}

interface Plate {
  readonly fresh: readonly Sheet[];
  readonly old: readonly Sheet[] | undefined;
}

/** The true surfaces over a hole. */
function measurePlate(
  { sanded, old }: Finish,
  { height }: Touch,
  marker: Marker,
  reach: number,
): (state: State) => Plate {
  const [from, to] = findStretch(marker, reach);
  const even = below(sanded.sanding, height);
  const level = below(constantTrack(0), height);
  return (state) => {
    const taken =
      state.sanding === 0
        ? even
        : below(flooredAtZero(shifted(sanded.sanding, state.sanding)), height);
    const fresh: Surface = { sanding: taken, radius: scaled(sanded.radius, state.radius) };
    const was = old && { sanding: level, radius: scaled(old.radius, state.existing) };
    return {
      fresh: splitSheets(fresh, from, to, state.crest),
      old: was && splitSheets(was, from, to, 0),
    };
  };
}

function isLevelAll(sheets: readonly Sheet[]): boolean {
  return sheets.length === 1 && isLevelSheet(sheets[0] as Sheet);
}

/** Whether the old surface shows anywhere that a hole may lie: looked at in a few places. */
function isOldAbove({ fresh, old }: Plate, marker: Marker, reach: number): boolean {
  if (old === undefined) return false;
  const [from, to] = findStretch(marker, reach);
  const [left, right] = spanAcross(marker, reach);
  const LOOKS = 8;
  for (let i = 0; i <= LOOKS; i++) {
    const along = from + ((to - from) * i) / LOOKS;
    for (let j = 0; j <= LOOKS; j++) {
      const spot: Ground = { along, offset: left + ((right - left) * j) / LOOKS, reach: 0 };
      if (!(deepestOver(old, spot) < deepestOver(fresh, spot))) return true;
    }
  }
  return false;
}

/** How far what the stop bears on lies below the crest plane; nothing from the table and on a blank. */
function findBearing({ old }: Finish, touch: Touch, marker: Marker) {
  if (old === undefined || touch.bears === "table") {
    return { bearing: () => () => 0, kinks: [], isBearingLevel: true };
  }
  const half = placeFoot(touch, marker) / 2;
  const { along, offset } = marker;
  const bearing = ({ existing }: State) => {
    const top = { radius: scaled(old.radius, existing), sanding: old.sanding };
    return (s: number, x: number) => dropAt(top, along + s, Math.abs(offset + x) - half);
  };
  const kinks = [-half, 0, half].map((x) => x - offset);
  return { bearing, kinks, isBearingLevel: isConstant(old.radius) };
}

/** Wood under the bit for a hole so far off its marked place, and a point longer by p; less the web. */
type Room = (along: number, across: number, p: number) => number;

function webRoom({ web }: Spec, { whole }: Touch, marker: Marker, lead: number): Room {
  const { along, width, outline, group } = marker;
  const [from, to] = findStretch(marker, 0);
  const { bit, drilled } = group;
  if (drilled || outline) {
    const left = drilled ? 0 : web;
    return (s) => leastOver(whole, from + s, to + s) - left;
  }
  const reach = width / 2;
  if (bit.kind !== "twist") {
    const spur = measureSpur(bit);
    return (s, _, p) => {
      const tip = valueAt(whole, along + s);
      const rim = leastOver(whole, from + s, to + s) + (lead > 0 ? lead + p : 0) - spur;
      return Math.min(tip, rim) - web;
    };
  }
  return (s, _, p) => {
    const rise = (lead + p) / reach;
    const places = [
      from + s,
      to + s,
      along + s,
      ...whole.at.filter((at) => from + s < at && at < to + s),
    ];
    let least = Infinity;
    for (const place of places) {
      least = Math.min(least, valueAt(whole, place) + rise * Math.abs(place - along - s));
    }
    return least - web;
  };
}

function channelRoom(
  { web }: Spec,
  { channel }: Touch,
  marker: Marker,
  lead: number,
): Room | undefined {
  if (channel === undefined || marker.group.drilled) return undefined;
  const { along, offset, width, outline, group } = marker;
  if (outline) return pocketRoom(channel, web, outline);
  const { bit } = group;
  const reach = width / 2;
  return (ds, dx, p) => {
    const [s, x] = [along + ds, Math.abs(offset + dx)];
    const aside = Math.max(0, x - channel.half);
    const before = Math.max(0, channel.from - s, s - channel.to);
    const apart = Math.hypot(aside, before) - web;
    if (!(apart < reach)) return Infinity;
    const tip = apart <= 0 ? valueAt(channel.over, s) : Infinity;
    if (bit.kind === "twist") return coneRoom(channel, web, s, x, reach, (lead + p) / reach) - web;
    const beyond = Math.max(0, x - channel.half - web);
    const half = Math.sqrt(Math.max(0, (reach - beyond) * (reach + beyond)));
    const rim =
      leastWithin(channel, web, s - half, s + half) + (lead > 0 ? lead + p : 0) - measureSpur(bit);
    return Math.min(tip, rim) - web;
  };
}

/** Under a cone that rises by so much per mm: each part of it that lies within the web of the channel. */
function coneRoom(
  { half, from, to, over }: RodChannel,
  web: number,
  s: number,
  x: number,
  reach: number,
  rise: number,
): number {
  const aside = (place: number) => {
    const beside = Math.max(0, from - place, place - to);
    return Math.max(0, x - half - Math.sqrt(Math.max(0, (web - beside) * (web + beside))));
  };
  const room = (place: number) => valueAt(over, place) + rise * Math.hypot(place - s, aside(place));
  const start = Math.max(s - reach, from - web);
  const end = Math.min(s + reach, to + web);
  const knots = over.at.filter((at) => start < at && at < end);
  const ends = [start, ...knots, end];
  let least = Infinity;
  for (let i = 1; i < ends.length; i++) {
    least = Math.min(least, seekLeast(room, ends[i - 1] as number, ends[i] as number));
  }
  return least;
}

function pocketRoom(channel: RodChannel, web: number, outline: Polygon): Room {
  const rectangle = outlineChannel(channel);
  return (ds, dx) => {
    const moved = outline.map(({ along, offset }) => ({ along: along + ds, offset: offset + dx }));
    if (!(gapBetween(moved, rectangle) <= web)) return Infinity;
    const stretch = nearStretch(moved, channel.half + web);
    return stretch === undefined ? Infinity : leastWithin(channel, web, ...stretch) - web;
  };
}

/** The stretch on which an outline lies within so much of the centre line. */
function nearStretch(outline: Polygon, reach: number): readonly [number, number] | undefined {
  let [from, to] = [Infinity, -Infinity];
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] as typeof a;
    // the part of the side from a to b where |offset| ≤ reach
    const cuts = [0, 1, ...[-reach, reach].map((x) => (x - a.offset) / (b.offset - a.offset))];
    for (const t of cuts) {
      const offset = a.offset + t * (b.offset - a.offset);
      if (!(t >= 0 && t <= 1 && Math.abs(offset) <= reach + 1e-9)) continue;
      const along = a.along + t * (b.along - a.along);
      from = Math.min(from, along);
      to = Math.max(to, along);
    }
  });
  return from <= to ? [from, to] : undefined;
}

/** Where across the board a hole's axis and rims come within the web of the channel. */
function channelKinks({ web }: Spec, { channel }: Touch, marker: Marker): number[] {
  const near = (channel?.half ?? 0) + web;
  const { offset, outline } = marker;
  const [left, right] = spanAcross(marker, 0);
  const axis = outline ? [] : [-near - offset, near - offset];
  return [...axis, near - left, -near - right];
}

/** Whether any part of a hole may come within the web of the channel. */
function isWithin({ channel }: Touch, { web }: Spec, marker: Marker, reach: number): boolean {
  if (channel === undefined) return false;
  const [from, to] = findStretch(marker, reach);
  const [left, right] = spanAcross(marker, reach);
  const near = channel.half + web;
  const isBeside = left >= near || right <= -near;
  return !isBeside && from < channel.to + web && to > channel.from - web;
}

/** The channel is one and the same all along a dot. */
function isChannelEven({ channel }: Touch, { web }: Spec, marker: Marker, reach: number): boolean {
  if (channel === undefined) return false;
  const [from, to] = findStretch(marker, reach);
  return isConstant(channel.over) && channel.from + web <= from && to <= channel.to - web;
}
