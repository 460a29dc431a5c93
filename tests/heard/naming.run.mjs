export const title = "Name a row of four signs by keys and write it into the workbook";
export const path = "workbench.html?example=1";
const toView = ["F6", "F6", ...Array(7).fill("Tab"), "Return"];
export const steps = [
  ...toView,
  ...[...Array(5).fill("Tab"), "type:4", "Return"],
  ...["Return", "c", "n", "p", "time:20", "r"],
  ...[...Array(12).fill("Tab"), "Return"],
];
