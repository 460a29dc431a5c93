import { drawSheet } from "./drawn-sheet";
import type { Layout } from "./layouts";

const layout = (name: string, drawing: string, ...found: string[]): Layout => ({
  name,
  sheets: [drawSheet("Heron", drawing)],
  found,
});

/** Sheets that look like something they are not; common practice, no source. */
export const PITFALL_LAYOUTS: readonly Layout[] = [
  layout(
    "a line of details above the headers is no header row",
    `
    Student: Heron | Grade: 3 | Teacher: T1 | |
    Date | Passage | Words | Errors | Secs
    @2026-09-07 | The Fox | 84 | 3 | 60
    `,
    "A2:E3 | date A material B words C errors D seconds E | 1 |",
  ),
  layout(
    "a register of attendance holds no probes",
    `
    Pupil | @2026-09-07 | @2026-09-08 | @2026-09-09
    Heron | P | A | P
    Plover | P | P | P
    `,
  ),
  layout(
    "a summary with the latest dates holds no probes",
    `
    Pupil | Last probe date | Latest WCPM | Average WCPM
    Heron | @2026-09-07 | 40 | 38
    Plover | @2026-09-14 | 50 | 48
    `,
  ),
  layout(
    "signs with the next date to check hold no probes",
    `
    Pupil | Sign | Introduced | Next review date | Score needed
    Heron | ch | @2026-09-07 | @2026-10-07 | 8
    `,
  ),
  layout(
    "a sheet of behaviour has no scores",
    `
    Date | Student | Incident | Time | Notes
    @2026-09-07 | Heron | left the room | 60 | calm after
    `,
  ),
  layout(
    "wide sheet with a legend at its right, directly under the same header row",
    `
    Date | Pupil | WCPM | | Key | Meaning
    @2026-09-07 | Heron | 40 | | V | verbal prompt
    @2026-09-14 | Heron | 42 | | G | gestural prompt
    `,
    "A1:C3 | date A pupil B rate C | 2 |",
  ),
  layout(
    "blank rows of half a page, then more data",
    `
    Date | Pupil | WCPM
    @2026-09-07 | Heron | 40



    @2026-09-14 | Heron | 42
    `,
    "A1:C6 | date A pupil B rate C | 2 |",
  ),
  layout(
    "numbers as text throughout",
    `
    Date | Pupil | Words | Errors | Secs
    '2026-09-07 | Heron | '84 | '3 | '60
    '2026-09-14 | Heron | '85 | '2 | '60
    `,
    "A1:E3 | date A pupil B words C errors D seconds E | 2 |",
  ),
  layout(
    "zero as a score and an error count is data",
    `
    Date | Pupil | Correct | Total
    @2026-09-07 | Heron | 0 | 10
    @2026-09-14 | Heron | 1 | 10
    `,
    "A1:D3 | date A pupil B correct C opportunities D | 2 |",
  ),
  layout(
    "no header row at all",
    `
    @2026-09-07 | Heron | 40
    @2026-09-14 | Heron | 42
    `,
  ),
  layout(
    "header in row 1, a blank row, then data",
    `
    Date | Pupil | WCPM
     | |
    @2026-09-07 | Heron | 40
    `,
    "A1:C3 | date A pupil B rate C | 1 |",
  ),
  layout(
    "times of one minute under Time, numbers",
    `
    Date | Pupil | Words | Errors | Time
    @2026-09-07 | Heron | 84 | 3 | 1
    @2026-09-14 | Heron | 85 | 2 | 1
    `,
    "A1:E3 | date A pupil B words C errors D minutes E | 2 |",
  ),
  layout(
    "letters in the sign column look like marks",
    `
    Date | Pupil | Letter | Correct | Trials
    @2026-09-07 | Heron | a | 4 | 5
    @2026-09-07 | Heron | p | 3 | 5
    @2026-09-07 | Heron | x | 5 | 5
    `,
    "A1:E4 | date A pupil B sign C correct D opportunities E | 3 |",
  ),
  layout(
    "signs across that are words of the header list too",
    `
    Date | day | time | right | letter | name
    @2026-09-07 | + | - | + | + | -
    @2026-09-14 | + | + | + | - | +
    @2026-09-21 | + | + | P | + | +
    `,
    "A1:F4 | date A sign B:F | 15 |",
  ),
  layout(
    "one mark a probe, right and wrong in two columns of 0 and 1",
    `
    Date | Pupil | Sign | Correct | Incorrect
    @2026-09-07 | Heron | ch | 1 | 0
    @2026-09-08 | Heron | ch | 0 | 1
    `,
    "A1:E3 | date A pupil B sign C errors E correct D | 2 |",
  ),
  layout(
    "a plain rate beside the rate of words correct",
    `
    Dt | Student | WPM | Err | CWPM | min:sec
    @2026-09-07 | Heron | 60 | 3 | 57 | '1:00
    @2026-09-14 | Plover | 62 | 5 | 57 | '1:00
    `,
    "A1:F3 | date A pupil B errors D seconds F rate E | 2 |",
  ),
];
