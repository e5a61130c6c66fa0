import { type Answer, by, type Lay, layBefore, type Plan, wageOf } from "./answer.ts";
import { type Bed, bedAt, undatedLoss } from "./bed.ts";
import { ordersPart } from "./market.ts";
import { type Move, moveAt } from "./moves.ts";

/** One tunnel under a plan. */
export interface TunnelWhole {
  readonly tunnel: Answer;
  readonly schedule: readonly Lay[];
  readonly moves: readonly Move[];
  readonly beds: readonly Bed[];
  readonly parts: Readonly<Record<"timing" | "stress" | "damage" | "again" | "labour", number>>;
}

/** What a plan comes to, recomputed. */
export interface Whole {
  readonly tunnels: readonly TunnelWhole[];
  readonly parts: Readonly<Record<"timing" | "stress" | "damage" | "again" | "labour" | "orders", number>>;
  readonly worth: number;
}

const OWN = ["timing", "stress", "damage", "again", "labour"] as const;

export function wholeOf(answer: Answer, { schedules, cuts }: Plan): Whole {
  const tunnels = answer.tunnels.map((tunnel: Answer): TunnelWhole => {
    const schedule = schedules.get(tunnel.tunnel)!;
    const moves = answer.walks.map((walk: Answer) =>
      moveAt(answer, tunnel, walk, layBefore(tunnel, schedule, walk.walk), schedule[walk.walk]!),
    );
    const beds = [...cuts]
      .map(([id, cut]) => ({ succession: by<Answer>(answer.successions, "succession", id), cut }))
      .filter(({ succession }) => succession.tunnel === tunnel.tunnel)
      .map(({ succession, cut }) => bedAt(answer, tunnel, succession, schedule, cut));
    const sum = (part: "timing" | "stress" | "damage" | "again"): number =>
      beds.reduce((all, bed) => all + bed[part], 0);
    const minutes = moves.reduce((all: number, move: Move) => all + move.minutes, 0);
    return {
      tunnel,
      schedule,
      moves,
      beds,
      parts: {
        timing: sum("timing"),
        stress: sum("stress"),
        damage: sum("damage") + undatedLoss(answer, tunnel, schedule),
        again: sum("again"),
        labour: (-minutes * wageOf(answer)) / 60,
      },
    };
  });
  const sum = (part: (typeof OWN)[number]): number =>
    tunnels.reduce((all: number, { parts }: TunnelWhole) => all + parts[part], 0);
  const parts = {
    timing: sum("timing"),
    stress: sum("stress"),
    damage: sum("damage"),
    again: sum("again"),
    labour: sum("labour"),
    orders: ordersPart(
      answer,
      tunnels.flatMap(({ beds }: TunnelWhole) => beds),
    ),
  };
  return { tunnels, parts, worth: Object.values(parts).reduce((all, part) => all + part, 0) };
}
