/** Longest gap bridged by a straight line. [h] common practice, no source */
export const SHORT_GAP = 3;
