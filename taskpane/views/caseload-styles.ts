/** The look of the caseload: one line a pupil under another, parted by rules. */
export const CASELOAD_STYLES = `
.kept { border-inline-start: 0.25rem solid var(--accent, currentColor); padding-inline-start: 0.75rem; margin-block: 0.6rem; }
.kept:has(p:empty) { border: 0; margin: 0; }
.kept p { margin-block-start: 0; }
.lines { border-block-start: 1px solid var(--line, GrayText); margin-block: 0.5rem; }
.line { display: grid; grid-template-columns: minmax(0, 1fr); gap: 0.1rem 1rem; padding: 0.6rem 0.4rem; border-block-end: 1px solid var(--line, GrayText); }
.line:focus-visible { outline-offset: -3px; }
.who { border: 0; background: none; padding: 0; min-block-size: 1.75rem; text-align: start; text-decoration: underline; text-underline-offset: 0.2em; font-weight: 650; font-size: 1.05em; }
.need p { margin: 0.1rem 0; }
.need p:first-child { border-inline-start: 0.2rem solid var(--strong-line, currentColor); padding-inline-start: 0.5rem; }
.seen { display: flex; flex-wrap: wrap; gap: 0.25rem 1rem; margin-block-start: 0.3rem; }
.seen .fact { flex: 1 1 11rem; }
.seen .spark { flex: 0 0 8rem; }
.facts { display: grid; grid-template-columns: repeat(auto-fill, minmax(8rem, 1fr)); gap: 0.25rem 1rem; align-items: start; margin-block-start: 0.3rem; }
.fact { min-inline-size: 0; font-variant-numeric: tabular-nums; }
.fact > b { display: block; font-weight: 400; font-size: 0.875em; color: var(--quiet, inherit); }
.spark { min-block-size: 36px; }
.spark svg { display: block; max-inline-size: 100%; }
.act { align-self: end; }
`;
