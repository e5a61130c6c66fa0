import type { Instant } from "../quantity/index.ts";
import type { Farm, Note, Tunnel } from "./farm.ts";
import { type Setting, settingOf } from "./setting.ts";

/** A setting from a moment on. */
export interface Since {
  readonly at: Instant;
  readonly setting: Setting;
}

type CoverNote = Extract<Note, { readonly kind: "cover" }>;

/**
 * What lay on a tunnel before any note: covers whose first note takes them off, and those the list of pieces says lie
 * there unless their first note puts them on.
 */
function layBefore(farm: Farm, tunnel: Tunnel, notes: readonly CoverNote[]): Setting {
  const listed = farm.pieces.filter((piece) => piece.liesOn.includes(tunnel.id)).map(({ cover }) => cover);
  const noted = notes.map(({ cover }) => cover);
  const layers = [...new Set([...listed, ...noted])].filter((cover) => {
    const first = notes.find((note) => note.cover === cover);
    return listed.includes(cover) ? first?.state !== "on" : first?.state === "off";
  });
  return settingOf(layers.map((cover) => ({ cover, state: "on" })));
}

/** What lay on a tunnel and since when, from its cover notes in order of time and the list of pieces. */
export function coverHistory(farm: Farm, tunnel: Tunnel): readonly Since[] {
  const notes = farm.notes
    .filter((note): note is CoverNote => note.kind === "cover" && note.tunnel === tunnel.id)
    .sort((a, b) => a.at - b.at);
  const before = layBefore(farm, tunnel, notes);
  const history: Since[] = [{ at: Number.NEGATIVE_INFINITY as Instant, setting: before }];
  for (const note of notes) {
    const others = history[history.length - 1]!.setting.filter(({ cover }) => cover !== note.cover);
    const layers = note.state === "off" ? others : [...others, { cover: note.cover, state: note.state }];
    history.push({ at: note.at, setting: settingOf(layers) });
  }
  return history;
}

/** What lies at a moment. */
export function lyingAt(history: readonly Since[], at: Instant): Setting {
  let setting: Setting = [];
  for (const since of history) if (since.at <= at) setting = since.setting;
  return setting;
}
