import type { Outcome, TunnelPlan } from "../decide/index.ts";
import { list } from "../problem/index.ts";
import { type Celsius, type Centimetre, groupBy, type LocalDate, type Mol } from "../quantity/index.ts";
import type { NoCloth, Warning } from "../watch/index.ts";
import { HARDLY, LIKELY, limitsOf, onlyRegrowth, probablyHarmed } from "./frostedBeds.ts";
import { isGuess, mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { lyingOn } from "./reason.ts";
import {
  capital,
  day,
  dayOfMonth,
  leaf,
  leafSpread,
  night,
  odds,
  settingAt,
  snowDepth,
  temperature,
  wind,
} from "./words.ts";

/** Warnings of one kind on one date, told together. */
export interface Urgent {
  /** "forecast": none reaches the days planned; "guess": no log says how large beds are. */
  readonly kind: Warning["kind"] | "forecast" | "guess";
  readonly severity: Warning["severity"];
  readonly date: LocalDate;
  /** The date, or dates, in words. */
  readonly when: string;
  /** In the fewest words, for the top of a small page. */
  readonly brief: string;
  /** A whole sentence. */
  readonly heading: string;
  /** One row a tunnel, worst first; empty where a heading says all. */
  readonly columns: readonly string[];
  readonly rows: readonly UrgentRow[];
  /** Is something left to tell tunnel by tunnel? */
  readonly open: boolean;
  /** What the rows say, where there is no room for them; null when the heading is enough. */
  readonly inShort: string | null;
  /** What stays at risk, or what follows; whole sentences. */
  readonly follows: readonly string[];
}

export interface UrgentRow {
  readonly tunnel: string;
  readonly cells: readonly string[];
  /** The same as whole sentences, where there is no room for columns. */
  readonly sentence: string;
}

/** Warnings that ask for a look, not for a cover; told after the plan. */
export const LATER: readonly Urgent["kind"][] = ["seedbed", "bolting", "light"];

/** From here on a risk is told as 2 in 5 or more, and is no longer only some. [0–1] */
const CONSIDERABLE = 0.3;

type Of<Kind extends Warning["kind"]> = Warning & { readonly kind: Kind };

const lowest = (values: readonly Celsius[]): Celsius => Math.min(...values) as Celsius;
const highest = (values: readonly Celsius[]): Celsius => Math.max(...values) as Celsius;
const worst = (group: readonly Warning[]): Warning["severity"] =>
  group.some(({ severity }) => severity === "danger") ? "danger" : "care";

const planOf = (outcome: Outcome, tunnel: string): TunnelPlan | undefined =>
  outcome.tunnels.find((plan) => plan.tunnel.id === tunnel);

/** Each tunnel once, with the greatest risk of any night. */
function riskiest(
  told: readonly { readonly tunnel: string; readonly name: string; readonly risk: number }[],
) {
  const tunnels = groupBy(told, ({ tunnel }) => tunnel);
  return [...tunnels.values()].map((same) => ({
    name: same[0]!.name,
    risk: Math.max(...same.map(({ risk }) => risk)),
  }));
}

/** Tunnels with the same odds told together: "Risk is left: 2 in 5 in Creek 2 and Alder 3; 1 in 10 in Mill 1." */
function riskLeft(told: readonly { readonly name: string; readonly risk: number }[]): string {
  const alike = groupBy(told, ({ risk }) => odds(risk));
  const some = told.every(({ risk }) => risk < CONSIDERABLE) ? "Some risk" : "Risk";
  return `${some} is left: ${[...alike].map(([chance, same]) => `${chance} in ${list(same.map(({ name }) => name))}`).join("; ")}.`;
}

/** What the plan has on a tunnel through one night or by one day, in words. */
function underPlan(
  { date, tunnel }: Of<"frost"> | Of<"heat">,
  part: "morning" | "evening",
  outcome: Outcome,
  names: Names,
): string {
  const plan = planOf(outcome, tunnel);
  return settingAt(plan === undefined ? [] : lyingOn(plan, outcome, date, part), part, names.shortCover);
}

/** That no cloth is left for a tunnel in danger, and why. */
const NO_CLOTH: Readonly<Record<Exclude<NoCloth, "wind">, (where: string) => string>> = {
  none: (where) => `You own no cloth that would help ${where}.`,
  tooShort: (where) => `No cloth you own is long enough for ${where}.`,
  kept: (where) => `No cloth that would help goes on ${where}, because you keep it as it is.`,
  minutes: (where) => `No walk has the minutes to put cloth on ${where}.`,
  keptOn: (where) => `The cloth on ${where} stays on in the heat, because you keep it there.`,
  minutesOff: (where) => `No walk before it has the minutes to take the cloth off ${where}.`,
  inUse: (where) => `All cloth that would help ${where} lies on other tunnels.`,
};

/** Beds of tunnels, each list with its tunnel. */
const bedsIn = (told: readonly { readonly name: string; readonly beds: readonly string[] }[]): string =>
  told.map(({ name, beds }) => `${list(beds)} in ${name}`).join("; ");

const noCloth = (
  told: readonly { readonly noClothLeft?: NoCloth; readonly tunnel: string }[],
  names: Names,
): string[] =>
  (["keptOn", "minutesOff", "none", "tooShort", "kept", "inUse", "minutes"] as const).flatMap((why) => {
    const where = [
      ...new Set(told.filter((each) => each.noClothLeft === why).map(({ tunnel }) => names.tunnel(tunnel))),
    ];
    return where.length === 0 ? [] : [NO_CLOTH[why](list(where))];
  });

/** A frost or a heat that is over when the sheet is made: nothing is left to do but to look. */
function over(group: readonly (Of<"frost"> | Of<"heat">)[], outcome: Outcome, names: Names): Urgent {
  const { units } = outcome.farm;
  const { kind, date } = group[0]!;
  const where = list([...new Set(group.map(({ tunnel }) => names.tunnel(tunnel)))]);
  const what = kind === "frost" ? `The frost in ${night(units, date)}` : `The heat on ${day(units, date)}`;
  return plain(group[0]!, day(units, date), `${what} is over: go and look at ${where}.`);
}

/** Frost of one night, or of several nights of little risk. */
function frost(group: readonly Of<"frost">[], outcome: Outcome, names: Names): Urgent {
  const { units } = outcome.farm;
  const dates = [...new Set(group.map(({ date }) => date))].sort();
  const told = group
    .map((warning) => {
      const { date, tunnel } = warning;
      const name = names.tunnel(tunnel);
      const harmed = name + onlyRegrowth(warning);
      return {
        ...warning,
        under: underPlan(warning, "evening", outcome, names),
        name,
        harmed,
        head: dates.length === 1 ? harmed : `${harmed}, ${day(units, date)}`,
        risked: odds(warning.risk),
      };
    })
    .sort((a, b) => b.risk - a.risk);
  const probable = told.filter(({ risk }) => risk >= LIKELY);
  const possible = riskiest(
    told
      .filter(({ risk }) => risk >= HARDLY && risk < LIKELY)
      .map((each) => ({ ...each, name: each.harmed })),
  );
  const unpromised = told.filter(({ risk, promised, unfit }) => risk < HARDLY && promised < unfit);
  const windy = told.filter(({ windy }) => windy);
  const when = list(dates.map((date) => day(units, date)));
  const cold = temperature(units, lowest(group.map(({ bare }) => bare)));
  return {
    kind: "frost",
    severity: worst(group),
    date: dates[0]!,
    when,
    brief: `Frost ${list(dates.map(dayOfMonth))}, night: ${cold}`,
    heading:
      dates.length === 1
        ? `Frost in ${night(units, dates[0]!)}: down to ${cold} at the crop with nothing on.`
        : `More frost in the nights that begin on ${when}: down to ${cold} at the crop with nothing on.`,
    columns: ["Tunnel", "On it that night", "Expected", "Promised", "Unfit below", "Risk left"],
    rows: told.map(({ tunnel, beds, head, under, expected, promised, unfit, risked }) => ({
      tunnel,
      cells: [
        head,
        under,
        temperature(units, expected),
        temperature(units, promised),
        temperature(units, unfit),
        risked,
      ],
      sentence: `${head}, ${under}: ${temperature(units, expected)} expected at the crop, ${temperature(units, promised)} promised. ${limitsOf({ beds }, unfit, names, (value) => temperature(units, value))} Risk left: ${risked}.`,
    })),
    open: true,
    inShort: possible.length === 0 ? null : riskLeft(possible),
    follows: [
      ...probablyHarmed(told, names),
      ...noCloth(
        told.filter(({ risk }) => risk >= HARDLY),
        names,
      ),
      ...(unpromised.length === 0
        ? []
        : [
            `${list(riskiest(unpromised).map(({ name }) => name))} should come through, but what is on cannot promise it.`,
          ]),
      ...(probable.length + possible.length + unpromised.length === 0
        ? ["With the plan hardly any risk is left."]
        : []),
      ...(windy.length === 0
        ? []
        : [
            windy.length === told.length
              ? "That evening is too windy to put cloth on: what is to help must lie there from an earlier walk."
              : `That evening is too windy to put cloth on: what is to help ${list(windy.map(({ name }) => name))} must lie there from an earlier walk.`,
          ]),
    ],
  };
}

/** Heat of one day, or of several days: then each tunnel that stays too hot is told with its worst. */
function heat(group: readonly Of<"heat">[], outcome: Outcome, names: Names): Urgent {
  const { units } = outcome.farm;
  const dates = [...new Set(group.map(({ date }) => date))].sort();
  const told = group
    .map((warning) => {
      const { date, tunnel } = warning;
      const name = names.tunnel(tunnel);
      return {
        ...warning,
        under: underPlan(warning, "morning", outcome, names),
        name: dates.length === 1 ? name : `${name}, ${day(units, date)}`,
      };
    })
    .sort((a, b) => b.planned - b.limit - (a.planned - a.limit));
  const hot = temperature(units, highest(group.map(({ ifLeft }) => ifLeft)));
  const over = told.filter(({ planned, limit }) => planned > limit);
  const worstDays = [...groupBy(over, ({ tunnel }) => tunnel).values()].map((same) => same[0]!);
  const when = list(dates.map((date) => day(units, date)));
  return {
    kind: "heat",
    severity: worst(group),
    date: dates[0]!,
    when,
    brief: `Heat ${list(dates.map(dayOfMonth))}: ${hot} if left`,
    heading: `Heat on ${when}: up to ${hot} at the crop in calm air if what lies there now is left on.`,
    columns: ["Tunnel", "On it that day", "If left", "With plan", "Too hot above"],
    rows: (dates.length === 1 ? told : worstDays).map(
      ({ tunnel, name, under, ifLeft, planned, limit, successions }) => ({
        tunnel,
        cells: [
          name,
          under,
          temperature(units, ifLeft),
          temperature(units, planned),
          temperature(units, limit),
        ],
        sentence: `${name}, ${under}: ${temperature(units, planned)} with the plan, ${temperature(units, ifLeft)} if what lies there now is left. Above ${temperature(units, limit)} is too hot for ${list(successions.map(names.succession))}.`,
      }),
    ),
    open: over.length > 0,
    inShort: null,
    follows:
      over.length === 0
        ? ["With the plan no crop gets too hot."]
        : [
            `Still too hot with the plan: ${bedsIn(
              worstDays.map(({ tunnel, successions }) => ({
                name: names.tunnel(tunnel),
                beds: successions.map(names.succession),
              })),
            )}.`,
            ...noCloth(worstDays, names),
          ],
  };
}

const light = (value: Mol): string => String(Math.round(value));
const hours = (value: number): string => String(Math.round(value * 2) / 2);

function boltingSentence(group: readonly Of<"bolting">[], outcome: Outcome, names: Names): string {
  const { date, dayLength } = group[0]!;
  const who = list(group.map(({ succession }) => names.succession(succession)));
  return `The day is ${hours(dayLength)} hours long on ${day(outcome.farm.units, date)}: ${who} may bolt, covered or not.`;
}

/** A warning its heading says all of. */
const plain = (
  { kind, severity, date }: Pick<Urgent, "kind" | "severity" | "date">,
  when: string,
  heading: string,
  brief: string = heading,
): Urgent => ({
  kind,
  severity,
  date,
  when,
  brief,
  heading,
  columns: [],
  rows: [],
  open: false,
  inShort: null,
  follows: [],
});

/** Snow of all days on what stands covered on any of them: what to do is the same. */
function snow(group: readonly Of<"snow">[], { farm: { units } }: Outcome, names: Names): Urgent {
  const days = group.map(
    ({ date, depth }) => `${day(units, date)} (roughly ${snowDepth(units, depth)} of new snow)`,
  );
  const covered = [...new Set(group.flatMap(({ tunnels }) => tunnels))].map(names.tunnel);
  const stand = `${list(covered)} ${covered.length === 1 ? "stands" : "stand"} covered then`;
  const deepest = Math.max(...group.map(({ depth }) => depth)) as Centimetre;
  return plain(
    group[0]!,
    list(group.map(({ date }) => day(units, date))),
    `Snow on ${list(days)}. ${stand}: light hoops and wire may give way under wet snow. Brush it off gently before it piles up, if that is safe, and drag no cloth from under it. What is known at your place comes first.`,
    `Snow ${list(group.map(({ date }) => dayOfMonth(date)))}: about ${snowDepth(units, deepest)}, mind hoops`,
  );
}

function single(
  warning: Exclude<Warning, { kind: "frost" | "heat" | "bolting" | "snow" }>,
  outcome: Outcome,
  names: Names,
): string {
  const { units } = outcome.farm;
  const when = day(units, warning.date);
  switch (warning.kind) {
    case "wind":
      return `Wind on ${when}: ${wind(units, warning.wind)}, above the ${wind(units, warning.limit)} up to which cloth may be put on. Weigh down what lies, or take it off before.`;
    case "light":
      return `Little light on ${when}: ${light(warning.light)} mol/m² in a day of ${hours(warning.dayLength)} hours; leaves gain little weight.`;
    case "seedbed":
      return `Hot seedbed on ${when}: ${capital(names.succession(warning.succession))} lies at ${temperature(units, warning.seedbed)}, and above ${temperature(units, warning.limit)} part of the stand is lost.`;
  }
}

/** What stands at the top of a small page; other kinds never do. */
const brief = (warning: Warning, { farm }: Outcome): string | undefined =>
  warning.kind === "wind"
    ? `Wind ${dayOfMonth(warning.date)}: ${wind(farm.units, warning.wind)}, put on no cloth`
    : undefined;

/** Days of heat the plan keeps off, days it does not, nights of little risk after the most urgent, and days of snow, are told together; all else by date. */
function together(outcome: Outcome): (warning: Warning) => string {
  const frosts = outcome.warnings.filter(
    (warning) => warning.kind === "frost" && !warning.past,
  ) as Of<"frost">[];
  const grave = new Set<LocalDate>(
    frosts
      .filter(({ severity, risk, windy }) => severity === "danger" || risk >= LIKELY || windy)
      .map(({ date }) => date),
  );
  if (frosts[0] !== undefined) grave.add(frosts[0].date);
  const hot = new Set<LocalDate>(
    outcome.warnings.flatMap((warning) =>
      warning.kind === "heat" && (warning.planned > warning.limit || warning.severity === "danger")
        ? [warning.date]
        : [],
    ),
  );
  return (warning) => {
    const { kind, date } = warning;
    if ((kind === "frost" || kind === "heat") && warning.past) return `past ${kind} ${date}`;
    if (kind === "snow") return kind;
    return kind === "heat"
      ? `heat ${hot.has(date)}`
      : kind === "frost" && !grave.has(date)
        ? kind
        : `${kind} ${date}`;
  };
}

/** Does no forecast reach the first day planned? */
export function unforeseen({ madeFrom, walks }: Pick<Outcome, "madeFrom" | "walks">): boolean {
  const first = walks[0]?.date;
  return first !== undefined && madeFrom.unforeseenFrom !== null && madeFrom.unforeseenFrom <= first;
}

const unforeseenSentence = ({ usualFrom }: Outcome["madeFrom"]): string =>
  `No forecast reaches these days, so frost and heat are told only as ${usualFrom === null ? "the last days had them" : "is usual"}. Import a forecast.`;

/** Nights of frost at which nothing that the plan leaves standing is harmed; null where there are none. */
function harmlessFrost({ farm, tunnels, warnings, walks }: Outcome): Urgent | null {
  const warned = new Set(warnings.filter(({ kind }) => kind === "frost").map(({ date }) => date));
  const evenings = new Set(walks.filter(({ part }) => part === "evening").map(({ date }) => date));
  const cold = tunnels
    .flatMap(({ nights }) => nights)
    .filter(({ date, bare }) => bare <= 0 && !warned.has(date) && evenings.has(date));
  if (cold.length === 0) return null;
  const dates = [...new Set(cold.map(({ date }) => date))].sort();
  const lowestBare = temperature(farm.units, lowest(cold.map(({ bare }) => bare)));
  const when = list(dates.map((date) => day(farm.units, date)));
  const nights =
    dates.length === 1
      ? `Frost in ${night(farm.units, dates[0]!)}`
      : `Frost in the nights that begin on ${when}`;
  return plain(
    { kind: "frost", severity: "care", date: dates[0]! },
    when,
    `${nights}: down to ${lowestBare} at the crop with nothing on. Make the cuts planned before it; what stays should come through.`,
    `Frost ${list(dates.map(dayOfMonth))}, night: ${lowestBare}, what stays should come through`,
  );
}

/** That sizes are guesses, and what ends that; null where they are none. */
function guessSentence({ farm, successions, madeFrom }: Outcome, names: Names): string | null {
  const guessed = successions.filter((each) => each.sizeNow !== null && isGuess(each));
  const [first] = guessed;
  const log = madeFrom.latest === null ? "No log" : "No log of most of the time";
  const source = madeFrom.usualBehind ? "usual weather" : "the days that are known";
  if (first?.sizeNow == null) return null;
  const range = leafSpread(farm.units, first.sizeNow);
  const size = `${mark(first)}${leaf(farm.units, first.sizeNow)} now${range === null ? "" : ` (${range})`}`;
  return guessed.length === 1
    ? `${log}: the size of the ${names.succession(first.succession.id)}, ${size}, is a guess from ${source}; measure one leaf.`
    : `${log}: the sizes of ${guessed.length} beds are guesses from ${source}; measure one leaf of each.`;
}

/** Warnings told together, that nothing can be foreseen before all else, then in the order of the first of each, and that sizes are guesses after all. */
export function urgent(outcome: Outcome, names: Names): readonly Urgent[] {
  const groups = groupBy(outcome.warnings, together(outcome));
  const told = [...groups.values()].flatMap((group): Urgent[] => {
    const gone = group.filter((warning) => warning.kind === "frost" || warning.kind === "heat");
    if (gone[0]?.past) return [over(gone, outcome, names)];
    const frosts = group.filter((warning) => warning.kind === "frost");
    if (frosts.length > 0) return [frost(frosts, outcome, names)];
    const heats = group.filter((warning) => warning.kind === "heat");
    if (heats.length > 0) return [heat(heats, outcome, names)];
    const snows = group.filter((warning) => warning.kind === "snow");
    if (snows.length > 0) return [snow(snows, outcome, names)];
    const when = day(outcome.farm.units, group[0]!.date);
    const bolting = group.filter((warning) => warning.kind === "bolting");
    if (bolting.length > 0) return [plain(bolting[0]!, when, boltingSentence(bolting, outcome, names))];
    return group.flatMap((warning) =>
      warning.kind === "frost" ||
      warning.kind === "heat" ||
      warning.kind === "bolting" ||
      warning.kind === "snow"
        ? []
        : [plain(warning, when, single(warning, outcome, names), brief(warning, outcome))],
    );
  });
  const first = outcome.walks[0]?.date;
  if (first === undefined) return told;
  const care = (kind: "forecast" | "guess", heading: string, brief: string): Urgent =>
    plain({ kind, severity: "care", date: first }, day(outcome.farm.units, first), heading, brief);
  const guess = guessSentence(outcome, names);
  const harmless = harmlessFrost(outcome);
  return [
    ...(unforeseen(outcome)
      ? [care("forecast", unforeseenSentence(outcome.madeFrom), "No forecast: frost and heat unknown")]
      : []),
    ...told,
    ...(harmless === null ? [] : [harmless]),
    ...(guess === null ? [] : [care("guess", guess, "No log: sizes are guesses")]),
  ];
}
