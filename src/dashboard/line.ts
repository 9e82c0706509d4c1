import { plainText } from "../words/plain-text.ts";
import { cutTo, fitTo, widthOf } from "../words/width.ts";

/** How a piece of text stands out; colour only adds to what the words already say. */
export type Tone = "plain" | "strong" | "dim" | "good" | "soon" | "late" | "marked";

export interface Span {
  readonly text: string;
  readonly tone: Tone;
}

/** One line of the picture. */
export type Line = readonly Span[];

/** The one way text comes into the picture: whatever a file, a note or a key put into it, no terminal obeys it. */
export function span(text: string, tone: Tone = "plain"): Span {
  return { text: plainText(text), tone };
}

/** A line of one tone. */
export function line(text: string, tone: Tone = "plain"): Line {
  return [span(text, tone)];
}

/** Left and right text on one line of `columns`; the left one gives way. */
export function spread(left: Span, right: Span, columns: number): Line {
  const room = Math.max(columns - widthOf(right.text), 0);
  return [span(fitTo(left.text, room), left.tone), right];
}

/** The line cut to at most `columns`. */
export function cutLine(spans: Line, columns: number): Line {
  let room = columns;
  return spans.flatMap(({ text, tone }) => {
    const kept = cutTo(text, room);
    room -= widthOf(kept);
    return kept === "" ? [] : [{ text: kept, tone }];
  });
}
