import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Outcome } from "../../../src/decide/index.ts";
import { catalogue, type Layer, type Setting, settingOf } from "../../../src/farm/index.ts";
import {
  CREW_LANGUAGES,
  type CrewLanguageCode,
  NOTHING_SAID,
  noteWalk,
  type WalkNote,
} from "../../../src/folder/index.ts";
import { HOUR, type Instant, localDate, localHour, pounds } from "../../../src/quantity/index.ts";
import { cardsOf } from "../../../src/sheet/crew/cards.ts";
import { type Round, rounds } from "../../../src/sheet/crew/instructions.ts";
import { wording } from "../../../src/sheet/crew/wording.ts";
import { exampleWeek } from "../exampleWeek.ts";
import { metricSample, sample } from "../sample.ts";
import { type Asked, planned, tunnelNamed } from "./planned.ts";

const example = exampleWeek();

const LANGUAGES = Object.keys(CREW_LANGUAGES) as CrewLanguageCode[];

/** The cards of a round as they are pasted. */
const pasted = (round: Round, { farm }: Outcome, language: CrewLanguageCode): string =>
  cardsOf(round, wording(farm, CREW_LANGUAGES[language]))
    .map((lines) => lines.join("\n"))
    .join("\n\n");

/** What an answer notes, on a farm that has no notes yet, a week after the walks. */
function answered(text: string, { farm, walks }: Outcome): readonly WalkNote[] {
  const now = (walks.at(-1)!.at + 48 * HOUR) as Instant;
  const source = { file: "answer.txt", numbered: true };
  const { notes, problems } = noteWalk(text, source, { ...farm, notes: [] }, now, NOTHING_SAID);
  expect(problems).toEqual([]);
  expect(notes.filter(({ already }) => already)).toEqual([]);
  return notes;
}

const stateIn = (setting: Setting, cover: string): string =>
  setting.find((layer) => layer.cover === cover)?.state ?? "off";

/** What the plan changes at a moment, straight from the plan: its covers before and after, and its cuts. */
function changed(at: Instant, { tunnels, successions }: Outcome): readonly string[] {
  const covers = tunnels.flatMap((plan) =>
    plan.changes
      .filter(({ walk }) => walk.at === at)
      .flatMap(({ from, to }) =>
        [...new Set([...from, ...to].map(({ cover }) => cover))]
          .filter((cover) => stateIn(from, cover) !== stateIn(to, cover))
          .map((cover) => `${plan.tunnel.id} ${cover} ${stateIn(to, cover)}`),
      ),
  );
  const cuts = successions.flatMap(({ succession, fate, atFate }) =>
    (fate.kind === "pick" && fate.pick.planned && (atFate?.thaw ?? fate.pick.at) === at) ||
    (fate.kind === "hold" && fate.cut === at)
      ? [`${succession.id} cut`]
      : [],
  );
  return [...covers, ...cuts].sort();
}

const told = (notes: readonly WalkNote[]): readonly string[] =>
  notes
    .map(({ note }) =>
      note.kind === "cover"
        ? `${note.tunnel} ${note.cover} ${note.state}`
        : `${"succession" in note ? note.succession : ""} ${note.kind}`,
    )
    .sort();

/** Every round of a plan, answered unchanged, notes what the plan changes then and nothing else, at that moment. */
function comesBack(outcome: Outcome, language: CrewLanguageCode): void {
  for (const round of rounds(outcome)) {
    const notes = answered(pasted(round, outcome, language), outcome);
    expect(told(notes)).toEqual(changed(round.at, outcome));
    expect(notes.every(({ note }) => note.at === round.at)).toBe(true);
  }
}

describe.each(LANGUAGES)("cards in %s, pasted unchanged", (language) => {
  test("note exactly what each walk of the example changes", async () => {
    const outcome = await example;
    expect(rounds(outcome).length).toBeGreaterThanOrEqual(5);
    comesBack(outcome, language);
  });

  test("note exactly what each walk of the sample changes, in pounds and in kilograms", () => {
    comesBack(sample(), language);
    comesBack(metricSample(), language);
  });

  test("all at once note the whole plan", async () => {
    const outcome = await example;
    const text = rounds(outcome)
      .map((round) => pasted(round, outcome, language))
      .join("\n\n");
    expect(told(answered(text, outcome))).toEqual(
      rounds(outcome)
        .flatMap(({ at }) => changed(at, outcome))
        .sort(),
    );
  });

  test("bring weights that were filled in", async () => {
    const outcome = await example;
    const round = rounds(outcome).at(-1)!;
    const notes = answered(pasted(round, outcome, language).replaceAll("__", "13.5"), outcome);
    expect(notes.length).toBeGreaterThan(0);
    expect(notes.map(({ note }) => (note.kind === "cut" ? note.weight : null))).toEqual(
      notes.map(() => pounds(13.5)),
    );
  });

  test("with one line deleted note everything but that line", async () => {
    const outcome = await example;
    for (const round of rounds(outcome)) {
      const lines = pasted(round, outcome, language).split("\n");
      const whole = told(answered(lines.join("\n"), outcome));
      lines.forEach((line, i) => {
        if (/R\d{4}-\d{4}/u.test(line)) return;
        const alone = told(answered(`${lines[0]!}\n${line}`, outcome));
        const without = told(answered(lines.filter((_, k) => k !== i).join("\n"), outcome));
        expect([...alone, ...without].sort()).toEqual(whole);
      });
    }
  });

  test("note exactly what is changed, whatever lies on tunnels of whatever name", () => {
    const covers = [...catalogue().covers.keys()];
    const layer = fc.record({
      cover: fc.constantFrom(...covers.slice(0, 6)),
      state: fc.constantFrom<Layer["state"]>("on", "vented", "nights"),
    });
    const setting = fc.uniqueArray(layer, { maxLength: 2, selector: ({ cover }) => cover }).map(settingOf);
    const name = fc
      .array(fc.constantFrom(..."ab1 2,.()-'&ñÉ:;no".split("")), { minLength: 1, maxLength: 12 })
      .map((letters) => letters.join("").trim())
      .filter((text) => /[\p{L}\p{N}]/u.test(text));
    const asked = fc
      .uniqueArray(fc.record({ name, from: setting, to: setting }), {
        minLength: 1,
        maxLength: 9,
        selector: ({ name: text }) => text,
      })
      .map((all) =>
        all.map(({ name: text, from, to }, i): Asked => ({ tunnel: tunnelNamed(`X${i}`, text), from, to })),
      );
    fc.assert(
      fc.property(asked, fc.constantFrom(2, 3), (all, walk) => comesBack(planned(walk, all), language)),
      { numRuns: 80, seed: 20260420 },
    );
  });
});

test("the moment of a card is that of its code", async () => {
  const { farm, ...outcome } = await example;
  for (const { at, date, hour } of rounds({ farm, ...outcome }))
    expect([date, hour]).toEqual([localDate(farm.place.zone, at), localHour(farm.place.zone, at)]);
});
