import { shownLength, type Units } from "../folder/index.ts";
import { type Celsius, type Metre, toFahrenheit, toFeet } from "../quantity/index.ts";
import { type FirstFarm, NOTHING } from "./firstFarm.ts";
import { NOWHERE, type Part, type Whereabouts } from "./whereabouts.ts";

/** One file of a new farm folder. */
export interface TemplateFile {
  readonly name: string;
  readonly text: string;
}

interface Words {
  readonly units: string;
  readonly elevation: string;
  readonly usual: readonly [string, string];
  readonly tunnel: string;
  readonly price: string;
  readonly short: string;
  readonly order: string;
  readonly stall: string;
  readonly cutting: string;
  readonly handling: readonly [string, string];
  readonly wind: string;
  readonly leaf: string;
  readonly base: string;
  readonly length: string;
  readonly bed: readonly [string, string];
  readonly piece: string;
  readonly leaves: string;
  readonly cut: string;
}

const WORDS: Readonly<Record<Units, Words>> = {
  US: {
    units: "US",
    elevation: "620 ft",
    usual: ["38 F", "60 F"],
    tunnel: "50 ft",
    price: "12 per lb",
    short: "4 per lb",
    order: "30 lb",
    stall: "40 lb",
    cutting: "0.6 min/ft",
    handling: ["80 lb", "100 lb"],
    wind: "15 mph",
    leaf: "3 in",
    base: "38 F",
    length: "ft",
    bed: ["0", "25"],
    piece: "60",
    leaves: "3.2 in 3.4 in 3.0 in",
    cut: "12 lb",
  },
  metric: {
    units: "metric",
    elevation: "190 m",
    usual: ["3 C", "16 C"],
    tunnel: "15 m",
    price: "26 per kg",
    short: "9 per kg",
    order: "14 kg",
    stall: "18 kg",
    cutting: "2 min/m",
    handling: ["36 kg", "45 kg"],
    wind: "7 m/s",
    leaf: "8 cm",
    base: "3 C",
    length: "m",
    bed: ["0", "7.5"],
    piece: "18",
    leaves: "8 cm 8.5 cm 7.5 cm",
    cut: "5 kg",
  },
};

/** To a tenth, without trailing zeros. */
const tenth = (value: number): string => String(Math.round(value * 10) / 10);

/** A length in the unit of the tables' headers. */
const measured = (length: Metre, units: Units): string =>
  String(Math.round((units === "US" ? toFeet(length) : length) * 100) / 100);

/** A line of the place: live when it is known, else an example behind a #. */
const placeLine = (name: string, part: Part | null, example: string, remark: string): string =>
  `${`${part === null ? "# " : ""}  ${name}: ${part?.text ?? example}`.padEnd(27)} # ${remark}`;

const degrees = (units: Units, value: Celsius): string =>
  units === "US" ? `${tenth(toFahrenheit(value))} F` : `${tenth(value)} C`;

const usualText = (words: Words, units: Units, { usual }: FirstFarm): string =>
  usual.length === 0
    ? `# usual weather: { Apr: { low: ${words.usual[0]}, high: ${words.usual[1]} } }`
    : [
        "usual weather:",
        ...usual.map(
          ({ month, low, high }) =>
            `  ${month}: { low: ${degrees(units, low)}, high: ${degrees(units, high)} }`,
        ),
      ].join("\n");

/** One tunnel for each bed, or one to begin with. */
const tunnelsText = (words: Words, units: Units, { beds }: FirstFarm): string =>
  (beds.length === 0 ? [words.tunnel] : beds.map(({ length }) => shownLength(length, units)))
    .map(
      (length, i) => `  - { id: T${i + 1}, name: Tunnel ${i + 1}, length: ${length}, hoops: wire, beds: 1 }`,
    )
    .join("\n");

/** The days said, or one to begin with. */
const marketDays = ({ markets }: FirstFarm): readonly string[] =>
  markets.length === 0 ? ["Saturday"] : markets;

const marketsText = (first: FirstFarm): string =>
  marketDays(first)
    .map(
      (day) => `  - id: ${day.toLowerCase()}
    name: ${day} market
    day: ${day}
    picks:
      - { days before: 1, time: "6:00" }`,
    )
    .join("\n");

const farm = (
  words: Words,
  units: Units,
  { latitude, longitude, elevation, zone }: Whereabouts,
  first: FirstFarm,
): string => `# Your farm. Change what stands here; take the # away in front of a line to use it.
# A number carries its unit: 50 ft, 15 m, 85 F, 29 C, 60 %.

name: My farm
units: ${words.units}${" ".repeat(Math.max(1, 20 - words.units.length))}# US or metric: how results are shown
# currency: $               # without it every ${words.units === "US" ? "pound" : "kilogram"} counts alike
# contact: you@your.farm    # told to a weather service, and only when you fetch its forecast

place:
${placeLine("latitude", latitude, "44.12", "north positive")}
${placeLine("longitude", longitude, "-72.84", "east positive: America is negative")}
${placeLine("elevation", elevation, words.elevation, elevation?.standsIn ? "the sea, until you write your height above it" : "above the sea")}
${placeLine("zone", zone, "America/New_York", zone?.standsIn ? "this machine's; continent/city of your clock" : "continent/city of your clock")}
  setting: inland           # inland, or coast near a large water

# Usual low and high of a month, as an almanac has them. They stand in where there is no temperature log,
# and beyond the forecast.
${usualText(words, units, first)}

# When you go along the beds anyway.
walks: { morning: "7:00", evening: "18:00" }

# Where you sell, and when you cut for it. Several picks may serve one market.
markets:
${marketsText(first)}

# Hoops whose beds share one cover. hoops: wire, conduit, pvc, or none. A long tunnel you cover in parts
# has sections: 2, or their lengths in brackets; its parts are called T1-1 and T1-2.
tunnels:
${tunnelsText(words, units, first)}
# Tunnels so close that one wide piece of cloth may lie over neighbours.
# side by side: [ [T1, T2] ]

# What you sell. The shares of a mix come to 100 %; swaps may stand in for a crop. stall: what sells at the full
# price on one selling day, orders apart. short: what it costs when an order is not filled, beside the sale.
# products:
#   - id: salad-mix
#     name: Salad mix
#     parts: { lettuce-mix: 50 %, arugula: { share: 25 %, swaps: [mustard] }, mizuna: 25 % }
#     price: ${words.price}
#     stall: ${words.stall}
#     orders: [ { market: ${marketDays(first)[0]!.toLowerCase()}, weight: ${words.order}, short: ${words.short} } ]

# Shares of the price. other market: sold elsewhere than meant. left of a mix: sold alone. braising: grown too large.
# selling: { other market: 60 %, beyond the stall: 50 %, left of a mix: 50 %, short order: 50 %, braising: 50 %,
#   just below size: 30 %, lost a day kept cold: 5 %,
#   lost when cut wet: 5 % }

# pace 1.5: covers take you half as long again. Minutes are those of all hands together.
# labour: { wage: 18, pace: 1, cutting: ${words.cutting}, minutes per walk: 40, minutes per pick: 120 }
# What can be washed of one pick, and kept cold in one night.
# handling: { washing: ${words.handling[0]}, cooler: ${words.handling[1]} }
# layers: row covers or films that may lie over each other.
# limits: { changes per week: 3, layers: 2, wind: ${words.wind}, dim days: 2, caution: 3 }

# Where each temperature sensor hangs: outside, or a tunnel.
sensors: { outside: outside }
# keep flagged: [outside]           # its hours that look like a fault count all the same

# Your own values for a crop or a cover.
# crops: { lettuce-mix: { smallest: ${words.leaf}, growth.base: ${words.base} } }
# covers: { row-cover-19: { light: 0.83 } }
`;

const successions = (
  { length, bed }: Words,
  units: Units,
  { beds }: FirstFarm,
): string => `# One line for each sowing. net: yes when it must stay under insect net.
# For example, without the #:
# S01,lettuce-mix,T1,${bed[0]},${bed[1]},2026-04-01,saturday,0,no
id,crop,tunnel,from (${length}),to (${length}),sown,market,cuts,net
${beds.map((each, i) => `S${String(i + 1).padStart(2, "0")},${each.crop},T${i + 1},0,${measured(each.length, units)},${each.sown},,0,no\n`).join("")}`;

const pieces = (
  { length, piece }: Words,
  units: Units,
  { cloths }: FirstFarm,
): string => `# The cloth you own. lies on: the tunnels it is on now, with a blank between.
# For example, without the #:
# C1,row-cover-19,${piece},2,T1
# A column "spans" may say over how many tunnels side by side one piece is wide enough to lie.
id,cover,length (${length}),count,lies on
${cloths.map((each, i) => `C${i + 1},${each.cover},${measured(each.length, units)},1,\n`).join("")}`;

const notes = ({ leaves, cut }: Words): string => `# What you saw or did. For example, without the #:
# 2026-04-18 07:10,leaf,S01,${leaves},longest leaf of plants along the bed
# 2026-04-12 18:00,cover,T1,row-cover-19 on,     (on vented nights off)
# 2026-04-09,emerged,S01,,
# 2026-04-24 06:00,cut,S01,${cut},               (${cut} last: the bed is done)
# 2026-04-20,loss,S01,30 %,flea beetles
# 2026-04-20,not ready,S01,,                      (still below salad size)
# 2026-04-18,strip,S01,${leaves},a stretch left bare beside its cover
when,kind,about,value,remark
`;

/** The files of a new farm folder. What is not said of the place is left for the grower to fill in. */
export function template(
  units: Units,
  where: Whereabouts = NOWHERE,
  first: FirstFarm = NOTHING,
): readonly TemplateFile[] {
  const words = WORDS[units];
  return [
    { name: "farm.yaml", text: farm(words, units, where, first) },
    { name: "successions.csv", text: successions(words, units, first) },
    { name: "pieces.csv", text: pieces(words, units, first) },
    { name: "notes.csv", text: notes(words) },
  ];
}
