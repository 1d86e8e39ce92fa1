import type { Brightness, Instrument, Room, Stop, Strength } from "../../shared-model/stoplist/instrument.ts";
import type { Edit } from "./editing.ts";

const STRENGTHS: Readonly<Record<Strength, string>> = {
  1: "very soft",
  2: "soft",
  3: "middling, like a principal 8",
  4: "strong",
  5: "very strong",
};
const BRIGHTNESSES: Readonly<Record<Brightness, string>> = {
  1: "dull",
  2: "rather dull",
  3: "middling",
  4: "rather bright",
  5: "bright",
};
const ROOMS: Readonly<Record<Room, string>> = {
  dry: "dry: a clap is gone within a second",
  medium: "medium: up to three seconds",
  live: "live: longer than three seconds",
};

const STEPS = [1, 2, 3, 4, 5] as const;

interface HeardStepProps {
  readonly what: string;
  readonly of: string;
  readonly words: Readonly<Record<1 | 2 | 3 | 4 | 5, string>>;
  readonly value: 1 | 2 | 3 | 4 | 5;
  /** Whether somebody has set it; else it is what is usual, and the list begins with that. */
  readonly set: boolean;
  readonly onStep: (step: 1 | 2 | 3 | 4 | 5 | null) => void;
}

/** One of five steps by ear, or none: what is usual for such a stop is reckoned with until somebody has listened. */
function HeardStep({ what, of, words, value, set, onStep }: HeardStepProps) {
  return (
    <label className="by-ear">
      <span className="note quiet">{what} by ear</span>
      <select
        className="pick"
        aria-label={`${what} of ${of} by ear`}
        value={set ? value : ""}
        onChange={(event) =>
          onStep(event.target.value === "" ? null : (Number(event.target.value) as 1 | 2 | 3 | 4 | 5))
        }
      >
        <option value="">{set ? "as usual for such a stop" : `not set; usually ${words[value].split(",")[0]}`}</option>
        {STEPS.map((step) => (
          <option key={step} value={step}>
            {words[step]}
          </option>
        ))}
      </select>
    </label>
  );
}

/** How strong and how bright a stop is here, by ear. */
export function ByEar({ stop, label, edit }: { readonly stop: Stop; readonly label: string; readonly edit: Edit }) {
  return (
    <>
      <HeardStep
        what="strength"
        of={label}
        words={STRENGTHS}
        value={stop.strength}
        set={stop.byEar.strength}
        onStep={(strength) => edit(`the strength of ${label}`, { edit: "set-strength", stop: stop.id, strength })}
      />
      <HeardStep
        what="brightness"
        of={label}
        words={BRIGHTNESSES}
        value={stop.brightness}
        set={stop.byEar.brightness}
        onStep={(brightness) =>
          edit(`the brightness of ${label}`, { edit: "set-brightness", stop: stop.id, brightness })
        }
      />
    </>
  );
}

/** The five comparisons of acoustics/HEARING.md, short. */
const COMPARISONS = [
  "Play the chord g e′ c″ on the principal 8 of the main keyboard: that is middling.",
  "The stopped 8 of the other keyboard, in turn with it: much less than half as loud is very soft, about half soft, nearly equal middling.",
  "The solo reed, one note c″, over that stop in the left hand: it rides on top with ease, middling; it must be looked for, soft; the chord all but disappears, strong.",
  "The chorus without its mixture, then with it: a clear step, strong; hardly a difference, middling; it hurts, very strong.",
  "The 16 of the pedal: it vanishes under the stopped 8, very soft; only under the chorus, soft; it carries the chorus, middling or strong.",
] as const;

/** What the room is like, or that nobody has said. */
export function RoomChoice({ instrument, edit }: { readonly instrument: Instrument; readonly edit: Edit }) {
  return (
    <select
      className="pick"
      aria-label="What the room is like"
      value={instrument.roomByEar ? instrument.room : ""}
      onChange={(event) => {
        const room = event.target.value === "" ? null : (event.target.value as Room);
        edit("the room", { edit: "set-room", room });
      }}
    >
      <option value="">{instrument.roomByEar ? "not said" : "not said; taken for medium"}</option>
      {Object.entries(ROOMS).map(([room, words]) => (
        <option key={room} value={room}>
          {words}
        </option>
      ))}
    </select>
  );
}

/** What the room does, and how to listen. */
export function RoomByEar({ instrument, edit }: { readonly instrument: Instrument; readonly edit: Edit }) {
  return (
    <section aria-labelledby="room">
      <h2 className="cap" id="room">
        The room
      </h2>
      <p className="new">
        <RoomChoice instrument={instrument} edit={edit} />
      </p>
      <details>
        <summary>How to listen to the stops</summary>
        <p className="note">
          Until somebody has listened, strength and brightness are guessed from the names. Five comparisons settle most
          of it, with a second pair of ears in the nave; then touch the stop above and say what was heard.
        </p>
        <ol className="note">
          {COMPARISONS.map((each) => (
            <li key={each}>{each}</li>
          ))}
        </ol>
        <p className="note">
          Take care of your ears: at the console of a full organ, and beside the case, it can be loud enough to harm
          hearing over time. Keep loud tests short, take breaks, and follow the rules of the house.
        </p>
      </details>
    </section>
  );
}
