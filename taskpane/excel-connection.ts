import { connectExcel, missingRequirements } from "../src/adapters/office/office-host";
import type { OfficeHost } from "../src/adapters/office/office-host";

/** Milliseconds until a page that office.js leaves waiting is told so. */
const PATIENCE = 20_000;

/** Excel, or why there is none, in sentences. */
export type Connection =
  | { readonly kind: "excel"; readonly host: OfficeHost }
  | { readonly kind: "outside"; readonly title: string; readonly text: string };

const OUTSIDE: Connection = {
  kind: "outside",
  title: "This page belongs inside Excel",
  text: "It shows its progress beside an open workbook. In Excel, choose Open Cellwright on the Home tab.",
};

const SILENT: Connection = {
  kind: "outside",
  title: "Excel does not answer",
  text: "Close this pane and open it again. If that does not help, close Excel, open it again, and check that it can reach the internet: Excel loads a script from Microsoft.",
};

const tooOld = (missing: readonly string[]): Connection => ({
  kind: "outside",
  title: "This Excel is too old for the pane",
  text: `It lacks ${missing.join(" and ")}. Update Excel if you can (Microsoft 365, or Excel 2024); volume-licensed Office 2021 and Excel on the iPad cannot run it.`,
});

const afterPatience = (): Promise<Connection> =>
  new Promise((resolve) => {
    setTimeout(() => {
      resolve(SILENT);
    }, PATIENCE);
  });

/** Asks office.js for Excel. A page in a plain browser has office.js without a host, or none at all. */
export async function connect(): Promise<Connection> {
  if (typeof Office === "undefined") return OUTSIDE;
  const ready = Office.onReady().then(({ host }): Connection => {
    if (host !== Office.HostType.Excel) return OUTSIDE;
    const excel = connectExcel();
    const missing = missingRequirements(excel);
    return missing.length > 0 ? tooOld(missing) : { kind: "excel", host: excel };
  });
  return Promise.race([ready, afterPatience()]);
}
