import type { ExportRequest } from "../../shared-model/host-api.ts";
import type { Page } from "./page.ts";

const KINDS: Readonly<Record<string, string>> = {
  pdf: "application/pdf",
  json: "application/json",
  svg: "image/svg+xml",
};

function download({ name, bytes }: ExportRequest): void {
  const kind = KINDS[name.slice(name.lastIndexOf(".") + 1).toLowerCase()] ?? "application/octet-stream";
  const address = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: kind }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads it after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

function pickFile(): Promise<File | null> {
  return new Promise((done) => {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = ".txt,.text,.md,.csv,.yaml,.yml,text/plain";
    input.addEventListener("change", () => done(input.files?.[0] ?? null));
    input.addEventListener("cancel", () => done(null));
    input.click();
  });
}

/** The page that this code runs in. */
export const thisPage: Page = {
  pickFile,
  download,
  openWindow: () => {
    const opened = window.open("about:blank");
    if (!opened) return null;
    return (to) => {
      if (to === null) opened.close();
      else opened.location.replace(to);
    };
  },
};
