export const title = "Dictate two words, type them with six keys, compare and write";
export const path = "workbench.html?example=1";
const toView = ["F6", "F6", ...Array(8).fill("Tab"), "Return"];
export const steps = [
  ...toView,
  ...["Tab", "Tab", "Tab", "Tab", "type:the dog", "Tab", "Tab", "Tab", "Tab", "Return"],
  // ⠮ ⠀ ⠋ (for d) ⠕ ⠛
  ...["ctrl+Return", "s+d+j+l", "space", "ctrl+Return", "f+d+j", "f+s+k", "f+d+j+k"],
  ...["Tab", "Tab", "Tab", "Tab", "Tab", "Return"],
  ...["Down", "Down", "Down"],
  ...[...Array(4).fill("Tab"), "Return"],
];
