#pragma once

#include "report/picture.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace beadbook {

/// How a piece of text is meant; each renderer has its own way to show it, and none by colour alone.
enum class Tone { plain, strong, quiet, accept, reject, cannot_say };

struct TextRun {
    std::string text;
    Tone tone = Tone::plain;
    int exam = 0; ///< of the coupon that the document is about, which these words name: a page leads there
    bool typed = false; ///< what to type, which is told as text alone: a page has buttons for it
};

/// A line of text, in pieces where the tone changes.
class Words {
public:
    Words() = default;
    Words(std::string text) { add({std::move(text), Tone::plain}); }
    Words(const char *text) : Words(std::string(text)) {}
    Words(std::string text, Tone tone) { add({std::move(text), tone}); }
    /// What names an exam of the document's coupon.
    static Words of_exam(std::string text, int exam) {
        Words out;
        out.add({std::move(text), Tone::plain, exam});
        return out;
    }

    const std::vector<TextRun> &runs() const { return runs_; }
    /// What to type for it at the command line.
    static Words to_type(std::string text) {
        Words out;
        out.add({std::move(text), Tone::plain, 0, true});
        return out;
    }

    bool empty() const { return runs_.empty(); }
    std::string plain() const {
        std::string out;
        for (const auto &run : runs_) out += run.text;
        return out;
    }
    Words &operator+=(const Words &more) {
        for (const auto &run : more.runs_) add(run);
        return *this;
    }
    friend Words operator+(Words a, const Words &b) { return a += b; }

private:
    void add(TextRun run) {
        if (!run.text.empty()) runs_.push_back(std::move(run));
    }
    std::vector<TextRun> runs_;
};

struct Heading {
    Words words;
    int level = 1; ///< 1: of the whole, 2: of a part
};

/// A sentence or a few, wrapped; `source` is the clause and standing that they rest on.
struct Paragraph {
    Words words;
    std::string source;
};

struct Bullet {
    Words words;
    std::string source;
    std::vector<Bullet> under;
};
struct Bullets {
    std::vector<Bullet> items;
};

/// A list that the reader of a page opens; as text and on paper it stands under its title.
struct Fold {
    std::string title;
    std::vector<Bullet> items;
    std::vector<std::size_t> in_short = {}; ///< which of them stand where there is room for a few only
};

struct Column {
    std::string title;
    bool numbers = false; ///< aligned to the right
};
/// A list with a column a fact. Columns without any title have no header line.
struct Grid {
    std::vector<Column> columns;
    std::vector<std::vector<Words>> rows;
    bool wrapped = false; ///< as text, its cells are broken to the width of the terminal
};

/// Names and values, with a remark beside.
struct NamedValue {
    std::string name;
    Words value;
    std::string note;
};
struct NamedValues {
    std::vector<NamedValue> rows;
};

/// Drawn with characters, kept as it is.
struct Drawing {
    std::string text;
};

/// A picture with what it shows in words.
struct Figure {
    Picture picture;
    std::optional<Picture> narrow; ///< the same for a page less than 560 px wide
    std::string caption;
    std::string text; ///< the same facts drawn with characters, kept as it is; empty where they stand beside
};
/// Figures side by side, as many as fit, none broken over two pages: labels.
struct Tiles {
    std::vector<Figure> figures;
};

/// The usual caution.
struct Caution {};

/// For signatures on paper.
struct Signatures {
    std::vector<std::string> lines;
};

/// What follows begins on a new sheet of paper.
struct NewSheet {
    std::string of = {}; ///< what the foot of each sheet from here on names; empty: what it named before
};

using Block = std::variant<Heading, Paragraph, Bullets, Fold, Grid, NamedValues, Drawing, Figure, Tiles,
                           Signatures, Caution, NewSheet>;

/// What a person reads: made once from a result, shown by the command line, a page and a printout alike.
struct Document {
    std::string title; ///< of a page; the text form shows headings only
    std::string foot;  ///< of each sheet of paper, beside what it is of; empty: sheets are not marked
    std::vector<Block> blocks;

    template <class B>
    Document &add(B block) {
        blocks.emplace_back(std::in_place_type<B>, std::move(block));
        return *this;
    }
    Document &heading(Words words, int level = 1) { return add(Heading{std::move(words), level}); }
    Document &line(Words words, std::string source = "") {
        return add(Paragraph{std::move(words), std::move(source)});
    }
    Document &item(Words words, std::string source = "", std::vector<Bullet> under = {}) {
        if (blocks.empty() || !std::holds_alternative<Bullets>(blocks.back())) add(Bullets{});
        std::get<Bullets>(blocks.back())
            .items.push_back({std::move(words), std::move(source), std::move(under)});
        return *this;
    }
    Document &pair(std::string name, Words value, std::string note = "") {
        if (blocks.empty() || !std::holds_alternative<NamedValues>(blocks.back())) add(NamedValues{});
        std::get<NamedValues>(blocks.back())
            .rows.push_back({std::move(name), std::move(value), std::move(note)});
        return *this;
    }
    Document &gap() { return add(Paragraph{}); } ///< an empty line
    Document &caution() { return add(Caution{}); }
};

/// Printed under everything that a decision could rest on.
inline constexpr std::string_view caution =
    "An aid, not the code: the governing code, the contract and certified personnel decide. Limits marked\n"
    "'memory' or 'second hand' must be checked against the owner's copy before use.\n";

} // namespace beadbook
