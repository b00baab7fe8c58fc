#pragma once

#include "measure/refusal.hpp"
#include "measure/text.hpp"

#include <functional>
#include <string>

namespace beadbook {

/// Collects the mistakes of a file or a request of many parts, so that one run shows them all: the first
/// ones, and how many more.
class Faults {
public:
    explicit Faults(std::size_t most_shown = 20) : most_(most_shown) {}

    /// Runs a step about one part. `where` is asked only for a mistake that is shown.
    template <class F>
    void guard(const std::function<std::string()> &where, F f) {
        try {
            f();
        } catch (const Refusal &e) {
            if (e.kind() == Refusal::Kind::record) throw;
            add(where, e.what(), e.missing() ? e.field() : "");
        }
    }
    void add(const std::function<std::string()> &where, const std::string &what,
             const std::string &lacking = "");
    std::size_t count() const { return count_; }
    bool full() const { return count_ >= most_; }

    /// Throws Refusal if there are any, of `bad`: "3 rows"; the remedies go with it.
    void check(const std::string &bad, const std::vector<Remedy> &remedies = {}) const;

private:
    std::size_t most_;
    std::string text_, field_;
    std::size_t count_ = 0;
    bool same_field_ = true; ///< every mistake lacks `field_`
};

} // namespace beadbook
