/**
 * The printed JSON as any reader has it. Everything in this folder is written from the equations in DEVELOPERS.md and shares no
 * code with the program.
 */
// biome-ignore lint/suspicious/noExplicitAny: it is read as any reader of JSON would.
export type Answer = any;

/** What lies on a tunnel through an interval: the setting's key, and its cloth. */
export interface Lay {
  readonly key: string;
  readonly taken: readonly Answer[];
}

export const same = (a: Lay, b: Lay): boolean =>
  a.key === b.key && JSON.stringify(a.taken) === JSON.stringify(b.taken);

/** What each tunnel has, walk by walk, and what each succession is cut at: index of an outlet, or null. */
export interface Plan {
  readonly schedules: ReadonlyMap<string, readonly Lay[]>;
  readonly cuts: ReadonlyMap<string, number | null>;
}

const nowOn = (tunnel: Answer): Lay => ({ key: tunnel.now, taken: tunnel.taken });

export const layBefore = (tunnel: Answer, schedule: readonly Lay[], walk: number): Lay =>
  walk === 0 ? nowOn(tunnel) : schedule[walk - 1]!;

const growing = (answer: Answer): readonly Answer[] =>
  answer.successions.filter(({ basis }: Answer) => basis !== null);

/** Successions of a tunnel that something is computed for. */
export const bedsOf = (answer: Answer, tunnel: string): readonly Answer[] =>
  growing(answer).filter((each) => each.tunnel === tunnel);

export function plannedOf(answer: Answer): Plan {
  return {
    schedules: new Map(
      answer.tunnels.map((tunnel: Answer) => [
        tunnel.tunnel,
        tunnel.choice.map(
          (s: number, i: number): Lay => ({
            key: tunnel.settings[s].key,
            taken: tunnel.takenIn[i],
          }),
        ),
      ]),
    ),
    cuts: new Map(growing(answer).map(({ succession, basis }) => [succession, basis.cut])),
  };
}

export function unchangedOf(answer: Answer): Plan {
  return {
    schedules: new Map(
      answer.tunnels.map((tunnel: Answer) => [tunnel.tunnel, tunnel.choice.map(() => nowOn(tunnel))]),
    ),
    cuts: new Map(growing(answer).map(({ succession, basis }) => [succession, basis.cutUnchanged])),
  };
}

/** The plan without one change: what lay before goes on lying until the tunnel's next change. */
export function withoutOf(planned: Plan, tunnel: Answer, change: Answer): Plan {
  const schedule = planned.schedules.get(tunnel.tunnel)!;
  const before = layBefore(tunnel, schedule, change.walk);
  const next = schedule.findIndex((lay, i) => i > change.walk && !same(lay, schedule[i - 1]!));
  return {
    schedules: new Map([
      ...planned.schedules,
      [tunnel.tunnel, schedule.map((lay, i) => (i >= change.walk && (next < 0 || i < next) ? before : lay))],
    ]),
    cuts: new Map([
      ...planned.cuts,
      ...change.without.cuts.map(({ succession, outlet }: Answer) => [succession, outlet]),
    ]),
  };
}

export const by = <Item>(items: readonly Item[], key: keyof Item, value: unknown): Item =>
  items.find((item) => item[key] === value)!;

/** Of an hour's work: without prices, in kilograms by the usual price. */
export const wageOf = ({ farm, settings }: Answer): number =>
  farm.currency === null ? settings.wage / settings.price : farm.labour.wagePerHour;
