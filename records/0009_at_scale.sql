-- Version 9. What few coupons have is found without reading all others, and so are the lines of a cohort and those that are to
-- be worked out: a record may hold a million. Indexes alone; the ledger stays as it is.
CREATE INDEX entry_carried ON entry (seq) WHERE kind = 'coupon' AND instr(body, '"before":') > 0;
CREATE INDEX entry_registered_like ON entry (seq) WHERE kind = 'coupon' AND instr(body, '"like":') > 0;
CREATE INDEX coupon_line_by_cohort ON coupon_line (cohort);
CREATE INDEX coupon_line_unkept ON coupon_line (first) WHERE body IS NULL;
