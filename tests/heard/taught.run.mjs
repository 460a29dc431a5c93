export const title = "Mark a sign as taught and save the workbook";
export const path = "workbench.html?example=1";
const toView = ["F6", "F6", ...Array(3).fill("Tab"), "Return"];
export const steps = [
  ...toView,
  ...["Tab", "Tab", "Tab", "Tab", "type:perceive", ...Array(13).fill("Tab")],
  ...["space", "t"],
  ...["ctrl+s"],
];
