import type { Outcome } from "../../decide/index.ts";
import { CREW_LANGUAGES, type CrewLanguageCode } from "../../folder/index.ts";
import { concerns, type Instruction, type Round, rounds } from "./instructions.ts";
import { type Wording, wording } from "./wording.ts";

/** Lines of the longest card. */
const LINES = 6;

/** A line of work with what must be told with it. */
interface Work {
  readonly kind: Instruction["kind"];
  /** The purpose of a cut; told once above those it holds for. */
  readonly above: string | null;
  readonly line: string;
  readonly cautions: readonly string[];
}

/** The work of a round, line by line, each with the cautions it needs. */
const workOf = ({ instructions, cautions }: Round, words: Wording): readonly Work[] =>
  instructions.flatMap((instruction) =>
    words.lines(instruction).map(({ above, line }) => ({
      kind: instruction.kind,
      above,
      line,
      cautions: cautions.filter((each) => concerns(each, instruction)).map(words.caution),
    })),
  );

/** Lines between the heading and the reply. */
const bodyOf = (works: readonly Work[]): readonly string[] => [
  ...new Set(works.flatMap(({ cautions }) => cautions)),
  ...works.flatMap(({ above, line }, i) =>
    above === null || above === works[i - 1]?.above ? [line] : [above, line],
  ),
];

/** Work on as few cards as hold it, in its order. */
function dealt(works: readonly Work[]): readonly (readonly Work[])[] {
  const cards: Work[][] = [];
  for (const work of works) {
    const last = cards.at(-1);
    if (last !== undefined && bodyOf([...last, work]).length <= LINES - 2) last.push(work);
    else cards.push([work]);
  }
  return cards;
}

/** The cards of one round, each the lines of one message. */
export function cardsOf(round: Round, words: Wording): readonly (readonly string[])[] {
  const cards = dealt(workOf(round, words));
  return cards.map((works, i) => [
    words.heading(round, i + 1, cards.length),
    ...bodyOf(works),
    words.reply(works.some(({ kind }) => kind === "cut")),
  ]);
}

/** Every walk as a message for a phone, to be sent back with what was not done deleted; an empty line between two. */
export function crewText(outcome: Outcome, language: CrewLanguageCode): string {
  const words = wording(outcome.farm, CREW_LANGUAGES[language]);
  if (outcome.walks.length === 0) return `${words.alone("noPlan")}\n`;
  const cards = rounds(outcome).flatMap((round) => cardsOf(round, words));
  return cards.length === 0
    ? `${words.alone("nothing")}\n`
    : cards.map((lines) => `${lines.join("\n")}\n`).join("\n");
}
