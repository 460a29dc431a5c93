import { standaloneSvg } from "../../src/charts/standalone-svg";
import { HostError } from "../../src/ports/sheet";

/** Pixels of a file for one of the picture: sharp when printed. */
const SHARPNESS = 2;

/** A picture as an SVG file of its own. */
export const makeSvgFile = (svg: string): Blob => new Blob([standaloneSvg(svg)], { type: "image/svg+xml" });

const loadImage = (address: string): Promise<HTMLImageElement> =>
  new Promise((resolve, reject) => {
    const image = new Image();
    image.onload = () => {
      resolve(image);
    };
    image.onerror = () => {
      reject(new HostError("This window cannot make a PNG file. Save the picture as SVG instead."));
    };
    image.src = address;
  });

/**
 * A picture as a PNG file, twice as large as on the screen.
 *
 * @throws {HostError} where the host makes none
 */
export const makePngFile = async (svg: string): Promise<Blob> => {
  const address = URL.createObjectURL(makeSvgFile(svg));
  try {
    const image = await loadImage(address);
    const canvas = document.createElement("canvas");
    canvas.width = image.naturalWidth * SHARPNESS;
    canvas.height = image.naturalHeight * SHARPNESS;
    canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
    const file = await new Promise<Blob | null>((resolve) => {
      canvas.toBlob(resolve, "image/png");
    });
    if (file === null)
      throw new HostError("This window cannot make a PNG file. Save the picture as SVG instead.");
    return file;
  } finally {
    URL.revokeObjectURL(address);
  }
};
