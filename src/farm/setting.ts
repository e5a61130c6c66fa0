/** One cloth of a setting. `nights` is the rhythm: on every evening walk, off every morning walk. */
export interface Layer {
  readonly cover: string;
  readonly state: "on" | "vented" | "nights";
}

/** What lies on a tunnel from one decision to the next; no layers is a bare tunnel. */
export type Setting = readonly Layer[];

/** A setting as text, the same for the same setting. @example settingKey([{ cover: "net", state: "on" }]) // => "net:on" */
export const settingKey = (setting: Setting): string =>
  setting.length === 0 ? "bare" : setting.map(({ cover, state }) => `${cover}:${state}`).join("+");
