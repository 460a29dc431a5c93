import type { Day } from "../../src/domain/units";

/** The day of a moment in local time, as a serial number of the 1900 system. */
export const localDay = (moment: Date = new Date()): Day =>
  ((Date.UTC(moment.getFullYear(), moment.getMonth(), moment.getDate()) - Date.UTC(1899, 11, 30)) /
    86_400_000) as Day;
