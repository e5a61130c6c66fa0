import { type Answer, by } from "./answer.ts";
import { near } from "./near.ts";

/** Scale of a logistic with a given standard deviation. */
const SCALE = Math.sqrt(3) / Math.PI;

/** Odds of damage by an interval's lowest and highest at the crop, so many days ahead. */
function oddsOf(
  { settings }: Answer,
  unfit: number,
  ceiling: number | null,
  entry: Answer,
  lead: number,
): number {
  const error = Math.min(
    settings.forecastSpreadMost,
    settings.forecastSpread + settings.forecastSpreadPerDay * Math.max(0, lead),
  );
  const scale = SCALE * Math.hypot(settings.damageWidth, error);
  const cold = Math.exp((unfit - entry.lowestC) / scale);
  return ceiling === null ? cold : cold + Math.exp((entry.highestC - ceiling) / scale);
}

/** Everything in a tunnel's ledger that its temperatures and sums imply. */
export function ledgerFaults(answer: Answer, tunnel: Answer): readonly string[] {
  const faults: string[] = [];
  const { walks, weather, farm } = answer;
  const entryOf = (walk: number, setting: string): Answer =>
    tunnel.ledger.find((each: Answer) => each.walk === walk && each.setting === setting);
  const bed = (id: string): Answer => by<Answer>(answer.successions, "succession", id);
  const kind = (cover: string): string => by<Answer>(answer.covers, "cover", cover).kind;
  const netted = answer.successions.some(
    (each: Answer) => each.tunnel === tunnel.tunnel && each.net && each.stage !== "finished",
  );
  const safety = (odds: number): number => -Math.log1p(farm.limits.caution * odds);
  for (const entry of tunnel.ledger) {
    const walk = walks[entry.walk];
    const { layers } = by<Answer>(tunnel.settings, "key", entry.setting);
    const where = `${tunnel.tunnel} under ${entry.setting} from walk ${entry.walk}`;
    const day = by<Answer>(weather, "date", walk.date);
    const ends = walks[entry.walk + 1]?.at.instant ?? "9999";
    /** A bed comes up within the interval: sums begin there, limits look at all of it. */
    const comesUp = entry.successions.some(({ succession }: Answer) => {
      const up = bed(succession).emergence?.at.instant ?? "";
      return up > walk.at.instant && up < ends;
    });
    const tell = (what: string, ours: boolean, told: boolean): void => {
      if (ours !== told)
        faults.push(`${where}: ${what} is ${told ? "told though kept" : "broken and not told"}`);
    };

    for (const own of entry.successions) {
      const { basis, crop: id } = bed(own.succession);
      const crop = by<Answer>(answer.crops, "crop", id);
      const odds = oddsOf(answer, basis.unfitC, crop.growth.ceilingC, entry, day.leadD);
      const stands = own.safe !== 0 || own.paceCd > 0;
      if (!near(own.safe, stands ? safety(odds) : 0) || !near(own.damage, stands ? odds / (1 + odds) : 0))
        faults.push(`${where}: damage of ${own.succession}`);
      const roots =
        stands && basis.regrown > 0 ? safety(oddsOf(answer, crop.killC, null, entry, day.leadD)) : 0;
      if (!near(own.rooted, roots)) faults.push(`${where}: roots of ${own.succession}`);
    }
    for (const { succession, safe } of entry.undated) {
      const { unfitC } = by<Answer>(tunnel.undated, "succession", succession);
      const crop = by<Answer>(answer.crops, "crop", bed(succession).crop);
      if (!near(safe, safety(oddsOf(answer, unfitC, crop.growth.ceilingC, entry, day.leadD))))
        faults.push(`${where}: damage of ${succession}`);
    }

    tell(
      "net",
      netted && !layers.some(({ cover, state }: Answer) => state === "on" && kind(cover) === "net"),
      entry.breaks.includes("net"),
    );
    tell(
      "wind",
      walk.tooWindy && layers.some(({ state }: Answer) => state === "vented"),
      entry.breaks.includes("wind"),
    );
    const cool = layers.filter(({ cover }: Answer) => !["rowCover", "film"].includes(kind(cover)));
    const key = cool.map(({ cover, state }: Answer) => `${cover}:${state}`).join("+") || "bare";
    const open = entryOf(entry.walk, key);
    if (open !== undefined && !comesUp)
      tell(
        "row cover in heat",
        cool.length < layers.length &&
          entry.successions.some(
            (own: Answer, b: number) => own.thermalTimeCd < open.successions[b].thermalTimeCd - 1e-9,
          ),
        entry.breaks.includes("rowCoverInHeat"),
      );
    const night = entryOf(entry.walk + 1, entry.setting);
    if (!comesUp && night !== undefined && walk.part === "morning")
      tell(
        "shade",
        layers.some(({ cover }: Answer) => kind(cover) === "shade") &&
          entry.successions.some((own: Answer, b: number) => {
            const { lightFloorMol } = by<Answer>(answer.crops, "crop", bed(own.succession).crop);
            return own.paceCd > 0 && own.lightMol + night.successions[b].lightMol < lightFloorMol;
          }),
        entry.dim,
      );
    if (entry.dim && walk.part === "evening") faults.push(`${where}: shade counts by night`);
    if (entry.allowed !== (entry.breaks.length === 0)) faults.push(`${where}: allowed`);
  }
  for (const walk of walks) {
    const day = by<Answer>(weather, "date", walk.date);
    if (walk.tooWindy !== (day.windKnown && day.windMps > farm.limits.windMps))
      faults.push(`walk ${walk.walk}: wind`);
  }
  return faults;
}
