/** Words that cards, drawings and the command share. */
import { expect, test } from "vitest";
import { holeName, settingLetter, stationName, visible } from "../../src/plain-words.js";

test("a hole is called by its fret, and by its side where it has one", () => {
  expect(holeName({ fret: 12, side: "centre" })).toBe("fret 12");
  expect(holeName({ fret: 12, side: "bass" })).toBe("fret 12, bass");
});

test("a station is called by its fret", () => {
  expect(["nut", "fret1", "fret12", "end"].map(stationName)).toEqual([
    "nut",
    "fret 1",
    "fret 12",
    "end",
  ]);
});

test("settings are told apart by letters, and by numbers where these do not suffice", () => {
  expect([0, 1, 25, 26, 27].map(settingLetter)).toEqual(["A", "B", "Z", "27", "28"]);
});

test("what could steer a terminal is shown, a new line stays", () => {
  expect(visible("a\u001b[31mb\nc\u0007\u0085é指")).toBe("a\ufffd[31mb\nc\ufffd\ufffdé指");
});
