/** An invented board on which every bound is a sum: one hole in the middle, no tolerance but those that a test states. Lengths in mm. */
import { checkDesign, type Design, type Hole } from "../../src/index.js";
import { EXACT } from "../check/necks.js";

/** 400 long, 60 wide, 6 thick, flat; 0.25 is sanded off, 0.5 of the marker kept, 1 of the wood left. */
export const BOARD = {
  scale: { positions: [400] },
  board: { length: 400, width: 60, thickness: 6 },
  radius: "flat",
  sanding: 0.25,
  fill: { kind: "poured", keep: 0.5 },
  bit: { kind: "end-mill" },
  stop: { from: "wood", foot: 0 },
  web: 1,
  tolerance: EXACT,
} as const;

/** What a test changes of it; of the board and the tolerances only what it states. */
export interface Change extends Omit<Partial<Design>, "board" | "tolerance"> {
  readonly board?: Partial<Design["board"]>;
  readonly tolerance?: Design["tolerance"];
}

/** The board with changes; one dot of 8 in its middle unless the markers are stated. */
export function designOf({ board, tolerance, ...change }: Change = {}, offset = 0): Design {
  return {
    ...BOARD,
    markers: [{ places: [{ along: 200, offset }], diameter: 8 }],
    ...change,
    board: { ...BOARD.board, ...board },
    tolerance: { ...EXACT, ...tolerance },
  };
}

/** Its first hole. */
export function holeOf(change: Change = {}, offset = 0): Hole {
  const [hole] = checkDesign(designOf(change, offset)).holes;
  if (hole === undefined) throw new Error("no hole");
  return hole;
}

/** How far a radius has dropped at a place, by Pythagoras. */
export const drop = (radius: number, x: number): number => radius - Math.sqrt(radius ** 2 - x ** 2);

export const FORSTNER = { kind: "forstner", point: 1.5, spur: 0.5 } as const;
export const TWIST = { kind: "twist", angle: 90 } as const;
