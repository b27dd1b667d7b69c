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
    pool.exec<typeof finishAll>("finishAll", [tasks.map(alone), order]);
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

async function finishAll(tasks: readonly Task[], order: Order): Promise<(Finished | Failure)[]> {
  const done: (Finished | Failure)[] = [];
  try {
    for (const task of tasks) done.push(await finish(task, order));
  } catch (error) {
    done.push({ failure: error instanceof Error ? error.message : String(error) });
  }
  return done;
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
