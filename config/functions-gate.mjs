// What Excel would refuse in functions.json and functions.js, or pass over in silence.

/** Names that Excel takes for a cell, in either way of writing addresses. */
const CELL_LIKE = /^(?:[A-Z]{1,3}\d{1,7}|R\d*C\d*|R\d+|C\d+|R|C)$/i;

const LONGEST_NAME = 128;

/** Ids that the bundle gives to Excel. */
const associatedIds = (script) =>
  [...script.matchAll(/\bCustomFunctions\.associate\(\s*(["'`])([^"'`]+)\1/g)].map(([, , id]) => id);

function checkName(what, name) {
  if (typeof name !== "string" || !/^[A-Z][A-Z0-9._]*$/i.test(name)) {
    return [`The ${what} "${name}" must be letters, digits, dots and underscores, a letter first.`];
  }
  const faults = [];
  if (name.length < 3) faults.push(`The ${what} ${name} needs at least three characters.`);
  if (name.length > LONGEST_NAME)
    faults.push(`The ${what} ${name} is longer than ${LONGEST_NAME} characters.`);
  if (CELL_LIKE.test(name)) faults.push(`The ${what} ${name} looks like a cell.`);
  return faults;
}

const duplicates = (values) => [...new Set(values.filter((value, index) => values.indexOf(value) !== index))];

/**
 * Everything that is wrong between the bundle and its metadata; empty where nothing is.
 * @param {string} script - functions.js
 * @param {string} metadata - functions.json
 * @returns {string[]}
 */
export function checkFunctions(script, metadata) {
  let functions;
  try {
    ({ functions } = JSON.parse(metadata));
  } catch (error) {
    return [`functions.json cannot be read: ${error.message}`];
  }
  if (!Array.isArray(functions) || functions.length === 0) return ["functions.json lists no function."];
  const associated = associatedIds(script);
  const listed = functions.map(({ id }) => id);
  return [
    ...functions.flatMap(({ id, name }) => [...checkName("id", id), ...checkName("name", name)]),
    ...functions.flatMap(({ id }) =>
      String(id).includes(".") ? [`The id ${id} carries a namespace: leave it to the manifest.`] : [],
    ),
    ...duplicates(listed).map((id) => `The function ${id} stands twice in functions.json.`),
    ...duplicates(associated).map((id) => `functions.js associates ${id} twice.`),
    ...listed.filter((id) => !associated.includes(id)).map((id) => `functions.js never associates ${id}.`),
    ...associated.filter((id) => !listed.includes(id)).map((id) => `functions.json has no entry for ${id}.`),
  ];
}
