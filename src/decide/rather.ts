import { evaluate } from "./evaluate.ts";
import { extra, gainOver } from "./gain.ts";
import type { Instead, Joint } from "./joint.ts";
import type { BedBeside, Rather } from "./outcome.ts";
import type { Planned } from "./planned.ts";
import { NOW, type TunnelProblem } from "./tunnelProblem.ts";

/** Schedules asked of the whole farm at most before it is said that nothing else would do. */
const MOST = 3;

/** How warm a setting keeps a stretch: sum of the lowest and highest at the crop. [°C] */
function warmth({ lowest, highest, settings }: TunnelProblem, s: number, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += lowest[i * settings.length + s]! + highest[i * settings.length + s]!;
  return sum;
}

/**
 * The strongest other setting with which a change could do the same, warm or cool, in its place up to the next change: found
 * with this tunnel's own worth, weighed with the whole farm's. One that breaks a limit the plan keeps is none.
 */
export function ratherOf(
  planned: Planned,
  tunnel: number,
  joint: Joint,
  at: number,
  beds: (schedule: readonly number[], other: Instead) => readonly BedBeside[],
): Rather | null {
  const { problem, schedule, chosen } = planned;
  const { lays, possible, intervals } = problem;
  const from = at === 0 ? NOW : schedule[at - 1]!;
  const to = schedule[at]!;
  const next = schedule.findIndex((lay, i) => i > at && lay !== to);
  const end = next < 0 ? intervals : next;
  const warms = (lay: number): number =>
    Math.sign(warmth(problem, lays[lay]!.setting, at, end) - warmth(problem, lays[from]!.setting, at, end));
  const seen = new Set([lays[from]!.setting, lays[to]!.setting]);
  const others = lays
    .flatMap(({ setting }, lay) => {
      if (seen.has(setting) || warms(lay) !== warms(to)) return [];
      const instead = schedule.map((own, i) => (i >= at && i < end ? lay : own));
      if (instead.some((own, i) => !possible[i * lays.length + own])) return [];
      const { worth, breaches } = evaluate(problem, instead);
      return extra(breaches, chosen.breaches).length > 0 ? [] : [{ setting, schedule: instead, worth }];
    })
    .sort((a, b) => b.worth - a.worth)
    .slice(0, MOST);
  for (const other of others) {
    const found = joint.instead(tunnel, other.schedule);
    const limits = [...found.evaluation.breaches, ...found.overrun];
    if (extra(limits, [...chosen.breaches, ...joint.overrun]).length > 0) continue;
    return {
      setting: problem.settings[other.setting]!,
      gain: gainOver(planned, joint, found),
      beds: beds(other.schedule, found),
    };
  }
  return null;
}
