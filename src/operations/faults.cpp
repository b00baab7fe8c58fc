#include "operations/faults.hpp"

namespace beadbook {

void Faults::add(const std::function<std::string()> &where, const std::string &what,
                 const std::string &lacking) {
    same_field_ = same_field_ && !lacking.empty() && (count_ == 0 || lacking == field_);
    field_ = lacking;
    if (!full()) text_ += "\n" + where() + ": " + what;
    ++count_;
}

void Faults::check(const std::string &bad, const std::vector<Remedy> &remedies) const {
    if (count_ == 0) return;
    Refusal out = refused(bad + " cannot be taken, nothing was stored:" + text_ +
                          (count_ > most_ ? "\nand " + std::to_string(count_ - most_) + " more" : ""));
    for (const auto &one : remedies) out.mend(one);
    // Where all of them ask the same of the request, that is what to give.
    throw same_field_ ? Refusal(std::move(out).give(field_)) : out;
}

} // namespace beadbook
