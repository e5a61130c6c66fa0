import type { Setting } from "../farm/index.ts";
import { type Chances, chancesAt } from "./chances.ts";
import type { SuccessionResult } from "./evaluate.ts";
import { hourAt } from "./horizon.ts";
import { type MemberCourse, memberCourse } from "./memberCourse.ts";
import type { Planned } from "./planned.ts";
import type { Scene } from "./scene.ts";
import type { SuccessionTable } from "./successionTable.ts";

/** What the members say of a succession at one of its outlets. */
export type Telling = (result: SuccessionResult) => Chances;

/** The course of a succession under the plan. */
function plannedCourse(
  scene: Scene,
  { at, problem, choice }: Planned,
  { standing, growing }: SuccessionTable,
): MemberCourse {
  const { starts } = scene.horizon;
  const under = (hour: number): Setting => {
    const i = starts.findLastIndex((start) => start <= hour);
    return i < 0 ? at.now : problem.settings[choice[Math.min(i, choice.length - 1)]!]!;
  };
  return memberCourse(scene, at.tunnel.id, standing.crop, growing.origin, growing.notUp, under);
}

/** The course of each succession under the plan, followed once. */
export type Courses = (planned: Planned, table: SuccessionTable) => MemberCourse;

export function coursesOf(scene: Scene): Courses {
  const known = new Map<SuccessionTable, MemberCourse>();
  return (planned, table) => {
    const course = known.get(table) ?? plannedCourse(scene, planned, table);
    known.set(table, course);
    return course;
  };
}

/** What the members of a course say, each outlet worked out once. */
export function tellOf(scene: Scene, { standing, growing }: SuccessionTable, along: MemberCourse): Telling {
  const known = new Map<SuccessionResult, Chances>();
  return (result) => {
    const before = known.get(result);
    if (before !== undefined) return before;
    const hour = hourAt(scene.weather, result.outlet!.at);
    const made = chancesAt(growing, standing.crop, along, hour, result.thermalTime, scene.settings);
    known.set(result, made);
    return made;
  };
}
