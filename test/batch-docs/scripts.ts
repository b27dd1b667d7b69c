/** The scripts that the guide to many designs speaks of. */
export const SCRIPTS = ["docs/scripts/workers.mjs", "docs/scripts/parquet.mjs"] as const;
