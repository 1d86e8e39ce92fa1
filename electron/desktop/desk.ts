import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, extname, join } from "node:path";
import { app, type BrowserWindow, dialog, shell } from "electron";
import { realDisk } from "../library/disk.ts";
import { faultAt, HostFault } from "../library/fault.ts";
import { readBytes } from "../library/plain-file.ts";
import { putWhole } from "../library/whole-file.ts";
import type { Desk } from "../service/host-service.ts";
import { listText } from "../service/list-text.ts";

/** The dialogs of the desktop, over the window of the moment. */
export interface DesktopDesk extends Desk {
  /** Takes away what was written only to be looked at. */
  readonly clear: () => Promise<void>;
}

/** @param window the window that dialogs belong to. */
export function desktopDesk(window: () => BrowserWindow): DesktopDesk {
  const folders: string[] = [];
  return {
    chooseLibrary: async () => {
      const { canceled, filePaths } = await dialog.showOpenDialog(window(), {
        title: "Choose the folder of your organs",
        properties: ["openDirectory", "createDirectory"],
      });
      return canceled ? null : (filePaths[0] ?? null);
    },
    chooseText: async () => {
      const { canceled, filePaths } = await dialog.showOpenDialog(window(), {
        title: "Choose a stoplist",
        properties: ["openFile"],
        filters: [
          { name: "Text", extensions: ["txt", "text", "md", "csv", "yaml", "yml"] },
          { name: "All files", extensions: ["*"] },
        ],
      });
      const path = canceled ? undefined : filePaths[0];
      return path === undefined ? null : pickedText(path);
    },
    exportFile: async ({ name, bytes }) => {
      const { canceled, filePath } = await dialog.showSaveDialog(window(), {
        title: "Save",
        defaultPath: join(app.getPath("documents"), name),
        filters: [{ name: extname(name).slice(1).toUpperCase(), extensions: [extname(name).slice(1)] }],
      });
      if (canceled || !filePath) return null;
      await put(filePath, bytes);
      return { where: filePath };
    },
    showPdf: async ({ name, bytes }) => {
      // A folder of its own, which no other person of this machine may look into.
      const folder = await mkdtemp(join(tmpdir(), "registrant-"));
      folders.push(folder);
      const path = join(folder, name);
      await put(path, bytes);
      const refused = await shell.openPath(path);
      if (refused !== "") {
        throw new HostFault(
          "failed",
          `${name}: No program that shows PDFs was found. Save the file, and open it yourself.`,
        );
      }
    },
    clear: async () => {
      for (const folder of folders) await rm(folder, { recursive: true, force: true }).catch(() => {});
    },
  };
}

async function put(path: string, bytes: Uint8Array): Promise<void> {
  try {
    await putWhole(path, bytes, realDisk);
  } catch (error) {
    throw faultAt(basename(path), error);
  }
}

async function pickedText(path: string): Promise<{ name: string; text: string }> {
  const name = basename(path);
  try {
    const list = listText(await readBytes(path, name, realDisk));
    if (!list) throw new HostFault("not-text", `${name}: This is not a text file. Save the list as plain text first.`);
    return { name, text: list.text };
  } catch (error) {
    throw faultAt(name, error);
  }
}
