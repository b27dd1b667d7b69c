// Cuts a sweep into ranges, one for each worker thread, and holds the columns against a sweep done in one go.
// The neck is invented.
import { isMainThread, Worker, workerData } from "node:worker_threads";
import { sweep } from "marker-depth";

const design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [
    { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
    { frets: [12], diameter: 6.35, arrangement: "double" },
  ],
};
const axes = {
  radius: Array.from({ length: 30 }, (_, i) => 180 + 10 * i),
  "board.thickness": Array.from({ length: 30 }, (_, i) => 3 + 0.1 * i),
  "markers.1.diameter": [4, 5, 6, 7, 8],
};
const size = 30 * 30 * 5;
const threads = 3;
const kinds = {
  min: Float64Array,
  max: Float64Array,
  minHole: Int32Array,
  maxHole: Int32Array,
  settings: Int32Array,
};

if (isMainThread) await main();
else work(workerData);

/** Each worker writes its rows where they belong, in memory that all threads share: nothing is copied. */
async function main() {
  const shared = Object.fromEntries(
    Object.entries(kinds).map(([name, kind]) => [
      name,
      new SharedArrayBuffer(size * kind.BYTES_PER_ELEMENT),
    ]),
  );
  await Promise.all(
    Array.from({ length: threads }, (_, k) => {
      const [from, to] = [k, k + 1].map((part) => Math.floor((size * part) / threads));
      return finished(new Worker(new URL(import.meta.url), { workerData: { from, to, shared } }));
    }),
  );
  const whole = sweep(design, axes);
  for (const [name, buffer] of Object.entries(shared)) {
    const { buffer: expected } = whole[name];
    const isSame = Buffer.compare(Buffer.from(buffer), Buffer.from(expected)) === 0;
    console.log(`${name}: ${buffer.byteLength} bytes, ${isSame ? "the same" : "DIFFERENT"}`);
  }
}

function work({ from, to, shared }) {
  const out = Object.fromEntries(
    Object.entries(kinds).map(([name, kind]) => {
      return [name, new kind(shared[name], from * kind.BYTES_PER_ELEMENT, to - from)];
    }),
  );
  sweep(design, axes, { from, to, out });
}

function finished(worker) {
  return new Promise((resolve, reject) => {
    worker.on("error", reject);
    worker.on("exit", (code) => (code === 0 ? resolve() : reject(new Error(`worker: ${code}`))));
  });
}
