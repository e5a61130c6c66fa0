import { type Instant, instant } from "../quantity/index.ts";

/** A moment of universal time to the minute. @example minuteText(instant(0)) // => "1970-01-01T00:00Z" */
export const minuteText = (at: Instant): string => `${new Date(at).toISOString().slice(0, 16)}Z`;

/** Name of a file kept under a moment, without what follows its dot; no colon, for folders that bear none. @example momentName(instant(0)) // => "1970-01-01T0000Z" */
export const momentName = (at: Instant): string => minuteText(at).replace(":", "");

/** The moment such a name tells; null for any other. */
export function momentNamed(name: string): Instant | null {
  const match = /^(\d{4}-\d\d-\d\dT\d\d)(\d\d)Z$/u.exec(name);
  const at = match === null ? Number.NaN : Date.parse(`${match[1]}:${match[2]}Z`);
  return Number.isNaN(at) ? null : instant(at);
}
