// Prints how many days every crop takes on bare ground in two cities' measured weather, beside the days growers state,
// and every miss with its reason. Nothing here passes or fails.

import { type Crop, catalogue } from "../../src/farm/index.ts";
import { type BareCity, bareCity, bareSowing, type Sowing, sowingDates, sumsIn } from "./bareSowing.ts";
import { STATED, type StatedDays, TUNNEL_MIX } from "./statedDays.ts";

/** Stated days are met when no more than this far off. [d] */
const TOLERANCE = 3;
/** Temperature the requirements were set at, and how far from it weather explains a miss. [°C] */
const REFERENCE = 15.5;
const AWAY = 1.5;
const YEARS = [2012, 2013, 2014, 2015];

const { crops, settings } = catalogue();
const cities: readonly BareCity[] = [bareCity("Seattle", settings), bareCity("New York", settings)];

const monthOf = ({ sown }: Sowing): number => Number(sown.slice(5, 7));
const seasonOf = (sowing: Sowing): "spring" | "summer" | "autumn" =>
  monthOf(sowing) <= 5 ? "spring" : monthOf(sowing) <= 8 ? "summer" : "autumn";

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const meanDays = (sowings: readonly Sowing[]): string => {
  const known = sowings.flatMap(({ days }) => days ?? []);
  return known.length === 0 ? "-" : mean(known).toFixed(0);
};
const range = (values: readonly number[]): string => {
  const [low, high] = [Math.min(...values).toFixed(0), Math.max(...values).toFixed(0)];
  return low === high ? low : `${low}-${high}`;
};

/** How a sowing misses what is stated; null when it does not. */
function miss({ days }: Sowing, { from, to }: StatedDays): "early" | "late" | null {
  if (days === null || days > to + TOLERANCE) return "late";
  return days < from - TOLERANCE ? "early" : null;
}

/** Why, as far as the weather tells. */
function reason(sowing: Sowing, kind: "early" | "late", { otherwise }: StatedDays): string {
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

const line = (cells: readonly string[], widths: readonly number[]): string =>
  cells.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join(" ");

function missesOf(crop: Crop, sowings: readonly Sowing[], stated: StatedDays): readonly string[] {
  const groups = new Map<string, Sowing[]>();
  for (const sowing of sowings) {
    const kind = miss(sowing, stated);
    if (kind === null) continue;
    const key = [sowing.city, sowing.sown.slice(5), kind, reason(sowing, kind, stated)].join("|");
    groups.set(key, [...(groups.get(key) ?? []), sowing]);
  }
  const inOrder = [...groups].sort(([a], [b]) => (a < b ? -1 : 1));
  return inOrder.map(([key, group]) => {
    const [city, sown, kind, why] = key.split("|") as [string, string, string, string];
    const days = group.flatMap(({ days }) => days ?? []);
    const years = group.map((sowing) => sowing.sown.slice(2, 4)).join(" ");
    const took = days.length === 0 ? "never" : `${range(days)} d`;
    const at = `${range(group.map((sowing) => sowing.mean))} °C`;
    return `  ${crop.id.padEnd(16)} ${city.padEnd(8)} ${sown}  ${years.padEnd(11)} ${took.padEnd(9)} ${at.padEnd(9)} ${kind.padEnd(5)} ${why}`;
  });
}

const all = [...crops.values()].map((crop) => {
  const sowings = cities.flatMap((city) => {
    const sums = sumsIn(city, crop);
    return YEARS.flatMap(sowingDates).map((sown) => bareSowing(city, crop, sums, sown));
  });
  return { crop, sowings, stated: STATED.get(crop.id) ?? null };
});

const write = (text: string): void => void process.stdout.write(`${text}\n`);

write(
  "Days from sowing to the smallest salad size, on bare ground, sown on the 1st and 15th of March to September",
);
write(
  "2012 to 2015. Spring: sown March to May; summer: June to August; autumn: September. Nothing ends a sowing early: the",
);
write(
  "last columns count those with a seedbed too warm for a day or more before emergence (part of the stand lost), those",
);
write("frost would have left unfit to sell, and those not ready by 31 December.");
write("");
const widths = [16, 3, 5, 6, 8, 7, 7, 7, 8, 7, 7, 7, 9, 6, 6];
write(
  line(
    [
      "",
      "cm",
      "days",
      "range",
      "Seattle",
      "spring",
      "summer",
      "autumn",
      "N. York",
      "spring",
      "summer",
      "autumn",
      "warm bed",
      "frost",
      "never",
    ],
    widths,
  ),
);
for (const { crop, sowings } of all) {
  const of = (city: string): readonly string[] => {
    const here = sowings.filter((sowing) => sowing.city === city);
    const seasons = ["spring", "summer", "autumn"].map((season) =>
      meanDays(here.filter((sowing) => seasonOf(sowing) === season)),
    );
    return [meanDays(here), ...seasons];
  };
  const known = sowings.flatMap(({ days }) => days ?? []);
  const warm = sowings.filter((sowing) => sowing.warmBed).length;
  const frosted = sowings.filter((sowing) => sowing.frosted).length;
  const never = sowings.filter(({ days }) => days === null).length;
  write(
    line(
      [
        crop.id,
        `${crop.smallest}`,
        meanDays(sowings),
        range(known),
        ...of("Seattle"),
        ...of("New York"),
        `${warm}`,
        `${frosted}`,
        `${never}`,
      ],
      widths,
    ),
  );
}

write("");
write(
  `Beside the days growers state (met when within ${TOLERANCE} days; stated without a season or a temperature)`,
);
write("");
for (const { crop, sowings, stated } of all) {
  if (stated === null) {
    write(`${crop.id.padEnd(17)}nothing stated for it as a baby leaf`);
    continue;
  }
  const kinds = sowings.map((sowing) => miss(sowing, stated));
  const met = kinds.filter((kind) => kind === null).length;
  const late = kinds.filter((kind) => kind === "late").length;
  const span = stated.from === 0 ? `under ${stated.to}` : `${stated.from}-${stated.to}`;
  write(
    `${crop.id.padEnd(17)}stated ${span.padEnd(9)} met by ${met} of ${sowings.length}, ${late} late, ${kinds.length - met - late} early (${stated.differs})`,
  );
}
const MIX = ["lettuce-mix", "arugula", "mustard", "mizuna", "tatsoi", "kale"];
for (const { city } of cities) {
  const sowings = all
    .filter(({ crop }) => MIX.includes(crop.id))
    .flatMap((each) =>
      each.sowings.filter((sowing) => sowing.city === city && sowing.sown.endsWith("-09-15")),
    );
  const never = sowings.filter(({ days }) => days === null).length;
  write(
    `A mix in a high tunnel sown mid-September is stated at ${TUNNEL_MIX.from}-${TUNNEL_MIX.to}; bare in ${city}, six crops sown on the 15th: mean ${meanDays(sowings)}, ${never} of ${sowings.length} never.`,
  );
}

write("");
write("Every miss: crop, city, sown, years, days, mean air temperature from sowing to then, and why");
write("");
const reasons = new Map<string, number>();
for (const { crop, sowings, stated } of all) {
  if (stated === null) continue;
  for (const sowing of sowings) {
    const kind = miss(sowing, stated);
    if (kind === null) continue;
    const why = `${kind}: ${reason(sowing, kind, stated)}`;
    reasons.set(why, (reasons.get(why) ?? 0) + 1);
  }
  const lines = missesOf(crop, sowings, stated);
  if (lines.length === 0) continue;
  write(`${crop.id}: stated ${stated.differs}`);
  for (const each of lines) write(each);
}
write("");
write("Misses by reason");
for (const [why, count] of [...reasons].sort((a, b) => b[1] - a[1]))
  write(`${String(count).padStart(5)}  ${why}`);
