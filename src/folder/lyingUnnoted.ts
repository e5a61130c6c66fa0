import type { Farm, Piece } from "../farm/index.ts";
import { list, type Problem } from "../problem/index.ts";
import type { Placed } from "./successionsFile.ts";

/**
 * Cloth that pieces.csv says lies on a tunnel with beds, and that no note speaks of: when it went on is not known, so it
 * counts as lying since the beds were sown. Told once, for all of them.
 */
export function lyingUnnoted(
  file: string,
  pieces: readonly Placed<Piece>[],
  { tunnels, successions, notes }: Farm,
): readonly Problem[] {
  const found = pieces.flatMap(({ line, value: { cover, liesOn } }) =>
    tunnels
      .filter(
        ({ id }) =>
          liesOn.includes(id) &&
          successions.some((one) => one.tunnel === id) &&
          !notes.some((note) => note.kind === "cover" && note.tunnel === id && note.cover === cover),
      )
      .map(({ id, name }) => ({ line, cover, id, name })),
  );
  const [first] = found;
  if (first === undefined) return [];
  const sown = successions
    .filter(({ tunnel }) => tunnel === first.id)
    .map((succession) => succession.sown)
    .sort()[0]!;
  return [
    {
      code: "cover-undated",
      weight: "needsYou",
      file,
      line: first.line,
      column: "lies on",
      expected: `a note of when the cloth went on ${list([...new Set(found.map(({ name }) => name))])}`,
      received: "none",
      hint: `Taken as lying since sowing. Note when it went on, like "leafpace note ${first.name} ${first.cover} on, ${sown} 18:00".`,
    },
  ];
}
