import { describe, expect, test } from "vitest";
import { catalogue } from "../../../src/farm/index.ts";
import { letters } from "../../../src/folder/crew/sentence.ts";
import {
  ACTS,
  type Act,
  CREW_LANGUAGES,
  type CrewLanguage,
  filled,
  type SentenceName,
} from "../../../src/folder/index.ts";

const { en, es } = CREW_LANGUAGES;

/** Letters of the standard alphabet of text messages, GSM 03.38, without its Greek capitals; from memory. */
const MESSAGE_LETTERS = /^[@£$¥èéùìòÇØøÅåÆæßÉ !"#¤%&'()*+,\-./0-9:;<=>?¡A-ZÄÖÑÜ§¿a-zäöñüà_]*$/u;

const holesOf = (sentence: string): readonly string[] =>
  [...sentence.matchAll(/\{(\w+)\}/gu)].map(([, hole]) => hole!).sort();

const names = Object.keys(en.sentences) as SentenceName[];

describe("English and Spanish cards", () => {
  test("have the same sentences", () => {
    expect(Object.keys(es.sentences)).toEqual(names);
  });

  test.each(names)("have the same holes in the sentence %s", (name) => {
    expect(holesOf(es.sentences[name])).toEqual(holesOf(en.sentences[name]));
  });

  test("name every cover and every crop of the catalogue", () => {
    const { covers, crops } = catalogue();
    for (const { covers: ownCovers, crops: ownCrops } of [en, es]) {
      expect(Object.keys(ownCovers)).toEqual([...covers.keys()]);
      expect(Object.keys(ownCrops)).toEqual([...crops.keys()]);
    }
  });

  test("name seven days and twelve months, with no word for two of them", () => {
    for (const { weekdays, months } of [en, es])
      expect(new Set([...weekdays, ...months].map(letters)).size).toBe(7 + 12);
  });
});

const every = ({ sentences, covers, crops, weekdays, months }: CrewLanguage): readonly string[] => [
  ...Object.values(sentences).map((sentence) => sentence.replace(/\{\w+\}/gu, "")),
  ...[covers, crops].flatMap((terms) => Object.values(terms)),
  ...weekdays,
  ...months,
];

describe.each(Object.entries(CREW_LANGUAGES))("the cards in %s", (_code, language) => {
  test("hold only letters that every text message holds", () => {
    const strange = every(language).filter((text) => !MESSAGE_LETTERS.test(filled(text, {})));
    expect(strange).toEqual([]);
  });

  test("say no two acts and no two covers alike, not even without accents", () => {
    for (const table of [language.covers, language.sentences]) {
      const told = Object.entries(table)
        .filter(([name]) => table === language.covers || name in ACTS)
        .map(([, text]) => letters(text));
      expect(new Set(told).size).toBe(told.length);
    }
  });

  test("end every act with its tunnels and every cut with its weight, where they are looked for", () => {
    for (const act of Object.keys(ACTS) as Act[]) expect(language.sentences[act]).toMatch(/: \{tunnels\}$/u);
    expect(language.sentences.cut).toMatch(/^\p{Lu}+ \{succession\} .*: \{weight\}$/u);
  });
});

test("the eñe stays, and names stay as they were typed", () => {
  expect(filled("Mañana está más frío: {who}", { who: "Río Ñandú" })).toBe("Mañana esta mas frio: Río Ñandú");
});
