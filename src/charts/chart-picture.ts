/** A chart three ways, all saying the same. No DOM, no style element or attribute: presentation attributes only. */
export interface ChartPicture {
  /** Complete `<svg role="img">` with title and desc; colours by presentation attributes. */
  readonly svg: string;
  readonly title: string;
  /** Sentences for a reader who does not see the picture. */
  readonly summary: readonly string[];
  readonly table: {
    readonly caption: string;
    readonly headings: readonly string[];
    readonly rows: readonly (readonly string[])[];
  };
}
