import { type Outcome, settingKey } from "../../src/index.ts";

/** Everything that must hold for any week of real weather; each broken rule as one sentence. */
export function faultsOf(outcome: Outcome): readonly string[] {
  return [
    // The example's cut was made in the example's own weather: in another it may well surprise.
    ...outcome.problems
      .filter(({ code }) => code !== "leaf-surprises")
      .map(({ code }) => `a problem value: ${code}`),
    ...shrinking(outcome),
    ...farFromBest(outcome),
    ...coldNights(outcome),
    ...clothTwice(outcome),
    ...(hasFrost(outcome) && outcome.warnings[0]?.kind !== "frost"
      ? ["frost is predicted but does not come first"]
      : []),
  ];
}

/** More of a cover lies at once than the farm owns. */
const clothTwice = ({ farm, tunnels, walks }: Outcome): readonly string[] =>
  [...new Set(farm.pieces.map(({ cover }) => cover))].flatMap((cover) => {
    const owned = farm.pieces
      .filter((piece) => piece.cover === cover)
      .reduce((sum, { count }) => sum + count, 0);
    return walks.flatMap(({ index, date }) => {
      const lying = tunnels.filter(({ settings, choice }) =>
        settings[choice[index]!]!.some((layer) => layer.cover === cover),
      ).length;
      return lying > owned ? [`${lying} of ${cover} lie on ${date} though ${owned} are owned`] : [];
    });
  });

const hasFrost = ({ warnings }: Outcome): boolean =>
  warnings.some(({ kind, severity }) => kind === "frost" && severity === "danger");

const shrinking = ({ successions }: Outcome): readonly string[] =>
  successions.flatMap(({ succession, sizeNow, atPicks }) => {
    const steps = (["unchanged", "planned"] as const).map((way) => [
      ...(sizeNow === null ? [] : [sizeNow.middle]),
      ...[...atPicks].sort((a, b) => a.pick.at - b.pick.at).map((at) => at[way].middle),
    ]);
    return steps.some((sizes) => sizes.some((size, i) => i > 0 && size < sizes[i - 1]! - 1e-9))
      ? [`${succession.id} shrinks`]
      : [];
  });

/**
 * What a better plan could still add at most where none is proved best, as a share of what the picked greens bring. The bound
 * shares a bed out between selling days, which no plan does, so it may lie some way above the best of them.
 */
const MOST_LEFT = 0.1;

const farFromBest = ({ together }: Outcome): readonly string[] => {
  if (together === null || together.proved) return [];
  const { bound, worth, parts } = together;
  return bound - worth > MOST_LEFT * parts.timing
    ? [`a plan worth ${worth} may lie far below ${bound}, its greens bring ${parts.timing}`]
    : [];
};

/**
 * No tunnel lies bare in a night in which its leaves are more likely than not lost, while a cloth that would save them lies
 * in the shed and some walk before was calm.
 */
export function coldNights({ farm, tunnels, walks, successions }: Outcome): readonly string[] {
  const cutBefore = (id: string, at: number): boolean => {
    const { fate } = successions.find(({ succession }) => succession.id === id)!;
    return fate.kind !== "none" && (fate.kind === "hold" ? fate.cut : fate.pick.at) <= at;
  };
  const inUse = (cover: string, i: number): number =>
    tunnels.filter(({ settings, choice }) => settings[choice[i]!]!.some((layer) => layer.cover === cover))
      .length;
  const owned = (cover: string): number =>
    farm.pieces.filter((piece) => piece.cover === cover).reduce((sum, { count }) => sum + count, 0);
  return tunnels.flatMap(({ tunnel, ledger, choice, settings }) =>
    walks.flatMap(({ index, part, date, at }) => {
      const chosen = settings[choice[index]!]!;
      if (part === "morning" || chosen.length > 0) return [];
      const entries = ledger.filter(({ walk }) => walk === index);
      const bare = entries.find(({ setting }) => setting === "bare")!;
      const lost = bare.successions.filter(({ id, damage }) => damage > 0.5 && !cutBefore(id, at));
      const saves = settings.filter(
        (setting) =>
          setting.length === 1 &&
          inUse(setting[0]!.cover, index) < owned(setting[0]!.cover) &&
          lost.some(({ id }) =>
            entries
              .find((entry) => entry.setting === settingKey(setting))!
              .successions.some((each) => each.id === id && each.damage < 0.25),
          ),
      );
      const calm = walks
        .slice(0, index + 1)
        .some(({ tooWindy, frozen, snow }) => !tooWindy && !frozen && !snow);
      return calm && saves.length > 0
        ? [`${tunnel.id} lies bare on the night of ${date} though ${settingKey(saves[0]!)} lies in the shed`]
        : [];
    }),
  );
}

/** Tunnels with row cover or film lying by day on a day hotter than a limit. */
export function coveredInHeat({ farm, tunnels, walks, weather }: Outcome, hot: number): readonly string[] {
  const warming = (id: string): boolean => ["rowCover", "film"].includes(farm.covers.get(id)!.kind);
  return tunnels.flatMap(({ tunnel, choice, settings }) =>
    walks
      .filter(({ part, date }) => part === "morning" && weather.find((day) => day.date === date)!.high >= hot)
      .filter(({ index }) =>
        settings[choice[index]!]!.some(({ cover, state }) => state !== "nights" && warming(cover)),
      )
      .map(({ date }) => `${tunnel.id} keeps its row cover on by day on ${date}`),
  );
}

/**
 * Successions that reach their size, or are smaller at some pick, later in a warmer copy of the same week with unchanged
 * covers. Compared are those whose crop stays below its optimum all week even in the warmer copy.
 */
export function laterWhenWarmer(
  before: Outcome,
  warmer: Outcome,
  by: number,
): { readonly compared: number; readonly faults: readonly string[] } {
  const faults: string[] = [];
  let compared = 0;
  for (const { succession, crop, reach, atPicks } of before.successions) {
    const tunnel = before.tunnels.find((plan) => plan.tunnel.id === succession.tunnel)!;
    const now = settingKey(tunnel.now);
    const warmest = Math.max(
      ...tunnel.ledger.filter(({ setting }) => setting === now).map(({ highest }) => highest),
    );
    if (warmest + by > crop.growth.optimumLow) continue;
    compared += 1;
    const other = warmer.successions.find((outlook) => outlook.succession.id === succession.id)!;
    if (
      reach.unchanged !== null &&
      (other.reach.unchanged === null || other.reach.unchanged > reach.unchanged)
    ) {
      faults.push(`${succession.id} reaches its size later`);
    }
    for (const { pick, unchanged } of atPicks) {
      const same = other.atPicks.find((at) => at.pick.at === pick.at)!;
      if (same.unchanged.middle < unchanged.middle - 1e-9)
        faults.push(`${succession.id} is smaller at the pick of ${pick.date}`);
    }
  }
  return { compared, faults };
}
