export const title = "Open the example, hear the caseload, open a pupil and hear the verdict";
export const path = "workbench.html";
const toPane = ["F6", "F6"];
const pastTheViews = Array(11).fill("Tab");
export const steps = [
  ...["Tab", "Tab", "Tab", "Tab", "Return"],
  ...["Down", "Right"],
  ...toPane,
  ...pastTheViews,
  ...["Tab", "Down", "Right", "Right", "Right", "Return"],
  ...Array(8).fill("Down"),
];
