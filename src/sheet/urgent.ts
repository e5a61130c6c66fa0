import type { Outcome } from "../decide/index.ts";
import { list } from "../problem/index.ts";
import { type Centimetre, groupBy, type LocalDate, type Mol } from "../quantity/index.ts";
import type { Warning } from "../watch/index.ts";
import { LIKELY } from "./frostedBeds.ts";
import { frostTold } from "./frostTold.ts";
import { heatTold } from "./heatTold.ts";
import { isGuess, mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { lowest, type Of, over, plain, type Urgent } from "./warned.ts";
import { capital, day, dayOfMonth, leaf, leafSpread, night, snowDepth, temperature, wind } from "./words.ts";

/** Warnings that ask for a look, not for a cover; told after the plan. */
export const LATER: readonly Urgent["kind"][] = ["seedbed", "bolting", "light"];

const light = (value: Mol): string => String(Math.round(value));
const hours = (value: number): string => String(Math.round(value * 2) / 2);

function boltingSentence(group: readonly Of<"bolting">[], outcome: Outcome, names: Names): string {
  const { date, dayLength } = group[0]!;
  const who = list(group.map(({ succession }) => names.succession(succession)));
  return `The day is ${hours(dayLength)} hours long on ${day(outcome.farm.units, date)}: ${who} may bolt, covered or not.`;
}

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
    if (frosts.length > 0) return [frostTold(frosts, outcome, names)];
    const heats = group.filter((warning) => warning.kind === "heat");
    if (heats.length > 0) return [heatTold(heats, outcome, names)];
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
