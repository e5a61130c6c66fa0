import type { Farm } from "../../src/farm/index.ts";
import { madeFarm } from "./farms.ts";

/** Names nobody gives, and names that only look odd to those who did not expect them. */
const NAMES: readonly string[] = [
  "<script>alert(1)</script>",
  '"><img src=x onerror=alert(1)>',
  "' onmouseover='alert(1)",
  "</title></style></table><script>alert(1)</script>",
  "javascript:alert(1)",
  'Tom & Jerry\'s &lt;b&gt; &amp; "Co"',
  "\u202eright to left\u202c \u05d7\u05de\u05de\u05d4 \u0628\u064a\u062a",
  "Rüben-, Grün- & Kräuterhaus Nº 7",
  "x".repeat(120),
  `${"W".repeat(60)}${"m".repeat(60)}`,
  "<!-- ",
  "{{7*7}} %3Cscript%3E",
];

const nameAt = (i: number): string => NAMES[i % NAMES.length]!;

/** A farm in which everything that can be named has such a name. */
export function hostileFarm(): Farm {
  const farm = madeFarm(12, 24);
  const tunnel = (id: string): string => `${id} ${nameAt(Number(id.slice(1)))}`;
  const succession = (id: string): string => `${id} ${nameAt(Number(id.slice(1)) + 5)}`;
  const named = <Named extends { readonly name: string }>(
    values: ReadonlyMap<string, Named>,
  ): ReadonlyMap<string, Named> =>
    new Map([...values].map(([id, value], i) => [id, { ...value, name: `${value.name} ${nameAt(i)}` }]));
  return {
    ...farm,
    name: NAMES.slice(0, 3).join(" "),
    currency: "<b>",
    tunnels: farm.tunnels.map(({ id, name, ...rest }, i) => ({
      id: tunnel(id),
      name: `${name} ${nameAt(i)}`,
      ...rest,
    })),
    pieces: farm.pieces.map((piece, i) => ({
      ...piece,
      id: `${piece.id} ${nameAt(i)}`,
      liesOn: piece.liesOn.map(tunnel),
    })),
    successions: farm.successions.map((each) => ({
      ...each,
      id: succession(each.id),
      tunnel: tunnel(each.tunnel),
    })),
    markets: farm.markets.map((market, i) => ({ ...market, name: `${market.name} ${nameAt(i + 3)}` })),
    products: farm.products.map((product, i) => ({ ...product, name: `${product.name} ${nameAt(i + 4)}` })),
    crops: named(farm.crops),
    covers: named(farm.covers),
  };
}
