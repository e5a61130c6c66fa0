import { describe, expect, test } from "vitest";
import { decidedBetween, type Joint, type LimitName, type Planned } from "../../src/decide/index.ts";

const NOTHING = { timing: 0, stress: 0, damage: 0, again: 0, labour: 0, calm: 0 };

/** A plan worth 10 in damage feared less than the other, at a cost of work, and limits only the other breaks. */
const decided = (damage: number, breaches: readonly LimitName[], overrun: readonly LimitName[] = []) => {
  const planned = { chosen: { parts: { ...NOTHING, damage, labour: -2 }, breaches: [] } };
  const joint = { orders: 0, overrun: [] };
  const other = { evaluation: { parts: NOTHING, breaches }, orders: 0, overrun };
  return decidedBetween(
    planned as unknown as Planned,
    joint as unknown as Joint,
    other as unknown as Parameters<typeof decidedBetween>[2],
  );
};

describe("what decides between a plan and another", () => {
  test.each(["minutes", "cooler", "picking", "washing", "changes"] as const)(
    "is the frost, not %s that are overrun besides",
    (name) => {
      expect(decided(10, [], [name])).toMatchObject({ decidedBy: "damage", limit: null });
    },
  );

  test("is a limit where nothing is gained otherwise", () => {
    expect(decided(1, [], ["minutes"])).toMatchObject({ decidedBy: "limit", limit: "minutes" });
  });

  test("is a limit that forbids it, whatever is gained", () => {
    expect(decided(10, ["net"], ["minutes"])).toMatchObject({ decidedBy: "limit", limit: "net" });
  });
});
