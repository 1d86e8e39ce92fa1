/**
 * What is asked on a visit to an organ, by a name that stands in its file for ever, with the short words for it. What is
 * asked in full, and in which order, `carry/visit.ts` says.
 */
export const VISIT_TOPICS = {
  keys: "Who opens, where the keys are, how long one may stay, when it must be quiet.",
  blower: "Where the blower is switched on, how long until the wind stands, what must not be switched.",
  tuner: "Who tunes it and is called when something sticks.",
  faults: "Stops, keys and couplers that are out of order.",
  memory: "The memory level that may be used, and whether pistons may be set.",
  guide: "The guide for visitors at the console.",
  leaving: "How it is to be left.",
  list: "Where names, pitches and compasses are not as the list has them.",
  couplers: "Couplers that carry further ones on, and where their knobs are.",
  boxes: "How the pedals of the boxes work.",
  sides: "On which side each division draws, and how far the hand must go.",
  pitch: "Pitch and temperament as they were found.",
  foundation: "The principal that fills the room, and the softest stop that is heard.",
  mixture: "What the mixture does to the chorus.",
  reeds: "The reeds one by one.",
  echo: "How long a chord hangs on.",
  together: "Whether the bass and the hands reach the room together.",
  robbing: "Notes that go missing on stops that share a row of pipes.",
  singers: "Whether the organ is early or late against singers.",
  further: "What else is worth knowing.",
} as const;

/** One of {@link VISIT_TOPICS}. */
export type VisitTopic = keyof typeof VISIT_TOPICS;

/** What was answered on a visit, in the person's own words; a topic that is not there was not answered. */
export type VisitAnswers = Readonly<Partial<Record<VisitTopic, string>>>;
