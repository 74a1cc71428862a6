-- Schema 2. Events lose the index on their ids (an id is the book's tag and the number, so it says
-- what seq says); beside them stand marks by which a pour or a day is found without reading the
-- rest, and the device's keys and signed heads. No event's row changes: its hash covers it.
--
-- Marks are kept by trigger and told by the events alone: they hold nothing the events do not. An
-- ordinary tap finds its marks there and writes none.

DROP TRIGGER IF EXISTS events_only_follow;
DROP TRIGGER IF EXISTS events_move_head;
DROP TRIGGER IF EXISTS events_never_change;
DROP TRIGGER IF EXISTS events_never_go;
DROP TRIGGER IF EXISTS head_only_follows;
DROP INDEX IF EXISTS events_of_pour;
ALTER TABLE events RENAME TO events_1;

CREATE TABLE events (
  seq INTEGER PRIMARY KEY CHECK (seq > 0),
  pour TEXT NOT NULL CHECK (pour <> ''),
  id TEXT NOT NULL,             -- the book's tag, a hyphen, seq
  line TEXT NOT NULL,           -- the event as a script line, without id and entry
  entered INTEGER NOT NULL,     -- ms since 1970-01-01T00:00:00Z, by the wall clock
  steady REAL NOT NULL,         -- s since the tablet started, by the clock that never steps
  boot TEXT NOT NULL,           -- which start of the tablet that was
  kept INTEGER NOT NULL,        -- ms, when this book took it in; later than entered for a script's
  prev_hash BLOB NOT NULL CHECK (length(prev_hash) = 32),
  hash BLOB NOT NULL CHECK (length(hash) = 32)
) STRICT;

CREATE INDEX events_of_pour ON events (pour, seq);

CREATE TABLE pours (
  pour TEXT PRIMARY KEY CHECK (pour <> ''),
  first INTEGER NOT NULL,       -- seq of its first event
  name TEXT NOT NULL,           -- as its plan tells it, corrections since brought in
  site TEXT NOT NULL,
  told TEXT NOT NULL,           -- every name and site it ever had: what a search looks through
  opened INTEGER NOT NULL,      -- ms since 1970-01-01T00:00:00Z
  -- 0 no, 1 yes, 2 to be asked of its events: something was struck that may concern it.
  closed INTEGER NOT NULL DEFAULT 0 CHECK (closed IN (0, 1, 2))
) STRICT, WITHOUT ROWID;

-- The order of a list: those not known to be closed first, the latest first within each.
CREATE INDEX pours_listed ON pours (closed = 1, opened DESC, first);

-- How far the wall clock was ahead of the steady one when the tablet, in one start of it, first
-- told of a pour. Where it is ahead by another span later, the wall clock has stepped.
CREATE TABLE pour_boots (
  pour TEXT NOT NULL,
  boot TEXT NOT NULL,
  lead REAL NOT NULL,           -- s
  PRIMARY KEY (pour, boot)
) STRICT, WITHOUT ROWID;

-- The days (UTC, counted from 1970-01-01) on which a pour's events happened: as they tell it, and
-- with the steps of the wall clock taken out. May name a day too many (an event struck or changed
-- since); never one too few, but for drift of the clocks.
CREATE TABLE pour_days (
  day INTEGER NOT NULL,
  pour TEXT NOT NULL,
  PRIMARY KEY (day, pour)
) STRICT, WITHOUT ROWID;

-- The device's public keys (Ed25519), and heads of the book signed with them. (Columns of a primary
-- key come first in these tables: integrity_check of SQLite 3.40 takes other orders for damage.)
CREATE TABLE keys (
  key BLOB PRIMARY KEY CHECK (length(key) = 32),
  since INTEGER NOT NULL        -- ms since 1970-01-01T00:00:00Z
) STRICT, WITHOUT ROWID;

CREATE TABLE heads (
  seq INTEGER NOT NULL CHECK (seq > 0),
  key BLOB NOT NULL,
  hash BLOB NOT NULL CHECK (length(hash) = 32),
  signature BLOB NOT NULL CHECK (length(signature) = 64),
  made INTEGER NOT NULL,        -- ms since 1970-01-01T00:00:00Z
  PRIMARY KEY (seq, key)
) STRICT, WITHOUT ROWID;

-- Books this one took events from after damage: the last good number and hash of each.
CREATE TABLE origins (
  uuid TEXT NOT NULL,
  seq INTEGER NOT NULL CHECK (seq >= 0),
  made INTEGER NOT NULL,        -- ms since 1970-01-01T00:00:00Z
  tag TEXT NOT NULL,
  hash BLOB NOT NULL CHECK (length(hash) = 32),
  PRIMARY KEY (uuid, seq, made)
) STRICT, WITHOUT ROWID;

-- Events a rescue could not bring over, so that the gap tells of itself and no number is given
-- twice. Number 0 is the book's own name.
CREATE TABLE lost (
  seq INTEGER PRIMARY KEY CHECK (seq >= 0),
  pour TEXT,                    -- where that could still be read
  missing INTEGER NOT NULL CHECK (missing IN (0, 1)),  -- 0: what read of it did not fit its hash
  hash BLOB CHECK (length(hash) = 32)  -- as what came after it told; NULL: lost too
) STRICT;

-- Guards stand in WHEN, where they cost an ordinary tap least. Of a row whose line is not JSON (a
-- damaged book's) only the pour is marked. No trigger leans on another's having run before it.
CREATE TRIGGER events_mark_pour AFTER INSERT ON events
WHEN NOT EXISTS (SELECT 1 FROM pours WHERE pour = NEW.pour)
BEGIN
  INSERT INTO pours (pour, first, name, site, told, opened)
  SELECT NEW.pour, NEW.seq, name, site, name || char(10) || site, coalesce(opened, NEW.entered)
  FROM (SELECT coalesce(line ->> '$.plan.name', '') AS name,
               coalesce(line ->> '$.plan.site', '') AS site,
               CAST(round((julianday(line ->> '$.at') - 2440587.5) * 86400000) AS INTEGER) AS opened
        FROM (SELECT iif(json_valid(NEW.line), NEW.line, '{}') AS line));
END;

CREATE TRIGGER events_mark_boot AFTER INSERT ON events
WHEN NOT EXISTS (SELECT 1 FROM pour_boots WHERE pour = NEW.pour AND boot = NEW.boot)
BEGIN
  INSERT INTO pour_boots (pour, boot, lead)
  VALUES (NEW.pour, NEW.boot, NEW.entered / 1000.0 - NEW.steady);
END;

CREATE TRIGGER events_mark_day AFTER INSERT ON events
WHEN json_valid(NEW.line)
 AND NOT EXISTS (SELECT 1 FROM pour_days
                 WHERE day = unixepoch(NEW.line ->> '$.at', 'start of day') / 86400
                   AND pour = NEW.pour)
BEGIN
  INSERT INTO pour_days (day, pour)
  SELECT unixepoch(NEW.line ->> '$.at', 'start of day') / 86400, NEW.pour
  WHERE unixepoch(NEW.line ->> '$.at') IS NOT NULL;
END;

-- The wall clock has stepped: the day without the step too.
CREATE TRIGGER events_mark_step AFTER INSERT ON events
WHEN abs(NEW.entered / 1000.0 - NEW.steady
         - (SELECT lead FROM pour_boots WHERE pour = NEW.pour AND boot = NEW.boot)) > 60
BEGIN
  INSERT INTO pour_days (day, pour)
  SELECT told.day, NEW.pour
  FROM (SELECT unixepoch(unixepoch(iif(json_valid(NEW.line), NEW.line, '{}') ->> '$.at')
                         - (NEW.entered / 1000.0 - NEW.steady
                            - (SELECT lead FROM pour_boots WHERE pour = NEW.pour AND boot = NEW.boot)),
                         'unixepoch', 'start of day') / 86400 AS day) AS told
  WHERE told.day IS NOT NULL
    AND NOT EXISTS (SELECT 1 FROM pour_days WHERE day = told.day AND pour = NEW.pour);
END;

CREATE TRIGGER events_mark_close AFTER INSERT ON events
WHEN json_valid(NEW.line) AND NEW.line ->> '$.do' IN ('pour-close', 'strike')
BEGIN
  UPDATE pours SET closed = 1
  WHERE pour = NEW.pour AND closed <> 1 AND NEW.line ->> '$.do' = 'pour-close';

  UPDATE pours SET closed = 2
  WHERE pour = NEW.pour AND closed <> 2 AND NEW.line ->> '$.do' = 'strike'
    AND EXISTS (SELECT 1 FROM events AS target
                WHERE target.pour = NEW.pour AND json_valid(target.line)
                  AND target.seq = CAST(substr(NEW.line ->> '$.target',
                                               instr(NEW.line ->> '$.target', '-') + 1) AS INTEGER)
                  AND target.line ->> '$.do' IN ('pour-close', 'strike'));
END;

-- A fix may name the pour anew, or move the day of what it corrects.
CREATE TRIGGER events_mark_fix AFTER INSERT ON events
WHEN json_valid(NEW.line) AND NEW.line ->> '$.do' = 'fix'
 AND (NEW.line -> '$.set.plan' IS NOT NULL OR NEW.line -> '$.set.at' IS NOT NULL)
BEGIN
  UPDATE pours SET
    name = coalesce(NEW.line ->> '$.set.plan.name', name),
    site = coalesce(NEW.line ->> '$.set.plan.site', site),
    told = told || char(10) || coalesce(NEW.line ->> '$.set.plan.name', '')
                || char(10) || coalesce(NEW.line ->> '$.set.plan.site', '')
  WHERE pour = NEW.pour AND NEW.line -> '$.set.plan' IS NOT NULL;

  INSERT INTO pour_days (day, pour)
  SELECT DISTINCT told.day, NEW.pour
  FROM (SELECT unixepoch(unixepoch(NEW.line ->> '$.set.at') - coalesce(step, 0),
                         'unixepoch', 'start of day') / 86400 AS day
        FROM (SELECT 0 AS step
              UNION ALL
              SELECT target.entered / 1000.0 - target.steady - boot.lead
              FROM events AS target JOIN pour_boots AS boot USING (pour, boot)
              WHERE target.pour = NEW.pour
                AND target.seq = CAST(substr(NEW.line ->> '$.target',
                                             instr(NEW.line ->> '$.target', '-') + 1) AS INTEGER))
       ) AS told
  WHERE told.day IS NOT NULL
    AND NOT EXISTS (SELECT 1 FROM pour_days WHERE day = told.day AND pour = NEW.pour);
END;

INSERT INTO events SELECT * FROM events_1 ORDER BY seq;
DROP TABLE events_1;

-- Before the insert, so that INSERT OR REPLACE meets it before it deletes anything, whatever the
-- connection's recursive_triggers says.
CREATE TRIGGER events_only_follow BEFORE INSERT ON events
BEGIN
  SELECT RAISE(ABORT, 'an event follows the last one of the book and replaces none')
  WHERE NEW.seq IS NOT (SELECT seq + 1 FROM head)
     OR NEW.prev_hash IS NOT (SELECT hash FROM head)
     OR NEW.id IS NOT (SELECT tag FROM book) || '-' || NEW.seq
     OR EXISTS (SELECT 1 FROM events WHERE seq = NEW.seq);
END;

CREATE TRIGGER events_move_head AFTER INSERT ON events
BEGIN
  UPDATE head SET seq = NEW.seq, hash = NEW.hash;
END;

CREATE TRIGGER events_never_change BEFORE UPDATE ON events
BEGIN
  SELECT RAISE(ABORT, 'an event in the book is never changed');
END;

CREATE TRIGGER events_never_go BEFORE DELETE ON events
BEGIN
  SELECT RAISE(ABORT, 'an event in the book is never removed');
END;

CREATE TRIGGER head_only_follows BEFORE UPDATE ON head
WHEN NEW.one IS NOT OLD.one OR NEW.seq IS NOT OLD.seq + 1
  OR NOT EXISTS (SELECT 1 FROM events WHERE seq = NEW.seq AND hash = NEW.hash)
BEGIN
  SELECT RAISE(ABORT, 'the head moves with the events only');
END;

CREATE TRIGGER pours_only_follow BEFORE INSERT ON pours
BEGIN
  SELECT RAISE(ABORT, 'a pour is marked by its first event and once')
  WHERE EXISTS (SELECT 1 FROM pours WHERE pour = NEW.pour)
     OR NEW.first IS NOT (SELECT min(seq) FROM events WHERE pour = NEW.pour);
END;

CREATE TRIGGER pours_stay BEFORE UPDATE ON pours
WHEN NEW.pour IS NOT OLD.pour OR NEW.first IS NOT OLD.first OR NEW.opened IS NOT OLD.opened
BEGIN
  SELECT RAISE(ABORT, 'a mark in the book is never changed');
END;

CREATE TRIGGER pours_never_go BEFORE DELETE ON pours
BEGIN
  SELECT RAISE(ABORT, 'a mark in the book is never removed');
END;

CREATE TRIGGER pour_boots_only_follow BEFORE INSERT ON pour_boots
WHEN EXISTS (SELECT 1 FROM pour_boots WHERE pour = NEW.pour AND boot = NEW.boot)
BEGIN
  SELECT RAISE(ABORT, 'a mark in the book is never changed');
END;

CREATE TRIGGER pour_boots_never_change BEFORE UPDATE ON pour_boots
BEGIN
  SELECT RAISE(ABORT, 'a mark in the book is never changed');
END;

CREATE TRIGGER pour_boots_never_go BEFORE DELETE ON pour_boots
BEGIN
  SELECT RAISE(ABORT, 'a mark in the book is never removed');
END;

CREATE TRIGGER pour_days_only_follow BEFORE INSERT ON pour_days
WHEN NOT EXISTS (SELECT 1 FROM events WHERE pour = NEW.pour)
  OR EXISTS (SELECT 1 FROM pour_days WHERE day = NEW.day AND pour = NEW.pour)
BEGIN
  SELECT RAISE(ABORT, 'a day is marked by an event of its pour and once');
END;

CREATE TRIGGER pour_days_never_change BEFORE UPDATE ON pour_days
BEGIN
  SELECT RAISE(ABORT, 'a mark in the book is never changed');
END;

CREATE TRIGGER pour_days_never_go BEFORE DELETE ON pour_days
BEGIN
  SELECT RAISE(ABORT, 'a mark in the book is never removed');
END;

CREATE TRIGGER keys_only_come BEFORE INSERT ON keys
WHEN EXISTS (SELECT 1 FROM keys WHERE key = NEW.key)
BEGIN
  SELECT RAISE(ABORT, 'a key in the book is never changed');
END;

CREATE TRIGGER keys_never_change BEFORE UPDATE ON keys
BEGIN
  SELECT RAISE(ABORT, 'a key in the book is never changed');
END;

CREATE TRIGGER keys_never_go BEFORE DELETE ON keys
BEGIN
  SELECT RAISE(ABORT, 'a key in the book is never removed');
END;

CREATE TRIGGER heads_only_come BEFORE INSERT ON heads
WHEN EXISTS (SELECT 1 FROM heads WHERE seq = NEW.seq AND key = NEW.key)
  OR NOT EXISTS (SELECT 1 FROM keys WHERE key = NEW.key)
  OR NOT EXISTS (SELECT 1 FROM events WHERE seq = NEW.seq AND hash = NEW.hash)
BEGIN
  SELECT RAISE(ABORT, 'a signed head is of an event and a key of the book and replaces none');
END;

CREATE TRIGGER heads_never_change BEFORE UPDATE ON heads
BEGIN
  SELECT RAISE(ABORT, 'a signed head is never changed');
END;

CREATE TRIGGER heads_never_go BEFORE DELETE ON heads
BEGIN
  SELECT RAISE(ABORT, 'a signed head is never removed');
END;

CREATE TRIGGER origins_only_come BEFORE INSERT ON origins
WHEN EXISTS (SELECT 1 FROM origins WHERE uuid = NEW.uuid AND seq = NEW.seq AND made = NEW.made)
BEGIN
  SELECT RAISE(ABORT, 'where a book came from is never changed');
END;

CREATE TRIGGER origins_never_change BEFORE UPDATE ON origins
BEGIN
  SELECT RAISE(ABORT, 'where a book came from is never changed');
END;

CREATE TRIGGER origins_never_go BEFORE DELETE ON origins
BEGIN
  SELECT RAISE(ABORT, 'where a book came from is never removed');
END;

CREATE TRIGGER lost_only_come BEFORE INSERT ON lost
WHEN EXISTS (SELECT 1 FROM lost WHERE seq = NEW.seq)
  OR EXISTS (SELECT 1 FROM events WHERE seq = NEW.seq)
BEGIN
  SELECT RAISE(ABORT, 'what was lost is told once, and only of events that are not here');
END;

CREATE TRIGGER lost_never_change BEFORE UPDATE ON lost
BEGIN
  SELECT RAISE(ABORT, 'what was lost is never changed');
END;

CREATE TRIGGER lost_never_go BEFORE DELETE ON lost
BEGIN
  SELECT RAISE(ABORT, 'what was lost is never removed');
END;
