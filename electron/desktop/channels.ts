/** Channels between the shell and its windows. */
export const ASK = "registrant:ask";
/** Changes of documents, told to a window. */
export const TELL = "registrant:tell";
/** Commands of the menu, told to a window. */
export const MENU = "registrant:menu";
