import type { Usual } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { MONTHS, nameAt } from "./calendarNames.ts";
import { unknownName } from "./faults.ts";
import type { Setting } from "./settingReader.ts";

/** Reads the usual low and high of months by their names; those not given stay unknown. */
export function usualWeather(setting: Setting | null, problems: Problem[]): readonly Usual[] {
  const found: Usual[] = [];
  const months = setting?.settings(null) ?? null;
  for (const name of months?.names ?? []) {
    const entry = months!.get(name)!;
    const month = nameAt(name, MONTHS) + 1;
    if (month === 0) {
      problems.push(unknownName(entry.spot, name, "a month", MONTHS, "month-unknown"));
      continue;
    }
    const group = entry.settings(["low", "high"]);
    const low = group?.need("low", "a temperature like 38 F")?.quantity("temperature") ?? null;
    const highSetting = group?.need("high", "a temperature like 60 F") ?? null;
    const high = highSetting?.quantity("temperature") ?? null;
    if (low === null || high === null) continue;
    if (low > high) highSetting!.fault("low-above-high", "a high not below the low", "Swap the two.");
    else if (found.some((other) => other.month === month))
      entry.fault("month-twice", "each month once", "Take one of the two out.");
    else found.push({ month, low, high });
  }
  return found;
}
