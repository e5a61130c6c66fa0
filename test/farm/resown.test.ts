import { describe, expect, test } from "vitest";
import type { SuccessionOutlook } from "../../src/decide/index.ts";
import {
  coverHistory,
  type Farm,
  lyingAt,
  type Note,
  settingKey,
  standingSowings,
} from "../../src/farm/index.ts";
import { type Instant, instantAt, type LocalDate } from "../../src/quantity/index.ts";
import { farmOf, MINIMAL, problemsOf } from "../folder/fixtures.ts";
import { mondayInput } from "../real/cities.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { week } from "../week.ts";

const SOWN = "id,crop,tunnel,from (m),to (m),sown,cuts\nS01,spinach,T1,0,15,2026-03-01,1";
const NOTED = "when,kind,about,value,remark";

const zone = "America/New_York";
const at = (date: string, hour: number): Instant => instantAt(zone, date, hour);

const farm = (...notes: readonly string[]): Farm =>
  farmOf({ successions: SOWN, notes: [NOTED, ...notes].join("\n") });

describe("a bed sown again", () => {
  const resown = farm(
    "2026-03-10,emerged,S01,,",
    "2026-04-10,cut,S01,4 kg last,",
    "2026-04-12,loss,S01,10 %,",
    "2026-04-12 18:00,resown,S01,,",
    "2026-04-19,emerged,S01,,",
  );

  test("has the day of the note for its sowing, no cuts, and only the notes after that day", () => {
    const { successions, notes } = standingSowings(resown, zone, at("2026-04-20", 12));
    expect(successions).toEqual([{ ...resown.successions[0], sown: "2026-04-12", cuts: 0 }]);
    expect(notes.map(({ kind }) => kind)).toEqual(["emerged"]);
  });

  test("is the old sowing until then", () => {
    const before = standingSowings(resown, zone, at("2026-04-12", 17));
    expect(before.successions).toEqual(resown.successions);
    expect(before.notes).toEqual(resown.notes);
  });

  test("is the latest sowing where there were several", () => {
    const twice = farm("2026-04-12,resown,S01,,", "2026-03-20,resown,S01,,");
    expect(standingSowings(twice, zone, at("2026-04-20", 12)).successions[0]!.sown).toBe("2026-04-12");
  });

  test("stands where it stood, so that its place is taken", () => {
    const successions = `${SOWN}\nS02,spinach,T1,0,15,2026-04-11,0`;
    const last = "2026-04-10,cut,S01,4 kg last,";
    const stops = (...notes: readonly string[]) =>
      problemsOf({ farm: MINIMAL, successions, notes: [NOTED, last, ...notes].join("\n") }).filter(
        (text) => text.includes("where S02 stands") || text.includes("where S01 stands"),
      );
    expect([stops().length, stops("2026-04-12,resown,S01,,").length]).toEqual([0, 1]);
  });

  test("is planned as one whose sowing date is that day", () => {
    const input = { ...mondayInput(exampleFarm(), "New York", "2013-04-15" as LocalDate), days: 3 };
    const day = "2013-04-05" as LocalDate;
    const note: Note = {
      kind: "resown",
      succession: "S12",
      at: instantAt(zone, day, 9),
      line: 99,
      remark: "",
    };
    const plan = (farm: Farm) => {
      const { successions, tunnels } = week({ ...input, farm });
      // As data: what is worked out when asked is the same when what it is worked out of is.
      return JSON.parse(JSON.stringify({ successions, changes: tunnels.map(({ changes }) => changes) }));
    };
    const successions = input.farm.successions.map((one) => (one.id === "S12" ? { ...one, sown: day } : one));
    const noted = plan({ ...input.farm, notes: [...input.farm.notes, note] });
    expect(noted).toEqual(plan({ ...input.farm, successions }));
    expect(
      noted.successions.find(({ succession }: SuccessionOutlook) => succession.id === "S12").succession.sown,
    ).toBe(day);
  });
});

describe("what lay on a tunnel before its first note", () => {
  const PIECES = "id,cover,length (m),count,lies on\nC1,row-cover-19,15,1,T1\nC2,net,15,1,";
  const lying = (...notes: readonly string[]): string[] => {
    const read = farmOf({ successions: SOWN, pieces: PIECES, notes: [NOTED, ...notes].join("\n") });
    const history = coverHistory(read, read.tunnels[0]!);
    return [at("2026-03-01", 12), at("2026-04-20", 12)].map((when) => settingKey(lyingAt(history, when)));
  };

  test.each([
    ["without a note, what pieces.csv says", [], ["row-cover-19:on", "row-cover-19:on"]],
    [
      "a cover that was taken off had lain there",
      ["2026-04-18 7:00,cover,T1,row-cover-19 off,"],
      ["row-cover-19:on", "bare"],
    ],
    [
      "one that pieces.csv does not know of, too",
      ["2026-04-18 7:00,cover,T1,net off,"],
      ["net:on+row-cover-19:on", "row-cover-19:on"],
    ],
    [
      "a cover put on had not, whatever pieces.csv says now",
      ["2026-04-18 7:00,cover,T1,row-cover-19 on,"],
      ["bare", "row-cover-19:on"],
    ],
    [
      "a net put over it leaves it as it was",
      ["2026-04-18 7:00,cover,T1,net on,"],
      ["row-cover-19:on", "net:on+row-cover-19:on"],
    ],
  ])("%s", (_what, notes, expected) => {
    expect(lying(...notes)).toEqual(expected);
  });
});
