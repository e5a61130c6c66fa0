import { coverHistory, settingKey } from "../farm/index.ts";
import type { Instant } from "../quantity/index.ts";
import type { StripPlace } from "./checkStrips.ts";
import { evaluate, outletResults } from "./evaluate.ts";
import { hourAt } from "./horizon.ts";
import { spreadsOf } from "./memberCourse.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";

/** A bed on which a strip could be left, and when both would be measured. */
export interface StripChance extends StripPlace {
  readonly tunnel: string;
  /** The bed's cut under the plan. */
  readonly at: Instant;
}

/** The schedule of a tunnel without one cover; null: that cannot be laid. */
function bareOf({ problem, choice }: Planned, cover: string): readonly number[] | null {
  const bare = choice.map((setting) => {
    const key = settingKey(problem.settings[setting]!.filter((layer) => layer.cover !== cover));
    return problem.lays.findIndex((lay) => settingKey(problem.settings[lay.setting]!) === key);
  });
  return bare.includes(-1) ? null : bare;
}

/**
 * Beds the plan lays a cover on that never lay there since they came up: a stretch left bare beside it shows by the cut what the
 * cover does. What hangs on a cover is what the plans of all tunnels would be worth less were it left away.
 */
export function stripPlaces(scene: Scene, plans: readonly Planned[]): readonly StripChance[] {
  const { farm, weather, settings } = scene;
  const covers = [...farm.covers.values()].filter(({ kind }) => kind !== "net");
  return covers.flatMap(({ id, kind }): readonly StripChance[] => {
    const using = plans.flatMap((planned) => {
      const bare = bareOf(planned, id);
      const { problem, choice, chosen } = planned;
      if (bare === null || !choice.some((s) => problem.settings[s]!.some(({ cover }) => cover === id)))
        return [];
      return [{ planned, bare, worth: Math.abs(chosen.worth - evaluate(problem, bare).worth) }];
    });
    const worth = using.reduce((sum, each) => sum + each.worth, 0);
    return using.flatMap(({ planned: { at, problem, chosen }, bare }) => {
      const history = coverHistory(farm, at.tunnel);
      return chosen.successions.flatMap(({ table, outlet, thermalTime }): readonly StripChance[] => {
        const { origin } = table.growing;
        const last = history.findLastIndex(({ at: since }) => hourAt(weather, since) <= origin);
        const lain = history
          .slice(Math.max(0, last))
          .some(({ setting }) => setting.some((layer) => layer.cover === id));
        if (outlet === null || lain) return [];
        const left = outletResults(problem, table, bare)[table.outlets.indexOf(outlet)]!;
        const { day, night, shade } = spreadsOf([{ cover: id, state: "on" }], farm.covers, settings);
        return [
          {
            succession: table.standing.succession.id,
            tunnel: at.tunnel.id,
            cover: id,
            at: outlet.at,
            expected: thermalTime - left.thermalTime,
            error: thermalTime * settings.stripError,
            spread: kind === "shade" ? shade : Math.max(day, night),
            worth,
          },
        ];
      });
    });
  });
}
