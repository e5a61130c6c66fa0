import type { Place, Settings } from "../farm/index.ts";
import { celsius, HOUR, type Instant, startOf, type UtcHour } from "../quantity/index.ts";
import { type Flag, type Flags, flagsOf, warmerThanOthers } from "./quality.ts";
import type { HourlyRecord, SensorRecords } from "./record.ts";

type HourlyRecords = Pick<SensorRecords, "sensor" | "hours">;

/** Doubtful hours of one sensor, one after the other, all for the same reason. */
export interface Doubtful {
  readonly sensor: string;
  readonly flag: Flag;
  readonly from: Instant;
  readonly to: Instant;
  readonly hours: number;
  /** Lowest and highest hourly mean. [°C] */
  readonly low: number;
  readonly high: number;
  /** Hours of them that count all the same: the grower keeps them, or nothing better is known. */
  readonly used: number;
}

export interface Outside {
  /** One record an hour, oldest first. */
  readonly hours: readonly HourlyRecord[];
  readonly doubtful: readonly Doubtful[];
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[(sorted.length - 1) >> 1]! + sorted[sorted.length >> 1]!) / 2;
};

/** Records of one hour as one: the median of each number, of two their mean. */
function middle(records: readonly HourlyRecord[]): HourlyRecord {
  const [first] = records as readonly [HourlyRecord];
  if (records.length === 1) return first;
  return {
    hour: first.hour,
    mean: celsius(median(records.map(({ mean }) => mean))),
    lowest: celsius(median(records.map(({ lowest }) => lowest))),
    highest: celsius(median(records.map(({ highest }) => highest))),
    count: records.reduce((sum, { count }) => sum + count, 0),
  };
}

function flagged(sensors: readonly HourlyRecords[], place: Place, settings: Settings): readonly Flags[] {
  const alone = sensors.map(({ hours }) => flagsOf(hours, place, settings));
  if (sensors.length === 1) return alone;
  const sound = sensors.map(({ hours }, i) => hours.filter(({ hour }) => !alone[i]!.has(hour)));
  return alone.map((flags, i) => {
    const others = sound.filter((_, k) => k !== i);
    const warmer = warmerThanOthers(sound[i]!, others, place, settings);
    return new Map([...flags, ...warmer.map((hour) => [hour, "sun" as const] as const)]);
  });
}

/** The flagged hours of one sensor as stretches. `counts`: does a flagged hour count all the same? */
function stretches(
  { sensor, hours }: HourlyRecords,
  flags: Flags,
  counts: (record: HourlyRecord) => boolean,
): readonly Doubtful[] {
  const found: Doubtful[] = [];
  for (const record of flags.size === 0 ? [] : hours) {
    const flag = flags.get(record.hour);
    if (flag === undefined) continue;
    const [from, to] = [startOf(record.hour), startOf((record.hour + 1) as UtcHour)];
    const used = counts(record) ? 1 : 0;
    const last = found.at(-1);
    if (last?.flag === flag && last.to === from)
      found[found.length - 1] = {
        ...last,
        to,
        hours: last.hours + 1,
        low: Math.min(last.low, record.mean),
        high: Math.max(last.high, record.mean),
        used: last.used + used,
      };
    else found.push({ sensor, flag, from, to, hours: 1, low: record.mean, high: record.mean, used });
  }
  return found;
}

/** Doubtful hours of a sensor in the open with nothing beside it. `kept`: the grower keeps them. */
export function doubtfulAlone(
  records: HourlyRecords,
  place: Place,
  settings: Settings,
  kept: boolean,
): readonly Doubtful[] {
  const flags = flagsOf(records.hours, place, settings);
  return stretches(records, flags, ({ hour }) => kept || flags.get(hour) === "sun");
}

/**
 * What the sensors in the open say together. For every hour the median of those that are sound or kept. Where all
 * that an hour has was heated by the sun, that is used: too warm by day is nearer the truth than nothing. Any other
 * doubtful hour is left out, and bridged or estimated like one that was never logged.
 *
 * @param kept - Sensors whose doubtful hours the grower keeps.
 * @param from - Hours before it are not looked at.
 */
export function outside(
  sensors: readonly HourlyRecords[],
  place: Place,
  settings: Settings,
  kept: ReadonlySet<string>,
  from: Instant,
): Outside {
  const known = sensors.map(({ sensor, hours }) => ({
    sensor,
    hours: hours.filter(({ hour }) => startOf(hour) + HOUR > from),
  }));
  const flags = flagged(known, place, settings);
  const byHour = new Map<UtcHour, { readonly sound: HourlyRecord[]; readonly sunny: HourlyRecord[] }>();
  sensors.forEach(({ sensor, hours }, i) => {
    for (const record of hours) {
      const flag = kept.has(sensor) ? undefined : flags[i]!.get(record.hour);
      if (flag !== undefined && flag !== "sun") continue;
      const at = byHour.get(record.hour) ?? { sound: [], sunny: [] };
      byHour.set(record.hour, at);
      at[flag === undefined ? "sound" : "sunny"].push(record);
    }
  });
  const counting = [...byHour.values()].map(({ sound, sunny }) => (sound.length > 0 ? sound : sunny));
  const used = new Set(counting.flat());
  return {
    hours: counting.map(middle).sort((a, b) => a.hour - b.hour),
    doubtful: known.flatMap((sensor, i) => stretches(sensor, flags[i]!, (record) => used.has(record))),
  };
}
