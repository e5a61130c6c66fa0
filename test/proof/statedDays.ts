import stated from "../published/stated-days.json" with { type: "json" };

/** Days growers and guides state for a crop, and what they stated them for. */
export interface StatedDays {
  /** From the least to the most of all statements. [d] */
  readonly from: number;
  readonly to: number;
  /** How what they describe differs from a bare sowing cut at the smallest salad size. */
  readonly differs: string;
  /** What is left to explain a miss when the weather does not. */
  readonly otherwise: string;
}

const baby = (name: string): { from: number; to: number } => {
  const rows = stated.babyLeaf.filter(({ crop }) => crop === name);
  return { from: Math.min(...rows.map(({ from }) => from)), to: Math.max(...rows.map(({ to }) => to)) };
};

/** Full size takes longer than baby leaf: it bounds the days from above and says nothing from below. */
const beforeFullSize = (name: string): { from: number; to: number } => ({
  from: 0,
  to: stated.fullSize.find(({ crop }) => crop === name)!.from,
});

/** By the catalogue's ids. Crops without an entry have no stated days. */
export const STATED: ReadonlyMap<string, StatedDays> = new Map([
  [
    "lettuce-mix",
    {
      ...baby("baby lettuce"),
      differs: "5 to 8 cm leaves, season not said; here 8 cm",
      otherwise: "stated for smaller leaves",
    },
  ],
  [
    "spinach",
    {
      ...baby("baby spinach"),
      differs: "in part protected, season not said; here 6 cm",
      otherwise: "stated in part under protection",
    },
  ],
  [
    "arugula",
    {
      ...baby("arugula"),
      differs: "baby and larger, season not said; here 8 cm",
      otherwise: "size and season not said",
    },
  ],
  [
    "kale",
    {
      ...baby("kale"),
      differs: "hydroponic, indoors",
      otherwise: "stated for hydroponics in a warm greenhouse",
    },
  ],
  [
    "red-russian-kale",
    {
      ...baby("kale"),
      differs: "kale, hydroponic, indoors",
      otherwise: "stated for another kale, in hydroponics in a warm greenhouse",
    },
  ],
  [
    "tatsoi",
    {
      ...baby("komatsuna"),
      differs: "komatsuna, its kin; one number without size or season",
      otherwise: "one number, stated for its faster kin",
    },
  ],
  [
    "mizuna",
    {
      ...beforeFullSize("mizuna"),
      differs: "full size; baby leaf must come before",
      otherwise: "full size stated for its best season",
    },
  ],
  [
    "mustard",
    {
      ...beforeFullSize("mustard"),
      differs: "full size; baby leaf must come before",
      otherwise: "full size stated for its best season",
    },
  ],
  [
    "baby-pak-choi",
    {
      ...beforeFullSize("pak choi"),
      differs: "full size; baby leaf must come before",
      otherwise: "full size stated for its best season",
    },
  ],
  [
    "claytonia",
    {
      ...baby("claytonia"),
      differs: "one narrow range, season not said; here 4 cm",
      otherwise: "a day past a narrow range",
    },
  ],
  [
    "mache",
    {
      ...baby("corn salad"),
      differs: "a whole rosette, cool season; here 4 cm leaves",
      otherwise: "stated for a rosette",
    },
  ],
]);

/** The one statement with a season: a mix in a high tunnel, sown in the middle of September. */
export const TUNNEL_MIX: { readonly from: number; readonly to: number } = baby(
  "baby mix in a high tunnel, sown mid-September",
);
