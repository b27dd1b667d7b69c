/** What the command tells the script that called it. */
export const EXIT = {
  pass: 0,
  fails: 1,
  unread: 2,
  /** As a shell tells of a command whose reader went away: 128 + SIGPIPE. */
  brokenPipe: 141,
} as const;
