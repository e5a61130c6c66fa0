import type { Sowing } from "./sowings.ts";
import type { StatedDays } from "./statedDays.ts";

/** Stated days are met when no more than this far off. [d] */
export const TOLERANCE = 3;
/** Temperature the requirements were set at, and how far from it weather explains a miss. [°C] */
const REFERENCE = 15.5;
const AWAY = 1.5;

export const seasonOf = ({ sown }: Sowing): "spring" | "summer" | "autumn" => {
  const month = Number(sown.slice(5, 7));
  return month <= 5 ? "spring" : month <= 8 ? "summer" : "autumn";
};

/** Neither so cold nor so warm that weather alone would explain a miss. */
export const isNear = (sowing: Sowing): boolean => Math.abs(sowing.mean - REFERENCE) <= AWAY;

/** How a sowing misses what is stated; null when it does not. */
export function miss({ days }: Sowing, { from, to }: StatedDays): "early" | "late" | null {
  if (days === null || days > to + TOLERANCE) return "late";
  return days < from - TOLERANCE ? "early" : null;
}

/** Why, as far as the weather tells. */
export function reason(sowing: Sowing, kind: "early" | "late", { otherwise }: StatedDays): string {
  const reasons: string[] = [];
  if (kind === "early") {
    if (sowing.mean > REFERENCE + AWAY) reasons.push("warmer than what the requirement was set at");
  } else {
    if (sowing.days === null) reasons.push("ran out of season");
    if (sowing.mean < REFERENCE - AWAY) {
      reasons.push(
        { spring: "cold spring", summer: "cool summer or autumn", autumn: "cold autumn" }[seasonOf(sowing)],
      );
    }
    if (sowing.hot > 0.15) reasons.push("too hot to grow at its best");
    if (sowing.light < 0.8) reasons.push("dim");
  }
  return reasons.length === 0 ? otherwise : reasons.join(", ");
}
