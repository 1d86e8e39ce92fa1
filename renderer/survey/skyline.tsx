import type { Level, SurveyedTexture } from "../../shared-model/carry/survey.ts";

const STEP = 9;
const TALL = 20;
const HEIGHT: Readonly<Record<Level, number>> = { well: TALL, compromise: 9, "not-possible": 2 };

/**
 * The textures of a school as a row of strokes: tall where the organ serves well, half as tall with a compromise, a dot on
 * the line where it is not possible; a hair where nothing is known yet. The numbers stand beside it in words.
 */
export function Skyline({ textures, of }: { textures: readonly SurveyedTexture[]; of: number }) {
  return (
    <svg className="skyline" width={of * STEP} height={TALL + 2} aria-hidden="true">
      {Array.from({ length: of }, (_, at) => at).map((at) => {
        const level = textures[at]?.level;
        const height = level ? HEIGHT[level] : 1;
        return (
          <rect
            key={at}
            x={at * STEP}
            y={TALL - height + 1}
            width={level ? 5 : 2}
            height={height}
            className={level ?? "open"}
          />
        );
      })}
    </svg>
  );
}
