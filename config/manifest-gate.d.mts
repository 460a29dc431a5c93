export interface BuiltFiles {
  has(path: string): boolean;
  text(path: string): string;
}
export function checkManifest(xml: string, files?: BuiltFiles): string[];
