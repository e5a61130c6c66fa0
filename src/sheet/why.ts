/** Something said in whole sentences, and in the fewest words for where there is no room. */
interface Said {
  readonly told: string;
  readonly brief: string;
}

/** A reason: what the weather does, which other tunnels may share, and what is this one's own; either may be empty. */
export interface Why {
  readonly cause: Said;
  readonly own: Said;
}

const NOTHING: Said = { told: "", brief: "" };

export const why = (told: string, brief: string = told): Why => ({ cause: NOTHING, own: { told, brief } });

/** A reason that other tunnels may have as well. */
export const cause = (told: string, brief: string): Why => ({ cause: { told, brief }, own: NOTHING });

/** Sentences one after the other, empty ones left out. */
export const sentences = (all: readonly string[]): string => all.filter((each) => each !== "").join(" ");

const together = (all: readonly Said[]): Said => ({
  told: sentences(all.map(({ told }) => told)),
  brief: sentences(all.map(({ brief }) => brief)),
});

export const joined = (whys: readonly Why[]): Why => ({
  cause: together(whys.map(({ cause }) => cause)),
  own: together(whys.map(({ own }) => own)),
});

/** All of a reason. */
export const whole = ({ cause, own }: Why): Said => together([cause, own]);
