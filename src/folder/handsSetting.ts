import type { Farm, Handling, Labour, Settings } from "../farm/index.ts";
import type { Setting } from "./settingReader.ts";

/** When the grower goes along the beds anyway. */
export function walksSetting(setting: Setting | null, settings: Settings): Farm["walks"] | null {
  const group = setting?.settings(["morning", "evening"]) ?? null;
  if (group === null) return { morning: settings.morningWalk, evening: settings.eveningWalk };
  const morning = group.get("morning") === null ? settings.morningWalk : group.get("morning")!.clock();
  const evening = group.get("evening") === null ? settings.eveningWalk : group.get("evening")!.clock();
  if (morning === null || evening === null) return null;
  if (morning < evening) return { morning, evening };
  return setting!.fault(
    "walks-out-of-order",
    "a morning walk before the evening walk",
    "Swap the two times.",
  );
}

/** A day's. [min] */
const LONGEST = 1440;

/** What an hour costs, how fast hands are, and how much time there is. */
export function labourSetting(setting: Setting | null, settings: Settings): Labour {
  const group =
    setting?.settings([
      "wage",
      "pace",
      "cutting",
      "minutes per walk",
      "minutes per pick",
      "price of a changed instruction",
    ]) ?? null;
  const minutes = (name: string): number | null =>
    group?.get(name)?.number("minutes of all hands together", 0, LONGEST) ?? null;
  const changed =
    group?.get("price of a changed instruction")?.number("an amount in the farm's currency", 0, 10_000) ??
    null;
  return {
    wage: group?.get("wage")?.number("an hour's wage in the farm's currency", 0, 10_000) ?? settings.wage,
    pace: group?.get("pace")?.number("a factor on the minutes", 0.1, 10) ?? 1,
    cutting: group?.get("cutting")?.amount("effort") ?? settings.cutting,
    walk: minutes("minutes per walk"),
    picking: minutes("minutes per pick"),
    ...(changed === null ? {} : { changedInstruction: changed }),
  };
}

/** What can be washed and kept cold. */
export function handlingSetting(setting: Setting | null): Handling {
  const group = setting?.settings(["washing", "cooler"]) ?? null;
  const washing = group?.get("washing")?.amount("mass") ?? null;
  if (washing === 0)
    group!
      .get("washing")!
      .fault("washing-none", "a weight above zero", "Leave it out where all that is cut can be washed.");
  return {
    washing,
    cooler: group?.get("cooler")?.amount("mass") ?? null,
  };
}
