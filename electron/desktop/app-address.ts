/** The app has a scheme of its own: pages from files may do more than they should, and have no headers. */
export const SCHEME = "registrant";
const HOST = "app";

/** Address of the app's page. */
export const APP_PAGE = `${SCHEME}://${HOST}/`;

/**
 * The path behind the app's own origin, without its leading stroke and query; `null` for any other address, such as one with
 * a port, a name or a password in it.
 */
export function appPath(address: string): string | null {
  if (!address.startsWith(APP_PAGE)) return null;
  return address.slice(APP_PAGE.length).replace(/[?#].*$/s, "");
}

/** Whether an address is the app's own page, whatever stands behind `#`. */
export const isAppPage = (address: string): boolean => ["", "index.html"].includes(appPath(address) ?? "elsewhere");
