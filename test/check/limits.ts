import { type Answer, by, layBefore, same } from "./answer.ts";
import type { TunnelWhole, Whole } from "./whole.ts";

const DAY_MS = 86_400_000;
const NOTHING = 1e-6;

const kindOf = (answer: Answer, cover: string): string => by<Answer>(answer.covers, "cover", cover).kind;

/** Limits of its own that a tunnel breaks, one entry a breach. */
export function breachesOf(answer: Answer, { tunnel, schedule, moves }: TunnelWhole): readonly string[] {
  const { limits } = answer.farm;
  const broken: string[] = [];
  const changes = new Map<number, number>();
  let dim = 0;
  for (const walk of answer.walks) {
    const i = walk.walk;
    const [from, to] = [layBefore(tunnel, schedule, i), schedule[i]!];
    const entry = tunnel.ledger.find((each: Answer) => each.walk === i && each.setting === to.key);
    broken.push(...entry.breaks);
    if (walk.tooWindy && moves[i]!.puts) broken.push("wind");
    // What a round takes off waits until it has thawed, where it does before the next walk.
    if ((walk.frozen && moves[i]!.pulls) || (walk.frozenThrough && moves[i]!.takes)) broken.push("frozen");
    if (walk.snow && (moves[i]!.takes || moves[i]!.vents)) broken.push("snow");
    if (entry.dim) {
      dim += 1;
      if (dim > limits.dimD) broken.push("dim");
    }
    if (same(from, to)) continue;
    const week = Math.floor((Date.parse(walk.at.instant) - Date.parse(answer.on.instant)) / (7 * DAY_MS));
    changes.set(week, (changes.get(week) ?? 0) + 1);
    if (changes.get(week)! > limits.changesPerWeek) broken.push("changes");
  }
  return broken;
}

/** How far what all tunnels share is gone beyond, by limit: the most of any walk, pick or night. */
export function overrunsOf(answer: Answer, { tunnels }: Whole): ReadonlyMap<string, number> {
  const { labour, handling } = answer.farm;
  const used = new Map<string, number>();
  const take = (limit: string, when: string, amount: number): void => {
    used.set(`${limit} ${when}`, (used.get(`${limit} ${when}`) ?? 0) + amount);
  };
  for (const { moves, beds } of tunnels) {
    moves.forEach(({ minutes }, i) => {
      take("minutes", `${i}`, minutes);
    });
    for (const { outlet, cut, cutting } of beds) {
      if (outlet === null) continue;
      take("picking", outlet.at.instant, cutting);
      take("washing", outlet.at.instant, cut);
      for (
        let night = Date.parse(outlet.at.clock.slice(0, 10));
        night < Date.parse(outlet.marketDate);
        night += DAY_MS
      )
        take("cooler", `${night}`, cut);
    }
  }
  const there: Readonly<Record<string, number | null>> = {
    minutes: labour.walkMin,
    picking: labour.pickingMin,
    washing: handling.washingKg,
    cooler: handling.coolerKg,
  };
  const over = new Map<string, number>();
  for (const [key, amount] of used) {
    const limit = key.split(" ")[0]!;
    if (there[limit] === null) continue;
    over.set(limit, Math.max(over.get(limit) ?? 0, amount - there[limit]!));
  }
  return over;
}

/** What is wrong with the cloth of a plan: pieces by length, number and span, neighbours under one alike. */
export function clothFaults(answer: Answer, { tunnels }: Whole): readonly string[] {
  const { farm } = answer;
  const faults: string[] = [];
  for (const { walk: i } of answer.walks) {
    const lain = new Map<string, number>();
    for (const { tunnel, schedule } of tunnels) {
      const lay = schedule[i]!;
      const where = `${tunnel.tunnel} from walk ${i}`;
      const setting = by<Answer>(tunnel.settings, "key", lay.key);
      if (
        JSON.stringify(setting.layers) !==
        JSON.stringify(lay.taken.map(({ cover, state }) => ({ cover, state })))
      )
        faults.push(`${where}: the cloth is not that of its setting`);
      for (const layer of lay.taken) {
        const { cover, piece: id, over, state } = layer;
        const isNow = tunnel.taken.some(
          (now: Answer) =>
            now.cover === cover && now.piece === id && JSON.stringify(now.over) === JSON.stringify(over),
        );
        if (id === null) {
          if (!isNow) faults.push(`${where}: ${cover} of no piece`);
          continue;
        }
        const piece = by<Answer>(farm.pieces, "piece", id);
        if (piece.cover !== cover) faults.push(`${where}: ${id} is no ${cover}`);
        if (!isNow && piece.lengthM < tunnel.lengthM - 0.05) faults.push(`${where}: ${id} is too short`);
        if (over.length === 1) {
          if (over[0] !== tunnel.tunnel) faults.push(`${where}: ${id} lies elsewhere`);
        } else {
          const row = farm.sideBySide.find((each: Answer) => each.join(" ").includes(over.join(" ")));
          if (row === undefined || over.length > piece.spans) faults.push(`${where}: ${id} is too narrow`);
          for (const other of over) {
            const beside = by<Answer>(
              tunnels as never,
              "tunnel",
              by<Answer>(answer.tunnels, "tunnel", other),
            );
            const alike = beside.schedule[i].taken.some(
              (each: Answer) =>
                each.piece === id &&
                each.state === state &&
                JSON.stringify(each.over) === JSON.stringify(over),
            );
            if (!alike) faults.push(`${where}: ${id} does not lie on ${other} as well`);
          }
        }
        if (over[0] === tunnel.tunnel) lain.set(id, (lain.get(id) ?? 0) + 1);
      }
    }
    for (const [id, count] of lain)
      if (count > by<Answer>(farm.pieces, "piece", id).count)
        faults.push(`${count} of ${id} lie from walk ${i}`);
  }
  return faults;
}

/** Sheets of row cover or film over each other, where the plan put them there. */
export const layerFaults = (answer: Answer, { tunnels }: Whole): readonly string[] =>
  tunnels.flatMap(({ tunnel, schedule }) =>
    [...new Set(schedule.map(({ key }) => key))]
      .filter((key) => key !== tunnel.now)
      .filter((key) => {
        const warm = by<Answer>(tunnel.settings, "key", key).layers.filter(({ cover }: Answer) =>
          ["rowCover", "film"].includes(kindOf(answer, cover)),
        );
        return warm.length > answer.farm.limits.layers;
      })
      .map((key) => `${tunnel.tunnel} lies under ${key}`),
  );

/** Limits gone beyond that are told, and told ones that are not. */
export function overrunFaults(over: ReadonlyMap<string, number>, told: readonly string[]): readonly string[] {
  const faults: string[] = [];
  for (const [limit, by] of over) {
    if (by > 2 * NOTHING && !told.includes(limit))
      faults.push(`${limit} is gone beyond by ${by} and not told`);
    if (by < NOTHING / 2 && told.includes(limit)) faults.push(`${limit} is told though it is kept`);
  }
  for (const limit of told)
    if (limit !== "pieces" && !over.has(limit)) faults.push(`${limit} is told though nothing bounds it`);
  return faults;
}
