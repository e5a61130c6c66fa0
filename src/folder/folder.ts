import { type Catalogue, type Farm, type Note, type Piece, standingSowings } from "../farm/index.ts";
import type { Problem, Read } from "../problem/index.ts";
import { groupBy, type Instant, type OtherUnits } from "../quantity/index.ts";
import { checkNotes, checkPieces, checkSuccessions } from "./acrossFiles.ts";
import { bedSections } from "./bedSections.ts";
import { bedsOf } from "./beds.ts";
import { inSections } from "./cloth.ts";
import { collapsed } from "./collapsed.ts";
import { farmFile } from "./farmFile.ts";
import { heavyCuts } from "./heavyCuts.ts";
import { LEARNED_NAME, learnedFile } from "./learnedFile.ts";
import { lyingUnnoted } from "./lyingUnnoted.ts";
import { normalsFile } from "./normalsFile.ts";
import { notesFile } from "./notesFile.ts";
import { piecesFile } from "./piecesFile.ts";
import type { Table } from "./row.ts";
import { type Draft, type Placed, successionsFile } from "./successionsFile.ts";

/** The files of a farm folder that the grower writes. null: not there, which is as good as empty. */
export interface FolderFiles {
  readonly farm: { readonly file: string; readonly text: string } | null;
  readonly successions: Table | null;
  readonly pieces: Table | null;
  readonly notes: Table | null;
  /** A table of usual weather; most farms have none. */
  readonly normals?: Table | null;
  /** What was learned, as the grower left it. */
  readonly learned?: Table | null;
  /** Why a file, or the rest of one, could not be read. */
  readonly unread: readonly Problem[];
}

/** As a grower goes through them. */
const FILES = ["farm.yaml", "successions.csv", "pieces.csv", "notes.csv", "normals.csv", LEARNED_NAME];

/** File by file, and down each file. */
function inOrder(problems: readonly Problem[]): readonly Problem[] {
  const files = [...new Set([...FILES, ...problems.map(({ file }) => file)])];
  return collapsed(
    [...problems].sort(
      (a, b) => files.indexOf(a.file) - files.indexOf(b.file) || (a.line ?? 0) - (b.line ?? 0),
    ),
  );
}

/** Lines that stand for something: known by their names, and by their id alone. */
function known<Value extends { readonly id: string }>(
  placed: readonly Placed<Value>[],
  drafts: readonly Placed<Draft<Value>>[],
  names: (value: Value) => boolean,
): readonly Value[] {
  const byId = groupBy(drafts, ({ value }) => value.id);
  return placed.map(({ value }) => value).filter((value) => names(value) && byId.get(value.id)?.length === 1);
}

/** What can be read and yet looks like a slip. */
const worthALook = (
  { pieces, notes }: FolderFiles,
  placed: readonly Placed<Piece>[],
  farm: Farm,
  problems: readonly Problem[],
): readonly Problem[] => [
  // A note that cannot be read may be the one that is missed.
  ...(pieces === null || problems.some(({ file }) => file === (notes?.file ?? ""))
    ? []
    : lyingUnnoted(pieces.file, placed, farm)),
  ...(notes === null
    ? []
    : heavyCuts({ file: notes.file, numbered: true, column: "value" }, farm.notes, farm)),
];

/**
 * Reads of a folder what can be read, without the lines that stand for nothing known: a note needs no more than what it
 * is about. There is no farm only where its settings cannot be read.
 */
export function readLoosely(files: FolderFiles, catalogue: Catalogue, other?: OtherUnits): Read<Farm> {
  const { farm, problems: own } =
    files.farm === null
      ? { farm: null, problems: [] }
      : farmFile(files.farm.file, files.farm.text, catalogue, other);
  const sown = files.successions === null ? null : successionsFile(files.successions, other, farm?.units);
  const owned = files.pieces === null ? null : piecesFile(files.pieces, other, farm?.units);
  // Without a farm its notes are still read for what is wrong with them; only their clock is missing.
  const clock = {
    zone: farm?.place.zone ?? "UTC",
    walks: farm?.walks ?? {
      morning: catalogue.settings.morningWalk,
      evening: catalogue.settings.eveningWalk,
    },
  };
  const covered = new Set((owned?.pieces ?? []).map(({ value }) => value.cover));
  const covers = farm?.covers ?? catalogue.covers;
  const mine = [...covers.keys()].filter((cover) => covered.has(cover));
  const atHand = mine.length > 0 ? mine : [...covers.keys()];
  const usual =
    files.normals === null || files.normals === undefined
      ? null
      : normalsFile(files.normals, other, farm?.units);
  const learned =
    files.learned === null || files.learned === undefined || farm === null
      ? null
      : learnedFile(files.learned, farm);
  const noted = files.notes === null ? null : notesFile(files.notes, clock, atHand, other);
  const problems = [
    own,
    files.unread,
    sown?.problems,
    owned?.problems,
    noted?.problems,
    usual?.problems,
    learned?.problems,
  ].flatMap((some) => some ?? []);
  if (farm === null) return { value: null, problems: inOrder(problems) };
  const sowingsFile = files.successions?.file ?? "successions.csv";
  const placing = bedSections(sowingsFile, sown ?? { successions: [], drafts: [] }, farm);
  const { successions, drafts: sowings } = placing;
  const { drafts: cloths } = owned ?? { drafts: [] };
  const pieces = (owned?.pieces ?? []).map(({ value, line }) => ({
    value: { ...value, liesOn: inSections(value.liesOn, farm) },
    line,
  }));
  const { mentions } = noted ?? { mentions: [] };
  const notes = (noted?.notes ?? []).flatMap((note): readonly Note[] =>
    note.kind === "cover" ? inSections([note.tunnel], farm).map((tunnel) => ({ ...note, tunnel })) : [note],
  );
  // A line whose id could not be read would make every note about it look like a mistake.
  const allNamed = problems.every(
    ({ file, line, weight }) =>
      weight !== "stops" ||
      file !== sowingsFile ||
      sowings.some((draft) => draft.line === line && draft.value.id !== null),
  );
  // All notes count here, whenever they were made: a bed sown again stands where it stood.
  const standing = standingSowings(
    { successions: successions.map((placed) => placed.value), notes },
    farm.place.zone,
    Number.POSITIVE_INFINITY as Instant,
  );
  const placed = successions.map(({ line }, index) => ({ line, value: standing.successions[index]! }));
  const beds = bedsOf(sowingsFile, placed, farm, standing.notes);
  problems.push(
    ...placing.problems,
    ...checkSuccessions(sowingsFile, sowings, farm),
    ...beds.problems,
    ...checkPieces(files.pieces?.file ?? "pieces.csv", cloths, farm),
    ...checkNotes(
      files.notes?.file ?? "notes.csv",
      { notes, mentions },
      farm,
      allNamed ? sowings : null,
      atHand,
    ),
  );
  const tunnels = new Set(farm.tunnels.map(({ id }) => id));
  const stand = known(
    successions,
    sowings,
    ({ crop, tunnel }) => farm.crops.has(crop) && tunnels.has(tunnel),
  );
  const whole: Farm = {
    ...farm,
    ...(usual === null ? {} : { normals: usual.usual }),
    ...(learned === null ? {} : { kept: learned.kept }),
    successions: stand,
    pieces: known(pieces, cloths, ({ cover }) => farm.covers.has(cover)),
    notes: [...notes, ...beds.lastCuts]
      .filter((note) =>
        note.kind === "cover"
          ? tunnels.has(note.tunnel) && farm.covers.has(note.cover)
          : stand.some(({ id }) => id === note.succession),
      )
      .sort((a, b) => a.at - b.at),
  };
  return { value: whole, problems: inOrder([...problems, ...worthALook(files, pieces, whole, problems)]) };
}

/**
 * Reads a farm folder as one: every file for itself, then the names across them.
 *
 * @param other - Converts units outside the trade's table. Worth passing only after a problem "unit-unknown".
 * @returns Every problem of every file at once; the farm when none of them stops.
 */
export function readFolder(files: FolderFiles, catalogue: Catalogue, other?: OtherUnits): Read<Farm> {
  const { value, problems } = readLoosely(files, catalogue, other);
  const stopped = problems.some(({ weight }) => weight === "stops");
  return { value: stopped ? null : value, problems };
}
