import type { Outcome, TunnelPlan } from "../decide/index.ts";
import { list } from "../problem/index.ts";
import { type Celsius, groupBy, type LocalDate } from "../quantity/index.ts";
import type { NoCloth, Warning } from "../watch/index.ts";
import type { Names } from "./names.ts";
import { lyingOn } from "./reason.ts";
import { day, night, odds, settingAt } from "./words.ts";

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

/** From here on a risk is told as 2 in 5 or more, and is no longer only some. [0–1] */
const CONSIDERABLE = 0.3;

export type Of<Kind extends Warning["kind"]> = Warning & { readonly kind: Kind };

export const lowest = (values: readonly Celsius[]): Celsius => Math.min(...values) as Celsius;
export const highest = (values: readonly Celsius[]): Celsius => Math.max(...values) as Celsius;
export const worst = (group: readonly Warning[]): Warning["severity"] =>
  group.some(({ severity }) => severity === "danger") ? "danger" : "care";

const planOf = (outcome: Outcome, tunnel: string): TunnelPlan | undefined =>
  outcome.tunnels.find((plan) => plan.tunnel.id === tunnel);

/** Each tunnel once, with the greatest risk of any night. */
export function riskiest(
  told: readonly { readonly tunnel: string; readonly name: string; readonly risk: number }[],
): readonly { readonly name: string; readonly risk: number }[] {
  const tunnels = groupBy(told, ({ tunnel }) => tunnel);
  return [...tunnels.values()].map((same) => ({
    name: same[0]!.name,
    risk: Math.max(...same.map(({ risk }) => risk)),
  }));
}

/** Tunnels with the same odds told together: "Risk is left: 2 in 5 in Creek 2 and Alder 3; 1 in 10 in Mill 1." */
export function riskLeft(told: readonly { readonly name: string; readonly risk: number }[]): string {
  const alike = groupBy(told, ({ risk }) => odds(risk));
  const some = told.every(({ risk }) => risk < CONSIDERABLE) ? "Some risk" : "Risk";
  return `${some} is left: ${[...alike].map(([chance, same]) => `${chance} in ${list(same.map(({ name }) => name))}`).join("; ")}.`;
}

/** What the plan has on a tunnel through one night or by one day, in words. */
export function underPlan(
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
export const bedsIn = (
  told: readonly { readonly name: string; readonly beds: readonly string[] }[],
): string => told.map(({ name, beds }) => `${list(beds)} in ${name}`).join("; ");

export const noCloth = (
  told: readonly { readonly noClothLeft?: NoCloth; readonly tunnel: string }[],
  names: Names,
): string[] =>
  (["keptOn", "minutesOff", "none", "tooShort", "kept", "inUse", "minutes"] as const).flatMap((why) => {
    const where = [
      ...new Set(told.filter((each) => each.noClothLeft === why).map(({ tunnel }) => names.tunnel(tunnel))),
    ];
    return where.length === 0 ? [] : [NO_CLOTH[why](list(where))];
  });

/** A warning its heading says all of. */
export const plain = (
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

/** A frost or a heat that is over when the sheet is made: nothing is left to do but to look. */
export function over(group: readonly (Of<"frost"> | Of<"heat">)[], outcome: Outcome, names: Names): Urgent {
  const { units } = outcome.farm;
  const { kind, date } = group[0]!;
  const where = list([...new Set(group.map(({ tunnel }) => names.tunnel(tunnel)))]);
  const what = kind === "frost" ? `The frost in ${night(units, date)}` : `The heat on ${day(units, date)}`;
  return plain(group[0]!, day(units, date), `${what} is over: go and look at ${where}.`);
}
