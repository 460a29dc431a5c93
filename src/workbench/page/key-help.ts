/** The keys of the workbench, as its help lists them. */
export const KEY_HELP: readonly (readonly [keys: string, effect: string])[] = [
  ["Arrow keys", "Move by a cell; with Ctrl to the end of a run of filled cells; with Shift select"],
  ["Home, End", "First cell, last filled cell of the row; with Ctrl of the sheet"],
  ["Page Up, Page Down", "Move by a window"],
  ["Shift+Space, Ctrl+Space, Ctrl+A", "Select rows, columns, the whole sheet"],
  [
    "Any character",
    "Begin typing into the cell; Enter or Tab takes the text, Escape leaves the cell as it was",
  ],
  ["F2", "Edit what is in the cell; Alt+Enter begins a new line in it"],
  ["Alt+Down arrow", "The list of what the cell takes, where it offers one"],
  ["Delete", "Empty the selected cells"],
  ["Ctrl+Z, Ctrl+Y", "Undo, do again"],
  ["Ctrl+C, Ctrl+X, Ctrl+V", "Copy, cut, paste"],
  ["Ctrl+D", "Fill down: from the first selected row, or from the row above"],
  ["Ctrl+I, Ctrl+Delete", "Insert rows above, delete the selected rows"],
  ["Ctrl+F, F3, Shift+F3", "Find on this sheet; next match; match before"],
  ["Ctrl+G", "Go to a cell, a table or a name"],
  [
    "Alt+Page Down, Alt+Page Up",
    "Next sheet, sheet before (also with Ctrl, where the browser leaves it to the page)",
  ],
  ["Shift+F2", "Hear the note of the cell again: its error, comment or rule"],
  ["Shift+F10", "Menu of commands for the selected cells"],
  ["F6, Shift+F6", "Next part of the page: commands, cell contents, sheet, tabs, pane"],
  ["Ctrl+S, Ctrl+O", "Save, open"],
];
