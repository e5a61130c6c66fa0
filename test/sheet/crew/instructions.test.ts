import { describe, expect, test } from "vitest";
import type { Layer, Setting } from "../../../src/farm/index.ts";
import { ACTS } from "../../../src/folder/index.ts";
import { milesPerHour, pounds } from "../../../src/quantity/index.ts";
import { rounds } from "../../../src/sheet/crew/instructions.ts";
import { namesOf } from "../../../src/sheet/names.ts";
import { walks } from "../../../src/sheet/walks.ts";
import { exampleWeek } from "../exampleWeek.ts";
import { sample } from "../sample.ts";
import { planned, tunnelNamed } from "./planned.ts";

describe("the rounds of a plan", () => {
  test("hold cuts with what they are for, then what comes off, then what goes on", () => {
    const [first] = rounds(sample());
    expect(first).toEqual({
      at: sample().walks[0]!.at,
      date: "2026-04-20",
      hour: 7,
      part: "morning",
      cautions: [{ kind: "windLimit", limit: milesPerHour(15) }],
      instructions: [
        {
          kind: "cut",
          purpose: "coldSalad",
          market: "2026-04-25",
          beds: [{ succession: "S4", crop: "spinach", tunnel: "n1", expected: pounds(15) }],
        },
        {
          kind: "cover",
          act: "offNights",
          state: "nights",
          cover: "row-30",
          places: [{ tunnel: "s1", pieces: [] }],
        },
        {
          kind: "cover",
          act: "on",
          state: "on",
          cover: "shade-40",
          places: [{ tunnel: "n1", pieces: [] }],
        },
      ],
    });
  });

  test("are those of the sheet: as many things to do at each walk, and as many cuts", async () => {
    for (const outcome of [await exampleWeek(), sample()]) {
      const blocks = walks(outcome, namesOf(outcome.farm, outcome.successions));
      const all = rounds(outcome).flatMap(({ instructions }) => instructions);
      const covers = all.flatMap((each) => (each.kind === "cover" ? each.places : []));
      const cuts = all.flatMap((each) => (each.kind === "cut" ? each.beds : []));
      const steps = blocks.flatMap(({ tasks }) => tasks.flatMap(({ short }) => short));
      expect([covers.length, cuts.length]).toEqual([
        steps.length,
        blocks.flatMap((block) => block.cuts).length,
      ]);
    }
  });

  test("leave out no way to get from one state of a cloth to another", () => {
    const states = ["on", "vented", "nights"] as const;
    const settings: readonly Setting[] = [
      [],
      ...states.map((state): readonly Layer[] => [{ cover: "row-cover-19", state }]),
    ];
    const acts = new Set<string>();
    for (const walk of [2, 3])
      for (const from of settings)
        for (const to of settings) {
          const [asked] = rounds(planned(walk, [{ tunnel: tunnelNamed("X", "Creek"), from, to }]))
            .filter(({ part }) => part !== "cutting")
            .filter(({ at }) => at === sample().walks[walk]!.at)
            .flatMap(({ instructions }) => instructions.filter(({ kind }) => kind === "cover"));
          const nothing = from === to && to[0]?.state !== "nights";
          expect(asked === undefined).toBe(nothing);
          if (asked?.kind !== "cover") continue;
          acts.add(asked.act);
          if (from !== to) expect(asked.state).toBe(to[0]?.state ?? "off");
          else expect(asked.state).toBeNull();
        }
    expect([...acts].sort()).toEqual(Object.keys(ACTS).sort());
  });
});
