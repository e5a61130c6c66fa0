import type { Farm, Settings } from "../farm/index.ts";

/** Price per kilogram of a crop: that of the best product with it, or the farm's usual. */
export function priceOf(farm: Farm, crop: string, settings: Settings): number {
  if (farm.currency === null) return 1;
  const prices = farm.products
    .filter(({ parts, price }) => price !== null && parts.some((part) => part.crop === crop))
    .map(({ price }) => price!);
  return prices.length > 0 ? Math.max(...prices) : settings.price;
}
