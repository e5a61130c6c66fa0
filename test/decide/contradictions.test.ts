import { describe, expect, it } from "vitest";
import type { Outcome } from "../../src/decide/index.ts";
import type { Note } from "../../src/farm/index.ts";
import { kilogram } from "../../src/quantity/index.ts";
import { weekText } from "../../src/sheet/index.ts";
import { week } from "../week.ts";
import { frostyFarm, only, product } from "./frostyFarm.ts";
import { confirm } from "./recompute.ts";
import { at, piece } from "./smallFarm.ts";

const { farm } = frostyFarm();

/** The sheet's paragraph that begins with some words, up to the next one. */
function told(outcome: Outcome, begins: string): readonly string[] {
  const lines = weekText(outcome, { width: 100, unicode: true, color: false }).split("\n");
  const from = lines.findIndex((line) => line.startsWith(begins));
  const more = lines.slice(from + 1).findIndex((line) => line === "" || /^[A-Z]/u.test(line));
  return lines.slice(from, from + 1 + more);
}

describe("limits that cannot all be kept give the best plan there is, and what gives way is told", () => {
  it("no minutes at all, under cloth that is carried on every evening and off every morning", () => {
    const note: Note = {
      at: at(-1, 18),
      line: 9,
      remark: "",
      kind: "cover",
      tunnel: "A",
      cover: "row-cover-30",
      state: "nights",
    };
    const outcome = week(
      frostyFarm({
        labour: { ...farm.labour, walk: 0 },
        pieces: [piece("heavy", "row-cover-30", 16)],
        notes: [...farm.notes, note],
      }),
    );
    confirm(outcome);
    // Lifting a side once and leaving it so takes fewer minutes than anything else that ends the rounds.
    expect(outcome.tunnels.map(({ changes }) => changes.map(({ minutes }) => minutes.toFixed(1)))).toEqual([
      ["2.2"],
      [],
    ]);
    expect(outcome.together).toMatchObject({
      proved: true,
      overrun: ["minutes"],
      overrunUnchanged: ["minutes"],
    });
    expect(told(outcome, "LIMITS THE PLAN CANNOT KEEP")).toEqual([
      "LIMITS THE PLAN CANNOT KEEP",
      "- All tunnels together: the covers take more minutes at a walk than your settings allow.",
    ]);
  });

  it("no minutes at all, on bare tunnels before frost", () => {
    const outcome = week(frostyFarm({ labour: { ...farm.labour, walk: 0 } }));
    confirm(outcome);
    expect(outcome.tunnels.flatMap(({ changes }) => changes)).toEqual([]);
    expect(outcome.together).toMatchObject({ proved: true, overrun: [] });
    expect(told(outcome, "CARE: Frost in the night from")).toEqual([
      "CARE: Frost in the night from Wed Apr 22 to Thu: down to 21 °F at the crop with nothing on.",
      "  Tunnel       On it that night Expected Promised Unfit    Risk",
      "                                                  below    left",
      "  A (regrowth) bare             21 °F    21 °F    21 °F    1 in 2",
      "  B (regrowth) bare             21 °F    21 °F    21 °F    1 in 2",
      "  No walk has the minutes to put cloth on A and B.",
    ]);
  });

  it("a tunnel that the grower keeps bare through frost", () => {
    const outcome = week({
      ...frostyFarm(),
      keep: [{ kind: "cover", tunnel: "A", setting: [], from: null, to: null }],
    });
    confirm(outcome);
    expect(outcome.tunnels[0]!.changes).toEqual([]);
    expect(outcome.together!.proved).toBe(true);
    expect(told(outcome, "CARE: Frost in the night from")).toEqual([
      "CARE: Frost in the night from Wed Apr 22 to Thu: down to 21 °F at the crop with nothing on.",
      "  Tunnel       On it that night Expected Promised Unfit    Risk",
      "                                                  below    left",
      "  A (regrowth) bare             21 °F    21 °F    21 °F    1 in 2",
      "  B (regrowth) row cover 30 g   25 °F    23 °F    21 °F    1 in 5",
      "  No cloth that would help goes on A, because you keep it as it is.",
    ]);
  });

  it("an order for a crop that is not sown", () => {
    const spinach = product("spinach", only("spinach"), {
      orders: [{ market: "friday", weight: kilogram(4), short: 7 }],
    });
    const arugula = product("arugula", only("arugula"));
    const outcome = week(frostyFarm({ products: [arugula, spinach] }));
    confirm(outcome);
    const without = week(frostyFarm({ products: [arugula, { ...spinach, orders: [] }] }));
    expect(outcome.tunnels.map(({ takenIn }) => takenIn)).toEqual(
      without.tunnels.map(({ takenIn }) => takenIn),
    );
    // Four kilograms at 7 lack on each of the market's days looked at.
    const days = (without.together!.worth - outcome.together!.worth) / 28;
    expect(days).toBeCloseTo(3, 9);
    expect(told(outcome, "Fri Apr 24, 6 am, for Friday market")).toEqual([
      "Fri Apr 24, 6 am, for Friday market the same day",
      "  spinach: nothing for the 8¾ lb ordered (no spinach sown).",
      "  Nothing is picked then.",
    ]);
  });
});
