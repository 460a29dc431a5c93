import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOf } from "../../src/domain/calendar";
import type { Day } from "../../src/domain/units";
import { formatDayLike } from "../../src/records/day-style";
import { parseDayText } from "../../src/records/day-text";

const day = (year: number, month: number, date: number): Day => dayOf({ year, month, date }) as Day;
const OCT_7 = day(2026, 10, 7);

describe("parseDayText", () => {
  it.each([
    "2026-10-07",
    "2026/10/7",
    "2026.10.07",
    "20261007",
    "7 Oct 2026",
    "7 October 2026",
    "7th Oct 2026",
    "7th of October, 2026",
    "Oct 7, 2026",
    "Oct. 7th, 2026",
    "October 7 2026",
    "7-Oct-26",
    "7/Oct/2026",
    "07 OCT 26",
    "Wed 7 Oct 2026",
    "Wednesday, 7 October 2026",
    "2026-10-07T09:30:00",
    "7 Oct 2026 10:30",
    "７ Oct ２０２６",
    "Wed, Oct 7, 2026",
    "7 Oct '26",
  ])("reads %s as 7 October 2026", (text) => {
    expect(parseDayText(text)).toEqual({ kind: "day", day: OCT_7 });
  });

  it.each([
    ["7/10/2026", { kind: "either", dmy: OCT_7, mdy: day(2026, 7, 10) }],
    ["07.10.26", { kind: "either", dmy: OCT_7, mdy: day(2026, 7, 10) }],
    ["13/10/2026", { kind: "one order", order: "dmy", day: day(2026, 10, 13) }],
    ["10-13-26", { kind: "one order", order: "mdy", day: day(2026, 10, 13) }],
    ["10/10/2026", { kind: "day", day: day(2026, 10, 10) }],
    // 7 October 2026 is a Wednesday, 10 July 2026 a Friday.
    ["Wed 7/10/2026", { kind: "one order", order: "dmy", day: OCT_7 }],
    ["Fri 7/10/2026", { kind: "one order", order: "mdy", day: day(2026, 7, 10) }],
    ["Mon 7/10/2026", { kind: "either", dmy: OCT_7, mdy: day(2026, 7, 10) }],
    ["7 Oct", { kind: "no year" }],
    ["31/02/2026", { kind: "no such day" }],
    ["30 Feb 2026", { kind: "no such day" }],
    ["13/13/2026", { kind: "no such day" }],
    ["7/10/1899", { kind: "before 1900" }],
    ["31 Dec 1899", { kind: "before 1900" }],
    ["1900-01-01", { kind: "day", day: 1 }],
    ["29 Feb 1900", { kind: "no such day" }],
  ])("reads %s", (text, reading) => {
    expect(parseDayText(text)).toEqual(reading);
  });

  it.each([
    "",
    "Heron",
    "7/10",
    "45/50",
    "1:30",
    "62",
    "12.5",
    "March",
    "May 5 times",
    "1/2/3/4",
    "3-4-5 words",
  ])("%s is no date", (text) => {
    expect(parseDayText(text)).toBeUndefined();
  });
});

describe("formatDayLike", () => {
  it.each([
    ["13/10/2026", "dmy", false, "5/11/2026"],
    ["13/10/2026", "dmy", true, "05/11/2026"],
    ["10/13/26", "mdy", false, "11/5/26"],
    ["13.10.26", "dmy", true, "05.11.26"],
    ["2026-10-13", "dmy", true, "2026-11-05"],
    ["13 Oct 2026", "dmy", false, "5 Nov 2026"],
    ["Tue 13 October 2026", "dmy", false, "Thu 5 November 2026"],
    ["Oct 13th, 2026", "dmy", false, "Nov 5th, 2026"],
    ["13-OCT-26", "dmy", true, "05-NOV-26"],
    ["soon", "dmy", false, "2026-11-05"],
  ] as const)("writes 5 November 2026 as %s is written", (example, order, padded, written) => {
    expect(formatDayLike(example, day(2026, 11, 5), order, padded)).toBe(written);
  });

  it("is read back as the same day, in every form and order", () => {
    const examples = [
      "13/10/2026",
      "1.2.26",
      "2026-10-13",
      "13 Oct 2026",
      "Oct 13, 2026",
      "Tuesday, 13 October 2026",
      "13-Oct-26",
      "Sept 13th, 2026",
      "20261013",
    ];
    fc.assert(
      fc.property(
        fc.integer({ min: day(1971, 1, 1), max: day(2068, 12, 31) }),
        fc.constantFrom(...examples),
        fc.constantFrom("dmy" as const, "mdy" as const),
        fc.boolean(),
        (serial, example, order, padded) => {
          const reading = parseDayText(formatDayLike(example, serial as Day, order, padded));
          expect(
            reading?.kind === "either"
              ? reading[order]
              : reading && "day" in reading
                ? reading.day
                : undefined,
          ).toBe(serial);
        },
      ),
    );
  });
});
