-- The book of pours. Nothing in it is ever overwritten: events are only added, each holding the hash
-- of the one before. The triggers travel with the file, so that it refuses any other program too.

CREATE TABLE book (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  uuid TEXT NOT NULL CHECK (length(uuid) = 36),
  tag TEXT NOT NULL CHECK (length(tag) = 5),
  created INTEGER NOT NULL  -- ms since 1970-01-01T00:00:00Z
) STRICT;

CREATE TABLE events (
  seq INTEGER PRIMARY KEY CHECK (seq > 0),
  pour TEXT NOT NULL CHECK (pour <> ''),
  id TEXT NOT NULL UNIQUE,      -- the book's tag, a hyphen, seq
  line TEXT NOT NULL,           -- the event as a script line, without id and entry
  entered INTEGER NOT NULL,     -- ms since 1970-01-01T00:00:00Z, by the wall clock
  steady REAL NOT NULL,         -- s since the tablet started, by the clock that never steps
  boot TEXT NOT NULL,           -- which start of the tablet that was
  kept INTEGER NOT NULL,        -- ms, when this book took it in; later than entered for a script's
  prev_hash BLOB NOT NULL CHECK (length(prev_hash) = 32),
  hash BLOB NOT NULL CHECK (length(hash) = 32)
) STRICT;

CREATE INDEX events_of_pour ON events (pour, seq);

-- The last event, so that one cut off the end is missed.
CREATE TABLE head (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  seq INTEGER NOT NULL CHECK (seq >= 0),
  hash BLOB NOT NULL CHECK (length(hash) = 32)
) STRICT;

-- Before the insert, so that INSERT OR REPLACE meets it before it deletes anything, whatever the
-- connection's recursive_triggers says.
CREATE TRIGGER events_only_follow BEFORE INSERT ON events
BEGIN
  SELECT RAISE(ABORT, 'an event follows the last one of the book and replaces none')
  WHERE NEW.seq IS NOT (SELECT seq + 1 FROM head)
     OR NEW.prev_hash IS NOT (SELECT hash FROM head)
     OR NEW.id IS NOT (SELECT tag FROM book) || '-' || NEW.seq
     OR EXISTS (SELECT 1 FROM events WHERE seq = NEW.seq OR id = NEW.id);
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

CREATE TRIGGER head_is_one BEFORE INSERT ON head
WHEN EXISTS (SELECT 1 FROM head)
BEGIN
  SELECT RAISE(ABORT, 'the book has one head');
END;

CREATE TRIGGER head_never_goes BEFORE DELETE ON head
BEGIN
  SELECT RAISE(ABORT, 'the head of the book is never removed');
END;

CREATE TRIGGER book_is_one BEFORE INSERT ON book
WHEN EXISTS (SELECT 1 FROM book)
BEGIN
  SELECT RAISE(ABORT, 'a file holds one book');
END;

CREATE TRIGGER book_never_changes BEFORE UPDATE ON book
BEGIN
  SELECT RAISE(ABORT, 'the book keeps its name');
END;

CREATE TRIGGER book_never_goes BEFORE DELETE ON book
BEGIN
  SELECT RAISE(ABORT, 'the book keeps its name');
END;
