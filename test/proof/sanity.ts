// Prints how many days every crop takes on bare ground, and under light cloth by nights, in two cities' measured weather,
// beside the days growers state, and every miss with its reason. Nothing here passes or fails.

import { mean } from "simple-statistics";
import { type Crop, catalogue } from "../../src/farm/index.ts";
import { miss, reason, seasonOf, TOLERANCE } from "./misses.ts";
import { everySowing, NIGHTS, type Sowing } from "./sowings.ts";
import { STATED, type StatedDays, TUNNEL_MIX } from "./statedDays.ts";

const { crops } = catalogue();
const NAMES = ["Seattle", "New York"] as const;

const meanDays = (sowings: readonly Sowing[]): string => {
  const known = sowings.flatMap(({ days }) => days ?? []);
  return known.length === 0 ? "-" : mean(known).toFixed(0);
};
const range = (values: readonly number[]): string => {
  const [low, high] = [Math.min(...values).toFixed(0), Math.max(...values).toFixed(0)];
  return low === high ? low : `${low}-${high}`;
};

const line = (cells: readonly string[], widths: readonly number[]): string =>
  cells.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join(" ");

function missesOf(crop: Crop, sowings: readonly Sowing[], stated: StatedDays): readonly string[] {
  const groups = new Map<string, Sowing[]>();
  for (const each of sowings) {
    const kind = miss(each, stated);
    if (kind === null) continue;
    const key = [each.city, each.sown.slice(5), kind, reason(each, kind, stated)].join("|");
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  const inOrder = [...groups].sort(([a], [b]) => (a < b ? -1 : 1));
  return inOrder.map(([key, group]) => {
    const [city, sown, kind, why] = key.split("|") as [string, string, string, string];
    const days = group.flatMap(({ days }) => days ?? []);
    const years = group.map(({ sown: date }) => date.slice(2, 4)).join(" ");
    const took = days.length === 0 ? "never" : `${range(days)} d`;
    const at = `${range(group.map((each) => each.mean))} °C`;
    return `  ${crop.id.padEnd(16)} ${city.padEnd(8)} ${sown}  ${years.padEnd(11)} ${took.padEnd(9)} ${at.padEnd(9)} ${kind.padEnd(5)} ${why}`;
  });
}

const all = [...crops.values()].map((crop) => ({
  crop,
  sowings: everySowing(crop, []),
  covered: everySowing(crop, NIGHTS),
  stated: STATED.get(crop.id) ?? null,
}));

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
    const here = sowings.filter((each) => each.city === city);
    const seasons = ["spring", "summer", "autumn"].map((season) =>
      meanDays(here.filter((each) => seasonOf(each) === season)),
    );
    return [meanDays(here), ...seasons];
  };
  const known = sowings.flatMap(({ days }) => days ?? []);
  const warm = sowings.filter(({ warmBed }) => warmBed).length;
  const frosted = sowings.filter(({ frosted }) => frosted).length;
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
  "Days won by 19 g row cover on every night and off every day, and how many sowings frost then leaves unfit",
);
write("");
const WON = [16, 8, 8, 8, 8, 8, 8, 8];
write(
  line(
    ["", "Seattle", "spring", "summer", "autumn", "N. York", "spring", "summer", "autumn", "frost"],
    [...WON, 8, 8],
  ),
);
for (const { crop, sowings, covered } of all) {
  const won = (city: string, season: string | null): string => {
    const pairs = sowings.flatMap((open, i) => {
      const under = covered[i]!;
      const here = open.city === city && (season === null || seasonOf(open) === season);
      return here && open.days !== null && under.days !== null ? [open.days - under.days] : [];
    });
    return pairs.length === 0 ? "-" : mean(pairs).toFixed(1);
  };
  write(
    line(
      [
        crop.id,
        ...NAMES.flatMap((city) => [null, "spring", "summer", "autumn"].map((season) => won(city, season))),
        `${covered.filter(({ frosted }) => frosted).length}`,
      ],
      [...WON, 8, 8],
    ),
  );
}

write("");
write(
  `Beside the days growers state (met when within ${TOLERANCE} days; stated without a season or a temperature)`,
);
write("");
/** How many sowings meet what is stated. */
function met(sowings: readonly Sowing[], stated: StatedDays): string {
  const kinds = sowings.map((each) => miss(each, stated));
  const count = (of: ReturnType<typeof miss>): number => kinds.filter((kind) => kind === of).length;
  return `${count(null)} of ${sowings.length}, ${count("late")} late, ${count("early")} early`;
}
for (const { crop, sowings, covered, stated } of all) {
  if (stated === null) {
    write(`${crop.id.padEnd(17)}nothing stated for it as a baby leaf`);
    continue;
  }
  const span = stated.from === 0 ? `under ${stated.to}` : `${stated.from}-${stated.to}`;
  write(
    `${crop.id.padEnd(17)}stated ${span.padEnd(9)} met by ${met(sowings, stated)}; with cloth by nights ${met(covered, stated)} (${stated.differs})`,
  );
}
const MIX = ["lettuce-mix", "arugula", "mustard", "mizuna", "tatsoi", "kale"];
for (const city of NAMES) {
  const sowings = all
    .filter(({ crop }) => MIX.includes(crop.id))
    .flatMap((each) => each.sowings.filter((each) => each.city === city && each.sown.endsWith("-09-15")));
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
  for (const each of sowings) {
    const kind = miss(each, stated);
    if (kind === null) continue;
    const why = `${kind}: ${reason(each, kind, stated)}`;
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
