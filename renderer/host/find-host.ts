import { HOST_GLOBAL, type Host } from "../../shared-model/host-api.ts";
import { browserClient } from "./browser-client.ts";
import { thisPage } from "./this-page.ts";

/** The host of this window: the desktop shell's where it has put one, else the server that this page came from. */
export function findHost(): Host {
  const desktop = (globalThis as Record<string, unknown>)[HOST_GLOBAL] as Host | undefined;
  return desktop ?? browserClient({ base: new URL(".", window.location.href).href, page: thisPage });
}
