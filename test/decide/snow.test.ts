import { describe, expect, it } from "vitest";
import { breachesAt, type Lay, movesOf, type Outcome, type TunnelProblem } from "../../src/decide/index.ts";
import type { Note, Setting } from "../../src/farm/index.ts";
import { crewText, weekJson, weekText } from "../../src/sheet/index.ts";
import type { DailyRecord } from "../../src/weather/index.ts";
import { faultsOf } from "../check/faults.ts";
import { week } from "../week.ts";
import { A, ARUGULA, frostyFarm } from "./frostyFarm.ts";
import { confirm } from "./recompute.ts";
import { at, clear, leaf, piece } from "./smallFarm.ts";

/** Two days about freezing, and from the third morning on heat under row cover. */
const COLD_THEN_HOT = clear([3, 13], [2, 10], [-1, 1], [0, 1], [1, 24], [8, 26], [9, 27]);

/** Rain, or snow as water, on the days about freezing. [mm] */
const falling = (water: number): readonly DailyRecord[] =>
  COLD_THEN_HOT.map((day, i) => (i === 2 || i === 3 ? { ...day, rain: water } : day));

/** The cloth as it was noted on the first morning. */
const noted = (state: "on" | "nights"): Note => ({
  at: at(0, 6),
  line: 3,
  remark: "",
  kind: "cover",
  tunnel: "A",
  cover: "row-cover-30",
  state,
});

function plan(days: readonly DailyRecord[], state: "on" | "nights" = "on"): Outcome {
  const outcome = week(
    frostyFarm(
      {
        tunnels: [A],
        successions: [ARUGULA],
        notes: [leaf(ARUGULA, 8), noted(state)],
        pieces: [piece("heavy", "row-cover-30", 16, ["A"])],
      },
      days,
    ),
  );
  confirm(outcome);
  return outcome;
}

const movedAt = ({ tunnels }: Outcome): readonly string[] =>
  tunnels.flatMap(({ changes }) => changes.map(({ walk }) => `${walk.date} ${walk.part}`));
const said = (outcome: Outcome): string =>
  weekText(outcome, { width: 200, unicode: false, color: false }).replace(/\s+/gu, " ");
const snowAt = ({ walks }: Outcome): readonly string[] =>
  walks.filter(({ snow }) => snow).map(({ date, part }) => `${date} ${part}`);

describe("under snow", () => {
  const [open, snowy] = [plan(falling(0)), plan(falling(15))];

  it("no lying cloth is moved: what would come off on a morning of snow comes off before it falls", () => {
    expect(movedAt(open)).toEqual(["2026-04-24 morning"]);
    expect(snowAt(open)).toEqual([]);
    expect(snowAt(snowy)).toEqual([
      "2026-04-22 morning",
      "2026-04-22 evening",
      "2026-04-23 morning",
      "2026-04-23 evening",
      "2026-04-24 morning",
      "2026-04-24 evening",
    ]);
    expect(movedAt(snowy)).toEqual(["2026-04-21 evening"]);
    expect(snowy.tunnels[0]!.gaveWay).toEqual([]);
  });

  it("not even a round of a rhythm is walked: the cloth stays where the snow found it", () => {
    const outcome = plan(falling(15), "nights");
    expect(outcome.tunnels[0]!.gaveWay).toEqual([]);
    const [tunnel] = outcome.tunnels;
    const under = outcome.walks.filter(({ snow, part }) => snow && part === "morning");
    expect(under.length).toBeGreaterThan(0);
    for (const { index } of under)
      expect(tunnel!.settings[tunnel!.choice[index]!]!.some(({ state }) => state === "nights")).toBe(false);
  });

  it("a plan that moves it all the same is found out", () => {
    const answer = JSON.parse(weekJson(snowy));
    expect(answer.walks.filter(({ snow }: { snow: boolean }) => snow)).toHaveLength(6);
    for (const walk of answer.walks) walk.snow = true;
    expect(faultsOf(answer)).toContain("planned A limits:  told, snow recomputed");
  });

  it("sheet and crew are told of it where there is something to do", () => {
    const walks = open.walks.map((walk) => ({ ...walk, snow: true }));
    const changes = open.tunnels[0]!.changes.map((change) => ({
      ...change,
      walk: walks[change.walk.index]!,
    }));
    const told: Outcome = { ...open, walks, tunnels: [{ ...open.tunnels[0]!, changes, gaveWay: ["snow"] }] };
    const text = said(told);
    expect(text).toContain(
      "Snow may lie: brush it off gently before you open a bed, and drag no cloth from under it.",
    );
    expect(text).toContain(
      "A: cloth has to be moved while snow lies: at every other walk in time it does too, you keep the tunnel as it is, or your minutes or changes a week are used up. Brush it off gently first, and drag nothing from under it.",
    );
    expect(crewText(told, "en")).toContain(
      "\nSnow: do NOT drag cloth from under it, brush it off gently.\nTAKE OFF row cover 30 g: A\n",
    );
    expect(crewText(told, "es")).toContain("\nNieve: NO jalar la tela de abajo, sacudirla con cuidado.\n");
  });
});

describe("frozen cloth", () => {
  const COVER = { cover: "row-cover-30", state: "nights" } as const;
  const NET = { cover: "net", state: "on" } as const;
  const SHADE = { cover: "shade-40", state: "on" } as const;
  const settings: readonly Setting[] = [[COVER], [COVER, SHADE], [NET, COVER], [], [NET]];
  const lays = settings.map((layers, setting) => ({
    setting,
    taken: layers.map(({ cover }) => ({ cover, piece: cover, over: ["A"] })),
  })) as unknown as readonly Lay[];
  const moves = { day: movesOf(frostyFarm().farm, A, settings, lays, "day") };

  /** Limits broken at a frozen morning walk by going from one lay to another. */
  const broken = (frozenThrough: boolean, from: number, to: number): readonly string[] =>
    breachesAt(
      {
        lays,
        parts: ["day"],
        windy: [false],
        frozen: [true],
        frozenThrough: [frozenThrough],
        snow: [false],
        moves,
      } as unknown as TunnelProblem,
      0,
      from,
      to,
    );

  it("keeps a change from its walk that takes off what would have stayed", () => {
    expect(broken(false, 2, 0)).toEqual(["frozen"]);
    expect(broken(false, 4, 3)).toEqual(["frozen"]);
  });

  it("lets a round wait, also where another cloth comes beside it or the cover stays off", () => {
    for (const to of [0, 1, 2, 3]) expect(broken(false, 0, to)).toEqual([]);
    expect(broken(false, 2, 4)).toEqual([]);
  });

  it("keeps a round from a walk after which it does not thaw before the next one", () => {
    for (const to of [0, 1, 2, 3]) expect(broken(true, 0, to)).toEqual(["frozen"]);
    expect(broken(true, 4, 4)).toEqual([]);
  });
});

describe("snow that is foretold", () => {
  it("is warned of where hoops stand covered", () => {
    const kept = clear([3, 13], [-2, 6], [-4, 0], [-3, 8]).map((day, i) =>
      i === 2 ? { ...day, rain: 12 } : day,
    );
    const warned = plan(kept).warnings.filter(({ kind }) => kind === "snow");
    expect(warned).toEqual([
      { kind: "snow", severity: "care", date: "2026-04-22", water: 12, depth: 12, tunnels: ["A"] },
    ]);
    expect(said(plan(kept))).toContain(
      "Snow on Wed Apr 22 (roughly 5 in of new snow). A stands covered then: light hoops and wire may give way under wet snow. Brush it off gently before it piles up, if that is safe, and drag no cloth from under it. What is known at your place comes first.",
    );
  });

  it("is warned of only as far as it has not fallen yet", () => {
    const warned = (water: number) => {
      const days = clear([3, 13], [-2, 6], [-4, 0], [-3, 8]).map((day, i) =>
        i === 2 ? { ...day, rain: water } : day,
      );
      const base = frostyFarm(
        {
          tunnels: [A],
          successions: [ARUGULA],
          notes: [leaf(ARUGULA, 8), noted("on")],
          pieces: [piece("heavy", "row-cover-30", 16, ["A"])],
        },
        days,
      );
      return week({ ...base, on: at(2, 18) }).warnings.filter(({ kind }) => kind === "snow");
    };
    expect(warned(12)).toMatchObject([{ date: "2026-04-22", water: expect.closeTo(3, 9), tunnels: ["A"] }]);
    expect(warned(3)).toEqual([]);
  });

  it("is not warned of where nothing stands covered", () => {
    expect(plan(falling(15)).warnings.some(({ kind }) => kind === "snow")).toBe(false);
  });
});
