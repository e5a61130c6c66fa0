import { describe, expect, test } from "vitest";
import type { Outcome } from "../../../src/decide/index.ts";
import { ACTS, type Act, CREW_LANGUAGES, type CrewLanguageCode, filled } from "../../../src/folder/index.ts";
import { instantAt } from "../../../src/quantity/index.ts";
import { rounds } from "../../../src/sheet/crew/instructions.ts";
import { wording } from "../../../src/sheet/crew/wording.ts";
import { crewText } from "../../../src/sheet/index.ts";
import { exampleWeek } from "../exampleWeek.ts";
import { metricSample, sample } from "../sample.ts";
import { planned, tunnelNamed } from "./planned.ts";

const example = exampleWeek();

const LANGUAGES = Object.keys(CREW_LANGUAGES) as CrewLanguageCode[];

const cards = (text: string): readonly string[] => text.trimEnd().split("\n\n");

const PURPOSES = ["salad", "braising", "small", "coldSalad", "coldBraising", "coldSmall"] as const;
const HEADINGS = ["morning", "evening", "cutting", "morningOf", "eveningOf", "cuttingOf"] as const;

const card = (text: string, code: string): string => cards(text).find((each) => each.startsWith(code))!;

const shade = { cover: "shade-40", state: "on" } as const;

/** Shade goes on twelve tunnels at the third walk, a Tuesday morning. */
const longWalk = (): Outcome =>
  planned(
    2,
    Array.from({ length: 24 }, (_, i) => ({
      tunnel: tunnelNamed(`X${i}`, `Long Meadow ${i + 1}`),
      from: [],
      to: [shade],
    })),
  );

describe("a card", () => {
  test("of a frozen morning says so, in English", () => {
    expect(card(crewText(sample(), "en"), "R0423-0700")).toBe(`R0423-0700 Thu Apr 23, 7 am, morning
Frozen cloth: do NOT move it until it has thawed.
TAKE OFF row cover, 30 g (0.9 oz) for the day: North 1
TAKE OFF row cover, 30 g (0.9 oz) for the day: South 1
Copy all, delete what was NOT done, send it back.`);
  });

  test("of the same morning in Spanish, on a farm in kilograms", () => {
    expect(
      card(crewText(metricSample(), "es"), "R0423-0700"),
    ).toBe(`R0423-0700 jue 23 abr, 7:00, ronda de la mañana
Tela congelada: NO moverla hasta que se descongele.
QUITAR row cover, 30 g (0.9 oz) solo por el dia: North 1
QUITAR row cover, 30 g (0.9 oz) solo por el dia: South 1
Copiar todo, borrar lo que NO se hizo, mandar de regreso.`);
  });

  test("of a walk with too much wind forbids to put cloth on, with the wind that is expected", () => {
    const { walks, ...rest } = sample();
    const windy = { ...rest, walks: walks.map((walk) => ({ ...walk, tooWindy: true })) };
    expect(card(crewText(windy, "en"), "R0420-1800")).toBe(`R0420-1800 Mon Apr 20, 6 pm, evening
WIND of 5 mph expected: do NOT put cloth on.
PUT ON row cover, 30 g (0.9 oz) for the night: South 1
Copy all, delete what was NOT done, send it back.`);
    expect(card(crewText(windy, "es"), "R0420-1800").split("\n")[1]).toBe(
      "Se espera VIENTO de 5 millas/hora: NO tapar.",
    );
  });

  test.each([
    [9, "en", "Frozen leaves: do NOT cut or touch before 9 am."],
    [12, "es", "Hoja congelada: NO cortar ni tocar antes de las 12 del dia."],
    [13, "es", "Hoja congelada: NO cortar ni tocar antes de la 1 pm."],
    [null, "en", "Frozen leaves: do NOT cut or touch until they thaw."],
    [null, "es", "Hoja congelada: NO cortar ni tocar hasta que descongele."],
  ] as const)("of leaves frozen until %s forbids to cut them, in %s", (hour, language, line) => {
    const outcome = sample();
    const thaw = hour === null ? null : instantAt(outcome.farm.place.zone, "2026-04-24", hour);
    const successions = outcome.successions.map((outlook) => ({
      ...outlook,
      atFate: outlook.atFate === null ? null : { ...outlook.atFate, frozen: true, thaw },
    }));
    // Its hour is the one from which it may be cut.
    const code = `R0424-${String(hour ?? 6).padStart(2, "0")}00`;
    expect(card(crewText({ ...outcome, successions }, language), code).split("\n")[1]).toBe(line);
  });

  describe.each(["en", "es"] as const)("that only cuts where snow may lie, in %s", (language) => {
    const line = {
      en: "Snow may lie: brush it off gently before you open a bed.",
      es: "Puede haber nieve: sacudirla con cuidado antes de destapar.",
    }[language];
    const snowy = (atFate: Partial<NonNullable<Outcome["successions"][number]["atFate"]>> = {}): Outcome => {
      const outcome = sample();
      return {
        ...outcome,
        tunnels: [],
        walks: outcome.walks.map((walk) => ({ ...walk, snow: true })),
        successions: outcome.successions.map((outlook) => ({
          ...outlook,
          atFate: outlook.atFate === null ? null : { ...outlook.atFate, ...atFate },
        })),
      };
    };

    test("says so, at a walk and at an hour of its own", () => {
      for (const code of ["R0420-0700", "R0424-0600"])
        expect(card(crewText(snowy(), language), code).split("\n")[1]).toBe(line);
      expect(crewText({ ...sample(), tunnels: [] }, language)).not.toContain(line);
    });

    test("keeps to six lines where leaves are wet and frozen too", () => {
      for (const each of cards(crewText(snowy({ wet: true, frozen: true, thaw: null }), language))) {
        expect(each.split("\n")[1]).toBe(line);
        expect(each.split("\n").length).toBeLessThanOrEqual(6);
      }
    });
  });

  test("groups tunnels by what is done with which cloth", () => {
    const asked = ["Creek 1", "Creek 2", "Alder 1"].map((name, i) => ({
      tunnel: tunnelNamed(`X${i}`, name),
      from: [{ cover: "row-cover-19", state: "on" as const }],
      to: i === 2 ? [] : [shade],
    }));
    expect(card(crewText(planned(2, asked), "en"), "R0421-0700")).toBe(`R0421-0700 Tue Apr 21, 7 am, morning
If wind is over 15 mph: put NO cloth on.
TAKE OFF row cover 19 g: Creek 1, Creek 2, Alder 1
PUT ON shade cloth 40%: Creek 1, Creek 2
Copy all, delete what was NOT done, send it back.`);
  });

  test("names the piece where the farm has several of that cloth", () => {
    const { farm } = sample();
    const [like] = farm.pieces;
    const pieces = ["light-60", "light-110"].map((id) => ({ ...like!, id, cover: "row-cover-19" }));
    const on = [{ cover: "row-cover-19", state: "on" as const }];
    const asked = [{ tunnel: tunnelNamed("X1", "Creek 1"), from: [], to: on, pieces: [pieces[1]!] }];
    expect(crewText(planned(2, asked, { pieces }), "es")).toContain(
      "\nPONER manta termica 19 g: Creek 1 (light-110)\n",
    );
  });

  test("goes by ids where two tunnels have one name", () => {
    const asked = ["X1", "X2"].map((id) => ({ tunnel: tunnelNamed(id, "Creek"), from: [shade], to: [] }));
    expect(crewText(planned(2, asked), "en")).toContain("\nTAKE OFF shade cloth 40%: X1, X2\n");
  });
});

test("the longest lines of purpose and heading hold sixty letters", () => {
  const longest = { code: "R0331-0700", card: "1", cards: "9", hour: "10:30 am" };
  for (const { sentences, weekdays, months } of Object.values(CREW_LANGUAGES))
    for (const month of months) {
      const day = filled(sentences.dayUS, { weekday: filled(weekdays[3]!, {}), month, number: "30" });
      for (const name of [...PURPOSES, ...HEADINGS])
        expect(filled(sentences[name], { ...longest, day }).length).toBeLessThanOrEqual(60);
    }
});

describe.each(LANGUAGES)("cards in %s", (language) => {
  test("have at most six lines of at most sixty letters, and end with how to answer", async () => {
    const { reply, replyWithWeight } = CREW_LANGUAGES[language].sentences;
    const ends = [filled(reply, {}), filled(replyWithWeight, {})];
    for (const outcome of [await example, longWalk()])
      for (const lines of cards(crewText(outcome, language)).map((each) => each.split("\n"))) {
        expect(lines.length).toBeLessThanOrEqual(6);
        expect(lines.filter((line) => line.length > 60)).toEqual([]);
        expect(ends).toContain(lines.at(-1));
      }
  });

  test("are numbered where a walk has more than one, and lose none of its tunnels", () => {
    const outcome = longWalk();
    const all = cards(crewText(outcome, language)).filter((each) => each.startsWith("R0421-0700"));
    expect(all.map((each) => /\((\d\/\d)\)/u.exec(each)?.[1])).toEqual(
      all.map((_, i) => `${i + 1}/${all.length}`),
    );
    const told = all.flatMap((each) => each.match(/Long Meadow \d+/gu) ?? []);
    expect(told).toEqual(outcome.tunnels.map(({ tunnel }) => tunnel.name));
  });

  test("stay under 72 letters a line also in the rarest acts", () => {
    const { sentences, covers } = CREW_LANGUAGES[language];
    const cover = filled(covers["row-cover-19"]!, {});
    const long = (Object.keys(ACTS) as Act[]).filter(
      (act) => filled(sentences[act], { cover, tunnels: "Creek 10" }).length >= 72,
    );
    expect(long).toEqual([]);
  });

  test("say when there is nothing to do, and when there is no plan", () => {
    const idle = { ...sample(), tunnels: [], successions: [] };
    const { nothing, noPlan } = CREW_LANGUAGES[language].sentences;
    expect(crewText(idle, language)).toBe(`${filled(nothing, {})}\n`);
    expect(crewText({ ...idle, walks: [] }, language)).toBe(`${filled(noPlan, {})}\n`);
  });
});

/** What of an instruction is no matter of language: tunnels, beds, and every number. */
test("English and Spanish tell the same list of instructions with the same numbers", async () => {
  for (const outcome of [await example, sample(), longWalk()]) {
    const { farm } = outcome;
    const ids = [...farm.tunnels.map(({ name }) => name), ...farm.successions.map(({ id }) => id)];
    const told = (language: CrewLanguageCode) => {
      const words = wording(farm, CREW_LANGUAGES[language]);
      const marks = (text: string) => ({
        names: ids.filter((id) => text.includes(id)),
        numbers: [...new Set(text.match(/\d+(?:\.\d+)?/gu))].sort(),
      });
      return rounds(outcome).map(({ instructions, cautions }) => [
        ...cautions.map((caution) => marks(words.caution(caution))),
        ...instructions.map((instruction) =>
          marks(
            words
              .lines(instruction)
              .flatMap(({ above, line }) => [above ?? "", line])
              .join(" "),
          ),
        ),
      ]);
    };
    expect(told("es")).toEqual(told("en"));
    expect(told("en").flat().length).toBeGreaterThan(0);
  }
});
