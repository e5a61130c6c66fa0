import type { Market } from "../farm/index.ts";
import { nameAt, WEEKDAYS } from "./calendarNames.ts";
import { identity } from "./identity.ts";
import type { Setting } from "./settingReader.ts";

function picks(setting: Setting | null): Market["picks"] | null {
  const found: { daysBefore: number; hour: number }[] = [];
  if (setting === null) return null;
  const entries = setting.list();
  for (const entry of entries) {
    const group = entry.settings(["days before", "time"]);
    const before = group?.get("days before") ?? null;
    const daysBefore = before === null ? 0 : before.number("days", 0, 6, "whole");
    const hour = group?.need("time", "the time cutting begins, like 6:00")?.clock() ?? null;
    if (daysBefore !== null && hour !== null) found.push({ daysBefore, hour });
  }
  if (found.length === 0 && entries.length === 0)
    return setting.fault(
      "picks-missing",
      "at least one moment greens are cut",
      'Write picks: [ { days before: 0, time: "6:00" } ].',
    );
  return found.length === entries.length ? found : null;
}

/**
 * Where the farm sells, and when it cuts for it.
 *
 * @param taken - Receives every id, also of an entry that is not sound otherwise: names are known all the same.
 */
export function marketsSetting(setting: Setting | null, taken: Set<string>): readonly Market[] {
  return (setting?.list() ?? []).flatMap((entry) => {
    const group = entry.settings(["id", "name", "day", "picks"]);
    if (group === null) return [];
    const id = identity(group, "market", taken);
    const name = group.get("name")?.text("the market's name") ?? id;
    const daySetting = group.need("day", "a day of the week");
    const short = daySetting?.text("a day of the week") ?? "";
    const named = WEEKDAYS[nameAt(short, WEEKDAYS)];
    const day = named ?? (short === "" ? null : (daySetting?.oneOf(WEEKDAYS) ?? null));
    const moments = picks(group.need("picks", "the moments greens are cut for it"));
    if (id === null || name === null || day === null || moments === null) return [];
    return [{ id, name, weekday: WEEKDAYS.indexOf(day), picks: moments }];
  });
}
