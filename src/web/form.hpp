#pragma once

#include "web/visit.hpp"

namespace beadbook {

/// One thing that a form asks for.
struct Control {
    enum class Kind : std::uint8_t { text, number, day, choice, tick, lines, password, photo };
    std::string name; ///< of the field of the request, as refusals name it
    std::string label;
    std::string value = {};
    Kind kind = Kind::text;
    std::string help = {};
    std::vector<std::string> choices = {}; ///< of a choice, and what a text suggests
    bool anew = false;                     ///< what was sent is not offered again
};

/// A form that works without any module. What was sent stands in it again; the field that was refused is
/// marked, with what was found, expected, and would mend it.
class Form {
public:
    Form(Visit &visit, std::string action, const Refusal *refused = nullptr)
        : visit_(visit), action_(std::move(action)), refused_(refused) {}
    Form &add(const Control &control);
    Form &hidden(const std::string &name, const std::string &value);
    /// The newest entry that the page shows. Shown again after a refusal, the form still says what was seen
    /// when its fields were filled in; but not where just that was refused.
    Form &seen(std::int64_t entry);
    /// HTML between the controls.
    Form &put(const std::string &html);
    /// The whole, with a button of these words; none if they are empty. `attributes` are of the form.
    std::string html(const std::string &button, const std::string &attributes = "") const;

private:
    Visit &visit_;
    std::string action_, inside_;
    const Refusal *refused_;
    bool marked_ = false;
};

/// What was sent and is asked about, with the tick that answers it.
std::string sent_again(Visit &visit, const Refusal &asked, const std::string &button);

/// One button that sends something: undo, say.
std::string deed(const Visit &visit, const std::string &action, const std::string &button,
                 const std::vector<std::pair<std::string, std::string>> &fields = {},
                 const std::string &look = "");

} // namespace beadbook
