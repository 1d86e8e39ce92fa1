import type { MenuItemConstructorOptions } from "electron";
import type { DocumentId, MenuCommand } from "../../shared-model/host-api.ts";

/** What the menu is made from and what it does. */
export interface MenuParts {
  readonly mac: boolean;
  readonly recent: readonly { readonly id: DocumentId; readonly name: string }[];
  readonly command: (command: MenuCommand, document: DocumentId | null) => void;
  readonly forgetRecent: () => void;
}

/** Menus show `&` as a mark of a shortcut. */
const shown = (name: string): string => name.replace(/&/g, "&&");

const SEPARATOR: MenuItemConstructorOptions = { type: "separator" };

function recentMenu({ recent, command, forgetRecent }: MenuParts): MenuItemConstructorOptions {
  const organs = recent.map(({ id, name }) => ({ label: shown(name), click: () => command("open-document", id) }));
  const submenu = [...organs, SEPARATOR, { label: "Forget these", click: forgetRecent }];
  return { label: "Recent organs", enabled: organs.length > 0, submenu };
}

/** The native menu. Commands that change what is on the page go to the page, so that they are the same in every host. */
export function menuTemplate(parts: MenuParts): MenuItemConstructorOptions[] {
  const { mac, command } = parts;
  const item = (label: string, what: MenuCommand, accelerator?: string): MenuItemConstructorOptions => ({
    label,
    ...(accelerator === undefined ? {} : { accelerator }),
    click: () => command(what, null),
  });
  const about = item("About Registrant", "about");
  const appMenu: MenuItemConstructorOptions = {
    label: "Registrant",
    submenu: [
      about,
      SEPARATOR,
      { role: "hide" },
      { role: "hideOthers" },
      { role: "unhide" },
      SEPARATOR,
      { role: "quit" },
    ],
  };
  const file: MenuItemConstructorOptions = {
    label: "&File",
    submenu: [
      item("New organ", "new-organ", "CmdOrCtrl+N"),
      item("Choose library folder …", "open-folder", "CmdOrCtrl+O"),
      recentMenu(parts),
      SEPARATOR,
      item("Print cue cards …", "print-cards", "CmdOrCtrl+P"),
      SEPARATOR,
      mac ? { role: "close" } : { role: "quit" },
    ],
  };
  const edit: MenuItemConstructorOptions = {
    label: "&Edit",
    submenu: [
      item("Undo", "undo", "CmdOrCtrl+Z"),
      item("Redo", "redo", mac ? "Shift+Cmd+Z" : "Ctrl+Y"),
      SEPARATOR,
      { role: "cut" },
      { role: "copy" },
      { role: "paste" },
      { role: "selectAll" },
      SEPARATOR,
      item("Find …", "find", "CmdOrCtrl+F"),
    ],
  };
  const view: MenuItemConstructorOptions = {
    label: "&View",
    submenu: [
      item("Larger", "zoom-in", "CmdOrCtrl+Plus"),
      // The key of the plus sign without the shift key.
      { ...item("Larger", "zoom-in", "CmdOrCtrl+="), visible: false, acceleratorWorksWhenHidden: true },
      item("Smaller", "zoom-out", "CmdOrCtrl+-"),
      item("Usual size", "zoom-usual", "CmdOrCtrl+0"),
      SEPARATOR,
      item("Change light", "theme", "CmdOrCtrl+Shift+L"),
      { role: "togglefullscreen" },
    ],
  };
  const help: MenuItemConstructorOptions = { role: "help", label: "&Help", submenu: [about] };
  return mac ? [appMenu, file, edit, view, { role: "windowMenu" }, help] : [file, edit, view, help];
}
