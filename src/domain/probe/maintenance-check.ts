import type { Probe } from "./probe";

/** Words for a probe some weeks after something was mastered, to see whether it was kept (common practice, no source). */
const KEPT = /\b(?:maintenance|maintained|retention|follow[ -]?up)\b/i;

/** Whether a probe checks that something learned was kept: its phase, task or note says so. */
export const isMaintenanceCheck = ({ phase = "", task = "", note = "" }: Probe): boolean =>
  [phase, task, note].some((words) => KEPT.test(words));
