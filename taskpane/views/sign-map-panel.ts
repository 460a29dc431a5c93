import { drawSignMap, drawSignMapPages, type SignMap } from "../../src/charts/sign-map";
import { putTableInSheet } from "./chart-in-sheet";
import { make } from "./markup";
import { PictureTools, type PictureServices } from "./picture-tools";

/** Pictures are drawn no narrower and no wider than this many pixels. */
const NARROWEST = 240;
const WIDEST = 860;
/** A page of A4 upright, less its margins: six boxes stand beside each other. */
const PAGE_WIDTH = 760;
const PAGE_RATIO = 1.4;
/** A font that has every braille cell; programs without it show their own. */
const FONTS = { Braille: "Noto Sans Symbols 2" };

/** The look of the panel. */
export const SIGN_MAP_STYLES = `
.sign-map svg { display: block; max-inline-size: 100%; block-size: auto; }
`;

/** The signs in the list as a picture: cells large, print beneath, states by mark and word; to print, save and keep. */
export class SignMapPanel {
  readonly #picture = make("div", { class: "sign-map" });
  readonly #tools = new PictureTools();
  readonly element = make("details", {}, make("summary", {}, "Picture of the signs listed"));
  #map: SignMap | undefined;
  #drawn = "";

  constructor() {
    this.element.append(this.#tools.element, this.#picture);
    this.element.addEventListener("toggle", () => {
      this.#draw();
    });
  }

  /** @param map - undefined where no sign is listed */
  show(map: SignMap | undefined, services: PictureServices): void {
    this.#map = map;
    this.#tools.services = services;
    this.element.hidden = map === undefined;
    this.#draw();
  }

  /** Drawn where it is unfolded, and only what changed. */
  #draw(): void {
    const map = this.#map;
    if (!this.element.open || map === undefined) {
      this.#picture.replaceChildren();
      this.#drawn = "";
      this.#tools.subject = undefined;
      return;
    }
    const width = Math.max(NARROWEST, Math.min(WIDEST, Math.floor(this.element.clientWidth)));
    const picture = drawSignMap(map, { width });
    if (picture.svg === this.#drawn) return;
    this.#drawn = picture.svg;
    const parsed = new DOMParser().parseFromString(picture.svg, "image/svg+xml").documentElement;
    this.#picture.replaceChildren(document.importNode(parsed, true));
    this.#tools.subject = {
      picture: drawSignMap(map, { width: WIDEST }),
      charts: [],
      fileName: "signs",
      pages: () => drawSignMapPages(map, { width: PAGE_WIDTH }, PAGE_RATIO).map(({ svg }) => svg),
      put: (sheet) => putTableInSheet(sheet, picture, "Signs", FONTS),
    };
  }
}
