import type { Parts } from "./outcome.ts";

/** What worth is made of; of equal ones the first decides. */
export const PARTS: readonly (keyof Parts)[] = [
  "damage",
  "stress",
  "timing",
  "again",
  "orders",
  "labour",
  "calm",
];

/** Something of every part. */
export const eachPart = <T>(of: (part: keyof Parts) => T): Readonly<Record<keyof Parts, T>> => ({
  timing: of("timing"),
  stress: of("stress"),
  damage: of("damage"),
  again: of("again"),
  labour: of("labour"),
  calm: of("calm"),
  orders: of("orders"),
});
