#include "operations/turned_verdicts.hpp"

#include "measure/text.hpp"

namespace beadbook {

std::optional<Judged> as_it_stands(Writing &writing, const std::string &coupon) {
    try {
        return judge_coupon(writing.office(), writing.coupon(coupon), {});
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        return std::nullopt;
    }
}

void note_turned_verdicts(const std::string &what, const std::optional<Judged> &before,
                          const std::optional<Judged> &now, std::vector<std::string> &notes) {
    if (!before || !now || before->set->hash != now->set->hash) return;
    std::vector<std::string> changed;
    for (std::size_t k = 0; k < now->judgement.classes.size(); ++k) {
        const Verdict was = before->judgement.classes[k].verdict, is = now->judgement.classes[k].verdict;
        if (was != is)
            changed.push_back("class " + now->set->classes[k].id + " was " + std::string(name_of(was)) +
                              " and is " + std::string(name_of(is)));
    }
    if (!changed.empty())
        notes.push_back(what + " changes the verdict on coupon " + now->mark + " by " + now->set->name +
                        ": " + listed(changed));
}

} // namespace beadbook
