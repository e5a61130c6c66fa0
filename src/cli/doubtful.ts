import { catalogue } from "../farm/index.ts";
import { type FarmSettings, OUTSIDE, recordOf, type StoredHour } from "../folder/index.ts";
import { doubtfulText, wrap } from "../sheet/index.ts";
import { type Doubtful, doubtfulAlone } from "../weather/index.ts";

/** Hours of an import that look like a fault of the sensor; under a tunnel nothing is doubted. */
export function doubtfulHours(
  sensor: string,
  hours: readonly StoredHour[],
  { sensors, place, keepFlagged }: FarmSettings,
): readonly Doubtful[] {
  if (sensors.get(sensor) !== OUTSIDE) return [];
  const { settings } = catalogue();
  const records = { sensor, hours: hours.map(recordOf) };
  return doubtfulAlone(records, place, settings, keepFlagged.has(sensor));
}

/** Columns of a summary's names, and of what stands behind them. */
const NAMES = "  doubtful   ";
const WIDTH = 80 - NAMES.length;

/** They as lines of a summary, or nothing. They are stored as they are; the schedule leaves them out. */
export function doubtfulLines(doubtful: readonly Doubtful[], farm: FarmSettings): string {
  const lines = doubtfulText(farm, doubtful).flatMap((line) => wrap(line, WIDTH));
  return lines.length === 0 ? "" : `${NAMES}${lines.join(`\n${" ".repeat(NAMES.length)}`)}\n`;
}
