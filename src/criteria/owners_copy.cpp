#include "criteria/owners_copy.hpp"

#include "measure/print.hpp"

#include <algorithm>

namespace beadbook {
namespace {

bool part_of_a_blank_name(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; }

/// `blank largest-pore` becomes the number: whoever reads the limit sees what it is.
void put_in_text(std::string &text, const std::string &blank, const std::string &value) {
    const std::string sought = "blank " + blank;
    for (std::size_t at = 0; (at = text.find(sought, at)) != std::string::npos;) {
        const std::size_t end = at + sought.size();
        if (end < text.size() && part_of_a_blank_name(text[end])) {
            at = end;
            continue;
        }
        text.replace(at, sought.size(), value);
        at += value.size();
    }
}

/// Puts in what one class has filled.
class Filler {
public:
    Filler(CriteriaSet &set, std::size_t class_index) : set_(set), class_(class_index) {}

    void take(const Filling &filling) {
        const Blank &blank = *set_.blank(filling.blank);
        values_[static_cast<Slot>(&blank - set_.blanks.data())] = filling.value;
        texts_.emplace_back(blank.id, print_exact(filling.value, blank.dimension(), set_.unit));
        by_.push_back(filling);
    }

    void fill() {
        for (auto &rule : set_.rules) {
            const auto lacking = set_.blanks_of(rule, class_);
            if (lacking.empty()) continue;
            if (Limit &limit = rule.limits[class_]; limit.kind == Limit::Kind::value) {
                put_in(limit.formula, limit.formula.text);
                for (const auto &[blank, value] : texts_) put_in_text(limit.text, blank, value);
            }
            if (!rule.windows.empty() && rule.windows[class_].length.has_blanks()) {
                put_in(rule.windows[class_].length, rule.windows[class_].text);
                rule.window_by_class = true; // from now on the classes may differ
            }
            if (set_.blanks_of(rule, class_).empty()) stand(rule.standings[class_], lacking);
        }
    }

private:
    void put_in(Formula &formula, std::string &text) {
        if (!formula.has_blanks()) return;
        formula = formula.filled(values_);
        for (const auto &[blank, value] : texts_) put_in_text(text, blank, value);
    }

    /// Who filled what the limit hangs on, each once.
    void stand(Standing &standing, const std::vector<Slot> &lacking) {
        std::string who;
        for (const auto &one : by_) {
            const bool bears = std::any_of(lacking.begin(), lacking.end(),
                                           [&](Slot slot) { return set_.blanks[slot].id == one.blank; });
            if (bears && who.find(one.by) == std::string::npos) who += (who.empty() ? "" : "; ") + one.by;
        }
        standing.kind = Standing::Kind::filled;
        standing.source = who;
    }

    CriteriaSet &set_;
    std::size_t class_;
    std::map<Slot, Exact> values_;
    std::vector<std::pair<std::string, std::string>> texts_;
    std::vector<Filling> by_;
};

template <class List>
void confirm_in(List &list, const ConfirmedLimit &one) {
    for (auto &part : list)
        if (part.id == one.part) part.standing.confirmed = one.words;
}

void confirm(CriteriaSet &set, const ConfirmedLimit &one) {
    if (const auto index = set.class_index(one.class_id)) {
        for (auto &rule : set.rules)
            if (rule.id == one.part) rule.standings[*index].confirmed = one.words;
        return;
    }
    confirm_in(set.scope, one);
    confirm_in(set.relevance, one);
    confirm_in(set.merges, one);
    confirm_in(set.required, one);
}

} // namespace

std::shared_ptr<const CriteriaSet> with_owners_copy(std::shared_ptr<const CriteriaSet> set,
                                                    const OwnersCopy &copy) {
    if (copy.empty()) return set;
    auto out = std::make_shared<CriteriaSet>(*set);
    for (std::size_t c = 0; c < out->classes.size(); ++c) {
        Filler filler(*out, c);
        bool any = false;
        for (const auto &one : copy.fillings) {
            if (one.class_id != out->classes[c].id || !out->blank(one.blank)) continue;
            filler.take(one);
            out->fillings.push_back(one);
            any = true;
        }
        if (any) filler.fill();
    }
    for (const auto &one : copy.confirmed) confirm(*out, one);
    out->fallen = copy.fallen;
    return out;
}

} // namespace beadbook
