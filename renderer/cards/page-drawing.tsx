import type { Mark, Page, SignMark, TextMark } from "../../shared-model/cards/paper/page.ts";
import { type Face, POINT } from "../../shared-model/cards/paper/type.ts";

const SERIF = '"Source Serif 4 Variable", Georgia, serif';
const SANS = '"Source Sans 3 Variable", sans-serif';
const FONT: Readonly<Record<Face, { family: string; weight: number; style: "normal" | "italic" }>> = {
  serif: { family: SERIF, weight: 400, style: "normal" },
  "serif-bold": { family: SERIF, weight: 600, style: "normal" },
  sans: { family: SANS, weight: 400, style: "normal" },
  "sans-bold": { family: SANS, weight: 600, style: "normal" },
  dynamic: { family: SERIF, weight: 700, style: "italic" },
};

const textOf = (page: Page): string =>
  page.blocks
    .map((block) =>
      block.marks
        .filter((mark): mark is TextMark => mark.kind === "text")
        .map((mark) => mark.text)
        .join(" "),
    )
    .filter((text) => text !== "")
    .join(". ");

/** A printed page as it will lie on the desk, at its true size where the window is wide enough; read out as its words. */
export function PageDrawing({ page, name }: { page: Page; name: string }) {
  const marks = [...page.ornaments, ...page.blocks.flatMap((block) => block.marks)];
  return (
    <svg
      className="sheet"
      width={`${page.width}mm`}
      viewBox={`0 0 ${page.width} ${page.height}`}
      role="img"
      aria-label={`${name}: ${textOf(page)}`}
    >
      <rect width={page.width} height={page.height} fill="#fff" />
      {marks.map((mark) => (
        <MarkDrawing key={JSON.stringify(mark)} mark={mark} />
      ))}
    </svg>
  );
}

function MarkDrawing({ mark }: { mark: Mark }) {
  switch (mark.kind) {
    case "text":
      return <TextDrawing mark={mark} />;
    case "rule":
      return <rect x={mark.x} y={mark.y} width={mark.width} height={mark.height} fill="#000" />;
    case "frame":
      return (
        <rect
          x={mark.x}
          y={mark.y}
          width={mark.width}
          height={mark.height}
          rx={mark.round}
          fill={mark.filled ? "#000" : "none"}
          stroke="#000"
          strokeWidth={mark.filled ? 0 : 0.3}
        />
      );
    case "sign":
      return <SignDrawing mark={mark} />;
    case "line":
      return (
        <polyline
          points={mark.points.map((point) => point.join(",")).join(" ")}
          fill="none"
          stroke="#000"
          strokeWidth={mark.weight}
          strokeDasharray={mark.dashes?.join(" ")}
        />
      );
    case "area":
      return (
        <polygon
          points={mark.points.map((point) => point.join(",")).join(" ")}
          fill={mark.fill === "black" ? "#000" : "#fff"}
          stroke="#000"
          strokeWidth={mark.weight}
        />
      );
  }
}

function TextDrawing({ mark }: { mark: TextMark }) {
  const { family, weight, style } = FONT[mark.face];
  return (
    <text
      x={mark.x}
      y={mark.y}
      fontSize={mark.size * POINT}
      fontFamily={family}
      fontWeight={weight}
      fontStyle={style}
      fill={mark.reversed ? "#fff" : "#000"}
      // The page was set with the faces of the printer; the screen's own follow their measure.
      textLength={mark.width > 0 && mark.text.trim().length > 1 ? mark.width : undefined}
      lengthAdjust="spacingAndGlyphs"
      className={mark.fraction ? "fraction" : undefined}
      xmlSpace="preserve"
    >
      {mark.fraction ? mark.text.replace("/", "⁄") : mark.text}
    </text>
  );
}

const HALVES: Readonly<Record<SignMark["sign"], (r: number) => string>> = {
  right: (r) => `M0 ${-r}A${r} ${r} 0 0 1 0 ${r}Z`,
  left: (r) => `M0 ${-r}A${r} ${r} 0 0 0 0 ${r}Z`,
  both: (r) => `M${-r} 0A${r} ${r} 0 0 1 ${r} 0Z`,
  feet: (r) => `M${-r} 0A${r} ${r} 0 0 0 ${r} 0Z`,
};

function SignDrawing({ mark }: { mark: SignMark }) {
  const [radius, line] = [mark.size / 2, mark.size * 0.09];
  const inner = radius - line / 2;
  return (
    <g transform={`translate(${mark.x + radius} ${mark.y + radius})`}>
      <circle r={inner} fill="none" stroke="#000" strokeWidth={line} />
      <path d={HALVES[mark.sign](inner)} fill="#000" />
    </g>
  );
}
