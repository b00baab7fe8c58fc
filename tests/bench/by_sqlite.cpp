#include "by_sqlite.hpp"

#include "figures.hpp"

#include <SQLiteCpp/SQLiteCpp.h>
#include <SQLiteCpp/VariadicBind.h>
#include <string>

namespace beadbook::bench {
namespace {

/// Numbers are nanometres; T is a quarter of an inch, so T/3 and T/2 are over the limits in thousandths of
/// two classes, and the limits of all three are these.
constexpr const char *limits = R"(
create table row(class integer primary key, size integer, sum integer, apart integer);
insert into row values (0, 1524000, 3048000, 5), (1, 2032000, 6096000, 4), (2, 2540000, 15240000, 3);
create table pore(coupon integer, number integer, at integer, till integer, size integer);
)";

constexpr const char *query = R"(
with gap as (
  select coupon, size, max(0, at - lag(till) over line) as free, max(size, lag(size) over line) as larger
  from pore window line as (partition by coupon order by at)),
begin as (select coupon, at as start from pore union all select coupon, till - 25400000 from pore),
held as (
  select b.coupon, sum(max(0, min(p.till, b.start + 25400000) - max(p.at, b.start))) as held
  from begin b join pore p on p.coupon = b.coupon group by b.coupon, b.start),
most as (select coupon, max(held) as held from held group by coupon),
worst as (
  select g.coupon, row.class,
         max(g.size > row.size or (g.free is not null and g.free < row.apart * g.larger)) as out
  from gap g, row group by g.coupon, row.class)
select count(*) from worst join most using (coupon) join row using (class) where out or most.held > row.sum
)";

} // namespace

JobDone judge_by_sqlite(const std::vector<PoresOfCoupon> &coupons) {
    SQLite::Database db(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec(limits);
    SQLite::Transaction all(db);
    SQLite::Statement insert(db, "insert into pore values (?, ?, ?, ?, ?)");
    for (std::size_t c = 0; c < coupons.size(); ++c)
        for (std::size_t i = 0; i < coupons[c].size(); ++i) {
            const Pore &p = coupons[c][i];
            SQLite::bind(insert, static_cast<std::int64_t>(c), static_cast<std::int64_t>(i + 1), p.at,
                         p.at + p.size, p.size);
            insert.exec();
            insert.reset();
        }
    all.commit();
    db.exec("create index by_coupon on pore(coupon, at, till, size); analyze");
    JobDone out;
    const double seconds = processor_seconds_of([&] {
        SQLite::Statement select(db, query);
        select.executeStep();
        out.rejected = static_cast<std::size_t>(select.getColumn(0).getInt64());
    });
    out.ns_each = seconds * 1e9 / static_cast<double>(coupons.size());
    return out;
}

} // namespace beadbook::bench
