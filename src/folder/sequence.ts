/** A step no log takes, but a date read in the wrong order does. [d] */
const LEAP = 20;

const DAY = 86_400_000;

/** Whether days follow each other, forwards or backwards, as a log's days do when its dates are read in the right order. */
export interface Sequence {
  /** @param wall - Milliseconds as if the clock were universal time. */
  next(wall: number): void;
  follows(): boolean;
  /** Is there a step no log takes? */
  leaps(): boolean;
}

export function sequence(): Sequence {
  let last: number | null = null;
  let nextDays = 0;
  let leaps = 0;
  return {
    next(wall) {
      const day = Math.floor(wall / DAY);
      if (day === last) return;
      if (last !== null) {
        const step = Math.abs(day - last);
        if (step === 1) nextDays += 1;
        if (step > LEAP) leaps += 1;
      }
      last = day;
    },
    follows: () => leaps === 0 && nextDays > 0,
    leaps: () => leaps > 0,
  };
}
