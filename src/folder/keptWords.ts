import { type Kept, tunnelIds } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { WEEKDAYS } from "./calendarNames.ts";
import { listed, shown } from "./faults.ts";
import { coverKept } from "./keptCover.ts";
import { cutKept } from "./keptCut.ts";
import { inKnownWords } from "./keptPhrases.ts";
import type { KeptRead, KeptSetting } from "./keptRead.ts";
import { namesIn, namesOf } from "./noteNames.ts";
import { knownWords, mended } from "./noteProblem.ts";
import { type Misread, misread } from "./noteRead.ts";
import { plainLine } from "./noteText.ts";

/** Reads one plain sentence of what is settled. */
function keptLine(line: string, setting: KeptSetting): KeptRead {
  const found = namesIn(line, setting.names);
  const names = { ...found, rest: inKnownWords(found.rest) };
  if (/\b(?:uncut|cut|harvested)\b/iu.test(names.rest)) return cutKept(names, setting);
  const { successions, tunnels } = names;
  const [first] = setting.farm.successions.filter(({ id }) => successions.includes(id));
  if (first !== undefined) {
    const tunnel = setting.farm.tunnels.find(({ id }) => id === first.tunnel)!;
    return misread(
      `Say "${first.id} cut Friday" or "${first.id} not cut"; of covers say "${tunnel.name} bare".`,
    );
  }
  if (tunnels.length > 0) return coverKept(names, setting);
  const known = [...tunnelIds(setting.farm.tunnels), ...setting.farm.successions.map(({ id }) => id)];
  return misread(`Name a tunnel or a succession: ${listed(known)}.`);
}

/** As it may be written, in the farm's words: of what the line names, where it names something. */
function example(line: string, { farm, names: known }: KeptSetting): string {
  const { tunnels, successions } = namesIn(line, known);
  const [tunnel, succession] = [
    farm.tunnels.find(({ id }) => tunnels.includes(id))?.name,
    farm.successions.find(({ id }) => successions.includes(id))?.id,
  ];
  if (succession !== undefined) return `"${succession} cut Friday" or "${succession} not cut"`;
  if (tunnel !== undefined) return `"${tunnel} bare all week" or "${tunnel} as it is until Friday"`;
  return farm.successions.length === 0
    ? `"${farm.tunnels[0]!.name} bare all week" or "${farm.tunnels[0]!.name} as it is until Friday"`
    : `"${farm.tunnels[0]!.name} bare" or "${farm.successions[0]!.id} cut Friday"`;
}

/** Words of some length that stand for nothing here; a mistyped one may be among them. */
function strangersIn(line: string, words: readonly string[]): readonly string[] {
  const known = new Set(words.map((word) => word.toLowerCase()));
  return line.split(/[\s,]+/u).filter((word) => word.length >= 3 && !known.has(word.toLowerCase()));
}

function keptProblem(option: string, line: string, found: Misread, setting: KeptSetting): Problem {
  const words = [...knownWords(setting), ...WEEKDAYS, "morning", "evening", "from", "until", "cut"];
  const strange = (found.unknown.length > 0 ? found.unknown : strangersIn(line, words)).filter((word) =>
    /\p{L}/u.test(word),
  );
  const near = mended(line, strange, words).find((text) => !("kind" in keptLine(text, setting)));
  return {
    code: found.code === "note-unreadable" ? "keep-unreadable" : found.code,
    weight: "stops",
    file: option,
    line: null,
    column: null,
    expected: found.expected ?? `something settled, like ${example(line, setting)}`,
    received: found.received === null ? shown(line) : `${found.received} in ${shown(line)}`,
    hint: near === undefined ? found.hint : `Did you mean "${near}"?`,
  };
}

/** Can both hold? */
const agree = (a: Kept, b: Kept): boolean => {
  if ("tunnel" in a)
    return (
      !("tunnel" in b) ||
      a.tunnel !== b.tunnel ||
      (a.to !== null && b.from !== null && a.to <= b.from) ||
      (b.to !== null && a.from !== null && b.to <= a.from)
    );
  return "tunnel" in b || a.succession !== b.succession || (a.kind === "cut" && b.kind === "cut");
};

/**
 * Reads what the grower has settled, one plain sentence each: "T3 as it is", "Creek 3 shade-40 on Wednesday morning",
 * "S04 cut Friday", "S04 not cut".
 *
 * @param option - Name of the option they were given with, for problems.
 */
export function keptWords(
  option: string,
  lines: readonly string[],
  asked: Omit<KeptSetting, "names">,
): { readonly kept: readonly Kept[]; readonly problems: readonly Problem[] } {
  const setting: KeptSetting = { ...asked, names: namesOf(asked.farm) };
  const kept: { readonly one: Kept; readonly line: string }[] = [];
  const problems: Problem[] = [];
  for (const written of lines) {
    const line = plainLine(written);
    const read = keptLine(line, setting);
    if ("kind" in read) {
      problems.push(keptProblem(option, line, read.misread, setting));
      continue;
    }
    const against = kept.find(({ one }) => read.some((other) => !agree(one, other)));
    if (against === undefined) kept.push(...read.map((one) => ({ one, line })));
    else
      problems.push(
        keptProblem(
          option,
          line,
          misread(`It goes against "${against.line}"; leave one of the two out.`, {
            code: "keep-twice",
            expected: "each thing settled once",
          }).misread,
          setting,
        ),
      );
  }
  return { kept: kept.map(({ one }) => one), problems };
}
