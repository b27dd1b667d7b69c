// Columns of a sweep become an Apache Arrow table, that a Parquet file, and DuckDB queries it. The neck is invented.
// Needs apache-arrow, parquet-wasm and @duckdb/node-api, which marker-depth itself does not.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { tableFromArrays, tableToIPC } from "apache-arrow";
import { sweep } from "marker-depth";
import * as parquet from "parquet-wasm/node";

const design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [
    { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
    { frets: [12], diameter: 6.35, arrangement: "double" },
  ],
};
const rows = sweep(design, {
  radius: [184, 254, 305, 406],
  "board.thickness": Array.from({ length: 20 }, (_, i) => (30 + i) / 10),
  "markers.1.diameter": [5, 6, 7],
});

const folder = mkdtempSync(join(tmpdir(), "sweep-"));
try {
  const file = join(folder, "sweep.parquet");
  writeFileSync(file, parquetOf(arrowOf(rows)));
  await query(file);
} finally {
  rmSync(folder, { recursive: true });
}

/** The columns as they are, and one more for the values of each axis. */
function arrowOf({ size, axes, valuesAt, min, max, minHole, maxHole, settings }) {
  const values = axes.map(() => new Float64Array(size));
  for (let i = 0; i < size; i++) {
    valuesAt(i).forEach((value, axis) => {
      values[axis][i] = value;
    });
  }
  const named = Object.fromEntries(axes.map(({ path }, axis) => [path, values[axis]]));
  return tableFromArrays({ ...named, min, max, minHole, maxHole, settings });
}

function parquetOf(table) {
  return parquet.writeParquet(parquet.Table.fromIPCStream(tableToIPC(table, "stream")));
}

/** The thinnest of these boards on which one stop setting suits all holes. */
async function query(file) {
  const instance = await DuckDBInstance.create(":memory:");
  const connection = await instance.connect();
  const reader = await connection.runAndReadAll(
    `select radius, min("board.thickness") as thinnest, count(*) as works
     from read_parquet($file) where settings = 1 and "markers.1.diameter" = 6
     group by radius order by radius`,
    { file },
  );
  for (const { radius, thinnest, works } of reader.getRowObjects()) {
    console.log(`radius ${radius}: ${thinnest} mm or more, ${works} of 20 boards`);
  }
  connection.closeSync();
  instance.closeSync();
}
