import { type Answer, by, type Lay } from "./answer.ts";

/** What a walk takes on one tunnel: [min], and whether cloth goes on, comes off, or is lifted or let down where it stays; and whether some comes off that would have stayed. */
export interface Move {
  readonly minutes: number;
  readonly puts: boolean;
  readonly takes: boolean;
  readonly pulls: boolean;
  readonly vents: boolean;
}

/** Cloth that lies in a part of the day; by nights it lies at night alone. */
const lying = ({ taken }: Lay, part: "morning" | "evening"): readonly Answer[] =>
  taken.filter(({ state }) => state !== "nights" || part === "evening");

/** The same cover of the same piece over as many tunnels need not be carried. */
const sameCloth = (a: Answer, b: Answer): boolean =>
  a.cover === b.cover && a.piece === b.piece && a.over.length === b.over.length;

/** Minutes of covers are stated for a hundred feet. */
const HUNDRED_FEET_M = 30.48;

export function moveAt(answer: Answer, tunnel: Answer, walk: Answer, from: Lay, to: Lay): Move {
  const before = lying(from, walk.part === "morning" ? "evening" : "morning");
  const after = lying(to, walk.part);
  const cost = ({ cover }: Answer): Answer => by<Answer>(answer.covers, "cover", cover).minutes;
  const put = after.filter((layer) => !before.some((other) => sameCloth(other, layer)));
  const took = before.filter((layer) => !after.some((other) => sameCloth(other, layer)));
  const lifted = after.filter((layer) =>
    before.some(
      (other) => sameCloth(other, layer) && (other.state === "vented") !== (layer.state === "vented"),
    ),
  );
  const sum =
    put.reduce((all, layer) => all + cost(layer).onMin, 0) +
    took.reduce((all, layer) => all + cost(layer).offMin, 0) +
    lifted.reduce((all, layer) => all + cost(layer).ventMin, 0);
  return {
    minutes: sum * (tunnel.lengthM / HUNDRED_FEET_M) * answer.farm.labour.pace,
    puts: put.length > 0,
    takes: took.length > 0,
    pulls: took.some((layer) => lying(from, walk.part).some((other) => sameCloth(other, layer))),
    vents: lifted.length > 0,
  };
}
