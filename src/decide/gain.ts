import type { Instead, Joint } from "./joint.ts";
import type { Change, LimitName, Parts } from "./outcome.ts";
import type { Planned } from "./planned.ts";

/** What one has more than another, part by part. */
export const lessParts = (a: Parts, b: Parts): Parts => ({
  timing: a.timing - b.timing,
  stress: a.stress - b.stress,
  damage: a.damage - b.damage,
  labour: a.labour - b.labour,
  calm: a.calm - b.calm,
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

const PARTS = ["damage", "stress", "timing", "orders", "labour", "calm"] as const;

/** What the plan gains against one with another schedule for one tunnel, and what decides between them. */
export function decidedBetween(
  planned: Planned,
  joint: Joint,
  other: Instead,
): Pick<Change, "decidedBy" | "gain" | "limit"> {
  const gain = gainOver(planned, joint, other);
  const limit =
    extra(
      [...other.evaluation.breaches, ...other.overrun],
      [...planned.chosen.breaches, ...joint.overrun],
    )[0] ?? null;
  const strongest = PARTS.reduce((top, part) => (gain[part] > gain[top] ? part : top), PARTS[0]);
  return { decidedBy: limit === null ? strongest : "limit", gain, limit };
}
