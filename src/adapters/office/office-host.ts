/** The part of Office.js that the adapter stands on: given from outside, so that a strict stand-in can take its place. */
export interface OfficeHost {
  /** Runs a batch; waits while the teacher is typing in a cell. */
  run<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T>;
  /** Runs a batch on the context in which an event handler was registered. */
  runOn<T>(
    context: OfficeExtension.ClientRequestContext,
    batch: (context: Excel.RequestContext) => Promise<T>,
  ): Promise<T>;
  /** Whether this Excel has a requirement set, such as `ExcelApi` `1.9`. */
  supports(set: string, version: string): boolean;
}

/** What the adapter cannot do without; the manifest asks for the same. */
const NEEDED = [
  ["ExcelApi", "1.9"],
  ["SharedRuntime", "1.1"],
] as const;

/**
 * The host that office.js on this page speaks to.
 *
 * Call it after `Office.onReady`. `Excel` and `Office` are the globals of the script from Microsoft's address.
 */
export const connectExcel = (): OfficeHost => ({
  run: (batch) => Excel.run({ delayForCellEdit: true }, batch),
  runOn: (context, batch) => Excel.run(context, batch),
  supports: (set, version) => Office.context.requirements.isSetSupported(set, version),
});

/** The requirement sets that this Excel lacks, such as `ExcelApi 1.9`; empty where everything is there. */
export const missingRequirements = (host: OfficeHost): readonly string[] =>
  NEEDED.filter(([set, version]) => !host.supports(set, version)).map(
    ([set, version]) => `${set} ${version}`,
  );
