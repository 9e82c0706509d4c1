import { EVENT_COLUMNS } from "./event-rows.ts";
import type { Wanted } from "./journal.ts";

/** How many acts that stand a reading holds at least, so that they can be undone one after another. */
const actsToUndo = 20;

/** What was written down this long before the newest still counts for the present: ticks, vapour, hooks. */
export const RECENT_MILLISECONDS = 7 * 86_400_000;

/** How long after their last day a single day's hours and days away are still read. */
export const DATED_SETTING_MILLISECONDS = 400 * 86_400_000;

/** Whether an act was not undone. An undoing is never undone. */
const stands = (event: string) =>
  `NOT EXISTS (SELECT 1 FROM event AS undoing WHERE undoing.target = ${event}.act AND undoing.kind = 'undone')`;

/** The newest event of a kind at a station before another that was not undone, as a subquery. */
const newest = (column: "seq" | "act", kind: string, station: string, before: string) => `(
  SELECT ${column} FROM event AS newest
  WHERE newest.station = ${station} AND newest.kind = '${kind}' AND newest.seq < ${before} AND ${stands("newest")}
  ORDER BY seq DESC LIMIT 1
)`;

/**
 * Acts whose every piece is read: backward from the newest until enough that stand have been met, those wanted, and
 * the newest of each piece wanted (the one that "that was 20:15" is about).
 */
const recentActs = (asked: boolean) => `
recent_act (act, standing_before) AS (
  SELECT max(act), 0 FROM event
  UNION ALL
  SELECT
    (SELECT max(act) FROM event WHERE act < recent_act.act),
    standing_before + (
      ${stands("recent_act")}
      AND EXISTS (SELECT 1 FROM event WHERE seq = recent_act.act AND kind <> 'undone' AND "by" NOT LIKE 'sensor:%')
    )
  FROM recent_act WHERE act IS NOT NULL AND standing_before < ${actsToUndo}
),
act_of_interest (act) AS MATERIALIZED (
  SELECT act FROM recent_act WHERE act IS NOT NULL
  ${when(
    asked,
    `UNION SELECT value FROM json_each(:wantedActs)
  UNION SELECT (
    SELECT act FROM event AS newest
    WHERE newest.tag = value AND newest.kind NOT IN ('undone', 'amended') AND ${stands("newest")}
    ORDER BY seq DESC LIMIT 1
  ) FROM json_each(:wantedTags)`,
  )}
)`;

/**
 * What stands at each station: all of the last days, and the newest set-up and putting away before them that was not
 * undone, so that the last days are told from what stood when they began. Beside it the newest of all at each station,
 * which acts expect.
 */
const atStations = `
station (name) AS (
  SELECT min(station) FROM event WHERE station IS NOT NULL
  UNION ALL
  SELECT (SELECT min(station) FROM event WHERE station > before.name)
  FROM station AS before WHERE name IS NOT NULL
),
stood_before (readied, put_away) AS MATERIALIZED (
  SELECT ${newest("seq", "readied", "station.name", ":recentSeq")}, ${newest("seq", "put away", "station.name", ":recentSeq")}
  FROM station WHERE station.name IS NOT NULL
),
at_station (seq) AS MATERIALIZED (
  SELECT readied FROM stood_before
  UNION SELECT put_away FROM stood_before WHERE put_away > ifnull(readied, 0)
  UNION SELECT seq FROM event WHERE seq >= :recentSeq AND station IS NOT NULL
),
newest_at_station (seq) AS (
  SELECT (SELECT max(seq) FROM event WHERE event.station = station.name) FROM station WHERE station.name IS NOT NULL
)`;

/** Pieces to be read whole. Those stamped by a wrong clock fall where the clock set right puts them. */
const wantedTags = (asked: boolean, span: boolean) => `
${when(
  span,
  `clock (seq, since, shift) AS MATERIALIZED (
  SELECT seq, body ->> '$.since', 60000 * (body ->> '$.minutes')
  FROM event WHERE kind = 'clock' AND reaches IS NOT NULL AND json_valid(body)
),`,
)}
wanted_tag (tag) AS MATERIALIZED (
  SELECT tag FROM piece INDEXED BY piece_out WHERE out = 1
  UNION SELECT tag FROM piece INDEXED BY piece_finished WHERE finished_at >= :recentAt
  UNION SELECT tag FROM piece INDEXED BY piece_scrapped WHERE scrapped_at >= :recentAt
  ${when(asked, "UNION SELECT value FROM json_each(:wantedTags)")}
  UNION SELECT tag FROM act_of_interest CROSS JOIN event USING (act)
  UNION SELECT tag FROM at_station CROSS JOIN event USING (seq)
  ${when(
    span,
    `UNION SELECT tag FROM event WHERE at >= :from AND at < :to
  UNION SELECT tag FROM event WHERE kind = 'amended' AND reaches >= :from AND reaches < :to
  UNION SELECT event.tag FROM clock CROSS JOIN event
    WHERE :from < :to AND event.seq >= clock.since AND event.seq < clock.seq
      AND event.at - (
        SELECT sum(other.shift) FROM clock AS other WHERE event.seq >= other.since AND event.seq < other.seq
      ) BETWEEN :from AND :to - 1`,
  )}
)`;

/**
 * The statement that chooses the events by which `Wanted` is known, whatever the journal's age; TOLD_EVENTS reads them with
 * what they lean on. Every part searches an index; none runs over the events (a test asks SQLite for its plan). CROSS JOIN
 * fixes the order of the search: left free, SQLite may run over all events instead.
 *
 * Parameters: `recentSeq` (the first event of the last days), `recentAt` (their first moment), `settingsFrom`; where
 * something is asked for, `wantedTags` and `wantedActs` (JSON arrays); with a span, its `from` and `to`.
 *
 * @param of what is wanted: a part that it does not ask for is left out, since SQLite takes its time to plan each
 */
export function chooseEvents(of: Exclude<Wanted["of"], "all">): string {
  const [asked, span] = [of === "tags" || of === "acts", of === "span"];
  return `
WITH RECURSIVE ${recentActs(asked)}, ${atStations}, ${wantedTags(asked, span)}
SELECT event.seq FROM wanted_tag CROSS JOIN event USING (tag)
UNION SELECT event.seq FROM act_of_interest CROSS JOIN event USING (act)
UNION SELECT seq FROM at_station WHERE seq IS NOT NULL
UNION SELECT seq FROM newest_at_station
UNION SELECT seq FROM event WHERE kind = 'settled' AND reaches >= :settingsFrom
UNION SELECT seq FROM event WHERE kind = 'clock' AND reaches IS NOT NULL
UNION SELECT seq FROM event WHERE seq >= :recentSeq AND tag IS NULL
${when(
  span,
  `UNION SELECT seq FROM event WHERE at >= :from AND at < :to AND tag IS NULL
UNION SELECT seq FROM event WHERE kind = 'amended' AND reaches >= :from AND reaches < :to AND tag IS NULL`,
)}
`;
}

/**
 * The statement that reads chosen events (its parameter, a JSON array of their seqs) and what they lean on, in seq order.
 * A statement of its own, as SQLite plans each part of one as often as it is named, and all it is made of.
 */
export const TOLD_EVENTS = `
WITH RECURSIVE chosen (seq) AS MATERIALIZED (SELECT value FROM json_each(?)),
-- What stood at the station when a chosen putting away cleared it, and whether another had cleared it before.
cleared (readied, put_away) AS MATERIALIZED (
  SELECT ${newest("seq", "readied", "event.station", "event.seq")}, ${newest("seq", "put away", "event.station", "event.seq")}
  FROM chosen CROSS JOIN event USING (seq) WHERE event.kind = 'put away'
),
told (seq) AS MATERIALIZED (
  SELECT seq FROM chosen
  UNION SELECT readied FROM cleared WHERE readied IS NOT NULL
  UNION SELECT put_away FROM cleared WHERE put_away > ifnull(readied, 0)
),
-- Off the pieces: what undoes or amends one of these, and what is undone or amended by it, in turn. (On a piece all
-- of this stands among its own events.)
leant_on (act) AS (
  SELECT act FROM told CROSS JOIN event USING (seq) WHERE tag IS NULL
  UNION SELECT event.act FROM leant_on CROSS JOIN event ON event.target = leant_on.act
  UNION SELECT event.target FROM leant_on CROSS JOIN event USING (act) WHERE event.target IS NOT NULL
),
selected (seq) AS (
  SELECT seq FROM told
  UNION SELECT event.seq FROM leant_on CROSS JOIN event USING (act) WHERE event.tag IS NULL
)
SELECT ${EVENT_COLUMNS}
FROM selected CROSS JOIN event USING (seq) ORDER BY selected.seq
`;

/** A part of a statement, or nothing. */
function when(isWanted: boolean, part: string): string {
  return isWanted ? part : "";
}
