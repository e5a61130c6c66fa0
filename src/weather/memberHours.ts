import { CURVES, type Place } from "../farm/index.ts";
import { DIURNALS, type Turning } from "./diurnal.ts";
import { turnings } from "./turnings.ts";
import type { Weather } from "./weather.ts";

/**
 * Hours of the same diurnal curve as the weather's, for departures of lows and highs. The curves are sums of the two days' lows
 * and highs with weights that depend on the hour alone, so the weights are found once and serve every member.
 *
 * @param from - Day of the weather with which departures begin.
 * @param now - Hour of the weather from which on.
 * @returns Each member's hours from `now` to the end of the weather. [°C]
 */
export function hourlyDepartures(
  { first, calendar }: Pick<Weather, "first" | "calendar">,
  place: Place,
  from: number,
  now: number,
  departures: readonly { readonly low: Float64Array; readonly high: Float64Array }[],
): readonly Float64Array[] {
  const diurnal = DIURNALS[place.curve ?? CURVES[0]];
  const between = turnings(place, first, calendar);
  const length = Math.max(0, calendar.day.length - now);
  const weights = new Float64Array(4 * length);
  const ends = new Int32Array(2 * length);
  for (let i = 0; i < length; i++) {
    const { today, next, sun, nextSun } = between(now + i);
    const turning = ({ rise, length }: typeof sun, low: number, high: number): Turning => ({
      rise,
      length,
      low,
      high,
    });
    for (let w = 0; w < 4; w++) {
      const [a, b, c, d] = [w === 0 ? 1 : 0, w === 1 ? 1 : 0, w === 2 ? 1 : 0, w === 3 ? 1 : 0];
      weights[4 * i + w] = diurnal(turning(sun, a, b), turning(nextSun, c, d), now + i + 0.5);
    }
    ends[2 * i] = today - from;
    ends[2 * i + 1] = next - from;
  }
  return departures.map(({ low, high }) => {
    const hours = new Float64Array(length);
    for (let i = 0; i < length; i++) {
      const [a, b] = [ends[2 * i]!, ends[2 * i + 1]!];
      // The day before the first has been: it departs from nothing.
      const today = a < 0 ? 0 : weights[4 * i]! * low[a]! + weights[4 * i + 1]! * high[a]!;
      const next = b < 0 ? 0 : weights[4 * i + 2]! * low[b]! + weights[4 * i + 3]! * high[b]!;
      hours[i] = today + next;
    }
    return hours;
  });
}
