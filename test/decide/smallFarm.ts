import {
  catalogue,
  type Farm,
  type Note,
  type Piece,
  type Succession,
  type Tunnel,
} from "../../src/farm/index.ts";
import {
  addDays,
  celsius,
  centimetre,
  type Instant,
  instantAt,
  type LocalDate,
  metre,
  metrePerSecond,
} from "../../src/quantity/index.ts";
import type { DailyRecord } from "../../src/weather/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { exampleFarm } from "../real/exampleFarm.ts";

const { settings } = catalogue();
const example = exampleFarm();

export const MONDAY = "2026-04-20" as LocalDate;

/** A moment on the farm's clock, days after Monday. */
export const at = (day: number, hour: number): Instant =>
  instantAt(example.place.zone, addDays(MONDAY, day), hour);

export const tunnel = (id: string, length: number): Tunnel => ({
  ...example.tunnels[0]!,
  id,
  name: id,
  length: metre(length),
});

export const piece = (id: string, cover: string, length: number, liesOn: readonly string[] = []): Piece => ({
  id,
  cover,
  length: metre(length),
  count: 1,
  spans: 1,
  liesOn,
});

/** A bed along the whole of its tunnel. */
export const bed = (crop: string, of: Tunnel, more: Partial<Succession> = {}): Succession => ({
  id: `${crop} in ${of.id}`,
  crop,
  tunnel: of.id,
  from: metre(0),
  to: of.length,
  sown: addDays(MONDAY, -30),
  market: null,
  cuts: 0,
  net: false,
  ...more,
});

/** Its leaf as measured on Sunday evening. */
export const leaf = ({ id }: Succession, cm: number): Note => ({
  at: at(-1, 18),
  line: 2,
  remark: "",
  kind: "leaf",
  succession: id,
  lengths: [centimetre(cm)],
});

/** Clear, nearly calm days: lowest and highest at the station, from Monday on. [°C] */
export const clear = (...days: readonly (readonly [low: number, high: number])[]): readonly DailyRecord[] =>
  days.map(([low, high], i) => ({
    date: addDays(MONDAY, i),
    low: celsius(low),
    high: celsius(high),
    wind: metrePerSecond(1),
    sky: "sun" as const,
  }));

/** What a plan for a farm of its own tunnels, beds and cloth is made from; markets are the example's, each crop sells by itself. */
export function input(
  parts: Pick<Farm, "tunnels" | "successions" | "pieces"> & Partial<Farm>,
  days: readonly DailyRecord[],
  on: Instant = at(0, 6.5),
): WeekInput {
  return {
    farm: { ...example, notes: [], products: [], ...parts },
    settings,
    sensors: [],
    forecast: { issued: at(-1, 18), days },
    on,
    days: days.length,
    problems: [],
  };
}
