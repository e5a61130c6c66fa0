import { setTimeout as sleep } from "node:timers/promises";
import { SERVICES, type ServiceId } from "./services.ts";

/** How services are reached. */
export interface Web {
  readonly origin: Readonly<Record<ServiceId, string>>;
  /** How long a whole answer may take. [ms] */
  readonly patience: number;
  /** How long an answer may be, unpacked. [bytes] */
  readonly most: number;
  /** Lets some time pass before the next try. [ms] */
  wait(ms: number): Promise<void>;
}

/** The services where they are. A forecast by the hour has about one megabyte; twenty seconds is judgement. */
export const WEB: Web = {
  origin: { nws: SERVICES.nws.origin, "met-norway": SERVICES["met-norway"].origin },
  patience: 20_000,
  most: 8_000_000,
  wait: (ms) => sleep(ms),
};
