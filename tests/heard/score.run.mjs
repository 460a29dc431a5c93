export const title = "Log a probe from the caseload by typing its score";
export const path = "workbench.html?example=1";
const toCaseload = ["F6", "F6", ...Array(11).fill("Tab")];
export const steps = [
  ...toCaseload,
  ...["p", "Tab", "Tab", "Tab", "Return"],
  // The field that has the focus now is not spoken yet: see findings.md.
  ...["Tab", "shift+Tab", "type:40", "Tab", "type:2"],
  ...["Tab", "Tab", "Tab", "Tab", "type:60", "Return", "Right"],
];
