import type { Outcome, TunnelPlan } from "../decide/index.ts";
import type { Celsius, LocalDate, Mol } from "../quantity/index.ts";
import type { Warning } from "../watch/index.ts";
import { groupBy } from "./groupBy.ts";
import type { Names } from "./names.ts";
import { lyingOn } from "./reason.ts";
import { capital, day, list, night, odds, settingAt, temperature, wind } from "./words.ts";

/** Warnings of one kind on one date, told together. */
export interface Urgent {
  readonly kind: Warning["kind"];
  readonly severity: Warning["severity"];
  readonly date: LocalDate;
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

type Of<Kind extends Warning["kind"]> = Warning & { readonly kind: Kind };

const lowest = (values: readonly Celsius[]): Celsius => Math.min(...values) as Celsius;
const highest = (values: readonly Celsius[]): Celsius => Math.max(...values) as Celsius;
const worst = (group: readonly Warning[]): Warning["severity"] =>
  group.some(({ severity }) => severity === "danger") ? "danger" : "care";

const planOf = (outcome: Outcome, tunnel: string): TunnelPlan | undefined =>
  outcome.tunnels.find((plan) => plan.tunnel.id === tunnel);

function frost(group: readonly Of<"frost">[], outcome: Outcome, names: Names): Urgent {
  const { units } = outcome.farm;
  const { date } = group[0]!;
  const told = group
    .map((warning) => {
      const plan = planOf(outcome, warning.tunnel);
      const under =
        plan === undefined
          ? "bare"
          : settingAt(lyingOn(plan, outcome, date, "evening"), "evening", names.cover);
      return { ...warning, under, name: names.tunnel(warning.tunnel), risked: odds(warning.risk) };
    })
    .sort((a, b) => b.risk - a.risk);
  const probable = told.filter(({ risk }) => risk >= 0.5);
  const possible = told.filter(({ risk }) => risk >= 0.01 && risk < 0.5);
  const unpromised = told.filter(({ risk, promised, unfit }) => risk < 0.01 && promised < unfit);
  const windy = told.filter(({ windy }) => windy);
  return {
    kind: "frost",
    severity: worst(group),
    date,
    heading: `Frost in ${night(units, date)}: down to ${temperature(units, lowest(group.map(({ bare }) => bare)))} at the crop with nothing on.`,
    columns: ["Tunnel", "That night", "Expected", "Promised", "Unfit below", "Risk left"],
    rows: told.map(({ tunnel, name, under, expected, promised, unfit, successions, risked }) => ({
      tunnel,
      cells: [
        name,
        under,
        temperature(units, expected),
        temperature(units, promised),
        temperature(units, unfit),
        risked,
      ],
      sentence: `${name}, ${under}: ${temperature(units, expected)} expected at the crop, ${temperature(units, promised)} promised. Leaves of ${list(successions.map(names.succession))} are unfit below ${temperature(units, unfit)}. Risk left: ${risked}.`,
    })),
    open: true,
    inShort:
      possible.length === 0
        ? null
        : `Some risk is left in ${list(possible.map(({ name, risked }) => `${name} (${risked})`))}.`,
    follows: [
      ...probable.map(
        ({ name, risked, successions }) =>
          `Probable loss in ${name} even with the plan, ${risked}: ${list(successions.map(names.succession))}.`,
      ),
      ...(unpromised.length === 0
        ? []
        : [
            `${list(unpromised.map(({ name }) => name))} should come through, but what is on cannot promise it.`,
          ]),
      ...(probable.length + possible.length + unpromised.length === 0
        ? ["With the plan hardly any risk is left."]
        : []),
      ...(windy.length === 0
        ? []
        : [
            `The evening before this night is too windy to put cloth on: what ${list(windy.map(({ name }) => name))} can have must lie there from an earlier walk.`,
          ]),
    ],
  };
}

function heat(group: readonly Of<"heat">[], outcome: Outcome, names: Names): Urgent {
  const { units } = outcome.farm;
  const { date } = group[0]!;
  const told = group
    .map((warning) => {
      const plan = planOf(outcome, warning.tunnel);
      const under =
        plan === undefined
          ? "bare"
          : settingAt(lyingOn(plan, outcome, date, "morning"), "morning", names.cover);
      return { ...warning, under, name: names.tunnel(warning.tunnel) };
    })
    .sort((a, b) => b.planned - b.limit - (a.planned - a.limit));
  const over = told.filter(({ planned, limit }) => planned > limit);
  return {
    kind: "heat",
    severity: worst(group),
    date,
    heading: `Heat on ${day(units, date)}: up to ${temperature(units, highest(group.map(({ ifLeft }) => ifLeft)))} at the crop in calm air if what lies there now is left on.`,
    columns: ["Tunnel", "That day", "If left", "With plan", "Too hot above"],
    rows: told.map(({ tunnel, name, under, ifLeft, planned, limit, successions }) => ({
      tunnel,
      cells: [
        name,
        under,
        temperature(units, ifLeft),
        temperature(units, planned),
        temperature(units, limit),
      ],
      sentence: `${name}, ${under}: ${temperature(units, planned)} with the plan, ${temperature(units, ifLeft)} if what lies there now is left. Above ${temperature(units, limit)} is too hot for ${list(successions.map(names.succession))}.`,
    })),
    open: over.length > 0,
    inShort: null,
    follows:
      over.length === 0
        ? ["With the plan every tunnel stays below what its crops bear."]
        : over.map(
            ({ name, successions }) =>
              `Still too hot with the plan in ${name}: ${list(successions.map(names.succession))}.`,
          ),
  };
}

const light = (value: Mol): string => String(Math.round(value));
const hours = (value: number): string => String(Math.round(value * 2) / 2);

function boltingSentence(group: readonly Of<"bolting">[], outcome: Outcome, names: Names): string {
  const { date, dayLength } = group[0]!;
  const who = list(group.map(({ succession }) => names.succession(succession)));
  return `The day is ${hours(dayLength)} hours long on ${day(outcome.farm.units, date)}: ${who} may bolt, and covers do not prevent it.`;
}

/** A warning its heading says all of. */
const plain = ({ kind, severity, date }: Warning, heading: string): Urgent => ({
  kind,
  severity,
  date,
  heading,
  columns: [],
  rows: [],
  open: false,
  inShort: null,
  follows: [],
});

function single(
  warning: Exclude<Warning, { kind: "frost" | "heat" | "bolting" }>,
  outcome: Outcome,
  names: Names,
): string {
  const { units } = outcome.farm;
  const when = day(units, warning.date);
  switch (warning.kind) {
    case "wind":
      return `Wind on ${when}: ${wind(units, warning.wind)}, above the ${wind(units, warning.limit)} up to which cloth may be put on.`;
    case "light":
      return `Little light on ${when}: ${light(warning.light)} mol/m² in a day of ${hours(warning.dayLength)} hours; leaves gain little weight.`;
    case "seedbed":
      return `Hot seedbed on ${when}: ${capital(names.succession(warning.succession))} lies at ${temperature(units, warning.seedbed)}, and above ${temperature(units, warning.limit)} part of the stand is lost.`;
  }
}

/** Warnings of one kind and date told together, in the order of the first of each. */
export function urgent(outcome: Outcome, names: Names): readonly Urgent[] {
  const groups = groupBy(outcome.warnings, ({ kind, date }) => `${kind} ${date}`);
  return [...groups.values()].flatMap((group): Urgent[] => {
    const frosts = group.filter((warning) => warning.kind === "frost");
    if (frosts.length > 0) return [frost(frosts, outcome, names)];
    const heats = group.filter((warning) => warning.kind === "heat");
    if (heats.length > 0) return [heat(heats, outcome, names)];
    const bolting = group.filter((warning) => warning.kind === "bolting");
    if (bolting.length > 0) return [plain(bolting[0]!, boltingSentence(bolting, outcome, names))];
    return group.flatMap((warning) =>
      warning.kind === "frost" || warning.kind === "heat" || warning.kind === "bolting"
        ? []
        : [plain(warning, single(warning, outcome, names))],
    );
  });
}
