import type { BuiltFiles } from "./manifest-gate.mjs";

export function parseOrigin(text: string): string;
export function moveOrigin(xml: string, origin: string): string;
export const builtFiles: BuiltFiles;
export function writeManifest(options?: {
  readonly origin?: string;
  readonly release?: boolean;
  readonly to?: URL;
  readonly files?: BuiltFiles;
}): Promise<{ path: string; id: string; name: string }>;
