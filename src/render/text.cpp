#include "render/text.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace beadbook {
namespace {

/// Characters as they are shown, not bytes.
std::size_t length_of(std::string_view text) {
    const std::string seen = visible(text);
    return static_cast<std::size_t>(std::count_if(
        seen.begin(), seen.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

/// A word, in pieces where the tone changes within it, and what stands before it.
struct Word {
    std::size_t blanks = 0;
    bool new_line = false;
    std::vector<TextRun> pieces;
    std::size_t length = 0;
};

/// Blanks are counted, so that columns in a line stay.
std::vector<Word> words_in(const Words &words) {
    std::vector<Word> out;
    Word word;
    const auto finish = [&] {
        if (!word.pieces.empty()) out.push_back(std::exchange(word, {}));
    };
    for (const auto &run : words.runs())
        for (std::size_t i = 0; i < run.text.size();) {
            if (run.text[i] == ' ' || run.text[i] == '\n') {
                finish();
                word.new_line = word.new_line || run.text[i] == '\n';
                word.blanks = run.text[i] == '\n' ? 0 : word.blanks + 1;
                ++i;
                continue;
            }
            const std::size_t end = std::min(run.text.find_first_of(" \n", i), run.text.size());
            word.pieces.push_back({run.text.substr(i, end - i), run.tone});
            word.length += length_of(word.pieces.back().text);
            i = end;
        }
    finish();
    return out;
}

class TextRenderer {
public:
    TextRenderer(const Paint &paint, std::size_t width, std::vector<std::size_t> *in_parts = nullptr)
        : paint_(paint), width_(width), in_parts_(in_parts) {}

    std::string operator()(const Document &document) {
        for (const auto &block : document.blocks) std::visit([&](const auto &b) { show(b); }, block);
        return std::move(out_);
    }

private:
    std::string painted(const TextRun &run) const { return paint_(visible(run.text), run.tone); }

    /// Wraps at blanks; the first line begins with `first`, later ones with `indent` blanks.
    void wrap(const Words &words, const std::string &first, std::size_t indent) {
        out_ += visible(first);
        std::size_t column = length_of(first);
        bool begun = false;
        for (const auto &word : words_in(words)) {
            if (word.new_line || (begun && column + word.blanks + word.length > width_)) {
                out_ += "\n" + std::string(indent, ' ');
                column = indent;
            } else {
                out_ += std::string(word.blanks, ' ');
                column += word.blanks;
            }
            for (const auto &piece : word.pieces) out_ += painted(piece);
            column += word.length;
            begun = true;
        }
        out_ += "\n";
    }

    void source(const std::string &text, std::size_t indent) {
        if (!text.empty()) wrap("[" + text + "]", std::string(indent, ' '), indent + 1);
    }

    void show(const Heading &h) {
        if (h.level > 1 && !out_.empty()) out_ += "\n";
        Words strong;
        for (const auto &run : h.words.runs())
            strong += Words(run.text, run.tone == Tone::plain ? Tone::strong : run.tone);
        wrap(strong, "", 2);
    }
    void show(const Paragraph &p) {
        wrap(p.words, "", 2);
        source(p.source, 2);
    }
    void show_item(const Bullet &item, std::size_t depth) {
        const std::size_t indent = 2 * depth + 2;
        wrap(item.words, std::string(2 * depth, ' ') + "- ", indent);
        source(item.source, indent);
        for (const auto &under : item.under) show_item(under, depth + 1);
    }
    void show(const Bullets &list) {
        for (const auto &item : list.items) show_item(item, 1);
    }
    void show(const Fold &fold) {
        show(Heading{fold.title, 2});
        show(Bullets{fold.items});
    }
    void show(const Grid &table) {
        std::vector<std::size_t> widths;
        if (in_parts_) widths.swap(*in_parts_);
        const bool goes_on = !widths.empty();
        widths.resize(table.columns.size());
        for (std::size_t c = 0; c < widths.size(); ++c)
            widths[c] = std::max(widths[c], length_of(table.columns[c].title));
        for (const auto &row : table.rows)
            for (std::size_t c = 0; c < row.size() && c < widths.size(); ++c)
                widths[c] = std::max(widths[c], length_of(row[c].plain()));
        if (table.wrapped) narrow(widths);
        const bool titled = std::any_of(table.columns.begin(), table.columns.end(),
                                        [](const Column &c) { return !c.title.empty(); });
        if (titled && !goes_on) {
            std::vector<Words> head;
            for (const auto &column : table.columns) head.emplace_back(column.title, Tone::strong);
            table.wrapped ? show_wrapped(table, widths, head) : show_row(table, widths, head);
        }
        for (const auto &row : table.rows)
            table.wrapped ? show_wrapped(table, widths, row) : show_row(table, widths, row);
        if (in_parts_) in_parts_->swap(widths);
    }
    /// The widest columns give way until all fit.
    void narrow(std::vector<std::size_t> &widths) const {
        constexpr std::size_t least = 10;
        std::size_t all = 2 * (widths.size() - 1);
        for (const std::size_t width : widths) all += width;
        while (all > width_) {
            const auto widest = std::max_element(widths.begin(), widths.end());
            if (*widest <= least) return;
            --*widest;
            --all;
        }
    }
    /// In lines of at most that width, where its blanks allow it.
    static std::vector<Words> lines_of(const Words &cell, std::size_t width) {
        std::vector<Words> out(1);
        std::size_t column = 0;
        for (const auto &word : words_in(cell)) {
            if (column > 0 && column + word.blanks + word.length > width) {
                out.emplace_back();
                column = 0;
            } else if (column > 0) {
                out.back() += Words(std::string(word.blanks, ' '));
                column += word.blanks;
            }
            for (const auto &piece : word.pieces) out.back() += Words(piece.text, piece.tone);
            column += word.length;
        }
        return out;
    }
    void show_wrapped(const Grid &table, std::vector<std::size_t> widths, const std::vector<Words> &row) {
        std::vector<std::vector<Words>> cells;
        std::size_t lines = 1;
        for (std::size_t c = 0; c < row.size() && c < widths.size(); ++c) {
            cells.push_back(lines_of(row[c], widths[c]));
            lines = std::max(lines, cells.back().size());
        }
        for (std::size_t i = 0; i < lines; ++i) {
            std::vector<Words> line;
            for (std::size_t c = 0; c < cells.size(); ++c) {
                line.push_back(i < cells[c].size() ? cells[c][i] : Words());
                // A word that is longer than its column pushes the others aside.
                widths[c] = std::max(widths[c], length_of(line.back().plain()));
            }
            show_row(table, widths, line);
        }
    }
    void show_row(const Grid &table, const std::vector<std::size_t> &widths, const std::vector<Words> &row) {
        std::string line;
        for (std::size_t c = 0; c < row.size() && c < widths.size(); ++c) {
            const std::string fill(widths[c] - length_of(row[c].plain()), ' ');
            if (c > 0) line += "  ";
            if (table.columns[c].numbers) line += fill;
            for (const auto &run : row[c].runs()) line += painted(run);
            if (!table.columns[c].numbers) line += fill;
        }
        const std::size_t last = line.find_last_not_of(' ');
        out_ += line.substr(0, last == std::string::npos ? 0 : last + 1) + "\n";
    }
    void show(const NamedValues &pairs) {
        std::size_t width = 14;
        for (const auto &row : pairs.rows) width = std::max(width, length_of(row.name));
        for (const auto &row : pairs.rows) {
            Words words = row.value;
            if (!row.note.empty()) words += Words("  (" + row.note + ")", Tone::quiet);
            wrap(words, "  " + row.name + std::string(width + 2 - length_of(row.name), ' '), width + 4);
        }
    }
    void as_it_is(const std::string &drawn) {
        out_ += visible(drawn);
        if (!drawn.empty() && drawn.back() != '\n') out_ += '\n';
    }
    void show(const Drawing &drawing) { as_it_is(drawing.text); }
    void show(const Figure &figure) { as_it_is(figure.text); }
    void show(const Tiles &tiles) {
        for (const auto &figure : tiles.figures) as_it_is(figure.text);
    }
    void show(const NewSheet &) {}   // for paper
    void show(const Signatures &) {} // for paper
    void show(const Caution &) { out_ += "\n" + std::string(caution); }

    const Paint &paint_;
    std::size_t width_;
    std::vector<std::size_t> *in_parts_; ///< widths of the parts before; null: the table is whole
    std::string out_;
};

} // namespace

std::string text(const Document &document, const Paint &paint, std::size_t width) {
    return TextRenderer(paint, width)(document);
}

std::string TextInParts::operator()(const Document &part) {
    return TextRenderer(paint_, std::numeric_limits<std::size_t>::max(), &widths_)(part);
}

} // namespace beadbook
