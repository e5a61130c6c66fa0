import { type Farm, type Note, type SeasonOfYear, seasonOf } from "../farm/index.ts";
import {
  type GrowthEstimate,
  type KeptRequirement,
  type LearnedCrop,
  learnRequirement,
} from "../learn/index.ts";
import { groupBy, localDate } from "../quantity/index.ts";
import { type Grown, grownOf } from "./grown.ts";
import type { LearnedCover } from "./learnedCovers.ts";
import type { Scene } from "./scene.ts";
import { tunnelNow } from "./tunnelNow.ts";

/** How many notes of each kind speak of a requirement. */
export interface NoteCount {
  readonly leaf: number;
  readonly cut: number;
  readonly notReady: number;
}

/** What is known of one succession, with what it was learned from. */
export interface LearnedSuccession {
  readonly grown: Grown;
  /** One for each of its parts. */
  readonly estimates: readonly GrowthEstimate[];
  readonly season: SeasonOfYear;
  /** Notes about it, and about other sowings of its crop: of its season of the year, and of the others. */
  readonly here: NoteCount;
  readonly sameSeason: NoteCount;
  readonly elsewhere: NoteCount;
}

/** What the notes of a farm have taught. */
export interface Learned {
  readonly successions: ReadonlyMap<string, LearnedSuccession>;
  /** By crop, those with a note or with something kept; and how many notes, all year and by season. */
  readonly crops: ReadonlyMap<
    string,
    LearnedCrop & { readonly notes: ReadonlyMap<SeasonOfYear | null, NoteCount> }
  >;
  readonly covers: readonly LearnedCover[];
}

const kindOf = (note: Note): keyof NoteCount | null =>
  note.kind === "not ready" ? "notReady" : note.kind === "leaf" || note.kind === "cut" ? note.kind : null;

const countOf = (grown: readonly Grown[]): NoteCount => {
  const kinds = grown.flatMap(({ parts }) =>
    parts.flatMap(({ told }) => told.map(({ note }) => kindOf(note))),
  );
  const of = (kind: keyof NoteCount): number => kinds.filter((each) => each === kind).length;
  return { leaf: of("leaf"), cut: of("cut"), notReady: of("notReady") };
};

/** What the grower keeps of a crop's requirement. */
function keptOf({ kept = [] }: Farm, crop: string): KeptRequirement {
  const own = kept.filter(({ what, name }) => what === "requirement" && name === crop);
  return {
    farm: own.find(({ season }) => season === null)?.value ?? null,
    seasons: new Map(own.flatMap(({ season, value }) => (season === null ? [] : [[season, value] as const]))),
  };
}

/**
 * Everything the notes say of requirements, worked out anew from the notes alone: nothing is remembered from run to run, so a
 * note taken back is as if it had never been.
 */
export function learnedOf(stage: Omit<Scene, "learned">, covers: readonly LearnedCover[]): Learned {
  const { farm, horizon, settings } = stage;
  const { zone, latitude } = farm.place;
  const year = Number(localDate(zone, horizon.on).slice(0, 4));
  const grown = farm.tunnels.flatMap((tunnel) => {
    const sown = farm.successions.filter((succession) => succession.tunnel === tunnel.id);
    if (sown.length === 0) return [];
    const { unchanged } = tunnelNow(stage, tunnel);
    return sown.map((succession) => grownOf(stage, succession, unchanged));
  });
  const seasonIn = ({ succession }: Grown): SeasonOfYear => seasonOf(succession.sown, latitude);
  const successions = new Map<string, LearnedSuccession>();
  const crops = new Map<
    string,
    LearnedCrop & { readonly notes: ReadonlyMap<SeasonOfYear | null, NoteCount> }
  >();
  const byCrop = groupBy(grown, ({ succession }) => succession.crop);
  for (const id of farm.crops.keys()) {
    const all = byCrop.get(id) ?? [];
    const kept = keptOf(farm, id);
    const growths = all.flatMap((each) =>
      each.parts.map(({ regrowth, told }) => ({
        sowing: each.succession.id,
        season: seasonIn(each),
        age: Math.max(0, year - Number(each.succession.sown.slice(0, 4))),
        regrowth,
        seen: told.map(({ seen }) => seen),
      })),
    );
    const learned = learnRequirement(farm.crops.get(id)!.requirementSpread, growths, kept, settings);
    const seasons = [...new Set([...all.map(seasonIn), ...kept.seasons.keys()])];
    const notes = new Map<SeasonOfYear | null, NoteCount>([
      [null, countOf(all)],
      ...seasons.map((season) => [season, countOf(all.filter((each) => seasonIn(each) === season))] as const),
    ]);
    if (growths.some(({ seen }) => seen.length > 0) || kept.farm !== null || kept.seasons.size > 0)
      crops.set(id, { ...learned, notes });
    let next = 0;
    for (const each of all) {
      const season = seasonIn(each);
      const others = all.filter((other) => other !== each);
      successions.set(each.succession.id, {
        grown: each,
        estimates: learned.growths.slice(next, next + each.parts.length),
        season,
        here: countOf([each]),
        sameSeason: countOf(others.filter((other) => seasonIn(other) === season)),
        elsewhere: countOf(others.filter((other) => seasonIn(other) !== season)),
      });
      next += each.parts.length;
    }
  }
  return { successions, crops, covers };
}
