import { describe, expect, test } from "vitest";
import { farmOf, folderOf, MINIMAL, problemsOf } from "./fixtures.ts";

const SOWN = "id,crop,tunnel,from (ft),to (ft),sown,market,cuts,net";
const OWNED = "id,cover,length (ft),count,lies on";
const NOTED = "when,kind,about,value,remark";

const successions = (...lines: readonly string[]): string => [SOWN, ...lines].join("\n");
const pieces = (...lines: readonly string[]): string => [OWNED, ...lines].join("\n");
const notes = (...lines: readonly string[]): string => [NOTED, ...lines].join("\n");

const S01 = "S01,spinach,T1,0,20,2026-03-01,friday,0,";

describe("successions.csv", () => {
  test("columns are found by name in any order, and lines that begin with # are remarks", () => {
    const text = "# remark\nsown,id,to (ft),from (m),crop,tunnel\n2026-03-01,S01,20,0,spinach,T1\n\n";
    expect(farmOf({ successions: text }).successions).toEqual([
      {
        id: "S01",
        crop: "spinach",
        tunnel: "T1",
        from: 0,
        to: 20 * 0.3048,
        sown: "2026-03-01",
        market: null,
        cuts: 0,
        net: false,
      },
    ]);
  });

  test("a cell's own unit is stronger than the header's", () => {
    const [succession] = farmOf({
      successions: successions("S01,spinach,T1,0,6 m,2026-03-01,,,yes"),
    }).successions;
    expect(succession).toMatchObject({ to: 6, net: true, market: null });
  });

  test("no unit anywhere is a problem, never a guess", () => {
    const text = "id,crop,tunnel,from,to,sown\nS01,spinach,T1,0,20,2026-03-01";
    expect(problemsOf({ successions: text })).toEqual([
      'successions.csv:2 column "from": expected a length like 50 ft or 15 m, received "0". Write the unit behind the number, or once in the column\'s header, like from (m).',
      'successions.csv:2 column "to": expected a length like 50 ft or 15 m, received "20". Write the unit behind the number, or once in the column\'s header, like to (m).',
    ]);
  });

  test("every cell that cannot be read is told at once", () => {
    expect(problemsOf({ successions: successions("S01,spinach,T1,0,x,spring,friday,two,maybe") })).toEqual([
      'successions.csv:2 column "to": expected a length like 50 ft or 15 m, received "x". Write a number and its unit.',
      'successions.csv:2 column "sown": expected a date like 2026-03-01, received "spring". Use year-month-day.',
      'successions.csv:2 column "cuts": expected a number of cuts like 0 or 1, received "two". Leave it empty for none.',
      'successions.csv:2 column "net": expected yes or no, received "maybe". Leave it empty for no.',
    ]);
  });

  test("a crop by another of its names is told the one it has here, any other one all names", () => {
    const hint = (crop: string): string =>
      problemsOf({ successions: successions(S01.replace("spinach", crop)) })[0]!.replace(/^.*?"\. /u, "");
    const other = ["rocket", "Swiss chard", "lamb’s lettuce", "pak-choi", "beetroot leaves"];
    expect(other.map(hint)).toEqual(
      ["arugula", "chard", "mache", "baby-pak-choi", "beet-greens"].map((crop) => `Did you mean "${crop}"?`),
    );
    expect(hint("asparagus")).toBe(
      "Known: lettuce-mix, spinach, arugula, mustard, mizuna, tatsoi, kale, red-russian-kale, beet-greens, chard, baby-pak-choi, cress, turnip-greens, radish-greens, claytonia, mache, cilantro.",
    );
  });

  test("the same cell is told once, and of different ones with the same next step three", () => {
    const told = (...cells: readonly string[]): string[] =>
      problemsOf({
        successions: successions(...cells.map((cell, index) => `S${index},spinach,T1,0,5,${cell},,,`)),
      }).map((text) =>
        text.slice('successions.csv:2 column "sown": expected a date like 2026-03-01, received '.length),
      );
    expect(told(...Array.from({ length: 10 }, () => "soon"))).toEqual([
      '"soon". Use year-month-day. The same in 9 more lines, to line 11.',
    ]);
    expect(told("a", "b", "b", "c", "d")).toEqual([
      '"a". Use year-month-day.',
      '"b". Use year-month-day. The same in line 4.',
      '"c". Use year-month-day.',
      '"d". Use year-month-day.',
    ]);
    expect(told("a", "b", "c", "d", "e").at(-1)).toBe(
      '"d" and "e" in 2 more lines. Like those above, to line 6.',
    );
  });

  test("every crop nobody knows that is near to one is told with it", () => {
    const near = ["spinnach", "arugla", "mustrad", "kalle", "mizunna"];
    const lines = near.map((crop, index) => `S${index},${crop},T1,0,5,2026-03-01,,,`);
    const told = problemsOf({ successions: successions(...lines) }).filter((text) => text.includes('"crop"'));
    expect(told.map((text) => text.replace(/^.*Did/u, "Did"))).toEqual(
      ["spinach", "arugula", "mustard", "kale", "mizuna"].map((crop) => `Did you mean "${crop}"?`),
    );
  });

  test("a line with one fault still tells its others, and its id is known", () => {
    expect(
      problemsOf({
        successions: successions("S01,spinnach,T9,0,99 m,soon,firday,,", "S01,kale,T1,0,x,2026-03-01,,,"),
        notes: notes("2026-04-12,leaf,S01,3 in,", "soon,leaf,S02,3 zoll,"),
      }),
    ).toEqual([
      'successions.csv:2 column "sown": expected a date like 2026-03-01, received "soon". Use year-month-day.',
      'successions.csv:2 column "crop": expected a crop, received "spinnach". Did you mean "spinach"?',
      'successions.csv:2 column "tunnel": expected a tunnel, received "T9". Known: T1.',
      'successions.csv:2 column "market": expected a market, received "firday". Did you mean "friday"?',
      'successions.csv:3 column "to": expected a length like 50 ft or 15 m, received "x". Write a number and its unit.',
      'successions.csv:3 column "id": expected a name no other succession has, received "S01". Line 2 has the same; call one of the two differently.',
      'notes.csv:3 column "when": expected a date like 2026-04-18, or with the time, 2026-04-18 07:10, received "soon". Use year-month-day and the farm\'s clock; morning and evening stand for the walks.',
      'notes.csv:3 column "value": expected a leaf length like 3 in or 8 cm, received "3 zoll". The unit zoll is not known; use one of the usual units.',
      'notes.csv:3 column "about": expected a succession, received "S02". Known: S01.',
    ]);
  });

  test("one bad date leaves the others their order", () => {
    const sown = ["1/3/2026", "31/6/2026", "2/3/2026"];
    const lines = sown.map((date, index) => `S${index},spinach,T1,${index},${index + 1},${date},,,`);
    expect(problemsOf({ successions: successions(...lines) })).toEqual([
      'successions.csv:3 column "sown": expected a date like 2026-03-01, received "31/6/2026". June has 30 days.',
    ]);
  });

  test("a day that no month has is no date", () => {
    expect(problemsOf({ successions: successions(S01.replace("2026-03-01", "2026-02-30")) })).toEqual([
      'successions.csv:2 column "sown": expected a date like 2026-03-01, received "2026-02-30". February has 28 days in 2026.',
    ]);
  });

  test("unknown crops, tunnels and markets are told with the nearest known name", () => {
    expect(problemsOf({ successions: successions("S01,spinnach,T2,0,20,2026-03-01,firday,,") })).toEqual([
      'successions.csv:2 column "crop": expected a crop, received "spinnach". Did you mean "spinach"?',
      'successions.csv:2 column "tunnel": expected a tunnel, received "T2". Known: T1.',
      'successions.csv:2 column "market": expected a market, received "firday". Did you mean "friday"?',
    ]);
  });

  test("a missing column stops, a column nobody knows is only told", () => {
    expect(problemsOf({ successions: "id,crop,tunel,from (ft),to (ft),sown\n" })).toEqual([
      'successions.csv:1 column "tunel": expected a known column, received "tunel". Did you mean "tunnel"?',
      'successions.csv:1: expected a column "tunnel", received id, crop, tunel, from (ft), to (ft), sown. Add it to the first line; the order does not matter.',
    ]);
    expect(farmOf({ successions: `${SOWN},weather\n${S01},fine` }).successions).toHaveLength(1);
  });

  test("a header with a unit of another kind is told once, not for every line", () => {
    const text = successions(S01, S01.replace("S01", "S02")).replace("to (ft)", "to (lb)");
    expect(problemsOf({ successions: text })).toEqual([
      'successions.csv:1 column "to (lb)": expected a length like 50 ft or 15 m, received "lb". This unit measures something else; the field holds a length.',
    ]);
  });

  test("a bed beyond the tunnel's length is a problem", () => {
    expect(problemsOf({ successions: successions(S01.replace(",20,", ",60,")) })).toEqual([
      'successions.csv:2 column "to": expected at most 15 m, the length of T1, received 18.29 m. Correct the bed here or the tunnel\'s length in farm.yaml.',
    ]);
  });

  test("a bed that runs backwards is a problem", () => {
    expect(problemsOf({ successions: successions("S01,spinach,T1,20,0,2026-03-01,,,") })).toEqual([
      'successions.csv:2 column "to": expected more than the start, 20, received "0". A bed runs from its start to its end.',
    ]);
  });

  test("beds that overlap are told, beds that touch are not", () => {
    const overlapping = successions(S01, "S02,kale,T1,15,30,2026-03-08,,,");
    expect(problemsOf({ successions: overlapping })).toEqual([
      'successions.csv:3 column "from": expected a stretch of T1 that is free, received 4.57 m to 9.14 m, where S01 stands (line 2). Correct one of the two, or note the last cut of S01.',
    ]);
    expect(problemsOf({ successions: successions(S01, "S02,kale,T1,20,30,2026-03-08,,,") })).toEqual([]);
  });

  test("a bed is free again after the last cut, and as many beds as a tunnel has lie side by side", () => {
    const again = successions(S01, "S02,kale,T1,0,20,2026-04-20,,,");
    expect(problemsOf({ successions: again, notes: notes("2026-04-18,cut,S01,5 kg last,") })).toEqual([]);
    const wide = MINIMAL.replace("hoops: wire", "hoops: wire, beds: 2");
    const two = successions(S01, "S02,kale,T1,0,20,2026-03-02,,,");
    expect(problemsOf({ farm: wide, successions: two })).toEqual([]);
    expect(problemsOf({ farm: wide, successions: `${two}\nS03,kale,T1,0,20,2026-03-03,,,` })).toHaveLength(1);
  });

  test("a bed sown again over its whole stretch counts as cut, and its note is asked for", () => {
    const again = successions(S01, "S02,kale,T1,0,20,2026-04-20,,,");
    expect(problemsOf({ successions: again })).toEqual([
      'successions.csv:3 column "from": expected the last cut of S01 noted, since S02 is sown where it stands, received none. From 2026-04-20 on S01 counts as cut. Note it in notes.csv: the date, cut, S01, last.',
    ]);
    expect(farmOf({ successions: again }).notes).toMatchObject([
      { kind: "cut", succession: "S01", last: true },
    ]);
    const part = successions(S01, "S02,kale,T1,0,10,2026-04-20,,,");
    expect(folderOf({ successions: part }).problems[0]).toMatchObject({
      code: "beds-overlap",
      weight: "stops",
    });
    const soon = successions(S01, "S02,kale,T1,0,20,2026-03-08,,,");
    expect(folderOf({ successions: soon }).problems[0]).toMatchObject({
      code: "beds-overlap",
      weight: "stops",
    });
  });

  test("a bed noted as resown stands from then on", () => {
    const two = successions(S01, "S02,kale,T1,0,20,2026-04-20,,,");
    const noted = notes("2026-04-18,cut,S01,5 kg last,", "2026-04-19,resown,S01,,");
    expect(folderOf({ successions: two, notes: noted }).problems[0]).toMatchObject({ code: "beds-overlap" });
  });

  test("more cells than the header has are told, and words of one's own may hold a comma", () => {
    const text = "id,crop,tunnel,from (ft),to (ft),sown\nS01,spinach,T1,0,12,5,2026-03-01";
    expect(problemsOf({ successions: text })).toEqual([
      "successions.csv:2: expected at most 6 cells, as the first line has, received 7. Is there a comma within a cell? Write a point, or put the cell in quotes.",
    ]);
    expect(
      problemsOf({ successions: successions(S01), notes: notes("2026-04-12,leaf,S01,3 in,cold, windy") }),
    ).toEqual([]);
  });

  test("a header left out is one problem, and a title above it none", () => {
    expect(problemsOf({ successions: S01 })).toEqual([
      'successions.csv:1: expected a first line that names the columns, received "S01, spinach, T1, 0, 20, 2026-03-01, friday, 0,". Put this line on top: id,crop,tunnel,from (m),to (m),sown',
    ]);
    expect(problemsOf({ successions: `Table 1\n${successions(S01)}` })).toEqual([]);
  });

  test("dates whose order nothing tells are one problem, however many", () => {
    const text = successions(S01, S01.replace("S01", "S02")).replaceAll("2026-03-01", "3/1/2026");
    expect(problemsOf({ successions: text.replace("S02,spinach,T1,0,20", "S02,spinach,T1,20,30") })).toEqual([
      'successions.csv:2 column "sown": expected dates whose order can be told, received "3/1/2026". Write 2026-03-01 or 2026-01-03, whichever is meant, and so down the column.',
    ]);
  });

  test("two successions of one name are a problem", () => {
    expect(problemsOf({ successions: successions(S01, S01.replace(",0,20,", ",20,30,")) })).toEqual([
      'successions.csv:3 column "id": expected a name no other succession has, received "S01". Line 2 has the same; call one of the two differently.',
    ]);
  });

  test("an empty file is as good as none", () => {
    expect(farmOf({ successions: "" }).successions).toEqual([]);
    expect(farmOf({ successions: SOWN }).successions).toEqual([]);
  });
});

describe("pieces.csv", () => {
  test("a piece shorter than every tunnel is told, and stops nothing", () => {
    const short = { pieces: pieces("C1,row-cover-19,5,,") };
    expect(farmOf(short).pieces).toEqual([
      { id: "C1", cover: "row-cover-19", length: 1.524, count: 1, spans: 1, liesOn: [] },
    ]);
    expect(problemsOf(short)).toEqual([
      'pieces.csv:2 column "length": expected at least 15 m, the length of T1, received 1.52 m, which fits no tunnel. It is not used. Correct it here or the tunnel\'s length in farm.yaml.',
    ]);
  });

  test("covers and tunnels must be known, and more tunnels than pieces cannot be covered", () => {
    expect(
      problemsOf({ pieces: pieces("C1,row-cover-91,60,2,T1 T7", "C2,row-cover-19,60,1,T1 T2") }),
    ).toEqual([
      'pieces.csv:2 column "cover": expected a cover, received "row-cover-91". Did you mean "row-cover-19"? There are row-cover-10, row-cover-19, row-cover-30 and row-cover-50.',
      'pieces.csv:2 column "lies on": expected a tunnel, received "T7". Known: T1.',
      'pieces.csv:3 column "lies on": expected at most 1 tunnel, as many as there are pieces, received "T1 T2". Raise the count or take a tunnel out.',
      'pieces.csv:3 column "lies on": expected a tunnel, received "T2". Known: T1.',
    ]);
  });

  test("a cover lies on a tunnel with hoops only", () => {
    const farm = MINIMAL.replace("hoops: wire", "hoops: none");
    expect(problemsOf({ farm, pieces: pieces("C1,row-cover-19,60,1,T1") })).toEqual([
      'pieces.csv:2 column "lies on": expected a tunnel with hoops under the cover, received T1, hoops: none. Correct the tunnel here or its hoops in farm.yaml.',
    ]);
  });

  test("a succession that must stay under net needs hoops", () => {
    const farm = MINIMAL.replace("hoops: wire", "hoops: none");
    expect(problemsOf({ farm, successions: successions(`${S01}yes`) })).toEqual([
      'successions.csv:2 column "net": expected hoops on T1, since the succession must stay under net, received hoops: none. Set up hoops and say so in farm.yaml, or write no here.',
    ]);
  });
});

describe("notes.csv", () => {
  const own = { successions: successions(S01) };

  test("every kind of note, on the farm's clock and in the order of time", () => {
    const text = notes(
      "2026-04-18 07:10,leaf,S01,3.2 in 3.4 in 3.0 in,",
      "2026-04-12 18:00,cover,T1,row-cover-19 on,windy",
      "2026-03-09,emerged,S01,,",
      "2026-04-20 6:00 am,cut,S01,12 lb last,",
      "2026-04-19T12:00,loss,S01,30 %,beetles",
      "2026-04-13 evening,cover,T1,row-cover-19 off,",
    );
    const { notes: read } = farmOf({ ...own, notes: text });
    expect(read.map(({ kind, line }) => [kind, line])).toEqual([
      ["emerged", 4],
      ["cover", 3],
      ["cover", 7],
      ["leaf", 2],
      ["loss", 6],
      ["cut", 5],
    ]);
    expect(new Date(read[0]!.at).toISOString()).toBe("2026-03-09T11:00:00.000Z");
    expect(new Date(read[2]!.at).toISOString()).toBe("2026-04-13T22:00:00.000Z");
    expect(read[1]).toMatchObject({ tunnel: "T1", cover: "row-cover-19", state: "on" });
    expect(read[3]).toMatchObject({ lengths: [3.2 * 2.54, 3.4 * 2.54, 3 * 2.54] });
    expect(read[4]).toMatchObject({ share: 0.3 });
    expect(read[5]).toMatchObject({ last: true, weight: 12 * 0.45359237 });
  });

  test("notes that cannot be read are told at once", () => {
    const text = notes(
      "18.4.,leaf,S01,3 in,",
      "2026-04-12,cover,T1,row-cover-19 on,",
      "2026-04-12 18:00,cover,T1,row-cover-19,",
      "2026-04-12,leef,S01,3 in,",
      "2026-04-12,leaf,S01,3,",
      "2026-04-12,leaf,S01,3 m,",
      "2026-04-12,leaf,S1,3 in,",
      "2026-02-12,leaf,S01,3 in,",
      "2026-04-12,cut,S01,5 ft,",
    );
    expect(problemsOf({ ...own, notes: text })).toEqual([
      'notes.csv:2 column "when": expected a date like 2026-04-18, or with the time, 2026-04-18 07:10, received "18.4.". Use year-month-day and the farm\'s clock; morning and evening stand for the walks.',
      'notes.csv:3 column "when": expected a date and time like 2026-04-18 07:10, received "2026-04-12". Use year-month-day and the farm\'s clock; morning and evening stand for the walks.',
      'notes.csv:4 column "value": expected a cover and what was done, like row-cover-19 on, received "row-cover-19". End with on, vented, nights or off.',
      'notes.csv:5 column "kind": expected a kind of note, received "leef". Did you mean "leaf"?',
      'notes.csv:6 column "value": expected a leaf length like 3 in or 8 cm, received "3". Write the unit behind the number.',
      'notes.csv:7 column "value": expected leaf lengths between 0 and 60 cm (24 in), received "3 m". Note the longest leaf of each of some five plants.',
      'notes.csv:8 column "about": expected a succession, received "S1". Did you mean "S01"?',
      'notes.csv:9 column "when": expected a date from 2026-03-01 on, when S01 was sown, received 2026-02-12. Correct the date here or in successions.csv.',
      'notes.csv:10 column "value": expected a weight like 30 lb or 14 kg, received "5 ft". This unit measures something else; the field holds a weight.',
    ]);
  });

  test("a cut of nothing and a loss of more than all are told", () => {
    const text = notes(
      "2026-04-12,cut,S01,0 lb,",
      "2026-04-12,cut,S01,-3 lb last,",
      "2026-04-12,loss,S01,120 %,",
    );
    expect(problemsOf({ ...own, notes: text })).toEqual([
      'notes.csv:2 column "value": expected a weight above 0, received "0 lb". Write what was cut, or leave the weight out.',
      'notes.csv:3 column "value": expected a weight above 0, received "-3 lb last". Write what was cut, or leave the weight out.',
      'notes.csv:4 column "value": expected a share above 0 and up to 100 %, received "120 %". Write the share of the bed that is lost.',
    ]);
  });

  test("a note that names no known cover is told those at hand", () => {
    const owned = pieces("C1,row-cover-19,60,2,T1", "C2,net,60,1,");
    const text = notes("2026-04-12 18:00,cover,T1,on,", "2026-04-12 18:00,cover,T1,blanket on,");
    expect(problemsOf({ ...own, pieces: owned, notes: text })).toEqual([
      'notes.csv:2 column "value": expected a cover and what was done, like row-cover-19 on, received "on". Begin with one of row-cover-19, net; end with on, vented, nights or off.',
      'notes.csv:3 column "value": expected a cover, received "blanket". At hand: row-cover-19, net.',
    ]);
  });

  test("a mistake in the successions does not make mistakes of the notes about them", () => {
    const text = notes("2026-04-12,leaf,S01,3 in,");
    const read = problemsOf({ successions: successions(S01.replace("2026-03-01", "soon")), notes: text });
    expect(read).toHaveLength(1);
  });
});
