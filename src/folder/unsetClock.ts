const DAY = 86_400_000;

/** Days a clock that was not set begins to count from. */
const BEGINNINGS = [0, Date.UTC(2000, 0, 1)];

/** The first hours after a beginning; and how near a row must lie to go on from the row before it. [d] */
const FIRST = 2;

export interface UnsetClock {
  /** Does a wall time come from a clock that began anew and was not set? Fed with every row in turn. */
  holds(wall: number): boolean;
  /** The year the log begins with, if it begins so. */
  began(): number | null;
}

/** Follows a log for times that begin with 1970 or 2000 because the logger's clock was not set. */
export function unsetClock(): UnsetClock {
  let last: number | null = null;
  let unset = false;
  let began: number | null = null;
  return {
    holds(wall) {
      const goesOn = last !== null && Math.abs(wall - last) <= FIRST * DAY;
      if (!goesOn)
        unset = BEGINNINGS.some((beginning) => wall >= beginning && wall < beginning + FIRST * DAY);
      if (last === null && unset) began = new Date(wall).getUTCFullYear();
      last = wall;
      return unset;
    },
    began: () => began,
  };
}
