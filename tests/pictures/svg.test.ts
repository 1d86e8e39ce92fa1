import { expect, test } from "vitest";
import { curve, rule, words } from "../../shared-model/pictures/shapes.ts";
import { svgOf } from "../../shared-model/pictures/svg.ts";

test("unbroken lines of one look that follow each other are one element; what parts them, or is dashed, stays", () => {
  const look = 'fill="none" stroke="#111" stroke-width="1" stroke-linejoin="round"';
  const drawn = [
    curve(
      [
        [0, 0],
        [1, 1.25],
      ],
      1,
    ),
    curve(
      [
        [2, 0],
        [3, 1],
        [4, 0],
      ],
      1,
    ),
    words(0, 9, "8"),
    curve(
      [
        [5, 0],
        [6, 1],
      ],
      1,
    ),
    curve(
      [
        [7, 0],
        [8, 1],
      ],
      1,
      { dashes: [2, 3] },
    ),
    curve(
      [
        [9, 0],
        [9, 1],
      ],
      1,
      { dashes: [2, 3] },
    ),
  ];
  expect(svgOf(drawn).split("\n")).toEqual([
    `<path d="M0,0 1,1.3M2,0 3,1 4,0" ${look}/>`,
    '<text x="0" y="9" font-size="15" text-anchor="start">8</text>',
    `<polyline points="5,0 6,1" ${look}/>`,
    `<polyline points="7,0 8,1" ${look} stroke-dasharray="2 3"/>`,
    `<polyline points="9,0 9,1" ${look} stroke-dasharray="2 3"/>`,
  ]);
  expect(svgOf([rule(0, 0, 1, 0, 1), rule(0, 1, 1, 1, 2)]).split("\n")).toHaveLength(2);
});
