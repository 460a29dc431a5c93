import type { DescribedSheet } from "../../src/adapters/memory/memory-workbook";
import { drawSheet } from "./drawn-sheet";

/** A layout and what is to be found in it: `range | kind letters … | records | fault cells …`, one line a table. */
export interface Layout {
  readonly name: string;
  readonly sheets: readonly DescribedSheet[];
  readonly found: readonly string[];
}

const layout = (name: string, drawing: string, ...found: string[]): Layout => ({
  name,
  sheets: [drawSheet("Heron", drawing)],
  found,
});

/** Invented sheets of teachers; the spellings are common practice, no source. */
export const LAYOUTS: readonly Layout[] = [
  layout(
    "plain table from A1",
    `
    Date | Pupil | Words | Errors | Seconds
    @2026-09-07 | Heron | 84 | 3 | 60
    @2026-09-14 | Plover | 62 | 5 | 60
    `,
    "A1:E3 | date A pupil B words C errors D seconds E | 2 |",
  ),
  layout(
    "abbreviations, upper case, punctuation",
    `
    DT. | STUD. | WDS | ERRS. | SECS | WCPM | COMMENTS
    @2026-09-07 | Heron | 84 | 3 | 60 | 81 | ok
    `,
    "A1:G2 | date A pupil B words C errors D seconds E rate F note G | 1 |",
  ),
  layout(
    "title rows, merged and empty, above; totals row below",
    `
    Reading log 2026/27 | | |
    District school | | |
     | | |
    Date of probe | Learner | CWPM | Notes
    @2026-09-07 | Heron | 40 |
    @2026-09-14 | Heron | 44 | windy
    Average | | =AVERAGE(C5:C6)->42 |
    `,
    "A4:D6 | date A pupil B rate C note D | 2 |",
  ),
  layout(
    "beside another block, one under another",
    `
    Date | Child | Correct | Total | | Letter | Dots
    @2026-09-07 | Heron | 8 | 10 | | a | 1
    @2026-09-08 | Heron | 9 | 10 | | b | 12
     | | | | | c | 14
    Reading | | | | | d | 145
    Day | Pupil | Words read | Miscues | Time (min:sec) | |
    @2026-10-07 | Plover | 60 | 2 | 1:30 | |
    @2026-10-14 | Plover | 61 | 2 | 1:25 | |
    `,
    "A1:D3 | date A pupil B correct C opportunities D | 2 |",
    "A6:E8 | date A pupil B words C errors D seconds E | 2 |",
  ),
  layout(
    "two blocks side by side under one title row",
    `
    Heron | | | | Plover | |
    Date | WPM | Errs | | Date | WPM | Errs
    @2026-09-07 | 40 | 2 | | @2026-09-07 | 30 | 1
    @2026-09-14 | 42 | 1 | | @2026-09-15 | 33 | 1
     | | | | @2026-09-22 | 35 | 0
    `,
    "A2:C4 | date A errors C rate B | 2 |",
    "E2:G5 | date E errors G rate F | 3 |",
  ),
  layout(
    "blank rows, absent rows, dashes, n/a and a totals row between",
    `
    Date | Student | Words/min | % | Prompt
    @2026-09-07 | Heron | 40 | 95% | none
     | | | |
    @2026-09-14 | Heron | absent | |
    @2026-09-21 | Heron | - | - |
    @2026-09-28 | Heron | n/a | n/a |
    Total | | 40 | |
    @2026-10-05 | Heron | 44 | 97% | verbal
    `,
    "A1:E8 | date A pupil B rate C accuracy D support E | 2 |",
  ),
  layout(
    "text dates, day first settled by a day above 12",
    `
    Date | Name | Score
    '7/10/2026 | Heron | 8
    '13/10/2026 | Heron | 9
    `,
    "A1:C3 | date A pupil B score C | 2 |",
  ),
  layout(
    "text dates that nothing settles",
    `
    Date | Name | Score
    '7/10/2026 | Heron | 8
    '8/11/2026 | Heron | 9
    `,
    "A1:C3 | date A pupil B score C | 0 | A1",
  ),
  layout(
    "text dates in words, ISO, with weekdays",
    `
    When | Learner | Speed (wpm)
    7 Oct 2026 | Heron | 40
    Oct 14, 2026 | Heron | 41
    Wed 21 October 2026 | Heron | 43
    2026-10-28 | Heron | 44
    4th Nov. 2026 | Heron | 45
    11-Nov-26 | Heron | 46
    `,
    "A1:C7 | date A pupil B rate C | 6 |",
  ),
  layout(
    "a weekday settles the order",
    `
    Date | Name | Score
    Wed 7/10/2026 | Heron | 8
    Thu 8/10/2026 | Heron | 9
    `,
    "A1:C3 | date A pupil B score C | 2 |",
  ),
  layout(
    "a date in a score column",
    `
    Date | Pupil | Score
    @2026-09-07 | Heron | '8/10
    @2026-09-14 | Heron | @2026-10-07{d-mmm}
    @2026-09-21 | Heron | '9/10
    `,
    "A1:C4 | date A pupil B score C | 2 | C3",
  ),
  layout(
    "clock values in a time column are offered as m:ss and asked once",
    `
    Date | Pupil | Words | Errors | Time
    @2026-09-07 | Heron | 84 | 3 | ~1:30
    @2026-09-14 | Heron | 90 | 3 | ~1:25
    `,
    "A1:E3 | date A pupil B words C errors D seconds E | 2 | E1",
  ),
  layout(
    "clock values under min:sec need no question",
    `
    Date | Pupil | Words | Errors | min:sec
    @2026-09-07 | Heron | 84 | 3 | ~1:30
    @2026-09-14 | Heron | 90 | 3 | ~1:25
    `,
    "A1:E3 | date A pupil B words C errors D seconds E | 2 |",
  ),
  layout(
    "true durations by format",
    `
    Date | Pupil | Words | Mistakes | Time
    @2026-09-07 | Heron | 84 | 3 | ~0:01:30{mm:ss}
    @2026-09-14 | Heron | 90 | 3 | ~0:01:05{h:mm:ss}
    `,
    "A1:E3 | date A pupil B words C errors D seconds E | 2 |",
  ),
  layout(
    "bad numbers are faults at their cells, the rest counts",
    `
    Date | Pupil | Words | Errors | Secs
    @2026-09-07 | Heron | 84 | 3 | 60
    @2026-09-08 | Heron | eighty | 3 | 60
    @2026-09-09 | Heron | 84 | 90 | 60
    @2026-09-10 | Heron | 84 | 3 | 0
    @2026-09-11 | Heron | 84 | 3 | -60
    @2026-09-12 | Heron | #DIV/0! | 3 | 60
    @2026-09-13 | Heron | 84 | 3 | ~1:30
    @2026-09-14 | Heron | 85 | 2 | 60
    @2026-09-15 | Heron | 85 | -2 | 60
    `,
    "A1:E10 | date A pupil B words C errors D seconds E | 2 | C3 D4 E5 E6 C7 E8 D10",
  ),
  layout(
    "dates before 1900, no date, no such day, no year",
    `
    Date | Pupil | WPM
    @2026-09-07 | Heron | 40
    '07/10/1899 | Heron | 41
     | Heron | 42
    31/02/2026 | Heron | 43
    7 Oct | Heron | 44
    tomorrow | Heron | 45
    @2026-09-21 | Heron | 46
    `,
    "A1:C8 | date A pupil B rate C | 2 | A3 A4 A5 A6 A7",
  ),
  layout(
    "calculated columns: blank inputs are no faults",
    `
    Date | Pupil | Words | Errors | Seconds | Rate | Accuracy
    @2026-09-07 | Heron | 84 | 3 | 60 | =(C2-D2)/E2*60->81 | =1-D2/C2->0.96
    @2026-09-14 | Heron | absent | | | =(C3-D3)/E3*60->#VALUE! | =1-D3/C3->#VALUE!
    @2026-09-21 | Heron | 90 | 2 | | =(C4-D4)/E4*60->#DIV/0! | =1-D4/C4->0.98
    | | | | | =(C5-D5)/E5*60->#DIV/0! | =1-D5/C5->#DIV/0!
    | | | | | =(C6-D6)/E6*60->#DIV/0! | =1-D6/C6->#DIV/0!
    `,
    "A1:G4 | date A pupil B words C errors D seconds E rate F accuracy G | 2 |",
  ),
  layout(
    "Attempted is words where the unit is words",
    `
    Date | Pupil | Unit | Attempted | Errors | Seconds
    @2026-09-07 | Heron | words | 84 | 3 | 60
    `,
    "A1:F2 | date A pupil B words D errors E seconds F unit C | 1 |",
  ),
  layout(
    "Attempted is opportunities where the unit is signs",
    `
    Date | Pupil | Sign | Unit | Attempted | Correct
    @2026-09-07 | Heron | ch | signs | 10 | 8
    `,
    "A1:F2 | date A pupil B sign C correct F opportunities E unit D | 1 |",
  ),
  layout(
    "Attempted without any word of the unit is opportunities",
    `
    Date | Pupil | Attempted | Correct
    @2026-09-07 | Heron | 10 | 8
    `,
    "A1:D2 | date A pupil B correct D opportunities C | 1 |",
  ),
  layout(
    "total words beside words correct",
    `
    Session date | Student name | Total words | Words correct | Time (s) | Words correct per minute
    @2026-09-07 | Heron | 84 | 81 | 60 | 81
    `,
    "A1:F2 | date A pupil B words C correct D seconds E rate F | 1 |",
  ),
  layout(
    "percentages as numbers to 100, as shares and as text",
    `
    Date | Pupil | Accuracy (%) | Passage
    @2026-09-07 | Heron | 90 | The Fox
    @2026-09-14 | Heron | 95% | The Crow
    @2026-09-21 | Heron | '92 % | The Hare
    @2026-09-28 | Heron | 101 | The Hare
    `,
    "A1:D5 | date A pupil B material D accuracy C | 3 | C5",
  ),
  layout(
    "units written into the cells, decimal commas, full-width digits",
    `
    Date | Pupil | Reading rate | Duration
    @2026-09-07 | Heron | 62 wpm | 45 sec
    @2026-09-14 | Heron | '62,5 | 1m 30s
    @2026-09-21 | Heron | '６２ | 1 min 5 sec
    @2026-09-28 | Heron | '1,234 | 60
    `,
    "A1:D5 | date A pupil B seconds D rate C | 3 | C5",
  ),
  layout(
    "minutes keep their key",
    `
    Date | Pupil | Words | Errors | Mins
    @2026-09-07 | Heron | 120 | 4 | 2
    `,
    "A1:E2 | date A pupil B words C errors D minutes E | 1 |",
  ),
  layout(
    "minutes and seconds in two columns",
    `
    Date | Pupil | Words | Errors | Min | Sec
    @2026-09-07 | Heron | 120 | 4 | 1 | 30
    @2026-09-14 | Heron | 121 | 4 | 1 | 0
    `,
    "A1:F3 | date A pupil B words C errors D seconds F minutes E | 2 |",
  ),
  layout(
    "pupil and date given once, blank beneath",
    `
    Date | Pupil | Sign | Right | Out of
    @2026-09-07 | Heron | a | 8 | 10
     | | b | 7 | 10
     | | c | 9 | 10
    @2026-09-14 | Plover | a | 8 | 10
     | | b | 7 | 10
    `,
    "A1:E6 | date A pupil B sign C correct D opportunities E | 5 |",
  ),
  layout(
    "one missing pupil among many is a fault",
    `
    Date | Pupil | WCPM
    @2026-09-07 | Heron | 40
    @2026-09-07 | Heron | 42
    @2026-09-14 | | 44
    @2026-09-14 | Plover | 45
    @2026-09-21 | Plover | 45
    `,
    "A1:C6 | date A pupil B rate C | 4 | B4",
  ),
  layout(
    "without a pupil column the sheet's name is the pupil",
    `
    Date | Story | Words | Errors | Secs
    @2026-09-07 | The Fox | 84 | 3 | 60
    `,
    "A1:E2 | date A material B words C errors D seconds E | 1 |",
  ),
  layout(
    "all the describing columns",
    `
    Date | Pupil | Activity | Contraction | Book | Grade of braille | Reading medium | Level of help | Target word | What was read | Condition | Remarks | Score
    @2026-09-07 | Heron | read aloud | ch | The Fox | contracted | braille | verbal | child | chilled | baseline | - | 7
    `,
    "A1:M2 | date A pupil B task C sign D material E score M code F medium G support H expected I response J phase K note L | 1 |",
  ),
  layout(
    "marks in a long list",
    `
    Date | Learner | Letter | Correct?
    @2026-09-07 | Heron | a | ✓
    @2026-09-07 | Heron | b | ✗
    @2026-09-07 | Heron | c | P
    @2026-09-07 | Heron | d | NR
    `,
    "A1:D5 | date A pupil B sign C correct D | 4 |",
  ),
  layout(
    "trial strings",
    `
    Date | Child | Sign | Trials
    @2026-09-07 | Heron | a | '++-+P
    @2026-09-14 | Heron | a | '+++++
    `,
    "A1:D3 | date A pupil B sign C correct D | 2 |",
  ),
  layout(
    "grid: signs down, dates across",
    `
    Letters, Heron | | |
    Letter | @2026-09-07 | @2026-09-14 | @2026-09-21
    a | + | + | +
    b | - | P | +
    c | NR | A |
    d | | - | q?
    `,
    "A2:D6 | date B:D sign A | 8 | D6",
  ),
  layout(
    "grid: dates down, signs across",
    `
    Date | a | b | ch | the
    @2026-09-07 | + | - | |
    @2026-09-14 | + | + | - |
    @2026-09-21 | + | + | + | P
    `,
    "A1:E4 | date A sign B:E | 9 |",
  ),
  layout(
    "grid of 1 and 0 with text dates that nothing settles",
    `
    Sign | '7/9/2026 | '8/9/2026
    a | 1 | 0
    b | 0 | 0
    `,
    "A1:C3 | date B:C sign A | 0 | B1",
  ),
  layout(
    "grid without a corner, with totals",
    `
     | @2026-09-07 | @2026-09-14 | Total
    a | 1 | 1 | 2
    b | 0 | 1 | 1
    Total | 1 | 2 | 3
    `,
    "A1:D3 | date B:C sign A | 4 |",
  ),
  layout(
    "two header rows: groups above",
    `
    Date | Pupil | Reading | | | Signs |
     | | Words | Errors | Secs | Correct | Total
    @2026-09-07 | Heron | 84 | 3 | 60 | 8 | 10
    @2026-09-14 | Heron | 85 | 2 | 60 | 9 | 10
    `,
    "A1:G4 | date A pupil B words C errors D correct F opportunities G seconds E | 2 |",
  ),
  layout(
    "two header rows: units beneath",
    `
    Date | Pupil | Words | Errors | Time
    (d/m/y) | (initials) | (read) | (n) | (min)
    @2026-09-07 | Heron | 84 | 3 | 1
    `,
    "A1:E3 | date A pupil B words C errors D minutes E | 1 |",
  ),
  layout(
    "columns out of order, a serial number before, unknown columns between",
    `
    No. | Errors | Weather | Pupil's name | Time taken (seconds) | Words attempted | Date tested | Teacher
    1 | 3 | rain | Heron | 60 | 84 | @2026-09-07 | T1
    2 | 4 | sun | Plover | 60 | 80 | @2026-09-08 | T1
    `,
    "A1:H3 | date G pupil D words F errors B seconds E | 2 |",
  ),
  layout(
    "other dates and scores do not take the place of the probe's",
    `
    Date of birth | Date | Pupil | Goal WCPM | WCPM | Next review
    @2016-05-04 | @2026-09-07 | Heron | 60 | 40 | @2026-12-01
    @2016-05-04 | @2026-09-14 | Heron | 60 | 42 | @2026-12-01
    `,
    "A1:F3 | date B pupil C rate E | 2 |",
  ),
  layout(
    "notes and a key beneath the table are neither records nor faults",
    `
    Date | Pupil | WPM | Errors
    @2026-09-07 | Heron | 40 | 2
    @2026-09-14 | Heron | 42 | 2

    Key: | P | prompted |
    Goal | 60 | |
    `,
    "A1:D3 | date A pupil B errors D rate C | 2 |",
  ),
  layout(
    "lessons, words and miscues lists are no probes",
    `
    Date | Pupil | Minutes | Held | Worked on | Note
    @2026-09-07 | Heron | 30 | yes | ch | -

    Date | Pupil | Task | Position | Expected | Response | Kind
    @2026-09-07 | Heron | read aloud | 3 | child | chilled | misread
    `,
  ),
  layout(
    "error columns of other sorts",
    `
    Date | Pupil | WCPM | Error rate | Self-corrections | Incorrect
    @2026-09-07 | Heron | 40 | 0.05 | 2 | 3
    `,
    "A1:F2 | date A pupil B errors F rate C | 1 |",
  ),
  layout(
    "a formula for dates and for scores, drawn from elsewhere",
    `
    Date | Pupil | Score
    =Raw!A2->@2026-09-07 | =Raw!B2->Heron | =Raw!C2->8
    =Raw!A3->@2026-09-14 | =Raw!B3->Heron | =Raw!C3->9
    `,
    "A1:C3 | date A pupil B score C | 2 |",
  ),
  layout(
    "phase and code by what they hold",
    `
    Dt | Initials | Grade | Phase | Correct words/min
    @2026-09-07 | H | uncontracted | A | 20
    @2026-09-14 | H | contracted | B | 24
    `,
    "A1:E3 | date A pupil B rate E code C phase D | 2 |",
  ),
  layout(
    "out-of marks with dates made of them, all below 13",
    `
    Date | Child | Result
    @2026-09-07 | Heron | @2026-10-07{d-mmm}
    @2026-09-14 | Heron | @2026-10-08{d-mmm}
    @2026-09-21 | Heron | '9/20
    `,
    "A1:C4 | date A pupil B score C | 1 | C2 C3",
  ),
  layout(
    "a spacer column between who and how",
    `
    Date | Pupil | | Words | Errors | Secs
    @2026-09-07 | Heron | | 84 | 3 | 60
    `,
    "A1:F2 | date A pupil B words D errors E seconds F | 1 |",
  ),
  layout(
    "time of day is not the time taken",
    `
    Date | Time of day | Pupil | Time | Words | Errors
    @2026-09-07 | ~9:30{h:mm AM/PM} | Heron | 60 | 84 | 3
    `,
    "A1:F2 | date A pupil C words E errors F seconds D | 1 |",
  ),
  layout(
    "weekly averages among dated rows",
    `
    Date | Pupil | WCPM
    @2026-09-07 | Heron | 40
    @2026-09-07 | Plover | 50
    @2026-09-07 | Class average | 45
    @2026-09-14 | Heron | 42
    @2026-09-14 | Plover | 54
    @2026-09-14 | Class average | 48
    `,
    "A1:C6 | date A pupil B rate C | 4 |",
  ),
];
