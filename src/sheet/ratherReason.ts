import type { Change, Outcome } from "../decide/index.ts";
import { type Bed, soon } from "./bedReason.ts";
import { mark } from "./mark.ts";
import type { Names } from "./names.ts";
import { capital, leaves, settingShort, value } from "./words.ts";
import { TIED } from "./wrap.ts";

/** All a change gains. */
export const total = ({ timing, stress, damage, labour, orders }: Change["gain"]): number =>
  timing + stress + damage + labour + orders;

/** Share of a change's own gain that another setting must bring for a grower to ask for it. [0–1] judgement */
const WORTH_ASKING = 0.5;

/** What the strongest other setting would do; null where it would do far less, or nobody could tell the two apart. */
export function ratherReason({ gain, rather }: Change, outcome: Outcome, names: Names): string | null {
  if (rather === null) return null;
  const { farm } = outcome;
  const [gains, less] = [total(gain), total(rather.gain)];
  if (gains <= 0 || less < 0 || less > (1 - WORTH_ASKING) * gains) return null;
  const bed = rather.beds
    .filter(soon)
    .reduce<Bed | null>(
      (top, each) => (top === null || differs(each.cut) > differs(top.cut) ? each : top),
      null,
    );
  const cut = bed?.cut ?? null;
  const [size, otherSize] = cut === null ? ["", ""] : leaves(farm.units, cut.size.plan, cut.size.other);
  const outlook = outcome.successions.find(({ succession }) => succession.id === bed?.succession);
  const about = outlook === undefined ? "" : mark(outlook);
  const share = cut === null || !(cut.weight.plan > 0) ? 0 : cut.weight.other / cut.weight.plan - 1;
  const percent = Math.round(Math.abs(share) * 100);
  const nothing = Math.round(less) < 1 && farm.currency !== null;
  const effects = [
    ...(size === otherSize ? [] : [`${about}${otherSize}, not ${about}${size}`]),
    ...(percent === 0 ? [] : [`${percent}${TIED}% ${share < 0 ? "less" : "more"} weight`]),
    ...(nothing ? [] : [`worth ${value(farm, less)} less`]),
  ];
  const other = capital(settingShort(rather.setting, names.shortCover));
  if (effects.length === 0) return `${other} would do nearly as well.`;
  const who =
    bed === null || (size === otherSize && percent === 0) ? "" : `${names.succession(bed.succession)} `;
  return `${other} instead: ${who}${effects.join("; ")}.`;
}

const differs = (cut: Bed["cut"]): number =>
  cut === null ? -1 : Math.abs(cut.size.plan.middle - cut.size.other.middle);
