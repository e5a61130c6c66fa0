import type { DailyRecord } from "../../src/weather/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { A, ARUGULA } from "./frostyFarm.ts";
import { at, clear, input, leaf, piece } from "./smallFarm.ts";

const FRIDAY = { id: "friday", name: "Friday", weekday: 5, picks: [{ daysBefore: 0, hour: 8 }] };

/** Days with so much rain on Thursday. [mm] */
const wetThursday = (days: readonly DailyRecord[], rain: number): readonly DailyRecord[] =>
  days.map((day, i) => (i === 3 ? { ...day, rain } : day));

/** From Thursday afternoon on: a bed under row cover that is ready for Friday, with one lowest temperature before its cut. */
export function wetFarm(low: number, rain: number, cover = "row-cover-30"): WeekInput {
  const days = clear([8, 14], [8, 14], [8, 14], [8, 14], [low, 14], [6, 15]);
  return {
    ...input(
      {
        tunnels: [A],
        successions: [ARUGULA],
        notes: [leaf(ARUGULA, 9)],
        pieces: [piece("heavy", cover, 16, ["A"])],
        markets: [FRIDAY],
      },
      wetThursday(days, rain),
      at(3, 16),
    ),
    days: 2,
  };
}
