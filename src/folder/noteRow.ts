import type { Farm, Note } from "../farm/index.ts";
import { guarded } from "./guarded.ts";
import type { NoteMoment } from "./noteMoment.ts";
import { noteValue } from "./noteWords.ts";

/** A note's cells by the name of their column. */
export type NoteRow = Readonly<Record<"when" | "kind" | "about" | "value" | "remark", string>>;

/** @param when - The moment as notes.csv has it. */
export const noteRow = (note: Note, when: NoteMoment["when"], units: Farm["units"]): NoteRow => ({
  when,
  kind: note.kind,
  about: note.kind === "cover" ? note.tunnel : note.succession,
  value: noteValue(note, units),
  remark: guarded(note.remark),
});
