import type { Settings } from "../farm/index.ts";
import { ORIGINS, type Origin, type Weather } from "../weather/index.ts";

/** Relative spread that an hour of each origin gives the thermal time, when all hours are of it. [1] */
const spreadOf = (origin: Origin, { usualSpread, carriedSpread }: Settings): number =>
  origin === "usual" ? usualSpread : origin === "estimated" || origin === "carried" ? carriedSpread : 0;

/** How much of what a succession grew in is guessed. */
export interface Guess {
  /** Hours without a log, as a share of all. [0–1] */
  readonly share: number;
  /** Relative spread they give the thermal time. [1] */
  readonly spread: number;
}

/**
 * What days without a log make of a thermal time: each counts by its share of the hours since `origin`. A leaf measured says
 * what had grown until then, so that only hours from `leaf` on count as guessed. Judgement; errors of all these days are
 * taken to lie on one side, as in a cold spring.
 *
 * @param origin - Hour of the weather from which growth is counted.
 * @param leaf - Hour of the last leaf measured, or `origin`.
 * @param until - Hour up to which it is looked at.
 */
export function guessOf(
  { origin: origins }: Weather,
  origin: number,
  leaf: number,
  until: number,
  settings: Settings,
): Guess {
  const all = Math.max(1, until - origin);
  let hours = 0;
  let spread = 0;
  for (let i = Math.max(0, leaf); i < Math.min(until, origins.length); i++) {
    const own = spreadOf(ORIGINS[origins[i]!]!, settings);
    if (own > 0) hours++;
    spread += own;
  }
  return { share: hours / all, spread: spread / all };
}
