import { type Answer, bedsOf, by, plannedOf } from "./answer.ts";
import { bedAt } from "./bed.ts";
import { near } from "./near.ts";

/** Row cover lies in the night, and no film over it. */
function staysWet(answer: Answer, tunnel: Answer, setting: string): boolean {
  const kinds = by<Answer>(tunnel.settings, "key", setting).layers.map(
    ({ cover }: Answer) => by<Answer>(answer.covers, "cover", cover).kind,
  );
  return kinds.includes("rowCover") && !kinds.includes("film");
}

/** What each outlet tells of rain before it and of what wet row cover leaves, against the rule; and whether the plan cuts wet. */
export function wetFaults(answer: Answer, tunnel: Answer): readonly string[] {
  const { settings, walks } = answer;
  const schedule = plannedOf(answer).schedules.get(tunnel.tunnel)!;
  return bedsOf(answer, tunnel.tunnel).flatMap((succession: Answer) => {
    const { basis, atFate, succession: id } = succession;
    const faults: string[] = basis.outlets.flatMap((outlet: Answer) => {
      const where = `${id} at ${outlet.at.clock}`;
      const morning = Number(outlet.at.clock.slice(11, 13)) < 12;
      const walk = walks[outlet.walk];
      const wet = walk !== undefined && outlet.rainMm >= settings.wetRain;
      const own = wet && walk.part === "evening" && outlet.at.instant >= walks[0].at.instant;
      const night = wet ? (own ? "own" : "before") : null;
      return [
        ...(morning || outlet.rainMm === 0 ? [] : [`${where}: rain counts after noon`]),
        ...(night === outlet.wetBy ? [] : [`${where}: wet by ${outlet.wetBy}, ${night} recomputed`]),
        ...outlet.added
          .filter(
            ({ setting, keeps }: Answer) =>
              !near(wet && staysWet(answer, tunnel, setting) ? 1 - settings.wetCutLoss : 1, keeps),
          )
          .map(({ setting }: Answer) => `${where}: what wet leaves under ${setting}`),
      ];
    });
    const planned = bedAt(answer, tunnel, succession, schedule, basis.cut);
    return atFate !== null && atFate.wet !== planned.wet ? [...faults, `${id}: cut wet or dry`] : faults;
  });
}
