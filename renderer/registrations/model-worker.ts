/** Begins the worker that searches an organ: for proposals, and for ways to improve what is drawn. */
export const modelWorker = (): Worker => new Worker(new URL("./reckon-worker.ts", import.meta.url), { type: "module" });
