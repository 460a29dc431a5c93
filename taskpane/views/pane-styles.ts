/**
 * What all views of the pane share: text, fields, buttons, tables. Colours come from the page's custom properties, with
 * system colours where it has none; nothing tells a state by colour alone.
 */
export const PANE_STYLES = `
/* The host is the place of what is out of sight for screen readers: it must not reach beyond what scrolls. */
:host { display: block; position: relative; color: var(--ink, CanvasText); font: inherit; line-height: 1.45; overflow-wrap: anywhere; }
:host([hidden]), [hidden] { display: none !important; }
* { box-sizing: border-box; }
h2 { font-size: 1.15em; margin: 0.5em 0 0.35em; }
h3 { font-size: 1.05em; margin: 1.1em 0 0.25em; }
h4 { font-size: 1em; margin: 0.8em 0 0.2em; }
p { margin: 0.35em 0; max-inline-size: 68ch; }
.quiet { color: var(--quiet, inherit); }
.fields { display: flex; flex-wrap: wrap; align-items: end; gap: 0.5rem 0.75rem; margin-block: 0.5rem; }
.field { flex: 1 1 9rem; min-inline-size: 0; display: grid; gap: 0.15rem; font-size: 0.875em; color: var(--quiet, inherit); }
.wide { flex-basis: 100%; }
input, select, textarea, button {
  font: inherit; color: var(--ink, CanvasText); background: var(--surface, Canvas);
  border: 1px solid var(--strong-line, currentColor); border-radius: 0.3rem; max-inline-size: 100%;
}
.field > input, .field > select, .field > textarea { font-size: 1.143em; inline-size: 100%; min-block-size: 2.25rem; padding: 0.25rem 0.4rem; }
textarea { resize: vertical; }
input[type="checkbox"], input[type="radio"] { inline-size: 1.15rem; block-size: 1.15rem; margin: 0; flex: none; accent-color: auto; }
.choice { display: flex; gap: 0.5rem; align-items: center; min-block-size: 1.75rem; }
fieldset { border: 1px solid var(--line, GrayText); border-radius: 0.3rem; margin: 0.6rem 0; padding: 0.4rem 0.75rem 0.6rem; min-inline-size: 0; }
legend { font-weight: 600; padding-inline: 0.25rem; }
button { cursor: pointer; min-block-size: 2rem; min-inline-size: 2rem; padding: 0.2rem 0.7rem; }
button.main { background: var(--accent, ButtonFace); color: var(--accent-ink, ButtonText); border-color: var(--accent, ButtonBorder); }
button[aria-disabled="true"] { opacity: 0.65; cursor: default; }
.buttons { display: flex; flex-wrap: wrap; gap: 0.5rem; margin-block: 0.6rem; }
:focus-visible { outline: 3px solid var(--focus, Highlight); outline-offset: 2px; }
ul, ol { margin: 0.35rem 0; padding-inline-start: 1.3rem; }
summary { cursor: pointer; padding-block: 0.35rem; min-block-size: 1.5rem; font-weight: 600; }
.scroll { overflow-x: auto; max-inline-size: 100%; }
table { border-collapse: collapse; inline-size: 100%; overflow-wrap: normal; }
caption { text-align: start; padding-block: 0.25rem; }
th, td { text-align: start; vertical-align: top; padding: 0.3rem 0.6rem 0.3rem 0; border-block-end: 1px solid var(--line, GrayText); }
td { font-variant-numeric: tabular-nums; }
.notice { border-inline-start: 0.25rem solid var(--strong-line, currentColor); padding-inline-start: 0.75rem; margin-block: 0.6rem; }
.braille { font-family: "Cellwright Braille", "Noto Sans Symbols 2", "Segoe UI Symbol", "Apple Braille", sans-serif; }
.spoken { position: absolute; inline-size: 1px; block-size: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
@media (forced-colors: active) {
  button.main { border: 2px solid ButtonText; }
  button[aria-disabled="true"] { color: GrayText; opacity: 1; }
}
@media (prefers-reduced-motion: reduce) { * { animation: none !important; transition: none !important; } }
`;

let shared: CSSStyleSheet | undefined;

/** The shared look as one sheet for every shadow root; a view adds its own after it. */
export const paneStyles = (own?: string): CSSStyleSheet[] => {
  if (shared === undefined) {
    shared = new CSSStyleSheet();
    shared.replaceSync(PANE_STYLES);
  }
  if (own === undefined) return [shared];
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(own);
  return [shared, sheet];
};
