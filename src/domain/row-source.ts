/** Where a record stands: the sheet and its row as shown there, from 1. */
export interface RowSource {
  readonly sheet: string;
  readonly row: number;
}
