/** What the sound view needs of the package, whose own types its `exports` hide from importers. */
declare module "chart2music" {
  export interface SoundPoint {
    readonly x: number;
    readonly y: number;
    readonly label?: string;
  }

  export interface SoundAxis {
    readonly label?: string;
    readonly minimum?: number;
    readonly maximum?: number;
    readonly format?: (value: number) => string;
  }

  export interface C2MChartConfig {
    readonly type: "line";
    readonly data: Readonly<Record<string, readonly SoundPoint[]>>;
    readonly element: HTMLElement;
    readonly cc: HTMLElement;
    readonly title: string;
    readonly axes: { readonly x: SoundAxis; readonly y: SoundAxis };
    readonly info?: { readonly annotations: readonly SoundPointMark[] };
    readonly options?: { readonly customHotkeys?: readonly SoundKey[] };
  }

  export interface SoundPointMark {
    readonly x: number;
    readonly label: string;
  }

  export interface SoundKey {
    readonly key: { readonly key: string };
    readonly callback: () => void;
    readonly force?: boolean;
  }

  export interface c2m {
    cleanUp(): void;
  }

  export const c2mChart: (config: C2MChartConfig) => { readonly err: string | null; readonly data?: c2m };
}
