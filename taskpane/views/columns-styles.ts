/** The look of the found-columns view; colour and scheme come from the page. */
export const COLUMNS_STYLES = `
:host { display: block; position: relative; container-type: inline-size; font: inherit; overflow-wrap: anywhere; }
:host([hidden]) { display: none; }
h2 { font-size: 1.25em; margin: 0 0 0.5em; }
h3 { font-size: 1.05em; margin: 0 0 0.25em; }
p { margin: 0.25em 0; max-width: 65ch; }
section.block { border-top: 1px solid currentColor; padding: 0.75em 0; }
fieldset { border: 1px solid currentColor; border-radius: 0.25em; margin: 0.5em 0 1em; padding: 0.5em 0.75em; min-inline-size: 0; }
legend { font-weight: 600; padding: 0 0.25em; }
label.option { display: flex; gap: 0.5em; align-items: baseline; padding: 0.25em 0; min-height: 24px; }
summary { cursor: pointer; padding: 0.25em 0; min-height: 24px; }
.column { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); gap: 0.25em 0.75em; align-items: center; padding: 0.2em 0; }
.column small { grid-column: 2; }
ul { margin: 0.25em 0; padding: 0; list-style: none; }
li { display: flex; gap: 0.5em; align-items: baseline; padding: 0.2em 0; }
button, select { font: inherit; color: ButtonText; background: ButtonFace; border: 1px solid ButtonBorder; border-radius: 0.25em; min-height: 1.9em; min-width: 24px; max-width: 100%; padding: 0.1em 0.5em; }
select { color: FieldText; background: Field; }
button { cursor: pointer; flex: none; }
:focus-visible { outline: 3px solid Highlight; outline-offset: 2px; }
.spoken { position: absolute; inline-size: 1px; block-size: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
@container (max-width: 19rem) { .column { grid-template-columns: minmax(0, 1fr); } .column small { grid-column: 1; } }
@media (forced-colors: active) { :focus-visible { outline-color: Highlight; } }
`;
