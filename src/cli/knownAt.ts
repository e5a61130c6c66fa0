import type { Farm } from "../farm/index.ts";
import { oldSowings, strangers } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import type { Instant } from "../quantity/index.ts";
import { type Forecast, type SensorRecords, unlikelyForecast } from "../weather/index.ts";
import { readNewestForecast, readSensors } from "./store.ts";

/** What is kept beside a farm's own files, as far as it was known at a moment. */
export interface KnownAt {
  readonly sensors: readonly SensorRecords[];
  readonly forecast: Forecast | null;
  /** What is wrong with it, and what of it and of the farm looks like a slip. */
  readonly problems: readonly Problem[];
}

/** What the sensors outside measured. */
export const outsideOf = (
  sensors: readonly SensorRecords[],
  farm: Pick<Farm, "sensors">,
): SensorRecords["hours"] =>
  sensors.filter(({ sensor }) => farm.sensors.get(sensor) === "outside").flatMap(({ hours }) => hours);

/** @param farm - null: it cannot be read. */
export async function knownAt(dir: string, farm: Farm | null, on: Instant): Promise<KnownAt> {
  const [stored, foretold] = await Promise.all([readSensors(dir, on), readNewestForecast(dir, on)]);
  const { sensors } = stored;
  const { forecast } = foretold;
  const problems = [...stored.problems];
  if (farm !== null)
    problems.push(
      ...strangers(
        sensors.map(({ sensor }) => sensor),
        farm,
      ),
      ...oldSowings(farm, on),
    );
  problems.push(...foretold.problems);
  if (farm !== null && forecast !== null)
    problems.push(
      ...unlikelyForecast("forecasts", forecast, {
        usual: farm.usual,
        outside: outsideOf(sensors, farm),
        units: farm.units,
      }),
    );
  return { sensors, forecast, problems };
}
