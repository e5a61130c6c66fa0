// Files that are no log, or none that can be read as text.
import { deflateSync, gzipSync } from "node:zlib";
import { lines, series, stamp } from "./kit.mjs";

const half = series({ from: "2026-04-17T20:00", every: 30, rows: 24 });
const noise = (length) => {
  const found = Buffer.alloc(length);
  let state = 20260418;
  for (let index = 0; index < length; index++) {
    state = (state * 1103515245 + 12345) % 2147483648;
    found[index] = Math.floor(state / 65536) % 256;
  }
  return found;
};

const crc = (bytes) => {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return (value ^ 0xffffffff) >>> 0;
};

const chunk = (type, data) => {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const head = Buffer.alloc(4);
  head.writeUInt32BE(data.length);
  const tail = Buffer.alloc(4);
  tail.writeUInt32BE(crc(body));
  return Buffer.concat([head, body, tail]);
};

/** A grey square. */
function image() {
  const size = Buffer.from([0, 0, 0, 8, 0, 0, 0, 8, 8, 0, 0, 0, 0]);
  const pixels = Buffer.alloc(8 * 9, 128).map((byte, index) => (index % 9 === 0 ? 0 : byte));
  const sign = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    sign,
    chunk("IHDR", size),
    chunk("IDAT", deflateSync(pixels, { level: 0 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

/** A zip of uncompressed files, which is what a workbook is. */
function zip(files) {
  const parts = [];
  const list = [];
  let offset = 0;
  for (const [name, text] of files) {
    const [title, data] = [Buffer.from(name), Buffer.from(text)];
    const fields = Buffer.alloc(26);
    fields.writeUInt16LE(20, 0);
    fields.writeUInt32LE(crc(data), 10);
    fields.writeUInt32LE(data.length, 14);
    fields.writeUInt32LE(data.length, 18);
    fields.writeUInt16LE(title.length, 22);
    const local = Buffer.concat([Buffer.from("PK\u0003\u0004", "latin1"), fields, title, data]);
    const place = Buffer.alloc(14);
    place.writeUInt32LE(offset, 10);
    list.push(
      Buffer.concat([
        Buffer.from("PK\u0001\u0002", "latin1"),
        Buffer.from([20, 0]),
        fields.subarray(0, 26),
        place,
        title,
      ]),
    );
    parts.push(local);
    offset += local.length;
  }
  const central = Buffer.concat(list);
  const end = Buffer.alloc(18);
  end.writeUInt16LE(files.length, 4);
  end.writeUInt16LE(files.length, 6);
  end.writeUInt32LE(central.length, 8);
  end.writeUInt32LE(offset, 12);
  return Buffer.concat([...parts, central, Buffer.from("PK\u0005\u0006", "latin1"), end]);
}

const workbook = zip([
  ["[Content_Types].xml", '<?xml version="1.0"?><Types/>'],
  ["xl/workbook.xml", '<?xml version="1.0"?><workbook><sheets><sheet name="Log"/></sheets></workbook>'],
  [
    "xl/worksheets/sheet1.xml",
    `<?xml version="1.0"?><worksheet><sheetData>${half.map((r) => `<row><c><v>${stamp(r)}</v></c><c><v>${r.text}</v></c></row>`).join("")}</sheetData></worksheet>`,
  ],
]);
const OLD_WORKBOOK = Buffer.concat([
  Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
  noise(1528),
]);
const packed = gzipSync(
  lines(
    "Timestamp,Temp (°C)",
    half.map((r) => `${stamp(r)},${r.text}`),
  ),
  { level: 0 },
);
// The maker's system stands in byte 9; the corpus is the same on all.
packed[9] = 3;
const NOT_TEXT = { code: "log-not-text" };

export const strangers = [
  { name: "garbage", about: "Two kilobytes of noise.", content: noise(2048), problem: NOT_TEXT },
  { name: "image", about: "A picture with the wrong name.", content: image(), problem: NOT_TEXT },
  {
    name: "workbook",
    about: "A spreadsheet's workbook: refused, and the way out is to save it as CSV.",
    file: "log.xlsx",
    content: workbook,
    problem: { code: "log-workbook", names: ["CSV"] },
  },
  {
    name: "workbook-named-csv",
    about: "A workbook renamed to csv.",
    content: workbook,
    problem: { code: "log-workbook", names: ["CSV"] },
  },
  {
    name: "old-workbook",
    about: "A workbook of the old kind.",
    file: "log.xls",
    content: OLD_WORKBOOK,
    problem: { code: ["log-workbook", "log-not-text"], names: ["CSV"] },
  },
  {
    name: "packed",
    about: "A log packed with gzip.",
    file: "log.csv.gz",
    content: packed,
    problem: NOT_TEXT,
  },
  {
    name: "web-page",
    about: "An error page saved as csv.",
    content: lines(
      "<!DOCTYPE html>",
      '<html lang="en">',
      "<head><title>Session expired</title></head>",
      "<body>",
      "<h1>Please log in again</h1>",
      "<p>Your session ended on 2026-04-18 at 08:00, temp file removed.</p>",
      "</body>",
      "</html>",
    ),
    problem: { code: ["log-not-a-table", "log-header-missing"], names: ["web page"] },
  },
  {
    name: "json",
    about: "A program's answer in JSON, one line.",
    file: "readings.json",
    content: `${JSON.stringify({ station: "lower field", unit: "C", readings: half.map((r) => ({ time: stamp(r), temp: r.value })) })}\n`,
    problem: { code: ["log-not-a-table", "log-header-missing"], names: ["CSV"] },
  },
  {
    name: "json-indented",
    about: "The same over many lines.",
    content: `${JSON.stringify(
      half.map((r) => ({ time: stamp(r), temp: r.value })),
      null,
      2,
    )}\n`,
    problem: { code: ["log-not-a-table", "log-header-missing"], names: ["CSV"] },
  },
  {
    name: "letter",
    about: "A letter that speaks of temperatures and dates.",
    file: "letter.txt",
    content: lines(
      "Dear neighbour,",
      "",
      "on 2026-04-18, at 6:00, I read 31 °F on the post by the creek.",
      "Time to put the covers on, I think: the temperature fell all night.",
      "",
      "Yours, the lower farm",
    ),
    problem: { code: ["log-not-a-table", "log-header-missing", "log-empty"] },
  },
  {
    name: "seed-list",
    about: "A table with dates and numbers, none of which is a temperature.",
    content: lines(
      "Crop,Sown,Bed,Length (ft),Germination (%)",
      "Arugula,2026-03-20,4,25,92",
      "Spinach,2026-03-24,5,50,80",
      "Mizuna,2026-03-27,6,25,95",
    ),
    problem: { code: ["log-temperature-missing", "log-header-missing"], names: ["temperature"] },
  },
];
