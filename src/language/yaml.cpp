#include "language/yaml.hpp"

#include "language/indentation.hpp"
#include "language/packed_yaml.hpp"
#include "measure/text.hpp"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <sstream>

namespace beadbook {
namespace {

constexpr std::size_t deepest_node = 32;

Where place(const YAML::Mark &mark) { return {mark.line + 1, mark.column + 1}; }

/// Builds the tree from yaml-cpp's events: the only layer of it that shows anchors and every position.
class TreeBuilder : public YAML::EventHandler {
public:
    explicit TreeBuilder(Issues &issues) : issues_(issues) {}

    Yaml root;

    void OnDocumentStart(const YAML::Mark &) override {}
    void OnDocumentEnd() override {}
    void OnNull(const YAML::Mark &mark, YAML::anchor_t anchor) override {
        refuse_anchor(mark, anchor);
        Yaml nothing = scalar("", mark);
        if (stack_.empty() || !stack_.back().braced)
            refuse_nothing(nothing);
        else
            refuse_comma(stack_.back(), mark);
        add(std::move(nothing));
    }
    void OnAlias(const YAML::Mark &mark, YAML::anchor_t) override {
        issues_.error(place(mark), path(),
                      "found an alias (*name); write the value out, aliases are not allowed");
        add(scalar("", mark));
    }
    void OnScalar(const YAML::Mark &mark, const std::string &tag, YAML::anchor_t anchor,
                  const std::string &value) override {
        refuse_anchor(mark, anchor);
        refuse_tag(mark, tag);
        Yaml node = scalar(value, mark);
        node.quoted = tag == "!";
        add(std::move(node));
    }
    void OnSequenceStart(const YAML::Mark &mark, const std::string &tag, YAML::anchor_t anchor,
                         YAML::EmitterStyle::value) override {
        open(Yaml::Kind::list, mark, tag, anchor);
    }
    void OnSequenceEnd() override { close(); }
    void OnMapStart(const YAML::Mark &mark, const std::string &tag, YAML::anchor_t anchor,
                    YAML::EmitterStyle::value style) override {
        open(Yaml::Kind::map, mark, tag, anchor);
        stack_.back().braced = style == YAML::EmitterStyle::Flow;
    }
    void OnMapEnd() override { close(); }

private:
    struct Level {
        Yaml node;
        bool awaits_value = false;
        bool braced = false; ///< a map in braces, in which each comma begins a new key
        std::string key;
        Where key_where;
    };

    static Yaml scalar(const std::string &text, const YAML::Mark &mark) {
        Yaml node;
        node.text = text;
        node.where = place(mark);
        return node;
    }

    std::string path() const {
        std::string out;
        for (const auto &level : stack_)
            if (level.awaits_value) out += (out.empty() ? "" : ".") + level.key;
        return out;
    }

    /// The parser places it at the next line, of which it tells nothing.
    void refuse_nothing(Yaml &nothing) {
        const Level *level = stack_.empty() || !stack_.back().awaits_value ? nullptr : &stack_.back();
        if (level) nothing.where = level->key_where;
        issues_.error(
            nothing.where, path(),
            level ? "nothing stands behind it; expected a value, or lines below it that begin further "
                    "to the right"
                  : "nothing stands here; expected a value");
        if (level) issues_.spoil(nothing.where, nothing.where.line);
    }

    /// A comma inside a value makes its second half a key of nothing. The halves are read as if they were
    /// meant.
    void refuse_comma(const Level &level, const YAML::Mark &mark) {
        const auto &entries = level.node.entries;
        const std::string before = entries.empty() ? "" : entries.back().value.text;
        const bool called = before.find('(') != std::string::npos && before.find(')') == std::string::npos;
        const bool decimal = !before.empty() && before.back() >= '0' && before.back() <= '9' &&
                             !level.key.empty() && level.key.front() >= '0' && level.key.front() <= '9';
        issues_.error(level.key_where, path(),
                      "'" + shown(level.key) + "' has no value: in braces a comma begins the next entry" +
                          (called    ? "; write 'lesser of T and 1 in' for min(T, 1 in), 'greater of' for max"
                           : decimal ? "; write a decimal with a point"
                                     : "; put a text with a comma in quotes"));
        issues_.spoil(level.node.where, mark.line + 1);
    }

    void refuse_anchor(const YAML::Mark &mark, YAML::anchor_t anchor) {
        if (anchor != YAML::NullAnchor)
            issues_.error(place(mark), path(), "found an anchor (&name); anchors are not allowed");
    }
    void refuse_tag(const YAML::Mark &mark, const std::string &tag) {
        if (!tag.empty() && tag != "?" && tag != "!")
            issues_.error(place(mark), path(), "found a tag '" + shown(tag) + "'; tags are not allowed");
    }

    void open(Yaml::Kind kind, const YAML::Mark &mark, const std::string &tag, YAML::anchor_t anchor) {
        refuse_anchor(mark, anchor);
        refuse_tag(mark, tag);
        if (stack_.size() == deepest_node) throw YAML::ParserException(mark, "nested too deeply");
        Level level;
        level.node.kind = kind;
        level.node.where = place(mark);
        stack_.push_back(std::move(level));
    }

    void close() {
        Yaml node = std::move(stack_.back().node);
        stack_.pop_back();
        add(std::move(node));
    }

    void add(Yaml node) {
        if (stack_.empty()) {
            root = std::move(node);
            return;
        }
        Level &level = stack_.back();
        if (level.node.kind == Yaml::Kind::list) {
            level.node.items.push_back(std::move(node));
        } else if (!level.awaits_value) {
            take_key(level, node);
        } else {
            level.awaits_value = false;
            if (!level.node.find(level.key))
                level.node.entries.push_back({level.key, level.key_where, std::move(node)});
        }
    }

    void take_key(Level &level, const Yaml &node) {
        if (node.kind != Yaml::Kind::scalar)
            issues_.error(node.where, path(), "found a list or map as a key; expected a word");
        else if (node.text == "<<")
            issues_.error(node.where, path(), "found a merge key (<<); merge keys are not allowed");
        else if (level.node.find(node.text)) {
            issues_.error(node.where, path(), "key '" + shown(node.text) + "' stands here a second time");
            ++level.node.doubled;
        }
        level.key = node.text;
        level.key_where = node.where;
        level.awaits_value = true;
    }

    Issues &issues_;
    std::vector<Level> stack_;
};

/// "; in line 10 '#' begins a comment ...", where a line up to that one opens braces and goes on behind a '#'
/// that nobody meant for one: the rest of it closes them. Empty: there is none.
std::string comment_in_braces(const std::string &text, int last) {
    std::string out;
    std::istringstream lines(text);
    std::string line;
    for (int number = 1; number <= last && std::getline(lines, line); ++number) {
        char quote = 0;
        int open = 0;
        std::size_t hash = std::string::npos;
        for (std::size_t i = 0; i < line.size(); ++i) {
            const char c = line[i];
            if (quote) {
                quote = c == quote ? '\0' : quote;
            } else if (c == '"' || c == '\'') {
                // Inside a word it is a letter.
                if (i == 0 || std::string_view(" ,:[{").find(line[i - 1]) != std::string_view::npos)
                    quote = c;
            } else if (c == '#' && i > 0 && line[i - 1] == ' ') {
                hash = i;
                break;
            } else if (c == '{' || c == '[') {
                ++open;
            } else if (c == '}' || c == ']') {
                --open;
            }
        }
        if (hash == std::string::npos || open <= 0) continue;
        const std::string rest = line.substr(hash);
        if (rest.find_first_of("}]") == std::string::npos) continue;
        out = "; in line " + std::to_string(number) + " '#' behind a blank begins a comment, so '" +
              shown(rest) + "' is not read: put what belongs together in quotes";
    }
    return out;
}

/// The first tab among the blanks that a line begins with; line 0 if there is none.
Where indenting_tab(const std::string &text) {
    std::istringstream lines(text);
    int number = 0;
    for (std::string line; std::getline(lines, line);) {
        ++number;
        const std::size_t begins = line.find_first_not_of(" \t"), tab = line.find('\t');
        if (tab != std::string::npos && tab < begins && begins != std::string::npos)
            return {number, static_cast<int>(tab) + 1};
    }
    return {};
}

/// What the parser found, and what it comes from most often.
std::string in_plain_words(const std::string &found) {
    static const std::pair<std::string_view, std::string_view> reasons[]{
        {"end of sequence flow not found", "a list is not closed with ], or a comma is missing before here"},
        {"end of map flow not found", "a map is not closed with }, or a comma is missing before here"},
        {"end of sequence not found",
         "this line stands neither in line with the entries above nor below one"},
        {"end of map not found",
         "this stands neither in line with the keys above nor below one, or a quote above is not closed"},
        {"illegal map value", "a colon stands where no value can begin; is the line above without the blank "
                              "behind its colon, or this text without quotes?"},
        {"illegal block entry",
         "an entry of a list cannot begin here; it stands below its key, on a line of its own"},
    };
    for (const auto &[message, reason] : reasons)
        if (found == message) return std::string(reason);
    return found;
}

} // namespace

const Yaml *Yaml::find(std::string_view key) const {
    for (const auto &entry : entries)
        if (entry.key == key) return &entry.value;
    return nullptr;
}

Yaml read_yaml(const std::string &text, Issues &issues) {
    const auto known = packed_tree_of(text);
    return known ? unpacked(*known) : parse_yaml(text, issues);
}

Yaml parse_yaml(const std::string &text, Issues &issues) {
    if (!valid_utf8(text) || text.find('\0') != std::string::npos) {
        issues.error({}, "", "the file is not UTF-8 text");
        return {};
    }
    TreeBuilder builder(issues);
    try {
        std::istringstream stream(text);
        YAML::Parser parser(stream);
        if (!parser.HandleNextDocument(builder)) {
            issues.error({}, "", "the file is empty; expected one YAML document");
            return {};
        }
        TreeBuilder second(issues);
        if (parser.HandleNextDocument(second))
            issues.error(second.root.where, "", "found a second document (---); expected one a file");
    } catch (const YAML::Exception &e) {
        const bool known = !e.mark.is_null();
        const Where tab = indenting_tab(text);
        if (tab.line > 0 && (!known || tab.line <= e.mark.line + 1))
            issues.error(tab, "", "this is not YAML: a line begins with a tab; expected blanks");
        else if (const auto wrong = known ? wrong_indentation(text, e.mark.line + 1) : std::nullopt)
            issues.error(wrong->where, "", "this is not YAML: " + wrong->text);
        else
            issues.error(known ? place(e.mark) : Where{}, "",
                         "this is not YAML: " + in_plain_words(e.msg) +
                             comment_in_braces(text, known ? e.mark.line + 1 : 0));
    }
    return std::move(builder.root);
}

} // namespace beadbook
