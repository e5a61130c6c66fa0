import {
  addDays,
  celsius,
  HOUR,
  hourOf,
  type Instant,
  instantAt,
  type LocalDate,
  startOf,
  type UtcHour,
} from "../../src/quantity/index.ts";
import type { HourlyRecord, SensorRecords } from "../../src/weather/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { exampleFarm } from "../real/exampleFarm.ts";
import { at, clear, input } from "./smallFarm.ts";

const { zone } = exampleFarm().place;

/** Air of a mild spring, the same every day: 12 °C in the mean, 6 °C more in the afternoon. [°C] */
const airAt = (hour: UtcHour): number => {
  const local = (startOf(hour) - instantAt(zone, "2026-04-01" as LocalDate, 0)) / HOUR;
  return 12 - 6 * Math.cos(((local - 3) / 24) * 2 * Math.PI);
};

/** What a sensor recorded from one date up to a moment, warmer than the air by so much at each hour. */
export function recorded(
  sensor: string,
  from: LocalDate,
  until: Instant,
  warmer: (hour: UtcHour) => number = () => 0,
): SensorRecords {
  const hours: HourlyRecord[] = [];
  for (let hour = hourOf(instantAt(zone, from, 0)); startOf(hour) < until; hour = (hour + 1) as UtcHour) {
    const mean = celsius(airAt(hour) + warmer(hour));
    hours.push({ hour, mean, lowest: mean, highest: mean, count: 4 });
  }
  return { sensor, hours };
}

/** A small farm whose log outside reaches back to a date. */
export function logged(
  parts: Parameters<typeof input>[0],
  from: LocalDate,
  on: Instant = at(0, 6.5),
): WeekInput {
  const days = clear(...Array.from({ length: 7 }, () => [6, 18] as const));
  const asked = input(parts, days, on);
  const sensors = new Map([["outside", "outside"], ...(parts.sensors ?? [])]);
  return { ...asked, farm: { ...asked.farm, sensors }, sensors: [recorded("outside", from, on)] };
}

export const daysBefore = (date: LocalDate, days: number): LocalDate => addDays(date, -days);
