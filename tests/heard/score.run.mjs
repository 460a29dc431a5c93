export const title = "Log a probe from the caseload by typing its score";
export const path = "workbench.html?example=1";
const toCaseload = ["F6", "F6", ...Array(12).fill("Tab")];
export const steps = [
  ...toCaseload,
  ...["p", "Tab", "Tab", "Tab", "Tab", "Return"],
  ...["type:40", "Tab", "type:2"],
  ...["Tab", "Tab", "Tab", "Tab", "type:60", "Return", "Right"],
];
