import type { Day } from "../units";

export const DAYS_A_WEEK = 7;
/** 2 January 1900 counts as a Monday: serials from 61 on agree with the calendar's weekdays. */
const A_MONDAY = 2;

/** The Monday of the week of a day. */
export const mondayOf = (day: Day): Day =>
  (Math.floor(day) - ((((Math.floor(day) - A_MONDAY) % DAYS_A_WEEK) + DAYS_A_WEEK) % DAYS_A_WEEK)) as Day;
