import type { Instead, Joint } from "./joint.ts";
import type { Change, LimitName, Parts } from "./outcome.ts";
import { eachPart, PARTS } from "./parts.ts";
import type { Planned } from "./planned.ts";

/** What one has more than another, part by part. */
export const lessParts = (a: Parts, b: Parts): Parts => eachPart((part) => a[part] - b[part]);

/** What the plan has more than one with another schedule for one tunnel. */
export const gainOver = ({ chosen }: Planned, joint: Joint, { evaluation, orders }: Instead): Parts =>
  lessParts({ ...chosen.parts, orders: joint.orders }, { ...evaluation.parts, orders });

/** Limits that are broken more often in one list than in the other. */
export function extra(more: readonly LimitName[], fewer: readonly LimitName[]): readonly LimitName[] {
  const count = (list: readonly LimitName[], name: LimitName): number =>
    list.filter((other) => other === name).length;
  return [...new Set(more)].filter((name) => count(more, name) > count(fewer, name));
}

/**
 * Limits of what can be done in all, which taking one thing out of a plan may overrun elsewhere: they decide only where nothing is
 * gained by it.
 */
const CAPACITIES: readonly LimitName[] = ["changes", "minutes", "picking", "washing", "cooler"];

/** What the plan gains against one with another schedule for one tunnel, and what decides between them. */
export function decidedBetween(
  planned: Planned,
  joint: Joint,
  other: Instead,
): Pick<Change, "decidedBy" | "gain" | "limit"> {
  const gain = gainOver(planned, joint, other);
  const worse = PARTS.reduce((sum, part) => sum + gain[part], 0) > 0;
  const limit =
    extra(
      [...other.evaluation.breaches, ...other.overrun],
      [...planned.chosen.breaches, ...joint.overrun],
    ).find((name) => !(worse && CAPACITIES.includes(name))) ?? null;
  const strongest = PARTS.reduce((top, part) => (gain[part] > gain[top] ? part : top));
  return { decidedBy: limit === null ? strongest : "limit", gain, limit };
}
