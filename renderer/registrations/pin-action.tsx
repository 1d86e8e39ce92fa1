import { useSection, useStore } from "../state/use-store.tsx";
import type { DeskSection } from "../state/work.ts";
import { Act } from "../words/action.tsx";

/** What the button for pinning says: for which bars, or for which section. */
function pinWords({ bars, name }: DeskSection): string {
  if (bars !== null) return `Pin for bars ${bars}`;
  return name === null ? "Pin it" : `Pin for ${name}`;
}

/** Settles for what is drawn: plans leave it as it is. Then it goes on to the piece. */
export function PinAction() {
  const store = useStore();
  const section = useSection();
  if (!section.registration) return null;
  const pin = (): void => {
    store.act(`pinning ${section.name ?? "the registration"}`, (draft) => {
      const own = draft.piece.sections[draft.at];
      if (own) own.kept = true;
    });
    store.turnTo("piece");
  };
  return <Act onClick={pin}>{section.kept ? "To the piece" : pinWords(section)}</Act>;
}
