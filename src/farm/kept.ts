import type { Instant, LocalDate } from "../quantity/index.ts";
import type { Setting } from "./setting.ts";

/** From one walk to another. null: from the first walk, to the end of what is planned. */
interface Stretch {
  readonly from: Instant | null;
  readonly to: Instant | null;
}

/** What becomes of a succession as it is settled. */
export type KeptCut =
  /** Cut on a day, at a pick or early to be kept cold; `part` null: at whatever hour of it. */
  | {
      readonly kind: "cut";
      readonly succession: string;
      readonly date: LocalDate;
      readonly part: "morning" | "evening" | null;
    }
  /** Left standing throughout what is planned. */
  | { readonly kind: "uncut"; readonly succession: string };

/** What the grower has settled already, and the rest is planned around. */
export type Kept =
  | ({ readonly kind: "cover"; readonly tunnel: string; readonly setting: Setting } & Stretch)
  /** Nothing is changed on the tunnel: what lies on it now stays, its rhythm too. */
  | ({ readonly kind: "unchanged"; readonly tunnel: string } & Stretch)
  | KeptCut;
