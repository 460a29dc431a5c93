import type { Probe } from "../probe/probe";

/** Signs are known by reading and by writing, apart from each other. */
export const WAYS = ["reading", "writing"] as const;
export type Way = (typeof WAYS)[number];

const WRITING_TASK =
  /\b(brailled|brailling|write|writing|written|wrote|copy|copied|copying|dictat\w*|spell\w*)\b/i;
const WRITING_MEDIUM = /writer|brailler|slate|stylus/i;

/** Whether a task is read or written, by its words, such as `heard and brailled`; else by what it is done on. */
export const wayOf = ({ task = "", medium = "" }: Pick<Probe, "task" | "medium">): Way =>
  WRITING_TASK.test(task) || WRITING_MEDIUM.test(medium) ? "writing" : "reading";
