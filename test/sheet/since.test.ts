import { describe, expect, test } from "vitest";
import type { ChangedInstruction, SinceIssued, Unnoted } from "../../src/decide/index.ts";
import { noteWalk } from "../../src/folder/index.ts";
import { HOUR, type Instant, instant } from "../../src/quantity/index.ts";
import { weekHtml, weekJson, weekText } from "../../src/sheet/index.ts";
import { namesOf } from "../../src/sheet/names.ts";
import { since } from "../../src/sheet/since.ts";
import { sample } from "./sample.ts";

const outcome = sample();
const { walks, tunnels } = outcome;
const DAY = 24 * HOUR;
const ROW = [{ cover: "row-30", state: "on" }] as const;
const [n1, , s1] = tunnels.map(({ tunnel }) => tunnel);

const early: ChangedInstruction = {
  walk: walks[5]!,
  tunnel: n1!,
  was: { from: [], to: [] },
  is: { from: tunnels[0]!.settings[1]!, to: tunnels[0]!.settings[2]! },
  decidedBy: "damage",
  limit: null,
};
const left: ChangedInstruction = {
  walk: walks[6]!,
  tunnel: s1!,
  was: { from: ROW, to: [] },
  is: { from: ROW, to: ROW },
  decidedBy: "labour",
  limit: null,
};
const open: Unnoted = {
  tunnel: n1!,
  walk: { at: instant(outcome.on - 2 * DAY), date: "2026-04-18" as never, part: "evening" },
  cover: "row-30",
  state: "off",
};
const issued: SinceIssued = {
  on: instant(outcome.on - 3 * DAY) as Instant,
  price: 1.5,
  walks: 6,
  changed: [early, left],
  cuts: [],
  unnoted: [open],
  promises: [],
};
const told = (more: Partial<SinceIssued>) => {
  const answer = sample({}, { since: { ...issued, ...more } });
  return since(answer, namesOf(answer.farm, answer.successions));
};
const plain = (text: string): string => text.replaceAll("\u00a0", " ");

describe("the part on the sheet given out before", () => {
  test("tells each changed instruction, what it was, and why", () => {
    const { heading, changed } = told({})!;
    expect(heading).toBe("Changed since Friday's sheet");
    expect(changed.map(plain)).toEqual([
      "Wed Apr 22, evening, North 1: Take off shade cloth 40 %. Put on row cover 30 g: from now on it comes off every morning and goes on every evening. It was: Leave it as it is. Why: Frost Wed night: 26 °F bare, 29 °F expected, 27 °F promised. Risk to spinach (S4): 1 in 20, not 3 in 5.",
      "Thu Apr 23, morning, South 1: Leave it as it is. It was: Take off row cover 30 g. Why: It saves work that no longer pays.",
    ]);
  });

  test("says what forbids doing as the sheet said, and that the frost is gone", () => {
    const forbidden = (limit: ChangedInstruction["limit"], frost: boolean): string => {
      const answer = sample({}, { since: { ...issued, changed: [{ ...left, decidedBy: "limit", limit }] } });
      const warnings = frost
        ? answer.warnings.map((each) => (each.kind === "frost" ? { ...each, date: left.walk.date } : each))
        : answer.warnings.filter(({ kind }) => kind !== "frost");
      const [line] = since({ ...answer, warnings }, namesOf(answer.farm, answer.successions))!.changed;
      return line!.split(" Why: ")[1]!;
    };
    expect(forbidden("rowCoverInHeat", true)).toBe("It would get too hot under it.");
    expect(forbidden("rowCoverInHeat", false)).toBe(
      "No frost is expected there any more. It would get too hot under it.",
    );
    expect(forbidden("minutes", false)).toBe("That walk has no minutes left for it.");
    expect(forbidden(null, false)).toBe("The cloth for it is not at hand, or you keep the tunnel otherwise.");
  });

  test("tells a cut that is moved, added or no longer made", () => {
    const at = (days: number): Instant => instant(outcome.on + days * DAY);
    const cuts = [
      { succession: "A12", was: { at: at(1), as: "salad" }, is: { at: at(2), as: "braising" } },
      { succession: "S4", was: null, is: { at: at(2), as: "salad" } },
      { succession: "M3", was: { at: at(3), as: "small" }, is: null },
    ] as const;
    expect(told({ changed: [], cuts })!.changed.map(plain)).toEqual([
      "Cut the arugula (A12): Wed Apr 22, 5:30 am as braising or bunched greens. It was: Tue Apr 21, 5:30 am.",
      "Cut the spinach (S4): Wed Apr 22, 5:30 am. It was: not in these days.",
      "Cut the mustard (M3): not in these days. It was: Thu Apr 23, 5:30 am, below salad size.",
    ]);
  });

  test("says how to note what is not noted, in words that are understood", () => {
    const [line] = told({})!.unnoted;
    expect(plain(line!)).toBe(
      "Not noted, so taken as not done: row cover 30 g off North 1, Saturday evening. Done? leafpace note North 1 row-30 off Saturday evening",
    );
    const words = line!.split("leafpace note ")[1]!;
    const { farm, on } = outcome;
    const { notes, problems } = noteWalk(words, { file: "note", numbered: false }, farm, on, {
      date: null,
      hour: null,
    });
    expect(problems).toEqual([]);
    expect(notes.map(({ note, moment }) => [note.kind, moment.when])).toEqual([
      ["cover", "2026-04-18 18:00"],
    ]);
  });

  test("says so where nothing is changed, names an old sheet by its date, and says nothing where there was none", () => {
    expect(told({ changed: [], unnoted: [] })!.changed).toEqual([
      "Nothing. Friday's sheet still holds; no change to it would be worth $2.",
    ]);
    const old = told({ on: instant(outcome.on - 10 * DAY), walks: 0, changed: [] })!;
    expect(plain(old.heading)).toBe("Left over from the sheet of Fri Apr 10");
    expect(old.changed).toEqual([]);
    expect(told({ walks: 0, changed: [], unnoted: [] })).toBeNull();
    expect(since(outcome, namesOf(outcome.farm, outcome.successions))).toBeNull();
  });

  test("stands before today's walks in the text and on the page, and in the data", () => {
    const answer = sample({}, { since: issued });
    const text = weekText(answer, { width: 80, unicode: true, color: false });
    expect(text.indexOf("CHANGED SINCE FRIDAY'S SHEET")).toBeGreaterThan(0);
    expect(text.indexOf("CHANGED SINCE FRIDAY'S SHEET")).toBeLessThan(text.indexOf("\nTODAY\n"));
    const page = weekHtml(answer);
    expect(page.indexOf('<h2 id="since">Changed since Friday&#39;s sheet</h2>')).toBeGreaterThan(0);
    expect(page.indexOf('id="since"')).toBeLessThan(page.indexOf('<h2 id="today">'));
    const { changedSince } = JSON.parse(weekJson(answer)) as { changedSince: unknown };
    expect(changedSince).toMatchObject({
      priceOfChange: 1.5,
      changed: [
        { walk: walks[5]!.index, tunnel: n1!.id, was: { from: "bare", to: "bare" }, decidedBy: "damage" },
        { walk: walks[6]!.index, tunnel: s1!.id, is: { from: "row-30:on", to: "row-30:on" } },
      ],
      notNoted: [{ tunnel: n1!.id, cover: "row-30", state: "off" }],
    });
  });
});
