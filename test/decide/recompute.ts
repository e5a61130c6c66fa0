import { expect } from "vitest";
import type { Outcome } from "../../src/decide/index.ts";
import { weekJson } from "../../src/sheet/index.ts";
import { faultsOf } from "../check/faults.ts";

/** Recomputes a week from its printed JSON alone and holds it to every limit. */
export function confirm(outcome: Outcome): void {
  expect(faultsOf(JSON.parse(weekJson(outcome)))).toEqual([]);
}
