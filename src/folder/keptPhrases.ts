import { shortened, WEEKDAYS } from "./calendarNames.ts";

const DAY = String.raw`(?:${shortened(WEEKDAYS)})\.?(?:\s+(?:morning|evening))?`;

/** What growers say of what is settled, in the words the readers know: each phrase, and what it comes to. */
const PHRASES: readonly (readonly [said: RegExp, meant: string])[] = [
  // A stretch may be said without its "from".
  [new RegExp(String.raw`(?<!\b(?:from|since)\s+)\b(${DAY})\s*(?:-|–)\s*(?=${DAY})`, "giu"), "from $1 to "],
  [
    new RegExp(
      String.raw`(?<!\b(?:from|since)\s+)\b(?:on\s+)?(${DAY})\s+(to|through|until|till)\s+(?=${DAY})`,
      "giu",
    ),
    "from $1 $2 ",
  ],
  // All that is planned: no stretch need be said.
  [/\b(?:until|till|to|through)\s+the\s+end(?:\s+of\s+the\s+week)?\b/giu, " "],
  [
    /\b(?:(?:for|during)\s+)?(?:(?:all|the\s+whole|the\s+entire|this)\s+(?:week|time)|all\s+(?:the\s+)?days|the\s+week)\b/giu,
    " ",
  ],
  [/\b(?:always|throughout|from\s+now\s+on)\b/giu, " "],
  [
    /\b(?:nothing|no\s+(?:covers?|cloth))(?:\s+on(?:\s+it)?)?\b|\bwithout\s+(?:a\s+|any\s+)?(?:covers?|cloth|anything)\b/giu,
    " bare ",
  ],
  [/(?<!\b(?:row|shade|insect)\s+)\b(?:covers?|cloth)\s+off\b/giu, " bare "],
  [
    /\b(?:do\s+not|don't|dont)\s+(?:touch|change)(?:\s+anything)?\b|\bno\s+changes?\b|\balone\b/giu,
    " as it is ",
  ],
  [/\b(?:the\s+)?same(?:\s+as\s+now)?\b|\b(?:like|as)\s+now\b|\bthe\s+way\s+it\s+is\b/giu, " as it is "],
  [/\bremains?\b/giu, "stays"],
  [/\b(?:do\s+not|don't|dont|not|no)\s+(?:cut|pick|harvest)\b|\bstanding\b/giu, " not cut "],
  [/\b(?:pick|picked|harvest)\b/giu, " cut "],
  // "No row cover on T1": the name of the tunnel has become a comma.
  [/\b(?:no|without)\s+(?:any\s+)?([^,]+?)\s+on(?:\s+it)?(?=\s*(?:,|$))/giu, " off $1 "],
  [/\b(?:no|without)\b(?:\s+any\b)?/giu, " off "],
];

/** @example inKnownWords("bare all week") // => "bare  " */
export const inKnownWords = (text: string): string =>
  PHRASES.reduce((words, [said, meant]) => words.replace(said, meant), text);
