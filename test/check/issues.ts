/** What a call says is wrong with a design, problem by problem. */
import { DesignError, type DesignIssue } from "../../src/index.js";

/** Every problem that a call meets; none where it meets none. Any other error is thrown on. */
export function issuesOf(call: () => unknown): readonly DesignIssue[] {
  try {
    call();
  } catch (error) {
    if (error instanceof DesignError) return error.issues;
    throw error;
  }
  return [];
}

/** The paths of every problem that a call meets. */
export function pathsOf(call: () => unknown): string[] {
  return issuesOf(call).map(({ path }) => path);
}

/** What a call says is wrong, problem by problem. */
export function messagesOf(call: () => unknown): string[] {
  return issuesOf(call).map(({ message }) => message);
}
