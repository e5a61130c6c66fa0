import type { Farm, Product, Succession, Tunnel } from "../../src/farm/index.ts";
import type { DailyRecord } from "../../src/weather/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { bed, clear, input, leaf, piece, tunnel } from "./smallFarm.ts";

export const A: Tunnel = tunnel("A", 15);
export const B: Tunnel = tunnel("B", 15);
export const ARUGULA: Succession = bed("arugula", A);
export const LETTUCE: Succession = bed("lettuce-mix", B);

/** Three frosty nights, then mild days. */
export const FROSTY: readonly DailyRecord[] = clear([3, 13], [-3, 9], [-2, 9], [-4, 11], [4, 15], [6, 18]);

/** Two tunnels with a bed each, one light and one heavy row cover, in a frosty week. */
export const frostyFarm = (more: Partial<Farm> = {}, days: readonly DailyRecord[] = FROSTY): WeekInput =>
  input(
    {
      tunnels: [A, B],
      successions: [ARUGULA, LETTUCE],
      notes: [leaf(ARUGULA, 8), leaf(LETTUCE, 7)],
      pieces: [piece("light", "row-cover-19", 16), piece("heavy", "row-cover-30", 16)],
      ...more,
    },
    days,
  );

/** A product of one crop, or a mix. */
export const product = (id: string, parts: Product["parts"], more: Partial<Product> = {}): Product => ({
  id,
  name: id,
  parts,
  price: 20,
  stall: null,
  orders: [],
  ...more,
});

export const only = (crop: string): Product["parts"] => [{ crop, share: 1, swaps: [] }];
