#include "operations/unread_measures.hpp"

#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// What is read of the finds of one type and exam.
class Read {
public:
    Read(const CriteriaSet &set, TypeId type, Exam exam) {
        for (const auto index : set.rules_for(type, exam)) {
            const Rule &rule = set.rules[index];
            measures_ = measures_ || rule.kind != Rule::Kind::presence;
            if (rule.kind == Rule::Kind::sum) add(slot_of(rule.summed));
            add(rule.measure);
            add(rule.where);
            if (rule.linked) add({*rule.linked});
            for (const auto &limit : rule.limits) add(limit.formula);
        }
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

    std::vector<Slot> slots_;
    bool measures_ = false;
};

} // namespace

std::vector<std::string> unread_measures(const CriteriaSet &set, Exam exam, const IndicationRecord &find) {
    std::vector<std::string> out;
    std::vector<Quantity> measured;
    // Length, width and size stand for one another, as far as they can.
    for (const Quantity quantity : {Quantity::depth, Quantity::height, Quantity::angle, Quantity::area})
        if (find.measures.contains(quantity)) measured.push_back(quantity);
    if (measured.empty()) return out;
    const Read read(set, find.type, exam);
    if (!read.measures()) return out;
    for (const Quantity quantity : measured)
        if (!read.reads(quantity))
            out.push_back("#" + std::to_string(find.number) + ": no rule of " + set.name + " reads the " +
                          std::string(info(quantity).name) + " of " + Vocabulary::shipped()[find.type].name +
                          " (" + std::string(name_of(exam)) + "), so no verdict goes by it");
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
