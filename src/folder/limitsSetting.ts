import type { Limits, Settings } from "../farm/index.ts";
import { metrePerSecond } from "../quantity/index.ts";
import type { Setting } from "./settingReader.ts";

/** What weighs and bounds the plan. */
export function limitsSetting(setting: Setting | null, settings: Settings): Limits {
  const group = setting?.settings(["changes per week", "layers", "wind", "dim days", "caution"]) ?? null;
  return {
    changesPerWeek:
      group?.get("changes per week")?.number("a number of changes", 0, 14, "whole") ??
      settings.changesPerWeek,
    layers: group?.get("layers")?.number("a number of layers", 1, 2, "whole") ?? settings.layers,
    wind: group?.get("wind")?.quantity("speed") ?? metrePerSecond(settings.windLimit),
    dimDays: group?.get("dim days")?.number("a number of days", 0, 60) ?? settings.dimDays,
    caution: group?.get("caution")?.number("a factor", 1, 100) ?? settings.caution,
  };
}
