export const title = "Run a timed reading probe by keys and write it into the workbook";
export const path = "workbench.html?example=1";
const toView = ["F6", "F6", ...Array(6).fill("Tab"), "Return"];
export const steps = [
  ...toView,
  ...[...Array(7).fill("Tab"), "Return"],
  ...["Return", "Right", "m", "Right", "Right", "t", "time:20", "Right", "Right", "Return"],
  ...[...Array(12).fill("Tab"), "Return"],
];
