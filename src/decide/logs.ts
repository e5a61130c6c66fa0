import type { Farm } from "../farm/index.ts";
import { type Instant, startOf, type UtcHour } from "../quantity/index.ts";
import type { HourlyRecord, SensorRecords, Weather } from "../weather/index.ts";

/** What loggers under one tunnel's cover recorded. */
export interface TunnelLog {
  /** By hour of the weather's arrays; NaN where nothing was recorded. [°C] */
  readonly temperature: Float64Array;
  /** End of the last hour recorded. */
  readonly latest: Instant;
}

/** Sensors that stand in one place as one: for every hour the first that has it, in the order given; oldest hour first. */
export function merged(sensors: readonly SensorRecords[]): readonly HourlyRecord[] {
  if (sensors.length <= 1) return sensors[0]?.hours ?? [];
  const hours = new Map<number, HourlyRecord>();
  for (const record of sensors.flatMap((sensor) => sensor.hours)) {
    if (!hours.has(record.hour)) hours.set(record.hour, record);
  }
  return [...hours.values()].sort((a, b) => a.hour - b.hour);
}

/** Sensors standing "outside" or in a tunnel, by its id. */
export const sensorsAt = (
  farm: Farm,
  sensors: readonly SensorRecords[],
  place: string,
): readonly SensorRecords[] => sensors.filter(({ sensor }) => farm.sensors.get(sensor) === place);

/** The logs of all tunnels that have their own, up to the moment planned from. */
export function tunnelLogs(
  farm: Farm,
  sensors: readonly SensorRecords[],
  { first, temperature }: Weather,
  on: Instant,
): ReadonlyMap<string, TunnelLog> {
  const logs = new Map<string, TunnelLog>();
  for (const { id, section } of farm.tunnels) {
    // One that hangs somewhere in a long tunnel tells of each section that has none of its own.
    const own = sensorsAt(farm, sensors, id);
    const here = own.length > 0 || section === undefined ? own : sensorsAt(farm, sensors, section.of);
    const hours = merged(here).filter(
      ({ hour }) => hour >= first && hour < first + temperature.length && startOf(hour) < on,
    );
    const last = hours[hours.length - 1];
    if (last === undefined) continue;
    const recorded = new Float64Array(temperature.length).fill(Number.NaN);
    for (const { hour, mean } of hours) recorded[hour - first] = mean;
    logs.set(id, { temperature: recorded, latest: startOf((last.hour + 1) as UtcHour) });
  }
  return logs;
}
