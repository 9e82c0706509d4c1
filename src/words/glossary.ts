/** The words of the trade and of dryline, each in a sentence: for `help WORD`. */
export const GLOSSARY: Readonly<Record<string, string>> = {
  process: "the ordered steps that make one kind of piece: a YAML file",
  step: "hands-on work at a station, then (often) a wait",
  "hands-on": "minutes of your own time: one figure, low..high, or low..likely..high",
  coat: "a paint, sealer or resin described once: how it cures, its windows, its mix; many steps use it",
  stage: "how far a coat is: wet, set-to-touch, dust-free, tack-free, dry-hard, dry-through",
  window:
    "the span after a coat in which the next may be begun: it opens and often shuts; a later one may ask for a scuff first",
  "begin by": "the shut of a window less the set-up that must come first",
  station: "where hands-on work is done: bench, spray corner, lead pot",
  place: "where a piece hangs: rack, turning wheel, warm box; it has hooks, and its own air",
  "set-up":
    "preparation that several pieces share while it keeps: a melted pot, a mixed cup, a loaded airbrush",
  piece: "one of what you make, known by the number on its tag",
  tag: "the number of a piece, never used again",
  out: "a piece that is begun and not finished is out",
  "bench hours": "when you work: every week, changed for tonight in one word, with days away",
  "keep apart": "two things that must not happen at once in one room, and for how long after",
  scheme: "how a piece is painted: its passes, each with colour, minutes and flash-off",
  pass: "one colour of a scheme, sprayed once",
  "flash-off": "how long a pass must dry before the next pass",
  scuff: "roughing a coat that has grown too hard for the next to hold",
  hang: "hands-on is done: the cure runs from here",
  take: "in hand: the work begins",
  leave: "put down half-done, to go on with later; never a coat",
  mend: "the work a flaw needs, and the step to go on from",
  act: "one thing you said was done; every act can be undone, nothing is ever lost",
};
