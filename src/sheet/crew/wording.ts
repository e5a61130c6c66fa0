import { catalogue, type Farm } from "../../farm/index.ts";
import {
  type CrewLanguage,
  type CrewTerms,
  crewTerms,
  filled,
  type SentenceName,
  walkCode,
} from "../../folder/index.ts";
import {
  type Instant,
  type Kilogram,
  type LocalDate,
  localHour,
  type MetrePerSecond,
  toMilesPerHour,
  weekday,
} from "../../quantity/index.ts";
import { clean } from "../clean.ts";
import { weightNumber } from "../words.ts";
import type { Caution, Instruction, Place, Round } from "./instructions.ts";

/** Letters a line of a card holds: it fits on a small screen, and two on the smallest message. */
const WIDE = 60;

/** Words for cards in one language, in the farm's units. */
export interface Wording {
  readonly heading: (round: Round, card: number, cards: number) => string;
  readonly caution: (caution: Caution) => string;
  /** Lines that belong together: what is done, with the purpose of cuts above them. */
  readonly lines: (
    instruction: Instruction,
  ) => readonly { readonly above: string | null; readonly line: string }[];
  readonly reply: (withWeight: boolean) => string;
  readonly alone: (name: "nothing" | "noPlan") => string;
}

export function wording(farm: Farm, language: CrewLanguage): Wording {
  const { units, place } = farm;
  const terms = crewTerms(farm, language, catalogue());
  const say = (name: SentenceName, holes: Readonly<Record<string, string>> = {}): string =>
    filled(language.sentences[name], holes);
  const called = (what: keyof CrewTerms, id: string): string => clean(terms[what].get(id) ?? id);

  const day = (date: LocalDate): string =>
    say(units === "US" ? "dayUS" : "dayMetric", {
      weekday: filled(language.weekdays[weekday(date)]!, {}),
      month: filled(language.months[Number(date.slice(5, 7)) - 1]!, {}),
      number: String(Number(date.slice(8, 10))),
    });

  function clock(at: number): string {
    const minutes = Math.round(at * 60);
    const [h, m] = [Math.floor(minutes / 60) % 24, minutes % 60];
    const past = `:${String(m).padStart(2, "0")}`;
    if (units === "metric") return say("clock", { hour: `${h}${past}` });
    if (m === 0 && h % 12 === 0) return say(h === 0 ? "midnight" : "noon");
    return say(h < 12 ? "am" : "pm", { hour: `${h % 12 === 0 ? 12 : h % 12}${m === 0 ? "" : past}` });
  }

  function frozenUntil(thaw: Instant): string {
    const hour = clock(localHour(place.zone, thaw));
    return say(/^1(?!\d)/u.test(hour) ? "frozenLeavesUntilOne" : "frozenLeavesUntil", { hour });
  }

  const wind = (speed: MetrePerSecond): string =>
    units === "US"
      ? say("mph", { number: String(Math.round(toMilesPerHour(speed))) })
      : say("kmh", { number: String(Math.round(speed * 3.6)) });

  const weight = (mass: Kilogram): string =>
    say(units === "US" ? "lb" : "kg", { number: String(Math.round(weightNumber(units, mass) * 100) / 100) });

  const placed = ({ tunnel, pieces }: Place): string => {
    const name = called("tunnels", tunnel);
    return pieces.length === 0 ? name : `${name} (${pieces.map(clean).join(", ")})`;
  };

  /** Tunnels on as many lines as they need, each a whole instruction. */
  function coverLines({ act, cover, places }: Instruction & { readonly kind: "cover" }): readonly string[] {
    const line = (tunnels: string): string => say(act, { cover: called("covers", cover), tunnels });
    const lists: string[] = [];
    for (const name of places.map(placed)) {
      const longer = lists.length === 0 ? name : `${lists.at(-1)!}, ${name}`;
      if (lists.length > 0 && line(longer).length <= WIDE) lists[lists.length - 1] = longer;
      else lists.push(name);
    }
    return lists.map(line);
  }

  function cutLines({
    purpose,
    market,
    beds,
  }: Instruction & { readonly kind: "cut" }): ReturnType<Wording["lines"]> {
    const above = say(purpose, { day: day(market) });
    return beds.map(({ succession, crop, tunnel, expected }) => ({
      above,
      line: say("cut", {
        succession: clean(succession),
        crop: called("crops", crop),
        tunnel: called("tunnels", tunnel),
        expected: weight(expected),
        weight: say(units === "US" ? "blankLb" : "blankKg"),
      }),
    }));
  }

  return {
    heading: ({ date, hour, part }, card, cards) =>
      say(cards === 1 ? part : `${part}Of`, {
        code: walkCode(date, hour),
        day: day(date),
        hour: clock(hour),
        card: String(card),
        cards: String(cards),
      }),
    caution: (caution) => {
      switch (caution.kind) {
        case "windLimit":
          return say("windLimit", { limit: wind(caution.limit) });
        case "windExpected":
          return say("windExpected", { wind: wind(caution.wind) });
        case "frozenCloth":
        case "snowOnCloth":
        case "snowOnBeds":
        case "wetLeaves":
          return say(caution.kind);
        case "frozenLeaves":
          return caution.thaw === null ? say("frozenLeaves") : frozenUntil(caution.thaw);
      }
    },
    lines: (instruction) =>
      instruction.kind === "cut"
        ? cutLines(instruction)
        : coverLines(instruction).map((line) => ({ above: null, line })),
    reply: (withWeight) => say(withWeight ? "replyWithWeight" : "reply"),
    alone: (name) => say(name),
  };
}
