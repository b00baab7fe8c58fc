-- Version 5. What pages have sent, by the key that each thing is sent under: what comes twice is entered once.
CREATE TABLE sent (
    key    TEXT PRIMARY KEY,
    hash   TEXT NOT NULL,                    -- of what was sent: the same key with other words is refused
    answer TEXT NOT NULL                     -- what was answered, and is answered again
) STRICT, WITHOUT ROWID;
CREATE TRIGGER sent_never_changes BEFORE UPDATE ON sent
BEGIN SELECT RAISE(ABORT, 'what was answered stays so'); END;
CREATE TRIGGER sent_never_goes BEFORE DELETE ON sent
BEGIN SELECT RAISE(ABORT, 'what was answered stays so'); END;
