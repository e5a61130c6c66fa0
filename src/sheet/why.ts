/** A reason in whole sentences, and in the fewest words for where there is no room. */
export interface Why {
  readonly told: string;
  readonly brief: string;
}

export const why = (told: string, brief: string = told): Why => ({ told, brief });

export const joined = (whys: readonly Why[]): Why =>
  why(whys.map(({ told }) => told).join(" "), whys.map(({ brief }) => brief).join(" "));
