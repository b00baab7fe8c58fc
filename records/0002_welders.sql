-- Version 2. Welders beside coupons, and documents. The list of kinds grows, which a CHECK cannot, so the
-- ledger is copied line by line; no line changes, and so no hash does. `subject` was `coupon`.
DROP VIEW standing;
CREATE TABLE entry_2 (
    seq        INTEGER PRIMARY KEY,
    at         TEXT NOT NULL,                -- UTC, 2026-11-25T09:30:00Z
    who        TEXT NOT NULL,
    kind       TEXT NOT NULL CHECK (kind IN ('coupon', 'exam', 'indication', 'remark', 'verdict', 'grade',
                   'welder', 'qualification', 'use', 'training', 'renewal', 'extension', 'revocation')),
    subject    TEXT NOT NULL,                -- the coupon, or the welder's mark
    exam       INTEGER,                      -- number of the exam on its coupon
    number     INTEGER,                      -- of the indication on its coupon, of the welder's qualification
    supersedes INTEGER REFERENCES entry_2 (seq),
    reason     TEXT,                         -- why it supersedes
    body       TEXT NOT NULL CHECK (json_valid(body)),
    previous   TEXT NOT NULL,                -- hash of the entry before; 64 zeros for the first
    hash       TEXT NOT NULL UNIQUE,
    family     TEXT NOT NULL GENERATED ALWAYS AS     -- a coupon and a welder may have the same mark
        (CASE WHEN kind IN ('coupon', 'exam', 'indication', 'remark', 'verdict', 'grade')
              THEN 'coupon' ELSE 'welder' END) VIRTUAL,
    CHECK ((supersedes IS NULL) = (reason IS NULL))
) STRICT;
INSERT INTO entry_2 (seq, at, who, kind, subject, exam, number, supersedes, reason, body, previous, hash)
    SELECT seq, at, who, kind, coupon, exam, number, supersedes, reason, body, previous, hash
    FROM entry ORDER BY seq;
DROP TABLE entry;
ALTER TABLE entry_2 RENAME TO entry;
CREATE INDEX entry_by_subject ON entry (family, subject, seq);
CREATE UNIQUE INDEX entry_superseded_once ON entry (supersedes) WHERE supersedes IS NOT NULL;

CREATE TRIGGER entry_never_changes BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
CREATE TRIGGER entry_never_goes BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;

CREATE VIEW standing AS
SELECT * FROM entry AS e
WHERE NOT EXISTS (SELECT 1 FROM entry AS later WHERE later.supersedes = e.seq)
  AND json_extract(e.body, '$.withdrawn') IS NULL;

-- Papers that entries rest on, by content.
CREATE TABLE document (
    hash  TEXT PRIMARY KEY,
    name  TEXT NOT NULL,
    bytes BLOB NOT NULL
) STRICT;
CREATE TRIGGER document_never_changes BEFORE UPDATE ON document
BEGIN SELECT RAISE(ABORT, 'documents are kept as they were'); END;
CREATE TRIGGER document_never_goes BEFORE DELETE ON document
BEGIN SELECT RAISE(ABORT, 'documents are kept as they were'); END;
