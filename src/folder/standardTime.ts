import { tzOffset } from "@date-fns/tz";

/** Minutes a zone is ahead of universal time while it keeps no daylight time. [min] @example standardOffset("America/New_York", 2026) // => -300 */
export const standardOffset = (zone: string, year: number): number =>
  Math.min(...[0, 6].map((month) => tzOffset(zone, new Date(Date.UTC(year, month, 15)))));

/** Minutes a zone is ahead of universal time while it keeps daylight time; its standard time where it has none. [min] @example summerOffset("America/New_York", 2026) // => -240 */
export const summerOffset = (zone: string, year: number): number =>
  Math.max(...[0, 6].map((month) => tzOffset(zone, new Date(Date.UTC(year, month, 15)))));

/** Hours a zone's standard time may differ from the sun's before it looks like a mistake. [h] */
const FAR = 3;

/** Does a zone's clock go with the sun at a longitude? @example fitsSun("America/New_York", -72.8, 2026) // => true */
export function fitsSun(zone: string, longitude: number, year: number): boolean {
  const apart = Math.abs(standardOffset(zone, year) / 60 - longitude / 15);
  // Across the date line a day more or less is the same clock.
  return Math.min(apart, 24 - apart) <= FAR;
}

/** @example offsetWords(-210) // => "3 hours 30 minutes behind universal time" */
export function offsetWords(minutes: number): string {
  const [hours, rest] = [Math.floor(Math.abs(minutes) / 60), Math.abs(minutes) % 60];
  if (minutes === 0) return "universal time";
  const words = [
    ...(hours > 0 ? [`${hours} ${hours === 1 ? "hour" : "hours"}`] : []),
    ...(rest > 0 ? [`${rest} minutes`] : []),
  ];
  return `${words.join(" ")} ${minutes < 0 ? "behind" : "ahead of"} universal time`;
}

/**
 * The zone of a clock that always shows the same offset, as --zone takes it.
 *
 * @example offsetName(60) // => "Etc/GMT-1"
 * @example offsetName(-210) // => "-03:30"
 */
export function offsetName(minutes: number): string {
  if (minutes === 0) return "UTC";
  const hours = Math.floor(Math.abs(minutes) / 60);
  // In these names the sign is turned round: plus is behind universal time.
  if (minutes % 60 === 0) return `Etc/GMT${minutes < 0 ? "+" : "-"}${hours}`;
  const two = (value: number): string => String(value).padStart(2, "0");
  return `${minutes < 0 ? "-" : "+"}${two(hours)}:${two(Math.abs(minutes) % 60)}`;
}

const zoneHint = (minutes: number): string =>
  minutes % 60 === 0
    ? `like --zone ${offsetName(minutes)}`
    : `${offsetWords(minutes)} all year: --zone=${offsetName(minutes)}`;

/** How to import the log of a clock that keeps standard time all year, or daylight time: a zone, or, where none is named so, its offset in words. */
export const steadyHint = (zone: string, year: number): string => zoneHint(standardOffset(zone, year));
export const summerHint = (zone: string, year: number): string => zoneHint(summerOffset(zone, year));

/** @example steadyExample("America/New_York", 2026) // => "Etc/GMT+5 is 5 hours behind universal time, all year." */
export function steadyExample(zone: string, year: number): string {
  const minutes = standardOffset(zone, year);
  return minutes === 0
    ? "UTC is universal time, all year."
    : `${offsetName(minutes)} is ${offsetWords(minutes)}, all year.`;
}
