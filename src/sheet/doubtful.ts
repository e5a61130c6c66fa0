import type { Farm } from "../farm/index.ts";
import { list } from "../problem/index.ts";
import { celsius } from "../quantity/index.ts";
import type { Doubtful } from "../weather/index.ts";
import { clean } from "./clean.ts";
import { capital, dayOf, temperature } from "./words.ts";
import { TIED } from "./wrap.ts";

type DoubtfulFarm = Pick<Farm, "units" | "place" | "keepFlagged">;

/** What some hours of one sensor look like; `at`: the temperatures they hold. */
const LOOK: Readonly<Record<Doubtful["flag"], (one: boolean, at: string) => string>> = {
  range: (one, at) => `${one ? "is" : "are"} ${at}, which no air on a farm is,`,
  inconsistent: (one) => `${one ? "has" : "have"} a mean outside ${one ? "its" : "their"} own low and high`,
  spike: (one) => `${one ? "jumps" : "jump"} up or down and back`,
  stuck: (one, at) => `${one ? "looks" : "look"} stuck at ${at}`,
  sun: (one) => `${one ? "looks" : "look"} as if the sun shone on the sensor`,
};

function span(farm: DoubtfulFarm, all: readonly Doubtful[]): string {
  const [first, last] = [all[0]!, all.at(-1)!].map(({ from }) => dayOf(farm, from)) as [string, string];
  return first === last ? `of ${first}` : `from ${first} to ${last}`;
}

function sentence(farm: DoubtfulFarm, all: readonly Doubtful[]): string {
  const { sensor, flag } = all[0]!;
  const hours = all.reduce((sum, each) => sum + each.hours, 0);
  const used = all.reduce((sum, each) => sum + each.used, 0);
  const [low, high] = [
    Math.min(...all.map((each) => each.low)),
    Math.max(...all.map((each) => each.high)),
  ].map((value) => temperature(farm.units, celsius(value)));
  const one = hours === 1;
  const fate =
    used === 0
      ? `${one ? "is" : "are"} left out`
      : farm.keepFlagged.has(sensor)
        ? `${one ? "counts" : "count"} all the same, as farm.yaml says`
        : used === hours
          ? `${one ? "counts" : "count"} all the same, since nothing better is known: hang it in the shade`
          : `${one ? "counts" : "count"} only where nothing better is known: hang it in the shade`;
  const look = LOOK[flag](one, low === high ? low! : `${low} to ${high}`);
  return `${capital(clean(sensor))}: ${hours} ${one ? "hour" : "hours"} ${span(farm, all)} ${look} and ${fate}.`;
}

/** Doubtful hours in whole sentences, one for each sensor and reason, and how to keep what is left out. */
export function doubtfulText(farm: DoubtfulFarm, doubtful: readonly Doubtful[]): readonly string[] {
  const groups = new Map<string, Doubtful[]>();
  for (const each of doubtful) {
    const key = `${each.sensor} ${each.flag}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  const left = [...new Set(doubtful.filter(({ used }) => used === 0).map(({ sensor }) => sensor))];
  const keep = [...new Set([...farm.keepFlagged, ...left])].map(clean).join(", ");
  return [
    ...[...groups.values()].map((group) => sentence(farm, group)),
    ...(left.length === 0
      ? []
      : [
          `Where ${list(left.map(clean))} ${left.length === 1 ? "is" : "are"} right after all, write into farm.yaml: ${`keep flagged: [${keep}]`.replaceAll(" ", TIED)}`,
        ]),
  ];
}
