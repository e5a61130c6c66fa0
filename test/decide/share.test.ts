import { describe, expect, test } from "vitest";
import { type Farm, settingKey } from "../../src/farm/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { week } from "../week.ts";
import { at, bed, clear, input, leaf, piece, tunnel } from "./smallFarm.ts";

type Outcome = ReturnType<typeof week>;

/** The pieces each tunnel's plan lays out. */
const laid = ({ tunnels }: Outcome): Readonly<Record<string, readonly string[]>> =>
  Object.fromEntries(
    tunnels.map(({ tunnel: { id }, changes }) => [
      id,
      changes.flatMap(({ pieces }) => pieces.map((each) => each.id)),
    ]),
  );

const short = tunnel("18 m", 18);
const long = tunnel("30 m", 30);

describe("the only cloth that fits a long tunnel", () => {
  const cut = bed("lettuce-mix", short);
  const young = bed("lettuce-mix", long);
  // What would grow again of the bed that is cut counts for nothing here.
  const plan = (low: number, pieces = [piece("32 m", "row-cover-19", 32)]) => {
    const both = input(
      {
        tunnels: [short, long],
        successions: [cut, young],
        pieces,
        notes: [leaf(cut, 10), leaf(young, 3.5)],
      },
      clear([4, 14], [low, 12], [low, 12], [4, 14], [4, 14]),
    );
    return week({ ...both, settings: { ...both.settings, regrowthWorth: 0 } });
  };

  test.each([-1, -2, -3, -4, -6, -9])(
    "goes there and not to a short one whose bed is cut before the frost, at %d °C",
    (low) => {
      const outcome = plan(low);
      expect(outcome.successions[0]!.fate).toMatchObject({ pick: { at: at(0, 18) } });
      expect(laid(outcome)["30 m"]).toEqual(["32 m"]);
      const [, covered] = outcome.tunnels;
      const frosty = outcome.walks.filter(({ part, at: then }) => part === "evening" && then < at(2, 0));
      expect(frosty.map(({ index }) => settingKey(covered!.settings[covered!.choice[index]!]!))).toEqual([
        "row-cover-19:on",
        "row-cover-19:on",
      ]);
    },
  );

  test.each([-1, -4, -9])("is not taken where a shorter one will do, at %d °C", (low) => {
    const both = [bed("lettuce-mix", short), young] as const;
    const outcome = week(
      input(
        {
          tunnels: [short, long],
          successions: both,
          pieces: [piece("32 m", "row-cover-19", 32), piece("20 m", "row-cover-19", 20)],
          notes: both.map((each) => leaf(each, 3.5)),
        },
        clear([4, 14], [low, 12], [low, 12], [4, 14], [4, 14]),
      ),
    );
    expect(laid(outcome)).toEqual({ "18 m": ["20 m"], "30 m": ["32 m"] });
  });
});

describe("two tunnels in danger", () => {
  test("both get cloth when the one that gains most can do with a piece only little less warm", () => {
    const middle = tunnel("28 m", 28);
    const beds = [bed("mustard", middle), bed("lettuce-mix", long)] as const;
    const outcome = week(
      input(
        {
          tunnels: [middle, long],
          successions: beds,
          pieces: [piece("heavy", "row-cover-30", 32), piece("light", "row-cover-19", 28)],
          notes: [leaf(beds[0], 4), leaf(beds[1], 3)],
          limits: { ...exampleFarm().limits, layers: 1 },
        },
        clear([4, 14], [-2, 12], [-2, 12], [4, 14], [4, 14]),
        at(0, 17.5),
      ),
    );
    expect(laid(outcome)).toEqual({ "28 m": ["light"], "30 m": ["heavy"] });
  });
});

describe("cloth that lacks", () => {
  const beds = [bed("lettuce-mix", short), bed("lettuce-mix", long)];
  const reasons = (pieces: Parameters<typeof input>[0]["pieces"], low = -4, wind = false) => {
    const days = clear([4, 14], [low, 12], [4, 14]).map((day, i) =>
      wind && i === 0 ? { ...day, wind: 12 as typeof day.wind } : day,
    );
    const { warnings } = week(
      input(
        { tunnels: [short, long], successions: beds, pieces, notes: beds.map((each) => leaf(each, 3.5)) },
        days,
        at(0, wind ? 17 : 6.5),
      ),
    );
    return Object.fromEntries(
      warnings.flatMap((warning) =>
        warning.kind === "frost" ? [[warning.tunnel, warning.noClothLeft]] : [],
      ),
    );
  };

  test("is said to be owned by nobody, too short, in use, or kept off by wind", () => {
    expect(reasons([])).toEqual({ "18 m": "none", "30 m": "none" });
    expect(reasons([piece("20 m", "row-cover-19", 20)])).toEqual({ "18 m": undefined, "30 m": "tooShort" });
    expect(reasons([piece("32 m", "row-cover-19", 32)])).toEqual({ "18 m": "inUse", "30 m": undefined });
    expect(reasons([piece("32 m", "row-cover-19", 32), piece("20 m", "row-cover-19", 20)], -4, true)).toEqual(
      {
        "18 m": "wind",
        "30 m": "wind",
      },
    );
  });
});

describe("shade on days that are too hot", () => {
  const tunnels = ["A", "B", "C", "D", "E"].map((id) => tunnel(id, 18));
  const beds = tunnels.map((each) => bed("lettuce-mix", each));
  const plan = (high: number) =>
    week(
      input(
        {
          tunnels,
          successions: beds,
          pieces: [piece("one", "shade-40", 20), piece("two", "shade-50", 20)],
          notes: beds.map((each) => leaf(each, 5)),
        },
        clear([18, high], [18, high], [18, high], [18, high], [18, high]),
      ),
    );

  test.each([33, 37, 41, 45])(
    "stays in the shed at no height of it: every piece is laid out at %d °C",
    (high) => {
      const pieces = Object.values(laid(plan(high))).flat();
      expect([...pieces].sort()).toEqual(["one", "two"]);
    },
  );
});

describe("a night and a day that are over", () => {
  const only = bed("lettuce-mix", short);
  const warningsAt = (hour: number, days: readonly (readonly [number, number])[]) =>
    week(
      input(
        { tunnels: [short], successions: [only], pieces: [], notes: [leaf(only, 3.5)] },
        clear(...days),
        at(0, hour),
      ),
    ).warnings.flatMap((warning) => (warning.kind === "frost" || warning.kind === "heat" ? [warning] : []));

  test("are no danger any more when their worst hour lies behind", () => {
    const frosty = [
      [-7, 12],
      [5, 14],
    ] as const;
    expect(warningsAt(4.5, frosty)[0]).toMatchObject({ kind: "frost", severity: "danger" });
    expect(warningsAt(4.5, frosty)[0]).not.toHaveProperty("past");
    expect(warningsAt(6.4, frosty)[0]).toMatchObject({ kind: "frost", severity: "care", past: true });
    const hot = [
      [18, 41],
      [12, 20],
    ] as const;
    expect(warningsAt(12, hot)[0]).toMatchObject({ kind: "heat", severity: "danger" });
    expect(warningsAt(17, hot)[0]).toMatchObject({ kind: "heat", severity: "care", past: true });
  });
});

describe("warm cloth still on in heat", () => {
  const bedded = bed("lettuce-mix", short);
  const lain = piece("20 m", "row-cover-30", 20, [short.id]);
  const reason = (more: Partial<Farm>, settled: WeekInput["keep"] = []) => {
    const asked = input(
      { tunnels: [short], successions: [bedded], pieces: [lain], notes: [leaf(bedded, 3.5)], ...more },
      clear([14, 34], [14, 34], [14, 34]),
    );
    const hot = week({ ...asked, keep: settled }).warnings.filter(({ kind }) => kind === "heat");
    return hot.map((warning) => warning.kind === "heat" && warning.noClothLeft);
  };

  test("says that the grower keeps it there", () => {
    const kept = [{ kind: "unchanged", tunnel: short.id, from: null, to: null }] as const;
    expect(new Set(reason({}, kept))).toEqual(new Set(["keptOn"]));
  });

  test("says that no walk has the minutes to take it off", () => {
    const labour = { ...exampleFarm().labour, walk: 1 };
    expect(new Set(reason({ labour }))).toEqual(new Set(["minutesOff"]));
  });
});
