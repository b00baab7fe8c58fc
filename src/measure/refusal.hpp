#pragma once

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// What would mend a refusal: an operation by its name, on what, and which fields it must be given.
struct Remedy {
    std::string operation;           ///< as the operations are named: change, exam, enrol
    std::vector<std::string> on;     ///< its subject: a coupon's mark, say
    std::vector<std::string> fields; ///< of the request, to be given; "found=none" where its value is known
    std::string value = {};          ///< of the first of them, where only one can be meant
};

/// Why something was not taken: what was found and what was expected. No shell's words stand in it: the
/// command line says which option gives `field`, a page marks it, and both tell `remedies` their own way.
class Refusal : public std::runtime_error {
public:
    enum class Kind {
        request, ///< what was asked lacks a part or contradicts itself
        data,    ///< a value, a file or what is on record does not allow it; nothing was stored
        record,  ///< the record file cannot be used: busy, damaged, foreign, newer, read-only, disk full
    };

    Refusal(Kind kind, const std::string &what) : std::runtime_error(what), kind_(kind) {}

    Kind kind() const { return kind_; }
    /// The field of the request that is missing or wrong; empty if none is.
    const std::string &field() const { return field_; }
    /// The field was not given, and must be.
    bool missing() const { return missing_; }
    /// What it would most likely be given; empty if nobody can say.
    const std::string &example() const { return example_; }
    const std::vector<Remedy> &remedies() const { return remedies_; }
    /// The same in other words.
    Refusal told(const std::string &what) const {
        Refusal out(kind_, what);
        out.field_ = field_;
        out.missing_ = missing_;
        out.example_ = example_;
        out.remedies_ = remedies_;
        return out;
    }

    Refusal &&at(std::string field) && {
        field_ = std::move(field);
        return std::move(*this);
    }
    Refusal &&give(std::string field, std::string example = "") && {
        missing_ = true;
        example_ = std::move(example);
        return std::move(*this).at(std::move(field));
    }
    void mend(Remedy remedy) & { remedies_.push_back(std::move(remedy)); }
    Refusal &&mend(Remedy remedy) && {
        mend(std::move(remedy)); // this one is an lvalue here
        return std::move(*this);
    }

private:
    Kind kind_;
    std::string field_, example_;
    bool missing_ = false;
    std::vector<Remedy> remedies_;
};

/// What a step refuses without naming a field is of this one.
template <class Step>
decltype(auto) at_field(const std::string &field, Step step) {
    try {
        return step();
    } catch (const Refusal &e) {
        if (!e.field().empty()) throw;
        throw Refusal(e).at(field);
    }
}

/// A request that lacks a part: `field` is the one to give.
inline Refusal lacking(std::string field, const std::string &what) {
    return Refusal(Refusal::Kind::request, what).give(std::move(field));
}
/// Data that cannot be taken as they are.
inline Refusal refused(const std::string &what) { return {Refusal::Kind::data, what}; }

/// Data that cannot be taken: says what was found, what was expected and how to mend it.
struct DataError : Refusal {
    explicit DataError(const std::string &what) : Refusal(Kind::data, what) {}
};

/// The record file cannot be used.
struct StoreError : Refusal {
    explicit StoreError(const std::string &what) : Refusal(Kind::record, what) {}
};

/// Input that cannot be understood. `column` is 0-based within the text that was parsed.
struct InputError : Refusal {
    explicit InputError(const std::string &what, std::size_t at = 0)
        : Refusal(Kind::data, what), column(at) {}
    std::size_t column;
};

} // namespace beadbook
