import type { Farm } from "../farm/index.ts";
import { kilogram } from "../quantity/index.ts";
import { allocate, orderedAt } from "./allocate.ts";
import { coldFor, type KeptCold } from "./keptCold.ts";
import type { Pick, ProductAtPick, SuccessionOutlook } from "./outcome.ts";

/** Pounds of every product at every pick: what the expected salad-size weight of the successions cut for it makes with what is already cut. */
export function productsAt(
  farm: Farm,
  picks: readonly Pick[],
  outlooks: readonly SuccessionOutlook[],
  keptCold: readonly KeptCold[],
): readonly ProductAtPick[] {
  /** What lies in the cold is sold with the first pick that is still ahead. */
  const isFirst = (pick: Pick): boolean =>
    picks.find((other) => other.market === pick.market && other.marketDate === pick.marketDate) === pick;
  return picks.flatMap((pick) => {
    const cut = outlooks.filter(
      ({ fate }) => fate.kind !== "none" && fate.as === "salad" && fate.pick === pick,
    );
    const cold = isFirst(pick) ? coldFor(keptCold, pick) : new Map<string, number>();
    const weights = new Map(cold);
    for (const { crop, atFate } of cut) weights.set(crop.id, (weights.get(crop.id) ?? 0) + atFate!.inSize);
    const ordered = farm.products.map((product) => orderedAt(product, pick.market));
    const { made, left } = allocate(farm.products, ordered, weights);
    return farm.products.map(({ id, parts }, i): ProductAtPick => {
      const wanted = parts.filter(({ share }) => share > 0);
      const reach = ({ crop, share }: (typeof wanted)[number]): number => (left.get(crop) ?? 0) / share;
      return {
        product: id,
        pick,
        expected: kilogram(made[i]!),
        // The part of a mix there is least of in the end.
        scarcest:
          made[i]! < ordered[i]! && wanted.length > 0
            ? wanted.reduce((a, b) => (reach(b) < reach(a) ? b : a)).crop
            : null,
        ordered: kilogram(ordered[i]!),
        cold: kilogram(parts.reduce((sum, { crop }) => sum + (cold.get(crop) ?? 0), 0)),
        successions: cut
          .filter(({ crop }) => parts.some((part) => part.crop === crop.id))
          .map(({ succession }) => succession.id),
      };
    });
  });
}
