/** Fonts with the Unicode braille patterns, the first free for everybody, the others part of Windows, macOS and Linux. */
export const BRAILLE_FONTS = [
  "Noto Sans Symbols 2",
  "Segoe UI Symbol",
  "Apple Braille",
  "DejaVu Sans",
] as const;

/** What to do where the first font is not installed. */
export const FONT_ADVICE = `The braille is set in the font ${BRAILLE_FONTS[0]}. If it shows as empty boxes, select it and choose another font with braille: ${BRAILLE_FONTS.slice(1).join(", ")}.`;
