import { contextBridge, type IpcRendererEvent, ipcRenderer } from "electron";
import { HOST_GLOBAL } from "../shared-model/host-api.ts";
import { bridgedHost } from "./desktop/bridged-host.ts";

contextBridge.exposeInMainWorld(
  HOST_GLOBAL,
  bridgedHost({
    invoke: (channel, ...words) => ipcRenderer.invoke(channel, ...words),
    listen: (channel, listener) => {
      const heard = (_event: IpcRendererEvent, ...words: unknown[]): void => listener(...words);
      ipcRenderer.on(channel, heard);
      return () => {
        ipcRenderer.off(channel, heard);
      };
    },
  }),
);
