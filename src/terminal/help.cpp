#include "terminal/help.hpp"

#include "measure/text.hpp"
#include "report/document.hpp"

#include <sstream>

namespace beadbook {

const std::string_view exit_codes =
    "Exit codes: 0 done, accepted; 1 rejected, uncovered; 5 cannot say; 6 work not allowed;\n"
    "2 wrong usage; 3 bad data, nothing stored; 4 trouble with the record; 7 stored, but not told; 130 "
    "interrupted.\n";

const std::vector<Section> &headings() {
    static const std::vector<Section> all{{For::technician, "Who examines"},
                                          {For::instructor, "Who tests welders"},
                                          {For::welder, "Who welds"},
                                          {For::keeper, "Who keeps the record and its criteria"}};
    return all;
}

std::string program_help() {
    std::ostringstream out;
    out << R"(beadbook COMMAND ...   examination log and acceptance evaluator for weld test coupons

Example:
  beadbook register T-7 --criteria ufgs-15216n --joint groove --form tube --seam girth --diameter 2in \
      --thickness 0.065in --weld-thickness full --magnetic no --material "stainless steel"
  beadbook exam T-7 VT --examiner "A. Field" --level II --found none
  beadbook exam T-7 PT --examiner "A. Field" --level II --condition "dwell=10 min"
  beadbook log T-7 "rounded indication 0.01 at 2:30" --finish
  beadbook judge T-7
)";
    for (const auto &heading : headings()) {
        out << "\n" << heading.text << ":\n";
        for (const auto &c : commands())
            if (c.whom == heading.whom)
                out << "  " << c.name() << std::string(12 - c.name().size(), ' ') << c.summary << "\n";
    }
    out << "\n'beadbook COMMAND --help' tells more. Commands that print data take --json.\n"
        << exit_codes << "\n"
        << caution;
    return out.str();
}

namespace {

/// Long lines wrapped, with their indent; those that go on in the next one are wrapped as one.
std::string fitted(const std::string &text, std::size_t width) {
    constexpr std::size_t goes_on = 80; // a line of a paragraph that ends sooner ends it
    std::string out, paragraph;
    const auto finish = [&] {
        if (!paragraph.empty())
            out += (out.empty() ? "" : "\n") + wrapped(paragraph, width, paragraph.find_first_not_of(' '));
        paragraph.clear();
    };
    std::istringstream lines(text);
    bool joins = false;
    for (std::string line; std::getline(lines, line);) {
        if (!joins || line.starts_with(' ')) finish();
        joins = !line.starts_with(' ') && line.size() >= goes_on;
        if (line.starts_with(' ') && line.size() <= width)
            out += (out.empty() ? "" : "\n") + line; // its columns stay
        else
            paragraph += (paragraph.empty() ? "" : " ") + line;
    }
    finish();
    return out;
}

} // namespace

std::string command_help(const Command &command, std::size_t width) {
    std::ostringstream out;
    out << wrapped("beadbook " + command.words + " [options]", width, 0) << "\n"
        << command.summary << "\n\nExample:\n  " << command.example << "\n";
    if (const std::string &more = command.details; !more.empty()) out << "\n" << fitted(more, width) << "\n";
    out << "\n"
        << options_help(command.options, width) << "\n"
        << fitted(std::string(exit_codes), width) << "\n\n"
        << fitted(std::string(caution), width) << "\n";
    return out.str();
}

} // namespace beadbook
