/** Marks an SQLite file as ours: "dryl" in ASCII, written into its header. */
export const APPLICATION_ID = 0x6472796c;

/** A moment after all others, for what holds until something later says otherwise. 9999-12-31 in UTC. */
export const FOR_EVER = 253_402_214_400_000;

/**
 * The journal's tables as first released. Events are the truth and are only ever added; `piece` and `step_time` are
 * derived from them in the transaction that adds them.
 *
 * - `together`: see Envelope.
 * - `target`: the act that an undone or amended event is about.
 * - `reaches`: until when an event may matter although it is old: the end of the last day a setting speaks of (FOR_EVER
 *   for one that holds on, and for a clock found wrong), the better time that an amended event gives.
 *
 * Each index has the rowid, which is seq, as its last column: a piece's events come out in order.
 */
const firstTables = `
CREATE TABLE event (
  seq INTEGER PRIMARY KEY,
  act INTEGER NOT NULL,
  v INTEGER NOT NULL,
  kind TEXT NOT NULL,
  at INTEGER NOT NULL,
  recorded INTEGER NOT NULL,
  "by" TEXT NOT NULL,
  tag INTEGER,
  station TEXT,
  together INTEGER NOT NULL,
  target INTEGER,
  reaches INTEGER,
  body TEXT NOT NULL
) STRICT;
CREATE INDEX event_act ON event (act);
CREATE INDEX event_at ON event (at);
CREATE INDEX event_recorded ON event (recorded);
CREATE INDEX event_tag ON event (tag) WHERE tag IS NOT NULL;
CREATE INDEX event_station ON event (station) WHERE station IS NOT NULL;
CREATE INDEX event_station_kind ON event (station, kind) WHERE station IS NOT NULL;
CREATE INDEX event_target ON event (target) WHERE target IS NOT NULL;
CREATE INDEX event_reaches ON event (kind, reaches) WHERE reaches IS NOT NULL;
CREATE TRIGGER event_stays BEFORE UPDATE ON event
  BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;
CREATE TRIGGER event_is_kept BEFORE DELETE ON event
  BEGIN SELECT RAISE(ABORT, 'an event is never deleted'); END;

CREATE TABLE process_version (
  hash TEXT PRIMARY KEY,
  definition TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE piece (
  tag INTEGER PRIMARY KEY,
  out INTEGER NOT NULL,
  name TEXT NOT NULL,
  process TEXT NOT NULL,
  process_name TEXT NOT NULL,
  tagged_at INTEGER NOT NULL,
  finished_at INTEGER,
  scrapped_at INTEGER
) STRICT;
CREATE INDEX piece_out ON piece (tag) WHERE out = 1;
CREATE INDEX piece_tagged ON piece (tagged_at);
CREATE INDEX piece_finished ON piece (finished_at) WHERE finished_at IS NOT NULL;
CREATE INDEX piece_scrapped ON piece (scrapped_at) WHERE scrapped_at IS NOT NULL;

CREATE TABLE step_time (
  tag INTEGER NOT NULL,
  process TEXT NOT NULL,
  step TEXT NOT NULL,
  pass INTEGER NOT NULL,
  minutes REAL NOT NULL,
  at INTEGER NOT NULL
) STRICT;
CREATE INDEX step_time_newest ON step_time (process, step, at, tag, pass);
CREATE INDEX step_time_tag ON step_time (tag);

-- By which reckoning the derived rows were made; 0: to be made anew.
CREATE TABLE derived (version INTEGER NOT NULL) STRICT;
INSERT INTO derived VALUES (0);
`;

/** The plan found last: at most one row, replaced, and no harm done where it is lost. `starts` and `leaving` are JSON. */
const planTable = `
CREATE TABLE plan (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  seq INTEGER NOT NULL,
  settings TEXT NOT NULL,
  air INTEGER NOT NULL,
  seed INTEGER NOT NULL,
  rounds INTEGER NOT NULL,
  starts TEXT NOT NULL,
  leaving TEXT NOT NULL
) STRICT;
`;

/**
 * Readings of the air, beside the events and with a count of their own: a sensor gives thousands a week. As with
 * events nothing is changed or deleted; of two of one place and moment the later counted.
 *
 * - `place`: empty for the shop's own air.
 * - `doubt`: why it does not count; null: it does.
 */
const airTable = `
CREATE TABLE air (
  seq INTEGER PRIMARY KEY,
  at INTEGER NOT NULL,
  place TEXT NOT NULL,
  celsius REAL NOT NULL,
  humidity REAL NOT NULL,
  "by" TEXT NOT NULL,
  recorded INTEGER NOT NULL,
  doubt TEXT
) STRICT;
CREATE INDEX air_at ON air (at);
CREATE INDEX air_place ON air (place, at);
CREATE TRIGGER air_stays BEFORE UPDATE ON air
  BEGIN SELECT RAISE(ABORT, 'a reading is never changed'); END;
CREATE TRIGGER air_is_kept BEFORE DELETE ON air
  BEGIN SELECT RAISE(ABORT, 'a reading is never deleted'); END;
`;

/** What touch tests say of coats, derived in the air that pieces hung in: made anew whenever a piece is felt. */
const cureTestTable = `
CREATE TABLE cure_test (
  coat TEXT NOT NULL,
  tag INTEGER NOT NULL,
  step TEXT NOT NULL,
  pass INTEGER NOT NULL,
  least REAL NOT NULL,
  most REAL,
  at INTEGER NOT NULL,
  PRIMARY KEY (tag, step, pass)
) STRICT, WITHOUT ROWID;
CREATE INDEX cure_test_at ON cure_test (at);
`;

/**
 * The readings that count of each hour and place, derived and added up: a year of them need not be run through for the
 * daily pattern of two weeks.
 *
 * - `hour`: hours since 1970 UTC; each is half an hour to both sides of its mark.
 * - `celsius`, `humidity`, `celsius_squared`, `humidity_squared`: sums over its readings.
 */
const airHourTable = `
CREATE TABLE air_hour (
  hour INTEGER NOT NULL,
  place TEXT NOT NULL,
  readings INTEGER NOT NULL,
  celsius REAL NOT NULL,
  humidity REAL NOT NULL,
  celsius_squared REAL NOT NULL,
  humidity_squared REAL NOT NULL,
  PRIMARY KEY (hour, place)
) STRICT, WITHOUT ROWID;
INSERT INTO air_hour
SELECT (at + 1800000) / 3600000 AS hour, place, count(*), sum(celsius), sum(humidity),
  sum(celsius * celsius), sum(humidity * humidity)
FROM (SELECT at, place, celsius, humidity, max(seq) FROM air WHERE doubt IS NULL GROUP BY place, at)
GROUP BY hour, place;
`;

/** What leads from each form of the file to the next, the first from an empty one. Released ones never change. */
export const FORMS: readonly string[] = [firstTables, planTable, airTable, cureTestTable, airHourTable];

/** The form in which files are written today. One of a higher form is of a newer dryline and is refused. */
export const SCHEMA_VERSION = FORMS.length;
