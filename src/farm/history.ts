import type { Instant } from "../quantity/index.ts";
import type { Farm, Tunnel } from "./farm.ts";
import { type Layer, type Setting, settingOf } from "./setting.ts";

/** A setting from a moment on. */
export interface Since {
  readonly at: Instant;
  readonly setting: Setting;
}

/**
 * What lay on a tunnel and since when, from its cover notes in order of time; bare before the first.
 * A tunnel without cover notes has had all along what the list of pieces says lies on it.
 */
export function coverHistory(farm: Farm, tunnel: Tunnel): readonly Since[] {
  const notes = farm.notes.filter((note) => note.kind === "cover" && note.tunnel === tunnel.id);
  if (notes.length === 0) {
    const layers = farm.pieces
      .filter((piece) => piece.liesOn.includes(tunnel.id))
      .map((piece): Layer => ({ cover: piece.cover, state: "on" }));
    return [{ at: Number.NEGATIVE_INFINITY as Instant, setting: settingOf(layers) }];
  }
  const history: Since[] = [{ at: Number.NEGATIVE_INFINITY as Instant, setting: [] }];
  for (const note of [...notes].sort((a, b) => a.at - b.at)) {
    if (note.kind !== "cover") continue;
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
