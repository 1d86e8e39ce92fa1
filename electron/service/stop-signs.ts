/** Signals by which a process is told to stop and may still tidy up. */
export const STOP_SIGNS = ["SIGINT", "SIGTERM", "SIGHUP"] as const;
