// XML as a small tree of elements, for the manifest's gate.
import { SaxesParser } from "saxes";

/**
 * Parses XML into elements `{ name, attributes, children, text }`, names without prefix, attributes with it.
 * @returns {{ root?: object, fault?: string }}
 */
export function parseXml(xml) {
  const parser = new SaxesParser({ xmlns: false });
  const open = [];
  let root;
  let fault;
  parser.on("error", (error) => (fault ??= error.message));
  parser.on("opentag", ({ name, attributes }) => {
    const element = {
      name: name.slice(name.indexOf(":") + 1),
      attributes: { ...attributes },
      children: [],
      text: "",
    };
    open.at(-1)?.children.push(element);
    root ??= element;
    open.push(element);
  });
  parser.on("closetag", () => void open.pop());
  parser.on("text", (text) => {
    const element = open.at(-1);
    if (element) element.text += text;
  });
  parser.write(xml).close();
  return fault === undefined && root ? { root } : { fault: fault ?? "there is no element" };
}
