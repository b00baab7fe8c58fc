#include "operations/unread_measures.hpp"

#include "criteria/own_measure.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// What is read of the finds of one type and exam.
class Read {
public:
    Read(const CriteriaSet &set, TypeId type, Exam exam) : own_(own_measure(Vocabulary::shipped(), type)) {
        for (const auto index : set.rules_for(type, exam)) {
            const Rule &rule = set.rules[index];
            measures_ = measures_ || rule.kind != Rule::Kind::presence;
            // Sums, counts, gaps and shapes go by where a find begins and ends.
            extent_ = extent_ || rule.shape != Shape::unknown ||
                      (rule.kind != Rule::Kind::presence && rule.kind != Rule::Kind::each);
            if (rule.kind == Rule::Kind::sum) add(slot_of(rule.summed));
            add(rule.measure);
            add(rule.where);
            if (rule.linked) add({*rule.linked});
            for (const auto &limit : rule.limits) add(limit.formula);
        }
        for (const auto &one : set.merges) extent_ = extent_ || one.subject.covers(type, exam);
        for (const auto &one : set.relevance)
            if (one.subject.covers(type, exam)) add(one.ignore);
        for (const auto &one : set.gaps)
            if (one.subject && one.subject->covers(type, exam)) add(one.where);
    }

    /// Some rule measures them: what is allowed or not whatever it measures needs no telling.
    bool measures() const { return measures_; }
    bool reads(Quantity quantity) const {
        return std::find(slots_.begin(), slots_.end(), slot_of(quantity)) != slots_.end();
    }
    /// What tells how large it is. Length, width and size stand for one another, as far as they can; of a
    /// dimension that is checked they do not.
    std::vector<Quantity> extents() const {
        if (own_ == OwnMeasure::dimension) return {Quantity::size};
        if (own_ == OwnMeasure::extent) return {Quantity::size, Quantity::length, Quantity::width};
        return {};
    }
    bool reads_extent() const {
        if (own_ == OwnMeasure::dimension) return reads(Quantity::size);
        const auto all = {Quantity::size, Quantity::length,      Quantity::width,
                          Quantity::area, Quantity::nearest_gap, Quantity::nearest_like_gap};
        return extent_ || std::any_of(all.begin(), all.end(), [&](Quantity q) { return reads(q); });
    }

private:
    void add(Slot slot) { slots_.push_back(slot); }
    void add(const Formula &formula) {
        if (formula.nodes().empty()) return;
        for (const Slot slot : formula.quantities()) add(slot);
        for (const Table *table : formula.tables()) add(table->by);
    }
    void add(const std::vector<Condition> &conditions) {
        for (const auto &c : conditions) {
            add(c.left);
            for (const auto &edge : c.edges) add(edge.right);
        }
    }

    OwnMeasure own_;
    std::vector<Slot> slots_;
    bool measures_ = false, extent_ = false;
};

} // namespace

std::vector<std::string> unread_measures(const CriteriaSet &set, Exam exam, const IndicationRecord &find) {
    std::vector<std::string> out;
    if (find.measures.empty()) return out;
    const Read read(set, find.type, exam);
    if (!read.measures()) return out;
    const auto tell = [&](Quantity quantity) {
        out.push_back("#" + std::to_string(find.number) + ": no rule of " + set.name + " reads the " +
                      std::string(info(quantity).name) + " of " + Vocabulary::shipped()[find.type].name +
                      " (" + std::string(name_of(exam)) + "), so no verdict goes by it");
    };
    const auto measured = [&](Quantity quantity) { return find.measures.contains(quantity); };
    for (const Quantity quantity : {Quantity::depth, Quantity::height, Quantity::angle, Quantity::area})
        if (measured(quantity) && !read.reads(quantity)) tell(quantity);
    const auto extents = read.extents();
    const auto extent = std::find_if(extents.begin(), extents.end(), measured);
    if (extent != extents.end() && !read.reads_extent()) tell(*extent);
    return out;
}

std::vector<std::string> unread_measures(Catalogue &catalogue, const CouponRecord &coupon, Exam exam,
                                         const IndicationRecord &find) {
    if (coupon.get("criteria").empty()) return {};
    try {
        return unread_measures(*catalogue.criteria(coupon.get("criteria")), exam, find);
    } catch (const Refusal &) {
        return {}; // a file that is gone: judging says so
    }
}

} // namespace beadbook
