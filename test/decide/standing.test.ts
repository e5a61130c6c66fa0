import { describe, expect, test } from "vitest";
import { settingKey } from "../../src/farm/index.ts";
import { week } from "../week.ts";
import { at, bed, clear, input, leaf, piece, tunnel } from "./smallFarm.ts";

const T = tunnel("T", 18);
const CLOTH = [piece("20 m", "row-cover-19", 20)];
/** Frost in the night to Wednesday, which ends with this low at the station. [°C] */
const frostOnWednesday = (low: number) => clear([4, 14], [4, 14], [low, 8], [4, 14], [4, 14]);

/** What lies on the tunnel in the night to Wednesday. */
function lyingOnTuesday(outcome: ReturnType<typeof week>): string {
  const [plan] = outcome.tunnels;
  const walk = outcome.walks.find(({ part, at: then }) => part === "evening" && then > at(1, 12))!;
  return settingKey(plan!.settings[plan!.choice[walk.index]!]!);
}

const frostOf = (outcome: ReturnType<typeof week>) =>
  outcome.warnings.flatMap((warning) => (warning.kind === "frost" ? [warning] : []));

describe("frost in a night after a bed is cut", () => {
  const plan = (crop: string, cm: number, low: number) => {
    const only = bed(crop, T);
    return week(
      input(
        { tunnels: [T], successions: [only], pieces: CLOTH, notes: [leaf(only, cm)] },
        frostOnWednesday(low),
        at(0, 17.5),
      ),
    );
  };

  test.each([-1, -4, -9])("asks for no cloth after the last cut, at %d °C", (low) => {
    const last = week(
      input(
        {
          tunnels: [T],
          successions: [bed("lettuce-mix", T, { cuts: 1 })],
          pieces: CLOTH,
          notes: [
            {
              at: at(-9, 8),
              line: 2,
              remark: "",
              kind: "cut",
              succession: "lettuce-mix in T",
              weight: null,
              last: false,
            },
            leaf(bed("lettuce-mix", T), 10),
          ],
        },
        frostOnWednesday(low),
      ),
    );
    expect(last.successions[0]!.fate).toMatchObject({ kind: "pick", pick: { at: at(0, 18) } });
    expect(last.tunnels[0]!.changes.filter(({ limit }) => limit !== null)).toEqual([]);
    expect(last.tunnels[0]!.unchangedBreaks).toEqual([]);
    expect(last.tunnels[0]!.worth).toBeGreaterThanOrEqual(last.tunnels[0]!.worthUnchanged);
    expect(frostOf(last)).toEqual([]);
  });

  test("asks for no cloth over stubble that bears it", () => {
    const outcome = plan("lettuce-mix", 10, 2);
    expect(lyingOnTuesday(outcome)).toBe("bare");
    expect(frostOf(outcome)).toEqual([]);
  });

  test("asks for the warmest cloth over stubble that would die of it", () => {
    const outcome = plan("lettuce-mix", 10, -3);
    expect(lyingOnTuesday(outcome)).toBe("row-cover-19:on");
  });

  test("warns of the regrowth, not of the leaves that were cut before it", () => {
    const [frost] = frostOf(plan("lettuce-mix", 10, -9));
    expect(frost!.beds.map(({ succession, of }) => [succession, of])).toEqual([
      ["lettuce-mix in T", "stubble"],
    ]);
  });

  test("asks for cloth while leaves stand that are too small to cut", () => {
    const outcome = plan("lettuce-mix", 3, -4);
    expect(outcome.successions[0]!.fate).not.toMatchObject({ pick: { at: at(0, 18) } });
    expect(lyingOnTuesday(outcome)).toBe("row-cover-19:on");
  });
});

describe("a bed that has been cut on a day nobody noted", () => {
  const outcome = week(
    input(
      { tunnels: [T], successions: [bed("lettuce-mix", T, { cuts: 1 })], pieces: CLOTH },
      frostOnWednesday(-9),
    ),
  );

  test("stands, however large: it is warned of and covered", () => {
    expect(frostOf(outcome)).toEqual([
      expect.objectContaining({
        severity: "danger",
        beds: [expect.objectContaining({ succession: "lettuce-mix in T", of: "leaves" })],
      }),
    ]);
    expect(lyingOnTuesday(outcome)).toBe("row-cover-19:on");
  });
});

describe("a cut while it freezes", () => {
  const ready = bed("spinach", T);
  const plan = (low: number) =>
    week(
      input(
        { tunnels: [T], successions: [ready], pieces: [], notes: [leaf(ready, 7)] },
        clear([low, 8], [low, 8], [low, 8], [low, 8], [4, 14], [4, 14]),
      ),
    );

  test("is put off until bare ground has been above freezing for an hour when it is kept cold anyway", () => {
    const { successions } = plan(-4);
    const outlets = successions[0]!.basis!.outlets.filter(({ kind }) => kind === "hold");
    expect(outlets.length).toBeGreaterThan(0);
    const { bare, from } = plan(-4).air!;
    for (const { at: cut } of outlets) {
      const hour = (cut - from) / 3_600_000;
      expect(bare[hour]!).toBeGreaterThan(0);
      if (cut < at(4, 0)) {
        expect(cut % 86_400_000).toBeGreaterThan(at(0, 7) % 86_400_000);
        expect(bare[hour - 1]!).toBeGreaterThan(0);
        expect(bare[hour - 2]!).toBeLessThanOrEqual(0);
      }
    }
  });

  test("is at the walk when nothing is frozen then", () => {
    const outlets = plan(4).successions[0]!.basis!.outlets.filter(({ kind }) => kind === "hold");
    expect(outlets.map(({ at: cut }) => cut)).toContain(at(1, 7));
  });

  /** A bed picked on a frosty Friday at an hour, planned for at another. */
  const picked = (hour: number, now = 4.5) => {
    const small = bed("spinach", T);
    return week(
      input(
        {
          tunnels: [T],
          successions: [small],
          pieces: [],
          notes: [leaf(small, 4.5)],
          markets: [{ id: "friday", name: "Friday", weekday: 5, picks: [{ daysBefore: 0, hour }] }],
        },
        clear([3, 14], [3, 14], [3, 14], [3, 14], [-4, 10]),
        at(4, now),
      ),
    ).successions[0]!;
  };

  test("keeps the hour of a pick and says when the bed has thawed, whatever that hour is", () => {
    const { fate, atFate } = picked(6);
    expect(fate).toMatchObject({ kind: "pick", pick: { at: at(4, 6) } });
    expect(atFate).toMatchObject({ frozen: true });
    expect(atFate!.thaw!).toBeGreaterThan(at(4, 6));
    expect(atFate!.thaw!).toBeLessThan(at(4, 12));
    for (const hour of [6.25, 6.5, 7, 7.5])
      expect(picked(hour).atFate).toMatchObject({ frozen: true, thaw: atFate!.thaw });
  });

  test("is still ahead when the hour of its pick is past and the bed has not thawed", () => {
    const [early, late] = [6.9, 11].map((now) => picked(6, now));
    expect(early!.fate).toMatchObject({ kind: "pick", pick: { at: at(4, 6) } });
    expect(early!.atFate!.thaw!).toBeGreaterThan(at(4, 6.9));
    expect(late!.atPicks.map(({ pick }) => pick.at)).not.toContain(at(4, 6));
  });
});

describe("a cut", () => {
  const long = tunnel("L", 30);
  const plan = (cm: number) => {
    const chard = bed("chard", long);
    return week(
      input(
        { tunnels: [long], successions: [chard], pieces: [], notes: [leaf(chard, cm)] },
        clear([2, 8], [2, 8]),
      ),
    ).successions[0]!;
  };

  test("takes two minutes a metre, which its worth pays", () => {
    const { fate, atFate, basis, worth } = plan(8);
    expect(fate.kind).not.toBe("none");
    expect(atFate!.minutes).toBe(60);
    expect(basis!.cutting).toBe(60);
    expect(worth).toBeGreaterThan(0);
  });

  test("is never made of seedlings, not even when frost will take them", () => {
    for (const cm of [1.5, 2.5, 3]) {
      const chard = bed("chard", long);
      const frost = clear([4, 14], [-9, 4], [-9, 4]);
      const parts = { tunnels: [long], successions: [chard], pieces: [], notes: [leaf(chard, cm)] };
      const { fate, worth } = week(input(parts, frost, at(0, 17.5))).successions[0]!;
      expect([cm, fate.kind === "none" || !fate.pick.planned, worth < 1]).toEqual([cm, true, true]);
    }
  });
});
