#include "criteria/nominal_size.hpp"

#include "criteria/rule_reader.hpp"
#include "criteria/shipped.hpp"
#include "language/fields.hpp"
#include "measure/parse.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <cctype>
#include <stdexcept>

namespace beadbook {
namespace {

Exact nanometres(std::string_view size) { return parse_typed(size, Dimension::length, {}).value; }

std::string source_of(const Standing &standing) {
    return standing.source + ", " + std::string(name_of(standing.kind));
}

/// Words in small letters, a number apart from what stands right behind it: "16ga" is 16 and ga, "10S" stays.
std::vector<std::string> parts_of(std::string_view text) {
    std::vector<std::string> out;
    for (const auto word : words_of(text)) {
        std::string part = lowered(word);
        const auto letter =
            std::find_if_not(part.begin(), part.end(), [](char c) { return is_digit(c) || c == '.'; });
        if (letter != part.begin() && part.end() - letter > 1 &&
            std::isalpha(static_cast<unsigned char>(*letter))) {
            out.emplace_back(part.begin(), letter);
            part.erase(part.begin(), letter);
        }
        const auto number = std::find_if(part.begin(), part.end(), is_digit);
        if (number != part.begin() && number != part.end() &&
            std::isalpha(static_cast<unsigned char>(part.front()))) {
            out.emplace_back(part.begin(), number);
            part.erase(part.begin(), number);
        }
        out.push_back(std::move(part));
    }
    for (auto &part : out)
        if (part.size() > 1 && part.back() == '.') part.pop_back(); // sch. 40
    return out;
}

bool is_schedule_alone(const std::string &part) { return part == "std" || part == "xs" || part == "xxs"; }
bool says_schedule(const std::string &part) { return part == "sch" || part == "sched" || part == "schedule"; }
bool says_gauge(const std::string &part) { return part == "ga" || part == "gauge" || part == "gage"; }

/// Numbers or schedules with their sizes, which are in inches.
std::vector<std::pair<std::string, std::string>> sizes_in(const Fields &fields, std::string_view key,
                                                          Issues &issues) {
    std::vector<std::pair<std::string, std::string>> out;
    const Yaml *node = fields.get(key);
    if (!node) return out;
    for (const auto &entry : node->entries)
        if (const auto size = scalar_text(entry.value, fields.path_of(key) + "." + entry.key, issues)) {
            out.emplace_back(entry.key, *size + " in");
            try {
                nanometres(out.back().second);
            } catch (const InputError &e) {
                issues.error(entry.value.where, fields.path_of(key), e.what());
            }
        }
    return out;
}

std::vector<std::string> texts_in(const Fields &fields, std::string_view key) {
    std::vector<std::string> out;
    for (const Yaml *word : fields.words(key)) out.push_back(word->text);
    return out;
}

template <class Walls>
std::string names_of(const Walls &walls) {
    std::vector<std::string> out;
    for (const auto &[name, size] : walls) out.push_back(name);
    return listed(out);
}

/// A size that stands before a name in brackets must be what the name comes to.
std::optional<NominalSize> agreeing(std::optional<NominalSize> found, std::string_view size,
                                    std::string_view called) {
    if (!found)
        throw InputError("'(" + shown(called) + ")' is no size that is known by a number, such as NPS 2");
    if (nanometres(size) != nanometres(found->size))
        throw InputError("'" + shown(size) + "' is not " + found->called + ", which is " + found->size);
    return found;
}

} // namespace

std::pair<std::string_view, std::string_view> size_and_name(std::string_view text) {
    text = trimmed(text);
    const std::size_t open = text.find('(');
    if (open == std::string_view::npos || open == 0 || text.back() != ')') return {text, {}};
    return {trimmed(text.substr(0, open)), trimmed(text.substr(open + 1, text.size() - open - 2))};
}

const NominalSizes &NominalSizes::shipped() {
    static const NominalSizes out = [] {
        Issues issues;
        NominalSizes read_in = read(shipped_file("nominal-sizes.yaml"), issues);
        if (issues.any_error())
            throw std::logic_error("built-in nominal-sizes.yaml: " + issues.all().front().text);
        return read_in;
    }();
    return out;
}

NominalSizes NominalSizes::read(const std::string &text, Issues &issues) {
    NominalSizes out;
    const Yaml root = read_yaml(text, issues);
    if (issues.any_error()) return out;
    const Fields top(root, "", {"pipes", "gauges"}, issues);
    if (const Yaml *node = top.need("pipes")) {
        const Fields pipes(*node, "pipes", {"standing", "sizes"}, issues);
        out.of_pipes_ = read_standing(pipes, issues);
        for (const Yaml *one : pipes.items("sizes")) {
            const Fields fields(*one, "pipes.sizes", {"nps", "outside", "walls"}, issues);
            Pipe pipe{fields.needed_text("nps"),
                      {},
                      fields.needed_text("outside") + " in",
                      sizes_in(fields, "walls", issues)};
            try {
                pipe.number = parse_amount(pipe.nps, Dimension::number);
                nanometres(pipe.outside);
            } catch (const InputError &e) {
                fields.error("nps", e.what());
            }
            out.pipes_.push_back(std::move(pipe));
        }
    }
    for (const Yaml *one : top.items("gauges")) {
        const Fields fields(*one, "gauges", {"name", "also", "metals", "form", "standing", "thickness"},
                            issues);
        out.gauges_.push_back({fields.needed_text("name"), texts_in(fields, "also"),
                               texts_in(fields, "metals"), fields.text("form") == "tube",
                               read_standing(fields, issues), sizes_in(fields, "thickness", issues)});
    }
    return out;
}

const NominalSizes::Pipe &NominalSizes::pipe_of(std::string_view number, std::string_view text) const {
    std::size_t at = 0;
    const auto nps = scan_number(number, at);
    std::vector<std::string> known;
    for (const auto &pipe : pipes_) {
        if (nps && at == number.size() && pipe.number == *nps) return pipe;
        known.push_back(pipe.nps);
    }
    throw InputError("'" + shown(text) + "' is no pipe of the table, which has NPS " + listed(known));
}

std::optional<NominalSize> NominalSizes::outside(std::string_view text) const {
    if (const auto [size, called] = size_and_name(text); !called.empty())
        return agreeing(outside(called), size, called);
    auto parts = parts_of(text);
    const auto nps = std::find(parts.begin(), parts.end(), "nps");
    if (nps == parts.end()) return std::nullopt;
    parts.erase(nps);
    if (std::any_of(parts.begin(), parts.end(), says_schedule))
        throw InputError("'" + shown(text) +
                         "' says the wall too; give that as the thickness, such as sch 40");
    const Pipe &pipe = pipe_of(joined(parts, " "), text);
    return NominalSize{pipe.outside, "NPS " + pipe.nps, source_of(of_pipes_)};
}

std::optional<NominalSize> NominalSizes::wall(std::string_view text, const BesideWall &beside) const {
    if (const auto [size, called] = size_and_name(text); !called.empty())
        return agreeing(wall(called, beside), size, called);
    if (auto out = by_schedule(text, beside)) return out;
    return by_gauge(text, beside);
}

std::optional<NominalSize> NominalSizes::by_schedule(std::string_view text, const BesideWall &beside) const {
    const auto parts = parts_of(text);
    const auto at = std::find_if(parts.begin(), parts.end(), [](const std::string &part) {
        return says_schedule(part) || is_schedule_alone(part);
    });
    if (at == parts.end()) return std::nullopt;
    const std::vector<std::string> before(parts.begin(), at);
    const std::string schedule =
        joined({at + (says_schedule(*at) ? 1 : 0), parts.end()}, ""); // "10", "S" and "10S" are one
    const Pipe *pipe = nullptr;
    if (!before.empty() && before.front() == "nps") {
        pipe = &pipe_of(joined({before.begin() + 1, before.end()}, " "), text);
        if (beside.outside && *beside.outside != nanometres(pipe->outside))
            throw InputError("'" + shown(text) + "' is the wall of another pipe: NPS " + pipe->nps + " is " +
                             pipe->outside + " outside, and the diameter says otherwise");
    } else if (!before.empty()) {
        return std::nullopt;
    } else if (!beside.outside) {
        throw InputError("'" + shown(text) + "' is of which pipe? give the diameter too, such as NPS 2");
    }
    for (const auto &one : pipes_)
        if (!pipe && beside.outside == nanometres(one.outside)) pipe = &one;
    if (!pipe)
        throw InputError("'" + shown(text) +
                         "': the diameter is that of no pipe; give it as NPS, such as NPS 2");
    for (const auto &[name, size] : pipe->walls)
        if (same_word(name, schedule))
            return NominalSize{size,
                               "NPS " + pipe->nps + (is_schedule_alone(lowered(name)) ? " " : " sch ") + name,
                               source_of(of_pipes_)};
    throw InputError("'" + shown(text) + "': the table has no such wall of NPS " + pipe->nps +
                     (pipe->walls.empty() ? "" : "; it has " + names_of(pipe->walls)));
}

bool NominalSizes::Gauge::is_called(std::string_view word) const {
    return same_word(name, word) || !word_among(word, also).empty();
}

std::optional<NominalSize> NominalSizes::Gauge::of(std::string_view number) const {
    for (const auto &[gauge, size] : thickness)
        if (gauge == number) return NominalSize{size, gauge + " ga " + name, source_of(standing)};
    return std::nullopt;
}

std::optional<NominalSize> NominalSizes::by_gauge(std::string_view text, const BesideWall &beside) const {
    auto parts = parts_of(text);
    const bool said = std::any_of(parts.begin(), parts.end(), says_gauge);
    std::erase_if(parts, says_gauge);
    std::string number;
    std::erase_if(parts, [&](const std::string &part) {
        const bool digits = number.empty() && part.find_first_not_of("0123456789") == std::string::npos;
        if (digits) number = part;
        return digits;
    });
    const std::string word = joined(parts, " ");
    const bool tubes = std::any_of(gauges_.begin(), gauges_.end(),
                                   [&](const Gauge &g) { return g.tube && g.is_called(word); });
    if (number.empty() || (!said && !tubes)) return std::nullopt;
    std::vector<const Gauge *> meant;
    const std::string metal = lowered(beside.metal);
    for (const auto &gauge : gauges_) {
        const auto follows = [&](const std::string &m) { return metal.find(m) != std::string::npos; };
        if (word.empty() ? !beside.tube && std::any_of(gauge.metals.begin(), gauge.metals.end(), follows)
                         : gauge.is_called(word))
            meant.push_back(&gauge);
    }
    if (meant.size() == 1)
        if (auto out = meant.front()->of(number)) return out;
    std::vector<std::string> can_mean;
    for (const auto &gauge : gauges_)
        if (const auto one = gauge.of(number)) can_mean.push_back(one->called + " is " + one->size);
    if (can_mean.empty()) throw InputError("'" + shown(text) + "' is a gauge that no table has");
    throw InputError("'" + shown(text) + "' is " +
                     (meant.size() == 1 ? "not in the table of " + meant.front()->name
                      : word.empty()    ? "another thickness in each table of gauges"
                                        : "of no table of gauges that is known") +
                     ": " + listed(can_mean, "or") + "; write which");
}

} // namespace beadbook
