import { catalogue, type Farm } from "../../src/farm/index.ts";
import { type FolderFiles, type Row, readFolder, type Table } from "../../src/folder/index.ts";
import { formatProblem, type Problem, type Read } from "../../src/problem/index.ts";

/** The least a farm must say. */
export const MINIMAL = `name: Little Field
units: metric
place: { latitude: 44.12, longitude: -72.84, elevation: 190 m, zone: America/New_York }
markets:
  - { id: friday, day: Friday, picks: [ { time: "6:00" } ] }
tunnels:
  - { id: T1, length: 15 m, hoops: wire }
`;

export const rows = (text: string, separator = ","): Row[] =>
  text.split("\n").map((line, index) => ({ line: index + 1, cells: line.split(separator) }));

export const table = (file: string, text: string): Table => ({ file, rows: rows(text) });

export interface Texts {
  readonly farm?: string;
  readonly successions?: string;
  readonly pieces?: string;
  readonly notes?: string;
}

export function folderOf({ farm = MINIMAL, successions, pieces, notes }: Texts): Read<Farm> {
  const files: FolderFiles = {
    farm: { file: "farm.yaml", text: farm },
    successions: successions === undefined ? null : table("successions.csv", successions),
    pieces: pieces === undefined ? null : table("pieces.csv", pieces),
    notes: notes === undefined ? null : table("notes.csv", notes),
    unread: [],
  };
  return readFolder(files, catalogue());
}

/** Whole messages, as people read them. */
export const messages = ({ problems }: { readonly problems: readonly Problem[] }): string[] =>
  problems.map(formatProblem);

export const problemsOf = (texts: Texts): string[] => messages(folderOf(texts));

export const farmOf = (texts: Texts): Farm => {
  const { value, problems } = folderOf(texts);
  if (value === null) throw new Error(problems.map(formatProblem).join("\n"));
  return value;
};
