/** Texts and drawings as they are kept in this folder. `npm test -- --update` writes them anew; the difference is to be read. */
import { expect } from "vitest";

/** Holds a text against the file of that name. */
export async function golden(name: string, text: string): Promise<void> {
  await expect(text).toMatchFileSnapshot(new URL(name, import.meta.url).pathname);
}
