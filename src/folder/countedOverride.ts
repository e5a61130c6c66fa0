import type { Counted, Crop } from "../farm/index.ts";
import type { Setting } from "./settingReader.ts";

/** Ways of counting for which every cut-off has a meaning. */
const CURVES = /^(single|double) /u;

/** The leaf's curve ends at twice the largest salad size. [1] */
const END = 2;

/** What a grower left out of a requirement counted in another way, and what of it cannot be. */
function completed(group: Setting, crop: Crop, given: readonly string[]): Counted | null {
  const said: Partial<Counted> = crop.counted ?? {};
  const { sum, method, base, from = "sowing", to = crop.smallest } = said;
  const written = given.includes("counted.cutOff") ? said.cutOff : undefined;
  const upper = written === "none" ? null : (said.upper ?? null);
  const cutOff = written ?? (upper === null ? "none" : "horizontal");
  if (sum === undefined || method === undefined || base === undefined)
    return group.fault(
      "counted-incomplete",
      "counted.sum, counted.method and counted.base",
      "A requirement counted in another way needs its sum, how it was counted, and above which temperature.",
    );
  if (upper === null ? cutOff !== "none" : !(upper > base))
    return group.fault(
      "counted-thresholds",
      "a counted.upper above counted.base",
      "An upper threshold belongs to every cut-off but none.",
    );
  const most = method === "four cases" ? ["none"] : ["none", "horizontal"];
  if (!CURVES.test(method) && !most.includes(cutOff))
    return group.fault(
      "counted-cut-off",
      `the cut-off ${most.join(" or ")} with ${method}`,
      "Only triangles and sines go with every cut-off.",
    );
  if (!(to > 1.5 && to < END * crop.largest))
    return group.fault(
      "counted-to",
      "a leaf above 1.5 cm (0.6 in) and below twice the largest salad size",
      "Write the leaf length it was counted to.",
    );
  return { sum, method, base, upper, cutOff, from, to, at: "here" };
}

/**
 * How a crop's requirement was counted, after what a farm says: a sum with its own way of counting is to be brought to the
 * model's clock on the farm's weather; a plain `requirement` is of that clock already.
 */
export function countedOverride(group: Setting, crop: Crop): Crop {
  const given = group.settings(null)?.names ?? [];
  const { counted: before, ...rest } = crop;
  const counted = given.some((name) => name.startsWith("counted."));
  const plain = given.includes("requirement");
  if (counted && plain)
    group.fault(
      "requirement-twice",
      "either requirement or counted.sum",
      "Take out the one that is not yours.",
    );
  if (!counted && !plain && given.includes("growth.form"))
    group.fault(
      "form-without-requirement",
      "a requirement beside growth.form",
      "A requirement belongs to the form it was found with: add requirement, or counted.sum, counted.method and counted.base.",
    );
  if (!counted) return plain || before === undefined ? rest : crop;
  const whole = completed(group, crop, given);
  return whole === null ? rest : { ...rest, counted: whole };
}
