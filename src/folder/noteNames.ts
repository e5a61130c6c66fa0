import type { Farm } from "../farm/index.ts";
import { groupBy } from "../quantity/index.ts";

/** What a name in a line of words stands for. */
interface Name {
  readonly kind: "succession" | "tunnel" | "crop";
  readonly id: string;
  readonly text: string;
}

/** The names of a farm, ready to be found in many lines. */
export interface FarmNames {
  readonly pattern: RegExp;
  readonly byKey: ReadonlyMap<string, readonly Name[]>;
  /** Every name and every word of one, to find a mistyped one by. */
  readonly words: readonly string[];
}

/** Names found in a text, each once and in their order, and the text without them. */
export interface NamesIn {
  readonly successions: readonly string[];
  readonly tunnels: readonly string[];
  readonly crops: readonly string[];
  readonly rest: string;
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/gu, "\\$&");

/** A name however its words are joined: Creek 1, creek-1, Creek1; S01, s 01. Two numbers stay apart: T1-1 is not T11. */
const keyOf = (text: string): string =>
  text
    .toLowerCase()
    .replace(/(?<=\d)[\s_-]+(?=\d)/gu, "|")
    .replace(/[\s,_-]+/gu, "");

/** What may stand where a name has blanks, dashes or a comma. */
const joint = (written: string, numbers: boolean): string =>
  `[\\s${written.includes(",") ? "," : ""}_-]${numbers ? "+" : "*"}`;

const bodyOf = (text: string): string =>
  text
    .trim()
    .split(/((?:,(?=\s))?[\s_-]+)/u)
    .map((part, index, all) =>
      index % 2 === 1
        ? joint(part, /\d$/u.test(all[index - 1]!) && /^\d/u.test(all[index + 1]!))
        : escaped(part).replace(/(?<=\p{L})(?=\d)/gu, "[\\s-]?"),
    )
    .join("");

const anyOf = (texts: readonly string[]): string =>
  texts.length === 0 ? "(?!)" : `(?:${texts.map(bodyOf).join("|")})`;

/** Gathers the names of successions, tunnels and crops. */
export function namesOf({ successions, tunnels, crops }: Farm): FarmNames {
  const names = [
    ...successions.map(({ id }): Name => ({ kind: "succession", id, text: id })),
    // A long tunnel goes by its own names too; they mean all its sections.
    ...[
      ...tunnels.map(({ id, name, section }) => ({
        kind: "tunnel" as const,
        id,
        texts: [id, name, section?.of ?? id, section?.name ?? id],
      })),
      ...[...crops.values()].map(({ id, name }) => ({ kind: "crop" as const, id, texts: [id, name] })),
    ].flatMap(({ texts, ...one }) => [...new Set(texts)].map((text): Name => ({ ...one, text }))),
  ].filter(({ text }) => text.trim() !== "");
  const byKey = groupBy(names, ({ text }) => keyOf(text));
  const texts = [...new Set(names.map(({ text }) => text))].sort((a, b) => b.length - a.length);
  // A name that is a number could be a measure: only the first word of a line is taken for it.
  const numbers = texts.filter((text) => /^\d+$/u.test(text.trim()));
  const others = texts.filter((text) => !numbers.includes(text));
  const pattern = new RegExp(
    `(?:(?<![\\p{L}\\p{N}])${anyOf(others)}|^\\s*${anyOf(numbers)})(?![\\p{L}\\p{N}]|[.,/]\\d)`,
    "giu",
  );
  return { pattern, byKey, words: [...new Set(texts.flatMap((text) => [text, ...text.split(/[\s_-]+/u)]))] };
}

/** Takes the names of successions, tunnels and crops out of a text, of two that fit the longer one. */
export function namesIn(text: string, { pattern, byKey }: FarmNames): NamesIn {
  const found: Name[] = [];
  const rest = text.replace(pattern, (match) => {
    found.push(...(byKey.get(keyOf(match)) ?? []));
    // The comma keeps the numbers before and behind it apart.
    return " , ";
  });
  const ids = (kind: Name["kind"]): readonly string[] => [
    ...new Set(found.filter((name) => name.kind === kind).map(({ id }) => id)),
  ];
  return { successions: ids("succession"), tunnels: ids("tunnel"), crops: ids("crop"), rest };
}
