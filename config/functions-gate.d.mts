export function checkFunctions(script: string, metadata: string): string[];
