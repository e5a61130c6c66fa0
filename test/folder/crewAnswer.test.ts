import { describe, expect, test } from "vitest";
import type { Farm } from "../../src/farm/index.ts";
import { NOTHING_SAID, noteWalk, walkCode } from "../../src/folder/index.ts";
import { type Instant, instantAt, type LocalDate } from "../../src/quantity/index.ts";
import { farmOf, messages } from "./fixtures.ts";

const ZONE = "America/New_York";

/** Monday, 19:00 on the farm's clock. */
const NOW: Instant = instantAt(ZONE, "2026-04-20", 19);

const farm = (units: "US" | "metric" = "US"): Farm =>
  farmOf({
    farm: `name: Willow Bend
units: ${units}
place: { latitude: 44.12, longitude: -72.84, elevation: 620 ft, zone: ${ZONE} }
walks: { morning: "7:00", evening: "18:00" }
markets:
  - { id: friday, day: Friday, picks: [{ time: "6:00" }] }
tunnels:
  - { id: T1, name: Creek 1, length: 50 ft, hoops: wire }
  - { id: T2, name: Creek 2, length: 50 ft, hoops: wire }
  - { id: T3, name: Peña (arriba), length: 50 ft, hoops: wire }
  - { id: T4, name: "Mill, old", length: 50 ft, hoops: none }
  - { id: T5, name: Casa No, length: 50 ft, hoops: wire }
`,
    successions: `id,crop,tunnel,from (ft),to (ft),sown
S01,lettuce-mix,T1,0,50,2026-02-25
S03,spinach,T2,0,20,2026-02-26
S09,mustard,T3,0,50,2026-04-22`,
    pieces: `id,cover,length (ft),count,lies on
light-60,row-cover-19,60,2,T1 T2
long-60,row-cover-19,60,2,`,
  });

const US = farm();

const answer = (text: string, at: Farm = US, now: Instant = NOW) =>
  noteWalk(text, { file: "answer.txt", numbered: true }, at, now, NOTHING_SAID);

const rowsOf = (text: string, at: Farm = US): readonly string[] => {
  const { notes, problems } = answer(text, at);
  expect(messages({ problems })).toEqual([]);
  return notes.map(({ row }) => Object.values(row).join());
};

const told = (text: string, now: Instant = NOW): readonly string[] => messages(answer(text, US, now));

const CODE = "R0420-0700";

describe("a card sent back notes at its walk", () => {
  test.each([
    ["TAKE OFF row cover 19 g: Creek 1", ["2026-04-20 07:00,cover,T1,row-cover-19 off,"]],
    ["quitar manta térmica 19 g: creek 1", ["2026-04-20 07:00,cover,T1,row-cover-19 off,"]],
    ["> QUITAR manta termica 19 g: Creek 1.", ["2026-04-20 07:00,cover,T1,row-cover-19 off,"]],
    [
      "PUT ON row cover 19 g: Creek 1 (light-60), Creek 2 (long-60)",
      ["2026-04-20 07:00,cover,T1,row-cover-19 on,", "2026-04-20 07:00,cover,T2,row-cover-19 on,"],
    ],
    ["LEVANTAR UN LADO, manta termica 19 g: Creek 2", ["2026-04-20 07:00,cover,T2,row-cover-19 vented,"]],
    [
      "QUITAR manta termica 19 g, desde hoy solo de noche: Pena (arriba)",
      ["2026-04-20 07:00,cover,T3,row-cover-19 nights,"],
    ],
    ["PONER malla sombra 40%: Casa No", ["2026-04-20 07:00,cover,T5,shade-40 on,"]],
    ["TAKE OFF row cover 19 g for the day: Creek 1", []],
    ["PONER manta termica 19 g para la noche: Creek 1", []],
    ["CUT S01 lettuce mix, Creek 1, about 22 lb: 19.5 lb", ["2026-04-20 07:00,cut,S01,19.5 lb,"]],
    ["CUT S01 lettuce mix, Creek 1, about 22 lb: 19.5__ lb", ["2026-04-20 07:00,cut,S01,19.5 lb,"]],
    ["CUT S01 lettuce mix, Creek 1, about 22 lb: __ lb 19", ["2026-04-20 07:00,cut,S01,19 lb,"]],
    [
      "CORTAR S01 lechuga mixta, Creek 1, aprox. 22 lb: 14 libras y 8 onzas",
      ["2026-04-20 07:00,cut,S01,14.5 lb,"],
    ],
    [
      "CORTAR S01 lechuga mixta, Creek 1, aprox. 22 lb: 12 lb último",
      ["2026-04-20 07:00,cut,S01,12 lb last,"],
    ],
    ["CUT S01 lettuce mix, Creek 1, about 22 lb: 12 lb last", ["2026-04-20 07:00,cut,S01,12 lb last,"]],
    ["CUT S01 lettuce mix, Creek 1, about 22 lb: __ lb", ["2026-04-20 07:00,cut,S01,,"]],
    ["CORTAR S01 lechuga mixta, Creek 1, aprox. 22 lb:", ["2026-04-20 07:00,cut,S01,,"]],
    ["CUT S01 12 lb", ["2026-04-20 07:00,cut,S01,12 lb,"]],
    ["S01 lost 20 % - slugs", ["2026-04-20 07:00,loss,S01,20 %,slugs"]],
  ])("%s", (line, rows) => {
    expect(rowsOf(`${CODE} Mon Apr 20, 7 am\n${line}`)).toEqual(rows);
  });
});

test.each([
  "If wind is over 18 mph: put NO cloth on.",
  "Wind over 18 mph: do NOT put cloth on.",
  "Snow may lie: brush it off gently before you open a bed.",
  "Puede haber nieve: sacudirla con cuidado antes de destapar.",
  "En frio hasta el mar 31 marzo, para cocinar o en manojos:",
  "Guardar en frio para el mar 31 mar, cocinar o en manojo:",
  "Para el vie 3 abr, se vende para cocinar o en manojo:",
])("what a card only tells, now or formerly, is passed over: %s", (line) => {
  expect(rowsOf(`${CODE}\n${line}\nTAKE OFF row cover 19 g: Creek 1`)).toEqual([
    "2026-04-20 07:00,cover,T1,row-cover-19 off,",
  ]);
});

describe("what was not done is not noted", () => {
  test.each([
    ["all of it deleted", ""],
    ["its tunnels deleted", "TAKE OFF row cover 19 g:"],
    ["said behind it", "TAKE OFF row cover 19 g: Creek 1 not done"],
    ["said behind it in Spanish", "QUITAR manta termica 19 g: Creek 1 (no se hizo)"],
    ["said before it", "NO: QUITAR manta termica 19 g: Creek 1, Creek 2"],
    ["said in the place of a weight", "CORTAR S01 lechuga mixta, Creek 1, aprox. 22 lb: no se hizo"],
    ["said in the place of a weight, in English", "CUT S01 lettuce mix, Creek 1, about 22 lb: no"],
  ])("%s", (_what, line) => {
    expect(rowsOf(`${CODE} Mon Apr 20, 7 am\n${line}`)).toEqual([]);
  });

  test("one tunnel deleted of several", () => {
    expect(rowsOf(`${CODE}\nQUITAR manta termica 19 g: , Creek 2`)).toEqual([
      "2026-04-20 07:00,cover,T2,row-cover-19 off,",
    ]);
  });
});

test("a card may come with the sender and the time a messenger puts before it, and with others behind it", () => {
  expect(
    rowsOf(
      "[4/20, 7:30] Ana: R0419-1800 lun 20 abr, 6 pm\nPONER manta termica 19 g: Creek 1\n\n[4/20, 7:31] Ana: R0420-0700 lun 20 abr\nQUITAR manta termica 19 g: Creek 1",
    ),
  ).toEqual(["2026-04-19 18:00,cover,T1,row-cover-19 on,", "2026-04-20 07:00,cover,T1,row-cover-19 off,"]);
});

test("a comma is a decimal one where the farm counts in kilograms", () => {
  expect(
    rowsOf(`${CODE}\nCORTAR S01 lechuga mixta, Creek 1, aprox. 10 kg: 9,5 kilos`, farm("metric")),
  ).toEqual(["2026-04-20 07:00,cut,S01,9.5 kg,"]);
});

test("a walk begun up to three hours early is noted as of now", () => {
  const early = instantAt(ZONE, "2026-04-20", 16.5);
  const { notes } = answer("R0420-1800\nTAKE OFF row cover 19 g: Creek 1", US, early);
  expect(notes.map(({ row }) => row.when)).toEqual(["2026-04-20 16:30"]);
});

test("the code of a walk is of the year it was last that day", () => {
  const january = instantAt(ZONE, "2026-01-02", 9);
  const { notes } = answer("R1231-0700\nTAKE OFF row cover 19 g: Creek 1", US, january);
  expect(notes.map(({ row }) => row.when)).toEqual(["2025-12-31 07:00"]);
});

test("the code tells month, day and clock", () => {
  expect(walkCode("2026-04-03" as LocalDate, 6.5)).toBe("R0403-0630");
});

describe("what cannot be read is told with line and column", () => {
  test.each([
    [
      "a tunnel nobody knows",
      `${CODE}\nTAKE OFF row cover 19 g: Creek 1, Crek 2`,
      'answer.txt:2 column 35: expected a tunnel, received "Crek 2" in "TAKE OFF row cover 19 g: Creek 1, Crek 2". Did you mean "Creek 2"?',
    ],
    [
      "a cover nobody knows",
      `${CODE}\nQUITAR manta termica 17 g: Creek 1`,
      'answer.txt:2 column 8: expected a cover, received "manta termica 17 g" in "QUITAR manta termica 17 g: Creek 1". Known: shade cloth 30%, shade cloth 40%, shade cloth 50%, row cover 10 g, row cover 19 g, row cover 30 g, row cover 50 g, double row cover 19 g, film without holes, film with holes, double film with holes, film with holes over row cover 19 g, insect net, malla sombra 30%, malla sombra 40%, malla sombra 50%, manta termica 10 g, manta termica 19 g, manta termica 30 g, manta termica 50 g, doble manta termica 19 g, plastico sin hoyos, plastico con hoyos, doble plastico con hoyos and 2 more.',
    ],
    [
      "a line without the code of its walk",
      "QUITAR manta termica 19 g: Creek 1",
      'answer.txt:1: expected the code of its walk above a line of a card, like R0420-0700, received none in "QUITAR manta termica 19 g: Creek 1". Copy the first line of the card too, or say when with --on.',
    ],
    [
      "a code no walk has",
      "Ana: R0431-0700",
      'answer.txt:1 column 6: expected the code of a walk, its month, day and clock, like R0420-0700, received "R0431-0700" in "Ana: R0431-0700". Copy the first line of the card again.',
    ],
    [
      "a walk still to come",
      "R0423-0700\nTAKE OFF row cover 19 g: Creek 1",
      'answer.txt:2: expected a day and hour up to now, 2026-04-20, received one still to come in "TAKE OFF row cover 19 g: Creek 1". Note it once it is done.',
    ],
    [
      "not done behind several tunnels",
      `${CODE}\nTAKE OFF row cover 19 g: Creek 1, Creek 2 not done`,
      'answer.txt:2 column 43: expected what was not done deleted, received "not done" in "TAKE OFF row cover 19 g: Creek 1, Creek 2 not done". Delete the tunnels where it was not done.',
    ],
    [
      "a tunnel without hoops",
      `${CODE}\nPUT ON row cover 19 g: T4`,
      'answer.txt:2: expected a tunnel with hoops under the cover, received Mill, old, hoops: none in "PUT ON row cover 19 g: T4". Correct the tunnel here or its hoops in farm.yaml.',
    ],
    [
      "a cut of a bed not sown yet",
      `${CODE}\nCUT S09 mustard, Pena (arriba), about 9 lb: 3 lb`,
      'answer.txt:2: expected a date from 2026-04-22 on, when S09 was sown, received 2026-04-20 in "CUT S09 mustard, Pena (arriba), about 9 lb: 3 lb". Correct the date here or in successions.csv.',
    ],
    [
      "words in the place of a weight",
      `${CODE}\nCORTAR S01 lechuga mixta, Creek 1, aprox. 22 lb: dos cajas`,
      'answer.txt:2 column 50: expected what was weighed, like 12.5 lb, or nothing, received "dos cajas" in "CORTAR S01 lechuga mixta, Creek 1, aprox. 22 lb: dos cajas". Write one weight behind the colon, and anything else on a line below.',
    ],
    [
      "a range of weights",
      `${CODE}\nCUT S01 lettuce mix, Creek 1, about 22 lb: 10-12 lb`,
      'answer.txt:2 column 44: expected what was weighed, like 12.5 lb, or nothing, received "10-12 lb" in "CUT S01 lettuce mix, Creek 1, about 22 lb: 10-12 lb". Write one weight behind the colon, and anything else on a line below.',
    ],
  ])("%s", (_what, text, problem) => {
    expect(told(text)).toEqual([problem]);
  });
});

describe("lines of an answer with nothing to note", () => {
  const card = `${CODE} Mon Apr 20, 7 am, morning\nTAKE OFF row cover 19 g: Creek 1`;

  test.each([
    ...["ok jefe", "gracias", "Todo bien, buenas tardes", "thanks chief", "all good", "¡Sí patrón, listo"],
    ...["Good morning boss", "hola, buenos dias", "thank you :)"],
  ])("are passed over and told: %s", (line) => {
    const { notes, problems, passedOver } = answer(`${line}\n${card}\n${line}`);
    expect(messages({ problems })).toEqual([]);
    expect(notes).toHaveLength(1);
    expect(passedOver.map(({ line: number, text }) => [number, text])).toEqual([
      [1, line],
      [4, line],
    ]);
  });

  test.each([
    "Creek 7 off",
    "quite la manta",
    "no se pudo",
    "cubri todo menos crek",
    "R04",
    "falta una",
    "lettuce",
    ...["not yet", "ran out of time", "didnt have time", "forgot it", "only half of it", "skipped the rest"],
    ...["se me olvidó", "solo la mitad", "todo menos el norte", "se murió todo"],
    ...[
      "ok, only half",
      "thanks but not yet",
      "gracias, pero no",
      "done with half",
      "listo?",
      "thanks :(",
      "✗",
    ],
  ])("stay problems where they could mean something: %s", (line) => {
    const { problems, passedOver } = answer(`${card}\n${line}`);
    expect(passedOver).toEqual([]);
    expect(problems.map(({ line: number }) => number)).toEqual([3]);
  });

  test("are passed over and told without the pictures phones put in", () => {
    expect(answer(`${card}\n👍🏽\nthank you 🙏`).passedOver).toEqual([{ line: 4, text: "thank you" }]);
  });

  test("stay problems where nothing comes from a card", () => {
    const { problems, passedOver } = answer("ok jefe\nS01 4 in");
    expect(passedOver).toEqual([]);
    expect(problems.map(({ line }) => line)).toEqual([1]);
  });
});
