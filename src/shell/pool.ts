/** The same work on several cores: threads, each with this command in it. */
import { pMapIterable } from "p-map";
import workerpool from "workerpool";
import { type Finished, finish, type Order, type Task } from "./finished.js";

declare global {
  /** The browser's own, which the pool's types name. */
  interface WorkerOptions {
    readonly name?: string;
  }
}

/** How many designs go to a thread at once where each is quick. */
const MOST_TOGETHER = 64;

/** What went wrong in a thread, and stops the run. */
interface Failure {
  readonly failure: string;
}

/** Finishes the tasks in threads that run `script`, so many at a time; what they come to, in their order. */
export async function* finishInPool(
  groups: AsyncIterable<readonly Task[]>,
  order: Order,
  script: string,
): AsyncGenerator<Finished, void, undefined> {
  const { jobs } = order.options;
  const pool = workerpool.pool(script, { maxWorkers: jobs, workerType: "thread" });
  const work = (tasks: readonly Task[]) =>
    pool.exec<(tasks: readonly Task[], order: Order) => readonly (Finished | Failure)[]>(
      "finishAll",
      [tasks.map(alone), order],
    );
  try {
    // one that waits for each thread, and no more than that again which waits to be printed
    const limits = { concurrency: 2 * jobs, backpressure: 4 * jobs };
    for await (const list of pMapIterable(cut(groups, mostTogether(order)), work, limits)) {
      for (const one of list) {
        if ("failure" in one) throw new Error(one.failure);
        yield one;
      }
    }
  } finally {
    await pool.terminate(true);
  }
}

/** What a thread does, for the pool that began it. */
export function serve(): void {
  workerpool.worker({ finishAll });
}

/** What the tasks come to, as far as they go well; the text of those that are printed one after the other as one. */
async function finishAll(tasks: readonly Task[], order: Order) {
  const done: (Finished | Failure)[] = [];
  let texts: string[] = [];
  const flush = () => {
    const last = done.at(-1);
    if (last === undefined || "failure" in last) return;
    // a buffer of its own, which goes to the other thread as it is
    done[done.length - 1] = { ...last, out: new TextEncoder().encode(texts.join("")) };
    texts = [];
  };
  try {
    for (const task of tasks) {
      const one = await finish(task, order);
      // an error stands after what was printed before it
      if (one.err !== "") flush();
      texts.push(String(one.out));
      done.push({ ...one, out: "" });
    }
    flush();
  } catch (error) {
    flush();
    done.push({ failure: error instanceof Error ? error.message : String(error) });
  }
  return new workerpool.Transfer(done, done.flatMap(listBuffers));
}

function listBuffers(one: Finished | Failure): ArrayBufferLike[] {
  return "failure" in one || typeof one.out === "string" ? [] : [one.out.buffer];
}

/** To seek remedies or a repair is long work: each such design goes by itself. */
function mostTogether({ options }: Order): number {
  return options.remedies || options.repair !== undefined ? 1 : MOST_TOGETHER;
}

async function* cut(groups: AsyncIterable<readonly Task[]>, most: number) {
  for await (const tasks of groups) {
    for (let i = 0; i < tasks.length; i += most) yield tasks.slice(i, i + most);
  }
}

/** With bytes of its own: else all that they are a part of would be copied to the thread. */
function alone(task: Task): Task {
  const { origin } = task.source;
  if (origin.kind !== "bytes") return task;
  const bytes = new Uint8Array(origin.bytes);
  return { ...task, source: { ...task.source, origin: { kind: "bytes", bytes } } };
}
