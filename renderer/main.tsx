import "@fontsource-variable/source-serif-4/opsz.css";
import "@fontsource-variable/source-serif-4/opsz-italic.css";
import "@fontsource-variable/source-sans-3/wght.css";
import "@fontsource-variable/source-sans-3/wght-italic.css";
import "./look/look.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App, loadPages } from "./app.tsx";
import { findHost } from "./host/find-host.ts";
import { keepingAtSight } from "./state/at-sight.ts";
import { Autosave } from "./state/autosave.ts";
import { openPlace } from "./state/opening.ts";
import { placeFromText, placeText } from "./state/place.ts";
import { Store } from "./state/store.ts";
import { StoreProvider } from "./state/use-store.tsx";

const store = new Store(findHost());
const autosave = new Autosave(store);
autosave.start();
// What was drawn a moment ago is on its way when the window is left.
window.addEventListener("pagehide", () => void autosave.flush());
const place = placeFromText(location.hash);
// Who comes back to another page than the first waits for it once, and not for an empty one before.
await Promise.all([openPlace(store, place), place.page === "first" ? null : loadPages()]);

const keep = keepingAtSight(store);
// The address says where the person is, so that a reload comes back there.
store.subscribe(() => {
  const { page, organFile, pieceFile, history } = store.desk();
  keep();
  const text = placeText({
    page,
    organ: organFile?.id ?? null,
    piece: pieceFile?.id ?? null,
    at: history.value.at,
  });
  if (`#${text}` !== location.hash) window.history.replaceState(null, "", `#${text}`);
});

const book = document.getElementById("book");
if (!book) throw new Error("The page has no place for the book.");
createRoot(book).render(
  <StrictMode>
    <StoreProvider store={store}>
      <App />
    </StoreProvider>
  </StrictMode>,
);
// The first page stands before the others are asked for, and these are there before anybody has read it.
requestAnimationFrame(() => setTimeout(() => void loadPages()));
