import { FILE_KINDS, FILE_VERSION, type FileKind, kindInWords, versionLine } from "./file-kind.ts";
import type { Reporter } from "./reporter.ts";
import { valueInWords } from "./shape.ts";
import { type Located, openYaml } from "./yaml-text.ts";

/** A file whose first line fits its kind; `root` is `null` when there is nothing to read on. */
export interface OpenedFile {
  readonly root: Located | null;
  readonly reporter: Reporter;
}

/**
 * Opens a file of the kind wanted and holds its `registrant:` line against it. A file of another kind or of a newer form is
 * not read on, since everything in it would seem wrong.
 */
export function openFile(text: string, fileName: string, kind: FileKind): OpenedFile {
  const { root, reporter } = openYaml(text, fileName);
  const closed: OpenedFile = { root: null, reporter };
  if (!root) return closed;
  const wanted = versionLine(kind);
  const sort = kindInWords(kind);
  if (!root.entries) {
    reporter.report({ code: "not-keys", of: `${sort.charAt(0).toUpperCase()}${sort.slice(1)}` }, root.start);
    return closed;
  }
  const head = root.entries.get("registrant");
  if (!head) {
    reporter.report({ code: "version-missing", kind, wanted }, root.start);
    return closed;
  }
  const found = typeof head.node.value === "string" ? head.node.value : valueInWords(head.node.value);
  if (found === wanted) return { root, reporter };
  const [foundKind, version] = found.split("/");
  const newer = foundKind === kind && /^\d{1,6}$/.test(version ?? "") && Number(version) > FILE_VERSION;
  reporter.report(
    newer ? { code: "version-newer", found, wanted } : { code: "version-other", found, kind, wanted },
    head.node.start,
  );
  // A misspelt line is no reason to hide the rest; a file that names another kind of ours is.
  return newer || FILE_KINDS.some((each) => each === foundKind && each !== kind) ? closed : { root, reporter };
}
