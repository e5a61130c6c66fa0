import type { Layer, Setting } from "../farm/index.ts";

type Part = "morning" | "evening";
type State = Layer["state"] | "off";

/** What is done with one cloth: state before, state after and, where it matters, the part of the day. */
export type StepName =
  | "off on"
  | "off vented"
  | "off nights morning"
  | "off nights evening"
  | "on off"
  | "on vented"
  | "on nights morning"
  | "on nights evening"
  | "vented off"
  | "vented on"
  | "vented nights morning"
  | "vented nights evening"
  | "nights off morning"
  | "nights off evening"
  | "nights on morning"
  | "nights on evening"
  | "nights vented morning"
  | "nights vented evening"
  | "nights nights morning"
  | "nights nights evening";

export interface Step {
  readonly cover: string;
  readonly name: StepName;
}

/** Sentences for one cloth. Where nothing is to be done there is none. */
const STEPS: Readonly<Record<StepName, (cover: string) => string>> = {
  "off on": (cover) => `Put on ${cover}.`,
  "off vented": (cover) => `Put on ${cover} with one side lifted.`,
  "off nights morning": (cover) =>
    `Lay ${cover} ready: from this evening it goes on every evening and comes off every morning.`,
  "off nights evening": (cover) =>
    `Put on ${cover}: from now on it comes off every morning and goes on every evening.`,
  "on off": (cover) => `Take off ${cover}.`,
  "on vented": (cover) => `Lift one side of ${cover}.`,
  "on nights morning": (cover) =>
    `Take off ${cover}: from now on it goes on every evening and comes off every morning.`,
  "on nights evening": (cover) =>
    `Leave ${cover} on tonight: from tomorrow it comes off every morning and goes on every evening.`,
  "vented off": (cover) => `Take off ${cover}.`,
  "vented on": (cover) => `Lower the lifted side of ${cover}.`,
  "vented nights morning": (cover) =>
    `Take off ${cover}: from now on it goes on every evening and comes off every morning.`,
  "vented nights evening": (cover) =>
    `Lower the lifted side of ${cover}: from tomorrow it comes off every morning and goes on every evening.`,
  "nights off morning": (cover) => `Take off ${cover} and leave it off, also at night.`,
  "nights off evening": (cover) => `Leave ${cover} off tonight and from now on.`,
  "nights on morning": (cover) => `Leave ${cover} on: it no longer comes off in the morning.`,
  "nights on evening": (cover) => `Put on ${cover} and leave it on, also by day.`,
  "nights vented morning": (cover) => `Lift one side of ${cover} and leave it so, day and night.`,
  "nights vented evening": (cover) => `Put on ${cover} with one side lifted and leave it so, day and night.`,
  "nights nights morning": (cover) => `Take off ${cover} for the day.`,
  "nights nights evening": (cover) => `Put on ${cover} for the night.`,
};

/** Off before changed before on: what comes off may be in the way of what goes on. */
const rank = (before: State, after: State): number => (after === "off" ? 0 : before === "off" ? 2 : 1);

/** States of each cloth before and after; the second of two equal cloths counts on its own. */
function pairs(from: Setting, to: Setting): { cover: string; before: State; after: State }[] {
  const covers = [...new Set([...from, ...to].map(({ cover }) => cover))];
  return covers.flatMap((cover) => {
    const before = from.filter((layer) => layer.cover === cover).map(({ state }): State => state);
    const after = to.filter((layer) => layer.cover === cover).map(({ state }): State => state);
    return Array.from({ length: Math.max(before.length, after.length) }, (_, i) => ({
      cover,
      before: before[i] ?? "off",
      after: after[i] ?? "off",
    }));
  });
}

const isStep = (name: string): name is StepName => Object.hasOwn(STEPS, name);

/**
 * What is to be done at one walk so that a tunnel goes from one setting to another, in order; with the same setting twice, the
 * round of its rhythm. */
export const steps = (from: Setting, to: Setting, part: Part): readonly Step[] =>
  pairs(from, to)
    .sort((a, b) => rank(a.before, a.after) - rank(b.before, b.after))
    .flatMap(({ cover, before, after }) =>
      [`${before} ${after}`, `${before} ${after} ${part}`].filter(isStep).map((name) => ({ cover, name })),
    );

/** The same in sentences. */
export const actions = (from: Setting, to: Setting, part: Part, cloth: (cover: string) => string): string[] =>
  steps(from, to, part).map(({ cover, name }) => STEPS[name](cloth(cover)));
