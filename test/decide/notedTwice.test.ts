import { expect, test } from "vitest";
import type { Note } from "../../src/farm/index.ts";
import { week } from "../week.ts";
import { at, bed, clear, input, leaf, piece, tunnel } from "./smallFarm.ts";

test("a piece that the notes have on two tunnels, because an off was forgotten, may lie on both", () => {
  const tunnels = [tunnel("A", 18), tunnel("B", 18)] as const;
  const successions = tunnels.map((each) => bed("lettuce-mix", each));
  const on = (id: string, day: number): Note => ({
    at: at(day, 18),
    line: 9,
    remark: "",
    kind: "cover",
    tunnel: id,
    cover: "row-cover-19",
    state: "on",
  });
  const asked = input(
    {
      tunnels,
      successions,
      pieces: [piece("20 m", "row-cover-19", 20)],
      notes: [...successions.map((each) => leaf(each, 3.5)), on("A", -3), on("B", -2)],
    },
    clear([-4, 9], [-4, 9], [-4, 9]),
  );
  const outcome = week({ ...asked, settings: { ...asked.settings, members: 8 } });
  expect(outcome.tunnels.map(({ now }) => now.length)).toEqual([1, 1]);
  expect(outcome.tunnels.map(({ gaveWay }) => gaveWay)).toEqual([[], []]);
});
