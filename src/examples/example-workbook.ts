import { Workbook, type Worksheet } from "@cj-tech-master/excelts";
import type { Day } from "../domain/units";
import { dateOf, dayOf } from "./calendar";
import { FABLES } from "./fables";
import { EXAMPLE_LISTS } from "./lists";
import { GOALS, letterGrid, progressRows, taughtRows, WORDS, type ProgressRow } from "./scenario";

const INVENTED =
  "Example data, invented and made by a script with a fixed seed: no real pupil, teacher or place.";
const DATE_FORMAT = "dd/mm/yyyy";
const BRAILLE_FONT = { name: "Noto Sans Symbols 2", size: 12 };
const INK = "FF1F2A44";
const PAPER = "FFE9EDF5";

/** A formula as the file spells it: an add-in's function carries `_xldudf_` and underscores for dots. */
const formula = (text: string) => ({ formula: text.replaceAll("BRAILLE.", "_xldudf_BRAILLE_") });

function addTitle(sheet: Worksheet, title: string, note: string): void {
  sheet.getCell("A1").value = title;
  sheet.getCell("A1").font = { bold: true, size: 14, color: { argb: INK } };
  sheet.getCell("A2").value = note;
  sheet.getCell("A2").font = { italic: true, color: { argb: "FF555555" } };
}

function styleHeader(sheet: Worksheet, row: number, columns: number): void {
  for (let column = 1; column <= columns; column += 1) {
    const cell = sheet.getCell(row, column);
    cell.font = { bold: true, color: { argb: INK } };
    cell.fill = { type: "pattern", pattern: "solid", fgColor: { argb: PAPER } };
    cell.border = { bottom: { style: "medium", color: { argb: INK } } };
    cell.alignment = { vertical: "middle", wrapText: true };
  }
}

function setWidths(sheet: Worksheet, widths: readonly number[]): void {
  widths.forEach((width, place) => {
    sheet.getColumn(place + 1).width = width;
  });
}

/** The teacher's sheet: her own headings, an Excel table, two calculated columns and the passage in braille. */
const PROGRESS_COLUMNS: readonly {
  readonly name: string;
  readonly width: number;
  readonly cell: (row: ProgressRow) => unknown;
  readonly format?: string;
  readonly calculated?: string;
}[] = [
  { name: "Dt", width: 11.5, format: DATE_FORMAT, cell: (row) => dateOf(row.day) },
  { name: "Child", width: 9, cell: (row) => row.pupil },
  { name: "Task", width: 18, cell: (row) => row.task },
  { name: "Passage", width: 25, cell: (row) => row.passage },
  {
    name: "In braille",
    width: 24,
    cell: () => undefined,
    calculated: "BRAILLE.TRANSLATE([@Passage],[@Grade])",
  },
  { name: "Grade", width: 13, cell: (row) => row.code },
  { name: "Words", width: 8, cell: (row) => row.words },
  { name: "Errs", width: 6.5, cell: (row) => row.errors },
  { name: "Secs", width: 6.5, cell: (row) => row.seconds },
  {
    name: "WCPM",
    width: 8,
    format: "0.0",
    cell: () => undefined,
    calculated: 'IF([@Secs]="","",BRAILLE.WCPM([@Words],[@Errs],[@Secs]))',
  },
  { name: "Right", width: 7, cell: (row) => row.correct },
  { name: "Out of", width: 7, cell: (row) => row.outOf },
  {
    name: "Acc",
    width: 7,
    format: "0%",
    cell: () => undefined,
    calculated:
      'IF([@[Out of]]<>"",[@Right]/[@[Out of]],IF(ISNUMBER([@Words]),BRAILLE.ACCURACY([@Words],[@Errs]),""))',
  },
  { name: "Help", width: 14, cell: (row) => row.help },
  { name: "What we tried", width: 19, cell: (row) => row.phase },
  { name: "What was heard", width: 40, cell: (row) => row.heard },
  { name: "Notes", width: 22, cell: (row) => row.note },
];

const PROGRESS_HEADER_ROW = 4;

function addProgress(book: Workbook): void {
  const sheet = book.addWorksheet("Progress", {
    views: [{ state: "frozen", xSplit: 2, ySplit: PROGRESS_HEADER_ROW }],
  });
  addTitle(sheet, "Braille probes, summer and autumn 2026 — Shingle Coast district", INVENTED);
  const rows = progressRows();
  // The table writes its own name for this row's cells, so that every spreadsheet program reads the formulas.
  const spelled = (text: string) =>
    formula(
      text.replace(/\[@(?:\[([^\]]+)\]|([^\]]+))\]/g, (_, a, b) => `Progress[[#This Row],[${a ?? b}]]`),
    );
  sheet.addTable({
    name: "Progress",
    ref: `A${PROGRESS_HEADER_ROW}`,
    headerRow: true,
    style: { theme: "TableStyleLight1", showRowStripes: true },
    columns: PROGRESS_COLUMNS.map(({ name, calculated }) => ({
      name,
      filterButton: true,
      ...(calculated === undefined ? {} : { calculatedColumnFormula: spelled(calculated).formula }),
    })),
    rows: rows.map((row) =>
      PROGRESS_COLUMNS.map(({ cell, calculated }) =>
        calculated === undefined ? (cell(row) ?? null) : spelled(calculated),
      ),
    ),
  });
  styleHeader(sheet, PROGRESS_HEADER_ROW, PROGRESS_COLUMNS.length);
  setWidths(
    sheet,
    PROGRESS_COLUMNS.map(({ width }) => width),
  );
  const first = PROGRESS_HEADER_ROW + 1;
  const last = PROGRESS_HEADER_ROW + rows.length;
  PROGRESS_COLUMNS.forEach(({ name, format }, place) => {
    for (let row = first; row <= last; row += 1) {
      const cell = sheet.getCell(row, place + 1);
      if (format !== undefined) cell.numFmt = format;
      if (name === "In braille") cell.font = BRAILLE_FONT;
    }
  });
  const errors = PROGRESS_COLUMNS.findIndex(({ name }) => name === "Errs") + 1;
  rows.forEach((row, place) => {
    // a number this large among errors is a date that the sheet made of "7/10"
    if ((row.errors ?? 0) > 40_000) {
      const cell = sheet.getCell(first + place, errors);
      cell.value = dateOf(row.errors as Day);
      cell.numFmt = "d-mmm";
    }
  });
  for (let row = first; row <= last; row += 1) {
    sheet.getCell(row, 3).dataValidation = {
      type: "list",
      allowBlank: true,
      formulae: ['"read aloud,heard and brailled,signs named,copied"'],
      showErrorMessage: false,
    };
  }
  sheet.addConditionalFormatting({
    ref: `M${first}:M${last}`,
    rules: [
      {
        type: "cellIs",
        operator: "lessThan",
        formulae: [0.9],
        priority: 1,
        style: { font: { italic: true, bold: true } },
      },
    ],
  });
}

function addGoals(book: Workbook): void {
  const sheet = book.addWorksheet("Goals");
  addTitle(sheet, "Goals from the plans", INVENTED);
  const headings = [
    "Child",
    "Goal (from the plan)",
    "Task",
    "Measure",
    "Grade",
    "Start",
    "Start score",
    "By",
    "Goal score",
  ];
  sheet.getRow(4).values = headings;
  styleHeader(sheet, 4, headings.length);
  GOALS.forEach((goal, place) => {
    const row = sheet.getRow(5 + place);
    row.values = [
      goal.pupil,
      goal.text,
      goal.task,
      goal.measure,
      goal.code,
      dateOf(goal.start),
      goal.startScore,
      dateOf(goal.by),
      goal.goal,
    ];
    row.alignment = { vertical: "top", wrapText: true };
    row.getCell(6).numFmt = DATE_FORMAT;
    row.getCell(8).numFmt = DATE_FORMAT;
    const format = goal.measure === "accuracy" ? "0%" : "0";
    row.getCell(7).numFmt = format;
    row.getCell(9).numFmt = format;
  });
  setWidths(sheet, [10, 52, 16, 11, 14, 12, 11, 12, 11]);
}

/** The beginner's sheet: letters down, Fridays across, a mark in each cell. */
function addLetterGrid(book: Workbook): void {
  const sheet = book.addWorksheet("Heron");
  addTitle(sheet, "Heron: letter cards, + named, P prompted, − not, NR no response", INVENTED);
  const { days, rows } = letterGrid();
  sheet.getRow(4).values = ["Letter", ...days.map(dateOf)];
  styleHeader(sheet, 4, days.length + 1);
  days.forEach((_, place) => {
    sheet.getCell(4, place + 2).numFmt = "dd/mm/yy";
  });
  rows.forEach(({ sign, marks }, place) => {
    sheet.getRow(5 + place).values = [sign, ...marks];
    sheet.getRow(5 + place).alignment = { horizontal: "center" };
  });
  setWidths(sheet, [9, ...days.map(() => 10)]);
}

function addWordsAndPassages(book: Workbook): void {
  const sheet = book.addWorksheet("Words and passages", { views: [{ state: "frozen", ySplit: 4 }] });
  addTitle(
    sheet,
    "Words for drills, passages for probes",
    `${INVENTED} Passages retold after Aesop (public domain).`,
  );
  const headings = ["Word", "For", "In braille", "Dots", "Cells"];
  sheet.getRow(4).values = headings;
  styleHeader(sheet, 4, headings.length);
  WORDS.forEach(({ word, pupil }, place) => {
    const row = 5 + place;
    const code = pupil === "Heron" || pupil === "Plover" ? ',"uncontracted"' : "";
    sheet.getRow(row).values = [
      word,
      pupil,
      formula(`BRAILLE.TRANSLATE(A${row}${code})`),
      formula(`BRAILLE.DOTS(A${row}${code})`),
      formula(`BRAILLE.CELLS(A${row}${code})`),
    ];
    sheet.getCell(row, 3).font = BRAILLE_FONT;
  });
  const top = 7 + WORDS.length;
  const readers = ["Dunlin", "Avocet"];
  const passageHeadings = ["Title", "Text", "Cells", ...readers.map((pupil) => `${pupil} can read`)];
  sheet.getRow(top).values = passageHeadings;
  styleHeader(sheet, top, passageHeadings.length);
  FABLES.forEach(({ title, text }, place) => {
    const row = top + 1 + place;
    sheet.getRow(row).values = [
      title,
      text,
      formula(`BRAILLE.CELLS(B${row})`),
      ...readers.map((pupil) => formula(`BRAILLE.COVERAGE(B${row},Signs_${pupil})`)),
    ];
    sheet.getCell(row, 4).numFmt = "0%";
    sheet.getCell(row, 5).numFmt = "0%";
  });
  setWidths(sheet, [26, 12, 28, 30, 14, 4, 26, 12, 22, 18, 10]);
  sheet.getCell("G3").value = "Type any text in G4: which contractions does it use?";
  sheet.getCell("G4").value = FABLES[0]?.text.split(". ")[0] ?? "";
  sheet.getRow(6).getCell(7).value = "Sign";
  ["Dots", "Kind", "Rule section", "Times"].forEach((heading, place) => {
    sheet.getRow(6).getCell(8 + place).value = heading;
  });
}

/** The formula that spills beneath those headings; typed by our own engine, which knows how a spill is saved. */
export const SPILL = {
  sheet: "Words and passages",
  row: 6,
  column: 6,
  formula: "BRAILLE.CONTRACTIONS(G4)",
} as const;

const TAUGHT_COLUMNS: readonly string[] = [
  "Pupil",
  "Sign",
  "Introduced",
  "Reading",
  "Writing",
  "Check again",
];

/** One list a pupil under the other, each under a name, so that a formula can say whose signs it means. */
function addTaught(book: Workbook): void {
  const sheet = book.addWorksheet("Taught", { views: [{ state: "frozen", ySplit: 4 }] });
  addTitle(sheet, "Signs taught", INVENTED);
  const rows = taughtRows();
  sheet.addTable({
    name: "Taught",
    ref: "A4",
    headerRow: true,
    style: { theme: "TableStyleLight1", showRowStripes: false },
    columns: TAUGHT_COLUMNS.map((name) => ({ name })),
    // The pane fills the columns behind the day introduced when it is asked to.
    rows: rows.map(({ pupil, sign, introduced }) => [pupil, sign, dateOf(introduced), null, null, null]),
  });
  styleHeader(sheet, 4, TAUGHT_COLUMNS.length);
  rows.forEach((_, place) => {
    for (const name of ["Introduced", "Check again"])
      sheet.getCell(5 + place, TAUGHT_COLUMNS.indexOf(name) + 1).numFmt = DATE_FORMAT;
  });
  for (const pupil of new Set(rows.map((row) => row.pupil))) {
    const first = rows.findIndex((row) => row.pupil === pupil);
    const last = rows.findLastIndex((row) => row.pupil === pupil);
    book.definedNames.add(`Taught!$B$${5 + first}:$B$${5 + last}`, `Signs_${pupil}`);
  }
  setWidths(sheet, [10, 12, 13, 18, 18, 13]);
}

/** The lists beside her own sheets, each as a table. */
function addLists(book: Workbook): void {
  for (const { name, headings, widths, rows } of EXAMPLE_LISTS) {
    const sheet = book.addWorksheet(name, { views: [{ state: "frozen", ySplit: 4 }] });
    addTitle(sheet, name, INVENTED);
    sheet.addTable({
      name,
      ref: "A4",
      headerRow: true,
      style: { theme: "TableStyleLight1", showRowStripes: false },
      columns: headings.map((heading) => ({ name: heading })),
      rows: rows.map((row) => [...row]),
    });
    styleHeader(sheet, 4, headings.length);
    rows.forEach((_, place) => {
      if (headings[0] === "Date") sheet.getCell(5 + place, 1).numFmt = DATE_FORMAT;
      if (headings[1] === "Braille") sheet.getCell(5 + place, 2).font = BRAILLE_FONT;
    });
    setWidths(sheet, widths);
  }
}

/** The example workbook as its writer makes it: formulas not yet calculated. @returns the bytes of the .xlsx file */
export async function makeExampleWorkbook(): Promise<Uint8Array> {
  const book = new Workbook();
  book.created = dateOf(dayOf(2026, 4, 20));
  book.modified = book.created;
  addProgress(book);
  addGoals(book);
  addLetterGrid(book);
  addWordsAndPassages(book);
  addTaught(book);
  addLists(book);
  return new Uint8Array(await book.xlsx.writeBuffer());
}
