import { describe, expect, it } from "vitest";
import { type Outcome, settingKey } from "../../src/index.ts";
import { crewText, weekJson, weekText } from "../../src/sheet/index.ts";
import { faultsOf } from "../check/faults.ts";
import { week } from "../week.ts";
import { confirm } from "./recompute.ts";
import { at } from "./smallFarm.ts";
import { wetFarm } from "./wetFarm.ts";

function plan(...of: Parameters<typeof wetFarm>): Outcome {
  const outcome = week(wetFarm(...of));
  confirm(outcome);
  return outcome;
}

const onThursdayNight = ({ tunnels: [tunnel] }: Outcome): string =>
  settingKey(tunnel!.settings[tunnel!.choice[0]!]!);

const text = (outcome: Outcome): string =>
  weekText(outcome, { width: 200, unicode: false, color: false }).replace(/\s+/gu, " ");

describe("before a cut in the morning, when it rains after noon of the day before", () => {
  it("row cover comes off for the night where nothing is lost by it, and stays on in dry weather", () => {
    expect(onThursdayNight(plan(8, 0))).toBe("row-cover-30:on");
    const wet = plan(8, 6);
    expect(onThursdayNight(wet)).toBe("bare");
    expect(wet.successions[0]).toMatchObject({ fate: { kind: "pick" }, atFate: { wet: false } });
    expect(wet.tunnels[0]!.changes[0]).toMatchObject({ decidedBy: "stress" });
  });

  it("the reason says so with its own numbers", () => {
    const gained = plan(8, 6).tunnels[0]!.changes[0]!.gain.stress;
    expect(text(plan(8, 6))).toContain(
      `Why: Rain before the cut of Fri Apr 24, 0.10 in: under wet row cover the arugula (arugula in A) would be cut wet and keep worse; uncovered it dries sooner, worth $${Math.round(gained)} more.`,
    );
  });

  it("it stays on in frost, and the sheet and the crew are told to let the leaves dry", () => {
    const wet = plan(-4, 6);
    expect(onThursdayNight(wet)).toBe("row-cover-30:on");
    expect(wet.successions[0]).toMatchObject({ fate: { kind: "pick" }, atFate: { wet: true } });
    expect(text(wet)).toContain(
      "Rain will have wet row cover and leaves of the arugula (arugula in A): open early and cut when the leaves have dried.",
    );
    expect(crewText(wet, "en")).toContain("\nWet leaves: open early, cut when they have dried.\n");
    expect(crewText(wet, "es")).toContain("\nHoja mojada: destapar temprano y cortar ya que se seque.\n");
  });

  it("it stays on too where rain was foretold once and the last forecast says sun in a word", () => {
    const base = wetFarm(8, 0);
    const days = base.forecast!.days.map(({ rain: _said, ...day }) => day);
    const wetDays = days.map((day, i) => (i === 3 ? { ...day, sky: null, wet: true as const } : day));
    const planned = (forecast: NonNullable<typeof base.forecast>, earlier = [forecast]): Outcome =>
      week({ ...base, on: at(3, 17), forecast, earlier });
    const monday = { issued: at(0, 6), days: wetDays };
    expect(onThursdayNight(planned(monday))).toBe("bare");
    expect(onThursdayNight(planned({ issued: at(3, 6), days: days.slice(3) }, [monday]))).toBe(
      "row-cover-30:on",
    );
  });

  it("half a millimetre makes it wet, less does not", () => {
    const [outlet, other] = [0.9, 1.1].map((rain) => plan(8, rain).successions[0]!.basis!.outlets[0]!);
    expect([outlet!.rain < 0.5, outlet!.night]).toEqual([true, null]);
    expect([other!.rain >= 0.5, other!.night]).toEqual([true, "before"]);
  });

  it("film keeps dry what lies under it", () => {
    const under = plan(-4, 6, "film-perforated");
    expect(under.successions[0]!.basis!.outlets[0]!.added.map(({ keeps }) => keeps)).not.toContain(0.95);
    expect(under.successions[0]!.atFate!.wet).toBe(false);
  });

  it("what a wet cut is worth is recomputed from what is printed, and a changed number is noticed", () => {
    const answer = JSON.parse(weekJson(plan(-4, 6)));
    expect(faultsOf(answer)).toEqual([]);
    for (const { basis } of answer.successions)
      for (const outlet of basis.outlets) for (const each of outlet.added) each.keeps = 1;
    expect(faultsOf(answer)).toContain(
      "arugula in A at 2026-04-24 08:00: what wet leaves under row-cover-30:on",
    );
  });
});
