// What Excel would refuse in a manifest, found offline. Source: Microsoft's add-in documentation of August 2026, and
// excel-and-files: element order is enforced, one resid for the shared runtime, strings of limited length.
import { parseXml } from "./xml-tree.mjs";
import { checkFunctions } from "./functions-gate.mjs";

/** Order of children where the schema is a sequence; elements that are not named may not stand there. */
const ORDER = {
  OfficeApp: [
    "Id",
    "Version",
    "ProviderName",
    "DefaultLocale",
    "DisplayName",
    "Description",
    "IconUrl",
    "HighResolutionIconUrl",
    "SupportUrl",
    "AppDomains",
    "Hosts",
    "Requirements",
    "DefaultSettings",
    "Permissions",
    "VersionOverrides",
  ],
  VersionOverrides: ["Description", "Requirements", "Hosts", "Resources"],
  Host: ["Runtimes", "AllFormFactors", "DesktopFormFactor"],
  DesktopFormFactor: ["GetStarted", "FunctionFile", "ExtensionPoint"],
  GetStarted: ["Title", "Description", "LearnMoreUrl"],
  CustomFunctions: ["Script", "Page", "Metadata", "Namespace"],
  Group: ["Label", "Icon", "Control"],
  Control: ["Label", "Supertip", "Icon", "Action"],
  Supertip: ["Title", "Description"],
  Resources: ["Images", "Urls", "ShortStrings", "LongStrings"],
};

const REQUIRED = [
  "Id",
  "Version",
  "ProviderName",
  "DefaultLocale",
  "DisplayName",
  "Description",
  "Hosts",
  "DefaultSettings",
  "Permissions",
  "VersionOverrides",
];

/** Longest values, in characters. */
const LONGEST = {
  DisplayName: 125,
  Description: 250,
  ProviderName: 125,
  ShortStrings: 125,
  LongStrings: 250,
  resid: 32,
};

const NEEDED_SETS = { SharedRuntime: "1.1", CustomFunctionsRuntime: "1.2", ExcelApi: "1.9" };
const NEEDED_ICONS = ["16", "32", "80"];
const GUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-5][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i;

/** Every element of a tree, parents before children. */
const everyElement = (element) => [element, ...element.children.flatMap(everyElement)];
const named = (elements, name) => elements.filter((element) => element.name === name);
const first = (elements, name) => elements.find((element) => element.name === name);
const childValue = (element, name) => first(element?.children ?? [], name)?.attributes.resid;

const orderOf = (element) =>
  element.name === "ExtensionPoint"
    ? (ORDER[element.attributes["xsi:type"]] ?? [])
    : (ORDER[element.name] ?? []);

function checkOrder(all) {
  return all.flatMap((element) => {
    const order = orderOf(element);
    if (order.length === 0) return [];
    const faults = [];
    let furthest = -1;
    for (const { name } of element.children) {
      const place = order.indexOf(name);
      if (place < 0) faults.push(`${element.name} may not hold ${name}.`);
      else if (place < furthest)
        faults.push(`In ${element.name}, ${name} must stand before ${order[furthest]}.`);
      furthest = Math.max(furthest, place);
    }
    return faults;
  });
}

function checkHead(root) {
  const value = (name) => first(root.children, name);
  const faults = REQUIRED.filter((name) => !value(name)).map((name) => `OfficeApp needs ${name}.`);
  const id = value("Id")?.text.trim() ?? "";
  if (!GUID.test(id)) faults.push(`Id "${id}" is not a GUID.`);
  const version = value("Version")?.text.trim() ?? "";
  if (!/^\d+\.\d+\.\d+\.\d+$/.test(version))
    faults.push(`Version "${version}" needs four numbers, such as 0.1.0.0.`);
  for (const name of ["DisplayName", "Description", "ProviderName"]) {
    const text = value(name)?.attributes.DefaultValue ?? value(name)?.text ?? "";
    if (text.trim() === "") faults.push(`${name} is empty.`);
    if (text.length > LONGEST[name])
      faults.push(`${name} has ${text.length} characters; ${LONGEST[name]} are allowed.`);
  }
  return faults;
}

function checkRequirements(all) {
  const sets = new Map(named(all, "Set").map(({ attributes }) => [attributes.Name, attributes.MinVersion]));
  return Object.entries(NEEDED_SETS)
    .filter(([name, version]) => sets.get(name) !== version)
    .map(
      ([name, version]) =>
        `Requirements must ask for ${name} ${version}, not ${sets.get(name) ?? "nothing"}.`,
    );
}

function checkIds(all) {
  const faults = [];
  // Resources are one space of names; tabs, groups and controls are another.
  for (const isResource of [true, false]) {
    const ids = all
      .filter(
        ({ name, attributes }) =>
          attributes.id !== undefined && ["Image", "Url", "String"].includes(name) === isResource,
      )
      .map(({ attributes }) => attributes.id);
    for (const id of new Set(ids.filter((each, index) => ids.indexOf(each) !== index)))
      faults.push(`The id ${id} stands twice.`);
  }
  return faults;
}

function checkResources(all, resources) {
  const defined = new Map(
    everyElement(resources ?? { name: "", attributes: {}, children: [] })
      .filter(({ attributes }) => attributes.id !== undefined)
      .map((element) => [element.attributes.id, element]),
  );
  const used = new Set(
    all.flatMap(({ attributes }) => (attributes.resid === undefined ? [] : [attributes.resid])),
  );
  const faults = [...used]
    .filter((resid) => !defined.has(resid))
    .map((resid) => `The resid ${resid} is not defined.`);
  for (const id of defined.keys()) {
    if (!used.has(id)) faults.push(`The resource ${id} is never used.`);
    if (id.length > LONGEST.resid) faults.push(`The resid ${id} is longer than ${LONGEST.resid} characters.`);
  }
  for (const list of ["ShortStrings", "LongStrings"]) {
    for (const { attributes } of first(resources?.children ?? [], list)?.children ?? []) {
      const { length } = attributes.DefaultValue ?? "";
      if (length === 0) faults.push(`The string ${attributes.id} is empty.`);
      if (length > LONGEST[list])
        faults.push(`The string ${attributes.id} has ${length} characters; ${LONGEST[list]} are allowed.`);
    }
  }
  return faults;
}

const ADDRESSES = ["IconUrl", "HighResolutionIconUrl", "SupportUrl", "SourceLocation", "Url", "Image"];

function checkAddresses(all, files) {
  const faults = [];
  const origins = new Set();
  for (const { name, attributes } of all) {
    const address = attributes.DefaultValue;
    if (!ADDRESSES.includes(name) || address === undefined) continue;
    if (!URL.canParse(address) || !address.startsWith("https://")) {
      faults.push(`${name} ${attributes.id ?? ""} "${address}" must be a whole address with https://.`);
      continue;
    }
    const { origin, pathname } = new URL(address);
    origins.add(origin);
    if (files && !files.has(decodeURIComponent(pathname).slice(1)))
      faults.push(`${address}: there is no such file in dist/.`);
  }
  if (origins.size > 1) faults.push(`The addresses stand at different origins: ${[...origins].join(", ")}.`);
  const domains = named(all, "AppDomain").map(({ text }) => text.trim());
  for (const origin of origins) {
    if (!domains.includes(origin)) faults.push(`AppDomains must name ${origin}, without a slash at the end.`);
  }
  return faults;
}

function checkRuntime(all) {
  const faults = [];
  const runtimes = named(all, "Runtime");
  if (runtimes.length !== 1) faults.push(`There must be one Runtime, not ${runtimes.length}.`);
  const [runtime] = runtimes;
  if (runtime && runtime.attributes.lifetime !== "long") faults.push('The Runtime needs lifetime="long".');
  const resid = runtime?.attributes.resid;
  const sharing = [
    ["Page", named(all, "Page").map((page) => childValue(page, "SourceLocation"))],
    ["FunctionFile", named(all, "FunctionFile").map(({ attributes }) => attributes.resid)],
    [
      "ShowTaskpane",
      named(all, "Action")
        .filter(({ attributes }) => attributes["xsi:type"] === "ShowTaskpane")
        .map((action) => childValue(action, "SourceLocation")),
    ],
  ];
  for (const [name, found] of sharing) {
    if (found.length === 0) faults.push(`There is no ${name}.`);
    for (const each of found) {
      if (each !== resid) faults.push(`${name} must have the Runtime's resid ${resid}, not ${each}.`);
    }
  }
  if (named(all, "TaskpaneId").length > 0)
    faults.push("A TaskpaneId opens a pane outside the shared runtime: leave it out.");
  return faults;
}

function checkIcons(all) {
  return named(all, "Icon").flatMap(({ children }) => {
    const sizes = children.map(({ attributes }) => attributes.size);
    return NEEDED_ICONS.filter((size) => !sizes.includes(size)).map(
      (size) => `An Icon lacks the size ${size}.`,
    );
  });
}

const stringOf = (all, resid) =>
  all.find(({ name, attributes }) => name === "String" && attributes.id === resid)?.attributes.DefaultValue;

function checkNamespace(all) {
  const [namespace] = named(all, "Namespace");
  const value = stringOf(all, namespace?.attributes.resid) ?? "";
  return /^[A-Z][A-Z0-9._]*$/.test(value)
    ? []
    : [`The functions' namespace "${value}" must be capital letters, digits, dots.`];
}

/**
 * Everything that is wrong with a manifest; empty where nothing is.
 *
 * @param {string} xml
 * @param {{ has(path: string): boolean, text(path: string): string } | undefined} [files] - the built files; without
 *   them nothing is asked about files and functions
 * @returns {string[]}
 */
export function checkManifest(xml, files) {
  const { root, fault } = parseXml(xml);
  if (!root) return [`The manifest is not well-formed XML: ${fault}`];
  if (root.name !== "OfficeApp") return [`The manifest begins with ${root.name} instead of OfficeApp.`];
  const all = everyElement(root);
  return [
    ...checkHead(root),
    ...checkOrder(all),
    ...checkRequirements(all),
    ...checkIds(all),
    ...checkResources(all, first(all, "Resources")),
    ...checkAddresses(all, files),
    ...checkRuntime(all),
    ...checkIcons(all),
    ...checkNamespace(all),
    ...(files?.has("functions.js") && files.has("functions.json")
      ? checkFunctions(files.text("functions.js"), files.text("functions.json"))
      : []),
  ];
}
