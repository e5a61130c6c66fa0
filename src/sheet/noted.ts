import { type Farm, median, type Note } from "../farm/index.ts";
import { massWords, type NoteMoment, noteValue } from "../folder/index.ts";
import { type Centimetre, toInches } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { type Names, namesOf } from "./names.ts";
import { page, type TextOptions } from "./page.ts";
import { dayOf, moment, quarters, setting } from "./words.ts";

/** A note as it was understood. */
export interface NotedLine {
  readonly note: Note;
  readonly moment: NoteMoment;
  readonly already: boolean;
}

/** A leaf as it was measured: to a quarter of an inch, or a millimetre. */
const leafNumber = ({ units }: Farm, length: number): string =>
  units === "US" ? quarters(toInches(length as Centimetre)) : String(Math.round(length * 10) / 10);

function what(note: Note, farm: Farm, names: Names): string {
  const unit = farm.units === "US" ? "in" : "cm";
  switch (note.kind) {
    case "leaf":
    case "strip": {
      const all = `${note.kind === "leaf" ? "leaf" : "check strip, bare:"} ${note.lengths.map((length) => leafNumber(farm, length)).join(", ")} ${unit}`;
      return note.lengths.length === 1
        ? all
        : `${all}: median ${leafNumber(farm, median(note.lengths))} ${unit}`;
    }
    case "emerged":
      return "up";
    case "not ready":
      return "not ready yet: still below salad size";
    case "cover":
      return note.state === "off"
        ? `${names.shortCover(note.cover)} off`
        : setting([{ cover: note.cover, state: note.state }], names.shortCover);
    case "cut": {
      const weight = note.weight === null ? "" : ` ${massWords(note.weight, farm.units)}`;
      return note.last ? `last cut${weight}: the bed is done` : `cut${weight}`;
    }
    case "loss":
      return `lost ${noteValue(note, farm.units)}`;
    case "resown":
      return "resown: the bed begins anew on that day";
  }
}

/** What was understood of one note, without the full stop. */
function understood({ note, moment: { at, said } }: NotedLine, farm: Farm, names: Names): string {
  const about = note.kind === "cover" ? names.tunnel(note.tunnel) : names.succession(note.succession);
  const when = said === "day" ? dayOf(farm, at) : moment(farm, at);
  return `${about}, ${when}, ${what(note, farm, names)}`;
}

/** Whole sentences for one note, as it is told: noted, noted already, or only understood. */
export function notedSentence(line: NotedLine, farm: Farm, written: boolean): string {
  const names = namesOf(
    farm,
    farm.successions.map((succession) => ({ succession, crop: farm.crops.get(succession.crop)! })),
  );
  const { note, already } = line;
  const { said } = line.moment;
  const opening = already ? "Already noted" : written ? "Noted" : "Understood";
  const walk =
    said === "morning" || said === "evening" ? ` No hour was said: the ${said} walk is taken.` : "";
  const remark = note.remark === "" || already ? "" : ` Remark: ${clean(note.remark)}.`;
  return `${opening}: ${understood(line, farm, names)}.${walk}${remark}`;
}

/** What was understood of a walk, a paragraph for each note. */
export function notedText(
  lines: readonly NotedLine[],
  farm: Farm,
  written: boolean,
  options: TextOptions,
): string {
  const out = page(options);
  for (const line of lines) out.say(notedSentence(line, farm, written));
  return lines.length === 0 ? "" : out.text();
}
