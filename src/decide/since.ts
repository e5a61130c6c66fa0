import { lyingAt, type Setting, settingKey, type Tunnel } from "../farm/index.ts";
import type { IssuedChange, IssuedPromise, IssuedSheet } from "../folder/index.ts";
import { type Instant, localDate } from "../quantity/index.ts";
import { calmPrice, differs, FREE } from "./calm.ts";
import { without } from "./explain.ts";
import { decidedBetween } from "./gain.ts";
import type { Joint } from "./joint.ts";
import type { Change, LimitName, SuccessionOutlook, Walk } from "./outcome.ts";
import type { FarmPlan, Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";
import type { TunnelNow } from "./tunnelNow.ts";
import { NOW } from "./tunnelProblem.ts";

/** What is to be done on a tunnel at a walk; the same setting twice: it stays as it is. */
export interface Instruction {
  readonly from: Setting;
  readonly to: Setting;
}

/** An instruction of the sheet given out that the plan changes, or one that it adds. */
export interface ChangedInstruction {
  readonly walk: Walk;
  readonly tunnel: Tunnel;
  readonly was: Instruction;
  readonly is: Instruction;
  /** What gains most by it against doing as the sheet says at this walk; "limit": a limit forbids that, or the cloth is gone. */
  readonly decidedBy: Change["decidedBy"];
  /** The limit that forbids it; null: none, or the cloth is gone. */
  readonly limit: LimitName | null;
}

/** A cut of the sheet given out that the plan moves, sells otherwise, or no longer makes; or one that it adds. */
export interface ChangedCut {
  readonly succession: string;
  /** null: not to be cut in the days both plan. */
  readonly was: PlannedCut | null;
  readonly is: PlannedCut | null;
}

export interface PlannedCut {
  readonly at: Instant;
  readonly as: "salad" | "braising" | "small";
}

/** A cover the sheet had changed before now, of which no note tells. */
export interface Unnoted {
  readonly tunnel: Tunnel;
  readonly walk: IssuedChange["walk"];
  readonly cover: string;
  readonly state: Setting[number]["state"] | "off";
}

/** A plan beside the sheet given out before it. */
export interface SinceIssued {
  /** Moment that sheet was made for. */
  readonly on: Instant;
  /** Worth a changed instruction had to bring. */
  readonly price: number;
  /** Walks from now on that the sheet planned for. */
  readonly walks: number;
  /** By walk, then in the order of the tunnels. */
  readonly changed: readonly ChangedInstruction[];
  /** In the order they are to be made, or were. */
  readonly cuts: readonly ChangedCut[];
  readonly unnoted: readonly Unnoted[];
  readonly promises: readonly IssuedPromise[];
}

/** The schedule that does at one walk as the sheet says and else as planned; null: it cannot be done any more. */
function asIssued({ problem, schedule }: Planned, walk: number): readonly number[] | null {
  const asked = problem.calm!.entered[walk]!;
  if (asked < 0) return without(schedule, walk);
  const lay = problem.lays.findIndex(
    ({ setting }, l) => setting === asked && problem.possible[walk * problem.lays.length + l],
  );
  if (lay < 0) return null;
  const next = schedule.findIndex((s, i) => i > walk && s !== schedule[i - 1]);
  return schedule.map((s, i) => (i >= walk && (next < 0 || i < next) ? lay : s));
}

function changedOn(
  planned: Planned,
  tunnel: number,
  joint: Joint,
  issued: IssuedSheet,
  walks: readonly Walk[],
): readonly ChangedInstruction[] {
  const { at, problem, schedule } = planned;
  const settingAt = (lay: number): Setting => problem.settings[problem.lays[lay]!.setting]!;
  return schedule.flatMap((to, i): readonly ChangedInstruction[] => {
    const from = i === 0 ? NOW : schedule[i - 1]!;
    if (!differs(problem, i, from, to)) return [];
    const walk = walks[i]!;
    const asked = issued.changes.find(
      (change) =>
        change.tunnel === at.tunnel.id && change.walk.date === walk.date && change.walk.part === walk.part,
    );
    const other = asIssued(planned, i);
    const lies = settingAt(from);
    const { decidedBy, limit } =
      other === null
        ? ({ decidedBy: "limit", limit: null } as const)
        : decidedBetween(planned, joint, joint.instead(tunnel, other));
    return [
      {
        walk,
        tunnel: at.tunnel,
        was: asked ?? { from: lies, to: lies },
        is: { from: lies, to: settingAt(to) },
        decidedBy,
        limit,
      },
    ];
  });
}

const ofCover = (setting: Setting, cover: string): Setting =>
  setting.filter((layer) => layer.cover === cover);

/** Covers of past instructions that by the notes never lay as they were to, until the next instruction. */
function unnotedOn(
  { tunnel, history }: TunnelNow,
  { changes }: IssuedSheet,
  on: Instant,
): readonly Unnoted[] {
  const past = changes.filter((change) => change.tunnel === tunnel.id && change.walk.at < on);
  return past.flatMap(({ walk, from, to }, i) => {
    const end = past[i + 1]?.walk.at ?? on;
    const lain = [
      lyingAt(history, walk.at),
      ...history.filter(({ at }) => at > walk.at && at <= end).map(({ setting }) => setting),
    ];
    const covers = [...new Set([...from, ...to].map(({ cover }) => cover))];
    return covers.flatMap((cover): readonly Unnoted[] => {
      const [before, after] = [from, to].map((setting) => settingKey(ofCover(setting, cover)));
      if (before === after || lain.some((setting) => settingKey(ofCover(setting, cover)) === after))
        return [];
      return [{ tunnel, walk, cover, state: ofCover(to, cover)[0]?.state ?? "off" }];
    });
  });
}

/** Cuts of the days both plan that come at another hour or as something else; beds cut since then are not told. */
function cutsChanged(
  { farm, horizon }: Scene,
  issued: IssuedSheet,
  outlooks: readonly SuccessionOutlook[],
): readonly ChangedCut[] {
  const end = issued.walks.at(-1)?.at;
  const until = end === undefined ? horizon.on : Math.min(end, horizon.walks.at(-1)?.at ?? end);
  const lastDay = localDate(farm.place.zone, until as Instant);
  const within = (at: Instant): boolean => at >= horizon.on && localDate(farm.place.zone, at) <= lastDay;
  const cutSince = new Set(
    farm.notes.flatMap((note) => (note.kind === "cut" && note.at > issued.on ? [note.succession] : [])),
  );
  return outlooks
    .flatMap(({ succession: { id }, fate, stage }): readonly ChangedCut[] => {
      const then = issued.successions.find(({ succession }) => succession === id);
      if (then === undefined || stage === "finished" || cutSince.has(id)) return [];
      // A cut that was to be made by now is for the grower to note, not for the plan to move.
      if (then.fate !== null && then.fate.cut < horizon.on) return [];
      const was =
        then.fate !== null && within(then.fate.cut) ? { at: then.fate.cut, as: then.fate.as } : null;
      const at = fate.kind === "none" ? null : fate.kind === "hold" ? fate.cut : fate.pick.at;
      const is = fate.kind !== "none" && at !== null && within(at) ? { at, as: fate.as } : null;
      return was?.at === is?.at && was?.as === is?.as ? [] : [{ succession: id, was, is }];
    })
    .sort((a, b) => (a.is ?? a.was)!.at - (b.is ?? b.was)!.at);
}

/** The plan beside the sheet given out before it: what is changed and why, and what was to be done and is not noted. */
export function sinceIssued(
  scene: Scene,
  { plans, joint }: FarmPlan,
  outlooks: readonly SuccessionOutlook[],
): SinceIssued | null {
  const { issued, horizon } = scene;
  if (issued === null) return null;
  const asked = horizon.walks.filter((_, i) =>
    plans.some(({ problem }) => (problem.calm?.entered[i] ?? FREE) !== FREE),
  );
  return {
    on: issued.on,
    price: calmPrice(scene),
    walks: asked.length,
    changed: plans
      .flatMap((planned, t) => changedOn(planned, t, joint, issued, horizon.walks))
      .sort((a, b) => a.walk.at - b.walk.at),
    cuts: cutsChanged(scene, issued, outlooks),
    unnoted: plans
      .flatMap(({ at }) => unnotedOn(at, issued, horizon.on))
      .sort((a, b) => a.walk.at - b.walk.at),
    promises: issued.promises,
  };
}
