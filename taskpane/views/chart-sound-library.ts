/** The player of charts, in a chunk of its own: nobody loads it who does not want to hear. */
export { c2mChart } from "chart2music";
export type { C2MChartConfig, c2m } from "chart2music";
