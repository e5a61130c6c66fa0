/** One cloth of a setting. `nights` is the rhythm: on every evening walk, off every morning walk. */
export interface Layer {
  readonly cover: string;
  readonly state: "on" | "vented" | "nights";
}

/** What lies on a tunnel from one decision to the next, in order of the covers' names; no layers is a bare tunnel. */
export type Setting = readonly Layer[];

/** Layers in the order every setting keeps. */
export const settingOf = (layers: readonly Layer[]): Setting =>
  [...layers].sort((a, b) => (a.cover < b.cover ? -1 : a.cover > b.cover ? 1 : 0));

/** A setting as text, the same for the same setting. @example settingKey([{ cover: "net", state: "on" }]) // => "net:on" */
export const settingKey = (setting: Setting): string =>
  setting.length === 0 ? "bare" : setting.map(({ cover, state }) => `${cover}:${state}`).join("+");

/** What of a setting lies between walks of one part of the day. */
export const lyingBy = (setting: Setting, part: "day" | "night"): readonly Layer[] =>
  setting.filter(({ state }) => state !== "nights" || part === "night");
