import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The files under a folder that hold any of these texts, in UTF-8 or in UTF-16 as browsers store them. */
export function filesHolding(folder: string, texts: readonly string[]): readonly string[] {
  const needles = texts.flatMap((text) => [
    Buffer.from(text, 'utf8'),
    Buffer.from(text, 'utf16le'),
  ]);
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((file) => {
      const bytes = readFileSync(file);
      return needles.some((needle) => bytes.includes(needle));
    });
}
