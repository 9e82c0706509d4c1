import { still } from "./key-steps.ts";
import { lastTop } from "./overlay-panel.ts";
import { roomForOverlay } from "./picture.ts";
import { readMend } from "./read-mend.ts";
import { takeOf } from "./requests.ts";
import type { DashboardState, Effect, Key, Overlay, Step, Typed } from "./state.ts";

/** Lines a page key moves a long text. */
const PAGE = 10;

/** A key while something lies over the picture. Escape closes it, whatever it is. */
export function answerKey(state: DashboardState, overlay: Overlay, key: Key): Step {
  if (key.name === "escape") return close(state);
  switch (overlay.is) {
    case "text":
      if (key.name === "char" || key.name === "enter") return close(state);
      return scroll(state, overlay, key);
    case "days":
      if (key.name === "enter" || (key.name === "char" && !"jk ".includes(key.char))) return close(state);
      return scroll(state, overlay, key);
    case "choose": {
      const chosen =
        key.name === "char" ? overlay.choices.find((choice) => choice.key === key.char) : overlay.choices[0];
      if (key.name === "enter" && overlay.choices.length !== 1) return still(state);
      if (key.name !== "char" && key.name !== "enter") return still(state);
      if (chosen !== undefined) return close(state, chosen.effects);
      return key.name === "char" && key.char === "n" ? close(state) : still(state);
    }
    case "caution": {
      const { request } = overlay;
      if (key.name !== "char" || key.char !== "c" || !("ticked" in request))
        return scroll(state, overlay, key);
      // What was not in sight was not read: the key reads on first.
      if (overlay.top < lastTop(overlay, state.size.columns, roomForOverlay(state)))
        return scroll(state, overlay, { name: "pageDown" });
      const ticked = [...request.ticked, ...overlay.cautions];
      return close(state, [{ do: "perform", request: { ...request, ticked } }]);
    }
    case "type":
      return typeKey(state, overlay, key);
  }
}

function typeKey(state: DashboardState, overlay: Extract<Overlay, { is: "type" }>, key: Key): Step {
  if (key.name === "enter") {
    const words = overlay.typed.trim();
    if (overlay.purpose.for === "mend" && words !== "" && readMend(words) === null) {
      return still({ ...state, overlay: { ...overlay, title: "End with the minutes it took, as 10" } });
    }
    return close(state, effectsOf(overlay.purpose, words, state));
  }
  const typed =
    key.name === "char"
      ? overlay.typed + key.char
      : key.name === "backspace"
        ? [...overlay.typed].slice(0, -1).join("")
        : overlay.typed;
  return still({ ...state, overlay: { ...overlay, typed } });
}

/** Nothing typed means nothing done, save that a new piece may go by its process's name. */
function effectsOf(purpose: Typed, words: string, { now }: DashboardState): readonly Effect[] {
  if (purpose.for === "name")
    return [{ do: "tag", process: purpose.process, name: words === "" ? purpose.process : words }];
  if (words === "") return [];
  const { tags } = "tags" in purpose ? purpose : { tags: [] };
  switch (purpose.for) {
    case "note":
      return [{ do: "perform", request: { act: "note", at: now, tags, text: words } }];
    case "place":
      return [{ do: "place named", tags, said: words, hang: purpose.hang }];
    case "colour":
      return [{ do: "perform", request: takeOf(tags, null, now, words) }];
    case "measure": {
      const { what, unit } = purpose;
      const value = Number(words.replace(",", ".").replace(unit, ""));
      return [{ do: "perform", request: { act: "measure", at: now, tags, what, value, unit } }];
    }
    case "mend": {
      const mend = readMend(words);
      return mend === null ? [] : [{ do: "mend", tags, mend }];
    }
    case "anyway":
      return "anyway" in purpose.request
        ? [{ do: "perform", request: { ...purpose.request, at: now, anyway: { reason: words } } }]
        : [];
  }
}

function scroll<Long extends Extract<Overlay, { top: number }>>(
  state: DashboardState,
  overlay: Long,
  key: Key,
): Step {
  const by = {
    up: -1,
    down: 1,
    pageUp: -PAGE,
    pageDown: PAGE,
    enter: PAGE,
    backspace: -PAGE,
    escape: 0,
    char: 0,
  }[key.name];
  const step = key.name === "char" ? { k: -1, j: 1, " ": PAGE }[key.char] : by;
  const last = lastTop(overlay, state.size.columns, roomForOverlay(state));
  const top = Math.min(Math.max(overlay.top + (step ?? 0), 0), last);
  return still({ ...state, overlay: { ...overlay, top } });
}

function close(state: DashboardState, effects: readonly Effect[] = []): Step {
  return { state: { ...state, overlay: null }, effects };
}
