import { useSection, useStore, useWork } from "../state/use-store.tsx";
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
  const isAlone = useWork().piece.sections.length === 1;
  if (!section.registration) return null;
  const pin = (): void => {
    store.act(`pinning ${section.name ?? "the registration"}`, (draft) => {
      const own = draft.piece.sections[draft.at];
      if (own) own.pinned = true;
    });
    store.turnTo("piece");
  };
  return (
    <Act second={isAlone} onClick={pin}>
      {section.pinned ? "To the piece" : pinWords(section)}
    </Act>
  );
}

/** A piece of one section has one card: the shortest way to it leads from here. */
export function CardAction() {
  const store = useStore();
  const section = useSection();
  const { piece } = useWork();
  if (piece.sections.length > 1 || !section.registration) return null;
  return <Act onClick={() => store.turnTo("cards")}>Make its card</Act>;
}
