import { expect, test } from "vitest";
import { settingKey } from "../../src/farm/index.ts";
import { HOUR } from "../../src/quantity/index.ts";
import { exampleWeek } from "../sheet/exampleWeek.ts";

test("the air at the crop holds the very lows and highs that frost and heat are judged by", async () => {
  const { walks, tunnels, air } = await exampleWeek();
  const hourOf = (at: number): number => Math.round((at - air!.from) / HOUR);
  const ends = [...walks.slice(1).map(({ at }) => at), air!.until];
  for (const { tunnel, nights, ledger, choice, settings } of tunnels) {
    const under = air!.under.get(tunnel.id)!;
    expect(under).toHaveLength(air!.bare.length);
    for (const { index, date, part, at } of walks) {
      const [a, b] = [hourOf(at), hourOf(ends[index]!)];
      const key = settingKey(settings[choice[index]!]!);
      const entry = ledger.find(({ walk, setting }) => walk === index && setting === key)!;
      if (part === "morning") expect(Math.max(...under.slice(a, b))).toBeCloseTo(entry.highest, 10);
      else {
        const night = nights.find((each) => each.date === date)!;
        expect(Math.min(...under.slice(a, b))).toBeCloseTo(night.expected, 10);
        expect(Math.min(...air!.bare.slice(a, b))).toBeCloseTo(night.bare, 10);
      }
    }
  }
});
