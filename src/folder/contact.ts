import type { Setting } from "./settingReader.ts";

/** Printable letters of one line, with something in it that mail or a browser can reach. */
const REACHABLE = /^(?=.{5,100}$)[\x21-\x7e]+(?:@|\.)[\x21-\x7e]+$/u;

/** Can nobody be reached at this? Nothing else may go into what is sent to a service. */
export const contactFault = (text: string): boolean => !REACHABLE.test(text) || /[()\\]/u.test(text);

/** Reads the address at which the grower can be reached. */
export function contactIn(setting: Setting | null): string | null {
  const what = "an e-mail or web address like ann@farm.example";
  const text = setting?.text(what) ?? null;
  if (text === null || !contactFault(text)) return text;
  return setting!.fault("contact-unreadable", what, "Write one address without blanks.");
}
