#include "terminal/line_editor.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <cstdio>
#include <histedit.h>
#include <iostream>

namespace beadbook {

std::string shared_beginning(const std::vector<std::string> &words) {
    if (words.empty()) return "";
    std::string out = words.front();
    for (const auto &word : words)
        out.resize(static_cast<std::size_t>(
            std::mismatch(out.begin(), out.end(), word.begin(), word.end()).first - out.begin()));
    return out;
}

struct LineEditor::Terminal {
    explicit Terminal(Complete how)
        : complete(std::move(how)), line(el_init("beadbook", stdin, stdout, stderr)),
          history(history_init()) {
        HistEvent event;
        ::history(history, &event, H_SETSIZE, 500);
        el_set(line, EL_CLIENTDATA, this);
        el_set(line, EL_PROMPT, &Terminal::prompt_of);
        el_set(line, EL_EDITOR, "emacs");
        el_set(line, EL_SIGNAL, 1);
        el_set(line, EL_HIST, ::history, history);
        el_set(line, EL_ADDFN, "beadbook-complete", "completes a word", &Terminal::by_tab);
        el_set(line, EL_BIND, "^I", "beadbook-complete", nullptr);
    }
    ~Terminal() {
        el_end(line);
        history_end(history);
    }
    Terminal(const Terminal &) = delete;
    Terminal &operator=(const Terminal &) = delete;

    static Terminal &of(EditLine *line) {
        void *self = nullptr;
        el_get(line, EL_CLIENTDATA, &self);
        return *static_cast<Terminal *>(self);
    }
    static char *prompt_of(EditLine *line) { return of(line).prompt.data(); }

    /// One way on: it is typed. Several: what they share, then a list of them.
    static unsigned char by_tab(EditLine *line, int) {
        Terminal &self = of(line);
        const LineInfo *now = el_line(line);
        const std::string_view before(now->buffer, static_cast<std::size_t>(now->cursor - now->buffer));
        const std::size_t blank = before.find_last_of(" \t");
        const std::size_t from = blank == std::string_view::npos ? 0 : blank + 1;
        const std::string_view begun = before.substr(from);
        const auto ways = self.complete(before.substr(0, from), begun);
        if (ways.empty()) return CC_ERROR;
        const std::string shared = shared_beginning(ways);
        if (shared.size() > begun.size()) {
            const std::string more = shared.substr(begun.size()) + (ways.size() == 1 ? " " : "");
            return el_insertstr(line, more.c_str()) == 0 ? CC_REFRESH : CC_ERROR;
        }
        if (ways.size() == 1) return CC_NORM;
        std::printf("\n%s\n", joined(ways, "  ").c_str());
        return CC_REDISPLAY;
    }

    Complete complete;
    std::string prompt;
    EditLine *line;
    History *history;
};

LineEditor::LineEditor(Session &session, Complete complete) : session_(session) {
    if (session.in_is_terminal && &session.in == &std::cin)
        terminal_ = std::make_unique<Terminal>(std::move(complete));
}
LineEditor::~LineEditor() = default;

std::optional<std::string> LineEditor::next(const std::string &prompt) {
    session_.out << std::flush;
    if (terminal_) {
        terminal_->prompt = prompt;
        int length = 0;
        const char *typed = el_gets(terminal_->line, &length);
        if (!typed || length <= 0) return std::nullopt;
        std::string out(typed, static_cast<std::size_t>(length));
        while (!out.empty() && (out.back() == '\n' || out.back() == '\r')) out.pop_back();
        HistEvent event;
        if (!trimmed(out).empty()) ::history(terminal_->history, &event, H_ENTER, out.c_str());
        return out;
    }
    session_.out << prompt << std::flush;
    std::string out;
    if (!std::getline(session_.in, out)) return std::nullopt;
    return out;
}

} // namespace beadbook
