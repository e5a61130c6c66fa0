import {
  type Catalogue,
  type Farm,
  type Note,
  type Piece,
  type Succession,
  standingSowings,
} from "../farm/index.ts";
import type { Problem, Read } from "../problem/index.ts";
import { type Instant, localDate, type OtherUnits } from "../quantity/index.ts";
import { bedsOf, TOUCH } from "./beds.ts";
import { checkHoops, checkLength } from "./cloth.ts";
import { collapsed } from "./collapsed.ts";
import { unknownCrop } from "./cropNames.ts";
import { type FarmSettings, farmFile } from "./farmFile.ts";
import { type Spot, shown, shownLength, unknownName } from "./faults.ts";
import { normalsFile } from "./normalsFile.ts";
import { notesFile } from "./notesFile.ts";
import { piecesFile } from "./piecesFile.ts";
import type { Table } from "./row.ts";
import { type Placed, successionsFile } from "./successionsFile.ts";

/** The files of a farm folder that the grower writes. null: not there, which is as good as empty. */
export interface FolderFiles {
  readonly farm: { readonly file: string; readonly text: string } | null;
  readonly successions: Table | null;
  readonly pieces: Table | null;
  readonly notes: Table | null;
  /** A table of usual weather; most farms have none. */
  readonly normals?: Table | null;
  /** Why a file, or the rest of one, could not be read. */
  readonly unread: readonly Problem[];
}

const at =
  (file: string, line: number) =>
  (column: string): Spot => ({ file, line, column });

function twice<Value extends { readonly id: string }>(
  file: string,
  placed: readonly Placed<Value>[],
  what: string,
): readonly Problem[] {
  const seen = new Map<string, number>();
  return placed.flatMap(({ value: { id }, line }) => {
    const before = seen.get(id);
    seen.set(id, before ?? line);
    if (before === undefined) return [];
    const hint = `Line ${before} has the same; call one of the two differently.`;
    const expected = `a name no other ${what} has`;
    return [
      {
        ...at(file, line)("id"),
        code: "id-twice",
        weight: "stops" as const,
        expected,
        received: shown(id),
        hint,
      },
    ];
  });
}

function checkSuccessions(
  file: string,
  placed: readonly Placed<Succession>[],
  { crops, tunnels, markets, covers, units }: FarmSettings,
): readonly Problem[] {
  const problems: Problem[] = [...twice(file, placed, "succession")];
  const tunnelIds = tunnels.map(({ id }) => id);
  const marketIds = markets.map(({ id }) => id);
  for (const { value, line } of placed) {
    const spot = at(file, line);
    const tunnel = tunnels.find(({ id }) => id === value.tunnel);
    if (!crops.has(value.crop)) problems.push(unknownCrop(spot("crop"), value.crop, [...crops.keys()]));
    if (tunnel === undefined)
      problems.push(unknownName(spot("tunnel"), value.tunnel, "a tunnel", tunnelIds, "tunnel-unknown"));
    if (value.market !== null && !marketIds.includes(value.market))
      problems.push(unknownName(spot("market"), value.market, "a market", marketIds, "market-unknown"));
    if (tunnel !== undefined && value.to > tunnel.length + TOUCH)
      problems.push({
        ...spot("to"),
        code: "bed-beyond-tunnel",
        weight: "stops",
        expected: `at most ${shownLength(tunnel.length, units)}, the length of ${tunnel.id}`,
        received: shownLength(value.to, units),
        hint: "Correct the bed here or the tunnel's length in farm.yaml.",
      });
    const net = [...covers.values()].some(({ kind }) => kind === "net");
    if (value.net && tunnel !== undefined && (tunnel.hoops === null || !net))
      problems.push({
        ...spot("net"),
        code: "net-impossible",
        weight: "stops",
        expected: `hoops on ${tunnel.id}, since the succession must stay under net`,
        received: "hoops: none",
        hint: "Set up hoops and say so in farm.yaml, or write no here.",
      });
  }
  return problems;
}

function checkPieces(file: string, placed: readonly Placed<Piece>[], farm: FarmSettings): readonly Problem[] {
  return [
    ...twice(file, placed, "piece"),
    ...placed.flatMap(({ value, line }) => [
      ...(farm.covers.has(value.cover)
        ? []
        : [
            unknownName(
              at(file, line)("cover"),
              value.cover,
              "a cover",
              [...farm.covers.keys()],
              "cover-unknown",
            ),
          ]),
      ...checkLength(at(file, line)("length"), value, farm),
      ...value.liesOn.flatMap((tunnel) => checkHoops(at(file, line)("lies on"), tunnel, farm)),
    ]),
  ];
}

/** A cover nobody knows; when none is near, those at hand are told. */
function unknownCover(
  spot: Spot,
  name: string,
  known: readonly string[],
  atHand: readonly string[],
): Problem {
  const problem = unknownName(spot, name, "a cover", known, "cover-unknown");
  return problem.hint.startsWith("Did") ? problem : { ...problem, hint: `At hand: ${atHand.join(", ")}.` };
}

function checkNotes(
  file: string,
  notes: readonly Note[],
  farm: FarmSettings,
  successions: readonly Placed<Succession>[],
  atHand: readonly string[],
): readonly Problem[] {
  const ids = successions.map(({ value }) => value.id);
  return notes.flatMap((note): readonly Problem[] => {
    const spot = at(file, note.line);
    if (note.kind === "cover")
      return [
        ...checkHoops(spot("about"), note.tunnel, farm),
        ...(farm.covers.has(note.cover)
          ? []
          : [unknownCover(spot("value"), note.cover, [...farm.covers.keys()], atHand)]),
      ];
    const about = successions.find(({ value }) => value.id === note.succession);
    if (about === undefined)
      return [unknownName(spot("about"), note.succession, "a succession", ids, "succession-unknown")];
    const date = localDate(farm.place.zone, note.at);
    if (date >= about.value.sown) return [];
    const hint = "Correct the date here or in successions.csv.";
    const expected = `a date from ${about.value.sown} on, when ${note.succession} was sown`;
    return [{ ...spot("when"), code: "note-before-sowing", weight: "stops", expected, received: date, hint }];
  });
}

/** As a grower goes through them. */
const FILES = ["farm.yaml", "successions.csv", "pieces.csv", "notes.csv", "normals.csv"];

/** File by file, and down each file. */
function inOrder(problems: readonly Problem[]): readonly Problem[] {
  const files = [...new Set([...FILES, ...problems.map(({ file }) => file)])];
  return collapsed(
    [...problems].sort(
      (a, b) => files.indexOf(a.file) - files.indexOf(b.file) || (a.line ?? 0) - (b.line ?? 0),
    ),
  );
}

/**
 * Reads a farm folder as one: every file for itself, then the names across them.
 *
 * @param other - Converts units outside the trade's table. Worth passing only after a problem "unit-unknown".
 * @returns Every problem of every file at once; the farm when none of them stops.
 */
export function readFolder(files: FolderFiles, catalogue: Catalogue, other?: OtherUnits): Read<Farm> {
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
  const known = farm?.covers ?? catalogue.covers;
  const mine = [...known.keys()].filter((cover) => covered.has(cover));
  const atHand = mine.length > 0 ? mine : [...known.keys()];
  const usual =
    files.normals === null || files.normals === undefined
      ? null
      : normalsFile(files.normals, other, farm?.units);
  const noted = files.notes === null ? null : notesFile(files.notes, clock, atHand, other);
  const problems = [
    own,
    files.unread,
    sown?.problems,
    owned?.problems,
    noted?.problems,
    usual?.problems,
  ].flatMap((some) => some ?? []);
  if (farm === null) return { value: null, problems: inOrder(problems) };
  const successions = sown?.successions ?? [];
  const pieces = owned?.pieces ?? [];
  const notes = noted?.notes ?? [];
  const sowings = files.successions?.file ?? "successions.csv";
  // A succession that could not be read would make every note about it look like a mistake.
  const sound = !problems.some(({ file, weight }) => weight === "stops" && file === sowings);
  // All notes count here, whenever they were made: a bed sown again stands where it stood.
  const standing = standingSowings(
    { successions: successions.map((placed) => placed.value), notes },
    farm.place.zone,
    Number.POSITIVE_INFINITY as Instant,
  );
  const placed = successions.map(({ line }, index) => ({ line, value: standing.successions[index]! }));
  const beds = bedsOf(sowings, placed, farm, standing.notes);
  problems.push(
    ...checkSuccessions(sowings, successions, farm),
    ...beds.problems,
    ...checkPieces(files.pieces?.file ?? "pieces.csv", pieces, farm),
    ...(sound ? checkNotes(files.notes?.file ?? "notes.csv", notes, farm, successions, atHand) : []),
  );
  if (problems.some(({ weight }) => weight === "stops")) return { value: null, problems: inOrder(problems) };
  const value: Farm = {
    ...farm,
    ...(usual === null ? {} : { normals: usual.usual }),
    successions: successions.map((placed) => placed.value),
    pieces: pieces.map((placed) => placed.value),
    notes: [...notes, ...beds.lastCuts].sort((a, b) => a.at - b.at),
  };
  return { value, problems: inOrder(problems) };
}
