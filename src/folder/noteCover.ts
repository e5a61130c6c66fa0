import { type CoverState, coverHistory, type Farm, type Layer, lyingAt, type Tunnel } from "../farm/index.ts";
import { list } from "../problem/index.ts";
import type { Instant } from "../quantity/index.ts";

/** Covers a line means; else words no cover goes by, or what was expected and received, and the next step. */
export type CoversMeant =
  | { readonly covers: readonly string[] }
  | { readonly unknown: readonly string[] }
  | { readonly expected: string; readonly received: string; readonly hint: string };

/** Words that say nothing of which cover it is. */
const ANY = new Set(["cover", "covers", "cloth", "cloths"]);

const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replace(/(\d)(?=[a-z])/gu, "$1 ")
    .split(/[^\p{L}\p{N}.]+/u)
    .filter((word) => word !== "");

/** Names of each cover, its own and those of the pieces of it, each as its words. */
function namesOfCovers({ covers, pieces }: Farm): ReadonlyMap<string, readonly (readonly string[])[]> {
  return new Map(
    [...covers.values()].map(({ id, name }) => [
      id,
      [
        id,
        name,
        name.replace(/ \([^()]*\)|,(?= )/gu, ""),
        ...pieces.filter((piece) => piece.cover === id).map((piece) => piece.id),
      ].map(wordsIn),
    ]),
  );
}

/** Every word some cover goes by. */
export const wordsOfCovers = (farm: Farm): readonly string[] => [
  ...new Set([...ANY, ...[...namesOfCovers(farm).values()].flat(2)]),
];

const same = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((word) => b.includes(word));

/** Covers some words may mean: those called exactly so, else all that go by every one of the words. */
function called(words: readonly string[], farm: Farm): readonly string[] {
  const names = namesOfCovers(farm);
  if (words.every((word) => ANY.has(word))) return [...names.keys()];
  const exact = [...names].filter(([, own]) => own.some((name) => same(name, words)));
  const fitting = [...names].filter(([, own]) => {
    const all = new Set([...ANY, ...own.flat()]);
    return words.every((word) => all.has(word));
  });
  return (exact.length > 0 ? exact : fitting).map(([id]) => id);
}

/** What lay on a tunnel just before a moment; where nothing did, what lies at it. */
function lyingBefore(farm: Farm, tunnel: Tunnel, at: Instant): readonly Layer[] {
  const history = coverHistory(farm, tunnel);
  const before = lyingAt(history, (at - 1) as Instant);
  return before.length > 0 ? before : lyingAt(history, at);
}

/** Tunnels without the sections from which nothing can be taken while something lies on another one of the same. */
export function coveredParts(tunnels: readonly Tunnel[], farm: Farm, at: Instant): readonly Tunnel[] {
  const covered = tunnels.filter((tunnel) => lyingBefore(farm, tunnel, at).length > 0);
  return tunnels.filter(
    (tunnel) =>
      covered.includes(tunnel) ||
      !covered.some(({ section }) => section !== undefined && section.of === tunnel.section?.of),
  );
}

const several = (covers: readonly string[], tunnel: Tunnel, state: CoverState): CoversMeant => ({
  expected: `one cover, ${list(covers, "or")}`,
  received: "words that fit more than one",
  hint: `Name it, like "${tunnel.name} ${covers[0]!} ${state}".`,
});

/** The covers taken off, of those the words fit and those that lie there. */
function takenOff(
  fits: readonly string[],
  state: "off" | "bare",
  tunnel: Tunnel,
  lying: readonly Layer[],
): CoversMeant {
  const there = lying.map(({ cover }) => cover);
  const fitting = there.filter((cover) => fits.includes(cover));
  if (fitting.length === 1 || (state === "bare" && fitting.length > 0)) return { covers: fitting };
  if (fitting.length > 1) return several(fitting, tunnel, "off");
  // Nothing is known to lie there: whoever names the cover knows better.
  if (there.length === 0 && state === "off" && fits.length === 1) return { covers: fits };
  return there.length === 0
    ? {
        expected: `a cover on ${tunnel.name}`,
        received: "none by then",
        hint: "Take the line out, or note first what was put on.",
      }
    : {
        expected: `a cover that lies on ${tunnel.name}, ${list(there, "or")}`,
        received: "another",
        hint: `Name it, like "${tunnel.name} ${there[0]!} off".`,
      };
}

/** Covers some words may mean, wherever these are; else words no cover goes by. */
export function coversCalled(
  words: readonly string[],
  farm: Farm,
): Extract<CoversMeant, { covers: unknown } | { unknown: unknown }> {
  const known = new Set(wordsOfCovers(farm));
  const unknown = words.filter((word) => wordsIn(word).some((part) => !known.has(part)));
  const covers = called(words.flatMap(wordsIn), farm);
  if (unknown.length > 0) return { unknown };
  return covers.length === 0 ? { unknown: words } : { covers };
}

/**
 * The covers of one tunnel that words mean, by what lies there and what is owned.
 *
 * @param words - What is said of the cover; nothing at all means the one it can only be.
 * @param state - "bare": everything that lies there is taken off.
 */
export function coversMeant(
  words: readonly string[],
  state: CoverState | "bare",
  tunnel: Tunnel,
  farm: Farm,
  at: Instant,
): CoversMeant {
  const said = coversCalled(words, farm);
  if ("unknown" in said) return said;
  const { covers: fits } = said;
  const lying = lyingBefore(farm, tunnel, at);
  if (state === "bare" || state === "off") return takenOff(fits, state, tunnel, lying);
  // Shade and net lie or do not; only who names them says otherwise.
  const may = fits.filter(
    (cover) => fits.length === 1 || state === "on" || /rowCover|film/u.test(farm.covers.get(cover)!.kind),
  );
  if (may.length === 0)
    return {
      expected: "row cover or film",
      received: "one that only lies or does not",
      hint: 'Say "on" or "off".',
    };
  const changed = lying.filter((layer) => may.includes(layer.cover) && layer.state !== state);
  const owned = new Set(farm.pieces.map(({ cover }) => cover));
  const atHand = may.filter((cover) => owned.size === 0 || owned.has(cover));
  const meant = may.length === 1 ? may : changed.length === 1 ? [changed[0]!.cover] : atHand;
  return meant.length === 1 ? { covers: meant } : several(meant.length > 1 ? meant : may, tunnel, state);
}
