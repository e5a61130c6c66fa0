import { type Piece, type Succession, tunnelIds } from "../farm/index.ts";
import type { Problem } from "../problem/index.ts";
import { localDate } from "../quantity/index.ts";
import { TOUCH } from "./beds.ts";
import { checkCount, checkHoops, checkLength, checkSpans } from "./cloth.ts";
import { unknownCover } from "./coverNames.ts";
import { unknownCrop } from "./cropNames.ts";
import type { FarmSettings } from "./farmFile.ts";
import { type Spot, shown, shownLength, unknownName } from "./faults.ts";
import { brokenAt, sowingBroken } from "./noteRules.ts";
import type { notesFile } from "./notesFile.ts";
import type { Draft, Placed } from "./successionsFile.ts";

const at =
  (file: string, line: number) =>
  (column: string): Spot => ({ file, line, column });

function twice(
  file: string,
  drafts: readonly Placed<{ readonly id: string | null }>[],
  what: string,
): readonly Problem[] {
  const seen = new Map<string, number>();
  return drafts.flatMap(({ value: { id }, line }) => {
    if (id === null) return [];
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

/** Looks at what the lines of successions.csv name, and at what they ask of their tunnel. */
export function checkSuccessions(
  file: string,
  drafts: readonly Placed<Draft<Succession>>[],
  { crops, tunnels, markets, covers, units }: FarmSettings,
): readonly Problem[] {
  const problems: Problem[] = [...twice(file, drafts, "succession")];
  const marketIds = markets.map(({ id }) => id);
  for (const { value, line } of drafts) {
    const spot = at(file, line);
    const tunnel = tunnels.find(({ id }) => id === value.tunnel);
    if (value.crop !== null && !crops.has(value.crop))
      problems.push(unknownCrop(spot("crop"), value.crop, [...crops.keys()]));
    if (tunnel === undefined && value.tunnel !== null)
      problems.push(
        unknownName(spot("tunnel"), value.tunnel, "a tunnel", tunnelIds(tunnels), "tunnel-unknown"),
      );
    if (value.market !== null && !marketIds.includes(value.market))
      problems.push(unknownName(spot("market"), value.market, "a market", marketIds, "market-unknown"));
    if (tunnel !== undefined && value.to !== null && value.to > tunnel.length + TOUCH)
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

/** Looks at what the lines of pieces.csv name, and whether each piece has a tunnel it fits. */
export function checkPieces(
  file: string,
  drafts: readonly Placed<Draft<Piece>>[],
  farm: FarmSettings,
): readonly Problem[] {
  return [
    ...twice(file, drafts, "piece"),
    ...drafts.flatMap(({ value, line }) => {
      const { cover, length, spans, liesOn } = value;
      const spot = at(file, line);
      return [
        ...(cover === null || farm.covers.has(cover)
          ? []
          : [unknownCover(spot("cover"), cover, [...farm.covers.keys()])]),
        ...(length === null || length <= 0 ? [] : checkLength(spot("length"), length, farm)),
        ...(spans === null ? [] : checkSpans(spot("spans"), spans, farm)),
        ...checkCount(spot("lies on"), value, farm),
        ...(liesOn ?? []).flatMap((tunnel) => checkHoops(spot("lies on"), tunnel, farm)),
      ];
    }),
  ];
}

/** A cover nobody knows; when none is near, those at hand are told. */
function unknownNoted(
  spot: Spot,
  name: string,
  known: readonly string[],
  atHand: readonly string[],
): Problem {
  const problem = unknownCover(spot, name, known);
  return problem.hint.startsWith("Did") ? problem : { ...problem, hint: `At hand: ${atHand.join(", ")}.` };
}

/**
 * Looks at what the lines of notes.csv are about, and at their dates.
 *
 * @param drafts - null: not all ids are known, which would make notes look like mistakes.
 */
export function checkNotes(
  file: string,
  { notes, mentions }: Pick<ReturnType<typeof notesFile>, "notes" | "mentions">,
  farm: FarmSettings,
  drafts: readonly Placed<Draft<Succession>>[] | null,
  atHand: readonly string[],
): readonly Problem[] {
  const ids = [...new Set((drafts ?? []).flatMap(({ value }) => value.id ?? []))];
  const named = mentions.flatMap(({ line, kind, about, cover }): readonly Problem[] => {
    const spot = at(file, line);
    if (kind !== "cover")
      return drafts === null || ids.includes(about)
        ? []
        : [unknownName(spot("about"), about, "a succession", ids, "succession-unknown")];
    return [
      ...checkHoops(spot("about"), about, farm),
      ...(cover === null || farm.covers.has(cover)
        ? []
        : [unknownNoted(spot("value"), cover, [...farm.covers.keys()], atHand)]),
    ];
  });
  const early = notes.flatMap((note): readonly Problem[] => {
    if (note.kind === "cover") return [];
    const { succession: id } = note;
    const sown = drafts?.find(({ value }) => value.id === id)?.value.sown ?? null;
    const date = localDate(farm.place.zone, note.at);
    const broken = sown === null ? null : sowingBroken({ id, sown }, date);
    return broken === null ? [] : [brokenAt(at(file, note.line)("when"), date, broken)];
  });
  return [...named, ...early];
}
