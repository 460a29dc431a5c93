export const title = "Make a drill from wanted signs and save it for an embosser";
export const path = "workbench.html?example=1";
const toView = ["F6", "F6", ...Array(5).fill("Tab"), "Return"];
export const steps = [
  ...toView,
  ...["Tab", "Tab", "Tab", "type:ea", "Return"],
  ...["Tab", "Tab"],
  ...["h", "h", "Tab", "Tab", "Return"],
];
