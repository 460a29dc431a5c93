import { cellAt, usedArea } from "../../../../src/adapters/memory/memory-workbook";
import type { MemoryTable, MemoryWorksheet } from "../../../../src/adapters/memory/memory-workbook";
import type { Area } from "../../../../src/domain/area";
import { formulasOf, placeFormula, relativeFormulasOf, valuesOf, valueTypesOf } from "./excel-model";
import type { ExcelModel, ModelChart, ModelPart, ModelSeries, RangeTarget, TableTarget } from "./excel-model";
import { OfficeError } from "./office-error";

/** What a class of Excel does here: `get` for properties, `set` for writing them, `call` for methods, `items` for collections. */
export interface Behaviour {
  readonly get?: Readonly<Record<string, (target: never, model: ExcelModel) => unknown>>;
  readonly set?: Readonly<Record<string, (target: never, value: unknown, model: ExcelModel) => void>>;
  readonly call?: Readonly<
    Record<string, (target: never, args: readonly unknown[], model: ExcelModel) => unknown>
  >;
  readonly items?: (target: never, model: ExcelModel) => readonly unknown[];
}

const required = <T>(found: T | null | undefined): T => {
  if (found === null || found === undefined) throw new OfficeError("ItemNotFound");
  return found;
};

const itself = <T>(target: T): T => target;

const heightOf = (area: Area): number => area.bottom - area.top + 1;
const widthOf = (area: Area): number => area.right - area.left + 1;

const rangeAt = (sheet: MemoryWorksheet, args: readonly unknown[]): RangeTarget => {
  const [top = 0, left = 0, height = 1, width = 1] = args.map(Number);
  if (top < 0 || left < 0 || height < 1 || width < 1 || top + height > 1_048_576 || left + width > 16_384) {
    throw new OfficeError("InvalidArgument");
  }
  return { sheet, area: { top, left, bottom: top + height - 1, right: left + width - 1 } };
};

const requireShape = (range: RangeTarget, value: unknown): unknown[][] => {
  const fits =
    Array.isArray(value) &&
    value.length === heightOf(range.area) &&
    value.every((row) => Array.isArray(row) && row.length === widthOf(range.area));
  if (!fits) throw new OfficeError("InvalidArgument", "The block has another size than the range.");
  return value as unknown[][];
};

/** Enters a block; `null` leaves a cell. Excel does this at once: a wrong cell leaves all as they were. */
const enterBlock = (range: RangeTarget, value: unknown, model: ExcelModel, place = itself<unknown>): void => {
  const rows = requireShape(range, value);
  model.requireWritable(range.sheet);
  rows.forEach((row, down) => {
    row.forEach((entry, across) =>
      model.enter(range.sheet, range.area.top + down, range.area.left + across, place(entry)),
    );
  });
  model.tell(range.sheet, range.area);
};

const addRows = ({ sheet, table }: TableTarget, args: readonly unknown[], model: ExcelModel): unknown => {
  const [index, values] = args;
  if (index !== null && index !== undefined && index !== -1) throw new OfficeError("InvalidArgument");
  model.requireWritable(sheet);
  const { area } = table;
  const count = Array.isArray(values) ? values.length : 1;
  const top = area.bottom + (table.totalsRow ? 0 : 1);
  const added = { sheet, area: { top, left: area.left, bottom: top + count - 1, right: area.right } };
  requireShape(added, values);
  const torn = sheet.tables.some(
    (other) =>
      other !== table &&
      other.area.bottom > area.bottom &&
      other.area.left <= area.right &&
      other.area.right >= area.left &&
      (other.area.left < area.left || other.area.right > area.right),
  );
  if (torn) throw new OfficeError("InsertDeleteConflict");
  model.pushDown(sheet, { ...area, top }, count);
  table.area = { ...area, bottom: area.bottom + count };
  enterBlock(added, values, model);
  return { table, top };
};

const hasOnly = (parts: readonly ModelPart[]): ModelPart | null =>
  parts.length === 1 ? (parts[0] ?? null) : null;

const workbook: Behaviour = {
  get: { worksheets: itself, tables: itself, customXmlParts: itself },
};

const worksheets: Behaviour = {
  items: (_: unknown, model) => model.workbook.sheets,
  call: {
    getItem: (_: unknown, [key], model) => required(model.sheet(String(key))),
    getItemOrNullObject: (_: unknown, [key], model) => model.sheet(String(key)),
    add: (_: unknown, [name], model) => model.addSheet(String(name)),
  },
};

const worksheet: Behaviour = {
  get: {
    name: (sheet: MemoryWorksheet) => sheet.name,
    id: (sheet: MemoryWorksheet, model) => model.idOf(sheet),
    visibility: (sheet: MemoryWorksheet) => (sheet.hidden ? "Hidden" : "Visible"),
    tables: itself<MemoryWorksheet>,
    charts: itself<MemoryWorksheet>,
    protection: itself<MemoryWorksheet>,
  },
  call: {
    activate: (sheet: MemoryWorksheet, _, model) => {
      if (sheet.hidden) throw new OfficeError("InvalidOperation");
      model.shown = sheet.name;
    },
    getRangeByIndexes: (sheet: MemoryWorksheet, args) => rangeAt(sheet, args),
    getUsedRangeOrNullObject: (sheet: MemoryWorksheet, [valuesOnly]) => {
      if (valuesOnly !== true)
        throw new OfficeError("InvalidArgument", "Formats alone are not modelled: ask for values only.");
      const area = usedArea(sheet);
      return area ? { sheet, area } : null;
    },
    delete: (sheet: MemoryWorksheet, _, model) => {
      model.workbook.sheets = model.workbook.sheets.filter((each) => each !== sheet);
    },
  },
};

const protection: Behaviour = {
  get: { protected: (sheet: MemoryWorksheet, model) => model.protectedSheets.has(sheet) },
};

const tables: Behaviour = {
  // Of a workbook or of one sheet.
  items: (target: MemoryWorksheet | ExcelModel, model): TableTarget[] =>
    ("workbook" in target ? model.workbook.sheets : [target]).flatMap((sheet) =>
      sheet.tables.map((table) => ({ sheet, table })),
    ),
  call: {
    getItem: (_: unknown, [name], model) =>
      required(
        model.workbook.sheets
          .flatMap((sheet) => sheet.tables.map((table) => ({ sheet, table })))
          .find(({ table }) => table.name.toLowerCase() === String(name).toLowerCase()),
      ),
    add: (_: unknown, [address, hasHeaders], model): TableTarget => {
      const { sheet, area } = address as RangeTarget;
      model.requireWritable(sheet);
      if (hasHeaders !== true) throw new OfficeError("InvalidArgument");
      const table: MemoryTable = {
        name: `Table${sheet.tables.length + 1}`,
        area,
        totalsRow: false,
        calculated: {},
      };
      sheet.tables.push(table);
      return { sheet, table };
    },
  },
};

const wholeTable = ({ sheet, table }: TableTarget): RangeTarget => ({ sheet, area: table.area });

const table: Behaviour = {
  get: {
    name: ({ table: { name } }: { table: MemoryTable }) => name,
    showHeaders: () => true,
    showTotals: (target: TableTarget) => target.table.totalsRow,
    worksheet: (target: TableTarget) => target.sheet,
    rows: itself<TableTarget>,
  },
  set: {
    name: ({ table: named }: { table: MemoryTable }, name, model) => {
      const isTaken = model.workbook.sheets.some((sheet) =>
        sheet.tables.some((other) => other !== named && other.name === name),
      );
      if (isTaken || /[\s-]/.test(String(name))) throw new OfficeError("InvalidArgument");
      named.name = String(name);
    },
    style: () => undefined,
  },
  call: { getRange: wholeTable },
};

const range: Behaviour = {
  get: {
    format: itself<RangeTarget>,
    dataValidation: itself<RangeTarget>,
    rowIndex: ({ area }: RangeTarget) => area.top,
    columnIndex: ({ area }: RangeTarget) => area.left,
    rowCount: ({ area }: RangeTarget) => heightOf(area),
    columnCount: ({ area }: RangeTarget) => widthOf(area),
    values: valuesOf,
    valueTypes: valueTypesOf,
    formulas: formulasOf,
    formulasR1C1: relativeFormulasOf,
    numberFormat: ({ sheet, area }: RangeTarget) =>
      Array.from({ length: heightOf(area) }, (_, down) =>
        Array.from(
          { length: widthOf(area) },
          (__, across) => cellAt(sheet, area.top + down, area.left + across).format,
        ),
      ),
  },
  set: {
    values: enterBlock as (target: RangeTarget, value: unknown, model: ExcelModel) => void,
    formulas: enterBlock as (target: RangeTarget, value: unknown, model: ExcelModel) => void,
    formulasR1C1: (target: RangeTarget, value, model) => {
      const rows = requireShape(target, value);
      const placed = rows.map((row, down) =>
        row.map((entry, across) => placeFormula(entry, target.area.top + down, target.area.left + across)),
      );
      enterBlock(target, placed, model);
    },
    numberFormat: (target: RangeTarget, value, model) => {
      model.requireWritable(target.sheet);
      requireShape(target, value).forEach((row, down) => {
        row.forEach((format, across) => {
          if (format !== null)
            cellAt(target.sheet, target.area.top + down, target.area.left + across).format = String(format);
        });
      });
    },
  },
  call: {
    getUsedRangeOrNullObject: (target: RangeTarget, _, model) => model.usedWithin(target),
    select: (target: RangeTarget, _, model) => {
      model.selected = target.area;
    },
    clear: (target: RangeTarget, _, model) => {
      model.requireWritable(target.sheet);
      model.clear(target.sheet, target.area);
    },
    delete: (target: RangeTarget, [shift], model) => {
      if (shift !== "Up") throw new OfficeError("InvalidArgument");
      model.requireWritable(target.sheet);
      model.pullUp(target.sheet, target.area);
    },
    copyFrom: (target: RangeTarget, [source, what], model) => {
      const from = source as RangeTarget;
      if (what !== "Formats" || heightOf(from.area) !== 1) throw new OfficeError("InvalidArgument");
      model.requireWritable(target.sheet);
      for (let row = target.area.top; row <= target.area.bottom; row++) {
        for (let across = 0; across < widthOf(target.area); across++) {
          const { format } = cellAt(from.sheet, from.area.top, from.area.left + across);
          cellAt(target.sheet, row, target.area.left + across).format = format;
        }
      }
    },
  },
};

const dressing =
  (what: "font" | "width" | "rule" | "alert") => (target: RangeTarget, value: unknown, model: ExcelModel) => {
    model.requireWritable(target.sheet);
    Object.assign(model.dressOf(target), { [what]: value });
  };

const rangeFormat: Behaviour = {
  get: { font: itself<RangeTarget> },
  set: { columnWidth: dressing("width") },
};

const rangeFont: Behaviour = { set: { name: dressing("font") } };

const dataValidation: Behaviour = { set: { rule: dressing("rule"), errorAlert: dressing("alert") } };

const namespaceOf = (part: ModelPart): string => /xmlns="([^"]*)"/.exec(part.xml)?.[1] ?? "";

const customXmlParts: Behaviour = {
  items: (_: unknown, model) => model.parts,
  call: {
    add: (_: unknown, [xml], model) => {
      const part: ModelPart = { id: `{part-${model.parts.length}}`, xml: String(xml) };
      model.parts.push(part);
      return part;
    },
    getByNamespace: (_: unknown, [wanted], model) =>
      model.parts.filter((part) => namespaceOf(part) === wanted),
  },
};

const scopedParts: Behaviour = {
  items: (parts: readonly ModelPart[]) => parts,
  call: { getOnlyItemOrNullObject: (parts: readonly ModelPart[]) => hasOnly(parts) },
};

const customXmlPart: Behaviour = {
  get: { id: (part: ModelPart) => part.id },
  call: {
    getXml: (part: ModelPart) => part.xml,
    delete: (part: ModelPart, _, model) => {
      model.parts = model.parts.filter((each) => each !== part);
    },
    setXml: (part: ModelPart, [xml]) => {
      part.xml = String(xml);
    },
  },
};

const runtime: Behaviour = {
  get: { enableEvents: (_: unknown, model) => model.enableEvents },
  set: {
    enableEvents: (_: unknown, value, model) => {
      model.enableEvents = value === true;
    },
  },
};

const charts: Behaviour = {
  items: (sheet: MemoryWorksheet, model) => model.charts.filter((chart) => chart.sheet === sheet),
  call: {
    add: (sheet: MemoryWorksheet, [type, source], model): ModelChart => {
      model.requireWritable(sheet);
      const chart: ModelChart = {
        sheet,
        name: `Chart ${model.charts.length + 1}`,
        type: String(type),
        title: "",
        xTitle: "",
        yTitle: "",
        legend: true,
        series: [{ name: "Series1", y: source as RangeTarget }],
      };
      model.charts.push(chart);
      return chart;
    },
  },
};

const chart: Behaviour = {
  get: {
    name: (it: ModelChart) => it.name,
    title: itself<ModelChart>,
    legend: itself<ModelChart>,
    series: itself<ModelChart>,
    axes: itself<ModelChart>,
  },
  call: {
    setPosition: (it: ModelChart, [from, to]) => {
      const [start, end] = [from as RangeTarget, to as RangeTarget];
      it.place = { ...start.area, bottom: end.area.bottom, right: end.area.right };
    },
    delete: (it: ModelChart, _, model) => {
      model.charts = model.charts.filter((each) => each !== it);
    },
  },
};

const seriesCollection: Behaviour = {
  call: {
    getItemAt: (it: ModelChart, [index]) => required(it.series[Number(index)]),
    add: (it: ModelChart, [name]) => {
      const series: ModelSeries = { name: String(name) };
      it.series.push(series);
      return series;
    },
  },
};

const oneSeries: Behaviour = {
  set: {
    name: (it: ModelSeries, name) => {
      it.name = String(name);
    },
  },
  call: {
    setXAxisValues: (it: ModelSeries, [source]) => {
      it.x = source as RangeTarget;
    },
    setValues: (it: ModelSeries, [source]) => {
      it.y = source as RangeTarget;
    },
  },
};

interface Axis {
  readonly chart: ModelChart;
  readonly side: "x" | "y";
}

const axes: Behaviour = {
  get: {
    categoryAxis: (it: ModelChart): Axis => ({ chart: it, side: "x" }),
    valueAxis: (it: ModelChart): Axis => ({ chart: it, side: "y" }),
  },
};

const axis: Behaviour = {
  get: { title: itself<Axis> },
  set: {
    minimum: (it: Axis, value) => {
      it.chart.minimum = Number(value);
    },
    numberFormat: (it: Axis, value) => {
      it.chart.dateFormat = String(value);
    },
  },
};

/** Every class and member that the stand-in knows; what is published but not here is refused by name. */
export const BEHAVIOURS: Readonly<Record<string, Behaviour>> = {
  Workbook: workbook,
  WorksheetCollection: worksheets,
  Worksheet: worksheet,
  WorksheetProtection: protection,
  TableCollection: tables,
  Table: table,
  TableRowCollection: { call: { add: addRows } },
  TableRow: {},
  Range: range,
  RangeFormat: rangeFormat,
  RangeFont: rangeFont,
  DataValidation: dataValidation,
  CustomXmlPartCollection: customXmlParts,
  CustomXmlPartScopedCollection: scopedParts,
  CustomXmlPart: customXmlPart,
  Runtime: runtime,
  ChartCollection: charts,
  Chart: chart,
  ChartTitle: { set: { text: (it: ModelChart, text) => void (it.title = String(text)) } },
  ChartLegend: { set: { visible: (it: ModelChart, visible) => void (it.legend = visible === true) } },
  ChartSeriesCollection: seriesCollection,
  ChartSeries: oneSeries,
  ChartAxes: axes,
  ChartAxis: axis,
  ChartAxisTitle: {
    set: {
      text: (it: Axis, text) =>
        void (it.side === "x" ? (it.chart.xTitle = String(text)) : (it.chart.yTitle = String(text))),
    },
  },
};
