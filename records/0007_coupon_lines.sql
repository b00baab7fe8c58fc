-- Version 7. What lists say of a coupon, worked out once and kept: derived, never the truth. Every entry about a coupon
-- takes its line back, so that none is older than the record; 'verify' works all of them out again.
CREATE TABLE coupon_line (
    first  INTEGER PRIMARY KEY,   -- the coupon's first entry: the order of registration
    coupon TEXT NOT NULL UNIQUE,
    welder TEXT, cohort TEXT, class TEXT, -- of the body, to be asked for
    basis  TEXT,                  -- what the body rests on beside the entries: program, criteria, the shop's own copies
    body   TEXT,                  -- NULL: to be worked out
    hash   TEXT                   -- of coupon, basis and body
) STRICT;
INSERT INTO coupon_line (first, coupon)
    SELECT min(seq), subject FROM entry WHERE family = 'coupon' GROUP BY subject;

CREATE TRIGGER coupon_line_goes AFTER INSERT ON entry WHEN NEW.family = 'coupon'
BEGIN
    INSERT INTO coupon_line (first, coupon) VALUES (NEW.seq, NEW.subject)
    ON CONFLICT (coupon) DO UPDATE SET welder = NULL, cohort = NULL, class = NULL, basis = NULL, body = NULL, hash = NULL;
END;
