/** A duration in seconds, 0 or more. Made only in `records` or `functions`. */
export type Seconds = number & { readonly unit: "s" };

/**
 * A calendar day as a spreadsheet's serial number in the 1900 date system: 1 is 1 January 1900, and 60 the
 * day that never was (29 February 1900), so that serials from 61 on agree with every spreadsheet program.
 */
export type Day = number & { readonly unit: "day" };

/** A share from 0 to 1. */
export type Share = number & { readonly unit: "share" };

/** Something counted per minute: words read correctly, cells, signs. */
export type PerMinute = number & { readonly unit: "1/min" };
