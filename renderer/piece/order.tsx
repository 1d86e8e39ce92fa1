import {
  type Announcements,
  closestCenter,
  DndContext,
  type DragEndEvent,
  KeyboardSensor,
  PointerSensor,
  type UniqueIdentifier,
  useSensor,
  useSensors,
} from "@dnd-kit/core";
import {
  SortableContext,
  sortableKeyboardCoordinates,
  useSortable,
  verticalListSortingStrategy,
} from "@dnd-kit/sortable";
import type { Draft } from "immer";
import type { ReactNode } from "react";
import { useStore } from "../state/use-store.tsx";
import type { DeskSection, Work } from "../state/work.ts";

/** Puts a section in another place; the one on the desk stays on the desk. */
export function moveSection({ piece, at }: Draft<Work>, from: number, to: number): number {
  const open = piece.sections[at]?.id;
  const [own] = piece.sections.splice(from, 1);
  if (own) piece.sections.splice(to, 0, own);
  return Math.max(
    0,
    piece.sections.findIndex((each) => each.id === open),
  );
}

/** A section in a sentence. */
export const nameOf = (section: DeskSection, index: number): string => section.name ?? `section ${index + 1}`;

const HOW =
  "Press the space bar to take it up, the arrow keys to move it up and down, the space bar to put it down, Escape to leave it where it was.";

interface OrderProps {
  readonly sections: readonly DeskSection[];
  readonly children: ReactNode;
}

/** Sections that are put in order by dragging them, or with the keys from their numbers. */
export function Order({ sections, children }: OrderProps) {
  const store = useStore();
  const sensors = useSensors(
    // A click that trembles is no drag.
    useSensor(PointerSensor, { activationConstraint: { distance: 5 } }),
    useSensor(KeyboardSensor, { coordinateGetter: sortableKeyboardCoordinates }),
  );
  const placeOf = (id: UniqueIdentifier | undefined): number => sections.findIndex((each) => each.id === id);
  const words = (id: UniqueIdentifier): string => {
    const at = placeOf(id);
    const section = sections[at];
    return section ? nameOf(section, at) : "The section";
  };
  const announcements: Announcements = {
    onDragStart: ({ active }) => `${words(active.id)} is taken up.`,
    onDragOver: ({ active, over }) =>
      over ? `${words(active.id)} would be number ${placeOf(over.id) + 1} of ${sections.length}.` : undefined,
    onDragEnd: ({ active, over }) =>
      over ? `${words(active.id)} is number ${placeOf(over.id) + 1} of ${sections.length}.` : undefined,
    onDragCancel: ({ active }) => `${words(active.id)} stays where it was.`,
  };
  const end = ({ active, over }: DragEndEvent): void => {
    const [from, to] = [placeOf(active.id), placeOf(over?.id)];
    if (from < 0 || to < 0 || from === to) return;
    store.act(`moving ${words(active.id)}`, (draft) => {
      draft.at = moveSection(draft, from, to);
    });
  };
  return (
    <DndContext
      sensors={sensors}
      collisionDetection={closestCenter}
      onDragEnd={end}
      accessibility={{ announcements, screenReaderInstructions: { draggable: HOW } }}
    >
      <SortableContext items={sections.map((each) => each.id)} strategy={verticalListSortingStrategy}>
        <ol className="score">{children}</ol>
      </SortableContext>
    </DndContext>
  );
}

interface OrderedProps {
  readonly id: string;
  readonly index: number;
  readonly who: string;
  readonly isCurrent: boolean;
  /** What stands in the row, given the number by which it is taken up. */
  readonly children: (number: ReactNode) => ReactNode;
}

/** One of them. */
export function Ordered({ id, index, who, isCurrent, children }: OrderedProps) {
  const { attributes, listeners, setNodeRef, setActivatorNodeRef, transform, transition, isDragging } = useSortable({
    id,
  });
  const number = (
    <button
      type="button"
      ref={setActivatorNodeRef}
      className="no grip"
      aria-label={`${index + 1}, move ${who}`}
      aria-describedby={attributes["aria-describedby"]}
      {...listeners}
    >
      {index + 1}
      <svg viewBox="0 0 8 14" aria-hidden="true">
        <path
          d="M2 2v.01M6 2v.01M2 7v.01M6 7v.01M2 12v.01M6 12v.01"
          strokeWidth="2"
          strokeLinecap="round"
          stroke="currentColor"
        />
      </svg>
    </button>
  );
  return (
    <li
      ref={setNodeRef}
      aria-current={isCurrent ? "true" : undefined}
      data-taken={isDragging}
      style={{ transform: transform ? `translate3d(0, ${Math.round(transform.y)}px, 0)` : undefined, transition }}
    >
      {children(number)}
    </li>
  );
}
