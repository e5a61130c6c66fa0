import type { Instead, Joint } from "./joint.ts";
import type { LimitName, Parts } from "./outcome.ts";
import type { Planned } from "./planned.ts";

/** What one has more than another, part by part. */
export const lessParts = (a: Parts, b: Parts): Parts => ({
  timing: a.timing - b.timing,
  stress: a.stress - b.stress,
  damage: a.damage - b.damage,
  labour: a.labour - b.labour,
  orders: a.orders - b.orders,
});

/** What the plan has more than one with another schedule for one tunnel. */
export const gainOver = ({ chosen }: Planned, joint: Joint, { evaluation, orders }: Instead): Parts =>
  lessParts({ ...chosen.parts, orders: joint.orders }, { ...evaluation.parts, orders });

/** Limits that are broken more often in one list than in the other. */
export function extra(more: readonly LimitName[], fewer: readonly LimitName[]): readonly LimitName[] {
  const count = (list: readonly LimitName[], name: LimitName): number =>
    list.filter((other) => other === name).length;
  return [...new Set(more)].filter((name) => count(more, name) > count(fewer, name));
}
