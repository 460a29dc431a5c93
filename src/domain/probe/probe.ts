import type { Day, PerMinute, Seconds, Share } from "../units";

/**
 * One probe: what was asked of a pupil on one day and how it went. One row of the teacher's sheet, or one
 * marked cell of a grid of signs. A field is absent where her sheet says nothing.
 */
export interface Probe {
  readonly pupil: string;
  readonly day: Day;
  /** read aloud, heard and brailled, copied, signs named, or any words of hers */
  readonly task?: string;
  readonly sign?: string;
  readonly material?: string;
  /** words, signs, cells, …: what `attempted` and `correct` count */
  readonly unit?: string;
  /** contracted, uncontracted, or her own word */
  readonly code?: string;
  /** braille, print, braillewriter, slate, display */
  readonly medium?: string;
  /** as she wrote it; {@link isSupported} tells whether it means help was given */
  readonly support?: string;
  /** what she asked about the text and how it was answered, in her own words or numbers: `4 of 5` */
  readonly comprehension?: string;
  readonly phase?: string;
  readonly note?: string;
  readonly expected?: string;
  readonly response?: string;
  /** words attempted, 0 or more */
  readonly words?: number;
  readonly errors?: number;
  readonly correct?: number;
  /** total beside a count of correct signs or trials */
  readonly opportunities?: number;
  readonly seconds?: Seconds;
  /** words (or signs) correct a minute as her own column says; wins over the computed one */
  readonly rate?: PerMinute;
  readonly accuracy?: Share;
  /** any other score of hers, in her unit */
  readonly score?: number;
  /** where it stands: the sheet and its row as shown there, from 1 */
  readonly source: { readonly sheet: string; readonly row: number };
}
