import type { WhatIf } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { clean } from "./clean.ts";
import { isLittle } from "./isLittle.ts";
import type { Names } from "./names.ts";
import { length, value } from "./words.ts";

function what({ units }: Farm, of: WhatIf, names: Names): string {
  switch (of.kind) {
    case "piece":
      return `One more piece of ${names.cover(of.piece.cover)}, ${length(units, of.piece.length)}`;
    case "hands":
      return "Twice the minutes at every walk and pick";
    case "pick":
      return `Picking for ${clean(of.market.name)} a day ${of.days < 0 ? "earlier" : "later"}`;
  }
}

/** What one thing more would be worth, in one sentence. */
export function whatIfLine(farm: Farm, of: WhatIf, names: Names): string {
  const worth = isLittle(farm, of.worth)
    ? "nothing"
    : of.worth < 0
      ? `costs ${value(farm, -of.worth)}`
      : value(farm, of.worth);
  const open = isLittle(farm, of.off) || of.off < Math.abs(of.worth) ? "" : ", as far as was looked";
  return `${what(farm, of, names)}: ${worth}${open}.`;
}
