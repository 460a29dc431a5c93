/** The look of the trajectory view; colours come from the page's custom properties where it has them. */
export const TRAJECTORY_STYLES = `
:host {
  display: block;
  color: var(--ink, CanvasText);
  font: inherit;
  line-height: 1.45;
  overflow-wrap: anywhere;
}
:host([hidden]), [hidden] { display: none; }
.choices {
  display: flex;
  flex-wrap: wrap;
  gap: 0.5rem 0.75rem;
  margin-block-end: 0.75rem;
}
.choices label { flex: 1 1 7rem; min-inline-size: 0; display: grid; gap: 0.15rem; font-size: 0.875em; color: var(--quiet, inherit); }
.choices label:nth-child(2) { flex: 3 1 15rem; }
select, button {
  font: inherit;
  color: var(--ink, CanvasText);
  background: var(--surface, Canvas);
  border: 1px solid var(--strong-line, currentColor);
  border-radius: 0.3rem;
}
select { font-size: 1.143em; min-block-size: 2.25rem; inline-size: 100%; padding: 0.2rem 0.4rem; text-overflow: ellipsis; }
button { padding: 0.1rem 0.5rem; min-block-size: 1.75rem; cursor: pointer; }
select:focus-visible, button:focus-visible, summary:focus-visible, .scroll:focus-visible {
  outline: 3px solid var(--focus, Highlight);
  outline-offset: 2px;
}
.verdict { margin: 0; font-size: 1.25em; font-weight: 650; }
.verdict:empty { display: none; }
.state { margin-block: 0.5rem; }
.picture { margin-block: 0.5rem; min-block-size: 1px; }
.picture svg { display: block; max-inline-size: 100%; block-size: auto; }
.picture circle[data-day] { cursor: pointer; }
.accent-line { stroke: var(--trend, #2a78c8); }
.accent-area { fill: var(--trend, #2a78c8); }
.accent-text { fill: var(--trend, #2a6db4); }
ul { margin: 0.4rem 0; padding-inline-start: 1.2rem; }
li + li { margin-block-start: 0.25rem; }
.cautions { border-inline-start: 3px solid var(--strong-line, currentColor); padding-inline-start: 0.75rem; margin-block: 0.75rem; }
.cautions p { margin: 0; font-weight: 600; }
summary { cursor: pointer; padding-block: 0.4rem; font-weight: 600; }
.scroll { overflow-x: auto; max-inline-size: 100%; }
table { border-collapse: collapse; inline-size: 100%; font-size: 0.9375em; overflow-wrap: normal; }
caption { text-align: start; padding-block: 0.25rem; }
th, td { text-align: start; vertical-align: top; padding: 0.25rem 0.6rem 0.25rem 0; border-block-end: 1px solid var(--line, GrayText); }
td { font-variant-numeric: tabular-nums; }
tbody th, td:last-child { white-space: nowrap; }
.multiples { list-style: none; padding: 0; display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 15rem), 1fr)); gap: 1rem; }
.multiples li + li { margin: 0; }
.multiples svg { display: block; max-inline-size: 100%; block-size: auto; }
.multiples .name { font-weight: 600; }
.player { border: 1px solid var(--strong-line, currentColor); border-radius: 0.3rem; padding: 0.6rem; min-block-size: 3rem; }
.said { min-block-size: 1.5em; margin-block: 0.4rem; }
.keys { display: grid; grid-template-columns: auto 1fr; gap: 0.1rem 0.75rem; margin-block: 0.4rem; }
.keys dd { margin: 0; }
.sounding + .sounding { margin-block-start: 1rem; }
.proof { display: grid; gap: 0.5rem; }
.proof svg { inline-size: 100%; block-size: auto; max-inline-size: 40rem; background: #fff; border: 1px solid var(--line, GrayText); forced-color-adjust: none; }
@media (prefers-color-scheme: dark) {
  :host { --trend: #7db4ee; }
}
@media (forced-colors: active) {
  .accent-line { stroke: LinkText; }
  .accent-area { fill: LinkText; }
  .accent-text { fill: CanvasText; }
}
`;
