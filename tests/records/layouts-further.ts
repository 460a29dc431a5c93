import { drawSheet } from "./drawn-sheet";
import type { Layout } from "./layouts";

const layout = (name: string, drawing: string, ...found: string[]): Layout => ({
  name,
  sheets: [drawSheet("Heron", drawing)],
  found,
});

/** More sheets, each with a trap of its own; common practice, no source. */
export const FURTHER_LAYOUTS: readonly Layout[] = [
  layout(
    "trials: presented and correct, prompt level, percent",
    `
    Session Date | Target Sign | Trials presented | # correct | % correct | Prompt level
    @2026-09-07 | ing | 10 | 7 | =D2/C2->0.7 | gestural
    @2026-09-08 | ing | 10 | 8 | =D3/C3->0.8 | independent
    `,
    "A1:F3 | date A sign B correct D opportunities C accuracy E support F | 2 |",
  ),
  layout(
    "No. of words, No. of errors, time in secs",
    `
    Date | Name of child | No. of words | No. of errors | Time in secs | Words per min.
    @2026-09-07 | Heron | 84 | 3 | 60 | 81
    `,
    "A1:F2 | date A pupil B words C errors D seconds E rate F | 1 |",
  ),
  layout(
    "snake case and camel case",
    `
    probe_date | student_id | wordsAttempted | errorCount | seconds_taken | wcpm
    @2026-09-07 | S-01 | 84 | 3 | 60 | 81
    `,
    "A1:F2 | date A pupil B words C errors D seconds E rate F | 1 |",
  ),
  layout(
    "total read, incorrect, WRC",
    `
    Date | Student | Total Words Read (TWR) | Incorrect | Words Correct (WRC) | Level
    @2026-09-07 | Heron | 84 | 3 | 81 | 4
    `,
    "A1:F2 | date A pupil B words C errors D correct E score F | 1 |",
  ),
  layout(
    "score as 45/50 in one cell, slashes and words",
    `
    Day | Learner | Story | Score
    Mon 7 Sep 2026 | Heron | The Fox | '45/50
    Mon 14 Sep 2026 | Heron | The Fox | 46 out of 50
    `,
    "A1:D3 | date A pupil B material C score D | 2 |",
  ),
  layout(
    "correct as 45/50",
    `
    Date | Pupil | Correct
    @2026-09-07 | Heron | '45/50
    @2026-09-14 | Heron | '51/50
    `,
    "A1:C3 | date A pupil B correct C | 1 | C3",
  ),
  layout(
    "dots and two-digit years, day first settled",
    `
    Datum | Schüler | WPM
    '07.09.26 | Heron | 40
    '14.09.26 | Heron | 42
    `,
    "A1:C3 | date A rate C | 2 |",
  ),
  layout(
    "month first settled",
    `
    Date | Student | CWPM
    '9/7/2026 | Heron | 40
    '9/14/2026 | Heron | 42
    `,
    "A1:C3 | date A pupil B rate C | 2 |",
  ),
  layout(
    "both orders in one column: the doubtful one waits",
    `
    Date | Student | CWPM
    '9/17/2026 | Heron | 40
    '24/9/2026 | Heron | 42
    '1/10/2026 | Heron | 42
    `,
    "A1:C4 | date A pupil B rate C | 2 | A1",
  ),
  layout(
    "true dates with a few ambiguous texts",
    `
    Date | Student | CWPM
    @2026-09-07 | Heron | 40
    '14/9/2026 | Heron | 42
    '5/10/2026 | Heron | 42
    `,
    "A1:C4 | date A pupil B rate C | 3 |",
  ),
  layout(
    "dates without format under a date header",
    `
    Date | Student | CWPM
    46272 | Heron | 40
    46279 | Heron | 42
    `,
    "A1:C3 | date A pupil B rate C | 2 |",
  ),
  layout(
    "time in hours, minutes and seconds, one of them clock valued by typing 1:30:00",
    `
    Date | Student | Words | Errors | Time taken
    @2026-09-07 | Heron | 84 | 3 | ~1:30:00{h:mm:ss}
    @2026-09-14 | Heron | 84 | 3 | ~1:05:00{h:mm:ss}
    `,
    "A1:E3 | date A pupil B words C errors D seconds E | 2 | E1",
  ),
  layout(
    "hours in the header: no question",
    `
    Date | Student | Words | Errors | Time (h:mm)
    @2026-09-07 | Heron | 840 | 3 | ~0:30
    @2026-09-14 | Heron | 840 | 3 | ~1:05
    `,
    "A1:E3 | date A pupil B words C errors D seconds E | 2 |",
  ),
  layout(
    "m:ss as text",
    `
    Date | Student | Words | Errors | Time
    @2026-09-07 | Heron | 84 | 3 | '1:30
    @2026-09-14 | Heron | 84 | 3 | '0:58
    @2026-09-21 | Heron | 84 | 3 | abc
    `,
    "A1:E4 | date A pupil B words C errors D seconds E | 2 | E4",
  ),
  layout(
    "several totals rows with a label in another column, and sums without a label",
    `
    Date | Pupil | Words | Errors
    @2026-09-07 | Heron | 84 | 3
    @2026-09-14 | Heron | 80 | 4
     | Total | =SUM(C2:C3)->164 | =SUM(D2:D3)->7
     | Mean: | =AVERAGE(C2:C3)->82 | =AVERAGE(D2:D3)->3.5
     | | =MAX(C2:C3)->84 |
    `,
    "A1:D3 | date A pupil B words C errors D | 2 |",
  ),
  layout(
    "absent in the pupil's row, in the note, in the date's row; a record with 'absent Monday' in its note",
    `
    Date | Pupil | WCPM | Errors | Notes
    @2026-09-07 | Heron | | | absent
    @2026-09-08 | Heron | ABS | ABS |
    @2026-09-09 | Heron | 40 | 2 | was absent on Monday
    @2026-09-10 | Heron | Absent - ill | |
    @2026-09-11 | Heron | -- | -- | school closed
    `,
    "A1:E6 | date A pupil B errors D rate C note E | 1 |",
  ),
  layout(
    "three blocks one under another, one a pupil, with a title each",
    `
    Heron | | |
    Date | Words | Errors | Secs
    @2026-09-07 | 84 | 3 | 60
    @2026-09-14 | 85 | 3 | 60
     | | |
    Plover | | |
    Date | Words | Errors | Secs
    @2026-09-07 | 44 | 3 | 60
     | | |
    Dunlin | | |
    Date | Words | Errors | Secs
    @2026-09-07 | 64 | 3 | 60
    `,
    "A2:D4 | date A words B errors C seconds D | 2 |",
    "A7:D8 | date A words B errors C seconds D | 1 |",
    "A11:D12 | date A words B errors C seconds D | 1 |",
  ),
  layout(
    "a block of another kind right beside without a blank column is one table",
    `
    Week | Date | Pupil | WCPM | Target | On track?
    1 | @2026-09-07 | Heron | 40 | 42 | no
    2 | @2026-09-14 | Heron | 44 | 43 | yes
    `,
    "A1:F3 | date B pupil C rate D | 2 |",
  ),
  layout(
    "spelling told words, self corrections, miscues and prompts",
    `
    Date of assessment | Pupil initials | Text title | Running words | Miscues | Self-corrections | Accuracy % | Reading time (mins:secs) | Support
    @2026-09-07 | H | The Fox | 120 | 6 | 2 | 95 | '2:10 | none
    `,
    "A1:I2 | date A pupil B material C words D errors E seconds H accuracy G support I | 1 |",
  ),
  layout(
    "per cent written out, marks out of",
    `
    Date | Child's name | Contraction tested | Got right | Asked | Per cent
    @2026-09-07 | Heron | ou | 7 | 10 | 70
    @2026-09-14 | Heron | ou | 8 | 10 | 80
    `,
    "A1:F3 | date A pupil B sign C correct D opportunities E accuracy F | 2 |",
  ),
  layout(
    "empty table: header only",
    `
    Date | Pupil | Words | Errors | Seconds
    `,
  ),
  layout(
    "a header with line breaks and trailing colons",
    `
    Date: | Pupil: | Words\u2028attempted: | Errors: | Time\u00A0(s):
    @2026-09-07 | Heron | 84 | 3 | 60
    `,
    "A1:E2 | date A pupil B words C errors D seconds E | 1 |",
  ),
  layout(
    "marks as words",
    `
    Date | Student | Braille letter | Result
    @2026-09-07 | Heron | a | correct
    @2026-09-07 | Heron | b | incorrect
    @2026-09-07 | Heron | c | no response
    @2026-09-07 | Heron | d | prompted
    `,
    "A1:D5 | date A pupil B sign C score D | 4 |",
  ),
  layout(
    "pupils down, dates across with numbers",
    `
    WCPM | | |
    Pupil | @2026-09-07 | @2026-09-14 | @2026-09-21
    Heron | 40 | 42 | absent
    Plover | 50 | | 56
    `,
    "A2:D4 | date B:D pupil A | 4 |",
  ),
  layout(
    "grid with counts out of a total and a slip",
    `
    Sign | @2026-09-07 | @2026-09-14
    ch | '4/5 | @2026-05-03{d-mmm}
    sh | '3/5 | '5/5
    `,
    "A1:C3 | date B:C sign A | 3 | C2",
  ),
  layout(
    "grid with a text heading of weekdays and dates, ticks and crosses",
    `
    Contraction | Mon 7/9/26 | Tue 15/9/26
    and | ✓ | ✗
    for | ✔ | ✘
    the | x | ✓
    `,
    "A1:C4 | date B:C sign A | 6 |",
  ),
  layout(
    "a date header twice: taught and probed",
    `
    Date taught | Sign | Date probed | Correct | Out of
    @2026-09-01 | ch | @2026-09-07 | 8 | 10
    @2026-09-01 | sh | @2026-09-07 | 9 | 10
    `,
    "A1:E3 | date C sign B correct D opportunities E | 2 |",
  ),
  layout(
    "mixed units under Attempted",
    `
    Date | Pupil | Task | Unit | Attempted | Errors | Correct | Seconds
    @2026-09-07 | Heron | read aloud | words | 84 | 3 | | 60
    @2026-09-07 | Heron | signs named | signs | 20 | | 18 |
    `,
    "A1:H3 | date A pupil B task C words E errors F correct G opportunities E seconds H unit D | 2 |",
  ),
  layout(
    "medium and code by their values",
    `
    Date | Pupil | Format | Braille grade | Reading rate (wpm)
    @2026-09-07 | Heron | braille | 2 | 40
    @2026-09-14 | Heron | print | 2 | 60
    `,
    "A1:E3 | date A pupil B rate E code D medium C | 2 |",
  ),
  layout(
    "errors listed in words are no error counts",
    `
    Date | Pupil | Words | Errors | Errors made
    @2026-09-07 | Heron | 84 | 2 | was/saw; then/than
    @2026-09-14 | Heron | 80 | 1 | of/off
    `,
    "A1:E3 | date A pupil B words C errors D | 2 |",
  ),
  layout(
    "repeated header row in the middle of a long sheet",
    `
    Date | Pupil | WCPM
    @2026-09-07 | Heron | 40
    Date | Pupil | WCPM
    @2026-09-14 | Heron | 42
    `,
    "A1:C2 | date A pupil B rate C | 1 |",
    "A3:C4 | date A pupil B rate C | 1 |",
  ),
  layout(
    "a time typed in one row among seconds, a blank error count",
    `
    Date | Pupil | Words | Errors | Seconds
    @2026-09-07 | Heron | 84 | | 60
    @2026-09-14 | Heron | 84 | 2 | ~1:00
    @2026-09-21 | Heron | 84 | 2 | 0.000694
    `,
    "A1:E4 | date A pupil B words C errors D seconds E | 1 | E3 E4",
  ),
  layout(
    "error cells among the data and in a date",
    `
    Date | Pupil | Words | Errors | WCPM
    #REF! | Heron | 84 | 2 | 82
    @2026-09-14 | Heron | 84 | #N/A | =C3-D3->#N/A
    @2026-09-21 | Heron | 84 | 2 | =C4-D4->#NAME?
    @2026-09-28 | Heron | 84 | 2 | =C5-D5->82
    `,
    "A1:E5 | date A pupil B words C errors D rate E | 1 | A2 D3 E4",
  ),
];
