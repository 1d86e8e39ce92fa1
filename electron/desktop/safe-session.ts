import { protocol, type Session } from "electron";
import { rendererFile, STRICT_HEADERS } from "../service/renderer-files.ts";
import { appPath, SCHEME } from "./app-address.ts";

/** Makes the app's scheme an origin like that of a secure site. To be called before Electron is ready. */
export function claimScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

/** Whether a page may load an address at all: its own files, and what it has made itself. */
const mayLoad = (address: string): boolean => appPath(address) !== null || /^(?:blob|data|devtools):/.test(address);

/** Shuts a session: no permission, no device, no network; the app's own address leads to the built renderer. */
export function shutSession(session: Session, renderer: string): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, answer) => answer(null));
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !mayLoad(url) }));
  session.on("will-download", (event) => event.preventDefault());
  session.protocol.handle(SCHEME, async ({ url, method }) => {
    const path = appPath(url);
    const file = path === null || method !== "GET" ? null : await rendererFile(renderer, path);
    if (!file) return new Response("There is nothing here.\n", { status: 404, headers: STRICT_HEADERS });
    const headers = { ...STRICT_HEADERS, "Content-Type": file.kind };
    return new Response(new Uint8Array(file.bytes), { headers });
  });
}
