import type { Farm } from "../../src/farm/index.ts";
import { farmOf } from "./fixtures.ts";

/** A farm with a tunnel that is covered in parts, in a farm.yaml to which lines may be added. */
export const LONG_ROW = `name: Willow Bend
units: US
place: { latitude: 44.12, longitude: -72.84, elevation: 620 ft, zone: America/New_York }
walks: { morning: "7:00", evening: "18:00" }
markets:
  - { id: tuesday, name: Tuesday market, day: Tuesday, picks: [{ time: "6:00" }] }
  - { id: friday, name: Friday market, day: Friday, picks: [{ days before: 1, time: "6:00" }] }
tunnels:
  - { id: T1, name: Creek 1, length: 50 ft, hoops: wire }
  - { id: T2, name: Creek 2, length: 50 ft, hoops: none }
  - { id: T9, name: Long Row, length: 100 ft, hoops: wire, sections: 2 }
`;

export const SOWN = "id,crop,tunnel,from (ft),to (ft),sown";
export const OWNED = "id,cover,length (ft),count,spans,lies on";
export const NOTED = "when,kind,about,value,remark";

export const longRow: Farm = farmOf({
  farm: `${LONG_ROW}sensors: { outside: outside, row: T9, end: T9-2 }\n`,
  successions: `${SOWN}
S04,arugula,T1,0,50,2026-03-20
S05,spinach,T9,0,50,2026-03-20
S06,mizuna,T9,60,80,2026-03-22`,
  pieces: `${OWNED}
light,row-cover-19,60,3,,T9
short,row-cover-30,30,1,,
shade,shade-40,60,1,,
net,net,60,1,,`,
  notes: `${NOTED}
2026-04-10 18:00,cover,T9,row-cover-19 on,
2026-04-12 07:00,cover,T9-2,row-cover-19 off,`,
});
