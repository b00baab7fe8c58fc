-- Version 8. Photographs of coupons and finds: the ledger is copied line by line as in versions 2, 4 and 6, because the
-- list of kinds grows; no line changes, and so no hash does.
DROP VIEW standing;
CREATE TABLE entry_8 (
    seq        INTEGER PRIMARY KEY,
    at         TEXT NOT NULL,                -- UTC, 2026-11-25T09:30:00Z
    who        TEXT NOT NULL,
    kind       TEXT NOT NULL CHECK (kind IN ('coupon', 'exam', 'indication', 'remark', 'verdict', 'grade', 'photo',
                   'welder', 'qualification', 'use', 'training', 'renewal', 'extension', 'revocation',
                   'person', 'equipment', 'confirmation', 'filling')),
    subject    TEXT NOT NULL,                -- the coupon, the welder's mark, the person, the serial number, the set
    exam       INTEGER,                      -- number of the exam on its coupon
    number     INTEGER,                      -- of the indication or photo on its coupon, of the welder's qualification
    supersedes INTEGER REFERENCES entry_8 (seq),
    reason     TEXT,                         -- why it supersedes
    body       TEXT NOT NULL CHECK (json_valid(body)),
    previous   TEXT NOT NULL,                -- hash of the entry before; 64 zeros for the first
    hash       TEXT NOT NULL UNIQUE,
    family     TEXT NOT NULL GENERATED ALWAYS AS     -- subjects of two families may be written alike
        (CASE WHEN kind IN ('coupon', 'exam', 'indication', 'remark', 'verdict', 'grade', 'photo') THEN 'coupon'
              WHEN kind IN ('person', 'equipment') THEN kind
              WHEN kind IN ('confirmation', 'filling') THEN 'criteria'
              ELSE 'welder' END) VIRTUAL,
    CHECK ((supersedes IS NULL) = (reason IS NULL))
) STRICT;
INSERT INTO entry_8 (seq, at, who, kind, subject, exam, number, supersedes, reason, body, previous, hash)
    SELECT seq, at, who, kind, subject, exam, number, supersedes, reason, body, previous, hash
    FROM entry ORDER BY seq;
DROP TABLE entry;
ALTER TABLE entry_8 RENAME TO entry;
CREATE INDEX entry_by_subject ON entry (family, subject, seq);
CREATE UNIQUE INDEX entry_superseded_once ON entry (supersedes) WHERE supersedes IS NOT NULL;
CREATE INDEX entry_by_welder ON entry (json_extract(body, '$.fields.welder'), seq) WHERE kind = 'coupon';
-- The last exam of a person and method is found without reading all others.
CREATE INDEX entry_by_examiner ON entry (json_extract(body, '$.examiner'), json_extract(body, '$.method'), seq)
    WHERE kind = 'exam';

CREATE TRIGGER entry_never_changes BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
CREATE TRIGGER entry_never_goes BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
-- As version 7 made it: it went with the table.
CREATE TRIGGER coupon_line_goes AFTER INSERT ON entry WHEN NEW.family = 'coupon'
BEGIN
    INSERT INTO coupon_line (first, coupon) VALUES (NEW.seq, NEW.subject)
    ON CONFLICT (coupon) DO UPDATE SET welder = NULL, cohort = NULL, class = NULL, basis = NULL, body = NULL, hash = NULL;
END;

CREATE VIEW standing AS
SELECT * FROM entry AS e
WHERE NOT EXISTS (SELECT 1 FROM entry AS later WHERE later.supersedes = e.seq)
  AND json_extract(e.body, '$.withdrawn') IS NULL;

-- The bytes of photographs, by content: entries name them by their hash.
CREATE TABLE photo (
    hash  TEXT PRIMARY KEY,
    bytes BLOB NOT NULL
) STRICT;
CREATE TRIGGER photo_never_changes BEFORE UPDATE ON photo
BEGIN SELECT RAISE(ABORT, 'photographs are kept as they were'); END;
CREATE TRIGGER photo_never_goes BEFORE DELETE ON photo
BEGIN SELECT RAISE(ABORT, 'photographs are kept as they were'); END;
