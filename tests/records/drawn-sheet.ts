import type {
  DescribedCell,
  DescribedSheet,
  DescribedTable,
} from "../../src/adapters/memory/memory-workbook";
import { dayOf } from "../../src/domain/calendar";
import type { ErrorCode } from "../../src/domain/cell-value";

type Drawn = { readonly cell: DescribedCell; readonly format?: string };

const serial = (iso: string): number => {
  const [year = 0, month = 0, date = 0] = iso.split("-").map(Number);
  const day = dayOf({ year, month, date });
  if (day === undefined) throw new RangeError(`${iso} is no day`);
  return day;
};

const partOfDay = (clock: string): number => {
  const [hours = 0, minutes = 0, seconds = 0] = clock.split(":").map(Number);
  return (hours * 3600 + minutes * 60 + seconds) / 86400;
};

/**
 * One cell as the layouts write it: `@2026-10-07` a true date, `@2026-10-07{d-mmm}` with its format, `~1:30` a clock
 * value h:mm, `~0:01:30{mm:ss}` with its format, `90%` a percentage, `=SUM(A1:A2)->5` a formula with its value,
 * `#DIV/0!` an error, `'90` text, a number or other text as it stands.
 */
function parseCell(text: string): Drawn {
  const [, body = "", format] = /^(.*?)(?:\{(.*)\})?$/s.exec(text) ?? [];
  if (body.startsWith("'")) return { cell: body.slice(1) };
  if (body === "") return { cell: null };
  if (body.startsWith("=")) {
    const [formula = "", value = ""] = body.split("->");
    const inner = parseCell(value);
    return {
      cell: { formula, value: inner.cell as string },
      ...(format ? { format } : inner.format ? { format: inner.format } : {}),
    };
  }
  if (body.startsWith("@")) return { cell: serial(body.slice(1)), format: format ?? "dd/mm/yyyy" };
  if (body.startsWith("~")) return { cell: partOfDay(body.slice(1)), format: format ?? "h:mm" };
  if (/^#[A-Z/0]+[!?A]$/.test(body)) return { cell: { error: body as ErrorCode } };
  if (/^\d+%$/.test(body)) return { cell: Number(body.slice(0, -1)) / 100, format: "0%" };
  if (/^-?\d+(\.\d+)?$/.test(body)) return { cell: Number(body), ...(format ? { format } : {}) };
  return { cell: body };
}

/** A sheet drawn as lines of cells between bars; see {@link parseCell}. Rows start at 1, columns at A. */
export function drawSheet(
  name: string,
  drawing: string,
  options: { readonly tables?: readonly DescribedTable[]; readonly hidden?: boolean } = {},
): DescribedSheet {
  const lines = drawing
    .split("\n")
    .filter((line, at, all) => !((at === 0 || at === all.length - 1) && line.trim() === ""));
  const drawn = lines.map((line) => line.split("|").map((cell) => parseCell(cell.trim())));
  return {
    name,
    rows: drawn.map((row) => row.map(({ cell }) => cell)),
    formats: drawn.flatMap((row, top) =>
      row.flatMap(({ format }, left) =>
        format ? [{ area: { top, left, bottom: top, right: left }, format }] : [],
      ),
    ),
    ...options,
  };
}
