import { describe, expect, test } from "vitest";
import type { Outcome } from "../../../src/decide/index.ts";
import { CREW_LANGUAGES } from "../../../src/folder/index.ts";
import { metre } from "../../../src/quantity/index.ts";
import { cardsOf } from "../../../src/sheet/crew/cards.ts";
import { rounds } from "../../../src/sheet/crew/instructions.ts";
import { wording } from "../../../src/sheet/crew/wording.ts";
import { crewText } from "../../../src/sheet/index.ts";
import { exampleWeek } from "../exampleWeek.ts";
import { metricSample, sample } from "../sample.ts";

const card = (text: string, code: string): string =>
  text.split("\n\n").find((each) => each.startsWith(code))!.trimEnd();

describe("a card", () => {
  test("of a frozen morning says so, in English", () => {
    expect(card(crewText(sample(), "en"), "R0423-0700")).toBe(`R0423-0700 Thu Apr 23, 7 am, morning
Frozen cloth: do NOT move it until it has thawed.
TAKE OFF row cover, 30 g (0.9 oz) for the day: North 1
TAKE OFF row cover, 30 g (0.9 oz) for the day: South 1
Copy all, delete what was NOT done, send it back.`);
  });

  test("of the same morning in Spanish, on a farm in kilograms", () => {
    expect(card(crewText(metricSample(), "es"), "R0423-0700")).toBe(`R0423-0700 jue 23 abr, 7:00, ronda de la mañana
Tela congelada: NO moverla hasta que se descongele.
QUITAR row cover, 30 g (0.9 oz) solo por el dia: North 1
QUITAR row cover, 30 g (0.9 oz) solo por el dia: South 1
Copiar todo, borrar lo que NO se hizo, mandar de regreso.`);
  });
});
