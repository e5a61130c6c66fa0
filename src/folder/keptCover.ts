import {
  coverHistory,
  type Kept,
  type Layer,
  lyingAt,
  type Setting,
  settingOf,
  type Tunnel,
} from "../farm/index.ts";
import { instantAt, localDate } from "../quantity/index.ts";
import { layable } from "./cloth.ts";
import {
  after,
  FIGURES,
  firstWalk,
  type KeptRead,
  type KeptSetting,
  notKnown,
  outside,
  SETTLED,
} from "./keptRead.ts";
import { stretchIn } from "./keptStretch.ts";
import { coversCalled, coversMeant } from "./noteCover.ts";
import type { NamesIn } from "./noteNames.ts";
import { stateOf } from "./noteOfCover.ts";
import { type Spoken, spokenIn } from "./noteParts.ts";
import { type Misreading, misread, misreadBy } from "./noteRead.ts";
import { hoopsBroken } from "./noteRules.ts";

const AS_IT_IS = /\b(?:as\s+(?:it|they)\s+(?:is|are)|as\s+is|unchanged)\b/iu;

/** Covers over each other. */
const OVER = /\s(?:and|over|with|under|plus)\s|[+&]/iu;

const coverWords = ({ left }: Spoken): readonly string[] =>
  left.filter(({ kind }) => kind === "word" || kind === "number").map(({ text }) => text);

/** What is left of a tunnel without some cloth: nothing, where no other lies there or, on a bare one, none is at hand. */
function settingWithout(
  spoken: Spoken,
  tunnel: Tunnel,
  { farm, on: now }: KeptSetting,
): Setting | Misreading {
  const said = coversCalled(coverWords(spoken), farm);
  if ("unknown" in said) return notKnown(said.unknown);
  const lying = lyingAt(coverHistory(farm, tunnel), now).map(({ cover }) => cover);
  const there = lying.length > 0 ? lying : layable(tunnel, farm, now);
  const other = there.find((cover) => !said.covers.includes(cover));
  if (other === undefined) return [];
  return misread(
    `Say what lies there, like "${tunnel.name} ${other} on", or "${tunnel.name} bare" where nothing does.`,
    {
      code: "keep-unclear",
      expected: "what lies there",
      received: "only what does not",
    },
  );
}

/** One cloth that is said to lie on a tunnel. */
function layerOf(
  spoken: Spoken,
  on: boolean,
  tunnel: Tunnel,
  { farm, on: now }: KeptSetting,
): Layer | Misreading {
  const state = stateOf(spoken, on);
  const { name } = tunnel;
  if (state === null) return misread("Say one of on, vented, nights and bare.");
  if (state === "bare" || state === "off")
    return misread(`Say what lies there, or "${name} bare" where nothing does.`);
  const words = coverWords(spoken);
  const atHand = layable(tunnel, farm, now);
  const ownedHere = { ...farm, pieces: farm.pieces.filter(({ cover }) => atHand.includes(cover)) };
  const meant = coversMeant(words, state, tunnel, ownedHere, now);
  const known =
    atHand.length > 0 ? `At hand: ${atHand.join(", ")}.` : "Write the cloth you own into pieces.csv.";
  if ("unknown" in meant) {
    const { misread: of } = notKnown(meant.unknown);
    return misread(`${of.hint} ${known}`, of);
  }
  if ("hint" in meant) return misread(meant.hint, { code: "keep-unclear", ...meant });
  const cover = meant.covers[0]!;
  const kind = farm.covers.get(cover)!.kind;
  if (state !== "on" && kind !== "rowCover" && kind !== "film")
    return misread(`Say "${name} ${cover} on".`, {
      code: "keep-unclear",
      expected: "row cover or film",
      received: `${cover}, which only lies or does not`,
    });
  return atHand.includes(cover)
    ? { cover, state }
    : misread(known, {
        code: "cover-not-at-hand",
        expected: `a piece long enough for ${name}`,
        received: `none of ${cover}`,
      });
}

/** All that is said to lie on a tunnel. */
function settingSaid(text: string, on: boolean, tunnel: Tunnel, kept: KeptSetting): Setting | Misreading {
  // An "and" may stand between tunnels too, where nothing is left of them.
  const groups = text
    .split(OVER)
    .map((group) => spokenIn(group, kept.farm.units))
    .filter((spoken) => spoken === null || spoken.words.length > 0);
  if (groups.length === 0)
    return misread(`Say what lies there, like "${tunnel.name} bare" or "${tunnel.name} as it is".`);
  const layers: Layer[] = [];
  for (const spoken of groups) {
    if (spoken === null) return FIGURES;
    if (groups.length === 1 && spoken.roles.includes("bare") && spoken.roles.length === 1)
      return spoken.left.length === 0 ? [] : notKnown(spoken.left.map(({ text: word }) => word));
    if (groups.length === 1 && spoken.left.length > 0 && stateOf(spoken, on) === "off")
      return settingWithout(spoken, tunnel, kept);
    // That it is on need not be said.
    const layer = layerOf(spoken, on || spoken.roles.length === 0, tunnel, kept);
    if ("kind" in layer) return layer;
    layers.push(layer);
  }
  return settingOf(layers);
}

/** Reads what lies on tunnels, and for how long. */
export function coverKept(names: NamesIn, setting: KeptSetting): KeptRead {
  const { farm, on } = setting;
  const { zone } = farm.place;
  const clock = { zone, walks: farm.walks };
  const said = stretchIn(names.rest, localDate(zone, on), clock, farm.units);
  if ("unclear" in said) return misread(said.unclear);
  const { from, to } = said;
  if (from !== null && to !== null && to <= from)
    return misread("The end lies before the beginning; swap them.");
  if (
    (to !== null && to <= firstWalk(setting)) ||
    (from !== null && from >= instantAt(zone, after(setting), 0))
  )
    return outside(setting);
  const unchanged = AS_IT_IS.test(said.rest);
  const words = said.rest.replace(AS_IT_IS, " ").replace(SETTLED, " ");
  const kept: Kept[] = [];
  for (const id of names.tunnels) {
    const tunnel = farm.tunnels.find((one) => one.id === id)!;
    if (unchanged) {
      const left = spokenIn(words, farm.units)?.words ?? [];
      if (left.length > 0) return notKnown(left);
      kept.push({ kind: "unchanged", tunnel: id, from, to });
      continue;
    }
    const lying = settingSaid(words, said.on, tunnel, setting);
    if ("kind" in lying) return lying;
    const broken = lying.length === 0 ? null : hoopsBroken(tunnel, tunnel.name);
    if (broken !== null) return misreadBy(broken);
    kept.push({ kind: "cover", tunnel: id, setting: lying, from, to });
  }
  return kept;
}
