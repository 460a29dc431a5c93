import { Workbook } from "@cj-tech-master/excelts";
import { dateOf, dayOf } from "./calendar";

/**
 * Scores of one pupil before (A) and after (B) a change of teaching.
 *
 * Source: Parker & Vannest 2009, Behavior Therapy 40(4), 357–367, example data as carried by the R package scan
 * (Parker2009b). The paper names no calendar dates: weekly Mondays are put in so that a spreadsheet can draw them.
 */
const BASELINE = [4, 3, 4, 3, 4, 7, 5, 2, 3, 2];
const INTERVENTION = [5, 9, 7, 9, 7, 5, 9, 11, 11, 10, 9];
const FIRST_MONDAY = dayOf(2026, 1, 5);

/** The published case laid out as a table of its authors would be. @returns the bytes of the .xlsx file */
export async function makePublishedCase(): Promise<Uint8Array> {
  const book = new Workbook();
  book.created = dateOf(FIRST_MONDAY);
  book.modified = book.created;
  const sheet = book.addWorksheet("Parker and Vannest 2009");
  sheet.getCell("A1").value = "Nonoverlap of all pairs: the worked example";
  sheet.getCell("A1").font = { bold: true, size: 14 };
  sheet.getCell("A2").value =
    "Parker & Vannest (2009), Behavior Therapy 40, 357–367. The dates are not the authors': one a week, for drawing.";
  sheet.getRow(4).values = ["Session", "Date", "Phase", "Score"];
  sheet.getRow(4).font = { bold: true };
  [
    ...BASELINE.map((score) => ({ score, phase: "A" })),
    ...INTERVENTION.map((score) => ({ score, phase: "B" })),
  ].forEach(({ score, phase }, place) => {
    sheet.getRow(5 + place).values = [
      place + 1,
      dateOf((FIRST_MONDAY + 7 * place) as typeof FIRST_MONDAY),
      phase,
      score,
    ];
    sheet.getCell(5 + place, 2).numFmt = "yyyy-mm-dd";
  });
  [9, 12, 8, 8].forEach((width, place) => {
    sheet.getColumn(place + 1).width = width;
  });
  const goals = book.addWorksheet("Goals");
  goals.getRow(1).values = ["Pupil", "Measure", "Start date", "Start score", "Goal date", "Goal score"];
  goals.getRow(1).font = { bold: true };
  goals.getRow(2).values = [
    "Parker and Vannest 2009",
    "score",
    dateOf(dayOf(2026, 3, 16)),
    4,
    dateOf(dayOf(2026, 6, 29)),
    12,
  ];
  goals.getCell("C2").numFmt = "yyyy-mm-dd";
  goals.getCell("E2").numFmt = "yyyy-mm-dd";
  goals.getCell("A4").value = "The goal is not the authors': it is put in to show an aim line.";
  [26, 10, 12, 12, 12, 12].forEach((width, place) => {
    goals.getColumn(place + 1).width = width;
  });
  return new Uint8Array(await book.xlsx.writeBuffer());
}
