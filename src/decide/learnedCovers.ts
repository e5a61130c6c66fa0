import type { Cover, Farm, KeptLearned, KeptWhat, Settings } from "../farm/index.ts";
import { type Factor, linearSpread, shadeFactor, warmthFactor } from "../learn/index.ts";
import { celsiusDifference, groupBy } from "../quantity/index.ts";
import { type StripPair, stripPairs } from "./checkStrips.ts";
import { type CoverPair, coverPairs } from "./coverPairs.ts";
import type { Scene } from "./scene.ts";

/** What a farm's check strips say of one cloth on one crop, beside what was expected. */
export interface LearnedStrip {
  readonly crop: string;
  readonly strips: number;
  /** Means. [d] */
  readonly gained: number;
  readonly expected: number;
  /** Part of the number that is the farm's own. [0–1] */
  readonly own: number;
}

/** A factor on what a cover does by day, by night or as shade. */
export interface LearnedFactor extends Factor {
  readonly what: Exclude<KeptWhat, "requirement">;
  /** null: it goes by what was measured. */
  readonly kept: KeptLearned | null;
}

/** What a farm has learned of one cover. */
export interface LearnedCover {
  readonly cover: string;
  readonly factors: readonly LearnedFactor[];
  readonly strips: readonly LearnedStrip[];
}

const FOUR_IN_FIVE = 1.2816;

const factorOf = (factor: number, spread: number, own: number, pairs: number): Factor => ({
  factor,
  low: factor * Math.exp(-FOUR_IN_FIVE * spread),
  high: factor * Math.exp(FOUR_IN_FIVE * spread),
  spread,
  own,
  pairs,
});

/** What strips add to what pairs of loggers say: they weigh on what is left of its spread. */
function withStrips(logged: Factor, strips: readonly StripPair[], { warmthFloor }: Settings): Factor {
  if (strips.length === 0) return logged;
  const { factor, spread, own, pairs } = warmthFactor(logged.spread, warmthFloor, strips);
  return factorOf(logged.factor * factor, spread, 1 - (1 - logged.own) * (1 - own), logged.pairs + pairs);
}

function factorsOf(
  { id, kind }: Cover,
  pairs: readonly CoverPair[],
  strips: readonly StripPair[],
  kept: readonly KeptLearned[],
  settings: Settings,
): readonly LearnedFactor[] {
  const { warmthSpread, shadeSpread, warmthFloor } = settings;
  const as = (what: LearnedFactor["what"], learned: () => Factor): LearnedFactor => {
    const own = kept.find((each) => each.what === what && each.name === id) ?? null;
    if (own === null) return { ...learned(), what, kept: own };
    return { ...factorOf(Math.exp(own.value.shift), own.value.spread, 1, 0), what, kept: own };
  };
  if (kind === "shade") return [as("shade", () => shadeFactor(shadeSpread, warmthFloor, strips))];
  return (["day", "night"] as const).map((part) =>
    as(`${part} warmth`, () =>
      withStrips(
        warmthFactor(
          warmthSpread,
          warmthFloor,
          pairs.filter((pair) => pair.part === part),
        ),
        strips,
        settings,
      ),
    ),
  );
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** What strips say by crop; how much of it is the farm's own, by what the cover's spread was without them. */
const stripsOf = (strips: readonly StripPair[], spread: number): readonly LearnedStrip[] =>
  [...groupBy(strips, ({ crop }) => crop)].map(([crop, own]) => {
    const information = own.reduce((sum, { expected, error }) => sum + (expected / error) ** 2, 0);
    return {
      crop,
      strips: own.length,
      gained: mean(own.map(({ measured, pace }) => measured / Math.max(1, pace))),
      expected: mean(own.map(({ expected, pace }) => expected / Math.max(1, pace))),
      own: information / (information + 1 / spread ** 2),
    };
  });

/** What pairs and strips say of every cover they are about, and of those the grower keeps something of. */
export function learnCovers(
  { covers, kept = [] }: Pick<Farm, "covers" | "kept">,
  pairs: readonly CoverPair[],
  strips: readonly StripPair[],
  settings: Settings,
): readonly LearnedCover[] {
  return [...covers.values()].flatMap((cover): readonly LearnedCover[] => {
    const [logged, beside] = [pairs, strips].map((all) => all.filter((pair) => pair.cover === cover.id)) as [
      CoverPair[],
      StripPair[],
    ];
    const own = kept.filter(({ what, name }) => what !== "requirement" && name === cover.id);
    if (logged.length + beside.length + own.length === 0) return [];
    const factors = factorsOf(cover, logged, beside, own, settings);
    const spread = linearSpread(cover.kind === "shade" ? settings.shadeSpread : settings.warmthSpread);
    return [{ cover: cover.id, factors, strips: stripsOf(beside, spread) }];
  });
}

/** A cover as it does on this farm. What it promises against frost only ever shrinks. */
function asLearned(cover: Cover, { factors }: LearnedCover, { warmthSpread, shadeSpread }: Settings): Cover {
  const of = (what: LearnedFactor["what"]): LearnedFactor | undefined =>
    factors.find((each) => each.what === what);
  const [day, night, shade] = [of("day warmth"), of("night warmth"), of("shade")];
  const warmer = (gain: number): typeof cover.frostCredit => celsiusDifference(gain * (night?.factor ?? 1));
  return {
    ...cover,
    day: { ...cover.day, sun: cover.day.sun * (day?.factor ?? 1) },
    night: { clear: warmer(cover.night.clear), cloudy: warmer(cover.night.cloudy) },
    frostCredit: celsiusDifference(cover.frostCredit * Math.min(1, night?.factor ?? 1)),
    learned: {
      day: day?.spread ?? warmthSpread,
      night: night?.spread ?? warmthSpread,
      shade: shade?.spread ?? shadeSpread,
      cooling: shade?.factor ?? 1,
    },
  };
}

/** A farm whose covers do what was learned of them. */
export function withLearnedCovers(farm: Farm, learned: readonly LearnedCover[], settings: Settings): Farm {
  if (learned.length === 0) return farm;
  const covers = new Map(farm.covers);
  for (const each of learned) covers.set(each.cover, asLearned(covers.get(each.cover)!, each, settings));
  return { ...farm, covers };
}

/** The farm with its covers as loggers and check strips have them; strips are weighed against what loggers left open. */
export function coversLearned(stage: Pick<Scene, "farm" | "weather" | "logs" | "horizon" | "settings">): {
  readonly farm: Farm;
  readonly covers: readonly LearnedCover[];
} {
  const { farm, settings } = stage;
  const pairs = coverPairs(stage);
  const logged = withLearnedCovers(farm, learnCovers(farm, pairs, [], settings), settings);
  const covers = learnCovers(farm, pairs, stripPairs({ ...stage, farm: logged }), settings);
  return { farm: withLearnedCovers(farm, covers, settings), covers };
}
