import type { z } from "zod";
import type { Metronome } from "../music/piece.ts";
import type { Dynamic, Tempo, Tradition } from "../music/texture.ts";
import { metronomeOf, tempoAt } from "./music-entry.ts";
import { pieceHeadSchema, pieceSectionSchema } from "./piece-schema.ts";
import type { Located } from "./yaml-text.ts";

/** What the head of a piece or one of its sections says itself; `null` for what it leaves to another. */
export interface SaidMusic {
  readonly tradition: Tradition | null;
  readonly tempo: Tempo | null;
  /** Where the tempo is counted. */
  readonly metronome: Metronome | null;
  readonly beatsInBar: number | null;
}

/** What a section says itself. */
export interface SaidSection extends SaidMusic {
  readonly dynamic: Dynamic | null;
  /** Whether its bars were played before. */
  readonly again: boolean;
}

/** Who says what in a piece file: the head what holds for all, each section what holds for itself. */
export interface SaidPiece {
  readonly head: SaidMusic;
  readonly sections: readonly SaidSection[];
}

type Read = Pick<z.infer<typeof pieceSectionSchema>, "tradition" | "tempo" | "beats-in-bar">;

function musicSaid({ tradition, tempo, "beats-in-bar": beats }: Read): SaidMusic {
  const counted = typeof tempo === "object" ? metronomeOf(tempo) : null;
  return {
    tradition: tradition ?? null,
    tempo: typeof tempo === "string" ? tempo : counted && tempoAt(counted.bpm),
    metronome: counted,
    beatsInBar: beats ?? null,
  };
}

/** What a piece file without errors says where: which of its sections speak for themselves. */
export function saidIn(root: Located): SaidPiece {
  const nodes = root.entries?.get("sections")?.node.items ?? [];
  return {
    head: musicSaid(pieceHeadSchema.parse(root.value)),
    sections: nodes.map((node) => {
      const read = pieceSectionSchema.parse(node.value);
      return { ...musicSaid(read), dynamic: read.dynamic ?? null, again: read.again ?? false };
    }),
  };
}
