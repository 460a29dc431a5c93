/**
 * Number formats that a file means by their number alone.
 *
 * Source: ECMA-376 part 1, 18.8.30 (numFmt), the formats for all languages; 14 is the short date of the computer's
 * own setting, shown in the order of days that the standard lists.
 */
const BUILT_IN: ReadonlyMap<number, string> = new Map([
  [0, "General"],
  [1, "0"],
  [2, "0.00"],
  [3, "#,##0"],
  [4, "#,##0.00"],
  [5, '"$"#,##0_);\\("$"#,##0\\)'],
  [6, '"$"#,##0_);[Red]\\("$"#,##0\\)'],
  [7, '"$"#,##0.00_);\\("$"#,##0.00\\)'],
  [8, '"$"#,##0.00_);[Red]\\("$"#,##0.00\\)'],
  [9, "0%"],
  [10, "0.00%"],
  [11, "0.00E+00"],
  [12, "# ?/?"],
  [13, "# ??/??"],
  [14, "mm-dd-yy"],
  [15, "d-mmm-yy"],
  [16, "d-mmm"],
  [17, "mmm-yy"],
  [18, "h:mm AM/PM"],
  [19, "h:mm:ss AM/PM"],
  [20, "h:mm"],
  [21, "h:mm:ss"],
  [22, "m/d/yy h:mm"],
  [37, "#,##0_);(#,##0)"],
  [38, "#,##0_);[Red](#,##0)"],
  [39, "#,##0.00_);(#,##0.00)"],
  [40, "#,##0.00_);[Red](#,##0.00)"],
  [41, '_(* #,##0_);_(* \\(#,##0\\);_(* "-"_);_(@_)'],
  [42, '_("$"* #,##0_);_("$"* \\(#,##0\\);_("$"* "-"_);_(@_)'],
  [43, '_(* #,##0.00_);_(* \\(#,##0.00\\);_(* "-"??_);_(@_)'],
  [44, '_("$"* #,##0.00_);_("$"* \\(#,##0.00\\);_("$"* "-"??_);_(@_)'],
  [45, "mm:ss"],
  [46, "[h]:mm:ss"],
  [47, "mm:ss.0"],
  [48, "##0.0E+0"],
  [49, "@"],
]);

/** The format code of a number: the file's own first, then the standard's; `General` where neither has it. */
export const numberFormatOf = (id: number, own: ReadonlyMap<number, string>): string =>
  own.get(id) ?? BUILT_IN.get(id) ?? (isEastAsianDate(id) ? "yyyy-mm-dd" : "General");

/** 27 to 36 and 50 to 58 are dates of East Asian settings (18.8.30): shown in a form that no day order can mislead. */
const isEastAsianDate = (id: number): boolean => (id >= 27 && id <= 36) || (id >= 50 && id <= 58);
