import { describe, expect, test } from "vitest";
import { reachedOn, sizeOn, standAt } from "../../src/learn/index.ts";
import { at, cm, cut, leaf, note } from "./noted.ts";

const monday = at("2026-04-20", 7);

describe("the stand of a bed at a moment", () => {
  test("runs from its last cut to its next, and takes no note of another bed", () => {
    const notes = [
      leaf(at("2026-04-10"), "S1", 6),
      cut(at("2026-04-12"), "S1", 4),
      leaf(at("2026-04-22"), "S1", 5),
      leaf(at("2026-04-22"), "S2", 9),
      leaf(at("2026-04-26"), "S1", 9),
      cut(at("2026-04-26", 7), "S1", 3),
      leaf(at("2026-05-02"), "S1", 4),
    ];
    expect(standAt(notes, "S1", monday)).toEqual({
      begun: at("2026-04-12"),
      leaves: [
        { at: at("2026-04-22"), length: 5 },
        { at: at("2026-04-26"), length: 9 },
      ],
      cut: { at: at("2026-04-26", 7), weight: 3 },
      emerged: null,
      lost: null,
    });
  });

  test("ends without a cut where the bed is sown again", () => {
    const notes = [
      leaf(at("2026-04-22"), "S1", 5),
      note(at("2026-04-23"), { kind: "resown", succession: "S1" }),
      leaf(at("2026-05-20"), "S1", 7),
    ];
    const stand = standAt(notes, "S1", monday);
    expect([stand.leaves.length, stand.cut]).toEqual([1, null]);
  });

  test("is lost when losses noted leave nothing of it", () => {
    const lose = (day: string, share: number) => note(at(day), { kind: "loss", succession: "S1", share });
    expect(standAt([lose("2026-04-21", 0.5), lose("2026-04-22", 0.9)], "S1", monday).lost).toBeNull();
    expect(standAt([lose("2026-04-21", 0.5), lose("2026-04-22", 1)], "S1", monday).lost).toBe(
      at("2026-04-22"),
    );
  });
});

describe("leaves measured", () => {
  const stand = (...days: readonly (readonly [day: string, length: number])[]) =>
    standAt(
      days.map(([day, length]) => leaf(at(day), "S1", length)),
      "S1",
      monday,
    );

  test("tell the size within a day, the nearest first, as it was measured", () => {
    const two = stand(["2026-04-23", 7], ["2026-04-25", 9]);
    expect(sizeOn(two, at("2026-04-24", 5))).toBe(7);
    expect(sizeOn(two, at("2026-04-24", 8))).toBe(9);
    expect(sizeOn(two, at("2026-04-26"))).toBe(9);
  });

  test("tell it between two at most a week apart on a straight line: 6 and 10 cm, a quarter of the way, 7 cm", () => {
    expect(sizeOn(stand(["2026-04-20", 6], ["2026-04-28", 10]), at("2026-04-22"))).toBeNull();
    expect(sizeOn(stand(["2026-04-20", 6], ["2026-04-24", 10]), at("2026-04-21", 6 + 6))).toBe(7.25);
    expect(sizeOn(stand(["2026-04-20", 6], ["2026-04-26", 10]), at("2026-04-21", 18))).toBe(7);
    expect(sizeOn(stand(["2026-04-20", 6]), at("2026-04-22"))).toBeNull();
  });

  test("tell when a size was reached: from 6 to 10 cm in four days, 8 cm after two", () => {
    expect(reachedOn(stand(["2026-04-20", 6], ["2026-04-24", 10]), cm(8))).toEqual({
      at: at("2026-04-22"),
      knownAt: at("2026-04-24"),
    });
  });

  test("do not tell it without a smaller leaf before, or with one more than a week before", () => {
    expect(reachedOn(stand(["2026-04-24", 10]), cm(8))).toBeNull();
    expect(reachedOn(stand(["2026-04-16", 6], ["2026-04-24", 10]), cm(8))).toBeNull();
    expect(reachedOn(stand(["2026-04-20", 6], ["2026-04-24", 7]), cm(8))).toBeNull();
  });
});
