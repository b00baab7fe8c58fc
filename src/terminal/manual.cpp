#include "terminal/manual.hpp"

#include "report/document.hpp"
#include "terminal/help.hpp"
#include "terminal/version.hpp"

#include <algorithm>
#include <sstream>

namespace beadbook {
namespace {

/// Text that man takes as it is: its own signs are hidden from it.
std::string plain(const std::string &text) {
    std::string out;
    bool begins = true;
    for (const char c : text) {
        if (begins && (c == '.' || c == '\'')) out += "\\&";
        if (c == '\\')
            out += "\\e";
        else if (c == '-')
            out += "\\-";
        else
            out += c;
        begins = c == '\n';
    }
    return out;
}

std::string head(std::string name, const std::string &summary) {
    const std::string shown = plain(name);
    std::transform(name.begin(), name.end(), name.begin(),
                   [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
    return ".TH \"" + plain(name) + "\" 1 \"\" \"beadbook " + std::string(program_version()) +
           "\"\n.SH NAME\n" + shown + " \\- " + plain(summary) + "\n";
}

/// Lines as they stand.
std::string lines(const std::string &text) { return ".nf\n" + plain(text) + "\n.fi\n"; }

std::string closing() {
    return ".SH EXIT STATUS\n" + lines(std::string(exit_codes)) + ".SH CAUTION\n" +
           plain(std::string(caution)) + "\n";
}

} // namespace

std::string command_manual(const Command &command) {
    std::ostringstream out;
    out << head("beadbook-" + command.name(), command.summary) << ".SH SYNOPSIS\n.B beadbook "
        << plain(command.words) << "\n[options]\n";
    if (const auto &more = command.details; !more.empty()) out << ".SH DESCRIPTION\n" << lines(more);
    out << ".SH OPTIONS\n";
    for (const auto &option : command.options) {
        out << ".TP\n\\fB" << (option.quick ? plain(std::string("-") + option.quick + ", ") : "")
            << plain("--" + option.name) << "\\fR";
        if (!option.value.empty()) out << " \\fI" << plain(option.value) << "\\fR";
        out << "\n" << plain(option.help) << "\n";
    }
    out << ".SH EXAMPLE\n" << lines(command.example) << closing() << ".SH SEE ALSO\n.BR beadbook (1)\n";
    return out.str();
}

std::string program_manual() {
    std::ostringstream out;
    out << head("beadbook", "examination log and acceptance evaluator for weld test coupons")
        << ".SH SYNOPSIS\n.B beadbook\n.I COMMAND\n[words] [options]\n";
    for (const auto &heading : headings()) {
        out << ".SH " << plain(std::string(heading.text)) << "\n";
        for (const auto &c : commands())
            if (c.whom == heading.whom)
                out << ".TP\n.BR beadbook\\-" << c.name() << " (1)\n" << plain(c.summary) << "\n";
    }
    out << closing();
    return out.str();
}

} // namespace beadbook
