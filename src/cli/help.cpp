#include "cli/help.hpp"

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
  beadbook register T-7 --criteria ufgs-15216n --joint groove --form tube --weld-thickness 3/16in
  beadbook exam T-7 PT --examiner "A. Field" --level II
  beadbook log T-7 "rounded indication 0.06 at 2.1"
  beadbook judge T-7
)";
    for (const auto &heading : headings()) {
        out << "\n" << heading.text << ":\n";
        for (const auto &c : commands())
            if (c.whom == heading.whom)
                out << "  " << c.name() << std::string(12 - c.name().size(), ' ') << c.summary() << "\n";
    }
    out << "\n'beadbook COMMAND --help' tells more. Commands that print data take --json.\n"
        << exit_codes << "\n"
        << caution;
    return out.str();
}

std::string command_help(const Command &command) {
    std::ostringstream out;
    out << "beadbook " << command.line(0) << " [options]\n"
        << command.summary() << "\n\nExample:\n  " << command.example() << "\n";
    if (const std::string more = command.details(); !more.empty()) out << "\n" << more << "\n";
    out << "\n" << options_help(command.all_options()) << "\n" << exit_codes << "\n" << caution;
    return out.str();
}

} // namespace beadbook
