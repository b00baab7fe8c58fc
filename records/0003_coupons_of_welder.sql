-- Version 3. A welder's coupons are found without reading all others.
CREATE INDEX entry_by_welder ON entry (json_extract(body, '$.fields.welder'), seq) WHERE kind = 'coupon';
