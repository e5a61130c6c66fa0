import type { Pick } from "../decide/index.ts";

/** Are greens cut at the same moment for the same selling day? */
export const samePick = (a: Pick, b: Pick): boolean =>
  a.at === b.at && a.marketDate === b.marketDate && a.market.id === b.market.id;
