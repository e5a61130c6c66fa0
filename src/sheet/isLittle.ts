import type { Farm } from "../farm/index.ts";
import type { Kilogram } from "../quantity/index.ts";
import { toPounds } from "../quantity/index.ts";

/** Below it a difference of worth is none worth telling: a unit of currency, or half a pound. [1], [lb] judgement */
const LEAST = { currency: 1, pounds: 0.5 };

/** A difference of worth too small to tell. */
export const isLittle = ({ currency }: Pick<Farm, "currency">, worth: number): boolean =>
  currency === null ? toPounds(Math.abs(worth) as Kilogram) < LEAST.pounds : Math.abs(worth) < LEAST.currency;
