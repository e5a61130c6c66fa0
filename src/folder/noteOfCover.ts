import type { CoverState, Note } from "../farm/index.ts";
import { list } from "../problem/index.ts";
import { coveredParts, coversMeant, wordsOfCovers } from "./noteCover.ts";
import type { NoteMoment } from "./noteMoment.ts";
import { COVERS, type Parts, type Spoken } from "./noteParts.ts";
import { type Misreading, misread, misreadBy, type NoteSetting, notKnown } from "./noteRead.ts";
import { hoopsBroken, STATES } from "./noteRules.ts";

/**
 * The state a cover is said to be in; null when it is said to be in two, or in none.
 *
 * @param on - An "on" stood before the day; it may be the cover's.
 */
export function stateOf({ roles, left }: Spoken, on: boolean): CoverState | "bare" | null {
  const states = new Set(roles.filter((role): role is CoverState | "bare" => COVERS.includes(role)));
  // "Covers off" means all of them; "row covers off" only those.
  const plural = left.length > 0 && left.every(({ text }) => text === "covers");
  if (states.has("bare")) return states.size === 1 ? "bare" : null;
  if (states.has("nights") || states.has("vented")) states.delete("on");
  if (states.size > 1) return null;
  const state = [...states][0] ?? (on ? "on" : null);
  return state === "off" && (roles.includes("everything") || plural) ? "bare" : state;
}

export function coverNotes(
  parts: Parts,
  moment: NoteMoment,
  { farm }: NoteSetting,
): readonly Note[] | Misreading {
  const { names, left, roles } = parts;
  if (names.tunnels.length === 0) {
    const tunnel = farm.tunnels.find(({ id }) =>
      farm.successions.some((one) => one.id === names.successions[0] && one.tunnel === id),
    );
    return misread(
      tunnel === undefined
        ? "Say which tunnel."
        : `A cover lies on a tunnel: say "${tunnel.name}" for ${names.successions[0]!}.`,
      { unknown: left.map(({ text }) => text).filter((text) => !wordsOfCovers(farm).includes(text)) },
    );
  }
  if (names.successions.length + names.crops.length > 0)
    return misread("A cover lies on a tunnel; leave the succession out.");
  if (roles.includes("last")) return misread('Leave "last" out.');
  const state = stateOf(parts, parts.said.on);
  if (state === null) return misread(`Say one of ${list(STATES)}.`);
  const words = left.filter(({ kind }) => kind === "word" || kind === "number").map(({ text }) => text);
  const notes: Note[] = [];
  const named = names.tunnels.map((id) => farm.tunnels.find((one) => one.id === id)!);
  const uncovering = state === "bare" || state === "off";
  for (const tunnel of uncovering ? coveredParts(named, farm, moment.at) : named) {
    const broken = hoopsBroken(tunnel, tunnel.name);
    if (broken !== null) return misreadBy(broken);
    const meant = coversMeant(words, state, tunnel, farm, moment.at);
    if ("unknown" in meant) return notKnown(meant.unknown);
    if ("hint" in meant) return misread(meant.hint, { code: "note-cover-unclear", ...meant });
    const done = state === "bare" ? "off" : state;
    for (const cover of meant.covers)
      notes.push({
        kind: "cover",
        at: moment.at,
        line: 0,
        remark: "",
        tunnel: tunnel.id,
        cover,
        state: done,
      });
  }
  return notes;
}
