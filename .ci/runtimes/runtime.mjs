/** What this runs on, as it says itself. */
export function runtime() {
  if (globalThis.Deno?.version) return `deno ${Deno.version.deno}`;
  if (globalThis.Bun?.version) return `bun ${Bun.version}`;
  if (globalThis.process?.version) return `node ${process.version}`;
  return `browser ${navigator.userAgent}`;
}
