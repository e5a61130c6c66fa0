import { type Kept, type KeptCut, type Setting, type Succession, settingKey } from "../farm/index.ts";
import { type Instant, localDate, localHour } from "../quantity/index.ts";
import type { Lay } from "./lays.ts";
import type { Walk } from "./outcome.ts";
import type { Outlet } from "./outlet.ts";
import type { Scene } from "./scene.ts";
import type { Standing } from "./standing.ts";
import type { TunnelNow } from "./tunnelNow.ts";

type KeptCover = Kept & { readonly kind: "cover" | "unchanged" };

/** Covers the grower keeps on a tunnel: those it could have at all. */
export const keptSettings = ({ keep }: Pick<Scene, "keep">, { tunnel, now }: TunnelNow): readonly Setting[] =>
  keep.flatMap((kept) =>
    kept.kind === "cover" && kept.tunnel === tunnel.id
      ? [kept.setting]
      : kept.kind === "unchanged" && kept.tunnel === tunnel.id
        ? [now]
        : [],
  );

/** What the grower keeps leaves a lay open from a walk to the next. What cannot be kept at all binds nothing. */
export function keptLay(
  { keep }: Pick<Scene, "keep">,
  { tunnel, now }: TunnelNow,
  settings: readonly Setting[],
  lays: readonly Lay[],
  lay: Lay,
  { at }: Pick<Walk, "at">,
): boolean {
  const holds = (kept: KeptCover): boolean =>
    kept.tunnel === tunnel.id && (kept.from ?? at) <= at && (kept.to === null || at < kept.to);
  return keep.every((kept) => {
    if ((kept.kind !== "cover" && kept.kind !== "unchanged") || !holds(kept)) return true;
    const wanted = settingKey(kept.kind === "cover" ? kept.setting : now);
    const isWanted = ({ setting }: Lay): boolean => settingKey(settings[setting]!) === wanted;
    return !lays.some(isWanted) || isWanted(lay);
  });
}

const keptCut = ({ keep }: Pick<Scene, "keep">, { succession }: Standing): KeptCut | undefined =>
  keep.find(
    (kept): kept is KeptCut =>
      (kept.kind === "cut" || kept.kind === "uncut") && kept.succession === succession.id,
  );

/** Morning up to noon, evening after it. */
const partAt = (zone: string, at: Instant): "morning" | "evening" =>
  localHour(zone, at) < 12 ? "morning" : "evening";

/** A cut at an outlet, or none, as it is settled. */
export const asKept = (zone: string, { id }: Pick<Succession, "id">, outlet: Outlet | null): KeptCut =>
  outlet === null
    ? { kind: "uncut", succession: id }
    : { kind: "cut", succession: id, date: localDate(zone, outlet.at), part: partAt(zone, outlet.at) };

/** The outlets that what the grower keeps leaves a succession, and whether one of them must be taken. */
export function keptOutlets<Any extends Outlet>(
  scene: Pick<Scene, "keep" | "farm">,
  standing: Standing,
  outlets: readonly Any[],
): { readonly outlets: readonly Any[]; readonly mustCut: boolean } {
  const kept = keptCut(scene, standing);
  if (kept === undefined) return { outlets, mustCut: false };
  if (kept.kind === "uncut") return { outlets: [], mustCut: false };
  const { zone } = scene.farm.place;
  const left = outlets.filter(
    ({ at }) => localDate(zone, at) === kept.date && (kept.part === null || partAt(zone, at) === kept.part),
  );
  return left.length > 0 ? { outlets: left, mustCut: true } : { outlets, mustCut: false };
}
