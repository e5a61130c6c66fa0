import type { MadeFrom } from "../../decide/index.ts";
import type { Farm } from "../../farm/index.ts";
import type { Problem } from "../../problem/index.ts";
import type { Doubtful, Gap } from "../../weather/index.ts";
import { countedJson } from "./farm.ts";
import { type Json, time, timeOrNull } from "./written.ts";

const gapJson = (farm: Farm, { from, to, origin }: Gap): Json => ({
  from: time(farm, from),
  to: time(farm, to),
  origin,
});

const doubtfulJson = (farm: Farm, { sensor, flag, from, to, hours, low, high, used }: Doubtful): Json => ({
  sensor,
  flag,
  from: time(farm, from),
  to: time(farm, to),
  hours,
  lowC: low,
  highC: high,
  used,
});

export const madeFromJson = (farm: Farm, from: MadeFrom): Json => ({
  sensors: from.sensors,
  latest: timeOrNull(farm, from.latest),
  tunnels: from.tunnels.map(({ tunnel, latest }) => ({ tunnel: tunnel.id, latest: time(farm, latest) })),
  gaps: from.gaps.map((gap) => gapJson(farm, gap)),
  doubtful: from.doubtful.map((hours) => doubtfulJson(farm, hours)),
  forecastIssued: timeOrNull(farm, from.forecastIssued),
  forecastSource: from.forecastSource ?? null,
  forecastEnds: from.forecastEnds,
  unforeseenFrom: from.unforeseenFrom,
  carriedFrom: from.carriedFrom,
  usualFrom: from.usualFrom,
  usualBy: from.usualBy === undefined ? null : { ...from.usualBy },
  usualBehind: from.usualBehind,
  learnedFrom: from.learnedFrom,
  learnedCovers: (from.learned?.covers ?? []).flatMap(({ cover, factors }) =>
    factors.map(({ what, factor, spread }) => ({ cover, what, ofCatalogue: factor, spread })),
  ),
  members: from.members,
  broughtOver: from.broughtOver.map(({ crop, counted, requirement, sowings }) => ({
    crop,
    counted: countedJson(counted),
    requirementCd: requirement,
    sowings: sowings === null ? null : { count: sowings.count, leastCd: sowings.least, mostCd: sowings.most },
  })),
  shortDays: from.shortDays === null ? null : { from: from.shortDays.from, to: from.shortDays.to },
});

export const problemJson = (problem: Problem): Json => ({
  code: problem.code,
  weight: problem.weight,
  file: problem.file,
  line: problem.line,
  column: problem.column,
  expected: problem.expected,
  received: problem.received,
  hint: problem.hint,
});
