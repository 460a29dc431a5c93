import { standaloneSvg } from "../../src/charts/standalone-svg";
import { make } from "./markup";

/** Whatever paper the printer has. */
export const ANY_PAPER = "auto";

/** Pictures as pages for the printer, one a page: black on white, as wide as the paper allows. */
export const makePicturePages = (svgs: readonly string[]): readonly HTMLElement[] =>
  svgs.map((svg) => {
    const parsed = new DOMParser().parseFromString(standaloneSvg(svg), "image/svg+xml").documentElement;
    const picture = document.importNode(parsed, true) as Element as SVGElement;
    Object.assign(picture.style, { display: "block", inlineSize: "100%", blockSize: "auto" });
    picture.style.maxBlockSize = "calc(100vh - 25mm)";
    const page = make("div", { class: "picture-page" }, picture);
    page.style.padding = "12mm";
    return page;
  });
