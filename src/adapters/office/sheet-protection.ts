import { HostError } from "../../ports/sheet";

/** Queues what {@link refuseProtected} looks at. */
export const loadProtection = (sheet: Excel.Worksheet): void => {
  sheet.load("name");
  sheet.protection.load("protected");
};

/**
 * Refuses to write to a protected sheet before anything is written.
 * @throws {HostError} where the sheet, loaded by {@link loadProtection}, is protected
 */
export const refuseProtected = (sheet: Excel.Worksheet): void => {
  if (sheet.protection.protected) {
    throw new HostError(
      `The sheet "${sheet.name}" is protected. Take the protection off (Review tab, Unprotect Sheet), then try again.`,
    );
  }
};
