import type { WhatIf } from "../decide/index.ts";
import type { Farm } from "../farm/index.ts";
import { groupBy } from "../quantity/index.ts";
import { clean } from "./clean.ts";
import { isLittle } from "./isLittle.ts";
import type { Names } from "./names.ts";
import { capital, length, value } from "./words.ts";

function what({ units }: Farm, of: WhatIf, names: Names): string {
  switch (of.kind) {
    case "piece":
      return `one more piece of ${names.shortCover(of.piece.cover)}, ${length(units, of.piece.length)}`;
    case "hands":
      return "twice the minutes at every walk and pick";
    case "pick":
      return `picking for ${clean(of.market.name)} a day ${of.days < 0 ? "earlier" : "later"}`;
  }
}

/** Could what was not looked at change the answer? */
const isOpen = (farm: Farm, { worth, off }: WhatIf): boolean =>
  !isLittle(farm, off) && off >= Math.abs(worth);

function worthOf(farm: Farm, of: WhatIf): string {
  const perhaps = isOpen(farm, of) ? "perhaps " : "";
  if (isLittle(farm, of.worth)) return `${perhaps}nothing`;
  return of.worth < 0 ? `${perhaps}costs ${value(farm, -of.worth)}` : `${perhaps}${value(farm, of.worth)}`;
}

/** What one thing more would be worth, a sentence each; all that is worth nothing told together. */
export function whatIfLines(farm: Farm, all: readonly WhatIf[], names: Names): readonly string[] {
  const groups = groupBy(all, (of) => (isLittle(farm, of.worth) ? worthOf(farm, of) : of));
  return [...groups.values()].map(
    (same) => `${capital(same.map((of) => what(farm, of, names)).join("; "))}: ${worthOf(farm, same[0]!)}.`,
  );
}
