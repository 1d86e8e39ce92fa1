import type { ExportRequest } from "../../shared-model/host-api.ts";

/** What a page in a browser does by itself, apart so that the client can be tested without a page. */
export interface Page {
  /** Asks for a text file; `null` when the person thinks better of it. */
  readonly pickFile: () => Promise<File | null>;
  readonly download: (file: ExportRequest) => void;
  /**
   * Opens a window to be filled later: it must be asked for while the person's click still counts. `null` when the browser
   * refuses; else `to` fills it, with `null` shutting it again.
   */
  readonly openWindow: () => ((to: string | null) => void) | null;
}
