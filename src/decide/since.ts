import { lyingAt, type Setting, settingKey, type Tunnel } from "../farm/index.ts";
import type { IssuedChange, IssuedPromise, IssuedSheet } from "../folder/index.ts";
import type { Instant } from "../quantity/index.ts";
import { calmPrice, differs, FREE } from "./calm.ts";
import { without } from "./explain.ts";
import { decidedBetween } from "./gain.ts";
import type { Joint } from "./joint.ts";
import type { Change, Walk } from "./outcome.ts";
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
    return [
      {
        walk,
        tunnel: at.tunnel,
        was: asked ?? { from: lies, to: lies },
        is: { from: lies, to: settingAt(to) },
        decidedBy:
          other === null ? "limit" : decidedBetween(planned, joint, joint.instead(tunnel, other)).decidedBy,
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

/** The plan beside the sheet given out before it: what is changed and why, and what was to be done and is not noted. */
export function sinceIssued(scene: Scene, { plans, joint }: FarmPlan): SinceIssued | null {
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
    unnoted: plans
      .flatMap(({ at }) => unnotedOn(at, issued, horizon.on))
      .sort((a, b) => a.walk.at - b.walk.at),
    promises: issued.promises,
  };
}
