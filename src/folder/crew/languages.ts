import { ENGLISH_CREW } from "./english.ts";
import type { CrewLanguage } from "./language.ts";
import { SPANISH_CREW } from "./spanish.ts";

export type CrewLanguageCode = "en" | "es";

/** Languages the cards are written and answered in. */
export const CREW_LANGUAGES: Readonly<Record<CrewLanguageCode, CrewLanguage>> = {
  en: ENGLISH_CREW,
  es: SPANISH_CREW,
};
