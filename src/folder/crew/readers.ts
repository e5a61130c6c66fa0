import type { Farm } from "../../farm/index.ts";
import { ACTS, type Act, type CrewLanguage, type SentenceName } from "./language.ts";
import { anyOf, letters, sentenceBody, sentencePattern } from "./sentence.ts";
import { type CrewTerms, nameKey } from "./terms.ts";

/** A line of a card as it was sent back: an act with what is said of cover and tunnels, a cut with what is said of its weight, or one that only tells. */
export type CardLine =
  | { readonly kind: "cover"; readonly act: Act; readonly cover: string; readonly tunnels: string }
  | { readonly kind: "coverUnknown"; readonly cover: string }
  | { readonly kind: "cut"; readonly succession: string; readonly weight: string }
  | { readonly kind: "cutUnknown" }
  | { readonly kind: "told" };

/** Names as they are compared, each with its id. */
export type Ids = ReadonlyMap<string, string>;

export const idsByName = (names: ReadonlyMap<string, string>): Ids =>
  new Map([...names].map(([id, name]) => [nameKey(name), id]));

/** Sentences that only tell. Headings are known by their code. */
const TOLD: readonly SentenceName[] = [
  ...["salad", "braising", "small", "coldSalad", "coldBraising", "coldSmall"],
  ...["windLimit", "windExpected", "frozenCloth", "snowOnCloth", "snowOnBeds", "wetLeaves", "frozenLeaves"],
  ...["frozenLeavesUntil", "frozenLeavesUntilOne"],
  ...["reply", "replyWithWeight", "nothing", "noPlan"],
] as const satisfies readonly SentenceName[];

/** What may stand in the holes of sentences that only tell. */
function tellingHoles({
  sentences,
  weekdays,
  months,
  formerly,
}: CrewLanguage): Readonly<Record<string, string>> {
  const either = (names: readonly SentenceName[], holes: Readonly<Record<string, string>>): string =>
    names.map((name) => sentenceBody(sentences[name], holes)).join("|");
  const wind = either(["mph", "kmh"], { number: "\\d+" });
  return {
    day: either(["dayUS", "dayMetric"], {
      weekday: anyOf(weekdays),
      month: anyOf([...months, ...formerly.months]),
      number: "\\d{1,2}",
    }),
    hour: either(["am", "pm", "clock", "noon", "midnight"], { hour: "\\d{1,2}(?::\\d\\d)?" }),
    wind,
    limit: wind,
    expected: either(["lb", "kg"], { number: "\\d+(?:\\.\\d+)?" }),
  };
}

/** Reads lines of cards in one language; text in small letters without accents. null: no line of a card. */
export function cardReader(
  { successions }: Pick<Farm, "successions">,
  language: CrewLanguage,
  terms: CrewTerms,
): (text: string) => CardLine | null {
  const { sentences } = language;
  const covers = idsByName(terms.covers);
  const beds: Ids = new Map(successions.map(({ id }) => [nameKey(id), id]));
  const holes = tellingHoles(language);
  const acts = (cover: string) =>
    (Object.keys(ACTS) as Act[]).map((act) => ({
      act,
      pattern: sentencePattern(sentences[act], { cover: `(?<cover>${cover})`, tunnels: "(?<tunnels>.*)" }),
    }));
  const [strict, loose] = [acts(anyOf([...covers.keys()])), acts(".+?")];
  const cut = sentencePattern(sentences.cut, {
    ...holes,
    succession: `(?<succession>${anyOf([...beds.keys()])})`,
    weight: "(?<weight>.*)",
  });
  const cutBegins = letters(sentences.cut.slice(0, sentences.cut.indexOf("{")));
  const told = [...TOLD.map((name) => sentences[name]), ...language.formerly.sentences].map((sentence) =>
    sentencePattern(sentence, holes),
  );
  return (text) => {
    for (const { act, pattern } of strict) {
      const { cover = "", tunnels = "" } = pattern.exec(text)?.groups ?? {};
      const id = covers.get(cover.replace(/\s+/gu, " "));
      if (id !== undefined) return { kind: "cover", act, cover: id, tunnels };
    }
    const { succession, weight: filled = "" } = cut.exec(text)?.groups ?? {};
    if (succession !== undefined)
      return { kind: "cut", succession: beds.get(succession.replace(/\s+/gu, " "))!, weight: filled };
    if (told.some((pattern) => pattern.test(text))) return { kind: "told" };
    const unknown = loose.map(({ pattern }) => pattern.exec(text)?.groups?.cover).find((cover) => cover);
    if (unknown !== undefined) return { kind: "coverUnknown", cover: unknown };
    return text.startsWith(cutBegins) ? { kind: "cutUnknown" } : null;
  };
}
