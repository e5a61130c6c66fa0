import { type Setting, settingOf } from "../farm/index.ts";
import type { IssuedChange, IssuedWalk } from "./issuedSheet.ts";
import { dateAt, HINTS, instantAt, numberAt, oneOf, textAt } from "./issuedValues.ts";
import type { Json } from "./jsonFile.ts";

const walkAt = (at: Json): IssuedWalk => ({
  at: instantAt(at.at("at")),
  date: dateAt(at.at("date")),
  part: oneOf(at.at("part"), "a part of the day", ["morning", "evening"]),
});

export const walksIn = (root: Json): ReadonlyMap<number, IssuedWalk> =>
  new Map(
    root
      .at("walks")
      .list("a list of walks")
      .map((walk) => [numberAt(walk.at("walk"), "a walk's number", 1000), walkAt(walk)]),
  );

/** Settings by their keys. */
const settingsIn = (tunnel: Json): ReadonlyMap<string, Setting> =>
  new Map(
    tunnel
      .at("settings")
      .list("a list of settings")
      .map((setting) => [
        textAt(setting.at("key"), "a setting"),
        settingOf(
          setting
            .at("layers")
            .list("a list of covers")
            .map((layer) => ({
              cover: textAt(layer.at("cover"), "a cover"),
              state: oneOf(layer.at("state"), "a state", ["on", "vented", "nights"]),
            })),
        ),
      ]),
  );

/** The changes of covers a sheet asks for on one tunnel. */
export function changesAt(tunnel: Json, walks: ReadonlyMap<number, IssuedWalk>): readonly IssuedChange[] {
  const settings = settingsIn(tunnel);
  const settingAt = (at: Json, what: string): Setting => {
    const key = textAt(at, what);
    const setting = settings.get(key);
    if (setting === undefined && key !== "")
      at.fault("json-choice", "one of its tunnel's settings", HINTS.otherForm);
    return setting ?? [];
  };
  return tunnel
    .at("changes")
    .list("a list of changes")
    .flatMap((change): readonly IssuedChange[] => {
      const number = change.at("walk");
      const walk = walks.get(numberAt(number, "a walk's number", 1000));
      if (walk === undefined) number.fault("json-choice", "the number of one of its walks", HINTS.otherForm);
      const [from, to] = [
        settingAt(change.at("from"), "what lay there"),
        settingAt(change.at("to"), "what was to lie there"),
      ];
      return walk === undefined ? [] : [{ tunnel: textAt(tunnel.at("tunnel"), "a tunnel"), walk, from, to }];
    });
}
