import { describe, expect, test } from "vitest";
import type { Outcome } from "../../src/decide/index.ts";
import { type Note, settingKey } from "../../src/farm/index.ts";
import { type IssuedSheet, readIssuedSheet } from "../../src/folder/index.ts";
import { weekJson } from "../../src/sheet/index.ts";
import type { DailyRecord } from "../../src/weather/index.ts";
import type { WeekInput } from "../../src/week.ts";
import { week } from "../week.ts";
import { at, bed, clear, input, leaf, piece, tunnel } from "./smallFarm.ts";

const own = tunnel("18 m", 18);
const young = bed("lettuce-mix", own);
const farm = { tunnels: [own], successions: [young], pieces: [piece("20 m", "row-cover-19", 20)] };
const DAYS = clear([4, 14], [4, 14], [4, 14], [-3, 12], [-3, 12], [4, 14], [4, 14]);
const LEAF = [leaf(young, 4)];

/** Few weathers: what is shown holds for any number. */
const few = (asked: WeekInput): WeekInput => ({ ...asked, settings: { ...asked.settings, members: 8 } });

const monday = week(few(input({ ...farm, notes: LEAF }, DAYS)));
const { sheet } = readIssuedSheet("sheets/monday.json", weekJson(monday));
const planned = monday.tunnels[0]!.changes.map(({ walk, to }) => [walk.at, settingKey(to)]);

/** The week as it is planned on Wednesday before the morning walk. */
const wednesday = (issued: IssuedSheet | null, notes: readonly Note[] = [], days = DAYS.slice(2)): Outcome =>
  week({
    ...few(input({ ...farm, notes: [...LEAF, ...notes] }, [...DAYS.slice(0, 2), ...days], at(2, 6.5))),
    days: days.length,
    ...(issued === null ? {} : { issued }),
  });

const told = ({ since }: Outcome) =>
  since!.changed.map(({ walk, was, is, decidedBy }) => [
    walk.at,
    settingKey(was.to),
    settingKey(is.to),
    decidedBy,
  ]);
const done = monday.tunnels[0]!.changes.filter(({ walk }) => walk.at < at(2, 6.5)).flatMap(
  ({ walk, to }): readonly Note[] => [
    {
      at: walk.at,
      line: 9,
      remark: "",
      kind: "cover",
      tunnel: own.id,
      cover: "row-cover-19",
      state: to[0]?.state ?? "off",
    },
  ],
);

describe("a week planned anew with the sheet given out", () => {
  test("has nothing to compare with where none was", () => {
    expect(wednesday(null).since).toBeNull();
  });

  test("changes nothing where nothing is otherwise", () => {
    expect(planned.length).toBeGreaterThan(0);
    const again = wednesday(sheet, done);
    expect(again.since).toMatchObject({ on: monday.on, walks: 10, changed: [], cuts: [], unnoted: [] });
    expect(again.since!.promises).toEqual(sheet!.promises);
  });

  test("tells each instruction that is new, left out or another, with what decided it", () => {
    const warm: readonly DailyRecord[] = clear(
      [4, 14],
      [4, 14],
      [9, 24],
      [10, 25],
      [10, 25],
      [10, 25],
      [10, 25],
    );
    const turned = wednesday(sheet, done, warm.slice(2));
    const { tunnels, since } = turned;
    expect(since!.changed.length).toBeGreaterThan(0);
    // Warmth brings the bed to size a week later as salad: it is no longer cut small on Friday.
    expect(monday.successions[0]!.fate).toMatchObject({ kind: "pick", as: "small", pick: { at: at(4, 6) } });
    expect(turned.successions[0]!.fate).toMatchObject({ kind: "pick", as: "salad", pick: { at: at(11, 6) } });
    expect(since!.cuts).toEqual([{ succession: young.id, was: { at: at(4, 6), as: "small" }, is: null }]);
    const now = new Map(tunnels[0]!.changes.map(({ walk, to }) => [walk.at, settingKey(to)]));
    const before = new Map(planned as [number, string][]);
    for (const [walk, was, is, decidedBy] of told(turned)) {
      expect(now.get(walk as never) ?? is).toBe(is);
      expect(before.get(walk as number) ?? was).toBe(was);
      expect(is).not.toBe(before.has(walk as number) ? was : undefined);
      expect(decidedBy).not.toBe("calm");
    }
    // What it costs to differ is no part of what the plan is worth.
    const { parts, worth } = turned.together!;
    expect(parts.calm).toBeCloseTo(-since!.price * since!.changed.length, 9);
    expect(worth).toBeCloseTo(
      parts.timing + parts.stress + parts.damage + parts.again + parts.labour + parts.orders,
      6,
    );
  });

  test("breaks no limit to keep to it, whatever a changed instruction costs", () => {
    const hot = clear([4, 14], [4, 14], [20, 36], [20, 37], [20, 37], [20, 36], [20, 36]);
    const dear = { ...input(farm, hot).farm.labour, changedInstruction: 10_000 };
    const turned = week({
      ...few(input({ ...farm, labour: dear, notes: [...LEAF, ...done] }, hot, at(2, 6.5))),
      days: 5,
      issued: sheet!,
    });
    expect(turned.together!.parts.calm).toBeLessThan(0);
    expect(turned.tunnels[0]!.gaveWay).toEqual([]);
  });

  test("asks for what was to be done before now and no note tells of", () => {
    const issued: IssuedSheet = {
      ...sheet!,
      changes: [
        {
          tunnel: own.id,
          walk: sheet!.walks[1]!,
          from: [],
          to: [{ cover: "row-cover-19", state: "on" }],
        },
        {
          tunnel: own.id,
          walk: sheet!.walks[2]!,
          from: [{ cover: "row-cover-19", state: "on" }],
          to: [],
        },
      ],
    };
    const noted = (walk: number, state: "on" | "off"): Note => ({
      at: sheet!.walks[walk]!.at,
      line: 9,
      remark: "",
      kind: "cover",
      tunnel: own.id,
      cover: "row-cover-19",
      state,
    });
    const open = (notes: readonly Note[]) =>
      wednesday(issued, notes).since!.unnoted.map(({ walk, cover, state }) => [walk.at, cover, state]);
    const [evening, morning] = [sheet!.walks[1]!.at, sheet!.walks[2]!.at];
    expect(open([])).toEqual([[evening, "row-cover-19", "on"]]);
    expect(open([noted(1, "on")])).toEqual([[morning, "row-cover-19", "off"]]);
    expect(open([noted(1, "on"), noted(2, "off")])).toEqual([]);
  });

  test("leaves a tunnel free that the sheet does not know", () => {
    const elsewhere = { ...sheet!, tunnels: [], changes: [] };
    expect(wednesday(elsewhere, done).since).toMatchObject({ walks: 0, changed: [] });
  });
});
