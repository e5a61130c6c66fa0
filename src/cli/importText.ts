import type { FarmSettings } from "../folder/index.ts";
import type { Problem } from "../problem/index.ts";
import type { Written } from "./batch.ts";
import { doubtfulLines } from "./doubtful.ts";
import type { Understanding } from "./understand.ts";
import { forecastText, understoodText } from "./understood.ts";

/** What was understood of one file, for people. */
export function understandingText(understanding: Understanding, farm: FarmSettings): string {
  const look = { zone: farm.place.zone, units: farm.units };
  if (understanding.kind === "log")
    return (
      understoodText(understanding, look, understanding.read) + doubtfulLines(understanding.doubtful, farm)
    );
  const { file, from, forecast, issuedBy } = understanding;
  return forecastText(file, from, look, forecast, issuedBy);
}

/** Hours and days as they are would be as long as the log. */
function fileJson(understanding: Understanding): object {
  if (understanding.kind === "forecast") return understanding;
  const { sensors, ...rest } = understanding;
  return {
    ...rest,
    sensors: sensors.map(({ sensor, hours, days }) => ({ sensor, hours: hours.length, days: days.length })),
  };
}

/** An import as JSON. @param written - null: it was tried only. */
export const importJson = (
  understood: readonly Understanding[],
  passedOver: readonly string[],
  written: readonly Written[] | null,
  problems: readonly Problem[],
): string =>
  `${JSON.stringify(
    {
      format: "leafpace import",
      version: 2,
      files: understood.map(fileJson),
      passedOver,
      written,
      problems,
    },
    null,
    2,
  )}\n`;
