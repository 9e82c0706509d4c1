/** The keys, as the help shows them. */
export const HELP_LINES: readonly string[] = [
  "up down, k j    mark a row            Enter   the obvious act on it",
  "1 4, then a key act on tag 14         Esc     close, forget what was typed",
  "",
  "t  take in hand       h  hang: the cure runs from now    l  leave half-done",
  "o  touch test         v  hang it in another place        m  mend a flaw",
  "r  ready its set-up   p  put a set-up away               a  tag a new piece",
  "e  measure            n  note, N of the whole shop       u  undo (asks first)",
  "s  set-up sheet       w  the week                        d  the coming days",
  "c  take for a pass in another colour                     q  quit",
  "!  go on although refused, with a reason",
  "",
  "On the shared clock:  - drying   [ opens   = can be worked   ] shuts",
  "                      ~ shut: preparation first   * in hand   . not begun, or left",
  "                      | now   ' bench hours",
  "                      : from here on hours are drawn shorter, or as before",
];
