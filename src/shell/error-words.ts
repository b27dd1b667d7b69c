/** What an error says, in words for the one who called the command. */
import { getSystemErrorMap } from "node:util";

/** "no such file or directory" for an error of the system, without the code and the call; else its own message. */
export function errorWords(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const number = "errno" in error && typeof error.errno === "number" ? error.errno : undefined;
  return (number && getSystemErrorMap().get(number)?.[1]) || error.message;
}
