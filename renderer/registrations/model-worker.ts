/** Begins the worker that searches an organ: for proposals, ways to improve what is drawn, plans and cards. */
export const modelWorker = (): Worker => new Worker(new URL("./reckon-worker.ts", import.meta.url), { type: "module" });
