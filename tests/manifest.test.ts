import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { checkFunctions } from "../config/functions-gate.mjs";
import { builtFiles, moveOrigin, parseOrigin, writeManifest } from "../config/manifest.mjs";
import { checkManifest } from "../config/manifest-gate.mjs";

const manifest = readFileSync(new URL("../manifest.xml", import.meta.url), "utf8");

const FILES = [
  "taskpane.html",
  "workbench.html",
  "functions.js",
  "functions.json",
  "assets/icon-16.png",
  "assets/icon-32.png",
  "assets/icon-64.png",
  "assets/icon-80.png",
];
const SCRIPT = 'CustomFunctions.associate("TRANSLATE",a),CustomFunctions.associate("CELLS",b);';
const METADATA = JSON.stringify({ functions: ["TRANSLATE", "CELLS"].map((id) => ({ id, name: id })) });
const all = {
  has: (path: string) => FILES.includes(path),
  text: (path: string) => (path.endsWith(".json") ? METADATA : SCRIPT),
};

const removed = (element: RegExp) => (xml: string) => xml.replace(element, "");
const swapped = (from: string | RegExp, to: string) => (xml: string) => xml.replace(from, to);

describe("manifest.xml", () => {
  it("passes the gate", () => {
    expect(checkManifest(manifest, all)).toEqual([]);
  });

  it.skipIf(!existsSync(new URL("../dist/manifest.xml", import.meta.url)))(
    "passes the gate with the built files",
    () => {
      expect(checkManifest(manifest, builtFiles)).toEqual([]);
    },
  );

  it("has icons of the sizes that it says, drawn by config/draw-icons.mjs", () => {
    for (const size of [16, 32, 64, 80]) {
      const icon = readFileSync(new URL(`../src/assets/icon-${size}.png`, import.meta.url));
      expect([icon.readUInt32BE(16), icon.readUInt32BE(20)]).toEqual([size, size]);
    }
  });
});

describe("the gate finds", () => {
  it.each<[string, (xml: string) => string, RegExp]>([
    ["XML that is not well-formed", removed(/<\/Hosts>/), /not well-formed/],
    ["another kind of file", () => "<Package/>", /begins with Package/],
    ["no Permissions", removed(/<Permissions>.*<\/Permissions>/), /needs Permissions/],
    ["an Id that is no GUID", swapped(/<Id>.*<\/Id>/, "<Id>cellwright</Id>"), /"cellwright" is not a GUID/],
    ["a version of three numbers", swapped("0.1.0.0", "0.1.0"), /four numbers/],
    [
      "an empty name",
      swapped('DisplayName DefaultValue="Cellwright (development)"', 'DisplayName DefaultValue=""'),
      /DisplayName is empty/,
    ],
    [
      "a long description",
      swapped('Description DefaultValue="', `Description DefaultValue="${"x".repeat(250)}`),
      /Description has \d+ characters/,
    ],
    [
      "elements out of order",
      (xml) =>
        xml
          .replace(/\s*<FunctionFile.*\/>/, "")
          .replace("<GetStarted>", '<FunctionFile resid="Taskpane.Url"/><GetStarted>'),
      /GetStarted must stand before FunctionFile/,
    ],
    [
      "functions after the desktop's part",
      (xml) =>
        xml
          .replace(/\s*<Runtimes>[^]*?<\/Runtimes>/, "")
          .replace(
            "</DesktopFormFactor>",
            '</DesktopFormFactor><Runtimes><Runtime resid="Taskpane.Url" lifetime="long"/></Runtimes>',
          ),
      /Runtimes must stand before DesktopFormFactor/,
    ],
    [
      "an element that does not belong",
      swapped("<GetStarted>", "<Started/><GetStarted>"),
      /may not hold Started/,
    ],
    [
      "Page after Metadata",
      (xml) => xml.replace(/(<Page>[^]*?<\/Page>)(\s*)(<Metadata>[^]*?<\/Metadata>)/, "$3$2$1"),
      /Page must stand before Metadata/,
    ],
    [
      "a missing requirement set",
      removed(/<Set Name="SharedRuntime".*\/>/),
      /SharedRuntime 1\.1, not nothing/,
    ],
    [
      "another version of a set",
      swapped('Name="ExcelApi" MinVersion="1.9"', 'Name="ExcelApi" MinVersion="1.10"'),
      /ExcelApi 1\.9, not 1\.10/,
    ],
    [
      "an undefined resid",
      swapped('Label resid="Group.Label"', 'Label resid="Group.Name"'),
      /Group\.Name is not defined/,
    ],
    [
      "a resource without use",
      swapped("</bt:ShortStrings>", '<bt:String id="Spare" DefaultValue="x"/></bt:ShortStrings>'),
      /Spare is never used/,
    ],
    [
      "a resid that is too long",
      (xml) => xml.replaceAll("OpenPane.Tooltip", "OpenPane.Tooltip.For.The.Button.On.The.Ribbon"),
      /longer than 32/,
    ],
    [
      "a resource id that stands twice",
      swapped('Image id="Icon.80x80"', 'Image id="Icon.32x32"'),
      /Icon\.32x32 stands twice/,
    ],
    [
      "a control id that stands twice",
      swapped('id="Cellwright.OpenPane"', 'id="Cellwright.Group"'),
      /Cellwright\.Group stands twice/,
    ],
    [
      "a short string that is too long",
      swapped('DefaultValue="Open Cellwright"', `DefaultValue="${"x".repeat(126)}"`),
      /OpenPane\.Label has 126 characters; 125/,
    ],
    [
      "a long string that is too long",
      swapped(/DefaultValue="Show each[^"]*"/, `DefaultValue="${"x".repeat(251)}"`),
      /OpenPane\.Tooltip has 251 characters; 250/,
    ],
    [
      "an empty string",
      swapped('DefaultValue="Open Cellwright"', 'DefaultValue=""'),
      /OpenPane\.Label is empty/,
    ],
    [
      "a relative address",
      swapped('https://localhost:3000/functions.js"', 'functions.js"'),
      /"functions\.js" must be a whole address/,
    ],
    [
      "an address without HTTPS",
      swapped("https://localhost:3000/functions.json", "http://localhost:3000/functions.json"),
      /must be a whole address with https/,
    ],
    [
      "a file that is not there",
      swapped("icon-80.png", "icon-81.png"),
      /icon-81\.png: there is no such file/,
    ],
    [
      "two origins",
      swapped("https://localhost:3000/functions.json", "https://other.example/functions.json"),
      /different origins/,
    ],
    [
      "an AppDomain with a slash",
      swapped("3000</AppDomain>", "3000/</AppDomain>"),
      /AppDomains must name https:\/\/localhost:3000/,
    ],
    [
      "a Page outside the shared runtime",
      swapped(/(<Page>\s*<SourceLocation resid=")Taskpane\.Url/, "$1Functions.Script.Url"),
      /Page must have the Runtime's resid/,
    ],
    [
      "a FunctionFile outside the shared runtime",
      swapped('FunctionFile resid="Taskpane.Url"', 'FunctionFile resid="LearnMore.Url"'),
      /FunctionFile must have the Runtime's resid/,
    ],
    [
      "a pane outside the shared runtime",
      swapped(/(ShowTaskpane">\s*<SourceLocation resid=")Taskpane\.Url/, "$1LearnMore.Url"),
      /ShowTaskpane must have the Runtime's resid/,
    ],
    [
      "a TaskpaneId",
      swapped(
        '<Action xsi:type="ShowTaskpane">',
        '<Action xsi:type="ShowTaskpane"><TaskpaneId>Pane</TaskpaneId>',
      ),
      /TaskpaneId/,
    ],
    ["a runtime that ends with the pane", swapped('lifetime="long"', 'lifetime="short"'), /lifetime="long"/],
    [
      "two runtimes",
      swapped("</Runtimes>", '<Runtime resid="LearnMore.Url" lifetime="long"/></Runtimes>'),
      /one Runtime, not 2/,
    ],
    ["no ShowTaskpane", swapped("ShowTaskpane", "ExecuteFunction"), /no ShowTaskpane/],
    ["a missing icon size", removed(/<bt:Image size="32".*\/>/), /lacks the size 32/],
    [
      "a namespace that Excel refuses",
      swapped('DefaultValue="BRAILLE"', 'DefaultValue="braille signs"'),
      /namespace "braille signs"/,
    ],
  ])("%s", (_, damage, message) => {
    const broken = damage(manifest);
    expect(broken).not.toBe(manifest);
    expect(checkManifest(broken, all)).toContainEqual(expect.stringMatching(message));
  });

  const entries = (...ids: string[]) => JSON.stringify({ functions: ids.map((id) => ({ id, name: id })) });
  const calls = (...ids: string[]) => ids.map((id) => `CustomFunctions.associate("${id}",f)`).join(",");

  it.each<[string, string, string, RegExp]>([
    ["metadata that is no JSON", calls("CELLS"), "{", /cannot be read/],
    ["no function at all", "", '{"functions":[]}', /lists no function/],
    [
      "a function that is never associated",
      calls("CELLS"),
      entries("CELLS", "DOTS"),
      /never associates DOTS/,
    ],
    ["a function without metadata", calls("CELLS", "DOTS"), entries("CELLS"), /no entry for DOTS/],
    ["an id that stands twice", calls("CELLS"), entries("CELLS", "CELLS"), /CELLS stands twice/],
    ["an id associated twice", calls("CELLS", "CELLS"), entries("CELLS"), /associates CELLS twice/],
    ["a name that looks like a cell", calls("DOT6"), entries("DOT6"), /DOT6 looks like a cell/],
    [
      "a name that looks like a cell of the other kind",
      calls("R1C1"),
      entries("R1C1"),
      /R1C1 looks like a cell/,
    ],
    ["a name of two letters", calls("UP"), entries("UP"), /at least three/],
    [
      "a name with a blank",
      calls("CELLS"),
      '{"functions":[{"id":"CELLS","name":"MY CELLS"}]}',
      /name "MY CELLS"/,
    ],
    ["an id with a namespace", calls("BRAILLE.CELLS"), entries("BRAILLE.CELLS"), /carries a namespace/],
  ])("%s", (_, script, metadata, message) => {
    expect(checkFunctions(script, metadata)).toContainEqual(expect.stringMatching(message));
  });

  it("nothing in functions that fit together, whatever quotes the bundle uses", () => {
    expect(
      checkFunctions(
        "x;CustomFunctions.associate('CELLS',f);CustomFunctions.associate(`DOTS`,g)",
        entries("CELLS", "DOTS"),
      ),
    ).toEqual([]);
  });
});

describe("another origin", () => {
  const folders: string[] = [];
  afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true })));

  it("moves every address and the AppDomain", () => {
    const moved = moveOrigin(manifest, "https://cellwright.example.org:8443");
    expect(moved).not.toContain("localhost");
    expect(moved).toContain("<AppDomain>https://cellwright.example.org:8443</AppDomain>");
    expect(moved).toContain('"https://cellwright.example.org:8443/taskpane.html"');
    expect(checkManifest(moved, all)).toEqual([]);
  });

  it.each([
    ["https://cellwright.example.org", "https://cellwright.example.org"],
    ["https://cellwright.example.org/", "https://cellwright.example.org"],
    ["HTTPS://Cellwright.example.org:443", "https://cellwright.example.org"],
  ])("%s is taken", (text, origin) => {
    expect(parseOrigin(text)).toBe(origin);
  });

  it.each([
    ["http://cellwright.example.org", /https/],
    ["cellwright.example.org", /not an address/],
    ["https://cellwright.example.org/add-in", /without path/],
  ])("%s is refused", (text, message) => {
    expect(() => parseOrigin(text)).toThrow(message);
  });

  it("a release has another Id and name, and keeps the namespace", async () => {
    const folder = mkdtempSync(join(tmpdir(), "cellwright-"));
    folders.push(folder);
    const to = pathToFileURL(`${folder}/`);
    const development = await writeManifest({ to, files: all });
    const release = await writeManifest({
      origin: "https://cellwright.example.org",
      release: true,
      to,
      files: all,
    });
    expect(release).toMatchObject({ name: "Cellwright" });
    expect(release.id).not.toBe(development.id);
    const text = readFileSync(release.path, "utf8");
    expect(text).toContain('DefaultValue="BRAILLE"');
    expect(text).not.toContain("localhost");
  });
});
