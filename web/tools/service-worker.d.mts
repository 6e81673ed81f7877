/** Writes sw.js into a built folder: what it keeps, by hash, and the version made of that. */
export function writeServiceWorker(folder: string): { version: string; files: string[][] };
