import type { CrewLanguage } from "./crew/language.ts";
import { CREW_LANGUAGES } from "./crew/languages.ts";
import { anyOf, letters } from "./crew/sentence.ts";

const LANGUAGES: readonly CrewLanguage[] = Object.values(CREW_LANGUAGES);

const WORD = `${anyOf(LANGUAGES.flatMap(({ courtesies }) => courtesies))}(?!\\p{L})`;

/** Signs that take nothing back, as a cross or a question mark may. judgement */
const SIGN = "[\\s.,;:!¡)\"'*~-]";

const COURTEOUS = new RegExp(`^(?:${WORD}|${SIGN})+$`, "u");

/**
 * May a line that is not understood be passed over in an answer? Only where it is courtesy from end to end: whatever else it says
 * may be that something was not done.
 *
 * @example isChatter("ok jefe, gracias") // => true
 * @example isChatter("ok jefe, solo la mitad") // => false
 */
export const isChatter = (plain: string): boolean => COURTEOUS.test(letters(plain));
