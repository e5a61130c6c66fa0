import { describe, expect, test } from "vitest";
import { freedBy, type Planned, type Scene, type SuccessionTable } from "../../src/decide/index.ts";
import { addDays, type Instant, instantAt, type LocalDate } from "../../src/quantity/index.ts";

const ZONE = "UTC";
/** Two weeks in sight. [h] */
const AHEAD = 14 * 24;

/** A bed that came up 10 days after its sowing and grows 6 °C·d a day: 240 °C·d from emergence take another 40 days. */
function freedOn(date: string, latitude: number, aDay = 6) {
  const today = date as LocalDate;
  const on = instantAt(ZONE, today, 7);
  const sown = addDays(today, -60);
  const scene = {
    farm: { place: { zone: ZONE, latitude } },
    horizon: { on, now: 0, lookout: AHEAD },
    settings: { bedDay: 0.02 },
  } as unknown as Scene;
  const table = {
    mass: 10,
    price: 5,
    growing: {
      origin: 0,
      unchanged: { from: 0, pace: Float64Array.from({ length: AHEAD + 1 }, (_, hour) => (hour * aDay) / 24) },
    },
    standing: {
      crop: { requirement: 240 },
      succession: { sown },
      emergence: { at: instantAt(ZONE, addDays(sown, 10), 0) },
    },
  } as unknown as SuccessionTable;
  const cut = (on + 5 * 24 * 3_600_000) as Instant;
  const planned = {
    chosen: { successions: [{ table, outlet: { at: cut }, worth: 20, again: 0 }] },
  } as unknown as Planned;
  return freedBy(scene, planned, table);
}

describe("sowing anew is offered", () => {
  // 5 days sooner, each 2 % of what is lacking to a whole harvest: 0.1 × (50 − 20).
  test.each([
    ["while days grow longer", "2026-02-10", 44],
    ["in autumn, when 50 days are left to the shortest day and more", "2026-11-01", 44],
    ["south of the equator by its own shortest day", "2026-11-20", -33],
  ])("%s", (_, date, latitude) => {
    expect(freedOn(date, latitude)).toEqual({ days: 5, worth: expect.closeTo(3, 9) });
  });

  test.each([
    ["when it would not come to size before the shortest day", "2026-11-02", 44, 6],
    ["nor south of the equator", "2026-05-03", -33, 6],
    ["nor where nothing grows any more", "2026-08-01", 44, 0],
  ])("no more %s", (_, date, latitude, aDay) => {
    expect(freedOn(date, latitude, aDay)).toBeNull();
  });
});
