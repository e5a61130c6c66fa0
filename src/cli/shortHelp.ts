/** What is printed when nothing is asked for. */
export const SHORT_HELP = `leafpace: which covers on and off, on which walk, so that greens are in size on market day.

Example:
  leafpace week --on 2026-04-20     the cover schedule from that morning on

First steps:
  leafpace start my-farm            a folder to fill in
  leafpace check                    every problem in it at once
  leafpace import logger.csv        a temperature log or a forecast

leafpace --help lists everything.
`;
