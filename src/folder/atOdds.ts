import type { Farm } from "../farm/index.ts";
import { list, type Problem } from "../problem/index.ts";

const told = (
  code: string,
  column: string,
  about: Pick<Problem, "expected" | "received" | "hint">,
): Problem => ({
  code,
  weight: "needsYou",
  file: "farm.yaml",
  line: null,
  column,
  ...about,
});

/** Ordered products none of whose crops is sown. A farm that has sown nothing at all is only beginning. */
function unsown({ products, successions }: Farm): readonly Problem[] {
  const sown = new Set(successions.map(({ crop }) => crop));
  const lacking = products.filter(
    ({ orders, parts }) =>
      orders.length > 0 &&
      !parts.some(({ crop, swaps }) => sown.has(crop) || swaps.some((one) => sown.has(one))),
  );
  if (lacking.length === 0 || sown.size === 0) return [];
  const names = list(lacking.map(({ name }) => name));
  return [
    told("ordered-unsown", "products", {
      expected: `a sowing for ${names}, which ${lacking.length === 1 ? "is" : "are"} ordered`,
      received: "none",
      hint: "Sow it, or take the order out until it stands.",
    }),
  ];
}

/** Greens that are cut a day or more before they are sold, and no room to keep them in. */
function unkept({ markets, handling }: Farm): readonly Problem[] {
  const early = markets.filter(({ picks }) => picks.every(({ daysBefore }) => daysBefore > 0));
  if (handling.cooler === null || handling.cooler > 0 || early.length === 0) return [];
  return [
    told("cooler-none", "handling.cooler", {
      expected: `room in the cold for what is cut the day before ${list(early.map(({ name }) => name))}`,
      received: "none",
      hint: "Leave the cooler out where there is room for all, or cut on the day itself.",
    }),
  ];
}

/** What a farm says in one place and what it says in another do not go together. Told by check, and stops nothing. */
export const atOdds = (farm: Farm): readonly Problem[] => [...unsown(farm), ...unkept(farm)];
