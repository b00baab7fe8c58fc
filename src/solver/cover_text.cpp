#include "solver/cover_text.hpp"

#include "solver/limits.hpp"

#include <charconv>
#include <string>
#include <string_view>

namespace beadbook {
namespace {

/// Lines of the input, and numbers of a line. A mistake is kept; what follows it does not matter.
class Reader {
public:
    explicit Reader(std::istream &in) : in_(in) {}

    bool good() const { return good_; }

    void line(std::string_view expected) {
        next();
        good_ = good_ && line_ == expected;
    }

    /// The number of a line "word number".
    int number(std::string_view word, int least, std::size_t most) {
        next();
        const std::string start = std::string(word) + " ";
        if (!good_ || !line_.starts_with(start)) return fail();
        return parse(std::string_view(line_).substr(start.size()), least, most);
    }

    /// Ascending numbers below `most`, at least one, a space between two.
    std::vector<int> numbers(int most) {
        next();
        std::vector<int> out;
        std::string_view rest = line_;
        while (good_) {
            const std::size_t space = rest.find(' ');
            const int least = out.empty() ? 0 : out.back() + 1;
            out.push_back(parse(rest.substr(0, space), least, static_cast<std::size_t>(most) - 1));
            if (space == std::string_view::npos) break;
            rest.remove_prefix(space + 1);
        }
        return out;
    }

    void nothing_more() { good_ = good_ && in_.peek() == std::istream::traits_type::eof(); }

private:
    void next() {
        line_.clear();
        if (!good_) return;
        // Not std::getline: a line without an end must not fill the memory.
        for (int c = in_.get(); c != '\n'; c = in_.get()) {
            if (c == std::istream::traits_type::eof() || ++bytes_ > solver_limits::input_bytes) {
                good_ = false;
                return;
            }
            line_ += static_cast<char>(c);
        }
    }

    int parse(std::string_view text, int least, std::size_t most) {
        int out = 0;
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), out);
        const bool number = !text.empty() && error == std::errc() && end == text.data() + text.size();
        if (!number || out < least || static_cast<std::size_t>(out) > most) return fail();
        return out;
    }

    int fail() {
        good_ = false;
        return 0;
    }

    std::istream &in_;
    std::string line_;
    std::size_t bytes_ = 0;
    bool good_ = true;
};

} // namespace

std::optional<CoverQuestion> read_question(std::istream &in) {
    Reader reader(in);
    CoverQuestion out;
    reader.line("cover 1");
    out.seconds = reader.number("milliseconds", 1, solver_limits::milliseconds) / 1000.0;
    out.sets = reader.number("sets", 1, solver_limits::sets);
    const int elements = reader.number("elements", 1, solver_limits::elements);
    std::size_t entries = 0;
    for (int e = 0; e < elements && reader.good() && entries <= solver_limits::entries; ++e) {
        out.elements.push_back(reader.numbers(out.sets));
        entries += out.elements.back().size();
    }
    if (entries > solver_limits::entries) return std::nullopt;
    reader.line("end");
    reader.nothing_more();
    if (!reader.good()) return std::nullopt;
    return out;
}

void write_reply(const CoverReply &reply, std::ostream &out) {
    out << "cover 1\n"
        << (reply.proven ? "proven" : "best") << "\nat least " << reply.at_least << "\nchosen "
        << reply.chosen.size() << "\n";
    for (std::size_t i = 0; i < reply.chosen.size(); ++i) out << (i == 0 ? "" : " ") << reply.chosen[i];
    out << "\nend\n";
}

} // namespace beadbook
