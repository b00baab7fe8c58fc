-- Version 1. One ledger: everything that was ever written, in order, never changed.
CREATE TABLE entry (
    seq        INTEGER PRIMARY KEY,
    at         TEXT NOT NULL,                -- UTC, 2026-11-25T09:30:00Z
    who        TEXT NOT NULL,
    kind       TEXT NOT NULL CHECK (kind IN ('coupon', 'exam', 'indication', 'remark', 'verdict', 'grade')),
    coupon     TEXT NOT NULL,
    exam       INTEGER,                      -- number of the exam on its coupon
    number     INTEGER,                      -- number of the indication on its coupon
    supersedes INTEGER REFERENCES entry (seq),
    reason     TEXT,                         -- why it supersedes
    body       TEXT NOT NULL CHECK (json_valid(body)),
    previous   TEXT NOT NULL,                -- hash of the entry before; 64 zeros for the first
    hash       TEXT NOT NULL UNIQUE,
    CHECK ((supersedes IS NULL) = (reason IS NULL))
) STRICT;
CREATE INDEX entry_by_coupon ON entry (coupon, seq);
-- An entry is corrected once; the correction itself can be corrected again.
CREATE UNIQUE INDEX entry_superseded_once ON entry (supersedes) WHERE supersedes IS NOT NULL;

-- The exact criteria text that verdicts rest on, by content.
CREATE TABLE criteria (
    hash TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    text TEXT NOT NULL
) STRICT;

CREATE TRIGGER entry_never_changes BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
CREATE TRIGGER entry_never_goes BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
CREATE TRIGGER criteria_never_change BEFORE UPDATE ON criteria
BEGIN SELECT RAISE(ABORT, 'criteria are kept as they were'); END;
CREATE TRIGGER criteria_never_go BEFORE DELETE ON criteria
BEGIN SELECT RAISE(ABORT, 'criteria are kept as they were'); END;

-- What stands today: entries that nothing supersedes and that are no withdrawal.
CREATE VIEW standing AS
SELECT * FROM entry AS e
WHERE NOT EXISTS (SELECT 1 FROM entry AS later WHERE later.supersedes = e.seq)
  AND json_extract(e.body, '$.withdrawn') IS NULL;
