/** For the mutants of the command: it is built with all of them in it, and a child is told which one is alive. */
import { beforeEach } from "vitest";

const NAME = "__STRYKER_ACTIVE_MUTANT__";

beforeEach(() => {
  const { __stryker__: known } = globalThis as { __stryker__?: { activeMutant?: string } };
  if (known?.activeMutant === undefined) delete process.env[NAME];
  else process.env[NAME] = known.activeMutant;
});
