export const title = "Go to the next sheet from the grid";
export const path = "workbench.html?example=1";
export const steps = ["alt+Next", "Down", "alt+Prior"];
